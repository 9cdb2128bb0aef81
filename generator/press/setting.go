package press

import (
	"bytes"
	"fmt"
	"html/template"
	"strconv"
	"strings"

	"github.com/yuin/goldmark/util"

	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
)

// setting is pieces of a page being set somewhere.
type setting struct {
	*impression
	of    *proof.Page // whose words they are
	at    place
	apart bool // they stand among words of other pages: without ids, and without the marks of notes, which stay behind
	out   *bytes.Buffer
}

// body sets all of a hand-written page's own words in a slot of its view.
func (i *impression) body(page *course.Page, at place) func(*bytes.Buffer) error {
	read := i.documents[page]
	return func(out *bytes.Buffer) error {
		s := setting{impression: i, of: read, at: at, out: out}
		return s.pieces(read.Document.Pieces)
	}
}

// gathered sets a part of a page's words among those of other pages.
func (i *impression) gathered(page *proof.Page, pieces []markup.Piece, at place) (template.HTML, error) {
	return i.set(setting{impression: i, of: page, at: at, apart: true}, pieces)
}

func (i *impression) set(s setting, pieces []markup.Piece) (template.HTML, error) {
	s.out = scratch.Get().(*bytes.Buffer)
	s.out.Reset()
	defer scratch.Put(s.out)
	err := s.pieces(pieces)
	return template.HTML(s.out.String()), err
}

// pieces sets pieces in order.
func (s *setting) pieces(pieces []markup.Piece) error {
	for n := range pieces {
		switch p := &pieces[n]; {
		case p.Block != nil:
			if err := s.block(p.Block); err != nil {
				return err
			}
		case p.Heading != nil:
			s.heading(p.Heading, p.End)
		case p.Note != nil:
			s.note(p.Note)
		case p.Ref != nil && p.Ref.Kind == markup.PictureRef:
			s.picture(p.Ref)
		case p.Ref != nil:
			s.link(p.Ref, p.End)
		default:
			s.out.WriteString(p.HTML)
		}
	}
	return nil
}

// heading sets where a heading begins or ends.
func (s *setting) heading(h *markup.Heading, end bool) {
	level := strconv.Itoa(s.at.level(h.Level))
	switch {
	case end:
		s.out.WriteString("</h" + level + ">\n")
	case s.apart:
		s.out.WriteString("<h" + level + ">")
	default:
		s.out.WriteString("<h" + level + ` id="` + escape(s.at.id(h.ID)) + `">`)
	}
}

// link sets where a link within the handbook begins or ends. In the book the
// number of the chapter that it leads to stands behind its words.
func (s *setting) link(r *markup.Ref, end bool) {
	to, number, _ := strings.Cut(s.at.to(s.of.Targets[r.Number].Address), theme.NumberSign)
	if end {
		s.out.WriteString(string(theme.ChapterTo(number)) + "</a>")
		return
	}
	s.out.WriteString(`<a href="`)
	s.out.Write(util.EscapeHTML(util.URLEscape([]byte(to), true)))
	s.out.WriteByte('"')
	if r.Title != "" {
		s.out.WriteString(` title="` + escape(r.Title) + `"`)
	}
	s.out.WriteByte('>')
}

// note sets what a footnote has beside its words.
func (s *setting) note(n *markup.Note) {
	entry := s.at.id("note." + strconv.Itoa(n.Number))
	from := entry + ".from." + strconv.Itoa(n.Place)
	switch {
	case n.Kind == markup.NoteEntry && s.apart:
		s.out.WriteString("<li>\n")
	case n.Kind == markup.NoteEntry:
		s.out.WriteString(`<li id="` + entry + "\">\n")
	case s.apart:
	case n.Kind == markup.NoteMark:
		fmt.Fprintf(s.out, `<sup id="%s"><a href="#%s" class="note-mark" role="doc-noteref">%d</a></sup>`, from, entry, n.Number)
	case s.at.book == nil: // on paper nothing leads back
		words := s.Say("note-back")
		if n.Places > 1 {
			words = s.Say("note-back-place", n.Place)
		}
		name := s.Say("note-back-name", words, n.Number)
		fmt.Fprintf(s.out, "\u00a0"+`<a href="#%s" class="note-back" role="doc-backlink" aria-label="%s">%s</a>`, from, escape(name), escape(words))
	}
}

// picture sets a picture: a drawing into the page itself, so that it takes the
// page's inks on screen and paper, any other as a file beside it. One that stands
// alone is a figure with its caption.
func (s *setting) picture(r *markup.Ref) {
	target := s.of.Targets[r.Number]
	if r.Alone {
		s.out.WriteString("<figure class=\"plate\">\n")
	}
	if rest, ok := bytes.CutPrefix(bytes.TrimSpace(target.Picture.SVG), []byte("<svg")); ok {
		fmt.Fprintf(s.out, `<svg role="img" aria-label="%s" width="%d" height="%d"`, escape(r.Words), target.Picture.Width, target.Picture.Height)
		s.out.Write(rest)
	} else {
		fmt.Fprintf(s.out, `<img src="%s" width="%d" height="%d" alt="%s" loading="lazy" decoding="async">`,
			escape(s.at.to(target.Address)), target.Picture.Width, target.Picture.Height, escape(r.Words))
	}
	if !r.Alone {
		return
	}
	s.out.WriteByte('\n')
	if r.Title != "" {
		s.out.WriteString("<figcaption>" + escape(r.Title) + "</figcaption>\n")
	}
	s.out.WriteString("</figure>\n")
}

// escape makes text safe in HTML, in attributes as well.
func escape(text string) string { return string(util.EscapeHTML([]byte(text))) }
