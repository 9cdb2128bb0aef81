// Package ebook is the handbook as one file to carry: an e-book of EPUB 3.3, made of
// the same views as the pages. Its templates are the theme's, changed before they are
// used (theme/xhtml.go): without what only a screen of the site can use, as XHTML.
// Nothing that was printed is read to print it otherwise. It exists so that whoever has
// no network, or reads with a reading system of their own, has the whole course.
//
// A page is a document of the e-book under its own address, so links lead on as they
// do on the site (imprint.Ebook). What can only be done on the site is named with its
// address, or, where the course does not say where it is published, in a document at
// the end.
//
// The same course gives the same bytes: no clock is asked. The day that the e-book says
// it is of is the newest that the course knows (edition.go).
package ebook

import (
	"bytes"
	"sync"

	"slipbook/generator/course"
	"slipbook/generator/pool"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
)

// Book is which pages make the e-book, in order.
type Book struct {
	theme    *theme.Theme
	course   *course.Course
	teaching bool // the instructor's copy
	pages    map[string]*proof.Page
	sheets   map[string]*imprint.Sheet // all that the handbook has, by address
	parts    []part

	making sync.Mutex
	made   []byte // of the last printing, until it is taken
	size   int    // of it; 0 while nobody asked
}

// New puts the pages in order. sheets are all pages that are printed, pages the
// hand-written ones.
func New(t *theme.Theme, r *proof.Reading, sheets []*imprint.Sheet, teaching bool) *Book {
	b := &Book{theme: t, course: r.Course, teaching: teaching, pages: map[string]*proof.Page{}, sheets: map[string]*imprint.Sheet{}}
	for _, p := range r.Pages {
		b.pages[p.Address] = p
	}
	for _, s := range sheets {
		b.sheets[s.Address] = s
	}
	b.parts = append(b.unitParts(), b.furtherParts(sheets)...)
	return b
}

// document is one document of the e-book.
type document struct {
	address string // as if it were a page
	title   string
	kind    string // what a reading system calls it, in epub:type; may be empty
	body    func(out *bytes.Buffer) error
}

// Size is how many bytes the e-book has. It is made for that, and kept until it is
// taken. Goroutines may ask at once.
func (b *Book) Size() (int, error) {
	b.making.Lock()
	defer b.making.Unlock()
	return b.size, b.make()
}

// Take returns the e-book, and keeps it no longer.
func (b *Book) Take() ([]byte, error) {
	b.making.Lock()
	defer b.making.Unlock()
	if b.made == nil {
		b.size = 0
	}
	if err := b.make(); err != nil {
		return nil, err
	}
	data := b.made
	b.made = nil
	return data, nil
}

// make makes the e-book, if nobody asked before.
func (b *Book) make() (err error) {
	if b.size > 0 {
		return nil
	}
	b.made, err = b.Print()
	b.size = len(b.made)
	return err
}

// Print makes the e-book. Its documents are printed on all processors; two e-books may
// be printed at once.
func (b *Book) Print() ([]byte, error) {
	e := b.place()
	documents := b.documents(e)
	p := packerFor(len(documents))
	entries := make([]*entry, len(documents))
	err := pool.Try(len(documents), 1, func(n int) (err error) {
		entries[n], err = b.document(e, p, documents[n])
		return err
	})
	if err != nil {
		return nil, err
	}
	if beside := e.Beside(); len(beside) > 0 {
		last, err := b.document(e, p, b.besideDocument(beside))
		if err != nil {
			return nil, err
		}
		entries = append(entries, last)
	}
	pictures, err := b.pictures(e)
	if err != nil {
		return nil, err
	}
	return b.bind(entries, pictures)
}

// place is where the documents' views are set.
func (b *Book) place() *imprint.Ebook {
	e := imprint.NewEbook(b.course.PublishedAt)
	for _, p := range b.parts {
		for _, c := range p.chapters {
			e.Numbers[c.sheet.Address] = c.number
			if p.answers != "" {
				e.Answers[c.sheet.Address] = p.answers
			}
		}
		if p.answers != "" {
			e.Numbers[p.answers] = ""
		}
	}
	e.Numbers[contents], e.Numbers[imprint.EbookTitle], e.Numbers[imprint.EbookBeside] = "", "", ""
	return e
}

// documents lists the documents in the order in which they are read, but for the one
// that names what is not here: what belongs there is known when all are printed.
func (b *Book) documents(e *imprint.Ebook) []document {
	all := []document{b.titleDocument(), b.contentsDocument(e)}
	for _, p := range b.parts {
		for _, c := range p.chapters {
			all = append(all, b.page(e, c))
		}
		if p.answers != "" {
			all = append(all, b.answersDocument(e, p))
		}
	}
	return all
}

