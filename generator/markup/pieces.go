package markup

import (
	"fmt"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
)

// setter takes what goldmark prints and parts it into pieces. It is the
// util.BufWriter that our renderers print to: what they cannot finish they set
// as a piece of its own.
type setter struct {
	page   *page
	pieces []Piece
	html   []byte // printed since the last piece
	bound  []byte // room for a text being bound
}

// set puts a piece that is no finished HTML behind what was printed so far.
func (s *setter) set(p Piece) {
	s.end()
	s.pieces = append(s.pieces, p)
}

// end ends the piece of finished HTML, if one was begun.
func (s *setter) end() {
	if len(s.html) > 0 {
		from := len(s.page.printed)
		s.page.printed = append(s.page.printed, s.html...)
		s.pieces = append(s.pieces, Piece{HTML: unprinted})
		s.page.spans = append(s.page.spans, Span{from, len(s.page.printed)})
		s.html = s.html[:0]
	}
}

// unprinted marks a piece of HTML until finish gives it its bytes.
const unprinted = "\x00"

// Write completes io.Writer.
func (s *setter) Write(p []byte) (int, error) {
	s.html = append(s.html, p...)
	return len(p), nil
}

// WriteString completes util.BufWriter.
func (s *setter) WriteString(p string) (int, error) {
	s.html = append(s.html, p...)
	return len(p), nil
}

// WriteByte completes util.BufWriter.
func (s *setter) WriteByte(c byte) error {
	s.html = append(s.html, c)
	return nil
}

// WriteRune completes util.BufWriter.
func (s *setter) WriteRune(r rune) (int, error) {
	before := len(s.html)
	s.html = utf8.AppendRune(s.html, r)
	return len(s.html) - before, nil
}

// Available completes util.BufWriter: there is always room.
func (s *setter) Available() int { return cap(s.html) - len(s.html) }

// Buffered completes util.BufWriter: nothing waits.
func (s *setter) Buffered() int { return 0 }

// Flush completes util.BufWriter.
func (s *setter) Flush() error { return nil }

// set prints a tree as pieces.
func (p *page) set(tree ast.Node) []Piece {
	s := &setter{page: p}
	if err := p.setup.Renderer().Render(s, p.Source, tree); err != nil {
		panic(fmt.Sprintf("markup: printing into memory failed: %v", err)) // no renderer here gives an error
	}
	s.end()
	return s.pieces
}

// finish sets the bytes of the pieces of HTML: all of a page share one string.
// Blocks were set before the page around them.
func (p *page) finish() {
	text := string(p.printed)
	next := 0
	fill := func(pieces []Piece) {
		for i := range pieces {
			if pieces[i].HTML != "" {
				pieces[i].HTML = text[p.spans[next].From:p.spans[next].To]
				next++
			}
		}
	}
	for _, b := range p.bodies {
		fill(b.Pieces)
	}
	fill(p.doc.Pieces)
}
