//go:build judges

package trial

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"golang.org/x/net/html"
)

// bound are the kinds of page that the book on one page is made of.
var bound = []string{"home", "unit", "lesson", "state", "medium", "calculator", "answers", "faults", "hazards", "glossary"}

// line is a line of the book's contents: where it leads is a page and a chapter there.
type line struct{ Number, Title, Page, To string }

// contentsOf reads the lines of the book's contents that lead to a chapter.
func contentsOf(d *document) []line {
	var all []line
	for _, nav := range d.find(nil, ".book-contents") {
		for _, n := range d.find(nav, "a") {
			number := words(d.find(n, "b")[0])
			title := strings.TrimSpace(strings.TrimPrefix(words(n), number))
			page, to, _ := strings.Cut(attribute(n, "href"), "#")
			all = append(all, line{number, title, cmp.Or(page, "book.html"), to})
		}
	}
	return all
}

// volumes returns the addresses of the pages that hold the book's chapters, in their
// order: the book itself, or the volumes into which it is divided.
func volumes(contents []line) []string {
	var all []string
	for _, l := range contents {
		all = append(all, l.Page)
	}
	return slices.Compact(all)
}

// TestBookIsWhole wants every page that can be printed to be a chapter under its
// own title, and the contents to name each chapter once, in their order.
func TestBookIsWhole(t *testing.T) {
	t.Parallel()
	for _, h := range []*handbook{published(t), publishedNotes(t)} {
		book := h.document(t, "book.html")
		contents := contentsOf(book)
		var chapters []string
		standing := map[string]*document{}
		for _, address := range volumes(contents) {
			volume := h.document(t, address)
			for _, c := range volume.find(nil, ".chapter") {
				chapters = append(chapters, attribute(c, "id"))
				standing[attribute(c, "id")] = volume
			}
		}
		if named := targets(contents); !slices.Equal(named, chapters) {
			t.Errorf("the contents name %q, the chapters are %q", named, chapters)
		}
		for _, address := range h.all(t, bound...) {
			key := "page." + strings.ReplaceAll(strings.TrimSuffix(address, ".html"), "/", ".")
			at := slices.Index(chapters, key)
			if at < 0 {
				t.Errorf("%s is no chapter of the book", address)
				continue
			}
			volume := standing[key]
			said := letters(wordsBut(volume.ids[key], "chapter-to"))
			for _, p := range h.document(t, address).find(nil, "p") {
				if printable(p) && !strings.Contains(said, letters(wordsBut(p, onScreen...))) {
					t.Errorf("the chapter of %s lacks %q", address, words(p))
				}
			}
			if title := words(h.document(t, address).find(nil, "h1")[0]); contents[at].Title != title {
				t.Errorf("%s is %q in the contents, want %q", address, contents[at].Title, title)
			}
			if heading := words(volume.find(volume.ids[key], "h2")[0]); heading != contents[at].Number+" "+contents[at].Title {
				t.Errorf("%s is headed %q, the contents say %q", address, heading, contents[at])
			}
		}
		if want := len(h.all(t, bound...)); len(chapters) != want {
			t.Errorf("%d chapters, want one for each of %d pages", len(chapters), want)
		}
	}
}

// wordsBut returns the words of an element without those of the elements of some
// classes: the numbers that the book's links bear, and what only a screen shows.
func wordsBut(n *html.Node, classes ...string) string {
	if n.Type == html.TextNode {
		return n.Data
	}
	var all strings.Builder
	for below := range n.ChildNodes() {
		if !slices.ContainsFunc(classes, func(class string) bool { return classed(below, class) }) {
			all.WriteString(wordsBut(below, classes...))
		}
	}
	return all.String()
}

// targets returns the ids that lines lead to.
func targets(lines []line) []string {
	var all []string
	for _, l := range lines {
		all = append(all, l.To)
	}
	return all
}

// onScreen names what only a screen has a use for, and what the book's own
// contents and title say, by element or class.
var onScreen = []string{"form", "noscript", "script", "button", "bench", "letters", "ways-to", "place", "trail", "reckon-fold", "reckon-try",
	"note-back", "reckon-late", "reckon-without", "reckon-answers", "reckon-next", "in-short", "tell-short", "unit", "written", "plan-here", "whole", "number", "parts", "step-in", "to-list", "card-way", "page-keys"}

