package care

import "slipbook/generator/press/theme"

// Letters counts what a care takes before all else on a card, piece by piece.
func (c Care) Letters() []int {
	all := []int{12, theme.RunLetters(c.Wear), theme.RunLetters(c.Places)}
	for _, h := range c.Hazards {
		n := theme.Letters(h.Title+h.Short) + 2
		if h.Lesson != nil {
			n += theme.Letters(h.Lesson.Title) + len("Lesson: ")
		}
		all = append(all, n)
	}
	return all
}

// MarkLetters counts what stands of a care beside a verdict.
func (c Care) MarkLetters() int {
	n := 0
	if c.Who != "" {
		n += len("◆ with the instructor")
	}
	return n + theme.RunLetters(c.Marks())
}
