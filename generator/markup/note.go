package markup

import (
	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"
)

// makeBacks notes the ways back from the footnotes, whose words are the theme's.
func (p *page) makeBacks() {
	for _, n := range p.backs {
		replace(n, Piece{Note: &Note{Kind: NoteBack, Number: n.Index, Place: n.RefIndex + 1, Places: n.RefCount}})
	}
}

// registerNotes names the nodes of footnotes.
func registerNotes(r renderer.NodeRendererFuncRegisterer) {
	r.Register(xast.KindFootnoteLink, setting(func(s *setter, n ast.Node) {
		l := n.(*xast.FootnoteLink)
		s.set(Piece{Note: &Note{Kind: NoteMark, Number: l.Index, Place: l.RefIndex + 1}})
	}, nil))
	// A way back is replaced before its page is printed.
	r.Register(xast.KindFootnoteBacklink, func(util.BufWriter, []byte, ast.Node, bool) (ast.WalkStatus, error) {
		return ast.WalkContinue, nil
	})
	r.Register(xast.KindFootnoteList, between("<div class=\"page-notes\" role=\"doc-endnotes\">\n<ol>\n", "</ol>\n</div>\n"))
	r.Register(xast.KindFootnote, setting(func(s *setter, n ast.Node) {
		s.set(Piece{Note: &Note{Kind: NoteEntry, Number: n.(*xast.Footnote).Index}})
	}, func(s *setter, _ ast.Node) { s.printed = append(s.printed, "</li>\n"...) }))
}
