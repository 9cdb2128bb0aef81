package markup

import (
	"fmt"
	"net/url"
	"path"
	"regexp"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	xast "github.com/yuin/goldmark/extension/ast"

	"slipbook/generator/finding"
)

// scheme is what an address with a scheme begins with.
var scheme = regexp.MustCompile(`^([A-Za-z][A-Za-z0-9+.-]*):`)

// What may be written as an address, for the sentence under a finding.
const linkHelp = "Write the path to a .md page, #heading, glossary:id, state:id, calculator:name, calculator:name?input=value, or an address that begins with https:, http: or mailto:."

// checkLinks turns what is written into what is printed, and reports what leads
// nowhere.
func (p *page) checkLinks() {
	for _, n := range p.links {
		switch n := n.(type) {
		case *xast.FootnoteLink:
			p.checkNested(n)
			if c := within(n); c != nil && c.kind == teachingBlock {
				p.find(position(n), finding.BlockPlace, "a footnote in a note for teaching", "Students’ pages leave the note out, and would keep the footnote: write its words here.")
			}
		case *ast.AutoLink:
			p.checkNested(n)
			p.checkBare(n)
		case *ast.Link:
			if plain(n, p.Source) == "" && n.FirstChild() == nil {
				p.find(position(n), finding.LinkWords, "a link without words", "Write what it leads to between the square brackets.")
			}
			written := resolve(n.Destination)
			if name, request, ok := sumOf(written); ok {
				n.Destination = []byte(p.sum(n, name, request))
				continue
			}
			address, outside := p.address(position(n), written)
			switch {
			case outside:
				n.SetAttributeString("rel", []byte("external"))
			case address != "":
				n.Destination = []byte(address)
			}
		}
	}
}

// sumOf takes apart a link to a calculator with its boxes filled in.
func sumOf(written string) (calculator, request string, ok bool) {
	rest, ok := strings.CutPrefix(written, "calculator:")
	if !ok {
		return "", "", false
	}
	return strings.Cut(rest, "?")
}

// sum gives the address of a filled-in calculator, and reports a number in the
// words of the link that the calculator does not answer. The number is then
// computed for the reader, checked for the writer, and can be played with.
func (p *page) sum(n *ast.Link, calculator, request string) string {
	if _, ok := p.around.Made("calculator", calculator); !ok {
		p.find(position(n), finding.LinkTarget, fmt.Sprintf("link to %q: there is no such %s", "calculator:"+calculator, madeName["calculator"]), madeHelp["calculator"])
		return "#"
	}
	address, fault, do := p.around.Sum(calculator, request, plain(n, p.Source))
	if fault != "" {
		p.find(position(n), finding.SumDisagrees, fault, do)
		return "#"
	}
	if made := "calculator:" + calculator; !slices.Contains(p.doc.Made, made) {
		p.doc.Made = append(p.doc.Made, made)
	}
	return relative(p.Address, address)
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
	if _, outside := p.address(position(n), written); outside {
		n.SetAttributeString("rel", []byte("external"))
	}
}

// isMade says whether a scheme leads to pages that no Markdown file holds.
func isMade(scheme string) bool {
	return scheme == "glossary" || scheme == "state" || scheme == "calculator"
}

// address gives what to print for an address as written, and whether it lies
// outside the handbook; empty when it leads nowhere, which is then reported at
// the offset.
func (p *page) address(at int, written string) (address string, outside bool) {
	bad := func(text, do string) (string, bool) {
		p.find(at, finding.LinkTarget, text, do)
		return "", false
	}
	m := scheme.FindStringSubmatch(written)
	switch {
	case written == "":
		return bad("a link without an address", linkHelp)
	case m != nil && isMade(m[1]):
		id := written[len(m[0]):]
		made, ok := p.around.Made(m[1], id)
		if !ok {
			return bad(fmt.Sprintf("link to %q: there is no such %s", written, madeName[m[1]]), madeHelp[m[1]])
		}
		if !slices.Contains(p.doc.Made, written) {
			p.doc.Made = append(p.doc.Made, written)
		}
		return relative(p.Address, made), false
	case m != nil:
		if fault := outsideFault(strings.ToLower(m[1]), written); fault != "" {
			return bad(fmt.Sprintf("link to %q: %s", written, fault), linkHelp)
		}
		return written, true
	case strings.HasPrefix(written, "/"):
		return bad(fmt.Sprintf("link to %q: an address that begins with / breaks when the handbook moves to another folder", written),
			"Write the path from this file to the .md page.")
	}
	return p.pageAddress(at, written), false
}

// What the made places are called, and what to do when one is not there.
var (
	madeName = map[string]string{"glossary": "term", "state": "clay state", "calculator": "calculator"}
	madeHelp = map[string]string{
		"glossary":   "Write the id of a term of glossary.yaml.",
		"state":      "Write the id of a state of decoration.yaml.",
		"calculator": "Write the name of a calculator; “slipbook calc” lists them.",
	}
)

// outsideFault says what is wrong with an address outside the handbook, empty
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

// pageAddress gives the address of a page, or of a heading, written as a path
// from this file.
func (p *page) pageAddress(at int, written string) string {
	bad := func(text, do string) string {
		p.find(at, finding.LinkTarget, text, do)
		return ""
	}
	file, fragment, _ := strings.Cut(written, "#")
	file, errFile := url.PathUnescape(file)
	fragment, errFragment := url.PathUnescape(fragment)
	if errFile != nil || errFragment != nil {
		return bad(fmt.Sprintf("link to %q: a %% stands for nothing here", written), "Write %25 for the sign itself.")
	}
	target := p.File
	if file != "" {
		target = path.Join(path.Dir(p.File), file)
	}
	to, ok := p.around.Page(target)
	switch {
	case target == ".." || strings.HasPrefix(target, "../"):
		return bad(fmt.Sprintf("link to %q: this leaves the content folder", written), "Write the path to a .md page inside it.")
	case !ok:
		return bad(fmt.Sprintf("link to %q: there is no such page (looked for %s)", written, target), p.missingHelp(target))
	case to.File == p.File && fragment != "" && !p.doc.HasHeading(fragment):
		return bad(fmt.Sprintf("link to %q: this page has no such heading", written), p.doc.HeadingHelp())
	}
	if to.File != p.File {
		p.doc.Links = append(p.doc.Links, Link{To: to.File, Fragment: fragment, Offset: at})
	}
	address := to.Address
	if fragment != "" {
		address += "#" + url.PathEscape(fragment)
	}
	return relative(p.Address, address)
}

// missingHelp says what to write instead of a path that no page has.
func (p *page) missingHelp(target string) string {
	guess := strings.TrimSuffix(target, path.Ext(target)) + ".md"
	if _, ok := p.around.Page(guess); ok && guess != target {
		return fmt.Sprintf("Write the path to %s.", guess)
	}
	if _, ok := p.around.Picture(target); ok {
		return "That is a picture; show it with ![what it shows](path)."
	}
	return "Links lead to .md pages that course.yaml and the units list; write the path from this file."
}

// relative gives the address of to as it is written in the page at from, both
// counted from the handbook's root. A place on the page itself is its bare
// fragment.
func relative(from, to string) string {
	if rest, same := strings.CutPrefix(to, from+"#"); same {
		return "#" + rest
	}
	for {
		folder, rest, ok := strings.Cut(from, "/")
		if !ok || !strings.HasPrefix(to, folder+"/") {
			return strings.Repeat("../", strings.Count(from, "/")) + to
		}
		from, to = rest, to[len(folder)+1:]
	}
}
