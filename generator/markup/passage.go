package markup

import (
	"cmp"
	"slices"
)

// Prose is what a reader reads of a page, in the page's order: its passages,
// one after another in one text, and the way back from that text to the file.
// It exists for the rules about wording, which ask for sentences and words and
// not for Markdown. It is as large as the page; whoever has checked it drops
// it.
type Prose struct {
	Text     string // the passages, a line each
	Passages []Passage
	Links    []Linked  // in order
	Cautions []Caution // in order
	Steps    bool      // there is an ordered list outside the handbook's own blocks

	spans []span
}

// Passage is words that are read in one go: a paragraph, the words of a list
// item or of a table cell, a heading. A line end in the file is a space in it,
// escapes and entities are what they mean; for what is no words (inline code, a
// picture, an address) one Thing stands. A mark of a footnote leaves nothing.
type Passage struct {
	Kind     PassageKind
	Start    int  // in Prose.Text
	End      int  // in Prose.Text
	Offset   int  // in the source: where it begins
	Note     bool // it stands in a footnote
	Teaching bool // only the instructor reads it
	Cell     bool // of a table
	Step     bool // of an ordered list outside the handbook's own blocks
}

// PassageKind says what a passage is.
type PassageKind uint8

// The kinds of passage.
const (
	RunningWords PassageKind = iota // of a paragraph, a list item, a definition, a table cell
	HeadingLine                     // of a heading
	TitleLine                       // behind the name of a block of Markdown: what a caution warns of, what students ask
	CaptionLine                     // under a picture
	PictureWords                    // for whoever cannot see the picture
	BodyLine                        // in a block of YAML: what a question asks, an answer, the reason
)

// Linked is a piece of Prose.Text that is a link's words.
type Linked struct {
	Start, End int
	To         string // as written: "glossary:bisque"
}

// Caution is a caution as the rules about cautions see it.
type Caution struct {
	Title       string
	Offset      int  // of the info string in the source
	First, Last int  // its passages are Passages[First:Last], its title not among them
	Guards      bool // something follows it in its part of the page
}

// Thing stands in Prose.Text for what is no words.
const Thing = '\uFFFC'

// span says that Text from at on was written in the source from offset on,
// byte for byte, up to the next span; or stands for something that was, which
// may be shorter, or nothing.
type span struct {
	at, offset int
	stands     bool
}

// Offset returns the offset in the source of a place in Text. Between what stands
// for itself, as inside a curled quote, it is the place nearest before.
func (p *Prose) Offset(at int) int {
	i, exact := slices.BinarySearchFunc(p.spans, at, func(s span, at int) int { return cmp.Compare(s.at, at) })
	if !exact {
		i--
	}
	if i < 0 {
		return 0
	}
	offset := p.spans[i].offset + at - p.spans[i].at
	if i+1 < len(p.spans) && (p.spans[i].offset < p.spans[i+1].offset || p.spans[i].stands) {
		offset = min(offset, p.spans[i+1].offset)
	}
	return offset
}
