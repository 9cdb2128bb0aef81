package press

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"slipbook/generator/course"
)

// glossaryView is the glossary, its terms in the order of the alphabet.
type glossaryView struct {
	Shell   shell
	Letters []letter
}

// letter is the terms that start with one letter.
type letter struct {
	Name  string
	Terms []termView
}

// termView is a term as the glossary prints it.
type termView struct {
	course.Term
	See []link
}

// glossarySheet is the glossary.
func (i *impression) glossarySheet() sheet {
	return sheet{glossaryAddress, "glossary", func() (any, error) {
		w, err := i.words.sayAll("glossary", "glossary-description")
		if err != nil {
			return nil, err
		}
		return glossaryView{
			Shell: i.shell(about{
				kind:        "glossary",
				address:     glossaryAddress,
				title:       w[0],
				description: w[1],
			}),
			Letters: i.letters(),
		}, nil
	}}
}

// letters sorts the terms by their words, capitals aside, and groups them by
// first letter.
func (i *impression) letters() []letter {
	terms := slices.SortedFunc(slices.Values(i.course.Glossary), func(a, b course.Term) int {
		return cmp.Or(cmp.Compare(strings.ToLower(a.Word), strings.ToLower(b.Word)), cmp.Compare(a.ID, b.ID))
	})
	var letters []letter
	for _, t := range terms {
		first, _ := utf8.DecodeRuneInString(t.Word)
		name := string(unicode.ToUpper(first))
		if len(letters) == 0 || letters[len(letters)-1].Name != name {
			letters = append(letters, letter{Name: name})
		}
		last := &letters[len(letters)-1]
		last.Terms = append(last.Terms, i.term(t))
	}
	return letters
}

// term gives a term with links to those it speaks of.
func (i *impression) term(t course.Term) termView {
	v := termView{Term: t}
	for _, id := range t.See {
		if other, ok := i.terms[id]; ok {
			v.See = append(v.See, link{Title: other.Word, Address: "#" + id})
		}
	}
	return v
}
