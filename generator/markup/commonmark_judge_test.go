//go:build judges

package markup

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

// specExamples is how many examples CommonMark 0.31.2 has.
const specExamples = 652

// TestCommonMark runs every example of the specification through our goldmark
// set-up: cautions, ids written behind headings, tables, definition lists,
// footnotes and the limits on paragraphs are all on. Only the curled quotes are
// off, which give CommonMark's own another look on purpose.
func TestCommonMark(t *testing.T) {
	spec, err := os.ReadFile("../../testdata/node_modules/commonmark-spec/spec.txt")
	if err != nil {
		t.Fatalf("%v\nThe specification comes from npm: run sh testdata/test.sh, or npm ci in testdata.", err)
	}
	md := newMarkdown(options{rawXHTML: true})
	run, section := 0, ""
	for _, e := range examples(string(spec)) {
		if e.heading != "" {
			section = e.heading
			continue
		}
		run++
		var got bytes.Buffer
		if err := md.Convert([]byte(e.markdown), &got); err != nil {
			t.Fatalf("example %d: %v", run, err)
		}
		if got.String() != e.html {
			t.Errorf("example %d, %s\nmarkdown: %q\ngot:      %q\nwant:     %q", run, section, e.markdown, got.String(), e.html)
		}
	}
	if run != specExamples {
		t.Errorf("%d examples run, CommonMark 0.31.2 has %d", run, specExamples)
	}
}

// example is one example of the specification, or a heading between them.
type example struct{ heading, markdown, html string }

// examples reads the specification: an example stands between fences of 32
// backticks, Markdown and HTML separated by a point, tabs shown as arrows.
func examples(spec string) []example {
	const fence = "````````````````````````````````"
	var all []example
	var part *strings.Builder
	var markdown, html strings.Builder
	for line := range strings.Lines(spec) {
		bare := strings.TrimRight(line, "\n")
		switch {
		case bare == fence+" example":
			markdown.Reset()
			html.Reset()
			part = &markdown
		case bare == fence:
			all = append(all, example{markdown: tabs(markdown.String()), html: tabs(html.String())})
			part = nil
		case bare == "." && part != nil:
			part = &html
		case part != nil:
			part.WriteString(line)
		case strings.HasPrefix(line, "#"):
			all = append(all, example{heading: strings.TrimSpace(strings.TrimLeft(bare, "#"))})
		}
	}
	return all
}

func tabs(s string) string { return strings.ReplaceAll(s, "→", "\t") }
