package press

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"slipbook/generator/address"
	"slipbook/generator/course"
)

// glossaryView is the glossary, its terms in the order of the alphabet.
type glossaryView struct {
	framed
	Letters []letter
}

// letter is the terms that start with one letter.
type letter struct {
	ID    string
	Name  string
	Terms []termView
}

// termView is a term as the glossary prints it.
type termView struct {
	course.Term
	ID  string // on the page
	See []link
}

// glossarySheets is the glossary.
func (i *impression) glossarySheets() []sheet {
	title, description := i.Say("glossary"), i.Say("glossary-description")
	return []sheet{{address: address.Glossary, title: title, description: description, view: func(at place) (pageView, error) {
		return glossaryView{framed{Shell: i.shell(at, about{kind: "glossary", title: title, description: description})}, i.letters(at)}, nil
	}}}
}

// letters sorts the terms by their words, capitals aside, and groups them by
// first letter.
func (i *impression) letters(at place) []letter {
	terms := slices.SortedFunc(slices.Values(i.course.Glossary), func(a, b course.Term) int {
		return cmp.Or(cmp.Compare(strings.ToLower(a.Word), strings.ToLower(b.Word)), cmp.Compare(a.ID, b.ID))
	})
	var letters []letter
	for _, t := range terms {
		first, _ := utf8.DecodeRuneInString(t.Word)
		name := string(unicode.ToUpper(first))
		if len(letters) == 0 || letters[len(letters)-1].Name != name {
			letters = append(letters, letter{ID: at.id("letter." + name), Name: name})
		}
		last := &letters[len(letters)-1]
		last.Terms = append(last.Terms, i.term(t, at))
	}
	return letters
}

// term returns a term with links to those it speaks of.
func (i *impression) term(t course.Term, at place) termView {
	v := termView{Term: t, ID: at.id(t.ID)}
	for _, id := range t.See {
		if other, ok := i.terms[id]; ok {
			v.See = append(v.See, link{Title: other.Word, Address: at.to(address.Term(id))})
		}
	}
	return v
}
