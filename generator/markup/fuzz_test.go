package markup

import (
	"bytes"
	"regexp"
	"slices"
	"testing"
)

// FuzzParse shows that no page stops the program, that findings stand in their
// file, that what is printed is well formed, and that no HTML of the page's own
// and no dangerous address comes through.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"", "\n", "a\\", "# A\n\nB\n===\n\n- c\n  - d\n\n1) e\n\n***\n", "*a **b* c** _d_ `` e` `` <f@g.h> <b> &amp; &#0; \\[", "[a](<b c> 'd') ![e][f] [f]\n\n[f]: /g \"h\ni\"",
		"> a\n> - b\nc\n\n\td\n", "| a | b |\n|:-:|--:|\n| `c\\|` | [d](e) |\n", "A\n: b\n\n: c\n", "a[^b] ![^b][^c]\n\n[^b]: d\n\n    e\n\n[^c]:\n", "## A {#a}\n\n### {#} ##\n\nb {#a}\n---\n",
		"````caution A\n[b](#c)\n\n```batch\n+ Clay 5 %\n```\n\n> d\ne\n````\n", "> ~~~caution\n>    a\n>\t b\n> ~~~\n", "- ```calculator slip-density\n  mass: 1 745 g\n  größe: \"1\n  ```\n",
		"```question\nask: a\nanswers:\n- {text: b, because: c, right: true}\n- {text: d, because: e}\n```\n", "```yaml x\na: [b]\n", "![a](../../pictures/jar.svg \"b\")\n\nc ![d](../../pictures/bucket.png)", "[a](javascript:b) <data:c> [d](glossary:bisque) [e](../wash/strength.md#f)",
		"\ufeffa\r\n\r\n```caution\r\nb\r\n```\r\n", "```caution\n```caution\n```calculator\n```\n", "\x00\xff[\xfe](\x80)\n```yaml\n\x01\n```", "\"'a' -- b...\" << c >>", ">>>>- > 1. a\n", "```\t caution\tx\n", "~~~calculator a\n\tb: c\n~~~\n",
		"```stages\nmedium: coloured-slip\nstate: leather-hard\ntechnique: <b>\n```\n", "> - ```stages x\n>   state: [a]\n", "~~~stages\nmedium:\nway: x\n~~~\n",
		"> ```question\n> ask: >\n>\t a **b** ![c](d\n> answers: [{text: \"\\x60e`\"}, [because: ü`f`]]\n> ```\n",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, source []byte) {
		d, findings := whole(string(source))
		rows := bytes.Split(source, []byte("\n"))
		for _, w := range findings {
			if w.Rule == nil || w.Text == "" || w.Do == "" {
				t.Errorf("%+v says too little", w)
			}
			if w.Line < 1 || w.Line > len(rows) || w.Column < 1 || w.Column > len(rows[w.Line-1])+1 {
				t.Errorf("%+v stands outside the file", w)
			}
		}
		for _, r := range d.Refs {
			if r.Offset < 0 || r.Offset >= len(source) {
				t.Errorf("reference %+v stands outside the file", r)
			}
		}
		if fault := misnested(d.HTML); fault != "" {
			t.Errorf("%s in %q", fault, d.HTML)
		}
		if again, _ := whole(string(source)); !bytes.Equal(again.HTML, d.HTML) {
			t.Errorf("a second reading gives %q, the first gave %q", again.HTML, d.HTML)
		}
	})
}

var (
	markupTag = regexp.MustCompile(`<(!--[^>]*--|/?[a-z][a-z0-9]*)([^>]*)>`)
	danger    = regexp.MustCompile(`(?i)\s(?:on[a-z]+|style)=|(?:href|src)="\s*(?:javascript|data|vbscript|file):`)
	empty     = []string{"br", "hr", "img"}
)

// misnested says what is wrong with the nesting of tags, empty when nothing is.
func misnested(html []byte) string {
	var open []string
	for _, m := range markupTag.FindAllSubmatch(html, -1) {
		name := string(m[1])
		switch {
		case danger.Match(m[2]):
			return "danger in " + string(m[0])
		case name[0] == '!' || slices.Contains(empty, name) || bytes.HasSuffix(m[2], []byte("/")):
		case name[0] != '/':
			open = append(open, name)
		case len(open) == 0 || open[len(open)-1] != name[1:]:
			return "unexpected " + string(m[0])
		default:
			open = open[:len(open)-1]
		}
	}
	if len(open) > 0 {
		return "open " + open[len(open)-1]
	}
	return ""
}
