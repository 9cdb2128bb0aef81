// Package setting sets the pieces of a page's own words somewhere: on their page, in
// a chapter of the book, or among words of other pages. It exists so that these are
// three settings of the same pieces, and nothing that was printed is ever read to
// print it otherwise.
package setting

import (
	"bytes"
	"fmt"
	"html/template"
	"strconv"
	"strings"

	"github.com/yuin/goldmark/util"

	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/desk"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/register"
	"slipbook/generator/press/table"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
)

// Setter sets pieces in a theme, with what the handbook's own blocks show.
type Setter struct {
	*theme.Theme
	calculators *desk.Calculators
	table       *table.Table
	register    *register.Register
	forTeaching bool // a copy for the instructor
	views       map[string]View
	numbers     map[string]string // of the lessons, by address
}

// setting is pieces of a page being set somewhere.
type setting struct {
	*Setter
	of    *proof.Page // whose words they are
	at    imprint.Place
	apart bool // they stand among words of other pages: without ids, and without the marks of notes, which stay behind
	out   *bytes.Buffer
}

// View makes the view of one of the handbook's own blocks; the theme's piece
// of the block's name prints it. A nil view prints nothing.
type View func(*setting, *markup.Block) (any, error)

// Body sets all of a hand-written page's own words in a slot of its view.
func (r *Setter) Body(page *proof.Page, at imprint.Place) func(*bytes.Buffer) error {
	return func(out *bytes.Buffer) error {
		s := setting{Setter: r, of: page, at: at, out: out}
		return s.pieces(page.Document.Pieces)
	}
}

// Apart sets a part of a page's words among those of other pages.
func (r *Setter) Apart(page *proof.Page, pieces []markup.Piece, at imprint.Place) (template.HTML, error) {
	return set(setting{Setter: r, of: page, at: at, apart: true}, pieces)
}

func set(s setting, pieces []markup.Piece) (template.HTML, error) {
	return imprint.Piece(func(out *bytes.Buffer) error {
		s.out = out
		return s.pieces(pieces)
	})
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
		case p.StepList != nil:
			s.stepList(p.StepList, p.End)
		case p.Step != nil:
			if err := s.step(p.Step, p.End); err != nil {
				return err
			}
		case p.Ref != nil && p.Ref.Kind == markup.PictureRef:
			s.picture(p.Ref)
		case p.Ref != nil:
			s.link(p.Ref, p.End)
		case s.at.Ebook != nil && strings.Contains(p.HTML, "r>"):
			s.out.WriteString(closed.Replace(p.HTML))
		default:
			s.out.WriteString(p.HTML)
		}
	}
	return nil
}

// closed makes XHTML of finished HTML: these are the only elements in it that have no
// end. In words the sign < is written another way.
var closed = strings.NewReplacer("<br>", "<br/>", "<hr>", "<hr/>")

// block sets one of the handbook's own blocks.
func (s *setting) block(b *markup.Block) error {
	view, err := s.views[b.Kind](s, b)
	if err != nil || view == nil {
		return err
	}
	if done, ok := view.(template.HTML); ok && b.Kind == markup.CalculatorBlock {
		s.out.WriteString(string(done))
		return nil
	}
	return s.at.Templates(s.Theme).ExecuteTemplate(s.out, b.Kind, view)
}

// heading sets where a heading begins or ends.
func (s *setting) heading(h *markup.Heading, end bool) {
	level := strconv.Itoa(s.at.Level(h.Level))
	switch {
	case end:
		s.out.WriteString("</h" + level + ">\n")
	case s.apart:
		s.out.WriteString("<h" + level + ">")
	default:
		s.out.WriteString("<h" + level + ` id="` + escape(s.at.ID(h.ID)) + `">`)
	}
}

// link sets where a link within the handbook begins or ends. In the book the
// number of the chapter that it leads to stands behind its words.
func (s *setting) link(r *markup.Ref, end bool) {
	target := s.of.Targets[r.Number]
	if target.Fault != nil {
		target.Address = s.table.FaultAt(target.Fault.ID)
	}
	if end {
		s.out.WriteString(s.doubt(target.Tile))
		if s.at.Book != nil {
			_, number, _ := strings.Cut(s.at.To(target.Address), theme.NumberSign)
			s.out.WriteString(string(theme.ChapterTo(number)))
		}
		s.out.WriteString("</a>")
		return
	}
	to := theme.Target(s.at.To(target.Address))
	s.out.WriteString(`<a href="`)
	s.out.Write(util.EscapeHTML(util.URLEscape([]byte(to), true)))
	s.out.WriteByte('"')
	s.number(target.Address)
	title := r.Title
	if title == "" && target.Tile != nil {
		title = s.Say("tile-title", target.Tile.Code, s.came(target.Tile))
	}
	if title != "" {
		s.out.WriteString(` title="` + escape(title) + `"`)
	}
	s.out.WriteByte('>')
}

