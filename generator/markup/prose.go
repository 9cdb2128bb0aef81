package markup

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"
)

// prose gathers what a reader reads. It runs before anything in the tree is
// replaced by its HTML.
func (p *page) prose(tree ast.Node) *Prose {
	prose := &Prose{Passages: make([]Passage, 0, 96), spans: make([]span, 0, 160)} // enough for most pages
	r := &reader{source: p.Source, text: p.room.words[:0], prose: prose}
	r.blocks(tree)
	prose.Text, p.room.words = string(r.text), r.text
	return prose
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
	step     bool         // in an ordered list
	cell     bool         // in a cell of a table
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
			before := r.step
			r.step = before || c.IsOrdered() && r.own == 0
			r.prose.Steps = r.prose.Steps || r.step
			r.blocks(c)
			r.step = before
		case *ast.FencedCodeBlock:
			r.fence(c)
		case *ast.CodeBlock:
			r.guarded()
		default:
			r.blocks(c)
		}
	}
}

// fence reads a block of YAML; of a sample there is nothing to read.
func (r *reader) fence(n *ast.FencedCodeBlock) {
	kind := kindOf(string(n.Language(r.source)))
	if kind == nil || kind.guarded {
		r.guarded()
	}
	if kind != nil && len(kind.prose) > 0 {
		r.body(n, kind)
	}
}

// container reads a block of Markdown.
func (r *reader) container(c *container) {
	kind := kindOf(c.kind)
	if kind.guarded {
		r.guarded()
	}
	before := r.teaching
	r.teaching = before || kind.teaching
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
	if kind.warns {
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
	r.cell = n.Kind() == xast.KindTableCell
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
	r.prose.Passages = append(r.prose.Passages, Passage{kind, start, len(r.text), offset, r.note, r.teaching, r.cell, r.step && r.own == 0})
	r.text = append(r.text, '\n')
}
