package markup

import (
	"bytes"
	"fmt"

	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"slipbook/generator/finding"
)

// unusedNotes keeps the footnotes that nobody refers to, for a finding, before
// goldmark drops them.
type unusedNotes struct{}

// Transform looks for the footnotes in a tree that is about to be finished.
func (unusedNotes) Transform(tree *ast.Document, _ text.Reader, pc parser.Context) {
	p := pageOf(pc)
	if p == nil {
		return
	}
	_ = ast.Walk(tree, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if n.Type() == ast.TypeInline {
			return ast.WalkSkipChildren, nil
		}
		if note, ok := n.(*xast.Footnote); ok && entering && note.Index < 0 {
			p.unused = append(p.unused, note)
		}
		return ast.WalkContinue, nil
	})
}

// checkDefinitions reports footnotes and link definitions that nobody uses or
// that stand twice; CommonMark drops both in silence. Where a part of the page could
// not be read, they may be used there.
func (p *page) checkDefinitions() {
	if p.doc.Partial {
		return
	}
	for _, note := range p.unused {
		p.find(position(note), finding.Definitions, fmt.Sprintf("nothing refers to the footnote [^%s], or it is written twice", p.shorten(note.Ref)),
			fmt.Sprintf("Put [^%s] where the note belongs, or take the note out.", p.shorten(note.Ref)))
	}
	used := make(map[string]bool)
	for _, n := range p.links {
		if l, ok := n.(*ast.Link); ok && l.Reference != nil {
			used[util.ToLinkReference(l.Reference.Value)] = true
		}
	}
	for _, i := range p.pictures {
		if i.Reference != nil {
			used[util.ToLinkReference(i.Reference.Value)] = true
		}
	}
	defined := make(map[string]bool)
	for _, d := range p.definitions {
		key := util.ToLinkReference(d.Label)
		label := p.shorten(d.Label)
		switch {
		case defined[key]:
			p.find(position(d), finding.Definitions, fmt.Sprintf("[%s] is defined a second time", label), "Take one of the two definitions out; the first one holds.")
		case !used[key]:
			p.find(position(d), finding.Definitions, fmt.Sprintf("nothing uses the definition of [%s]", label), unusedHelp(d.Label))
		}
		defined[key] = true
	}
}

// unusedHelp says what to do about a link definition nobody uses; one that
// looks like a footnote most likely is one that goldmark took for a link.
func unusedHelp(label []byte) string {
	if bytes.HasPrefix(label, []byte("^")) {
		return "If it is a footnote, put an empty line before it."
	}
	return "Take it out, or write [words][" + string(bytes.TrimSpace(label)) + "] where the link belongs."
}
