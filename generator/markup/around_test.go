package markup

import (
	"bytes"
	"fmt"
	"net/url"
	"path"
	"strings"
	"testing"

	"github.com/yuin/goldmark/util"

	"slipbook/generator/finding"
)

// parsed is a page with its pieces set by a small handbook for tests: links lead
// where the same paths lead, pictures are one drawing and one file, and blocks are
// printed bare.
type parsed struct {
	*Document
	HTML  []byte
	Prose *Prose
}

// whole reads a page, units/slip/lesson.md, and returns it with its findings.
func whole(source string) (*parsed, finding.List) {
	d, prose := Read([]byte(source), "en-GB")
	return &parsed{d, setBare(d.Pieces, true), prose}, d.Found
}

// read reads a page in which nothing is wrong.
func read(t *testing.T, source string) *parsed {
	t.Helper()
	d, findings := whole(source)
	if len(findings) > 0 {
		t.Errorf("%q: findings where none should be:\n%s", source, said(findings))
	}
	return d
}

// setBare sets pieces; without marks as other pages take them.
func setBare(pieces []Piece, marks bool) []byte {
	var out bytes.Buffer
	for _, p := range pieces {
		switch {
		case p.Heading != nil && p.End:
			fmt.Fprintf(&out, "</h%d>\n", p.Heading.Level)
		case p.Heading != nil:
			fmt.Fprintf(&out, "<h%d id=\"%s\">", p.Heading.Level, escape(p.Heading.ID))
		case p.Ref != nil && p.End:
			out.WriteString("</a>")
		case p.Ref != nil && p.Ref.Kind == PictureRef:
			setPicture(&out, p.Ref)
		case p.Ref != nil:
			fmt.Fprintf(&out, "<a href=\"%s\">", util.EscapeHTML(util.URLEscape([]byte(leads(p.Ref)), true)))
		case p.Note != nil:
			setNote(&out, p.Note, marks)
		case p.Block != nil:
			setBlock(&out, p.Block, marks)
		case p.StepList != nil:
			out.WriteString(listTag(true, p.StepList.Start, p.End))
		case p.Step != nil && p.End:
			out.WriteString("</li>\n")
		case p.Step != nil:
			out.WriteString("<li>")
		default:
			out.WriteString(p.HTML)
		}
	}
	return out.Bytes()
}

// leads returns where a reference leads, as the page writes it.
func leads(r *Ref) string {
	switch r.Kind {
	case MadeRef:
		scheme, id := r.Made()
		return map[string]string{"glossary": "../glossary.html#" + id, "state": "../states/" + id + ".html", "calculator": "../calculators/" + id + ".html"}[scheme]
	case FigureRef:
		calculator, request := r.Figure()
		return "../calculators/" + calculator + ".html?" + request
	}
	file, heading, _ := r.Path()
	to := strings.NewReplacer("../../home.md", "../index.html", ".md", ".html").Replace(file)
	if heading != "" {
		to += "#" + url.PathEscape(heading)
	}
	return strings.TrimPrefix(strings.Replace(to, "lesson.html#", "#", 1), "./")
}

func setPicture(out *bytes.Buffer, r *Ref) {
	if r.Alone {
		out.WriteString("<figure class=\"plate\">\n")
	}
	if path.Ext(r.To) == ".svg" {
		fmt.Fprintf(out, `<svg role="img" aria-label="%s" width="320" height="200" viewBox="0 0 320 200"><path d="M0 0"/></svg>`, escape(r.Words))
	} else {
		fmt.Fprintf(out, `<img src="../pictures/bucket-1A2B3C4D.png" width="40" height="30" alt="%s" loading="lazy" decoding="async">`, escape(r.Words))
	}
	if r.Alone {
		out.WriteByte('\n')
		if r.Title != "" {
			fmt.Fprintf(out, "<figcaption>%s</figcaption>\n", escape(r.Title))
		}
		out.WriteString("</figure>\n")
	}
}

func setNote(out *bytes.Buffer, n *Note, marks bool) {
	switch {
	case n.Kind == NoteEntry:
		fmt.Fprintf(out, "<li id=\"note.%d\">\n", n.Number)
	case !marks:
	case n.Kind == NoteMark:
		fmt.Fprintf(out, `<sup id="note.%d.from.%d"><a href="#note.%d" class="note-mark" role="doc-noteref">%d</a></sup>`, n.Number, n.Place, n.Number, n.Number)
	default:
		fmt.Fprintf(out, "\u00a0<a href=\"#note.%d.from.%d\" class=\"note-back\" role=\"doc-backlink\" aria-label=\"up from %d\">up %d/%d</a>", n.Number, n.Place, n.Number, n.Place, n.Places)
	}
}

func setBlock(out *bytes.Buffer, b *Block, marks bool) {
	fmt.Fprintf(out, "<section class=%q>\n%s %d|", b.Kind, b.Words, b.Number)
	for _, s := range b.Fill {
		fmt.Fprintf(out, "%s=%s;", escape(s.Name), escape(s.Value))
	}
	if b.Ask != nil {
		fmt.Fprintf(out, "%s %d", escape(b.Ask.Ask), len(b.Ask.Answers))
	}
	if b.Part != nil {
		fmt.Fprintf(out, "%s %s %s", escape(b.Part.Medium.ID), escape(b.Part.State.ID), escape(b.Part.Technique.ID))
	}
	fmt.Fprintf(out, "\n%s</section>\n", setBare(b.Pieces, marks))
}

// said returns the findings one a line: place, rule, text and what to do.
func said(findings finding.List) string {
	var b strings.Builder
	for _, f := range findings {
		fmt.Fprintf(&b, "%d:%d %s: %s | %s\n", f.Line, f.Column, f.Rule.ID, f.Text, f.Do)
	}
	return b.String()
}
