package markup

import (
	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"
)

// madeBlock and madeInline stand in the tree for what is HTML already: a
// picture, a code sample, one of the handbook's own blocks.
type madeBlock struct {
	ast.BaseBlock
	html  []byte
	apart func() []byte // as it stands on other pages, without marks of footnotes; nil = the same
}

type madeInline struct {
	ast.BaseInline
	html []byte
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

// replace puts finished HTML in the place of a node, as a block or a piece of
// a line, whichever the node was.
func replace(n ast.Node, html []byte) {
	var made ast.Node = &madeInline{html: html}
	if n.Type() == ast.TypeBlock {
		made = &madeBlock{html: html}
	}
	n.Parent().ReplaceChild(n.Parent(), n, made)
}

// remove takes a node, of which a finding speaks, out of the tree.
func remove(n ast.Node) { n.Parent().RemoveChild(n.Parent(), n) }

// ownRenderer prints our own nodes, and tables in a frame that scrolls sideways
// by itself, so that a wide table never makes the page do so. The frame takes
// the keyboard's focus, else only a finger could scroll it.
type ownRenderer struct{ withMarks bool }

// RegisterFuncs names the nodes printed here.
func (o ownRenderer) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	registerNotes(r, o.withMarks)
	r.Register(kindMadeBlock, func(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		made := n.(*madeBlock)
		html := made.html
		if !o.withMarks && made.apart != nil {
			html = made.apart()
		}
		_, err := w.Write(html)
		return ast.WalkSkipChildren, err
	})
	r.Register(kindMadeInline, func(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		_, err := w.Write(n.(*madeInline).html)
		return ast.WalkSkipChildren, err
	})
	// A container is replaced before its page is printed; the rule here keeps
	// goldmark's table of kinds whole.
	r.Register(kindContainer, func(util.BufWriter, []byte, ast.Node, bool) (ast.WalkStatus, error) {
		return ast.WalkContinue, nil
	})
	r.Register(xast.KindTable, func(w util.BufWriter, _ []byte, _ ast.Node, entering bool) (ast.WalkStatus, error) {
		frame := "</table>\n</div>\n"
		if entering {
			frame = "<div class=\"sheet\" tabindex=\"0\">\n<table>\n"
		}
		_, err := w.WriteString(frame)
		return ast.WalkContinue, err
	})
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
