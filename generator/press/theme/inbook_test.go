package theme

import (
	"html/template"
	"strings"
	"testing"
)

// asSet prints a template as a theme would have it, for pages or for the book.
func asSet(t *testing.T, source string, of use, view any) (string, error) {
	t.Helper()
	look := &Theme{words: words{"odd": `a < b & "c"`, "plain": "Plain"}, screen: map[string]bool{"trail": true},
		Icons: map[string]template.HTML{"trail": "<svg>trail</svg>", "kept": "<svg>kept</svg>"}}
	parsed, err := template.New("").Funcs(look.functions()).Parse(`{{define "piece"}}` + source + `{{end}}`)
	if err != nil {
		t.Fatal(err)
	}
	made, err := look.edition(parsed, of)
	if err != nil {
		return "", err
	}
	var html strings.Builder
	err = made.ExecuteTemplate(&html, "piece", view)
	return html.String(), err
}

// odd is a view for pieces of a template.
var odd = map[string]any{"Yes": true, "No": false, "All": []string{"x", "y"},
	"To": "#page.a\t2.1", "Near": "#b", "Name": "A & b"}

// TestBookLeavesOutWhatOnlyAScreenShows wants what is marked to be gone from the
// book, with all that it holds, and to stand on pages without the mark.
func TestBookLeavesOutWhatOnlyAScreenShows(t *testing.T) {
	for _, c := range []struct{ name, source, page, book string }{
		{"an element", `a<p data-screen>b</p>c`, `a<p>b</p>c`, `ac`},
		{"with attributes", `a<p data-screen class="d" hidden>b</p>c`, `a<p class="d" hidden>b</p>c`, `ac`},
		{"others of its name within", `a<div data-screen>b<div>c<div>d</div></div>e</div>f`, `a<div>b<div>c<div>d</div></div>e</div>f`, `af`},
		{"one of its name within whose attributes a template says", `a<div data-screen>b<div{{if .Yes}} class="c"{{end}}>d</div>e</div>f`,
			`a<div>b<div class="c">d</div>e</div>f`, `af`},
		{"names that begin alike", `a<p data-screen>b<pre>c</pre></p>d`, `a<p>b<pre>c</pre></p>d`, `ad`},
		{"marks within what is marked", `a<nav data-screen><p data-screen>b</p></nav>c`, `a<nav><p>b</p></nav>c`, `ac`},
		{"two in a row", `<b data-screen>a</b>b<b data-screen>c</b>d`, `<b>a</b>b<b>c</b>d`, `bd`},
		{"branches within", `a<p data-screen>{{if .Yes}}b{{else}}c{{end}}{{range .All}}{{.}}<i>{{.}}</i>{{end}}</p>d`, `a<p>bx<i>x</i>y<i>y</i></p>d`, `ad`},
		{"within a branch", `{{if .No}}{{else}}a<p data-screen>b</p>{{end}}c`, `a<p>b</p>c`, `ac`},
		{"within a loop", `{{range .All}}{{.}}<p data-screen>{{.}}</p>{{end}}c`, `x<p>x</p>y<p>y</p>c`, `xyc`},
		{"a drawing", `a{{icon "trail"}}{{icon "kept"}}`, `a<svg>trail</svg><svg>kept</svg>`, `a<svg>kept</svg>`},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got, err := asSet(t, c.source, onPages, odd); got != c.page || err != nil {
				t.Errorf("on a page %q, %v, want %q", got, err, c.page)
			}
			if got, err := asSet(t, c.source, inBook, odd); got != c.book || err != nil {
				t.Errorf("in the book %q, %v, want %q", got, err, c.book)
			}
		})
	}
}

// TestHeadingsOfTemplatesAreLower wants headings of the book a level lower, and
// nothing else that begins alike.
func TestHeadingsOfTemplatesAreLower(t *testing.T) {
	const source = `<h1 id="h1">h1</h1><h2>b</h2><h5>c</h5><h6>d</h6><hr><header>e</header>`
	if got, err := asSet(t, source, onPages, odd); got != source || err != nil {
		t.Errorf("on a page %q, %v", got, err)
	}
	want := `<h2 id="h1">h1</h2><h3>b</h3><h6>c</h6><h6>d</h6><hr><header>e</header>`
	if got, err := asSet(t, source, inBook, odd); got != want || err != nil {
		t.Errorf("in the book %q, %v, want %q", got, err, want)
	}
}

