package markup

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// container is one of the handbook's own blocks whose body is Markdown. It is
// parsed as a container, like a quote, between the same fences that CommonMark
// sees: its links, definitions, footnotes and headings are then the page's own,
// and every position in it is a position in the file. Other Markdown viewers show
// it as a code block.
type container struct {
	ast.BaseBlock
	kind     string // the word after the fence
	words    string
	infoAt   int // offset of the info string
	fence    byte
	length   int // of the opening fence
	indent   int // columns before the opening fence, taken off each line
	isClosed bool
}

var kindContainer = ast.NewNodeKind("Container")

// Kind completes ast.Node.
func (n *container) Kind() ast.NodeKind { return kindContainer }

// Dump completes ast.Node.
func (n *container) Dump(source []byte, level int) { ast.DumpHelper(n, source, level, nil, nil) }

// containerParser opens a container where a fence's info string begins with the
// word of one, and closes it at the closing fence.
type containerParser struct{}

// Trigger completes parser.BlockParser.
func (containerParser) Trigger() []byte { return []byte{'`', '~'} }

// Open takes an opening fence with the word of a container behind it.
func (containerParser) Open(_ ast.Node, reader text.Reader, pc parser.Context) (ast.Node, parser.State) {
	line, segment := reader.PeekLine()
	at := pc.BlockOffset()
	if at < 0 {
		return nil, parser.NoChildren
	}
	n := fenceLength(line[at:])
	rest := line[at+n:]
	left := util.TrimLeftSpaceLength(rest)
	info := bytes.TrimSpace(rest)
	word, words, _ := bytes.Cut(info, []byte(" "))
	if n < 3 || !isContainer(string(word)) || line[at] == '`' && bytes.IndexByte(info, '`') >= 0 {
		return nil, parser.NoChildren
	}
	c := &container{
		kind:   string(word),
		words:  string(bytes.TrimSpace(words)),
		infoAt: segment.Start - segment.Padding + at + n + left,
		fence:  line[at],
		length: n,
		indent: pc.BlockIndent(),
	}
	reader.AdvanceToEOL()
	return c, parser.HasChildren
}

// isContainer reports whether a word names a block whose body is Markdown.
func isContainer(word string) bool {
	kind := kindOf(word)
	return kind != nil && kind.read == nil
}

// fenceLength counts how often the line's first byte stands at its beginning.
func fenceLength(line []byte) int {
	n := 0
	for n < len(line) && line[n] == line[0] {
		n++
	}
	return n
}

// Continue takes the next line of the body, without the fence's own indent.
func (containerParser) Continue(node ast.Node, reader text.Reader, _ parser.Context) parser.State {
	n := node.(*container)
	line, segment := reader.PeekLine()
	width, at := util.IndentWidth(line, reader.LineOffset())
	if at < len(line) && width < 4 && line[at] == n.fence {
		if l := fenceLength(line[at:]); l >= n.length && util.IsBlank(line[at+l:]) {
			n.isClosed = true
			reader.AdvanceToEOL()
			return parser.Close
		}
	}
	if util.IsBlank(line) {
		return parser.Continue | parser.HasChildren
	}
	if off := min(width, n.indent); off > 0 {
		reader.AdvanceAndSetPadding(util.IndentPositionPadding(line, reader.LineOffset(), segment.Padding, off))
	}
	return parser.Continue | parser.HasChildren
}

// Close completes parser.BlockParser.
func (containerParser) Close(ast.Node, text.Reader, parser.Context) {}

// CanInterruptParagraph says yes, as for every fence.
func (containerParser) CanInterruptParagraph() bool { return true }

// CanAcceptIndentedLine says no, as for every fence.
func (containerParser) CanAcceptIndentedLine() bool { return false }

// fenceParser is goldmark's parser of fences; it also notes which fences were
// closed, since CommonMark closes a forgotten one in silence.
type fenceParser struct{ parser.BlockParser }

// Continue notes the closing fence.
func (f fenceParser) Continue(node ast.Node, reader text.Reader, pc parser.Context) parser.State {
	state := f.BlockParser.Continue(node, reader, pc)
	if p := pageOf(pc); p != nil && state == parser.Close {
		p.closed[node] = true
	}
	return state
}
