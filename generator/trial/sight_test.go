//go:build judges

package trial

import (
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// widest gives what stands out of the page to the right, if the page can be
// scrolled sideways.
const widest = `(() => {
	const root = document.scrollingElement
	if (root.scrollWidth <= root.clientWidth) return []
	const out = [...document.body.querySelectorAll("*")].filter(e => {
		const box = e.getBoundingClientRect()
		const spills = getComputedStyle(e).overflowX === "visible" ? e.scrollWidth : 0
		return Math.max(box.right, box.left + spills) > root.clientWidth + 0.5
	})
	return ["the page is " + root.scrollWidth + " px wide in a window of " + root.clientWidth]
		.concat(out.slice(-5).map(e => e.outerHTML.slice(0, 120)))
})()`

func TestEveryPageInEveryWindow(t *testing.T) {
	h := published(t)
	for _, scheme := range []string{"light", "dark"} {
		for _, width := range []int64{320, 360, 1280} {
			t.Run(fmt.Sprintf("%s %d px", scheme, width), func(t *testing.T) {
				b := open(t)
				b.size(width, 700)
				b.scheme(scheme)
				for _, address := range h.pages {
					b.visit(h.home + address)
					b.ready()
					for _, fault := range ask[[]string](b, widest) {
						t.Errorf("%s: %s", address, fault)
					}
					said, asked := b.heard()
					for _, words := range said {
						t.Errorf("%s: on the console: %s", address, words)
					}
					foreign(t, h, address, asked)
				}
			})
		}
	}
}

// foreign reports requests that leave the handbook's own folder.
func foreign(t *testing.T, h *handbook, address string, asked []string) {
	t.Helper()
	if len(asked) == 0 {
		t.Errorf("%s: no request was seen: this test listens at the wrong place", address)
	}
	for _, a := range asked {
		if !strings.HasPrefix(a, h.home) {
			t.Errorf("%s: asks for %s, outside its folder", address, a)
		}
	}
}

// small gives what can be pressed and is lower or narrower than a wet finger.
// A link within a sentence is not asked to be as high as a button.
const small = `[...document.querySelectorAll("button, select, input, textarea, summary, form a, form label:has(input[type=radio], input[type=checkbox]), nav a")]
	.filter(e => e.checkVisibility() && e.getBoundingClientRect().width > 0 && !e.closest("label:has(input[type=radio], input[type=checkbox])")
		|| e.localName === "label")
	.filter(e => { const r = e.getBoundingClientRect(); return r.height < 47.5 || r.width < 43.5 })
	.map(e => { const r = e.getBoundingClientRect(); return r.width + " x " + r.height + " px: " + e.outerHTML.slice(0, 140) })`

// crowded gives pairs of things to press that lie less than 8 px apart.
const crowded = `(() => {
	const all = [...document.querySelectorAll("button, select, input:not([type=radio], [type=checkbox]), summary, nav a")].filter(e => e.checkVisibility())
	const found = []
	all.forEach((a, i) => all.slice(i + 1).forEach(b => {
		const p = a.getBoundingClientRect(), q = b.getBoundingClientRect()
		const x = Math.max(p.left, q.left) - Math.min(p.right, q.right), y = Math.max(p.top, q.top) - Math.min(p.bottom, q.bottom)
		if (Math.max(x, y) < 7.5) found.push(Math.max(x, y).toFixed(1) + " px between " + a.outerHTML.slice(0, 100) + " and " + b.outerHTML.slice(0, 100))
	}))
	return found
})()`

func TestTargetsForWetFingers(t *testing.T) {
	h := published(t)
	b := open(t)
	b.size(360, 700)
	for _, address := range h.pages {
		b.visit(h.home + address)
		b.ready()
		b.unfold()
		for _, fault := range append(ask[[]string](b, small), ask[[]string](b, crowded)...) {
			t.Errorf("%s: %s", address, fault)
		}
	}
}

// kept is where pictures of the pages are left for a person to look at.
const kept = root + "/testdata/kept"

func TestPicturesForPeople(t *testing.T) {
	h := published(t)
	if err := os.MkdirAll(kept, 0o777); err != nil {
		t.Fatal(err)
	}
	b := open(t)
	for _, scheme := range []string{"light", "dark"} {
		b.scheme(scheme)
		for _, width := range []int64{360, 768, 1280} {
			b.size(width, 800)
			for _, k := range kinds {
				b.visit(h.home + h.one(t, k))
				b.ready()
				b.keep(fmt.Sprintf("%s-%d-%s.png", k, width, scheme))
			}
		}
	}
}

// keep leaves a picture of the whole page in the folder of kept pictures.
func (b *tab) keep(name string) {
	b.t.Helper()
	picture, err := chromedp.Run(b.ctx, chromedp.FullScreenshot(100))
	if err != nil {
		b.t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(kept, name), picture, 0o666); err != nil {
		b.t.Fatal(err)
	}
}

func TestOpenedFromAFolder(t *testing.T) {
	h := published(t)
	dir, err := filepath.Abs(h.dir)
	if err != nil {
		t.Fatal(err)
	}
	b := open(t)
	for _, address := range h.pages {
		b.visit((&url.URL{Scheme: "file", Path: filepath.ToSlash(dir) + "/" + address}).String())
		b.ready()
		said, _ := b.heard()
		for _, words := range said {
			t.Errorf("%s: on the console: %s", address, words)
		}
	}
}