// TestLinksOfTemplatesAreNumbered wants the number of the chapter behind the words
// of a link of the book, and none where it leads within the chapter.
func TestLinksOfTemplatesAreNumbered(t *testing.T) {
	const number = `<span class="chapter-to">&#160;(2.1)</span>`
	for source, want := range map[string]string{
		`<a href="{{.To}}">b</a>`:                                     `<a href="#page.a">b` + number + `</a>`,
		`<a class="c" href="{{.To}}" id="d">{{.Name}}</a>`:            `<a class="c" href="#page.a" id="d">A &amp; b` + number + `</a>`,
		`<a href="{{.Near}}">b</a>`:                                   `<a href="#b">b</a>`,
		`{{with .To}}<a href="{{.}}">{{if $.Yes}}b{{end}}</a>{{end}}`: `<a href="#page.a">b` + number + `</a>`,
		`<a href="{{.To}}"><b>b</b></a><a href="{{.To}}">c</a>`:       `<a href="#page.a"><b>b</b>` + number + `</a><a href="#page.a">c` + number + `</a>`,
		`<link href="{{.Near}}"><a href="#e">f</a>`:                   `<link href="#b"><a href="#e">f</a>`,
	} {
		if got, err := asSet(t, source, inBook, odd); got != want || err != nil {
			t.Errorf("%s\nis %q, %v\nwant %q", source, got, err, want)
		}
	}
	if got, err := asSet(t, `<a href="{{.Near}}">b</a>`, onPages, odd); got != `<a href="#b">b</a>` || err != nil {
		t.Errorf("on a page %q, %v", got, err)
	}
}

// TestThemeThatTheBookCannotTake wants what can be neither left out nor numbered
// to be an error that names the template.
func TestThemeThatTheBookCannotTake(t *testing.T) {
	for source, want := range map[string]string{
		`{{if .Yes}}<p data-screen>{{end}}a</p>`:                      "<p data-screen> does not end in the branch in which it begins",
		`<p data-screen>{{if .Yes}}</p>{{else}}</p>{{end}}`:           "<p data-screen> does not end in the branch",
		`<input data-screen>`:                                         "<input data-screen> does not end in the branch",
		`<p class="a" data-screen>b</p>`:                              "write data-screen as the first attribute",
		`<p data-screen{{if .Yes}} class="a"{{end}}>b</p>`:            "write data-screen as the first attribute",
		`<a href="{{.To}}">{{if .Yes}}b</a>{{else}}c</a>{{end}}`:      "the link to {{.To | chapter}} does not end in the branch in which it begins",
		`{{if .Yes}}<a href="{{.To}}">{{end}}b{{if .Yes}}</a>{{end}}`: "the link to {{.To | chapter}} does not end in the branch in which it begins",
		`<a href="{{if .Yes}}{{.To}}{{end}}">b</a>`:                   "a link begins with {{if .Yes}}{{.To}}{{end}} where an address must stand",
	} {
		if _, err := asSet(t, source, inBook, odd); err == nil || !strings.Contains(err.Error(), want) || !strings.Contains(err.Error(), `template "piece"`) {
			t.Errorf("%s\ngives %v\nwant an error with %q", source, err, want)
		}
	}
}

// TestFoldedWordsAreEscaped wants a word that is set into a template to stand
// there as one that is looked up would.
func TestFoldedWordsAreEscaped(t *testing.T) {
	for source, want := range map[string]string{
		`{{word "odd"}}`:                           "a &lt; b &amp; &#34;c&#34;",
		`{{with "odd"}}{{word .}}{{end}}`:          "a &lt; b &amp; &#34;c&#34;",
		`<p title="{{word "odd"}}"></p>`:           `<p title="a &lt; b &amp; &#34;c&#34;"></p>`,
		`{{$w := word "plain"}}{{$w}}`:             "Plain",
		`{{if eq (word "plain") "Plain"}}a{{end}}`: "a",
	} {
		for _, of := range []use{onPages, inBook, inEbook} {
			if got, err := asSet(t, source, of, odd); got != want || err != nil {
				t.Errorf("%s is %q, %v, want %q", source, got, err, want)
			}
		}
	}
	if _, err := asSet(t, `{{icon "gone"}}`, onPages, odd); err == nil {
		t.Error("a drawing that is not there is no error")
	}
}

// FuzzLeaveOut wants a text without marks to stay as it is, and no mark to stay in
// any other, wherever a template parts the text.
func FuzzLeaveOut(f *testing.F) {
	for _, seed := range []string{"", "<", "a<b", `a<p data-screen>b</p>c`, `<p data-screen`, `<p data-screen>`, `<p data-screen><p`, `</p><p data-screen x>y</p`, `<p data-screen>a<p>b</p>c</p>d`} {
		f.Add(seed, len(seed)/2)
	}
	f.Fuzz(func(t *testing.T, text string, at int) {
		if at < 0 || at > len(text) {
			at = 0
		}
		var open screenElement
		kept := open.keep(text[:at])
		marked := open.name != ""
		kept += open.keep(text[at:])
		if !marked && !screenBegin.MatchString(text[:at]) && !screenBegin.MatchString(text[at:]) && kept != text {
			t.Errorf("%q became %q", text, kept)
		}
		if len(kept) > len(text) || screenBegin.MatchString(kept) && !screenBegin.MatchString(text) {
			t.Errorf("%q became %q", text, kept)
		}
	})
}
