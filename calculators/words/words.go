// Package words holds every sentence that the calculators and the planner say,
// one file a language, and looks them up. Code names a sentence by its id,
// "slip-density.say.swapped", and never holds one itself.
//
// A sentence has fill-ins, "{volume}". A phrase that depends on a number has
// forms, one id a category of the Unicode CLDR: "cups.one", "cups.other"
// (plural.go). What else differs between languages is an entry too: how a list
// is joined, which marks quote, whether a label keeps its capital in a sentence.
//
// The files are read natively (files.go). Into the WebAssembly reactor, which
// has no sentence of its own, words come as a parcel: Encode and Decode. It has
// no maps, no fmt and no reflection, and what is looked up is found by halving.
package words

import (
	"strconv"

	"slipbook/calculators/letters"
)

// Table is the words of one language, in the order of their ids. A nil table
// has none.
type Table struct {
	Language string // as BCP 47 has it, for example "en-GB"
	entries  []entry
	choose   func(n int) string // the category of a number; nil = always "other"
}

// entry is one sentence by its id.
type entry struct{ id, text string }

// Has reports whether there are words of that id.
func (t *Table) Has(id string) bool { _, ok := t.find(id); return ok }

// Text returns the words of that id. Where there are none it returns the id:
// a test keeps that from happening.
func (t *Table) Text(id string) string {
	if text, ok := t.find(id); ok {
		return text
	}
	return id
}

func (t *Table) find(id string) (text string, ok bool) {
	if t == nil {
		return "", false
	}
	low, high := 0, len(t.entries)
	for low < high {
		middle := (low + high) / 2
		if t.entries[middle].id < id {
			low = middle + 1
		} else {
			high = middle
		}
	}
	if low == len(t.entries) || t.entries[low].id != id {
		return "", false
	}
	return t.entries[low].text, true
}

// Fill returns the words of that id with their fill-ins. fills are names, each
// with its text after it: "volume", "2 L".
func (t *Table) Fill(id string, fills ...string) string {
	return Filled(t.Text(id), fills, nil)
}

// Filled puts texts into a sentence. fills are names, each with its text after
// it; what none of them names is asked of other, which may be nil.
func Filled(sentence string, fills []string, other func(name string) string) string {
	filled, rest := "", sentence
	for {
		before, after, found := letters.Cut(rest, "{")
		filled += before
		if !found {
			return filled
		}
		name, after, _ := letters.Cut(after, "}")
		filled += fillOf(name, fills, other)
		rest = after
	}
}

func fillOf(name string, fills []string, other func(string) string) string {
	for i := 0; i+1 < len(fills); i += 2 {
		if fills[i] == name {
			return fills[i+1]
		}
	}
	if other == nil {
		return ""
	}
	return other(name)
}

// Count words a number of things, the phrase in the form that the language has
// for that number and "{count}" in it filled.
func (t *Table) Count(id string, n int) string {
	category := "other"
	if t != nil && t.choose != nil {
		category = t.choose(n)
	}
	if !t.Has(id + "." + category) {
		category = "other"
	}
	return t.Fill(id+"."+category, "count", strconv.Itoa(n))
}

// List joins words as the language does: "a, b and c".
func (t *Table) List(list []string) string {
	text := ""
	for i, w := range list {
		switch {
		case i == 0:
		case i == len(list)-1:
			text += t.Text("language.list.last")
		default:
			text += t.Text("language.list.between")
		}
		text += w
	}
	return text
}

// Quoted joins words of which each is quoted: “a”, “b”.
func (t *Table) Quoted(list []string) string {
	text := ""
	for i, w := range list {
		if i > 0 {
			text += t.Text("language.list.between")
		}
		text += t.Fill("language.quoted", "text", w)
	}
	return text
}

// Label makes a label fit into a sentence: in languages that write nouns small
// its first letter too.
func (t *Table) Label(label string) string {
	if t.Text("language.labels") == "small" {
		return letters.LowerFirst(label)
	}
	return label
}
