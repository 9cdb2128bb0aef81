package gathered

import (
	"slipbook/generator/course"
	"slipbook/generator/press/desk"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/theme"
)

// cardSize returns the class of the largest type in which pieces of text, each on lines
// of its own, are one sheet of two columns, A4 or US Letter, whatever the course
// holds: the more there is, the smaller the type.
func cardSize(p theme.CardPrint, letters []int) string {
	return theme.Largest(p.Sizes, func(points float64) bool { return fitsCard(p, letters, points) })
}

// cardFits reports whether pieces of text are one sheet in the smallest type that a card
// is set in.
func cardFits(p theme.CardPrint, letters []int) bool {
	return fitsCard(p, letters, p.Sizes[len(p.Sizes)-1].Points)
}

// fitsCard reports whether they are one sheet in a type of so many points.
func fitsCard(p theme.CardPrint, letters []int, points float64) bool {
	lines, fit := 0.0, p.Column/(p.Letter*points)
	for _, n := range letters {
		lines += p.Between + float64(1+int(float64(max(0, n-1))/fit))
	}
	return lines*points*p.Leading <= 2*p.Height
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

// runs counts links that stand one after the other.
func runs(links []imprint.Link) int {
	n := 0
	for _, l := range links {
		n += theme.Letters(l.Title) + 3
	}
	return n
}

func bodyLetters(b course.Body) int { return theme.Letters(b.Name) + 20 }

// stepLetters counts what a step takes on one sheet.
func stepLetters(s desk.Step) []int {
	all := []int{theme.Letters(s.What) + 3}
	for _, text := range s.Guards() {
		all = append(all, theme.Letters(text)+len("Take care: "))
	}
	return all
}
