// Package imprint is what every page of a handbook is printed with, whatever
// stands on it: the place where something is set, the addresses and ids there,
// links, the shell around the words of a page, slots for what is long. It exists so
// that the rooms of the press, each of which makes one kind of page, share these and
// need not know one another, nor the press that joins them.
package imprint

import (
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/press/theme"
)

// Place is where something is set: on a page of its own, or in a chapter of the
// book. Views ask it for every address and id that they hold, so that the same
// view is right in both.
type Place struct {
	Page string   // the address of the page whose words are set
	Book Chapters // nil on the page itself
}

// To returns what a place on the handbook is called from here, from an address
// counted from the root, which may carry a query and a fragment.
func (at Place) To(to string) string {
	if at.Book == nil || to == "" {
		return address.Relative(at.Page, to)
	}
	return at.Book.Address(at.Page, to)
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
	if at.Book != nil {
		return t.InBook
	}
	return t.Pages
}

// Chapters are the pages that are chapters of the book, by address.
type Chapters map[string]Chapter

// Chapter is a chapter's number and the address of the page of the book on which it
// stands.
type Chapter struct{ Number, Volume string }

// Address returns what a place of the handbook is called in the chapter that a
// page is, or in the contents: within the book if the book holds it, with the
// number of its chapter behind theme.NumberSign unless it is the same chapter, a hazard
// or a word of the trade, whose chapters everybody finds; else the page beside the
// book, as for a calculator to be filled in.
func (c Chapters) Address(page, to string) string {
	here := address.Book
	if own, ok := c[page]; ok {
		here = own.Volume
	}
	file, fragment, _ := strings.Cut(to, "#")
	chapter, ok := c[file]
	if !ok {
		return address.Relative(here, to)
	}
	within := make([]byte, 0, usual)
	if chapter.Volume != here {
		within = append(within, address.Relative(here, chapter.Volume)...)
	}
	within = appendKey(append(within, '#'), file)
	if fragment != "" {
		within = append(append(within, '.'), fragment...)
	}
	if file != page && (file != address.Glossary && file != address.Hazards || fragment == "") {
		within = append(append(within, theme.NumberSign...), chapter.Number...)
	}
	return string(within)
}

// usual is the length of most ids and addresses in the book, or more.
const usual = 96

// ChapterKey makes an id from an address: "page.slip.make-slip". Ids with a dot
// belong to the theme.
func ChapterKey(address string) string {
	return string(appendKey(make([]byte, 0, usual), address))
}

// appendKey appends a ChapterKey.
func appendKey(to []byte, address string) []byte {
	to = append(to, "page."...)
	from := len(to)
	to = append(to, strings.TrimSuffix(address, ".html")...)
	for i := from; i < len(to); i++ {
		if to[i] == '/' {
			to[i] = '.'
		}
	}
	return to
}
