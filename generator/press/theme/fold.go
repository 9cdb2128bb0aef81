package theme

import (
	"html/template"
	"strings"
	"text/template/parse"
)

// edition makes the templates of one use of them.
func (t *Theme) edition(parsed *template.Template, of use) (*Templates, error) {
	made := template.New("").Option("missingkey=error").Funcs(t.functions())
	for _, one := range parsed.Templates() {
		if one.Tree == nil || ebookOnly(one.Name()) && (of != inEbook || strings.HasPrefix(one.Name(), forEbook)) {
			continue
		}
		tree := one.Tree.Copy()
		if other := parsed.Lookup(forEbook + one.Name()); of == inEbook && other != nil {
			tree = other.Tree.Copy()
		}
		if err := prepare(tree, of); err != nil {
			return nil, err
		}
		for _, l := range lists(tree.Root) {
			t.fold(l, of)
		}
		if _, err := made.AddParseTree(one.Name(), tree); err != nil {
			return nil, err
		}
	}
	return newTemplates(made, t.functions())
}

// fold sets the words and drawings that a piece of a template asks for by name,
// and that are the same on every page, into the template itself. A large course
// prints thousands of pages; looking the same words up on each of them was a
// quarter of the Printing.
func (t *Theme) fold(l *parse.ListNode, of use) {
	for i, n := range l.Nodes {
		if text, ok := t.constant(n, of); ok {
			l.Nodes[i] = &parse.TextNode{NodeType: parse.NodeText, Pos: n.Position(), Text: []byte(text)}
		}
	}
}

// constant returns the HTML of {{word "key"}} and {{icon "name"}}. A word with
// places in it is no constant, nor is one that is missing: printing reports
// that. A drawing that only a screen shows is nothing elsewhere.
func (t *Theme) constant(n parse.Node, of use) (string, bool) {
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
		text, err := t.words.say(name.Text)
		return template.HTMLEscapeString(text), err == nil
	case "icon":
		drawing, err := t.icon(name.Text)
		if of != onPages && t.screen[name.Text] {
			return "", true
		}
		return string(drawing), err == nil
	}
	return "", false
}
