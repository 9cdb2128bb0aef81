// Package press lays out pages: a course that was read, a theme and the shared
// files go in, named pages come out, in memory. It exists so that publish and
// show print the same bytes.
//
// Each kind of page has a file of its own (home.go, lesson.go, state.go, ...)
// that turns the course into a view: a struct that holds exactly what the
// template of the same name prints. Templates decide nothing and know no
// addresses; views hold addresses that are already relative to their page.
// Every word that a page prints beside the course's own stands in the theme's
// words.yaml.
//
// Rules the compiler cannot check: a view is made and printed by one worker,
// but many workers do so at once, so a Press is never written to after New
// (printed, which only remembers, is made for that);
// and an id with a dot in it ("caution.1") belongs to the theme, since ids
// made from headings and terms never hold one.
package press

import (
	"html/template"
	"io/fs"
	"maps"
	"slices"
	"sync"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/generator/assets"
	"slipbook/generator/course"
	"slipbook/generator/proof"
)

// Edition is a finished handbook: bytes by address from its root, pages and
// shared files alike.
type Edition map[string][]byte

// Press holds a course and a theme, ready to print. It implements
// markup.Surroundings.
type Press struct {
	course      *course.Course
	templates   *template.Template
	words       words
	icons       map[string]template.HTML // by name without ".svg"
	calculators form.List                // in the course's language
	settings    catalog.Settings         // what the calculators must know of the course
	pages       map[string]*course.Page  // by content path
	table       *course.Decoration       // of media by state; empty while the course has none
	terms       map[string]course.Term
	pictures    map[string]string // address by content path, of those that are not drawings
	teaching    bool              // a copy for the instructor: notes for teaching are shown
	printed     sync.Map          // of place to template.HTML: what standing has printed
}

// New makes a press for a course from a theme's folder. It implements
// markup.Surroundings, so that lessons can be read before anything is printed.
// A course that was only partly loaded is accepted here. Every fault of the
// theme that can be seen without printing is an error: a template that does
// not parse, a word that words.yaml lacks, a state without a drawing.
func New(c *course.Course, theme fs.FS) (*Press, error) {
	p := &Press{
		course:      c,
		settings:    c.PageAnswers(),
		calculators: catalog.In(c.Language),
		pages:       make(map[string]*course.Page),
		terms:       make(map[string]course.Term),
		pictures:    make(map[string]string),
	}
	for _, page := range c.Pages() {
		p.pages[page.File] = page
	}
	for _, t := range c.Glossary {
		p.terms[t.ID] = t
	}
	for file, picture := range c.Pictures {
		if picture.SVG == nil {
			p.pictures[file] = pictureAddress(picture)
		}
	}
	if p.table = c.Decoration; p.table == nil {
		p.table = &course.Decoration{}
	} else {
		p.settings.Table = c.Decoration.Table()
		p.settings.Table.Words = p.settings.Words
	}
	return p, p.readTheme(theme)
}

// ForTeaching makes it the press of a copy for the instructor, in which the
// notes for teaching stand in the lessons and on a page of their own. It is said
// before the first page is read.
func (p *Press) ForTeaching() { p.teaching = true }

// Print lays out every page. The same course, theme and bundle give the same
// bytes, whatever the number of workers.
func (p *Press) Print(r *proof.Reading, b *assets.Bundle) (Edition, error) {
	i := newImpression(p, r, b)
	parcels, err := i.wrapParcels()
	if err != nil {
		return nil, err
	}
	i.owed = i.debts()
	sheets := i.homeSheets()
	sheets = append(sheets, i.unitSheets()...)
	sheets = append(sheets, i.lessonSheets()...)
	sheets = append(sheets, i.chartSheets()...)
	sheets = append(sheets, i.stateSheets()...)
	sheets = append(sheets, i.mediumSheets()...)
	sheets = append(sheets, i.calculatorSheets()...)
	sheets = append(sheets, i.gatheredSheets()...)
	sheets = append(sheets, i.glossarySheet(), i.contentsSheet(), i.noticesSheet(), i.notFoundSheet())
	pages, err := i.printAll(sheets)
	if err != nil {
		return nil, err
	}
	sheets, pages, ofBook, err := i.addBook(sheets, pages)
	if err != nil {
		return nil, err
	}
	return bind(sheets, pages, b.Files, i.shownPictures(), parcels, ofBook)
}

// gatheredSheets are the pages that are gathered from the others.
func (i *impression) gatheredSheets() []sheet {
	answers, faults := i.answersSheets(), i.faultsSheets()
	i.has.answers, i.has.faults = len(answers) > 0, len(faults) > 0
	return slices.Concat(answers, faults, i.hazardsSheets(), i.cardSheets(), i.teachingSheets(), i.styleSheets())
}

// wrapParcels wraps the words of the calculators, and the course's decoration
// table for the pages that plan, and returns their files by address.
func (i *impression) wrapParcels() (map[string][]byte, error) {
	spoken, files, err := assets.Wrap("words", []byte(i.settings.Words.Reactor().Encode()))
	if i.spoken = spoken; err != nil || i.settings.Table == nil {
		return files, err
	}
	table, more, err := assets.Wrap("table", []byte(i.settings.Table.Encode()))
	i.wrapped = table
	maps.Copy(files, more)
	return files, err
}
