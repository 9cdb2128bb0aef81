package markup

import (
	"bytes"
	"fmt"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/util"

	"slipbook/generator/finding"
)

// checkBrackets reports square brackets that were left in the text. goldmark
// prints "[text][missing]", "[^missing]" and "[text](never closed" as they
// stand, without a word; so does every other reader of CommonMark. One that is
// meant as a bracket is escaped: \[.
func (p *page) checkBrackets(n *ast.Text) {
	if n.IsRaw() || p.text.Full() {
		return
	}
	for at := n.Segment.Start; at < n.Segment.Stop && !p.text.Full(); at++ {
		c := p.Source[at]
		if c != '[' && c != ']' || at < p.explained || isEscaped(p.Source, at) {
			continue
		}
		if c == '[' {
			p.explainOpen(at)
		} else if at+1 < len(p.Source) && p.Source[at+1] == '(' && !opensEscaped(p.Source, at) {
			p.find(at, finding.LooseBracket, "a link without the [ before its words", "Write [words](address).")
		}
	}
}

// isEscaped reports whether an odd number of backslashes stands before an offset.
func isEscaped(src []byte, at int) bool {
	n := 0
	for n < at && src[at-1-n] == '\\' {
		n++
	}
	return n%2 == 1
}

// opensEscaped reports whether an escaped [ stands before an offset on its line:
// then its ] is meant as itself, too.
func opensEscaped(src []byte, at int) bool {
	line := src[bytes.LastIndexByte(src[:at], '\n')+1 : at]
	return bytes.Contains(line, []byte(`\[`))
}

// explainOpen reports the construct that begins at a [ which goldmark could
// make nothing of, and passes over the rest of it.
func (p *page) explainOpen(at int) {
	words, end, closed := bracketed(p.Source, at)
	p.explained = end
	picture := at > 0 && p.Source[at-1] == '!' && !isEscaped(p.Source, at-1)
	next := byte(0)
	if end < len(p.Source) {
		next = p.Source[end]
	}
	shown := p.shorten(words)
	switch {
	case !closed:
		p.find(at, finding.LooseBracket, "a [ that no ] closes", "Close it, or write \\[ if you mean the bracket itself.")
	case len(words) > 1 && words[0] == '^':
		p.find(at, finding.Definitions, fmt.Sprintf("the footnote [%s] is written nowhere", shown),
			fmt.Sprintf("Write its text in a paragraph of its own that begins with [%s]: and stands on this page.", shown))
	case next == '(':
		p.unfinishedLink(at, end, shown)
	case next == '[':
		label, after, ok := bracketed(p.Source, end)
		if p.explained = after; !ok {
			label = words
		}
		if util.IsBlank(label) {
			label = words
		}
		p.find(at, finding.Definitions, fmt.Sprintf("[%s] is defined nowhere", p.shorten(label)),
			fmt.Sprintf("Write the address itself, [%s](address), or a line “[%s]: address” on this page.", shown, p.shorten(label)))
	case next == ':' && !picture:
		p.find(at, finding.Definitions, fmt.Sprintf("“[%s]:” begins no definition that can be understood", shown),
			fmt.Sprintf("Write it as a line of its own, “[%s]: address \"title\"”, after an empty line.", shown))
	default:
		p.find(at, finding.LooseBracket, fmt.Sprintf("[%s] is neither a link nor a footnote", shown),
			"Write [words](address), or \\[ if you mean the bracket itself.")
	}
}

// unfinishedLink reports "[words](" with something behind it that is no
// address; paren is the offset of the round bracket.
func (p *page) unfinishedLink(at, paren int, shown string) {
	rest := p.Source[paren:paragraphEnd(p.Source, paren)]
	end := bytes.IndexByte(rest, ')')
	if end < 0 {
		p.find(at, finding.LinkTarget, fmt.Sprintf("the ( after [%s] is never closed", shown), "Write the ) after the address.")
		return
	}
	p.explained = paren + end + 1
	p.find(at, finding.LinkTarget, fmt.Sprintf("what stands in the round brackets after [%s] is no address", shown),
		"Write the address without spaces, or between < and >; a title after it stands in \"quotes\". Take a link inside the words away.")
}

// bracketed returns what stands between the [ at an offset and its ], and the
// offset after it; brackets inside count, escaped ones do not. Without a ] in
// the same paragraph it gives the offset after the [.
func bracketed(src []byte, at int) (words []byte, end int, closed bool) {
	depth := 0
	for i, last := at, paragraphEnd(src, at); i < last; i++ {
		switch src[i] {
		case '\\':
			i++
		case '[':
			depth++
		case ']':
			if depth--; depth == 0 {
				return src[at+1 : i], i + 1, true
			}
		}
	}
	return nil, at + 1, false
}

// paragraphEnd returns the offset of the empty line, or the end of the file, that
// ends the paragraph around an offset, but looks no further than a link may
// reach.
func paragraphEnd(src []byte, at int) int {
	const reach = 2000 // two labels of the longest kind
	rest := src[at:min(len(src), at+reach)]
	for _, empty := range []string{"\n\n", "\n\r\n"} {
		if n := bytes.Index(rest, []byte(empty)); n >= 0 {
			rest = rest[:n]
		}
	}
	return at + len(rest)
}

// shorten makes words from the source fit into a finding.
func (p *page) shorten(words []byte) string {
	const most = 40
	s := string(bytes.Join(bytes.Fields(words), []byte(" ")))
	for i := range s {
		if i > most {
			return s[:i] + "…"
		}
	}
	return s
}
