package markup

import (
	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"
)

// noteSections notes which items of lists, and which terms with their
// definitions, stand under which headings: what one sees when it is right, and
// what goes wrong, are gathered elsewhere. Which headings mean these is the
// course's word. A heading in one of the handbook's own blocks gathers nothing.
func (p *page) noteSections() {
	for i, h := range p.headings {
		if within(h) != nil {
			continue
		}
		heading := p.doc.Headings[i]
		for n := h.NextSibling(); n != nil; n = n.NextSibling() {
			if next, ok := n.(*ast.Heading); ok && next.Level <= h.Level {
				break
			}
			switch n := n.(type) {
			case *ast.List:
				for item := n.FirstChild(); item != nil; item = item.NextSibling() {
					heading.Items = append(heading.Items, p.run(item))
				}
			case *xast.DefinitionList:
				p.notePairs(heading, n)
			}
		}
	}
}

// notePairs notes the terms of a definition list with their definitions.
func (p *page) notePairs(heading *Heading, list *xast.DefinitionList) {
	var term *Span
	for n := list.FirstChild(); n != nil; n = n.NextSibling() {
		switch n.Kind() {
		case xast.KindDefinitionTerm:
			term = p.run(n)
		case xast.KindDefinitionDescription:
			if term == nil { // goldmark makes no definition without its term
				term = &Span{}
			}
			heading.Pairs = append(heading.Pairs, Pair{term, p.run(n)})
		}
	}
}

// run returns the run of pieces that a node will be.
func (p *page) run(n ast.Node) *Span {
	if p.runs[n] == nil {
		p.runs[n] = &Span{}
	}
	return p.runs[n]
}
