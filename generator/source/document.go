package source

import (
	"slices"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

// document is one piece of YAML in a file. The library reads it into its tree
// of nodes, and values are taken from there, instead of being decoded into
// structs: so every value keeps its place, every fault is found, and what is
// said about it is ours to word.
type document struct {
	file   *Text
	called string               // what it is, for a sentence: "the opening block"
	text   []byte               // the YAML alone
	place  func(at int) int     // turns an offset in text into one in the file
	starts []int                // offsets in text of the lines as YAML counts them; made when needed
	of     func(*yaml.Node) int // the offset of a node in text, where it is not by line and column; else nil
}

// report adds a finding at an offset of the YAML.
func (d *document) report(at int, rule *finding.Rule, text, do string) {
	d.file.Report(d.place(at), rule, text, do)
}

// at returns the offset of a node in the YAML.
func (d *document) at(n *yaml.Node) int {
	if d.of != nil {
		return d.of(n)
	}
	return d.offset(n.Line, n.Column)
}

// offset turns a line and column as YAML counts them, from 1 and in characters,
// into an offset in the YAML. YAML also ends lines at U+0085, U+2028 and
// U+2029, which nothing else here does.
func (d *document) offset(line, column int) int {
	if d.starts == nil {
		d.starts = yamlLines(d.text)
	}
	if line < 1 {
		return 0
	}
	if line > len(d.starts) {
		return len(d.text)
	}
	at := d.starts[line-1]
	for ; column > 1 && at < len(d.text); column-- {
		_, size := utf8.DecodeRune(d.text[at:])
		at += size
	}
	return at
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
