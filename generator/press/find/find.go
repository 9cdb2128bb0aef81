// Package find makes what the page "Find" rests on: every place of the handbook that
// somebody may look for, in the order of an index, and the same packed so that a
// script finds them as one types. It exists so that index and search know the same
// places, which come from the pages as they were read, the glossary, the decoration
// table and the register; no name stands here that does not stand there.
//
// A place is a lesson, a part of it under a heading, a question, a word, a fault, a
// state, ... Of a lesson its parts follow it (Parts).
package find

import (
	"slipbook/generator/press/theme"
)

// Kind says what a place is.
type Kind uint8

// The kinds, in the order in which places are numbered: of equals the first counts.
const (
	Word Kind = iota
	Fault
	State
	Medium
	Technique
	Question
	Lesson
	Reading
	Calculator
	Recipe
	Material
	Hazard
	Page
	Sheet
	Teaching
	kinds
)

// weights say how high a place of a kind stands beside others that are found as well.
var weights = [kinds]float64{
	Word: 1.15, Fault: 1.15, State: 1.05, Medium: 1, Technique: 0.9, Question: 1.1, Lesson: 1, Reading: 0.85,
	Calculator: 0.95, Recipe: 0.85, Material: 0.85, Hazard: 0.85, Page: 0.85, Sheet: 0.5, Teaching: 0.4,
}

// kindWords says what the theme calls the kinds.
func kindWords(t *theme.Theme) [kinds]string {
	return [kinds]string{
		Word: t.Say("find-word"), Fault: t.Say("find-fault"), State: t.Say("find-state"), Medium: t.Say("find-medium"),
		Technique: t.Say("find-technique"), Question: t.Say("find-question"), Lesson: t.Say("find-lesson"), Reading: t.Say("find-reading"),
		Calculator: t.Say("find-calculator"), Recipe: t.Say("find-recipe"), Material: t.Say("find-material"), Hazard: t.Say("find-hazard"),
		Page: t.Say("find-page"), Sheet: t.Say("find-sheet"), Teaching: t.Say("find-teaching"),
	}
}

// Place is what somebody may look for.
type Place struct {
	Kind    Kind
	Name    string   // of a part: that of its lesson
	Part    string   // the heading, of what is a part of a page
	Also    []string // what it is called besides
	Number  string   // of the lesson, "2.3"; empty of what stands in no unit
	Address string   // from the handbook's root
	Line    string   // a line of what stands there
	Text    string   // all that stands there
	Parts   int      // how many of the places that follow are parts of it
}
