package markup

import (
	"bytes"
	"cmp"
	"slices"

	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/util"
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
}

// PassageKind says what a passage is.
type PassageKind uint8

// The kinds of passage.
const (
	RunningWords PassageKind = iota // of a paragraph, a list item, a definition, a table cell
	HeadingLine                     // of a heading
	TitleLine                       // of a caution, or what students ask
	CaptionLine                     // under a picture
	PictureWords                    // for whoever cannot see the picture
	QuestionLine                    // of a question: what it asks, an answer, the reason
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

// Offset gives the offset in the source of a place in Text. Between what stands
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

// prose gathers what a reader reads. It runs before anything in the tree is
// replaced by its HTML.
func (p *page) prose(tree ast.Node) *Prose {
	r := &reader{source: p.Source, text: make([]byte, 0, len(p.Source)), prose: new(Prose)}
	r.blocks(tree)
	r.prose.Text = string(r.text)
	return r.prose
}

// reader goes once through a page's tree.
type reader struct {
	source   []byte
	text     []byte
	prose    *Prose
	next     int // offset in the source behind what was read last
	level    int // of the last heading
	own      int // depth in the handbook's own blocks and in footnotes
	note     bool
	teaching bool
	pictures []*ast.Image // met in the passage being read
	waiting  []waiting
}

// waiting is a caution behind which nothing has come so far.
type waiting struct {
	caution int // its place in Prose.Cautions
	level   int // of the heading that it stands under
}

// blocks reads what stands in a block.
func (r *reader) blocks(n ast.Node) {
	if c := n.FirstChild(); c != nil && c.Type() == ast.TypeInline {
		r.leaf(n)
		return
	}
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch c := c.(type) {
		case *ast.Heading:
			r.part(c.Level)
			r.blocks(c)
		case *container:
			r.container(c)
		case *xast.Footnote:
			r.note = true
			r.own++
			r.blocks(c)
			r.own--
			r.note = false
		case *ast.List:
			r.prose.Steps = r.prose.Steps || c.IsOrdered() && r.own == 0
			r.blocks(c)
		case *ast.FencedCodeBlock:
			if string(c.Language(r.source)) == questionBlock {
				r.question(c)
			} else {
				r.guarded()
			}
		case *ast.CodeBlock:
			r.guarded()
		default:
			r.blocks(c)
		}
	}
}

// container reads a caution, what students ask, or a note for teaching.
func (r *reader) container(c *container) {
	if c.kind == askedBlock {
		r.guarded()
	}
	before := r.teaching
	r.teaching = before || c.kind == teachingBlock
	after := c.infoAt + len(c.kind)
	if at := bytes.Index(r.source[after:], []byte(c.words)); c.words != "" && at >= 0 {
		start := r.begin(after + at)
		r.put([]byte(c.words), after+at)
		r.end(TitleLine, start, after+at)
	}
	first := len(r.prose.Passages)
	r.own++
	r.blocks(c)
	r.own--
	r.teaching = before
	if c.kind == cautionBlock {
		r.waiting = append(r.waiting, waiting{len(r.prose.Cautions), r.level})
		r.prose.Cautions = append(r.prose.Cautions, Caution{Title: c.words, Offset: c.infoAt, First: first, Last: len(r.prose.Passages)})
	}
}

// part begins a part of the page: what comes is no longer guarded by the
// cautions of the parts that end here, which wait last.
func (r *reader) part(level int) {
	r.level = level
	for n := len(r.waiting); n > 0 && r.waiting[n-1].level >= level; n-- {
		r.waiting = r.waiting[:n-1]
	}
}

// guarded notes that something comes that the cautions before it can guard.
// What stands in another of the handbook's blocks, or in a footnote, is not.
func (r *reader) guarded() {
	if r.own > 0 {
		return
	}
	for _, w := range r.waiting {
		r.prose.Cautions[w.caution].Guards = true
	}
	r.waiting = r.waiting[:0]
}

