// Package course is a handbook as its instructor wrote it: the units and
// lessons in their order, the glossary, the decoration table, the drawings and
// the studio's own constants, read once from a folder of Markdown and YAML and
// checked so strictly that every later stage may trust it. It exists so that
// one place knows how the content folder is laid out.
//
// Load never stops at the first thing that is wrong; it returns as much of the
// course as it could make, and a finding for each fault with its file, line
// and column.
//
// Nothing here knows about Markdown beyond the opening YAML block, about HTML,
// or about where pages are published except for each page's own address.
package course

import (
	"crypto/sha256"
	"path"

	"slipbook/generator/finding"
)

// Course is one handbook.
type Course struct {
	Title       string
	Description string
	Language    string // BCP 47, for example "en-GB"
	Decimal     byte   // '.' or ',': the decimal mark of Language
	Law         string // one of Laws, whose limits its pages print; empty: all are compared
	Measures    string // "metric", "us" or "imperial": whose pint, quart, gallon and cup is meant by the bare word
	Licence     string // of the handbook's own text, as printed at a page's foot; may be empty
	PublishedAt string // absolute address where the handbook is published, ending in "/"; empty when unknown
	Studio      Studio
	Cones       HouseCones
	Sections    Sections
	Bodies      []Body
	Scales      []Scale     // of the studio, by what they take
	Working     []Working   // the studio's working numbers
	AskedFirst  []Asked     // what students ask most, in the order of the quick answers
	BookParts   []string    // which of the parts BookParts the printed book holds behind the units
	FirstAid    string      // content path of the page of first aid, one tap from every page; empty when there is none
	Home        *Page       // home.md: the words on the home page; nil when there is none
	Units       []*Unit     // in order; each with its Page
	Style       *Page       // style.md: every element of a page, for those who write; nil when there is none
	Glossary    []Term      // in the file's order
	Faults      []*Fault    // what students see go wrong, likewise
	Decoration  *Decoration // never nil after Load
	Materials   []*Material // of the studio, by id
	// GenericMaterials is the program's own list, by id: what is true of all of a
	// kind, without a class, since that belongs to one supplier's product.
	GenericMaterials []*Material
	Recipes          []*Recipe           // by id
	Tiles            []*Tile             // in the order of the file
	Sessions         []*Session          // the classes, likewise
	Leach            []*Leach            // reports of leach tests, in the order of the file
	Pictures         map[string]*Picture // by content path, "pictures/jar.svg"

	pages map[string]*Page // by content path; nil in a course that was not loaded
}

// Studio is whose handbook this is.
type Studio struct {
	Name string
	Note string // one sentence under the name, may be empty
}

// HouseCones are the cones the studio fires to, as text: 06 and 6 differ.
type HouseCones struct {
	Bisque string
	Glaze  string
}

// Sections are the headings of the parts of a lesson that are also gathered on
// pages of their own: what one sees when it is right, and what goes wrong.
type Sections struct {
	Look  string
	Wrong string
}

// Body is a clay body of the studio.
type Body struct {
	ID        string
	Name      string
	Shrinkage float64 // total linear shrinkage at Cone, percent of fresh length
	Cone      string
}

// Scale is one scale of the studio, in g.
type Scale struct {
	To   float64 // the most that it takes
	Step float64 // the smallest step that it shows
}

// Working is a number that the studio works with.
type Working struct {
	Of        string // what it is of: slip (specific gravity), wash (g dry per 100 mL) or stain (percent over base)
	For       string // the purpose, in words that go on: "to brush or pour"
	Low, High float64
}

// Unit is a part of the course: an opening page and its lessons in order.
type Unit struct {
	ID      string // its folder's name, "slip"
	Page    *Page  // units/slip/unit.md
	Lessons []*Page
}

// PageKind tells what a page of the content folder is.
type PageKind string

// The kinds of page that are written by hand.
const (
	HomePage   PageKind = "home"
	UnitPage   PageKind = "unit"
	LessonPage PageKind = "lesson"
	StylePage  PageKind = "style"
)

