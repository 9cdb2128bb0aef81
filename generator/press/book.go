package press

import (
	"bytes"
	"html/template"

	"slipbook/generator/address"
	"slipbook/generator/press/theme"
)

// The book is the whole handbook to print, with contents and numbered chapters.
// It is made of the same views as the pages, set as chapters: without what only a
// screen can use, headings a level lower, ids with the page's own word in front.
// Links lead on within the book and name the number of the chapter they lead to,
// since paper cannot be pressed.
//
// Nothing in it guesses on which page of paper something will be: that depends
// on paper, letters and browser. Each printed page bears the number and name of
// its chapter instead (bookstyle.go).

// bookView is the book: contents and chapters. Of a large course the chapters
// stand in volumes, pages of their own.
type bookView struct {
	framed
	Parts    []bookPart
	Chapters []chapterView
}

// volumeView is a page with some of the chapters of a large book.
type volumeView struct {
	framed
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

// bookSheets are the pages of the book: one, or, of a large course, the contents
// and the volumes.
func (i *impression) bookSheets() []sheet {
	title := i.Say("book")
	sheets := []sheet{{address: address.Book, kind: &bookKind, title: title, description: i.Say("book-description"), view: i.bookPage}}
	for _, v := range i.book.volumes {
		if v.address != address.Book {
			sheets = append(sheets, sheet{address: v.address, kind: &volumeKind, title: title + ", " + v.title, description: i.Say("book-description"),
				view: func(at place) (pageView, error) { return i.volumePage(at, v) }})
		}
	}
	return sheets
}

// bookPage makes the view of the book.
func (i *impression) bookPage(at place) (pageView, error) {
	v := bookView{framed: framed{Shell: i.bookShell(at, i.Say("book"), i.Say("book-description"))}}
	for _, p := range i.book.parts {
		part := bookPart{Number: p.number, Title: p.title}
		for _, c := range p.chapters {
			line := bookLine{i.book.chapters[c.address].number, c.title, theme.Target(i.book.address("", c.address))}
			if c == p.opening {
				part.Title, part.Address = c.title, line.Address
			} else {
				part.Chapters = append(part.Chapters, line)
			}
		}
		v.Parts = append(v.Parts, part)
	}
	if first := i.book.volumes[0]; first.address == address.Book {
		v.Chapters = i.chapters(first, &v.framed)
	}
	return v, nil
}

// volumePage makes the view of a volume of a large book.
func (i *impression) volumePage(at place, v *volume) (pageView, error) {
	view := volumeView{framed: framed{Shell: i.bookShell(at, i.Say("book")+", "+v.title, i.Say("book-description"))}, Book: at.to(address.Book)}
	view.Chapters = i.chapters(v, &view.framed)
	return view, nil
}

// bookShell makes the shell of a page of the book.
func (i *impression) bookShell(at place, title, description string) shell {
	s := i.shell(at, about{kind: "book", title: title, description: description, gathered: true, plan: true})
	s.Strip, s.Script = nil, ""
	s.Styles = append(s.Styles, at.to(i.bundle.Book), at.to(i.book.styleOf[at.page]))
	return s
}

// chapters returns the chapters of a volume, each in a slot of the view.
func (i *impression) chapters(v *volume, of *framed) []chapterView {
	var chapters []chapterView
	for _, s := range v.chapters {
		chapters = append(chapters, chapterView{chapterKey(s.address), of.slot(func(out *bytes.Buffer) error {
			view, err := s.view(place{page: s.address, book: i.book})
			if err != nil {
				return err
			}
			return fill(out, i.InBook, s.kind.template, view)
		})})
	}
	return chapters
}
