package proof

import (
	"fmt"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
	"slipbook/generator/source"
)

// Asked is something that students ask, on its page.
type Asked struct {
	Page  *Page
	Block *markup.Block
}

// Asked lists what students ask in all lessons and on the pages of units: first what the course puts first, in
// its order, then the rest in reading order.
func (r *Reading) Asked() (first, rest []Asked) {
	place := map[string]int{}
	for n, a := range r.Course.AskedFirst {
		place[a.Words] = n + 1
	}
	first = make([]Asked, len(r.Course.AskedFirst))
	for _, page := range r.Pages {
		if page.Kind != course.LessonPage && page.Kind != course.UnitPage {
			continue
		}
		for _, b := range page.Document.Named(markup.AskedBlock) {
			if n := place[b.Words]; n > 0 && first[n-1].Block == nil {
				first[n-1] = Asked{page, b}
				continue
			}
			rest = append(rest, Asked{page, b})
		}
	}
	return first, rest
}

// checkAsked warns of questions that the course puts first and no lesson asks.
func checkAsked(r *Reading) finding.List {
	first, rest := r.Asked()
	var all finding.List
	for n, a := range r.Course.AskedFirst {
		if first[n].Block == nil {
			all = append(all, a.Spot.Find(finding.AskedFirst, fmt.Sprintf("no lesson asks “%s”", a.Words),
				source.Meant(a.Words, questions(rest))+"Write the question as the opening line of an asked block has it, behind the word “asked”."))
		}
	}
	return all
}

// questions lists questions.
func questions(asked []Asked) []string {
	var words []string
	for _, a := range asked {
		words = append(words, a.Block.Words)
	}
	return words
}
