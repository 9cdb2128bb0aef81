// Package markup reads the Markdown of a page into a Document: pieces of
// finished HTML, with the references, headings and blocks between them that only
// the rest of the handbook can finish. It exists because goldmark passes in
// silence over much that is a mistake in a lesson (a reference that is not
// defined, a footnote nobody uses, raw HTML), and because a lesson's words stand
// in many places: on its page, on a card, among the answers, in the book.
//
// A Document depends on the page's source and language alone. It knows no
// theme, no other page and no address of its own, so that it can be kept as long
// as its source stays the same, and set wherever it is wanted.
package markup

import "slipbook/generator/finding"

// Document is a page as it is written, in pieces, in order. It is never written
// to once it is read; goroutines share it.
type Document struct {
	Pieces   []Piece
	Headings []*Heading
	Refs     []*Ref       // every reference, whose Number is its place here
	Blocks   []*Block     // the handbook's own, in order within a kind
	Steps    []*Step      // in order; on a page that is no lesson, the items of its ordered lists all the same
	Found    finding.List // what is wrong with the page by itself; whoever knows the file names it
	Partial  bool         // a block could not be read, or a fence swallowed what follows it: what is missing may be there

	ids  map[string]bool // of the headings
	made []string
}

// Piece is a part of a page. Exactly one of those before End is set.
type Piece struct {
	HTML     string    // finished: without an address, an id or a heading in it
	Ref      *Ref      // a link, where it begins and where it ends, or a picture
	Block    *Block    // one of the handbook's own blocks
	Heading  *Heading  // where it begins and where it ends
	Note     *Note     // what belongs to a footnote
	StepList *StepList // where it begins and where it ends
	Step     *Step     // likewise
	End      bool      // of what begins and ends: it ends here
}

// Ref is a reference to something outside the page's words: as written, with its
// place.
type Ref struct {
	Kind   RefKind
	To     string // as written, escapes resolved: "../wash/strength.md#why", "state:bisque", "slip-density?mass=174.5"
	Words  string // of the link, without marks; of a picture, for whoever cannot see it
	Title  string // of the link; of a picture that stands alone, its caption
	Offset int    // in the source
	Number int    // its place in Document.Refs
	Alone  bool   // a picture in a paragraph of its own
}

// RefKind says what a reference leads to.
type RefKind uint8

// The kinds of reference.
const (
	PageRef    RefKind = iota // the path of a page, a heading behind "#"
	MadeRef                   // what no Markdown file holds: "glossary:bisque", "state:bisque", "calculator:slip-density"
	FigureRef                 // a calculator with its boxes filled in, whose answer the words hold
	PictureRef                // the path of a picture
)

// Block is one of the handbook's own fenced blocks, its body read.
type Block struct {
	Kind   string    // its name, one of Kinds
	Words  string    // the rest of the info string after Kind
	Offset int       // of the info string in the page's source
	Number int       // 1 for the first block of its kind on the page
	Pieces []Piece   // of a block of Markdown: the body
	Fill   []Setting // of a calculator or a recipe: the inputs filled in, in the order written
	Ask    *Question // of a question
	Part   *Part     // of a part of the chart
	Limits *Limits   // of limits
}

// Setting is one "input: value" line of a calculator or recipe block.
type Setting struct {
	Name, Value             string
	NameOffset, ValueOffset int
}

// Limits is what a limits block asks for.
type Limits struct {
	About   Name
	Compare bool // the laws of all countries beside each other
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

// Heading is one heading with its id.
type Heading struct {
	Level  int
	ID     string
	Text   string
	Offset int
	Inner  bool    // it stands in one of the handbook's own blocks, a list or a quotation
	Items  []*Span // the items of the lists under it
	Pairs  []Pair  // those of its definition lists
}

// Span is a run of Document.Pieces.
type Span struct{ From, To int }

// Pair is a term with one of its definitions.
type Pair struct{ Term, Means *Span }

// Note is what a footnote has beside its words.
type Note struct {
	Kind   NoteKind
	Number int // of the note on the page, from 1
	Place  int // of a mark, and of the way back to it: among those of the note, from 1
	Places int // of a way back: how many places refer to the note
}

// NoteKind says what a Note is.
type NoteKind uint8

// The kinds of Note.
const (
	NoteMark  NoteKind = iota // the number where the note belongs
	NoteEntry                 // the beginning of the note itself, an item of a list
	NoteBack                  // the way back from it
)

// In returns the pieces of a run.
func (d *Document) In(s *Span) []Piece { return d.Pieces[s.From:s.To] }

// Named returns the blocks of a kind, in order.
func (d *Document) Named(kind string) []*Block {
	var all []*Block
	for _, b := range d.Blocks {
		if b.Kind == kind {
			all = append(all, b)
		}
	}
	return all
}

// Calculators returns the names of the calculators on the page, in order, each
// once.
func (d *Document) Calculators() []string {
	var names []string
	seen := map[string]bool{}
	for _, b := range d.Named(CalculatorBlock) {
		if !seen[b.Words] {
			seen[b.Words] = true
			names = append(names, b.Words)
		}
	}
	return names
}

// Made returns what the page links to that no Markdown file holds, a filled-in
// calculator as the calculator, each once: "state:bisque".
func (d *Document) Made() []string { return d.made }

// madeOf returns it of the references of a page.
func madeOf(refs []*Ref) []string {
	var all []string
	seen := map[string]bool{}
	for _, r := range refs {
		to := r.To
		switch r.Kind {
		case MadeRef:
		case FigureRef:
			calculator, _ := r.Figure()
			to = calculatorScheme + ":" + calculator
		default:
			continue
		}
		if !seen[to] {
			seen[to] = true
			all = append(all, to)
		}
	}
	return all
}
