package press

import (
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/press/theme"
)

// setPage is a lesson with all that is set otherwise in the book or among words of
// other pages.
const setPage = `## First & last

A [way](mix.md#weigh-first "A & b"), a [place](#first-last), a [word](glossary:bisque) and [out](https://clay.example/a).[^n] Again.[^n]

![A jar & a "line"](../../pictures/jar.svg "The jar & its line")

Here ![a kiln](../../pictures/kiln.png) stands.

[^n]: Common practice.
`

// setIn sets the words of that lesson: at a place, and apart or not.
func setIn(t *testing.T, inTheBook, apart bool) string {
	t.Helper()
	c := small(t)
	c.Pictures["pictures/kiln.png"] = &course.Picture{Path: "pictures/kiln.png", Width: 8, Height: 6, Data: []byte("a kiln")}
	page, _ := c.FindPage("units/slip/measure.md")
	page.Source = []byte(setPage)
	i := newPress(t, c)
	at := place{page: page.Address}
	if inTheBook {
		at.book = i.book
	}
	read := i.documents[page]
	if len(read.Document.Found) > 0 {
		t.Fatal(read.Document.Found)
	}
	html, err := i.set(setting{impression: i, of: read, at: at, apart: apart}, read.Document.Pieces)
	if err != nil {
		t.Fatal(err)
	}
	return string(html)
}

// wantOnce wants each text in a piece of a page once.
func wantOnce(t *testing.T, html string, wanted ...string) {
	t.Helper()
	for _, want := range wanted {
		if n := strings.Count(html, want); n != 1 {
			t.Errorf("%d times %s", n, want)
		}
	}
	if t.Failed() {
		t.Log(html)
	}
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
	html := setIn(t, false, false)
	wantOnce(t, html, setAlike...)
	wantOnce(t, html,
		`<h2 id="first-last">First &amp; last</h2>`+"\n",
		`<a href="mix.html#weigh-first" title="A &amp; b">way</a>`, `<a href="#first-last">place</a>`, `<a href="../glossary.html#bisque">word</a>`,
		`<img src="../pictures/kiln-`,
		`<sup id="note.1.from.1"><a href="#note.1" class="note-mark" role="doc-noteref">1</a></sup>`, `<sup id="note.1.from.2"><a href="#note.1" class="note-mark"`,
		`<li id="note.1">`+"\n",
		`<a href="#note.1.from.1" class="note-back" role="doc-backlink" aria-label="to place 1 in the text, note 1">to place 1 in the text</a>`,
		`<a href="#note.1.from.2" class="note-back" role="doc-backlink" aria-label="to place 2 in the text, note 1">to place 2 in the text</a>`,
	)
}

func TestSetInTheBook(t *testing.T) {
	html := setIn(t, true, false)
	wantOnce(t, html, setAlike...)
	const own = "page.slip.measure."
	wantOnce(t, html,
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
		html := setIn(t, inTheBook, true)
		wantOnce(t, html, setAlike...)
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
	c := small(t)
	page, _ := c.FindPage("units/slip/measure.md")
	page.Source = []byte("One.[^a] Two.[^b] Three.[^b]\n\n[^a]: First.\n\n[^b]: Second.\n")
	body := string(printed(t, c)["slip/measure.html"])
	wantOnce(t, body,
		`aria-label="to the text, note 1">to the text</a>`,
		`aria-label="to place 1 in the text, note 2">to place 1 in the text</a>`,
		`aria-label="to place 2 in the text, note 2">to place 2 in the text</a>`)
}
