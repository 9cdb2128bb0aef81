package markup

import (
	"fmt"
	"strings"

	"github.com/yuin/goldmark/ast"

	"slipbook/generator/finding"
)

// calculator reads the inputs that a calculator block fills in. Whether there
// are such a calculator and such inputs is for proof to say; here stands
// only what the block must look like.
func (p *page) calculator(b *Block, n *ast.FencedCodeBlock) bool {
	switch names := strings.Fields(b.Words); {
	case len(names) == 0:
		p.find(b.Offset, finding.BlockWords, "a calculator without its name", "Write the name on the same line: calculator slip-density.")
		return false
	case len(names) > 1:
		p.find(b.Offset+len(CalculatorBlock)+1, finding.BlockWords, fmt.Sprintf("%q is not the name of one calculator", b.Words),
			"Write one name; inputs go into the body, one “name: value” a line.")
		return false
	}
	in, ok := p.readBody(n, "the calculator")
	if !ok || in.root.Absent() {
		return ok
	}
	for _, pair := range in.root.Pairs() {
		b.Fill = append(b.Fill, Setting{Name: pair.Word(), Value: pair.Value.Text(), NameOffset: pair.Key.At(), ValueOffset: pair.Value.At()})
	}
	return in.sound()
}
