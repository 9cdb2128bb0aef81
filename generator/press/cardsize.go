package press

import (
	"unicode/utf8"

	"slipbook/generator/course"
	"slipbook/generator/press/desk"
	"slipbook/generator/press/theme"
)

// cardSize returns the class of the largest type in which pieces of text, each on lines
// of its own, are one sheet of two columns, A4 or US Letter, whatever the course
// holds: the more there is, the smaller the type.
func cardSize(p theme.CardPrint, letters []int) string {
	return theme.Largest(p.Sizes, func(points float64) bool {
		lines, fit := 0.0, p.Column/(p.Letter*points)
		for _, n := range letters {
			lines += p.Between + float64(1+int(float64(max(0, n-1))/fit))
		}
		return lines*points*p.Leading <= 2*p.Height
	})
}

// headings is what the headings of a card take, in letters a heading: each as
// high as two lines.
func headings(n int) []int {
	all := make([]int, 2*n)
	for k := range all {
		all[k] = 1
	}
	return all
}

// letters counts what stands on a medium's card, piece by piece.
func (v cardView) letters() []int {
	all := append(headings(9), count(v.About), count(v.Tell))
	all = append(all, v.Safety.letters()...)
	all = append(all, v.Some.letters()...)
	for _, l := range append(v.States, v.Ways...) {
		all = append(all, count(l.Name+l.Short)+12+l.Safety.markLetters())
	}
	for _, step := range v.Plan {
		all = append(all, stepLetters(step)...)
	}
	for _, l := range v.Looks {
		letters := count(l.Lesson.Title) + 2
		for _, look := range l.Looks {
			letters += count(string(look)) + 1
		}
		all = append(all, letters)
	}
	for _, f := range v.Faults {
		all = append(all, count(string(f.Seen+f.Means))+3)
	}
	return append(all, runs(v.Lessons))
}

// letters counts what stands on the course's card, piece by piece.
func (v courseCardView) letters() []int {
	all := headings(6)
	for _, s := range v.States {
		all = append(all, count(s.Name.Title+s.Tell)+12)
	}
	for _, r := range v.Rows {
		all = append(all, 125+4*r.Safety.markLetters(), 1)
	}
	all = append(append(all, 40), v.Safety.letters()...)
	for _, b := range v.Bodies {
		all = append(all, bodyLetters(b))
	}
	for _, u := range v.Units {
		letters := 0
		for _, l := range u.Lessons {
			letters += count(l.Lesson.Title) + 3
		}
		all = append(all, count(u.Unit.Title), letters)
	}
	return all
}

// letters counts what a care takes before all else on a card, piece by piece.
func (c care) letters() []int {
	all := []int{12, runLetters(c.Wear), runLetters(c.Places)}
	for _, h := range c.Hazards {
		n := count(h.Title+h.Short) + 2
		if h.Lesson != nil {
			n += count(h.Lesson.Title) + len("Lesson: ")
		}
		all = append(all, n)
	}
	return all
}

// markLetters counts what stands of a care beside a verdict.
func (c care) markLetters() int {
	n := 0
	if c.Who != "" {
		n += len("◆ with the instructor")
	}
	return n + runLetters(c.Marks())
}

// runLetters counts words that stand one after the other.
func runLetters(words []string) int {
	n := 0
	for _, w := range words {
		n += count(w) + 2
	}
	return n
}

// runs counts links that stand one after the other.
func runs(links []link) int {
	n := 0
	for _, l := range links {
		n += count(l.Title) + 3
	}
	return n
}

func bodyLetters(b course.Body) int { return count(b.Name) + 20 }

// count counts the letters of a text as it is shown, without tags.
func count(text string) int {
	n, inside := 0, false
	for _, r := range text {
		switch {
		case r == '<':
			inside = true
		case r == '>':
			inside = false
		case !inside && utf8.ValidRune(r):
			n++
		}
	}
	return n
}

// stepLetters counts what a step takes on one sheet.
func stepLetters(s desk.Step) []int {
	all := []int{count(s.What) + 3}
	for _, text := range s.Guards() {
		all = append(all, count(text)+len("Take care: "))
	}
	return all
}
