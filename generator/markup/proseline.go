package markup

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/util"
)

// inline reads what stands in a line.
func (r *reader) inline(n ast.Node) {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		switch c := c.(type) {
		case *ast.Text:
			if seg := c.Segment; c.IsRaw() {
				r.put(seg.Value(r.source), seg.Start)
			} else {
				r.words(r.source[seg.Start:seg.Stop], seg.Start)
			}
			if c.SoftLineBreak() || c.HardLineBreak() {
				r.put([]byte(" "), c.Segment.Stop)
			}
		case *ast.String: // a quote or a dash that goldmark set; it does not say where
			r.stand(c.Value, r.next, 0)
		case *ast.Link:
			start := len(r.text)
			r.inline(c)
			r.prose.Links = append(r.prose.Links, Linked{start, len(r.text), string(c.Destination)})
		case *ast.Image:
			r.pictures = append(r.pictures, c)
			r.put([]byte(string(Thing)), position(c))
		case *ast.CodeSpan, *ast.AutoLink:
			r.put([]byte(string(Thing)), position(c))
		case *ast.RawHTML, *xast.FootnoteLink, *xast.FootnoteBacklink:
		default:
			r.inline(c)
		}
	}
}

// words reads Markdown text that stands at an offset of the source: escapes and
// entities become what they mean.
func (r *reader) words(written []byte, offset int) {
	done := 0
	for i := 0; i < len(written); i++ {
		switch c := written[i]; {
		case c == '\\' && i+1 < len(written) && util.IsPunct(written[i+1]):
			r.put(written[done:i], offset+done)
			i++
			done = i
		case c == '&':
			semicolon := bytes.IndexByte(written[i:min(len(written), i+longestEntity)], ';')
			if semicolon < 0 {
				continue
			}
			entity := written[i : i+semicolon+1]
			if means := resolve(entity); means != string(entity) {
				r.put(written[done:i], offset+done)
				r.stand([]byte(means), offset+i, len(entity))
				i += semicolon
				done = i + 1
			}
		}
	}
	r.put(written[done:], offset+done)
}

// longestEntity is how many bytes an entity has at most, as HTML names them.
const longestEntity = 34

// put adds text that stands so at an offset of the source. A line end, which
// has no meaning of its own, becomes a space.
func (r *reader) put(text []byte, offset int) {
	r.putAs(span{len(r.text), offset, false}, text)
}

// putAs adds text of a span.
func (r *reader) putAs(s span, text []byte) {
	if len(text) == 0 {
		return
	}
	at, offset := s.at, s.offset
	r.span(s)
	r.text = append(r.text, text...)
	for i := at; i < len(r.text); i++ {
		if r.text[i] == '\n' {
			r.text[i] = ' '
		}
	}
	r.next = offset + len(text)
}

// stand adds text that stands for so many bytes at an offset of the source.
func (r *reader) stand(text []byte, offset, length int) {
	r.putAs(span{len(r.text), offset, true}, text)
	r.next = offset + length
	r.span(span{len(r.text), r.next, false})
}

// span notes where what comes next stands, unless that follows from the last
// span.
func (r *reader) span(s span) {
	spans := r.prose.spans
	for n := len(spans); n > 0 && spans[n-1].at >= s.at; n-- {
		spans = spans[:n-1]
	}
	if n := len(spans); n == 0 || spans[n-1].offset-spans[n-1].at != s.offset-s.at || spans[n-1].stands != s.stands {
		spans = append(spans, s)
	}
	r.prose.spans = spans
}
