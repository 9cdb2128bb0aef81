package markup

import (
	"fmt"
	"strings"

	"slipbook/generator/finding"
)

// calculator reads the inputs that a calculator block fills in. Whether there
// are such a calculator and such inputs is for proof to say; here stands
// only what the block must look like.
func (p *page) calculator(b *Block, in *body) bool {
	switch names := strings.Fields(b.Words); {
	case len(names) == 0:
		p.find(b.Offset, finding.BlockWords, "a calculator without its name", "Write the name on the same line: calculator slip-density.")
		return false
	case len(names) > 1:
		p.find(b.Offset+len(CalculatorBlock)+1, finding.BlockWords, fmt.Sprintf("%q is not the name of one calculator", b.Words),
			"Write one name; inputs go into the body, one “name: value” a line.")
		return false
	}
	if !in.read("the calculator") {
		return false
	}
	if in.root.Absent() {
		return true
	}
	for _, pair := range in.root.Pairs() {
		b.Fill = append(b.Fill, Setting{Name: pair.Word(), Value: pair.Value.Text(), NameOffset: pair.Key.At(), ValueOffset: pair.Value.At()})
	}
	return in.sound()
}