// Page is one Markdown file with its opening block.
type Page struct {
	Kind    PageKind
	File    string // content path, "units/slip/consistency.md"
	Address string // where it is published, "slip/consistency.html"
	Unit    *Unit  // nil for the home page
	// Language is that of the page, BCP 47.
	Language string
	Source   []byte // the whole file, the opening block blanked with spaces, so that offsets are file offsets
	Head     Head
	// NoHead and NoText are set where the opening block, or anything at all, could
	// not be read, which is reported: what is then missing is not the writer's.
	NoHead, NoText bool
}

// Numbered reports whether the page's steps are numbered through: it is a lesson at
// the bench.
func (p *Page) Numbered() bool { return p.Kind == LessonPage && p.Head.Type == ForBench }

// Head is a page's opening block. The keys are Dublin Core or LRMI terms where
// one fits, the trade's words otherwise.
type Head struct {
	Title        string
	Description  string
	Creator      string
	Date         string   // ISO 8601 date
	Teaches      []string // what the student will be able to do
	TimeRequired Duration // ISO 8601 duration in the file, "PT20M"
	Type         ResourceType
	Medium       string   // id of a medium: the clay-state strip shows its verdicts
	Technique    string   // id of a technique of the decoration table, or free words
	Needs        []string // what to have on the bench
	Before       []Link   // "before this at the bench"; empty = the page before in order
	After        []Link   // "after this"; empty = the next page in order
}

// ResourceType is what a page is for its reader (LRMI's learningResourceType). What
// a lesson at the bench has to have, steps and faults among it, the others need not.
type ResourceType string

// The types of pages.
const (
	ForBench   ResourceType = ""        // "lesson": done with the hands, step by step
	ForReading ResourceType = "reading" // looked at and thought about, away from the bench
	ForPaper   ResourceType = "sheet"   // printed, handed out, filled in
)

// Duration is a time in whole minutes.
type Duration int

// Link is a way that an opening block names.
type Link struct {
	File string // content path of the page meant
}

// Asked is something that students ask, as the opening line of an asked block says it.
type Asked struct {
	Words string
	Spot  finding.Spot
}

// Term is one entry of the glossary.
type Term struct {
	ID    string // its address within the glossary page
	Word  string
	Also  []string // other words for the same thing
	Means string   // one or two plain sentences
	See   []string // ids of other terms
}

// Picture is a file of the pictures folder: a drawing that stands in its page, or
// files beside the page.
type Picture struct {
	Path   string // content path
	Width  int    // CSS pixels; of a photo, as wide as a page shows it
	Height int
	SVG    []byte        // a drawing made safe to stand inside a page, root element without width, height or title; nil for other kinds
	Files  []PictureFile // what is published of other kinds, the narrowest first
	points int           // of the photo that they were made of
}

// PictureFile is one of the files in which a picture is published.
type PictureFile struct {
	Width  int    // points
	Ending string // of its name, ".jpg"
	Sum    [sha256.Size]byte
	size   int
	data   func() ([]byte, error)
}

// Data returns the bytes of the file. It may read them from the disk, or make them
// again; an error says why it could not.
func (f PictureFile) Data() ([]byte, error) { return f.data() }

// Whole is a picture that is published as one file, whose bytes stay in memory.
func Whole(file string, width, height int, data []byte) *Picture {
	return &Picture{Path: file, Width: width, Height: height, Files: []PictureFile{{
		Width: width, Ending: path.Ext(file), Sum: sha256.Sum256(data), size: len(data), data: func() ([]byte, error) { return data, nil }}}}
}

// FindPage finds the hand-written page with this content path.
func (c *Course) FindPage(path string) (*Page, bool) {
	if c.pages != nil {
		p, ok := c.pages[path]
		return p, ok
	}
	for _, p := range c.Pages() {
		if p.File == path {
			return p, true
		}
	}
	return nil, false
}

// Pages lists every hand-written page in reading order, home first; last comes
// the page for those who write.
func (c *Course) Pages() []*Page {
	var pages []*Page
	if c.Home != nil {
		pages = append(pages, c.Home)
	}
	for _, u := range c.Units {
		if u.Page != nil {
			pages = append(pages, u.Page)
		}
		pages = append(pages, u.Lessons...)
	}
	if c.Style != nil {
		pages = append(pages, c.Style)
	}
	return pages
}
