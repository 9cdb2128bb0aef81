package markup

import (
	"slices"

	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"
)

// Section is what a part of a lesson is for, as far as the handbook takes such
// parts out of lessons and gathers them elsewhere.
type Section uint8

// The sections that are gathered.
const (
	OtherSection Section = iota
	LookSection          // what one sees when it is right: its list items
	WrongSection         // what goes wrong: the pairs of its definition list
)

// Fault is one thing that goes wrong: what is seen, and why and what then.
type Fault struct {
	Seen  []byte
	Means []byte
}

// gatherSections keeps what the page says to look for and what goes wrong. It
// runs last, when everything in the tree is finished.
func (p *page) gatherSections() {
	for _, h := range p.headings {
		section := p.around.Section(plain(h, p.Source))
		if section == OtherSection || within(h) != nil {
			continue
		}
		for n := h.NextSibling(); n != nil; n = n.NextSibling() {
			if next, ok := n.(*ast.Heading); ok && next.Level <= h.Level {
				break
			}
			switch n := n.(type) {
			case *ast.List:
				if section == LookSection {
					p.takeLooks(n)
				}
			case *xast.DefinitionList:
				if section == WrongSection {
					p.takeFaults(n)
				}
			}
		}
	}
}

func (p *page) takeLooks(list *ast.List) {
	for item := list.FirstChild(); item != nil; item = item.NextSibling() {
		p.doc.Looks = append(p.doc.Looks, p.inner(item))
	}
}

func (p *page) takeFaults(list *xast.DefinitionList) {
	var seen []byte
	for n := list.FirstChild(); n != nil; n = n.NextSibling() {
		switch n.Kind() {
		case xast.KindDefinitionTerm:
			seen = p.inner(n)
		case xast.KindDefinitionDescription:
			p.doc.Faults = append(p.doc.Faults, Fault{Seen: seen, Means: p.inner(n)})
		}
	}
}

// inner prints what a node holds, for other pages.
func (p *page) inner(n ast.Node) []byte {
	var parts [][]byte
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		parts = append(parts, p.printed(gathered, c))
	}
	return bind(slices.Concat(parts...))
}