// page is the document of a page of the handbook.
func (b *Book) page(e *imprint.Ebook, c chapter) document {
	d := document{address: c.sheet.Address, title: c.sheet.Title}
	if c.number != "" {
		d.kind = "chapter"
	}
	d.body = func(out *bytes.Buffer) error {
		view, err := c.sheet.View(imprint.Place{Page: c.sheet.Address, Ebook: e})
		if err != nil {
			return err
		}
		return imprint.Fill(out, b.theme.InEbook, c.sheet.Kind.Template, view)
	}
	return d
}

// from makes the body of a document of a template and its view.
func (b *Book) from(name string, view any) func(*bytes.Buffer) error {
	return func(out *bytes.Buffer) error { return b.theme.InEbook.ExecuteTemplate(out, name, view) }
}

// Templates are those that a theme must have for an e-book, beside those of the pages.
var Templates = []string{"ebook-head", "ebook-end", "ebook-title", "ebook-contents", "ebook-answers", "ebook-beside"}

// frameView is what stands around the words of a document.
type frameView struct {
	Language, Title, Handbook string
	Kind                      string // of what it holds, in epub:type; may be empty
	Style                     string // address of the style sheet
}

// titleView is the first document.
type titleView struct {
	Title, Description string
	Studio             course.Studio
	Licence            string
	Law                string // one of course.Laws; empty: all are compared
	Edition            string // ISO 8601; empty where the course knows no day
	Site               string // where the handbook is published; empty when unknown
	Teaching           bool
}

func (b *Book) titleDocument() document {
	c := b.course
	return document{imprint.EbookTitle, c.Title, "titlepage", b.from("ebook-title",
		titleView{c.Title, c.Description, c.Studio, c.Licence, c.Law, edition(c), c.PublishedAt, b.teaching})}
}

// contentsView is the navigation: what is in the e-book, in order, and the marks by
// which a reading system finds what it has a key for.
type contentsView struct {
	Parts     []contentsPart
	Landmarks []landmark
}

type contentsPart struct {
	Line  contentsLine // without an address where no document opens the part
	Lines []contentsLine
}

type contentsLine struct{ Number, Title, Address string }

type landmark struct{ Kind, Title, Address string }

func (b *Book) contentsDocument(e *imprint.Ebook) document {
	at := imprint.Place{Page: contents, Ebook: e}
	v := contentsView{Landmarks: b.landmarks(at)}
	for _, p := range b.parts {
		one := contentsPart{Line: contentsLine{p.number, p.title, ""}}
		for n, c := range p.chapters {
			line := contentsLine{c.number, c.sheet.Title, at.To(c.sheet.Address)}
			if n == 0 && p.opened {
				one.Line = line
			} else {
				one.Lines = append(one.Lines, line)
			}
		}
		if p.answers != "" {
			one.Lines = append(one.Lines, contentsLine{"", b.theme.Say("ebook-answers"), at.To(p.answers)})
		}
		v.Parts = append(v.Parts, one)
	}
	return document{contents, b.theme.Say("contents"), "", b.from("ebook-contents", v)}
}

// besideView is the document that names what the handbook has and the e-book has not.
type besideView struct{ Pages []besideLine }

type besideLine struct{ ID, Title, Address string }

func (b *Book) besideDocument(pages map[string]bool) document {
	var v besideView
	for _, at := range sorted(pages) {
		line := besideLine{ID: imprint.ChapterKey(at), Title: at, Address: at}
		if s := b.sheets[at]; s != nil {
			line.Title = s.Title
		}
		v.Pages = append(v.Pages, line)
	}
	return document{imprint.EbookBeside, b.theme.Say("ebook-beside"), "", b.from("ebook-beside", v)}
}

// head is the beginning of every document; html/template takes it for no markup.
const head = `<?xml version="1.0" encoding="UTF-8"?>` + "\n" + `<!DOCTYPE html>` + "\n"

// document prints a document whole.
func (b *Book) document(e *imprint.Ebook, p *packer, d document) (*entry, error) {
	frame := frameView{b.course.Language, d.title, b.course.Title, d.kind, up(d.address) + styleFile}
	var made *entry
	err := imprint.Lend(func(out *bytes.Buffer) error {
		out.WriteString(head)
		if err := b.theme.InEbook.ExecuteTemplate(out, "ebook-head", frame); err != nil {
			return err
		}
		if err := d.body(out); err != nil {
			return err
		}
		if err := b.theme.InEbook.ExecuteTemplate(out, "ebook-end", frame); err != nil {
			return err
		}
		if err := wellFormed(out.Bytes()); err != nil {
			return err
		}
		var err error
		made, err = newDocument(p, d, out.Bytes())
		return err
	})
	if err != nil {
		return nil, inDocument(d, err)
	}
	return made, nil
}

// answersView is the answers to the questions of a unit.
type answersView struct {
	Title string
	Pages []answersPage
}

type answersPage struct {
	Title, Address string
	Answers        []answer
}

// answer is the answer to a question: what is right, and why, then what is not.
type answer struct {
	ID, Back string // its own id; where the question stands
	Number   int
	Ask      string
	Right    []told
	Wrong    []told
}

type told struct{ Text, Because string }
