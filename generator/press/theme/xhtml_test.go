package theme

import (
	"strings"
	"testing"
)

// TestEbookIsXHTML wants templates of an e-book to be XML: what holds nothing closed,
// attributes with values; and the pages as they are written.
func TestEbookIsXHTML(t *testing.T) {
	for _, c := range []struct{ name, source, want string }{
		{"an element that holds nothing", `a<br>b<img src="c">`, `a<br/>b<img src="c"/>`},
		{"one that is closed already", `<br/><hr />`, `<br/><hr />`},
		{"a value with signs of markup", `<input value="a>b" title='<br>'>`, `<input value="a>b" title='<br>'/>`},
		{"an attribute without a value", `<p hidden>a</p><td nowrap class="b">c</td>`, `<p hidden="">a</p><td nowrap="" class="b">c</td>`},
		{"a value that a template says", `<p title="{{.Name}}" hidden>a</p>`, `<p title="A &amp; b" hidden="">a</p>`},
		{"attributes in branches", `<p{{if .Yes}} hidden{{else}} open{{end}}>a</p>`, `<p hidden="">a</p>`},
		{"a tag that ends behind a branch", `<input{{if .Yes}} title="{{.Name}}"{{end}}><i>b</i>`, `<input title="A &amp; b"/><i>b</i>`},
		{"a tag in a loop", `{{range .All}}<br>{{.}}{{end}}`, `<br/>x<br/>y`},
		{"names that begin alike", `<colgroup><col></colgroup>`, `<colgroup><col/></colgroup>`},
		{"what opens", `<details class="a"><summary>b</summary>c</details>`, `<div class="a"><div class="fold">b</div>c</div>`},
		{"what only a screen shows", `a<p data-screen>b<br></p>c`, `ac`},
		{"the level of a heading", `<h1>a</h1>`, `<h1>a</h1>`},
		{"a link", `<a href="{{.Near}}">b</a>`, `<a href="#b">b</a>`},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got, err := asSet(t, c.source, inEbook, odd); got != c.want || err != nil {
				t.Errorf("%q, %v, want %q", got, err, c.want)
			}
		})
	}
	const source = `<p hidden>a<br>b</p>`
	if got, err := asSet(t, source, onPages, odd); got != source || err != nil {
		t.Errorf("on a page %q, %v", got, err)
	}
	if _, err := asSet(t, `<p title={{.Name}}>a</p>`, inEbook, odd); err == nil || !strings.Contains(err.Error(), "the value of an attribute of <p> stands without quotes") {
		t.Errorf("a value without quotes: %v", err)
	}
}

// TestEbookHasTemplatesOfItsOwn wants a template for e-books in the place of the one it
// is named after, there alone.
func TestEbookHasTemplatesOfItsOwn(t *testing.T) {
	const source = `{{template "part" .}}{{end}}{{define "part"}}page{{end}}{{define "ebook:part"}}e-book{{end}}{{define "ebook-own"}}<p>`
	for of, want := range map[use]string{onPages: "page", inBook: "page", inEbook: "e-book"} {
		if got, err := asSet(t, source, of, odd); got != want || err != nil {
			t.Errorf("%d: %q, %v, want %q", of, got, err, want)
		}
	}
}
