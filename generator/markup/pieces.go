package markup

import (
	"fmt"
	"sync"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
)

// room is what a page is read in. The next page is read in it again: what it holds
// is as long as the page, and read pages keep none of it.
type room struct {
	words   []byte  // what a reader reads
	printed []byte  // the HTML of all pieces
	ends    []int   // where each piece of HTML ends in printed
	pieces  []Piece // of the tree that is being set
	bound   []byte  // a text being bound
}

var rooms = sync.Pool{New: func() any { return new(room) }}

// setter takes what goldmark prints and parts it into pieces. It is the
// util.BufWriter that our renderers print to: what they cannot finish they set
// as a piece of its own.
type setter struct {
	*room
	page *page
	from int // where in printed begins what was printed since the last piece
}

// set puts a piece that is no finished HTML behind what was printed so far.
func (s *setter) set(p Piece) {
	s.end()
	s.pieces = append(s.pieces, p)
}

// end ends the piece of finished HTML, if one was begun.
func (s *setter) end() {
	if s.from < len(s.printed) {
		s.from = len(s.printed)
		s.pieces = append(s.pieces, Piece{HTML: unprinted})
		s.ends = append(s.ends, s.from)
	}
}

// unprinted marks a piece of HTML until finish gives it its bytes.
const unprinted = "\x00"

// Write completes io.Writer.
func (s *setter) Write(p []byte) (int, error) {
	s.printed = append(s.printed, p...)
	return len(p), nil
}

// WriteString completes util.BufWriter.
func (s *setter) WriteString(p string) (int, error) {
	s.printed = append(s.printed, p...)
	return len(p), nil
}

// WriteByte completes util.BufWriter.
func (s *setter) WriteByte(c byte) error {
	s.printed = append(s.printed, c)
	return nil
}

// WriteRune completes util.BufWriter.
func (s *setter) WriteRune(r rune) (int, error) {
	before := len(s.printed)
	s.printed = utf8.AppendRune(s.printed, r)
	return len(s.printed) - before, nil
}

// Available completes util.BufWriter: there is always room.
func (s *setter) Available() int { return cap(s.printed) - len(s.printed) }

// Buffered completes util.BufWriter: nothing waits.
func (s *setter) Buffered() int { return 0 }

// Flush completes util.BufWriter.
func (s *setter) Flush() error { return nil }

// set prints a tree as pieces.
func (p *page) set(tree ast.Node) []Piece {
	s := &setter{room: p.room, page: p, from: len(p.room.printed)}
	s.pieces = s.pieces[:0]
	if err := p.setup.Renderer().Render(s, p.Source, tree); err != nil {
		panic(fmt.Sprintf("markup: printing into memory failed: %v", err)) // no renderer here gives an error
	}
	s.end()
	pieces := append([]Piece(nil), s.pieces...)
	clear(s.pieces) // of a page that may not be kept
	return pieces
}

// finish sets the bytes of the pieces of HTML: all of a page share one string.
// Blocks were set before the page around them.
func (p *page) finish() {
	text := string(p.room.printed)
	from, ends := 0, p.room.ends
	fill := func(pieces []Piece) {
		for i := range pieces {
			if pieces[i].HTML != "" {
				pieces[i].HTML = text[from:ends[0]]
				from, ends = ends[0], ends[1:]
			}
		}
	}
	for _, b := range p.bodies {
		fill(b.Pieces)
	}
	fill(p.doc.Pieces)
}
