package markup

import (
	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// stagesHelp shows what a stages block looks like.
const stagesHelp = "It names what to show, one a line: “medium: coloured-slip”, “state: leather-hard”, “technique: trailing”; one of them is enough."

// stages reads which part of the decoration table a stages block shows. Whether
// there are such a medium, state and technique is for proof to say; here
// stands only what the block must look like.
func (p *page) stages(b *Block, in *body) bool {
	if !p.noWords(b, "Write what to show into the body, for example “medium: coloured-slip”.") {
		return false
	}
	if !in.read("the stages block") {
		return false
	}
	f := in.root.Fields("medium", "state", "technique")
	part := &Part{Medium: nameOf(f.Get("medium")), State: nameOf(f.Get("state")), Technique: nameOf(f.Get("technique"))}
	if *part == (Part{}) && in.sound() {
		p.find(b.Offset, finding.BlockBody, "a stages block that names nothing", stagesHelp)
	}
	b.Part = part
	return in.sound()
}

// nameOf reads an id with its place; empty of an absent value.
func nameOf(v source.Value) Name {
	if v.Absent() {
		return Name{}
	}
	return Name{v.Text(), v.At()}
}
