package press

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
)

// style makes the style sheet by which each printed page of the book bears
// number and name of its chapter, and the name of its part. Each chapter has a
// page style of its own, named after its number, so that this holds whatever the
// paper, the letters and the margins. It is a file, since the pages' policy
// allows no style in the page.
func (b *bookPlan) style(contents string, chapters []*sheet) []byte {
	var css bytes.Buffer
	fmt.Fprintf(&css, "@page contents{@top-left{content:%s}}\n.book-contents{page:contents}\n", styleString(contents))
	for _, p := range b.parts {
		title := p.title
		if p.opening != nil {
			title = p.opening.title
		}
		for _, c := range p.chapters {
			if !slices.Contains(chapters, c) {
				continue
			}
			number := b.chapters[c.address].number
			name := "chapter-" + strings.ReplaceAll(number, ".", "-")
			fmt.Fprintf(&css, "@page %s{@top-left{content:%s}", name, styleString(number+"\u2003"+c.title))
			if c != p.opening {
				fmt.Fprintf(&css, "@top-right{content:%s}", styleString(title))
			}
			fmt.Fprintf(&css, "}\n[id=%s]{page:%s}\n", styleString(chapterKey(c.address)), name)
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
