package find

import (
	"html"
	"regexp"
	"strings"
	"unicode/utf8"

	"slipbook/generator/markup"
	"slipbook/generator/proof"
)

// How many letters a line of what stands at a place may have: the index travels.
const (
	lineLength     = 64
	partLineLength = 40 // of a part of a page
)

// tag is a tag in finished HTML. One that marks words within a line leaves no gap.
var (
	tag    = regexp.MustCompile(`<[^>]*>`)
	inline = regexp.MustCompile(`</?(?:em|strong|code|a|sub|sup|span|b|i)\b[^>]*>`)
)

// read returns what a reader reads of finished HTML, with a space where a block ends.
func read(finished string) string {
	return html.UnescapeString(tag.ReplaceAllString(inline.ReplaceAllString(finished, ""), " "))
}

// reader reads the pieces of a page, heading by heading.
type reader struct {
	page        *proof.Page
	forTeaching bool
	words       strings.Builder // those before the first heading, then those of each part
	part        *markup.Heading // nil before the first
	title       bool            // in the words of a heading
	parts       []part
}

// part is what stands under a heading or, before the first, under none; or is the
// answer to a question.
type part struct {
	heading *markup.Heading
	asked   *markup.Block
	text    string
}

// partsOf returns what stands on a page, in order.
func partsOf(page *proof.Page, forTeaching bool) []part {
	r := &reader{page: page, forTeaching: forTeaching}
	r.pieces(page.Document.Pieces)
	r.end()
	return r.parts
}

// end ends a part.
func (r *reader) end() {
	r.parts = append(r.parts, part{heading: r.part, text: strings.Join(strings.Fields(r.words.String()), " ")})
	r.words.Reset()
}

// pieces reads pieces in order. Footnotes stand last, and hold sources.
func (r *reader) pieces(pieces []markup.Piece) {
	for _, p := range pieces {
		switch {
		case p.Note != nil && p.Note.Kind == markup.NoteEntry:
			return
		case p.Note != nil:
		case p.Heading != nil && p.End:
			r.title = false
		case p.Heading != nil:
			r.end()
			r.part, r.title = p.Heading, true
		case p.Block != nil:
			r.block(p.Block)
		case p.Ref != nil && p.Ref.Kind == markup.PictureRef:
			r.words.WriteString(" " + p.Ref.Title + " ")
		case p.Ref != nil || r.title:
		default:
			r.words.WriteString(read(p.HTML))
		}
	}
}

// block reads one of the handbook's own blocks.
func (r *reader) block(b *markup.Block) {
	switch {
	case b.Kind == markup.AskedBlock:
		r.parts = append(r.parts, part{asked: b, text: textOf(b.Pieces)})
	case b.Kind == markup.TeachingBlock && !r.forTeaching:
	case b.Ask != nil: // it asks what the lesson says
	default:
		r.words.WriteString(" " + b.Words + " ")
		r.pieces(b.Pieces)
	}
}

// textOf returns what a reader reads of some pieces.
func textOf(pieces []markup.Piece) string {
	r := &reader{}
	r.pieces(pieces)
	return strings.Join(strings.Fields(r.words.String()), " ")
}

// line is the beginning of a text, to the end of a word.
func line(text string) string { return cut(text, lineLength) }

// cut is the beginning of a text of so many letters at most, to the end of a word.
func cut(text string, most int) string {
	text = strings.Join(strings.Fields(text), " ")
	if utf8.RuneCountInString(text) <= most {
		return text
	}
	short := string([]rune(text)[:most])
	if at := strings.LastIndexByte(short, ' '); at > 0 {
		short = short[:at]
	}
	return strings.TrimRight(short, " ,;:") + " …"
}
