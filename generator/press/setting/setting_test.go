package setting

import (
	"slices"
	"strings"
	"testing"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/desk"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
	"slipbook/generator/press/register"
	"slipbook/generator/press/table"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
)

// setPage is a lesson with all that is set otherwise in the book or among words of
// other pages.
const setPage = `## First & last

A [way](mix.md#weigh-first "A & b"), a [place](#first-last), a [word](glossary:bisque) and [out](https://clay.example/a).[^n] Again.[^n]

![A jar & a "line"](../../pictures/jar.svg "The jar & its line")

Here ![a kiln](../../pictures/kiln.png) stands.

[^n]: Common practice.
`

// setter sets in the studio theme, among the pages of a course that was read.
func setter(t *testing.T, r *proof.Reading) *Setter {
	t.Helper()
	theme := presstest.Studio(t)
	rules := &care.Rules{Decoration: r.Course.Decoration, Addresses: r.Addresses}
	calculators := desk.New(theme, rules, r.Settings, r.Course.Language)
	frame := &imprint.Frame{Course: r.Course}
	decoration, err := table.New(theme, rules, frame, calculators, r)
	if err != nil {
		t.Fatal(err)
	}
	return New(theme, calculators, decoration, register.New(r, decoration, frame, calculators), r.Course.Units, false)
}

// lesson is the file of the lesson whose words are set, and chapters are those of the
// book in which it is one.
const lesson = "units/slip/measure.md"

var chapters = imprint.Chapters{"slip/mix.html": {Number: "1.1", Volume: address.Book}, "slip/measure.html": {Number: "1.2", Volume: address.Book},
	address.Glossary: {Number: "D.4", Volume: address.Book}}

// setIn sets the words of that lesson: at a place, and apart or not.
func setIn(t *testing.T, source string, inTheBook, apart bool) string {
	t.Helper()
	c := presstest.Small(t)
	c.Pictures["pictures/kiln.png"] = course.Whole("pictures/kiln.png", 8, 6, []byte("a kiln"))
	page, _ := c.FindPage(lesson)
	page.Source = []byte(source)
	return setOf(t, c, inTheBook, apart)
}

// setOf sets the words of that lesson of a course.
func setOf(t *testing.T, c *course.Course, inTheBook, apart bool) string {
	t.Helper()
	page, _ := c.FindPage(lesson)
	r := presstest.Read(t, c)
	at := imprint.Place{Page: page.Address}
	if inTheBook {
		at.Book = chapters
	}
	read := r.Pages[slices.IndexFunc(r.Pages, func(p *proof.Page) bool { return p.Page == page })]
	if len(read.Document.Found) > 0 {
		t.Fatal(read.Document.Found)
	}
	html, err := set(setting{Setter: setter(t, r), of: read, at: at, apart: apart}, read.Document.Pieces)
	if err != nil {
		t.Fatal(err)
	}
	return string(html)
}

// What stands alike wherever the lesson's words do.
var setAlike = []string{
	`<a href="https://clay.example/a" rel="external">out</a>`,
	"<figure class=\"plate\">\n<svg role=\"img\" aria-label=\"A jar &amp; a “line”\" width=",
	"</svg>\n<figcaption>The jar &amp; its line</figcaption>\n</figure>\n",
	`width="8" height="6" alt="a kiln" loading="lazy" decoding="async"> stands.`,
	"Common practice.",
}

func TestSetOnAPage(t *testing.T) {
	html := setIn(t, setPage, false, false)
	presstest.Once(t, html, setAlike...)
	presstest.Once(t, html,
		`<h2 id="first-last">First &amp; last</h2>`+"\n",
		`<a href="mix.html#weigh-first" data-number="1.1" title="A &amp; b">way</a>`, `<a href="#first-last">place</a>`, `<a href="../glossary.html#bisque">word</a>`,
		`<img src="../pictures/kiln-`,
		`<sup id="note.1.from.1"><a href="#note.1" class="note-mark" role="doc-noteref">1</a></sup>`, `<sup id="note.1.from.2"><a href="#note.1" class="note-mark"`,
		`<li id="note.1">`+"\n",
		`<a href="#note.1.from.1" class="note-back" role="doc-backlink" aria-label="to place 1 in the text, note 1">to place 1 in the text</a>`,
		`<a href="#note.1.from.2" class="note-back" role="doc-backlink" aria-label="to place 2 in the text, note 1">to place 2 in the text</a>`,
	)
}

func TestSetInTheBook(t *testing.T) {
	html := setIn(t, setPage, true, false)
	presstest.Once(t, html, setAlike...)
	const own = "page.slip.measure."
	presstest.Once(t, html,
		`<h3 id="`+own+`first-last">First &amp; last</h3>`+"\n",
		`<a href="#page.slip.mix.weigh-first" title="A &amp; b">way<span class="chapter-to">&#160;(1.1)</span></a>`,
		`<a href="#`+own+`first-last">place</a>`, `<a href="#page.glossary.bisque">word</a>`,
		`<img src="pictures/kiln-`,
		`<sup id="`+own+`note.1.from.1"><a href="#`+own+`note.1" class="note-mark" role="doc-noteref">1</a></sup>`,
		`<li id="`+own+`note.1">`+"\n",
	)
	if strings.Contains(html, "note-back") || strings.Contains(html, theme.NumberSign) {
		t.Errorf("on paper nothing leads back, and no sign is printed: %s", html)
	}
}

// TestSetApart wants words among those of other pages to have no ids of their own
// and no marks of notes, on a page and in the book.
func TestSetApart(t *testing.T) {
	for _, inTheBook := range []bool{false, true} {
		html := setIn(t, setPage, inTheBook, true)
		presstest.Once(t, html, setAlike...)
		for _, never := range []string{` id="`, "note-mark", "note-back", "<sup"} {
			if strings.Contains(html, never) {
				t.Errorf("holds %s: %s", never, html)
			}
		}
	}
}

// TestBackSaysWhere wants the only way back from a note to say so, and one of
// several to say to which place.
func TestBackSaysWhere(t *testing.T) {
	body := setIn(t, "One.[^a] Two.[^b] Three.[^b]\n\n[^a]: First.\n\n[^b]: Second.\n", false, false)
	presstest.Once(t, body,
		`aria-label="to the text, note 1">to the text</a>`,
		`aria-label="to place 1 in the text, note 2">to place 1 in the text</a>`,
		`aria-label="to place 2 in the text, note 2">to place 2 in the text</a>`)
}
