package gathered

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
)

// glossaryView is the glossary, its terms in the order of the alphabet.
type glossaryView struct {
	imprint.Framed
	Letters []letter
}

// letter is the terms that start with one letter, in runs: behind each is a way back to
// the letters.
type letter struct {
	ID   string
	Name string
	Runs [][]termView
}

// mostInRun is how many terms are read before a way back: about three screens of a phone.
const mostInRun = 10

// termView is a term as the glossary prints it.
type termView struct {
	course.Term
	ID  string // on the page
	See []imprint.Link
}

// Glossary is the glossary.
func (r *Gathered) Glossary() []imprint.Sheet {
	title, description := r.Say("glossary"), r.Say("glossary-description")
	return []imprint.Sheet{{Address: address.Glossary, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		return glossaryView{imprint.Framed{Shell: r.Shell(at, imprint.About{Kind: "glossary", Title: title, Description: description, Gathered: true, Filter: true})}, r.letters(at)}, nil
	}}}
}

// letters sorts the terms by their words, capitals aside, and groups them by
// first letter.
func (r *Gathered) letters(at imprint.Place) []letter {
	terms := slices.SortedFunc(slices.Values(r.reading.Course.Glossary), func(a, b course.Term) int {
		return cmp.Or(cmp.Compare(strings.ToLower(a.Word), strings.ToLower(b.Word)), cmp.Compare(a.ID, b.ID))
	})
	var letters []letter
	for _, t := range terms {
		first, _ := utf8.DecodeRuneInString(t.Word)
		name := string(unicode.ToUpper(first))
		if len(letters) == 0 || letters[len(letters)-1].Name != name {
			letters = append(letters, letter{ID: at.ID("letter." + name), Name: name})
		}
		last := &letters[len(letters)-1]
		if n := len(last.Runs) - 1; n >= 0 && len(last.Runs[n]) < mostInRun {
			last.Runs[n] = append(last.Runs[n], r.term(t, at))
		} else {
			last.Runs = append(last.Runs, []termView{r.term(t, at)})
		}
	}
	return letters
}

// term returns a term with links to those it speaks of.
func (r *Gathered) term(t course.Term, at imprint.Place) termView {
	v := termView{Term: t, ID: at.ID(t.ID)}
	for _, id := range t.See {
		if other, ok := r.terms[id]; ok {
			v.See = append(v.See, imprint.Link{Title: other.Word, Address: at.To(address.Term(id))})
		}
	}
	return v
}
