package markup

import (
	"fmt"
	"strconv"

	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"

	"slipbook/generator/finding"
)

// noteID returns the id of a page's footnote, counted from 1. The dot keeps it
// apart from the ids of headings.
func noteID(note int) string { return "note." + strconv.Itoa(note) }

// noteFromID returns the id of a place that refers to a footnote; the places of
// one note are counted from 1.
func noteFromID(note, place int) string { return noteID(note) + ".from." + strconv.Itoa(place) }

// makeBacks puts the ways back from the footnotes into the tree. They are in the
// theme's words, which a renderer that pages share cannot know.
func (p *page) makeBacks() {
	for _, n := range p.backs {
		place := n.RefIndex + 1
		words, name, err := p.around.Back(n.Index, place, n.RefCount)
		if err != nil {
			p.find(position(n), finding.ThemeFault, err.Error(), "This is a fault of the theme, not of the lesson: mend the theme's words.")
		}
		replace(n, fmt.Appendf(nil, `%s<a href="#%s" class="note-back" role="doc-backlink" aria-label="%s">%s</a>`,
			noBreak, noteFromID(n.Index, place), escape(name), escape(words)))
	}
}

// registerNotes names the nodes of footnotes. A piece that is gathered on
// another page has no marks: the notes stay behind in the lesson, and a number
// without its note would read as part of the sentence.
func registerNotes(r renderer.NodeRendererFuncRegisterer, withMarks bool) {
	between := func(begin, end func(n ast.Node) string) renderer.NodeRendererFunc {
		return func(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
			say := end
			if entering {
				say = begin
			}
			_, err := w.WriteString(say(n))
			return ast.WalkContinue, err
		}
	}
	always := func(text string) func(ast.Node) string { return func(ast.Node) string { return text } }
	mark := always("")
	if withMarks {
		mark = noteMark
	}
	r.Register(xast.KindFootnoteLink, between(mark, always("")))
	r.Register(xast.KindFootnoteBacklink, between(always(""), always(""))) // replaced before its page is printed
	r.Register(xast.KindFootnoteList, between(always("<div class=\"page-notes\" role=\"doc-endnotes\">\n<ol>\n"), always("</ol>\n</div>\n")))
	r.Register(xast.KindFootnote, between(func(n ast.Node) string {
		return "<li id=\"" + noteID(n.(*xast.Footnote).Index) + "\">\n"
	}, always("</li>\n")))
}

// holdsMark reports whether a footnote is referred to somewhere in a node.
func holdsMark(tree ast.Node) bool {
	found := false
	_ = ast.Walk(tree, func(n ast.Node, _ bool) (ast.WalkStatus, error) {
		if found = n.Kind() == xast.KindFootnoteLink; found {
			return ast.WalkStop, nil
		}
		return ast.WalkContinue, nil
	})
	return found
}

// noteMark returns the number that stands where a footnote belongs, and leads
// to it.
func noteMark(n ast.Node) string {
	l := n.(*xast.FootnoteLink)
	return fmt.Sprintf(`<sup id="%s"><a href="#%s" class="note-mark" role="doc-noteref">%d</a></sup>`,
		noteFromID(l.Index, l.RefIndex+1), noteID(l.Index), l.Index)
}
