// Package source is text with positions: how a file of the content folder is
// read, what makes it text, and how the languages that stand in it are taken
// apart so that whatever is found wrong can be shown at its line and column. It
// exists so that a slip in YAML is explained in the same words, at the right
// place, whether it stands in a file of its own, in the opening block of a page
// or in a block inside a lesson; and a slip in a table of CSV likewise.
//
// source knows no key, no id and no page of a course: those are course's.
//
// The rules the compiler cannot check: offsets are in bytes of the file, below
// zero for the file as a whole; what reads a value reports what is wrong with it
// and then returns an empty answer, so that reading goes on and everything wrong
// is found at once.
package source

import (
	"fmt"

	"slipbook/generator/finding"
)

// Text is one file being read, with what is wrong in it so far. It serves one
// goroutine.
type Text struct {
	Path  string       // inside the content folder, with slashes
	Bytes []byte       // empty when the file could not be read; may not change once something is reported
	Found finding.List // in the order of the reports, one more than MostFindings at most
	// Language is that of the course, BCP 47: some characters that cannot be
	// seen are needed in some languages. Empty is one that needs none.
	Language string

	lines    *finding.Lines // made for the first finding
	reported int
}

// MostFindings is how many findings of one file are worth reading; a file of
// two million brackets has no more.
const MostFindings = 200

// New returns the text of a file that was read already.
func New(path string, text []byte) *Text { return &Text{Path: path, Bytes: text} }

// Report adds a finding at an offset; below zero is the file as a whole, past
// the end is the end. Of more than MostFindings the rest is left out, which the
// last one says.
func (t *Text) Report(offset int, rule *finding.Rule, text, do string) {
	t.reported++
	switch {
	case len(t.Found) > MostFindings:
		return
	case len(t.Found) == MostFindings:
		rule, text, do = finding.TooMany, fmt.Sprintf("more than %d things are wrong with this file", MostFindings), "Mend those shown first; the rest will show then."
	}
	line, column := t.Place(offset)
	t.Found = append(t.Found, finding.Finding{File: t.Path, Line: line, Column: column, Rule: rule, Text: text, Do: do})
}

// Reported counts all that was reported, also what was left out: a part of a
// file is sound when reading it adds nothing.
func (t *Text) Reported() int { return t.reported }

// Full reports whether nothing more will be added to Found.
func (t *Text) Full() bool { return len(t.Found) > MostFindings }

// Place returns the line and the column, both from 1, of an offset.
func (t *Text) Place(offset int) (line, column int) {
	if t.lines == nil {
		t.lines = finding.NewLines(t.Bytes)
	}
	return t.lines.At(offset)
}
