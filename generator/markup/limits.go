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

// markers walks the quote and list markers that open a line and gives where
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

// marker gives the length of the blank, quote sign or list marker that begins
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

// isRule says whether a line draws a rule: "- - - -".
func isRule(line []byte) bool {
	signs := bytes.Join(bytes.Fields(line), nil)
	return len(signs) > 0 && (signs[0] == '-' || signs[0] == '*') && len(bytes.Trim(signs, string(signs[:1]))) == 0
}

// paragraphLimit cuts a paragraph that is too long to read, by people and by
// the parser, and says so.
type paragraphLimit struct{}

// Transform looks at a paragraph before it is read.
func (paragraphLimit) Transform(node *ast.Paragraph, reader text.Reader, pc parser.Context) {
	lines, size := node.Lines(), 0
	for i := range lines.Len() {
		seg := lines.At(i)
		wide := bytes.Count(seg.Value(reader.Source()), []byte("|")) > widestTable+1
		if size += seg.Len(); size <= longestParagraph && !wide {
			continue
		}
		if p := pageOf(pc); p != nil && wide {
			p.find(seg.Start, finding.TooLong, fmt.Sprintf("a table of more than %d columns", widestTable), "Part it into smaller tables.")
		} else if p != nil {
			p.find(lines.At(0).Start, finding.TooLong,
				fmt.Sprintf("this paragraph or table is longer than %d bytes", longestParagraph),
				"Part it with a blank line.")
		}
		lines.SetSliced(0, i)
		if i == 0 {
			seg.Stop = seg.Start
			lines.Append(seg)
		}
		return
	}
}
