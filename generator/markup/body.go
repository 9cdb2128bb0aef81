package markup

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/yuin/goldmark/ast"
	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

// body is the YAML inside a fence, with the way back from its lines and columns
// to offsets of the page, also inside lists and quotes.
type body struct {
	p     *page
	node  *ast.FencedCodeBlock
	root  *yaml.Node // nil when the body is empty
	fault bool       // something was reported
}

// readBody reads the YAML of a fence. It gives false when it is no YAML, which
// is then reported.
func (p *page) readBody(n *ast.FencedCodeBlock) (*body, bool) {
	b := &body{p: p, node: n}
	text := lines(n, p.Source)
	if isEmpty(text) {
		return b, true
	}
	var document yaml.Node
	if err := yaml.Load(text, &document); err != nil {
		b.explain(err)
		return nil, false
	}
	if len(document.Content) > 0 {
		b.root = document.Content[0]
	}
	return b, true
}

// isEmpty says whether a body holds nothing but blanks and comments.
func isEmpty(text []byte) bool {
	for line := range strings.Lines(string(text)) {
		if line = strings.TrimSpace(line); line != "" && line[0] != '#' {
			return false
		}
	}
	return true
}

// yamlHelp stands under what is no YAML.
const yamlHelp = "Write one “name: value” a line; put quotes around a value that holds “: ” or begins with a sign; indent with spaces."

// explain reports why a body is no YAML, at the place where the trouble began.
func (b *body) explain(err error) {
	fault := new(yaml.LoadError)
	if !errors.As(err, &fault) {
		b.find(b.node.Info.Segment.Start, "the body is no YAML: "+err.Error(), yamlHelp)
		return
	}
	mark := fault.Mark
	if strings.Contains(fault.ContextMsg, "quoted scalar") {
		mark = fault.ContextMark // where the quote was opened says more than where the file ended
	}
	message := strings.TrimPrefix(fault.Message, "yaml: ")
	b.find(b.offset(mark.Line, mark.Column), "the body is no YAML: "+message, yamlHelp)
}

// find reports something wrong in the body.
func (b *body) find(offset int, text, do string) {
	b.fault = true
	b.p.find(offset, finding.BlockBody, text, do)
}

// at gives a YAML node's offset in the page.
func (b *body) at(n *yaml.Node) int { return b.offset(n.Line, n.Column) }

// offset turns a line and a column of the YAML, counted from 1 and in
// characters, into an offset of the page. A place that is not known is the info
// string; one after the end is the end.
func (b *body) offset(line, column int) int {
	all := b.node.Lines()
	if line < 1 || all.Len() == 0 {
		return b.node.Info.Segment.Start
	}
	if line > all.Len() {
		last := all.At(all.Len() - 1)
		return last.Stop
	}
	seg := all.At(line - 1)
	at := seg.Start
	for range column - 1 - seg.Padding {
		if at >= seg.Stop || b.p.Source[at] == '\n' {
			break
		}
		_, n := utf8.DecodeRune(b.p.Source[at:seg.Stop])
		at += n
	}
	return at
}

// mapping goes through the pairs of a mapping in the order written and reports
// keys that stand twice and keys that are no plain words. What the whole should
// be is said in shape.
func (b *body) mapping(n *yaml.Node, shape string, take func(key, value *yaml.Node)) {
	if n.Kind != yaml.MappingNode {
		b.find(b.at(n), "here should stand "+shape, yamlHelp)
		return
	}
	seen := make(map[string]bool)
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		switch {
		case key.Kind != yaml.ScalarNode || key.Value == "" || key.Tag == "!!merge":
			b.find(b.at(key), "a name that is no plain word", yamlHelp)
		case seen[key.Value]:
			b.find(b.at(key), fmt.Sprintf("%q stands twice", key.Value), "Keep one of the two lines.")
		default:
			seen[key.Value] = true
			take(key, value)
		}
	}
}

// text gives the text of a value as it was typed, whatever YAML would make of
// it; false when it is no single text, which is then reported.
func (b *body) text(key, value *yaml.Node) (string, bool) {
	switch {
	case value.Kind != yaml.ScalarNode:
		b.find(b.at(value), fmt.Sprintf("%q is one text, not a list or a group of names", key.Value), "Write it on one line, with quotes around it if it begins with a sign.")
	case strings.TrimSpace(value.Value) == "":
		b.find(b.at(value), fmt.Sprintf("%q has nothing after it", key.Value), "Write the value after the colon, or take the line out.")
	default:
		return strings.TrimSpace(value.Value), true
	}
	return "", false
}
