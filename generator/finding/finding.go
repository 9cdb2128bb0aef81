// Package finding is the one type for everything that is wrong with a
// handbook: which file, which line and column, what is the matter and what to
// write instead. Every stage of the generator reports into a List instead of
// returning its first error, so that an instructor sees all of it at once,
// sorted, and one printer serves the terminal, the browser and other programs.
//
// finding is a leaf: it imports nothing else of the generator.
//
// The rules the compiler cannot check: positions are 1-based; columns count
// characters (Unicode code points), as a person does and as SARIF can say,
// bytes it cannot; Lines.At counts them so; a finding without a place in its
// file has Line 1, Column 1; Text says what is wrong in words an instructor
// understands, without a final stop; Do says what to write instead, as a
// sentence of its own, and is never empty.
package finding

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// Finding is one thing that is wrong at one place.
type Finding struct {
	File   string // path inside the content folder, with slashes
	Line   int    // from 1
	Column int    // from 1, in characters
	Rule   *Rule  // which rule is broken; never nil
	Text   string // what is wrong
	Do     string // what to write instead
}

// Spot is a place in a file, kept for what only a later stage can find wrong
// there.
type Spot struct {
	File         string
	Line, Column int // from 1
}

// Find returns a finding at the place.
func (s Spot) Find(rule *Rule, text, do string) Finding {
	return Finding{File: s.File, Line: s.Line, Column: s.Column, Rule: rule, Text: text, Do: do}
}

// String returns "file:line:col: error: text (rule)\n    do", and below it what
// the rule rests on where that is outside of the program. Control characters
// and those that change the direction of words or cannot be seen, which a file's
// name or a quoted value may hold, become U+FFFD, so that no file can write to
// the terminal.
func (f Finding) String() string {
	text := fmt.Sprintf("%s:%d:%d: %s: %s (%s)\n    %s", printable(f.File), f.Line, f.Column,
		f.Rule.Severity, printable(f.Text), f.Rule.ID, printable(f.Do))
	if f.Rule.Source != "" {
		text += "\n    Source of the rule: " + f.Rule.Source + "."
	}
	return text
}

func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.Is(unicode.Cf, r) {
			return unicode.ReplacementChar
		}
		return r
	}, s)
}

// List is any number of findings, in any order until Sort.
type List []Finding

// Sort orders findings by file, line, column, rule and words and drops exact
// repeats, so that parallel work prints the same.
func (l *List) Sort() {
	slices.SortFunc(*l, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(a.File, b.File), cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column),
			cmp.Compare(a.Rule.ID, b.Rule.ID), cmp.Compare(a.Text, b.Text), cmp.Compare(a.Do, b.Do))
	})
	*l = slices.Compact(*l)
}

// Stop reports whether any finding is an error.
func (l List) Stop() bool {
	return slices.ContainsFunc(l, func(f Finding) bool { return f.Rule.Severity == Error })
}

// Count returns the number of errors and of warnings.
func (l List) Count() (errors, warnings int) {
	for _, f := range l {
		if f.Rule.Severity == Error {
			errors++
		} else {
			warnings++
		}
	}
	return errors, warnings
}
