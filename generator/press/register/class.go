package register

import (
	"cmp"
	"slices"
	"strings"

	"slipbook/generator/course"
	"slipbook/generator/ghs"
	"slipbook/generator/press/care"
)

// classView is how a material's sheet classes it, or those of all materials of a
// recipe together, in the standard's words.
type classView struct {
	Signal      string // Danger or Warning; empty where there is none
	Pictograms  []pictogram
	Statements  []string
	Precautions []string
	Not         bool     // the sheet says that it is not classified
	Asks        bool     // it is dusty, raw metal or worse: who is with child or has asthma asks a doctor first
	Mixed       bool     // of several materials together
	Unclear     []string // of which nobody could tell: their names
	Invented    bool     // a sheet behind it is made up, for teaching
}

// pictogram is one of the standard's, as the theme draws it.
type pictogram struct{ Icon, Name string }

// classOf puts the classes of some materials together: every statement, each once,
// and what they call for by the standard's own rules.
func (r *Register) classOf(materials ...*course.Material) classView {
	v := classView{Not: len(materials) > 0, Mixed: len(materials) > 1}
	var codes, precautions []string
	for _, m := range materials {
		codes, precautions = append(codes, m.Class.Statements...), append(precautions, m.Class.Precautions...)
		v.Not = v.Not && m.Class.Says == course.NotClassed
		v.Asks = v.Asks || m.Class.Says != course.NotClassed || m.Form == "powder" || len(m.Metals) > 0
		v.Invented = v.Invented || m.Sheet.Invented
		if m.Class.Says == course.ClassedOpen && !slices.Contains(v.Unclear, m.Name) {
			v.Unclear = append(v.Unclear, m.Name)
		}
	}
	v.Signal = ghs.Signal(codes)
	shown := ghs.Pictograms(codes)
	for _, s := range ghs.Symbols() {
		if slices.Contains(shown, s.Number) {
			v.Pictograms = append(v.Pictograms, pictogram{strings.ToLower(s.Number), s.Name})
		}
	}
	slices.SortStableFunc(codes, func(a, b string) int {
		return cmp.Or(cmp.Compare(grade(a), grade(b)), cmp.Compare(breathed(a), breathed(b)), cmp.Compare(a, b))
	})
	if v.Mixed {
		codes = graver(codes)
	}
	v.Statements, v.Precautions = r.inWords(codes), r.inWords(milder(slices.Sorted(slices.Values(precautions))))
	return v
}

// grade is 0 for a statement that calls for Danger, 1 for any other: the graver ones
// come first, since a small label has no room for all.
func grade(code string) int {
	if ghs.Signal([]string{code}) == ghs.Danger {
		return 0
	}
	return 1
}

// breathed is 0 for a statement of what harms when it is breathed in, 1 for others.
func breathed(code string) int {
	if ghs.Respiratory(code) {
		return 0
	}
	return 1
}

// inWords returns the words of some codes, each once, as the handbook's English spells them.
func (r *Register) inWords(codes []string) []string {
	var all []string
	for _, code := range codes {
		if words, known := ghs.Statement(code); known {
			all = care.AppendNew(all, r.spelled(words))
		}
	}
	return all
}

// spelled returns a statement in the handbook's spelling. The table has that of the United
// States, the standard itself, and Britain with it, writes "vapours".
func (r *Register) spelled(words string) string {
	if r.reading.Course.Language == "en-US" {
		return words
	}
	return strings.ReplaceAll(words, "vapors", "vapours")
}

// graver leaves out of a mix that it may damage organs in time where one of its materials
// does: the graver statement says the other.
func graver(codes []string) []string {
	if slices.Contains(codes, "H372") {
		return slices.DeleteFunc(slices.Clone(codes), func(code string) bool { return code == "H373" })
	}
	return codes
}

// milder leaves out "avoid breathing dust" where "do not breathe dust" stands: the
// standard never prints both.
func milder(codes []string) []string {
	if slices.Contains(codes, "P260") {
		return slices.DeleteFunc(slices.Clone(codes), func(code string) bool { return code == "P261" })
	}
	return codes
}
