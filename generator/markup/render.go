package markup

import (
	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/util"
)

// madeBlock and madeInline stand in the tree for a piece: a picture, a code
// sample, one of the handbook's own blocks.
type madeBlock struct {
	ast.BaseBlock
	piece Piece
}

type madeInline struct {
	ast.BaseInline
	piece Piece
}

var (
	kindMadeBlock  = ast.NewNodeKind("MadeBlock")
	kindMadeInline = ast.NewNodeKind("MadeInline")
)

func (n *madeBlock) Kind() ast.NodeKind  { return kindMadeBlock }
func (n *madeInline) Kind() ast.NodeKind { return kindMadeInline }

// IsRaw keeps goldmark from reading what is made already.
func (n *madeBlock) IsRaw() bool { return true }

// Dump completes ast.Node.
func (n *madeBlock) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

// Dump completes ast.Node.
func (n *madeInline) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

// replace puts a piece in the place of a node, as a block or a part of a line,
// whichever the node was.
func replace(n ast.Node, piece Piece) {
	var made ast.Node = &madeInline{piece: piece}
	if n.Type() == ast.TypeBlock {
		made = &madeBlock{piece: piece}
	}
	n.Parent().ReplaceChild(n.Parent(), n, made)
}

// remove takes a node, of which a finding speaks, out of the tree.
func remove(n ast.Node) { n.Parent().RemoveChild(n.Parent(), n) }

// ownRenderer sets what is no finished HTML as pieces, and prints tables in a
// frame that scrolls sideways by itself, so that a wide table never makes the
// page do so. The frame takes the keyboard's focus, else only a finger could
// scroll it.
type ownRenderer struct{}

// RegisterFuncs names the nodes printed here.
func (ownRenderer) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(kindMadeBlock, setting(func(s *setter, n ast.Node) { s.made(n.(*madeBlock).piece) }, nil))
	r.Register(kindMadeInline, setting(func(s *setter, n ast.Node) { s.made(n.(*madeInline).piece) }, nil))
	// A container is replaced before its page is printed; the rule here keeps
	// goldmark's table of kinds whole.
	r.Register(kindContainer, func(util.BufWriter, []byte, ast.Node, bool) (ast.WalkStatus, error) {
		return ast.WalkContinue, nil
	})
	r.Register(xast.KindTable, between("<div class=\"sheet\" tabindex=\"0\">\n<table>\n", "</table>\n</div>\n"))
	registerNotes(r)
}

// pieceRenderer sets links, headings and what other pages may want as pieces.
type pieceRenderer struct{}

// RegisterFuncs names the nodes printed here.
func (pieceRenderer) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(ast.KindText, renderText)
	r.Register(ast.KindLink, setting((*setter).link, (*setter).linkEnd))
	r.Register(ast.KindHeading, setting(
		func(s *setter, n ast.Node) { s.set(Piece{Heading: s.page.heads[n]}) },
		func(s *setter, n ast.Node) { s.set(Piece{Heading: s.page.heads[n], End: true}) }))
	r.Register(ast.KindList, renderList)
	r.Register(ast.KindListItem, setting((*setter).itemBegins, runEnds("</li>\n")))
	r.Register(xast.KindDefinitionTerm, setting(func(s *setter, n ast.Node) {
		s.printed = append(s.printed, "<dt>"...)
		s.runFrom(n)
	}, runEnds("</dt>\n")))
	r.Register(xast.KindDefinitionDescription, setting(func(s *setter, n ast.Node) {
		s.printed = append(s.printed, "<dd>"...)
		if !n.(*xast.DefinitionDescription).IsTight {
			s.printed = append(s.printed, '\n')
		}
		s.runFrom(n)
	}, runEnds("</dd>\n")))
}

// setting makes a renderer of what to do where a node begins and, if anything,
// where it ends.
func setting(begin, end func(s *setter, n ast.Node)) renderer.NodeRendererFunc {
	return func(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
		s := w.(*setter)
		switch {
		case entering:
			begin(s, n)
		case end != nil:
			end(s, n)
		}
		if end == nil {
			return ast.WalkSkipChildren, nil
		}
		return ast.WalkContinue, nil
	}
}

// renderText prints words as goldmark does, with the spaces bound where a line
// must not end.
func renderText(w util.BufWriter, source []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	n := node.(*ast.Text)
	switch {
	case !entering:
		return ast.WalkContinue, nil
	case n.IsRaw():
		html.DefaultWriter.RawWrite(w, n.Segment.Value(source))
		return ast.WalkContinue, nil
	}
	s := w.(*setter)
	s.bound = bind(s.bound[:0], n.Segment.Value(source))
	html.DefaultWriter.Write(w, s.bound)
	switch {
	case n.HardLineBreak():
		s.printed = append(s.printed, "<br>\n"...)
	case n.SoftLineBreak():
		s.printed = append(s.printed, '\n')
	}
	return ast.WalkContinue, nil
}

// between makes a renderer that prints two texts around what a node holds.
func between(begin, end string) renderer.NodeRendererFunc {
	return func(w util.BufWriter, _ []byte, _ ast.Node, entering bool) (ast.WalkStatus, error) {
		text := end
		if entering {
			text = begin
		}
		_, err := w.WriteString(text)
		return ast.WalkContinue, err
	}
}

// made sets a piece, or prints one that is finished HTML.
func (s *setter) made(p Piece) {
	if p.HTML != "" {
		s.printed = append(s.printed, p.HTML...)
		return
	}
	s.set(p)
}

// runFrom notes where a run begins that other pages may want.
func (s *setter) runFrom(n ast.Node) {
	if run := s.page.runs[n]; run != nil {
		s.end()
		run.From = len(s.pieces)
	}
}

// runEnds makes what to do where such a node ends: the run ends before the tag.
func runEnds(tag string) func(s *setter, n ast.Node) {
	return func(s *setter, n ast.Node) {
		if run := s.page.runs[n]; run != nil {
			s.end()
			run.To = len(s.pieces)
		}
		if step := s.page.steps[n]; step != nil {
			s.set(Piece{Step: step, End: true})
			return
		}
		s.printed = append(s.printed, tag...)
	}
}

// alignCell says in classes what goldmark would say in attributes that HTML no
// longer has, and that a heading cell heads its column.
func alignCell(c *xast.TableCell) {
	switch c.Alignment {
	case xast.AlignRight:
		c.SetAttributeString("class", []byte("at-end"))
	case xast.AlignCenter:
		c.SetAttributeString("class", []byte("at-middle"))
	}
	if c.Parent().Kind() == xast.KindTableHeader {
		c.SetAttributeString("scope", []byte("col"))
	}
}
