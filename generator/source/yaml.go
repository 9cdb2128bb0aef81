package source

import (
	"bytes"
	"errors"
	"io"

	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

// YAML reads a file that is YAML as a whole and returns the value of its only
// document, an absent one if there is none or it is broken.
func (t *Text) YAML() Value {
	return t.YAMLAt(t.Bytes, "the file", func(at int) int { return at })
}

// YAMLAt reads YAML that is a part of the file. called says what it is, in a
// sentence; place turns an offset in the YAML into one in the file, which may
// have signs of quotes or lists between its lines.
func (t *Text) YAMLAt(text []byte, called string, place func(at int) int) Value {
	d := &document{file: t, called: called, text: text, place: place}
	var tree yaml.Node
	err := yaml.Load(text, &tree)
	var broken *yaml.LoadError
	switch {
	case err == nil:
		root := Value{doc: d, node: tree.Content[0]}
		d.refuseExtras(root.node)
		return root
	case errors.As(err, &broken) && broken.Stage != yaml.ConstructorStage:
		d.syntax(broken)
	default:
		d.secondDocument()
	}
	return Value{doc: d}
}

// Empty returns a set of keys without any, for a file that a course may do
// without.
func (t *Text) Empty() Value {
	return Value{doc: &document{file: t, called: "the file", place: func(at int) int { return at }}, node: &yaml.Node{Kind: yaml.MappingNode}}
}

// secondDocument reports where another document starts. A file without even
// one is left to whoever needs its keys.
func (d *document) secondDocument() {
	documents, err := yaml.NewLoader(bytes.NewReader(d.text))
	if err != nil {
		return
	}
	for number := range 2 {
		var tree yaml.Node
		err = documents.Load(&tree)
		var broken *yaml.LoadError
		switch {
		case err == io.EOF:
			return
		case errors.As(err, &broken):
			d.syntax(broken)
			return
		case number > 0:
			d.report(d.at(&tree), finding.YAMLForm, "a second document of YAML starts here",
				"Write everything as one document: take out the line --- or ... before this.")
		}
	}
}

// refuseExtras reports what YAML can do and the handbook's files need not:
// anchors, aliases, tags, and escapes for what cannot be seen. Without them a
// file means what it looks like, and cannot unfold into gigabytes.
func (d *document) refuseExtras(n *yaml.Node) {
	switch {
	case n.Kind == yaml.AliasNode:
		d.report(d.at(n), finding.YAMLForm, "`*"+n.Value+"` stands for words written elsewhere",
			"Write the words out here; if the asterisk is meant, put the value in double quotes.")
	case n.Anchor != "":
		d.report(d.at(n), finding.YAMLForm, "`&"+n.Anchor+"` gives this value a name, which the handbook does not use",
			"Take `&"+n.Anchor+"` out; if the ampersand is meant, put the value in double quotes.")
	case n.Style&yaml.TaggedStyle != 0:
		d.report(d.at(n), finding.YAMLForm, "`!` gives this value a type, which the handbook does not use",
			"Take it out; if the exclamation mark is meant, put the value in double quotes.")
	case n.Style&yaml.DoubleQuotedStyle != 0:
		d.checkEscapes(d.at(n), n.Value)
	}
	for _, c := range n.Content {
		d.refuseExtras(c)
	}
}
