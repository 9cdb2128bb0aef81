package book

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/assets"
	"slipbook/generator/press/imprint"
)

// addStyles makes the style sheets of the book's pages.
func (b *Book) addStyles() {
	add := func(page string, chapters []*imprint.Sheet) {
		style := b.style(b.Say("book-contents"), chapters)
		at := assets.Address("chapters.css", style)
		b.Styles[at], b.styleOf[page] = style, at
	}
	for _, v := range b.volumes {
		add(v.address, v.chapters)
	}
	if b.styleOf[address.Book] == "" {
		add(address.Book, nil)
	}
}

// style makes the style sheet by which each printed page of the book bears
// number and name of its chapter, and the name of its part. Each chapter has a
// page style of its own, named after its number, so that this holds whatever the
// paper, the letters and the margins. It is a file, since the pages' policy
// allows no style in the page.
func (b *Book) style(contents string, chapters []*imprint.Sheet) []byte {
	var css bytes.Buffer
	fmt.Fprintf(&css, "@page contents{@top-left{content:%s}}\n.book-contents{page:contents}\n", styleString(contents))
	for _, p := range b.parts {
		title := p.title
		if p.opening != nil {
			title = p.opening.Title
		}
		for _, c := range p.chapters {
			if !slices.Contains(chapters, c) {
				continue
			}
			number := b.Chapters[c.Address].Number
			name := "chapter-" + strings.ReplaceAll(number, ".", "-")
			fmt.Fprintf(&css, "@page %s{@top-left{content:%s}", name, styleString(number+"\u2003"+c.Title))
			if c != p.opening {
				fmt.Fprintf(&css, "@top-right{content:%s}", styleString(title))
			}
			fmt.Fprintf(&css, "}\n[id=%s]{page:%s}\n", styleString(imprint.ChapterKey(c.Address)), name)
		}
	}
	return css.Bytes()
}

// styleString writes a text as a string of CSS in ASCII, so that no server's
// idea of the file's letters can spoil it.
func styleString(text string) string {
	var s strings.Builder
	s.WriteByte('"')
	for _, r := range text {
		if r >= ' ' && r < 0x7f && r != '"' && r != '\\' {
			s.WriteRune(r)
		} else {
			fmt.Fprintf(&s, "\\%x ", r)
		}
	}
	s.WriteByte('"')
	return s.String()
}
