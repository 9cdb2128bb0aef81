package imprint

import (
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/press/theme"
)

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
