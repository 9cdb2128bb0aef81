package markup

import (
	"fmt"

	"github.com/yuin/goldmark/ast"
	"go.yaml.in/yaml/v4"
)

// stagesHelp shows what a stages block looks like.
const stagesHelp = "It names what to show, one a line: “medium: coloured-slip”, “state: leather-hard”, “technique: trailing”; one of them is enough."

// stages reads which part of the decoration table a stages block shows. Whether
// there are such a medium, state and technique is for the press to say; here
// stands only what the block must look like.
func (p *page) stages(b *Block, n *ast.FencedCodeBlock) (*Part, bool) {
	if !p.noWords(b, "Write what to show into the body, for example “medium: coloured-slip”.") {
		return nil, false
	}
	in, ok := p.readBody(n)
	if !ok {
		return nil, false
	}
	if in.root == nil {
		in.find(b.Offset, "a stages block without a body", stagesHelp)
		return nil, false
	}
	part := new(Part)
	in.mapping(in.root, "what to show of the decoration table", func(key, value *yaml.Node) {
		named, known := map[string]*Name{"medium": &part.Medium, "state": &part.State, "technique": &part.Technique}[key.Value]
		if !known {
			in.find(in.at(key), fmt.Sprintf("a stages block has no %q", key.Value), stagesHelp)
			return
		}
		named.ID, _ = in.text(key, value)
		named.Offset = in.at(value)
	})
	if *part == (Part{}) && !in.fault {
		in.find(in.at(in.root), "a stages block that names nothing", stagesHelp)
	}
	return part, !in.fault
}
