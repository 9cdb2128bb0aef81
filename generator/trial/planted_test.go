//go:build judges

package trial

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// faulty is a page with one fault for each judge, planted to see whether the
// judges look at all.
const faulty = `<!doctype html>
<html lang="en">
<head><meta charset="utf-8"><title>Planted</title><style>p { color: #ccc; background: #fff }</style>
<script>console.warn("planted words"); document.title.missing.thing</script></head>
<body><main><h1>Planted</h1>
<p>Faint words</p>
<p><img src="jar.png"></p>
<p><a href="/root.html" onclick="return false">root</a> <center>old</center></p>
<pre>a line of code that is far too long for any telephone and is not broken anywhere at all by anything</pre>
<button>x</button>
</main></body></html>
`

// plant serves the faulty page.
func plant(t *testing.T) *handbook {
	t.Helper()
	dir := t.TempDir()
	files := map[string]string{"index.html": faulty, "page.css": "p { colour: red }\n", "jar.svg": `<svg xmlns="http://www.w3.org/2000/svg"><jar/></svg>`}
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	h, err := serve(dir)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// expect reports each of the wanted texts that no found line holds.
func expect(t *testing.T, judge string, found []string, wanted ...string) {
	t.Helper()
	all := strings.Join(found, "\n")
	for _, w := range wanted {
		if !strings.Contains(all, w) {
			t.Errorf("%s passes over a planted fault (%s). It found:\n%s", judge, w, all)
		}
	}
}

func TestJudgesFindPlantedFaults(t *testing.T) {
	t.Parallel()
	h := plant(t)
	b := open(t)
	b.size(320, 700)
	b.visit(h.home + "index.html")
	said, asked := b.heard()
	expect(t, "the console", said, "planted words", "exception: ", "404")
	expect(t, "the network", asked, h.home+"jar.png")
	expect(t, "the window", ask[[]string](b, widest), "the page is", "<pre>")
	expect(t, "the finger", ask[[]string](b, small), "<button>")
	expect(t, "axe", b.accessible(), "color-contrast", "image-alt")
	expect(t, "the inspection", h.document(t, "index.html").inspect(),
		"inline style", "inline script", "event attribute", "root of the server")
	var remarks []string
	for _, r := range nu(t, []string{h.home + "index.html", h.home + "page.css", filepath.Join(h.dir, "jar.svg")}) {
		remarks = append(remarks, r.String())
	}
	expect(t, "the Nu HTML checker", remarks, "center", "alt", "colour", "jar.svg")
}

func TestShowsTakesNoPartOfANumber(t *testing.T) {
	t.Parallel()
	cases := []struct {
		name, words, text string
		want              bool
	}{
		{"alone", "1.5", "1.5", true},
		{"in a sentence", "weighs 1.5 times", "1.5", true},
		{"ends a sentence", "it weighs 1.5.", "1.5", true},
		{"first of a longer one", "weighs 1.55 times", "1.5", false},
		{"end of a longer one", "weighs 21.5 times", "1.5", false},
		{"whole of a broken one", "weighs 1.5 times", "1", false},
		{"second time right", "11.5 and 1.5", "1.5", true},
		{"over a line's end", "stir\n  the bucket", "stir the bucket", true},
		{"thin space", "17 450", "17 450", true},
		{"missing", "weighs", "1.5", false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if got := shows(c.words, c.text); got != c.want {
				t.Errorf("shows(%q, %q) = %t, want %t", c.words, c.text, got, c.want)
			}
		})
	}
}
