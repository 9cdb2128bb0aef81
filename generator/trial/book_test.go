//go:build judges

package trial

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// bound are the kinds of page that the book on one page is made of.
var bound = []string{"home", "unit", "lesson", "state", "medium", "calculator", "answers", "faults", "glossary"}

// line is a line of the book's contents.
type line struct{ Title, To, Page string }

// contentsOf reads the book's contents without running the page.
func contentsOf(d *document) []line {
	var all []line
	for _, nav := range d.find(nil, ".book-contents") {
		for _, n := range d.find(nav, "a") {
			all = append(all, line{Title: words(n), To: strings.TrimPrefix(attribute(n, "href"), "#")})
		}
	}
	return all
}

// TestBookIsWhole wants every page that can be printed to be a chapter under its
// own title, and the contents to name each chapter once, in their order.
func TestBookIsWhole(t *testing.T) {
	t.Parallel()
	for _, h := range []*handbook{published(t), publishedNotes(t)} {
		book := h.document(t, "book.html")
		contents := contentsOf(book)
		var chapters []string
		for _, c := range book.find(nil, ".chapter") {
			chapters = append(chapters, attribute(c, "id"))
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
			said := letters(words(book.ids[key]))
			for _, p := range h.document(t, address).find(nil, "p") {
				if printable(p) && !strings.Contains(said, letters(words(p))) {
					t.Errorf("the chapter of %s lacks %q", address, words(p))
				}
			}
			if title := words(h.document(t, address).find(nil, "h1")[0]); kind(address) != "unit" && kind(address) != "home" && contents[at].Title != title {
				t.Errorf("%s is %q in the contents, want %q", address, contents[at].Title, title)
			}
		}
		if want := len(h.all(t, bound...)); len(chapters) != want {
			t.Errorf("%d chapters, want one for each of %d pages", len(chapters), want)
		}
	}
}

// targets gives the ids that lines lead to.
func targets(lines []line) []string {
	var all []string
	for _, l := range lines {
		all = append(all, l.To)
	}
	return all
}

// onScreen names what only a screen has a use for, and what the book's own
// contents and title say, by element or class.
var onScreen = []string{"form", "noscript", "script", "button", "bench", "letters", "ways-to", "place", "trail", "reckon-fold",
	"unit", "written", "plan-here", "whole"}

// printable says whether a paragraph of a page is one that the book repeats.
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

// counted says whether the page has counted its sheets.
const counted = `[...document.querySelectorAll(".book-contents [data-page]")].every(e => /^[1-9][0-9]*$/.test(e.textContent))
	&& /[0-9]/.test(document.querySelector("[data-count]").textContent)`

// numberIn finds the number in a sentence.
var numberIn = regexp.MustCompile(`\d+`)

// TestBookPrintsAsItsContentsSay prints the whole handbook, and looks whether
// each chapter begins on the page that the contents name.
func TestBookPrintsAsItsContentsSay(t *testing.T) {
	t.Parallel()
	h := published(t)
	for n, choice := range []string{"a4", "letter"} {
		p := papers[n]
		t.Run(p.name, func(t *testing.T) {
			t.Parallel()
			b := openFor(t, len(h.pages)) // it has the words of all
			b.visit(h.home + "book.html")
			b.size(1280, 800)
			if !b.until(counted) {
				t.Fatal("the page never counts its sheets")
			}
			b.click(`document.querySelector("input[name=paper][value=` + choice + `]")`)
			b.until(counted)
			count := numberIn.FindString(ask[string](b, `document.querySelector("[data-count]").textContent`))
			s := b.print(p, ownSize)
			if !s.is(p, false) {
				t.Errorf("the sheets are %g by %g points, want %g by %g", s.width, s.height, p.short, p.longer)
			}
			if count != fmt.Sprint(s.pages) {
				t.Errorf("the page says %s pages; printed are %d", count, s.pages)
			}
			lines := ask[[]line](b, `[...document.querySelectorAll(".book-contents a")].map(a => ({title: a.querySelector("span").textContent,
				to: document.getElementById(a.hash.slice(1)).querySelector("h2").textContent, page: a.querySelector("[data-page]").textContent}))`)
			inOrder(t, lines, s.words(t, asSeen))
		})
	}
}

// inOrder checks that each line of the contents is printed, that it names a page
// after the one before, and that its chapter begins there: the chapter's title
// is the first thing on that page, and the last is the page's number.
func inOrder(t *testing.T, lines []line, pages []string) {
	t.Helper()
	before, contents := 0, ""
	for _, l := range lines {
		n, err := strconv.Atoi(l.Page)
		if err != nil || n <= before || n > len(pages) {
			t.Errorf("%q is on page %q, after page %d of %d", l.Title, l.Page, before, len(pages))
			continue
		}
		if before == 0 {
			contents = letters(strings.Join(pages[:n-1], ""))
		}
		before = n
		first := letters(pages[n-1])
		if !strings.HasPrefix(first, letters(l.To)) || !strings.HasSuffix(first, l.Page) {
			t.Errorf("%q begins on page %d by the contents, but that page begins with %.80q", l.Title, n, strings.TrimSpace(pages[n-1]))
		}
		if !strings.Contains(contents, letters(l.Title)+l.Page) {
			t.Errorf("the printed contents lack %q with its page %s", l.Title, l.Page)
		}
	}
	if len(lines) < 50 {
		t.Errorf("only %d lines of contents: this test looks at the wrong place", len(lines))
	}
}
