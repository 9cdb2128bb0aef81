package press

import (
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/calculators/catalog"
	"slipbook/generator/address"
)

// TestBook wants every page of the course once in the book, links that stay in
// it, and nothing that only a screen can use.
func TestBook(t *testing.T) {
	e := printed(t, gatheredCourse(t))
	root := pageOf(t, e, address.Book)
	chapters := elements(root, classed("chapter"))
	if want := 1 + 2 + 4 + 6 + 2 + len(catalog.All()) + 4; len(chapters) != want {
		t.Errorf("%d chapters, want %d", len(chapters), want)
	}
	for _, c := range chapters {
		for _, name := range []string{"form", "script", "h1", "input"} {
			if len(elements(c, called(name))) > 0 {
				t.Errorf("%s holds <%s>", attribute(c, "id"), name)
			}
		}
	}
	links := linksOf(root)
	for _, want := range []string{"#page.slip.mix", "#page.slip.mix.weigh-first", "#page.glossary.bisque", "#page.states.leather-hard", "#page.slip.mix.note.1"} {
		if !slices.Contains(links, want) {
			t.Errorf("no link to %s", want)
		}
	}
	for _, to := range links {
		if strings.HasPrefix(to, "#") && len(elements(root, func(n *html.Node) bool { return "#"+attribute(n, "id") == to })) != 1 {
			t.Errorf("%s leads nowhere", to)
		}
	}
	if scripts := elements(root, called("script")); len(scripts) > 0 {
		t.Errorf("%d scripts", len(scripts))
	}
}

// TestBookHoldsWhatTheCourseChooses wants the parts that course.yaml names and no other,
// lettered in their order, and no link into a chapter that is not there.
func TestBookHoldsWhatTheCourseChooses(t *testing.T) {
	for chosen, want := range map[string]int{"lists": 4, "states": 6, "": 0, "calculators,media": len(catalog.All()) + 2} {
		c := gatheredCourse(t)
		c.BookParts = strings.FieldsFunc(chosen, func(r rune) bool { return r == ',' })
		root := pageOf(t, printed(t, c), address.Book)
		chapters := elements(root, classed("chapter"))
		if len(chapters) != 1+2+4+want {
			t.Errorf("%q: %d chapters, want %d behind 7", chosen, len(chapters)-7, want)
		}
		for _, to := range linksOf(root) {
			if strings.HasPrefix(to, "#") && len(elements(root, func(n *html.Node) bool { return "#"+attribute(n, "id") == to })) != 1 {
				t.Errorf("%q: %s leads nowhere", chosen, to)
			}
		}
	}
}

// numberedChapters is the start of what the small course's book holds, and what
// stands behind its units.
var numberedChapters = []string{"0 Colour at the bench", "1 Slip", "1.1 Mix a slip", "1.2 Measure a slip", "2 Wash", "2.1 Thin a wash",

	"2.2 Wipe a wash back", "A.1 Wet"}

// TestBookIsNumbered wants the same number and name in the contents, over the
// chapter and in the head of its pages.
func TestBookIsNumbered(t *testing.T) {
	e := printed(t, gatheredCourse(t))
	root := pageOf(t, e, address.Book)
	said := text(elements(root, classed("book-contents"))[0])
	style := chaptersStyle(t, e)
	var titles []string
	for _, c := range elements(root, classed("chapter")) {
		title := text(elements(c, called("h2"))[0])
		titles = append(titles, title)
		if !strings.Contains(said, title) {
			t.Errorf("the contents %q lack %q", said, title)
		}
		number, name, _ := strings.Cut(title, " ")
		page := "chapter-" + strings.ReplaceAll(number, ".", "-")
		for _, want := range []string{"@page " + page + "{@top-left{content:" + `"` + number + `\2003 ` + name + `"`, `[id="` + attribute(c, "id") + `"]{page:` + page + "}"} {
			if !strings.Contains(style, want) {
				t.Errorf("the style sheet lacks %s", want)
			}
		}
	}
	if !slices.Equal(titles[:len(numberedChapters)], numberedChapters) {
		t.Errorf("chapters %q, want first %q", titles, numberedChapters)
	}
	if last := titles[len(titles)-1]; last != "D.4 Words of the trade" {
		t.Errorf("the last chapter is %q", last)
	}
}

// chaptersStyle gives the style sheet of the book's chapters, which the book's
// page must load.
func chaptersStyle(t *testing.T, e edition) string {
	t.Helper()
	for _, l := range elements(pageOf(t, e, address.Book), called("link")) {
		if at := attribute(l, "href"); strings.HasPrefix(at, "assets/chapters-") {
			return string(e[at])
		}
	}
	t.Fatal("the book loads no style sheet of its chapters")
	return ""
}

// TestReferencesNameTheNumber wants a link to another chapter to say its number,
// and one within the chapter or to a word of the trade to say none.
func TestReferencesNameTheNumber(t *testing.T) {
	root := pageOf(t, printed(t, gatheredCourse(t)), address.Book)
	wanted := map[string]string{
		"#page.wash.thin": "(2.1)", "#page.states.leather-hard": "(A.2)",
		"#page.slip.mix.weigh-first": "", "#page.glossary.bisque": "", "#page.slip.mix.note.1": "",
	}
	for _, c := range elements(root, classed("chapter")) {
		if attribute(c, "id") != "page.slip.mix" {
			continue
		}
		for _, a := range elements(c, called("a")) {
			want, named := wanted[attribute(a, "href")]
			delete(wanted, attribute(a, "href"))
			if said := text(a); named && (want == "" && strings.Contains(said, "(") || !strings.HasSuffix(said, want)) {
				t.Errorf("the link to %s says %q, want the number %q", attribute(a, "href"), said, want)
			}
		}
	}
	for to := range wanted {
		t.Errorf("the chapter has no link to %s: this test looks at the wrong place", to)
	}
}
