package markup

import (
	"fmt"
	"net/url"
	"regexp"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/util"

	"slipbook/generator/finding"
)

// scheme is what an address with a scheme begins with.
var scheme = regexp.MustCompile(`^([A-Za-z][A-Za-z0-9+.-]*):`)

// What may be written as an address, for the sentence under a finding.
const linkHelp = "Write the path to a .md page, #heading, glossary:id, state:id, material:id, recipe:id, tile:code, fault:id, calculator:name, calculator:name?input=value, or an address that begins with https:, http: or mailto:."

// checkLinks notes what links refer to within the handbook, and reports what can
// be no address whatever pages there are.
func (p *page) checkLinks() {
	for _, n := range p.links {
		switch n := n.(type) {
		case *xast.FootnoteLink:
			p.checkNested(n)
			if c := within(n); c != nil && kindOf(c.kind).teaching {
				p.find(position(n), finding.BlockPlace, "a footnote in a note for teaching", "Students’ pages leave the note out, and would keep the footnote: write its words here.")
			}
		case *ast.AutoLink:
			p.checkNested(n)
			p.checkBare(n)
		case *ast.Link:
			if plain(n, p.Source) == "" && n.FirstChild() == nil {
				p.find(position(n), finding.LinkWords, "a link without words", "Write what it leads to between the square brackets.")
			}
			if ref := p.reference(position(n), resolve(n.Destination)); ref != nil {
				ref.Words, ref.Title = plain(n, p.Source), resolve(n.Title)
				p.refs[n] = p.refer(ref)
			}
		}
	}
}

// refer puts a reference behind those that the page has so far.
func (p *page) refer(r *Ref) *Ref {
	r.Number = len(p.doc.Refs)
	p.doc.Refs = append(p.doc.Refs, r)
	return r
}

// checkNested reports a link within the words of another.
func (p *page) checkNested(n ast.Node) {
	if inside(n, ast.KindLink) {
		p.find(position(n), finding.LinkWords, "a link inside the words of another link", "Keep one of the two.")
	}
}

// checkBare checks an address between angle brackets, which is its own words.
func (p *page) checkBare(n *ast.AutoLink) {
	written := string(n.URL(p.Source))
	if n.AutoLinkType == ast.AutoLinkEmail && !strings.HasPrefix(strings.ToLower(written), "mailto:") {
		written = "mailto:" + written
	}
	if m := scheme.FindStringSubmatch(written); m != nil && isMade(m[1]) {
		p.find(position(n), finding.LinkWords, fmt.Sprintf("<%s> has no words for the reader", written), fmt.Sprintf("Write [words](%s).", written))
		return
	}
	if p.reference(position(n), written) == nil { // a page's path is no bare address: goldmark takes none for one
		n.SetAttributeString("rel", []byte("external"))
	}
}

// The schemes of addresses that lead to what no Markdown file holds.
const (
	glossaryScheme   = "glossary"
	stateScheme      = "state"
	calculatorScheme = "calculator"
	materialScheme   = "material"
	recipeScheme     = "recipe"
	tileScheme       = "tile"
	leachScheme      = "leach"
	faultScheme      = "fault"
)

// isMade reports whether a scheme leads to what no Markdown file holds.
func isMade(scheme string) bool {
	return slices.Contains([]string{glossaryScheme, stateScheme, calculatorScheme, materialScheme, recipeScheme, tileScheme, leachScheme, faultScheme}, scheme)
}

// reference returns what an address as written refers to within the handbook;
// nil where it lies outside, or can be no address, which is then reported at the
// offset.
func (p *page) reference(at int, written string) *Ref {
	bad := func(text, do string) *Ref {
		p.find(at, finding.LinkTarget, text, do)
		return nil
	}
	m := scheme.FindStringSubmatch(written)
	switch {
	case written == "":
		return bad("a link without an address", linkHelp)
	case m != nil && isMade(m[1]):
		if rest := written[len(m[0]):]; m[1] == calculatorScheme && strings.Contains(rest, "?") {
			return &Ref{Kind: FigureRef, To: rest, Offset: at}
		}
		return &Ref{Kind: MadeRef, To: written, Offset: at}
	case m != nil:
		if fault := outsideFault(strings.ToLower(m[1]), written); fault != "" {
			return bad(fmt.Sprintf("link to %q: %s", written, fault), linkHelp)
		}
		return nil
	case strings.HasPrefix(written, "/"):
		return bad(fmt.Sprintf("link to %q: an address that begins with / breaks when the handbook moves to another folder", written),
			"Write the path from this file to the .md page.")
	}
	r := &Ref{Kind: PageRef, To: written, Offset: at}
	if _, _, ok := r.Path(); !ok {
		return bad(fmt.Sprintf("link to %q: a %% stands for nothing here", written), "Write %25 for the sign itself.")
	}
	return r
}

// Path returns the path of the page that a PageRef leads to, as written from the
// page's own file, empty for the page itself, and the heading; not ok where a %
// stands for nothing.
func (r *Ref) Path() (file, heading string, ok bool) {
	file, heading, _ = strings.Cut(r.To, "#")
	file, errFile := url.PathUnescape(file)
	heading, errHeading := url.PathUnescape(heading)
	return file, heading, errFile == nil && errHeading == nil
}

// Made returns the scheme and the id of a MadeRef.
func (r *Ref) Made() (scheme, id string) {
	scheme, id, _ = strings.Cut(r.To, ":")
	return scheme, id
}

// Figure returns the calculator and the request of a FigureRef.
func (r *Ref) Figure() (calculator, request string) {
	calculator, request, _ = strings.Cut(r.To, "?")
	return calculator, request
}

// link sets where a link begins: within the handbook as a piece, else as it is.
func (s *setter) link(n ast.Node) {
	if ref := s.page.refs[n]; ref != nil {
		s.set(Piece{Ref: ref})
		return
	}
	l := n.(*ast.Link)
	s.printed = append(s.printed, `<a href="`...)
	if to := util.URLEscape(l.Destination, true); !html.IsDangerousURL(to) { // it is reported as well
		s.printed = append(s.printed, util.EscapeHTML(to)...)
	}
	s.printed = append(s.printed, '"')
	if l.Title != nil {
		s.printed = append(s.printed, ` title="`+escape(resolve(l.Title))+`"`...)
	}
	s.printed = append(s.printed, ` rel="external">`...)
}

// linkEnd sets where a link ends.
func (s *setter) linkEnd(n ast.Node) {
	if ref := s.page.refs[n]; ref != nil {
		s.set(Piece{Ref: ref, End: true})
		return
	}
	s.printed = append(s.printed, "</a>"...)
}

// outsideFault returns what is wrong with an address outside the handbook, empty
// when nothing is.
func outsideFault(scheme, written string) string {
	u, err := url.Parse(written)
	switch {
	case scheme != "http" && scheme != "https" && scheme != "mailto":
		return fmt.Sprintf("%s: is no kind of address that a page may link", scheme)
	case err != nil:
		return "this is no address"
	case scheme == "mailto" && !strings.Contains(u.Opaque, "@"):
		return "a mail address has a @"
	case scheme != "mailto" && u.Host == "":
		return "the name of the server is missing"
	}
	return ""
}
