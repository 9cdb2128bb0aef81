package source

import (
	"bytes"
	"strings"

	"slipbook/generator/finding"
)

// Opening reads the opening block of a page: YAML between two lines of three
// hyphens. after is where the page's text begins: at 0 where the block is not
// there and at the end where it is not closed, which is reported.
func (t *Text) Opening() (head Value, after int) {
	start, end, after := openingBlock(t.Bytes)
	switch {
	case start < 0:
		t.Report(0, finding.OpeningBlock, "the page does not start with its opening block",
			"Start the file with a line ---, then a line such as `title: Mix a slip`, then a line --- again.")
		return Value{}, 0
	case end < 0:
		t.Report(0, finding.OpeningBlock, "the opening block that starts here is not closed",
			"Put a line of three hyphens, ---, between the last key and the text of the page.")
		return Value{}, len(t.Bytes)
	}
	before := t.Reported()
	head = t.YAMLAt(t.Bytes[start:end], "the opening block", func(at int) int { return start + at })
	if head.Absent() && t.Reported() == before {
		t.Report(0, finding.MissingKey, "the opening block is empty", "Write at least a line such as `title: Mix a slip`.")
	}
	return head, after
}

// openingBlock finds the block between two lines of three hyphens: its YAML
// goes from start to end, and the page's text begins after. start is -1 when
// the text does not begin with such a line, end when no second one follows.
func openingBlock(text []byte) (start, end, after int) {
	line, next := lineAt(text, 0)
	if line != "---" {
		return -1, -1, -1
	}
	start = next
	for at := start; at < len(text); at = next {
		if line, next = lineAt(text, at); line == "---" {
			return start, at, next
		}
	}
	return start, -1, -1
}

// lineAt returns the line that starts at an offset, without white space at its
// end, and where the next one starts.
func lineAt(text []byte, at int) (line string, next int) {
	next = len(text)
	if n := bytes.IndexByte(text[at:], '\n'); n >= 0 {
		next = at + n + 1
	}
	return strings.TrimRight(string(text[at:next]), " \t\r\n"), next
}

// Blank puts spaces in the place of the first n bytes, so that what follows
// keeps its offsets.
func (t *Text) Blank(n int) {
	for i, c := range t.Bytes[:n] {
		if c != '\n' && c != '\r' {
			t.Bytes[i] = ' '
		}
	}
}
