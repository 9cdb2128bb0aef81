package proof

import (
	_ "embed"
	"fmt"
	"strings"

	"slipbook/generator/course"
	"slipbook/generator/finding"
)

//go:embed trade.txt
var tradeWords string

// newTrade is a glossary of the words of the trade that a course's own glossary
// lacks. The list is English; of a course in another language it is empty.
func newTrade(c *course.Course, own *glossary) *glossary {
	lacking := &course.Course{}
	if strings.HasPrefix(c.Language, "en") {
		for _, word := range strings.Split(tradeWords, "\n") {
			if word != "" && word[0] != '#' && !own.has(word) {
				lacking.Glossary = append(lacking.Glossary, course.Term{ID: word, Word: word})
			}
		}
	}
	return newGlossary(lacking)
}

// has reports whether a word, in the singular or the plural, is one of a term.
func (g *glossary) has(word string) bool {
	term, end := g.longest(word, 0)
	return term > 0 && end == len(word)
}

// checkTrade warns of words of the trade in a lesson that nobody explains, each where
// it stands first.
func (r *rules) checkTrade(s *checking) {
	for _, use := range r.trade.used(s.prose).first {
		s.find(use.offset, finding.TradeWord, fmt.Sprintf("“%s” is a word of the trade, and the glossary lacks it", r.trade.terms[use.term].Word),
			"Explain it in glossary.yaml and link to it, or say it in other words.")
	}
}
