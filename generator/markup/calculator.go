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
	return p.named(b, "calculator", "slip-density") && b.fill(in, "the calculator")
}

// recipe reads for how much of it a recipe block weighs a recipe: inputs of the
// calculator that scales recipes. Whether there is such a recipe is for proof to
// say.
func (p *page) recipe(b *Block, in *body) bool {
	return p.named(b, "recipe", "white-slip") && b.fill(in, "the recipe")
}

// named reports whether a block's opening line names one thing, and says so where
// it does not.
func (p *page) named(b *Block, what, example string) bool {
	switch names := strings.Fields(b.Words); {
	case len(names) == 0:
		p.find(b.Offset, finding.BlockWords, "a "+what+" without its name", fmt.Sprintf("Write the name on the same line: %s %s.", b.Kind, example))
		return false
	case len(names) > 1:
		p.find(b.Offset+len(b.Kind)+1, finding.BlockWords, fmt.Sprintf("%q is not the name of one %s", b.Words, what),
			"Write one name; inputs go into the body, one “name: value” a line.")
		return false
	}
	return true
}

// fill reads the inputs that a block fills in.
func (b *Block) fill(in *body, what string) bool {
	if !in.read(what) {
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
