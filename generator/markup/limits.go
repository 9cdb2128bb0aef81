package markup

import (
	"bytes"
	"fmt"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"

	"slipbook/generator/finding"
)

// What a page may hold at most. Markdown has constructs whose reading takes the
// square of their length or the stack of their depth; nobody writes them, but a
// slip of a script may, and a page must never stop the program.
const (
	deepest          = 50       // quotes and lists within each other
	longestParagraph = 16 << 10 // bytes of a paragraph or table
	widestTable      = 40       // columns; goldmark fills short rows up to them
	longestHeading   = 1 << 10  // bytes of a heading
	widestIndent     = 200      // columns before a quote sign or list marker
	mostBrackets     = 500      // opening square brackets in a paragraph
	mostEmphasis     = 1000     // asterisks and underscores in a paragraph, those side by side together as one
	mostPictures     = 100      // on a page, where each drawing stands as often as it is shown
	mostNotes        = 1000     // footnotes, and marks that refer to them
)

// tooDeep finds the first line that opens more quotes and lists than a page may
// nest, before the parser has to.
func tooDeep(src []byte) (offset int, found bool) {
	for at := 0; at < len(src); {
		line := src[at:]
		if n := bytes.IndexByte(line, '\n'); n >= 0 {
			line = line[:n+1]
		}
		if o, deep := markers(line); deep {
			return at + o, true
		}
		at += len(line)
	}
	return 0, false
}

// markers walks the quote and list markers that open a line and returns where
// the one too many stands. A line of nothing but one repeated sign is a rule.
func markers(line []byte) (offset int, deep bool) {
	depth := 0
	for i := 0; i < len(line); {
		n := marker(line[i:])
		if n == 0 {
			return 0, false
		}
		if line[i] != ' ' && line[i] != '\t' {
			depth++
		}
		if depth > deepest || depth == 1 && i > widestIndent {
			return i, !isRule(line)
		}
		i += n
	}
	return 0, false
}

// marker returns the length of the blank, quote sign or list marker that begins
// line, 0 when something else does.
func marker(line []byte) int {
	blankAfter := func(n int) int {
		if n < len(line) && (line[n] == ' ' || line[n] == '\t') {
			return n
		}
		return 0
	}
	switch c := line[0]; {
	case c == ' ', c == '\t', c == '>':
		return 1
	case c == '-', c == '+', c == '*', c == ':':
		return blankAfter(1)
	case c >= '0' && c <= '9':
		n := 1
		for n < len(line) && n < 10 && line[n] >= '0' && line[n] <= '9' {
			n++
		}
		if n < len(line) && (line[n] == '.' || line[n] == ')') {
			return blankAfter(n + 1)
		}
	}
	return 0
}

// isRule reports whether a line draws a rule: "- - - -".
func isRule(line []byte) bool {
	signs := bytes.Join(bytes.Fields(line), nil)
	return len(signs) > 0 && (signs[0] == '-' || signs[0] == '*') && len(bytes.Trim(signs, string(signs[:1]))) == 0
}

// paragraphLimit cuts a paragraph or table that is too long to read, by people
// and by the parser, or whose rows do not fit its columns, and says so.
type paragraphLimit struct{}

// Transform looks at a paragraph before it is read.
func (paragraphLimit) Transform(node *ast.Paragraph, reader text.Reader, pc parser.Context) {
	lines, p := node.Lines(), pageOf(pc)
	read, at, text, do := tooLong(lines, reader.Source())
	if text != "" && p != nil {
		p.find(at, finding.TooLong, text, do)
	}
	if p != nil {
		read = min(read, p.checkRows(lines.Sliced(0, read)))
	}
	if read < lines.Len() {
		first := lines.At(0)
		lines.SetSliced(0, read)
		if read == 0 {
			first.Stop = first.Start
			lines.Append(first)
		}
	}
}

// tooLong returns how many lines of a paragraph may be read and, where that is
// not all of them, what to say of it, and where.
func tooLong(lines *text.Segments, source []byte) (read, at int, words, do string) {
	size, brackets, emphasis := 0, 0, 0
	for i := range lines.Len() {
		seg := lines.At(i)
		line := seg.Value(source)
		size += seg.Len()
		brackets += bytes.Count(line, []byte("["))
		emphasis += signsOf(line)
		switch {
		case bytes.Count(line, []byte("|")) > widestTable+1:
			return i, seg.Start, fmt.Sprintf("a table of more than %d columns", widestTable), "Divide it into smaller tables."
		case size > longestParagraph:
			return i, lines.At(0).Start, fmt.Sprintf("this paragraph or table is longer than %d bytes", longestParagraph), "Divide it with a blank line."
		case brackets > mostBrackets:
			return i, lines.At(0).Start, fmt.Sprintf("this paragraph has more than %d square brackets", mostBrackets), "Divide it with a blank line."
		case emphasis > mostEmphasis:
			return i, lines.At(0).Start, fmt.Sprintf("this paragraph has more than %d asterisks and underscores", mostEmphasis), "Divide it with a blank line; write one that is meant as itself as \\* or \\_."
		}
	}
	return lines.Len(), 0, "", ""
}

// signsOf counts the signs of emphasis in a line, those side by side as one.
func signsOf(line []byte) int {
	n := 0
	for i, c := range line {
		if (c == '*' || c == '_') && (i == 0 || line[i-1] != c && line[i-1] != '\\') {
			n++
		}
	}
	return n
}

// tooManyNotes finds the place of one mark of a footnote too many: each is
// looked for among all of them.
func tooManyNotes(src []byte) (offset int, found bool) {
	at := 0
	for range mostNotes + 1 {
		n := bytes.Index(src[at:], []byte("[^"))
		if n < 0 {
			return 0, false
		}
		at += n + 2
	}
	return at - 2, true
}
