package course

import (
	"bytes"
	"errors"
	"io"
	"slices"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

// sheet is one piece of YAML in a file. The library reads it into its tree of
// nodes, and the values of values.go are taken from there, instead of being
// decoded into structs: so every value keeps its place, every fault is found,
// and what is said about it is ours to word.
type sheet struct {
	*source
	text   []byte // the YAML alone, a part of the source's text
	base   int    // where text starts in the source
	starts []int  // offsets in text of the lines as YAML counts them; made when needed
}

// readSheet reads YAML that starts at base of s and gives the value of its
// only document, an absent one if there is none or it is broken.
func readSheet(s *source, text []byte, base int) value {
	sh := &sheet{source: s, text: text, base: base}
	var document yaml.Node
	err := yaml.Load(text, &document)
	var broken *yaml.LoadError
	switch {
	case err == nil:
		root := value{sheet: sh, node: document.Content[0]}
		sh.refuseExtras(root.node)
		return root
	case errors.As(err, &broken) && broken.Stage != yaml.ConstructorStage:
		sh.syntax(broken)
	default:
		sh.secondDocument()
	}
	return value{sheet: sh}
}

// secondDocument reports where another document starts. A sheet without even
// one is left to whoever needs its keys.
func (sh *sheet) secondDocument() {
	documents, err := yaml.NewLoader(bytes.NewReader(sh.text))
	if err != nil {
		return
	}
	for number := range 2 {
		var document yaml.Node
		err = documents.Load(&document)
		var broken *yaml.LoadError
		switch {
		case err == io.EOF:
			return
		case errors.As(err, &broken):
			sh.syntax(broken)
			return
		case number > 0:
			sh.report(sh.at(document.Line, document.Column), finding.YAMLForm, "a second document of YAML starts here",
				"Write everything as one document: take out the line --- or ... before this.")
		}
	}
}

// refuseExtras reports what YAML can do and the handbook's files need not:
// anchors, aliases, tags and merged keys. Without them a file means what it
// looks like, and cannot unfold into gigabytes.
func (sh *sheet) refuseExtras(n *yaml.Node) {
	switch {
	case n.Kind == yaml.AliasNode:
		sh.report(sh.of(n), finding.YAMLForm, "`*"+n.Value+"` stands for words written elsewhere",
			"Write the words out here; if the asterisk is meant, put the value in double quotes.")
	case n.Anchor != "":
		sh.report(sh.of(n), finding.YAMLForm, "`&"+n.Anchor+"` gives this value a name, which the handbook does not use",
			"Take `&"+n.Anchor+"` out; if the ampersand is meant, put the value in double quotes.")
	case n.Style&yaml.TaggedStyle != 0:
		sh.report(sh.of(n), finding.YAMLForm, "`!` gives this value a type, which the handbook does not use",
			"Take it out; if the exclamation mark is meant, put the value in double quotes.")
	}
	for _, c := range n.Content {
		sh.refuseExtras(c)
	}
}

// of gives the offset of a node in the file.
func (sh *sheet) of(n *yaml.Node) int { return sh.at(n.Line, n.Column) }

// at turns a line and column as YAML counts them, from 1 and in characters,
// into an offset in the file. YAML also ends lines at U+0085, U+2028 and
// U+2029, which nothing else here does.
func (sh *sheet) at(line, column int) int {
	if sh.starts == nil {
		sh.starts = yamlLines(sh.text)
	}
	if line < 1 {
		return sh.base
	}
	if line > len(sh.starts) {
		return sh.base + len(sh.text)
	}
	at := sh.starts[line-1]
	for ; column > 1 && at < len(sh.text); column-- {
		_, size := utf8.DecodeRune(sh.text[at:])
		at += size
	}
	return sh.base + at
}

func yamlLines(text []byte) []int {
	starts := []int{0}
	for at := 0; at < len(text); {
		r, size := utf8.DecodeRune(text[at:])
		at += size
		if r == '\r' && at < len(text) && text[at] == '\n' {
			at++
		}
		if slices.Contains([]rune{'\n', '\r', '\u0085', '\u2028', '\u2029'}, r) {
			starts = append(starts, at)
		}
	}
	return starts
}
