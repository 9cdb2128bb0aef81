package press

import (
	"bytes"
	"fmt"
	"html/template"
	"maps"
	"path"
	"sync"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/generator/address"
	"slipbook/generator/assets"
	"slipbook/generator/course"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
)

// impression is one printing of the whole handbook: a theme, what was read of
// the course, and the shared files that pages load.
type impression struct {
	*theme.Theme
	reading     *proof.Reading
	course      *course.Course
	addresses   *address.Map
	settings    form.Settings      // what the calculators must know of the course
	table       *course.Decoration // of media by state; empty while the course has none
	terms       map[string]course.Term
	forTeaching bool // a copy for the instructor
	bundle      *assets.Bundle
	calculators form.List     // in the course's language
	order       []*proof.Page // every hand-written page, in reading order
	place       map[*course.Page]int
	documents   map[*course.Page]*proof.Page
	spoken      assets.Parcel     // the words of the calculators
	wrapped     assets.Parcel     // the decoration table for pages with a plan; empty without a table
	parcels     map[string][]byte // the files of both
	blocks      map[string]blockView
	sheets      []sheet
	there       map[string]bool           // addresses of the sheets
	book        *bookPlan                 // nil while the theme prints no book
	faultsOn    map[string]string         // the pages of what goes wrong with a medium, by its id
	faultsAt    map[string][]faultsSource // what stands on each page of what goes wrong
	notesOn     map[*course.Unit]string   // the pages of the notes for teaching a unit
	owed        map[string]func() []owed  // what pages must say of safety, by address
	kept        sync.Map                  // of what is the same on many pages, once it was printed
}

// sheet is one page to print: where, with which template, from which view.
type sheet struct {
	address            string // from the handbook's root
	kind               *pageKind
	title, description string
	size               int                              // bytes that what it gathers is thought to take
	view               func(at place) (pageView, error) // made by the worker that prints the sheet
}

// newImpression gathers what pages are made of, and lists the pages.
func newImpression(t *theme.Theme, r *proof.Reading, b *assets.Bundle, c Copy) (*impression, error) {
	i := &impression{
		Theme: t, reading: r, course: r.Course, addresses: r.Addresses, settings: r.Settings, table: r.Course.Decoration, bundle: b, forTeaching: c.Teaching, blocks: blockViews(), calculators: catalog.In(r.Course.Language),
		order:     r.Pages,
		terms:     make(map[string]course.Term),
		place:     make(map[*course.Page]int),
		documents: make(map[*course.Page]*proof.Page, len(r.Pages)),
		there:     make(map[string]bool),
		faultsOn:  make(map[string]string),
		faultsAt:  make(map[string][]faultsSource),
		notesOn:   make(map[*course.Unit]string),
	}
	if i.table == nil {
		i.table = &course.Decoration{}
	}
	for _, term := range i.course.Glossary {
		i.terms[term.ID] = term
	}
	for n, page := range i.order {
		i.place[page.Page], i.documents[page.Page] = n, page
	}
	for _, s := range i.table.States {
		if _, ok := i.Icons["state-"+s.ID]; !ok {
			return nil, fmt.Errorf("theme: no drawing icons/state-%s.svg for the state %q", s.ID, s.ID)
		}
	}
	if err := i.wrapParcels(); err != nil {
		return nil, err
	}
	i.list()
	i.owed = i.debts()
	return i, nil
}

// list lists the pages, the book's last, since it is made of the others.
func (i *impression) list() {
	for n := range pageKinds {
		kind := &pageKinds[n]
		for _, s := range kind.sheets(i) {
			s.kind = kind
			i.sheets = append(i.sheets, s)
			i.there[s.address] = true
		}
	}
	if i.bundle.Book != "" {
		i.there[address.Book] = true
		i.book = i.planBook()
		i.sheets = append(i.sheets, i.bookSheets()...)
	}
}

// wrapParcels wraps the words of the calculators, and the course's decoration
// table for the pages that plan.
func (i *impression) wrapParcels() (err error) {
	i.parcels = map[string][]byte{}
	spoken, files, err := i.bundle.Wrap("words", []byte(i.settings.Words.Reactor().Encode()))
	i.spoken = spoken
	maps.Copy(i.parcels, files)
	if err != nil || i.settings.Table == nil {
		return err
	}
	table, files, err := i.bundle.Wrap("table", []byte(i.settings.Table.Encode()))
	i.wrapped = table
	maps.Copy(i.parcels, files)
	return err
}

// files returns what is no page, by address.
func (i *impression) files() map[string][]byte {
	all := maps.Clone(i.bundle.Files)
	maps.Copy(all, i.parcels)
	maps.Copy(all, i.shownPictures())
	if i.book != nil {
		maps.Copy(all, i.book.styles)
	}
	return all
}

// printOne makes one sheet's view and prints it within its frame.
func (i *impression) printOne(s sheet) ([]byte, error) {
	view, err := s.view(place{page: s.address})
	if err != nil {
		return nil, err
	}
	frame := view.frame()
	top, err := i.around(frameTop, s, frame)
	if err != nil {
		return nil, err
	}
	end, err := i.around(frameEnd, s, frame)
	if err != nil {
		return nil, err
	}
	return output(func(page *bytes.Buffer) error {
		if err := i.Pages.ExecuteTemplate(page, frameHead, frame); err != nil {
			return err
		}
		page.WriteString(string(top))
		if err := fill(page, i.Pages, s.kind.template, view); err != nil {
			return err
		}
		page.WriteString(string(end))
		return i.settle(s, page.Bytes())
	})
}

// aroundKey tells apart what stands around the words of pages: the same for all
// pages of a kind that have the same places to go, from the same folder, and the
// same strip.
type aroundKey struct{ template, folder, kind, medium string }

// around prints a part of the frame of a page, once for all pages that have the
// same.
func (i *impression) around(part string, s sheet, frame shell) (template.HTML, error) {
	key := aroundKey{part, path.Dir(s.address), s.kind.template, frame.medium}
	if frame.unlike {
		return execute(i.Pages, part, frame)
	}
	if html, ok := i.kept.Load(key); ok {
		return html.(template.HTML), nil
	}
	html, err := execute(i.Pages, part, frame)
	if err == nil {
		i.kept.Store(key, html)
	}
	return html, err
}

// templatesAt returns the templates that print at a place.
func (i *impression) templatesAt(at place) *template.Template {
	if at.book != nil {
		return i.InBook
	}
	return i.Pages
}

// shownPictures returns the files of the pictures that pages show beside their
// words, by address. Drawings are part of their pages already.
func (i *impression) shownPictures() map[string][]byte {
	files := make(map[string][]byte)
	for _, page := range i.order {
		for _, t := range page.Targets {
			if t.Picture != nil && t.Address != "" {
				files[t.Address] = t.Picture.Data
			}
		}
	}
	return files
}
