// Package markup turns the Markdown of a lesson into HTML, once, and keeps
// what later stages ask about it: its headings, its links, its blocks. It
// exists because goldmark passes in silence over much that is a mistake in a
// lesson (a reference that is not defined, a footnote nobody uses, raw HTML),
// and because the handbook's own blocks, which are fenced blocks in the file,
// become parts of the page here.
//
// markup knows neither the theme nor the other pages: what it needs of them it
// asks through Surroundings.
package markup

import (
	"slipbook/generator/course"
	"slipbook/generator/finding"
)

// Surroundings is what a page needs to know of the handbook around it. The
// press implements it; tests use a small one of their own. All methods may be
// called from many goroutines.
type Surroundings interface {
	// Page finds the hand-written page with this content path.
	Page(path string) (*course.Page, bool)
	// Picture finds the picture with this content path.
	Picture(path string) (*course.Picture, bool)
	// PictureAddress gives the address, from the root of the handbook, of a
	// picture that is not drawn into its page ("pictures/jar-1A2B3C4D.png").
	// It is asked only for paths that Picture finds.
	PictureAddress(path string) string
	// Made finds a page or place that no Markdown file holds, by scheme and
	// id: "glossary:bisque", "state:bisque", "calculator:slip-density",
	// as an address from the root of the handbook ("glossary.html#bisque").
	Made(scheme, id string) (address string, ok bool)
	// Section says what the part of a lesson under a heading is for.
	Section(heading string) Section
	// Back says how the way back from a footnote reads, and its name for those
	// who hear it: from a note to one of the places that refer to it, both
	// counted from 1, where there are so many places.
	Back(note, place, places int) (words, name string, err error)
	// Sum checks a link to a calculator with its boxes filled in: the request
	// that stands after "?" and the words of the link, whose every number must
	// be one that the calculator answers or was given. It gives the address
	// from the root of the handbook, or what is wrong and what to write.
	Sum(calculator, request, words string) (address, fault, do string)
	// Block renders one of the handbook's own blocks to HTML for the page.
	// Problems carry offsets into the page's source.
	Block(page *course.Page, b Block) (html []byte, problems []Problem)
}

// Block is one of the handbook's own fenced blocks, its body already read.
type Block struct {
	Kind   string    // "caution", "asked", "teaching", "calculator", "question" or "stages"
	Words  string    // the rest of the info string after Kind
	Offset int       // of the info string in the page's source
	Number int       // 1 for the first block of its kind on the page
	HTML   []byte    // caution, asked, teaching: the body, rendered
	Apart  []byte    // caution, asked, teaching: the body for other pages, without marks of footnotes
	Fill   []Setting // calculator: the inputs filled in, in the order written
	Ask    *Question // question
	Part   *Part     // stages
}

// Setting is one "input: value" line of a calculator block.
type Setting struct {
	Name, Value             string
	NameOffset, ValueOffset int
}

// Question is a self-check question.
type Question struct {
	Ask     string
	Answers []Choice // two or more, one or more of them right
}

// Choice is one answer to a question, with why it is right or not.
type Choice struct {
	Text    string
	Right   bool
	Because string
}

// Part is what a stages block shows of the decoration table. At least one of
// the three is named.
type Part struct {
	Medium, State, Technique Name
}

// Name is an id with the place where it was written; empty where none was.
type Name struct {
	ID     string
	Offset int
}

// Problem is something wrong at an offset of a page's source.
type Problem struct {
	Offset int
	Rule   *finding.Rule
	Text   string
	Do     string
}

// Document is what is kept of a page; the tree is dropped.
type Document struct {
	Page        *course.Page
	HTML        []byte
	Headings    []Heading
	Links       []Link   // to other pages of the handbook, in order
	Looks       [][]byte // what one sees when it is right, in order, without marks of footnotes
	Faults      []Fault  // what goes wrong, in order, without marks of footnotes
	Made        []string // "state:bisque": what the page links to that no Markdown file holds, in order, once each
	Stages      []Part   // what the stages blocks show, in order
	Calculators []string // names of the calculators on the page, in order, once each
	Questions   int
	Cautions    int
	Asked       []Asked  // what students ask, in order
	Teaching    [][]byte // the notes for teaching, rendered, in order
	Pictures    int
	Shown       []string // content paths of the pictures shown, in order, once each
	Prose       *Prose   // what a reader reads, for the rules about wording; nil where the page could not be read, or when it was dropped

	ids map[string]bool // of the headings
}

// Asked is a question that students ask, with its answer.
type Asked struct {
	Ask    string
	HTML   []byte // the answer, without marks of footnotes
	Number int    // on the page, from 1
}

// Heading is one heading with its id.
type Heading struct {
	Level  int
	ID     string
	Text   string
	Offset int
}

// Link is a link to a page of the handbook.
type Link struct {
	To       string // content path
	Fragment string // heading id, without "#"; may be empty
	Offset   int
}
