//go:build !wasm

package catalog

import (
	"sync"

	"slipbook/calculators/form"
	"slipbook/calculators/stage"
	"slipbook/calculators/words"
)

// worded are the calculators in the languages that were asked for.
var worded sync.Map // of language to form.List

// In returns the calculators in the order of the handbook, with everything that
// pages and the command line print of them in the words of a language, or of
// the one that stands in for it.
func In(language string) form.List {
	w := words.In(language)
	list, known := worded.Load(w.Language)
	if !known { // asked first: filling them all in costs more than any look-up
		list, _ = worded.LoadOrStore(w.Language, all.In(w))
	}
	return list.(form.List)
}

// All lists the calculators in the words of the default language.
func All() form.List { return In(words.Default) }

// Find returns the calculator of that name in the words of the default
// language, or nil.
func Find(name string) *form.Calculator { return All().Find(name) }

// Doer says in the words of a language who does a step.
func Doer(language string, who stage.Who) string { return words.In(language).Text(people[who]) }

// Speaks reports whether there are words in a language, and in which one answers
// are given.
func Speaks(language string) (stands string, known bool) { return words.Known(language) }

// WordsIn returns the words that answers in a language are given in.
func WordsIn(language string) *words.Table { return words.In(language) }
