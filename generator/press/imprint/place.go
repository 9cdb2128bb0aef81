// Package imprint is what every page of a handbook is printed with, whatever
// stands on it: the place where something is set, the addresses and ids there,
// links, the shell around the words of a page, slots for what is long. It exists so
// that the rooms of the press, each of which makes one kind of page, share these and
// need not know one another, nor the press that joins them.
package imprint

import (
	"slipbook/generator/address"
	"slipbook/generator/press/theme"
)

// Place is where something is set: on a page of its own, in a chapter of the
// book, or in a document of the e-book. Views ask it for every address and id that
// they hold, so that the same view is right in each.
type Place struct {
	Page  string   // the address of the page whose words are set
	Book  Chapters // nil but in the book
	Ebook *Ebook   // nil but in the e-book
}

// Bound reports whether it is in the book or the e-book, where no script runs and
// nothing can be filled in.
func (at Place) Bound() bool { return at.Book != nil || at.Ebook != nil }

// To returns what a place on the handbook is called from here, from an address
// counted from the root, which may carry a query and a fragment.
func (at Place) To(to string) string {
	switch {
	case to == "":
		return ""
	case at.Book != nil:
		return at.Book.Address(at.Page, to)
	case at.Ebook != nil:
		return at.Ebook.To(at.Page, to)
	}
	return address.Relative(at.Page, to)
}

// ID returns an id as it is written here: in the book with the chapter's own word
// in front, since many pages stand on one.
func (at Place) ID(id string) string {
	if at.Book == nil || id == "" {
		return id
	}
	within := appendKey(make([]byte, 0, usual), at.Page)
	return string(append(append(within, '.'), id...))
}

// Level returns the level of a heading here: in the book each page's own heading
// stands under that of the book.
func (at Place) Level(level int) int {
	if at.Book == nil {
		return level
	}
	return min(level+1, 6)
}

// Templates returns the templates of a theme that print here.
func (at Place) Templates(t *theme.Theme) *theme.Templates {
	switch {
	case at.Book != nil:
		return t.InBook
	case at.Ebook != nil:
		return t.InEbook
	}
	return t.Pages
}