// number marks a link to another lesson with its number, which paper shows behind the
// words; book and e-book have it among them.
func (s *setting) number(address string) {
	page, _, _ := strings.Cut(address, "#")
	if n := s.numbers[page]; n != "" && page != s.at.Page && !s.at.Bound() {
		s.out.WriteString(` data-number="` + n + `"`)
	}
}

// came says how a tile came out of the kiln, in a word or two.
func (s *setting) came(t *course.Tile) string {
	switch {
	case t.Fired == "":
		return s.Say("wall-unfired")
	case t.Verdict == course.TileGood:
		return s.Say("wall-good")
	case t.Verdict == course.TileUsable:
		return s.Say("wall-usable")
	case t.Verdict == course.TileFailed:
		return s.Say("wall-failed")
	}
	return s.Say("wall-unjudged")
}

// doubt says behind the words of a link to a tile, for whoever does not see a title,
// that it is no evidence: it failed, or nobody knows yet.
func (s *setting) doubt(t *course.Tile) string {
	if t == nil || t.Fired != "" && (t.Verdict == course.TileGood || t.Verdict == course.TileUsable) {
		return ""
	}
	return ` <span class="unseen">(` + escape(s.came(t)) + ")</span>"
}

// stepList sets where a list of steps begins or ends. Only a lesson numbers its steps
// through; elsewhere a list has the numbers that its author wrote.
func (s *setting) stepList(l *markup.StepList, end bool) {
	switch {
	case end:
		s.out.WriteString("</ol>\n")
	case !s.of.Numbered():
		s.out.WriteString(stepsBegin(l.Start, ""))
	case s.at.Bound():
		s.out.WriteString(stepsBegin(l.First, ""))
	default:
		s.out.WriteString(stepsBegin(l.First, "steps"))
	}
}

// step sets where a step begins or ends.
func (s *setting) step(step *markup.Step, end bool) error {
	switch {
	case end:
		s.out.WriteString("</li>\n")
	case !s.of.Numbered():
		s.out.WriteString("<li>")
	case s.at.Bound():
		s.out.WriteString(`<li id="` + s.at.ID(markup.StepID(step.Number)) + `">`)
	default:
		return s.at.Templates(s.Theme).ExecuteTemplate(s.out, StepPiece, newStepView(step))
	}
	return nil
}

// note sets what a footnote has beside its words.
func (s *setting) note(n *markup.Note) {
	entry := s.at.ID("note." + strconv.Itoa(n.Number))
	from := entry + ".from." + strconv.Itoa(n.Place)
	switch {
	case n.Kind == markup.NoteEntry && s.apart:
		s.out.WriteString("<li>\n")
	case n.Kind == markup.NoteEntry:
		s.out.WriteString(`<li id="` + entry + `"` + s.inEbook("footnote") + ">\n")
	case s.apart:
	case n.Kind == markup.NoteMark:
		fmt.Fprintf(s.out, `<sup id="%s"><a href="#%s" class="note-mark" role="doc-noteref"%s>%d</a></sup>`, from, entry, s.inEbook("noteref"), n.Number)
	case s.at.Book == nil: // on paper nothing leads back
		words := s.Say("note-back")
		if n.Places > 1 {
			words = s.Say("note-back-place", n.Place)
		}
		name := s.Say("note-back-name", words, n.Number)
		fmt.Fprintf(s.out, "\u00a0"+`<a href="#%s" class="note-back" role="doc-backlink" aria-label="%s">%s</a>`, from, escape(name), escape(words))
	}
}

// inEbook is the attribute that tells a reading system what an element is; nothing on
// pages and in the book.
func (s *setting) inEbook(kind string) string {
	if s.at.Ebook == nil {
		return ""
	}
	return ` epub:type="` + kind + `"`
}

// PictureSizes tells a browser how wide a picture is shown before it has read a style: as
// wide as the column of 34 rem, or on a narrower screen the screen without its two
// margins of 4 %.
const PictureSizes = "(min-width: 37rem) 34rem, 92vw"

// picture sets a picture. One that stands alone is a figure with its caption.
func (s *setting) picture(r *markup.Ref) {
	if r.Alone {
		s.out.WriteString("<figure class=\"plate\">\n")
	}
	s.out.WriteString(string(imprint.Picture(s.at, s.of.Targets[r.Number].Picture, r.Words, PictureSizes)))
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
func escape(text string) string {
	if !strings.ContainsAny(text, "\x00&<>\"") {
		return text
	}
	return string(util.EscapeHTML([]byte(text)))
}
