// Package proof reads every page of a course, resolves every reference, works
// out every figure, and says everything that is wrong. It exists so that
// publish, show and the proof command can never differ in what they find. It
// needs no theme.
//
// What a page says wrongly by itself, markup finds; what the content folder
// says wrongly, course has found. proof puts the two together and adds what
// only shows beside the rest of the handbook: references that lead nowhere,
// figures that a calculator does not give, blocks that name what the course
// does not have, and the rules of a course: what a lesson has and how it is
// worded.
package proof

import (
	"slices"

	"slipbook/calculators/form"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
	"slipbook/generator/pool"
)

// Reading is a course with all its pages read and all references resolved.
type Reading struct {
	Course    *course.Course
	Addresses *address.Map
	Settings  form.Settings // what the calculators must know of the course
	Pages     []*Page       // in the order of Course.Pages
	Today     string        // the reader's: by it reports run out; of all pages the wall of test tiles alone holds it
}

// Reader reads courses, mostly one and the same as it is being written. It keeps
// what it read of pages that stay the same. The zero Reader is ready; it reads
// one course at a time.
type Reader struct {
	// Today is a date of ISO 8601. Safety data sheets that were to be read again
	// before it are errors, tiles that were to be tried again before it warnings, and
	// reports of leach tests that ended before it answer nothing; while it is empty
	// none is.
	Today string

	readings pool.Kept[readingKey, *reading]
	figures  pool.Kept[figureKey, figureFault]
	refused  pool.Kept[figureKey, []form.Phrase] // of blocks, with no words
}

// Read reads all pages, checks each page and what pages say of each other, and
// returns the findings sorted, those of loading included. The reading is
// complete even where there are findings, as far as the course is; a nil course
// gives an empty one.
func (r *Reader) Read(c *course.Course, loading finding.List) (*Reading, finding.List) {
	all := append(finding.List(nil), loading...)
	if c == nil {
		all.Sort()
		return &Reading{}, all
	}
	r.readings.Begin()
	r.figures.Begin()
	r.refused.Begin()
	rules := newRules(c)
	reading, found := r.readPages(rules, c)
	all = append(all, found...)
	all = append(all, r.resolve(reading)...)
	all = append(all, checkDrawn(reading.Pages)...)
	all = append(all, rules.terms.checkLinks(reading.Pages)...)
	all = append(all, rules.spelling.checkTables(c)...)
	all = append(all, checkRegister(c, r.Today)...)
	if !all.Stop() {
		all = append(all, checkRecipes(reading)...)
		all = append(all, checkSessions(reading)...)
	}
	if !all.Stop() { // what is wrong may be the very place that would show it
		all = append(all, checkPictures(c, reading.Pages)...)
		all = append(all, rules.terms.checkUnused(reading.Pages)...)
		all = append(all, checkFaults(reading)...)
		all = append(all, checkAsked(reading)...)
	}
	all.Sort()
	return reading, all
}

// readPages reads and checks the pages, as many at once as there are processors.
// Findings come in the order of the pages, whichever was finished first.
func (r *Reader) readPages(rules *rules, c *course.Course) (*Reading, finding.List) {
	pages := c.Pages()
	made := make([]*Page, len(pages))
	documents := make([]*markup.Document, len(pages))
	findings := pool.Map(len(pages), func(i int) finding.List {
		page := pages[i]
		read := r.read(rules, page)
		made[i], documents[i] = &Page{Page: page, Document: read.document, uses: read.uses}, read.document
		return slices.Concat(named(page, read.document.Found), named(page, read.found))
	})
	settings := c.PageAnswers()
	if c.Decoration != nil {
		settings.Table = Table(c, c.Language, r.Today)
		settings.Table.Words = settings.Words
	}
	return &Reading{c, address.New(c, documents), settings, made, r.Today}, slices.Concat(findings...)
}

// Looks returns what a page says to look for.
func (r *Reading) Looks(p *Page) []*markup.Span { return looks(p.Document, r.Course.Sections) }