// leaf reads a block that holds words, then the words of its pictures.
func (r *reader) leaf(n ast.Node) {
	offset := position(n)
	if l := n.Lines(); l != nil && l.Len() > 0 {
		offset = l.At(0).Start
	}
	kind := RunningWords
	if n.Kind() == ast.KindHeading {
		kind = HeadingLine
	} else {
		r.guarded()
	}
	start := r.begin(offset)
	r.inline(n)
	r.end(kind, start, offset)
	for len(r.pictures) > 0 {
		picture := r.pictures[0]
		r.pictures = r.pictures[1:]
		r.picture(picture)
	}
}

// picture reads what is said of a picture: the words in its place, and its
// caption.
func (r *reader) picture(n *ast.Image) {
	offset := position(n)
	start := r.begin(offset)
	r.inline(n)
	r.end(PictureWords, start, offset)
	if len(n.Title) == 0 {
		return
	}
	next := r.next
	at := r.titleBehind(next, n, next+len(n.Title)+longestAddress)
	if n.Reference != nil { // whose definition may stand anywhere
		at = r.titleBehind(0, n, len(r.source))
	}
	start = r.begin(at)
	r.words(n.Title, at)
	r.end(CaptionLine, start, at)
	if n.Reference != nil {
		r.next = next
	}
}

// longestAddress is how far behind a picture's words its title is looked for.
const longestAddress = 4 << 10

// titleBehind finds a picture's title between its signs, behind an offset and
// before an end. The tree does not say where it stands; where it cannot be found
// it is said to be at the picture.
func (r *reader) titleBehind(offset int, n *ast.Image, end int) int {
	near := r.source[:min(len(r.source), end)]
	for at := offset; at < len(near); at++ {
		i := bytes.Index(near[at:], n.Title)
		if i < 0 {
			break
		}
		if at += i; at > 0 && bytes.IndexByte([]byte(`"'(`), near[at-1]) >= 0 {
			return at
		}
	}
	return position(n)
}

// begin opens a passage that stands at an offset of the source.
func (r *reader) begin(offset int) (start int) {
	r.next = offset
	return len(r.text)
}

// end closes a passage; one without anything to read is forgotten.
func (r *reader) end(kind PassageKind, start, offset int) {
	if len(bytes.TrimSpace(r.text[start:])) == 0 {
		r.text = r.text[:start]
		for n := len(r.prose.Links); n > 0 && r.prose.Links[n-1].Start >= start; n-- {
			r.prose.Links = r.prose.Links[:n-1]
		}
		return
	}
	r.prose.Passages = append(r.prose.Passages, Passage{kind, start, len(r.text), offset, r.note, r.teaching})
	r.text = append(r.text, '\n')
}

// inline reads what stands in a line.
func (r *reader) inline(n ast.Node) {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch c := c.(type) {
		case *ast.Text:
			if seg := c.Segment; c.IsRaw() {
				r.put(seg.Value(r.source), seg.Start)
			} else {
				r.words(r.source[seg.Start:seg.Stop], seg.Start)
			}
			if c.SoftLineBreak() || c.HardLineBreak() {
				r.put([]byte(" "), c.Segment.Stop)
			}
		case *ast.String: // a quote or a dash that goldmark set; it does not say where
			r.stand(c.Value, r.next, 0)
		case *ast.Link:
			start := len(r.text)
			r.inline(c)
			r.prose.Links = append(r.prose.Links, Linked{start, len(r.text), string(c.Destination)})
		case *ast.Image:
			r.pictures = append(r.pictures, c)
			r.put([]byte(string(Thing)), position(c))
		case *ast.CodeSpan, *ast.AutoLink:
			r.put([]byte(string(Thing)), position(c))
		case *ast.RawHTML, *xast.FootnoteLink, *xast.FootnoteBacklink:
		default:
			r.inline(c)
		}
	}
}

// words reads Markdown text that stands at an offset of the source: escapes and
// entities become what they mean.
func (r *reader) words(written []byte, offset int) {
	done := 0
	for i := 0; i < len(written); i++ {
		switch c := written[i]; {
		case c == '\\' && i+1 < len(written) && util.IsPunct(written[i+1]):
			r.put(written[done:i], offset+done)
			i++
			done = i
		case c == '&':
			semicolon := bytes.IndexByte(written[i:min(len(written), i+longestEntity)], ';')
			if semicolon < 0 {
				continue
			}
			entity := written[i : i+semicolon+1]
			if means := resolve(entity); means != string(entity) {
				r.put(written[done:i], offset+done)
				r.stand([]byte(means), offset+i, len(entity))
				i += semicolon
				done = i + 1
			}
		}
	}
	r.put(written[done:], offset+done)
}