// printable reports whether a paragraph of a page is one that the book repeats.
func printable(p *html.Node) bool {
	for n := p; n != nil; n = n.Parent {
		if slices.ContainsFunc(onScreen, func(name string) bool { return n.Data == name || classed(n, name) }) {
			return false
		}
		if n.Data == "main" {
			return true
		}
	}
	return false
}

// bookPrints are the ways in which the book is printed: on each paper as it is,
// and in letters of its own kind, since nothing that it says of its pages may
// depend on which letters a machine has.
var bookPrints = []struct {
	name    string
	on      paper
	letters string
}{
	{"A4", papers[0], ""},
	{"US Letter", papers[1], ""},
	{"US Letter in wide letters", papers[1], "* { font-family: monospace !important }"},
}

// dress returns the page in the tab other letters, from outside, as no page of the
// handbook may.
func (b *tab) dress(rules string) {
	b.t.Helper()
	ask[bool](b, `(rules => {
		const style = new CSSStyleSheet()
		style.replaceSync(rules)
		document.adoptedStyleSheets = [style]
		return true
	})(`+quoted(rules)+`)`)
}

// TestBookBearsItsChapters prints the whole handbook without scripts, on each
// paper and in several letters, and looks whether each page bears number and
// name of the chapter whose words stand on it.
func TestBookBearsItsChapters(t *testing.T) {
	t.Parallel()
	h := published(t)
	contents := contentsOf(h.document(t, "book.html"))
	if len(contents) < 50 {
		t.Fatalf("only %d lines of contents: this test looks at the wrong place", len(contents))
	}
	for _, p := range bookPrints {
		t.Run(p.name, func(t *testing.T) {
			t.Parallel()
			b := openFor(t, len(h.pages)) // it has the words of all
			call(b, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
			named := b.printed(h, "book.html", p.letters, p.on).contents(t, contents)
			for _, address := range volumes(contents) {
				own := slices.DeleteFunc(slices.Clone(contents), func(l line) bool { return l.Page != address })
				if address == "book.html" {
					bears(t, h.document(t, address), own, named)
				} else {
					bears(t, h.document(t, address), own, b.printed(h, address, p.letters, p.on).leaves(t))
				}
			}
		})
	}
}

// printed prints a page of the book, which runs no script.
func (b *tab) printed(h *handbook, address, rules string, on paper) sheet {
	b.t.Helper()
	if scripts := h.document(b.t, address).find(nil, "script"); len(scripts) > 0 {
		b.t.Fatalf("%s runs %d scripts", address, len(scripts))
	}
	b.do(chromedp.Navigate(h.home + address))
	b.dress(rules)
	s := b.print(on)
	if !s.is(on, false) {
		b.t.Errorf("the sheets are %g by %g points, want %g by %g", s.width, s.height, on.short, on.longer)
	}
	return s
}

// The margins of the book's pages, in points, as its style sheet has them.
const (
	bookHead = 20 * 72 / 25.4
	bookFoot = 18 * 72 / 25.4
)

// leaf is a printed page of the book: the words at its head and foot and those
// between.
type leaf struct{ head, body, foot string }

// leaves reads the printed pages.
func (s sheet) leaves(t *testing.T) []leaf {
	t.Helper()
	band := func(from, to float64) []string {
		return s.words(t, asDrawn, "-x", "0", "-W", fmt.Sprint(int(s.width)), "-y", fmt.Sprint(int(from)), "-H", fmt.Sprint(int(to)-int(from)))
	}
	heads, bodies, feet := band(0, bookHead), band(bookHead, s.height-bookFoot), band(s.height-bookFoot, s.height)
	if len(heads) != s.pages || len(bodies) != s.pages || len(feet) != s.pages {
		t.Fatalf("%d heads, %d pages and %d feet of %d pages", len(heads), len(bodies), len(feet), s.pages)
	}
	all := make([]leaf, s.pages)
	for n := range all {
		all[n] = leaf{strings.TrimSpace(heads[n]), bodies[n], strings.TrimSpace(feet[n])}
	}
	return all
}

// contents checks the printed contents, which stand behind the title and name every
// chapter with its number. It returns the pages behind them.
func (s sheet) contents(t *testing.T, lines []line) []leaf {
	t.Helper()
	all := s.leaves(t)
	at := 1
	var said strings.Builder
	for ; at < len(all) && all[at].head == "Contents"; at++ {
		said.WriteString(letters(all[at].body))
	}
	for _, l := range lines {
		if !strings.Contains(said.String(), letters(l.Number+l.Title)) {
			t.Errorf("the printed contents lack %s %s", l.Number, l.Title)
		}
	}
	counted(t, all)
	return all[at:]
}

// counted wants each page but the first to bear its number at its foot.
func counted(t *testing.T, all []leaf) {
	t.Helper()
	for n, l := range all[1:] {
		if l.foot != fmt.Sprint(n+2) {
			t.Errorf("page %d has %q at its foot", n+2, l.foot)
		}
	}
}

// bears checks the printed chapters of a page of the book: each follows with all its
// words on pages that bear its number and name.
func bears(t *testing.T, volume *document, contents []line, all []leaf) {
	t.Helper()
	at := 0
	for _, l := range contents {
		from := at
		for at < len(all) && heads(all[at].head, l) {
			at++
		}
		if from == at {
			t.Fatalf("page %d has the head %q, want %s %s", at+1, all[min(at, len(all)-1)].head, l.Number, l.Title)
		}
		standsOn(t, volume, l, all[from:at])
	}
	if at != len(all) {
		t.Errorf("page %d has the head %q, after the last chapter", at+1, all[at].head)
	}
}

// heads reports whether the head of a page is that of a chapter: its number and
// name, and perhaps the name of its part.
func heads(head string, l line) bool {
	rest, ok := strings.CutPrefix(strings.Join(strings.Fields(head), " "), l.Number+" "+l.Title)
	return ok && (rest == "" || rest[0] == ' ')
}

// listNumber is what a printer writes before a step or an answer to choose.
var listNumber = regexp.MustCompile(`^(\d+|[a-z])\.`)

// standsOn checks that a chapter's title opens its pages, that all its words
// stand on them, and that hardly a line there is not the chapter's own (words in
// drawings and formulas are put in another order by the reader of the PDF).
func standsOn(t *testing.T, book *document, l line, pages []leaf) {
	t.Helper()
	chapter := book.ids[l.To]
	own := letters(words(chapter))
	var printed strings.Builder
	for n, page := range pages {
		body := letters(page.body)
		if n == 0 && !strings.HasPrefix(body, letters(l.Number+l.Title)) {
			t.Errorf("%s %s begins with %.60q", l.Number, l.Title, page.body)
		}
		printed.WriteString(body)
		lines, strange := 0, []string{}
		for said := range strings.Lines(page.body) {
			if said = letters(listNumber.ReplaceAllString(said, "")); len(said) >= 12 {
				lines++
				if !strings.Contains(own, said) {
					strange = append(strange, said)
				}
			}
		}
		if 8*len(strange) > lines {
			t.Errorf("page %d of %s %s has %d lines of %d that are not its own: %q", n+1, l.Number, l.Title, len(strange), lines, strange)
		}
	}
	for _, run := range textRuns(chapter) {
		if !strings.Contains(printed.String(), letters(run)) {
			t.Errorf("the %d pages of %s %s lack %q", len(pages), l.Number, l.Title, run)
		}
	}
}

// textRuns lists the words of an element that a printer keeps together: those
// between two tags. What is not printed, and the words of drawings and formulas,
// are left out.
func textRuns(n *html.Node) []string {
	if n.Type == html.TextNode {
		return []string{n.Data}
	}
	var all []string
	for below := range n.ChildNodes() {
		if below.Data != "svg" && below.Data != "math" && !classed(below, "unseen") && !hidden(below) {
			all = append(all, textRuns(below)...)
		}
	}
	return all
}
