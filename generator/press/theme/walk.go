package theme

import "text/template/parse"

// visit calls what for each node of a piece of a template, the outer ones first.
// It knows how Go's templates are built; nothing else here does.
func visit(n parse.Node, what func(parse.Node)) {
	for _, inner := range within(n) {
		what(inner)
		visit(inner, what)
	}
}

// within returns the nodes right within a node.
func within(n parse.Node) []parse.Node {
	var all []parse.Node
	branch := func(b *parse.BranchNode) {
		all = append(all, b.Pipe, b.List)
		if b.ElseList != nil {
			all = append(all, b.ElseList)
		}
	}
	switch n := n.(type) {
	case *parse.ListNode:
		all = n.Nodes
	case *parse.ActionNode:
		all = []parse.Node{n.Pipe}
	case *parse.TemplateNode:
		if n.Pipe != nil { // else {{template "x"}} without a value
			all = []parse.Node{n.Pipe}
		}
	case *parse.IfNode:
		branch(&n.BranchNode)
	case *parse.RangeNode:
		branch(&n.BranchNode)
	case *parse.WithNode:
		branch(&n.BranchNode)
	case *parse.PipeNode:
		for _, c := range n.Cmds {
			all = append(all, c)
		}
	case *parse.CommandNode:
		all = n.Args
	}
	return all
}

// lists returns the lists of nodes in a piece of a template, the outer ones first.
func lists(root *parse.ListNode) []*parse.ListNode {
	all := []*parse.ListNode{root}
	visit(root, func(n parse.Node) {
		if l, ok := n.(*parse.ListNode); ok {
			all = append(all, l)
		}
	})
	return all
}

// eachText changes the texts of a list.
func eachText(l *parse.ListNode, change func(string) string) {
	for _, n := range l.Nodes {
		if text, ok := n.(*parse.TextNode); ok {
			text.Text = []byte(change(string(text.Text)))
		}
	}
}
