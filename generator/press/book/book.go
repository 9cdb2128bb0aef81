// Package book is the whole handbook to print, with contents and numbered chapters.
// It is made of the same views as the pages, set as chapters: without what only a
// screen can use, headings a level lower, ids with the page's own word in front.
// Links lead on within the book and name the number of the chapter they lead to,
// since paper cannot be pressed. It exists so that a kind of page becomes part of the
// book by saying in which, and knows nothing more of paper.
//
// Nothing in it guesses on which page of paper something will be: that depends
// on paper, letters and browser. Each printed page bears the number and name of
// its chapter instead (style.go).
package book

import (
	"bytes"
	"html/template"
	"strconv"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
)

// New puts the pages in the book's order: the home page, the units with
// their lessons, then what is there to look up, as the kinds of page name it. The
// parts to look up are lettered: so a unit more changes no number but those of units.
// pages are the hand-written ones, sheets all pages that are printed; ebook tells how
// many bytes the e-book has.
func New(t *theme.Theme, c *course.Course, frame *imprint.Frame, kinds []*imprint.Kind, pages []*proof.Page, sheets []*imprint.Sheet, ebook func() (int, error)) *Book {
	b := &Book{Theme: t, course: c, frame: frame, ebook: ebook, Chapters: imprint.Chapters{}, Styles: map[string][]byte{}, styleOf: map[string]string{}}
	b.parts = append(b.unitParts(sheets), b.partsToLookUp(kinds, sheets)...)
	for _, p := range b.parts {
		n := 0
		for _, c := range p.chapters {
			number := p.number
			if c != p.opening {
				number = imprint.LessonNumber(p.number, n)
				n++
			}
			b.Chapters[c.Address] = imprint.Chapter{Number: number}
		}
	}
	b.Sizes = b.chapterSizes(pages)
	b.bind()
	b.addStyles()
	return b
}

// bookView is the book: contents and chapters. Of a large course the chapters
// stand in volumes, pages of their own.
type bookView struct {
	imprint.Framed
	Parts    []bookPart
	Chapters []chapterView
	Ebook    imprint.Link // to the same as an e-book
	Size     string       // of that, in megabytes
}

// volumeView is a page with some of the chapters of a large book.
type volumeView struct {
	imprint.Framed
	Book     string // address of the contents
	Chapters []chapterView
}

// bookPart is a part of the book in its contents: a unit, or what is there to
// look up.
type bookPart struct {
	Number, Title string
	Address       string // of its opening chapter; empty = it has none
	Chapters      []bookLine
}

// bookLine is a chapter in the contents.
type bookLine struct{ Number, Title, Address string }

// chapterView is one page of the handbook in the book.
type chapterView struct {
	Key  string // its id
	Body template.HTML
}

// The kinds of page of the book: the book itself, and a page with chapters of one that
// is too large to be a single page.
var (
	Kind       = imprint.Kind{Template: "book"}
	VolumeKind = imprint.Kind{Template: "book-volume"}
)

// Sheets are the pages of the book: one, or, of a large course, the contents
// and the volumes.
func (b *Book) Sheets() []imprint.Sheet {
	title := b.Say("book")
	sheets := []imprint.Sheet{{Address: address.Book, Kind: &Kind, Title: title, Description: b.Say("book-description"), View: b.bookPage}}
	for _, v := range b.volumes {
		if v.address != address.Book {
			sheets = append(sheets, imprint.Sheet{Address: v.address, Kind: &VolumeKind, Title: title + ", " + v.title, Description: b.Say("book-description"),
				View: func(at imprint.Place) (imprint.PageView, error) { return b.volumePage(at, v) }})
		}
	}
	return sheets
}

// bookPage makes the view of the book.
func (b *Book) bookPage(at imprint.Place) (imprint.PageView, error) {
	v := bookView{Framed: imprint.Framed{Shell: b.bookShell(at, b.Say("book"), b.Say("book-description"))}}
	for _, p := range b.parts {
		part := bookPart{Number: p.number, Title: p.title}
		for _, c := range p.chapters {
			line := bookLine{b.Chapters[c.Address].Number, c.Title, theme.Target(b.Chapters.Address("", c.Address))}
			if c == p.opening {
				part.Title, part.Address = c.Title, line.Address
			} else {
				part.Chapters = append(part.Chapters, line)
			}
		}
		v.Parts = append(v.Parts, part)
	}
	size, err := b.ebook()
	if err != nil {
		return nil, err
	}
	v.Ebook, v.Size = imprint.Link{Title: b.Say("ebook"), Address: at.To(address.Ebook)}, b.megabytes(size)
	if first := b.volumes[0]; first.address == address.Book {
		v.Chapters = b.chapters(first, &v.Framed)
	}
	return v, nil
}

// megabytes writes how large a file is, to a tenth.
func (b *Book) megabytes(size int) string {
	text := strconv.FormatFloat(max(0.1, float64(size)/1e6), 'f', 1, 64)
	return strings.Replace(text, ".", string(b.course.Decimal), 1)
}

// volumePage makes the view of a volume of a large book.
func (b *Book) volumePage(at imprint.Place, v *volume) (imprint.PageView, error) {
	view := volumeView{Framed: imprint.Framed{Shell: b.bookShell(at, b.Say("book")+", "+v.title, b.Say("book-description"))}, Book: at.To(address.Book)}
	view.Chapters = b.chapters(v, &view.Framed)
	return view, nil
}

// bookShell makes the shell of a page of the book.
func (b *Book) bookShell(at imprint.Place, title, description string) imprint.Shell {
	s := b.frame.Shell(at, imprint.About{Kind: "book", Title: title, Description: description, Gathered: true, Plan: true})
	s.Strip, s.Script = nil, ""
	s.Styles = append(s.Styles, at.To(b.frame.Bundle.Book), at.To(b.styleOf[at.Page]))
	return s
}

// chapters returns the chapters of a volume, each in a slot of the view.
func (b *Book) chapters(v *volume, of *imprint.Framed) []chapterView {
	var chapters []chapterView
	for _, s := range v.chapters {
		chapters = append(chapters, chapterView{imprint.ChapterKey(s.Address), of.Slot(func(out *bytes.Buffer) error {
			view, err := s.View(imprint.Place{Page: s.Address, Book: b.Chapters})
			if err != nil {
				return err
			}
			return imprint.Fill(out, b.InBook, s.Kind.Template, view)
		})})
	}
	return chapters
}
