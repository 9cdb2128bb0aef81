package markup

import (
	"github.com/yuin/goldmark/ast"

	"slipbook/generator/source"
)

// body is the YAML inside a fence.
type body struct {
	p      *page
	node   *ast.FencedCodeBlock
	kind   *blockKind
	root   source.Value // absent when nothing is written there
	before int          // reports on the page before the body was read
}

// read reads the YAML, which findings call so. It is false when it is no YAML,
// which is then reported.
func (b *body) read(called string) bool {
	p := b.p
	b.before = p.text.Reported()
	b.root = p.text.YAMLAt(lines(b.node, p.Source), called, func(at int) int { return p.placeIn(b.node, at) })
	sound := b.sound()
	b.checkMarks()
	return sound
}

// sound reports whether nothing was found wrong with the body so far.
func (b *body) sound() bool { return b.p.text.Reported() == b.before }

// placeIn turns an offset in the lines of a fence, which lists and quotes may
// indent, into an offset of the page. Of a fence without lines it is that of
// the info string.
func (p *page) placeIn(n *ast.FencedCodeBlock, at int) int {
	all := n.Lines()
	for i := range all.Len() {
		line := all.At(i)
		size := len(line.Value(p.Source))
		if at < size || i+1 == all.Len() {
			return min(line.Stop, line.Start+max(0, at-line.Padding))
		}
		at -= size
	}
	return n.Info.Segment.Start
}