// longestEntity is how many bytes an entity has at most, as HTML names them.
const longestEntity = 34

// put adds text that stands so at an offset of the source. A line end, which
// has no meaning of its own, becomes a space.
func (r *reader) put(text []byte, offset int) {
	r.putAs(span{len(r.text), offset, false}, text)
}

// putAs adds text of a span.
func (r *reader) putAs(s span, text []byte) {
	if len(text) == 0 {
		return
	}
	at, offset := s.at, s.offset
	r.span(s)
	r.text = append(r.text, text...)
	for i := at; i < len(r.text); i++ {
		if r.text[i] == '\n' {
			r.text[i] = ' '
		}
	}
	r.next = offset + len(text)
}

// stand adds text that stands for so many bytes at an offset of the source.
func (r *reader) stand(text []byte, offset, length int) {
	r.putAs(span{len(r.text), offset, true}, text)
	r.next = offset + length
	r.span(span{len(r.text), r.next, false})
}

// span notes where what comes next stands, unless that follows from the last
// span.
func (r *reader) span(s span) {
	spans := r.prose.spans
	for n := len(spans); n > 0 && spans[n-1].at >= s.at; n-- {
		spans = spans[:n-1]
	}
	if n := len(spans); n == 0 || spans[n-1].offset-spans[n-1].at != s.offset-s.at || spans[n-1].stands != s.stands {
		spans = append(spans, s)
	}
	r.prose.spans = spans
}

// question reads the texts of a question from the lines of its body. Their
// YAML is read elsewhere; the lines alone say what the texts are and where, and
// cost a tenth of a second reading. Quotes around a text stay.
func (r *reader) question(n *ast.FencedCodeBlock) {
	start, offset := -1, 0
	for i := range n.Lines().Len() {
		seg := n.Lines().At(i)
		line := bytes.TrimRight(seg.Value(r.source), " \t\r\n")
		at := seg.Start - seg.Padding // Value begins with as many spaces
		for len(line) > 0 {
			key, value, end := questionPart(line)
			if key != "" && start >= 0 {
				r.end(QuestionLine, start, offset)
				start = -1
			}
			if key == "ask" || key == "text" || key == "because" {
				start = len(r.text)
			}
			if start >= 0 && value < end {
				if len(r.text) == start {
					offset = at + value
				} else {
					r.put([]byte(" "), at+value-1)
				}
				r.put(line[value:end], at+value)
			}
			at, line = at+end, line[end:]
		}
	}
	if start >= 0 {
		r.end(QuestionLine, start, offset)
	}
}

// The keys of a question and its answers, what stands before one on its line,
// and how one looks behind another.
var (
	questionKeys = [...]string{"ask", "text", "because", "right", "answers"}
	keysBehind   = [...]string{", text: ", "{text: ", ", because: ", "{because: ", ", right: ", "{right: ", ", answers: "}
)

const beforeKey = " \t-{[,"

// questionPart finds the first key of a line in the body of a question, and
// where its value begins and ends; a line that goes on with the value before it
// has no key.
func questionPart(line []byte) (key string, value, end int) {
	value = len(line) - len(bytes.TrimLeft(line, beforeKey))
	for _, word := range questionKeys {
		after, ok := bytes.CutPrefix(line[value:], []byte(word+":"))
		if ok && (len(after) == 0 || after[0] == ' ') {
			key = word
			value += len(word) + 1
			break
		}
	}
	end = len(line)
	if key == "" {
		value = 0
	} else {
		for _, next := range keysBehind {
			if i := bytes.Index(line[value:end], []byte(next)); i >= 0 {
				end = value + i
			}
		}
	}
	for value < end && (line[value] == ' ' || line[value] == '\t') {
		value++
	}
	if rest := end - value; key != "" && 0 < rest && rest <= 2 && (line[value] == '>' || line[value] == '|') {
		value = end // the sign for a text on the lines below
	}
	return key, value, end
}
