package press

import (
	"html/template"
	"text/template/parse"
)

// foldWords sets the words and drawings that a piece of a template asks for by
// name, and that are the same on every page, into the template itself. A large
// course prints thousands of pages; looking the same words up on each of them
// was a quarter of the printing.
func (p *Press) foldWords(n parse.Node) {
	switch n := n.(type) {
	case *parse.ListNode:
		if n == nil { // an absent {{else}}
			return
		}
		for i, inner := range n.Nodes {
			if text, ok := p.constant(inner); ok {
				n.Nodes[i] = &parse.TextNode{NodeType: parse.NodeText, Pos: inner.Position(), Text: []byte(text)}
			} else {
				p.foldWords(inner)
			}
		}
	case *parse.IfNode:
		p.foldBranch(n.BranchNode)
	case *parse.RangeNode:
		p.foldBranch(n.BranchNode)
	case *parse.WithNode:
		p.foldBranch(n.BranchNode)
	}
}

func (p *Press) foldBranch(b parse.BranchNode) {
	p.foldWords(b.List)
	p.foldWords(b.ElseList)
}

// constant gives the HTML of {{word "key"}} and {{icon "name"}}. A word with
// places in it is no constant, nor is one that is missing: printing reports
// that.
func (p *Press) constant(n parse.Node) (string, bool) {
	action, ok := n.(*parse.ActionNode)
	if !ok || len(action.Pipe.Decl) > 0 || len(action.Pipe.Cmds) != 1 || len(action.Pipe.Cmds[0].Args) != 2 {
		return "", false
	}
	function, isFunction := action.Pipe.Cmds[0].Args[0].(*parse.IdentifierNode)
	name, isName := action.Pipe.Cmds[0].Args[1].(*parse.StringNode)
	if !isFunction || !isName {
		return "", false
	}
	switch function.Ident {
	case "word":
		text, err := p.words.say(name.Text)
		return template.HTMLEscapeString(text), err == nil
	case "icon":
		drawing, err := p.icon(name.Text)
		return string(drawing), err == nil
	}
	return "", false
}
