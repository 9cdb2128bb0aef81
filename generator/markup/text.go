package markup

import (
	"bufio"
	"bytes"
	"html"
	"strings"

	"github.com/yuin/goldmark/ast"
	printer "github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/util"
)

// position returns the offset of a node, or of the nearest node around it that
// has one; 0 when none has.
func position(n ast.Node) int {
	for ; n != nil; n = n.Parent() {
		if at := n.Pos(); at >= 0 {
			return at
		}
	}
	return 0
}

// plain returns the words of a node without marks: escapes and entities
// resolved, line breaks as spaces, no spaces at the ends.
func plain(n ast.Node, source []byte) string {
	var b strings.Builder
	write(&b, n, source)
	return strings.TrimSpace(b.String())
}

func write(b *strings.Builder, n ast.Node, source []byte) {
	switch n := n.(type) {
	case *ast.Text:
		value := n.Value(source)
		if n.IsRaw() || n.Parent().Kind() == ast.KindCodeSpan {
			b.Write(value)
		} else {
			b.WriteString(resolve(value))
		}
		if n.SoftLineBreak() || n.HardLineBreak() {
			b.WriteByte(' ')
		}
	case *ast.String:
		b.Write(n.Value)
	case *ast.AutoLink:
		b.Write(n.Label(source))
	}
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		write(b, c, source)
	}
}

// resolve returns the text that Markdown source stands for: backslash escapes and
// entities replaced by what they mean. It reads what goldmark prints, so that
// words and page can never differ.
func resolve(source []byte) string {
	if bytes.IndexByte(source, '\\') < 0 && bytes.IndexByte(source, '&') < 0 {
		return string(source)
	}
	var b strings.Builder
	w := bufio.NewWriterSize(&b, len(source)) // a page may have a hundred thousand of these
	printer.DefaultWriter.Write(w, source)
	_ = w.Flush() // a strings.Builder takes everything
	return html.UnescapeString(b.String())
}

// escape makes text safe in HTML, in attributes as well.
func escape(s string) string { return string(util.EscapeHTML([]byte(s))) }

// inside reports whether a node stands within one of this kind.
func inside(n ast.Node, kind ast.NodeKind) bool {
	for n = n.Parent(); n != nil; n = n.Parent() {
		if n.Kind() == kind {
			return true
		}
	}
	return false
}
