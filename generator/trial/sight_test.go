//go:build judges

package trial

import (
	"fmt"
	"math"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/chromedp/cdproto/page"
)

// widest returns what stands out of the page to the right, if the page can be
// scrolled sideways.
const widest = `(() => {
	const root = document.scrollingElement
	if (root.scrollWidth <= root.clientWidth) return []
	const scrolled = e => { for (e = e.parentElement; e; e = e.parentElement) if (getComputedStyle(e).overflowX !== "visible") return true; return false }
	const out = [...document.body.querySelectorAll("*")].filter(e => !scrolled(e)).filter(e => {
		const box = e.getBoundingClientRect()
		const spills = getComputedStyle(e).overflowX === "visible" ? e.scrollWidth : 0
		return Math.max(box.right, box.left + spills) > root.clientWidth + 0.5
	})
	return ["the page is " + root.scrollWidth + " px wide in a window of " + root.clientWidth]
		.concat(out.slice(-5).map(e => e.outerHTML.slice(0, 120)))
})()`

// TestEveryPageInEveryWindow visits every page once and looks at it in many
// widths, unfolded, with letters twice as large, and spaced widely. Colours change no layout, so
// one scheme is enough.
func TestEveryPageInEveryWindow(t *testing.T) {
	t.Parallel()
	h := published(t)
	var judged atomic.Int64 // states with a verdict in the strips
	tour(t, h.toured(), func(b *tab, address string) {
		b.heard()
		b.size(320, 700)
		b.visit(h.home + address)
		b.ready()
		b.fits(address, windowWidths)
		for _, fault := range ask[[]string](b, offTheSheet) {
			b.t.Errorf("%s: %s", address, fault)
		}
		for _, width := range []int64{320, 360} {
			if b.size(width, 700); hasStrip(address) {
				judged.Add(int64(b.strip(address)))
			}
		}
		b.unfold()
		b.ready() // a calculator of a lesson comes when it is opened
		for _, fault := range slices.Concat(ask[[]string](b, small), ask[[]string](b, crowded)) {
			b.t.Errorf("%s, unfolded: %s", address, fault)
		}
		b.fits(address+", unfolded", fewWidths)
		b.lettersOf(32)
		b.fits(address+", in large letters", largeWidths)
		b.lettersOf(16)
		if !ask[bool](b, spaceWide) {
			b.t.Errorf("%s: the words take no wider spacing", address)
		}
		b.fits(address+", spaced widely", spacedWidths)
		ask[bool](b, spaceUsual)
		said, asked := b.heard()
		for _, words := range said {
			b.t.Errorf("%s: on the console: %s", address, words)
		}
		foreign(b.t, h, address, asked)
	})
	if judged.Load() == 0 {
		t.Error("no page's strip carries verdicts")
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

// small returns what can be pressed and is lower or narrower than a wet finger.
// A link within a sentence is not asked to be as high as a button.
const small = `[...document.querySelectorAll("button, select, input, textarea, summary, form a, form label:has(input[type=radio], input[type=checkbox]), nav a")]
	.filter(e => e.checkVisibility() && e.getBoundingClientRect().width > 0 && !e.closest("label:has(input[type=radio], input[type=checkbox])")
		|| e.localName === "label")
	.filter(e => { const r = e.getBoundingClientRect(); return r.height < 47.5 || r.width < 43.5 })
	.map(e => { const r = e.getBoundingClientRect(); return r.width + " x " + r.height + " px: " + e.outerHTML.slice(0, 140) })`

// crowded returns pairs of things to press that lie less than 8 px apart.
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

// kept is where pictures of the pages are left for a person to look at.
const kept = root + "/testdata/kept"

func TestPicturesForPeople(t *testing.T) {
	t.Parallel()
	h, notes := published(t), publishedNotes(t)
	if err := os.MkdirAll(kept, 0o777); err != nil {
		t.Fatal(err)
	}
	pages := []string{notes.home + notes.one(t, "teaching")}
	for _, address := range h.samples(t) {
		pages = append(pages, h.home+address)
	}
	tour(t, pages, func(b *tab, address string) {
		b.size(360, 800)
		b.visit(address)
		b.ready()
		_, name, _ := strings.Cut(address, folder)
		most := math.Inf(1)
		if kind(name) == "book" {
			most = 3000 // the whole would be a picture that nothing can open
		}
		for _, width := range []int64{360, 768, 1280} {
			b.size(width, 800)
			for _, scheme := range []string{"light", "dark"} {
				b.scheme(scheme)
				b.keep(fmt.Sprintf("%s-%d-%s.png", kind(name), width, scheme), most)
			}
		}
	})
}

// keep leaves a picture of the page in the folder of kept pictures, from its top
// down to at most some CSS pixels.
func (b *tab) keep(name string, most float64) {
	b.t.Helper()
	whole := ask[struct{ Width, Height float64 }](b, `(e => ({width: e.clientWidth, height: e.scrollHeight}))(document.documentElement)`)
	yes := true
	picture := call(b, page.CaptureScreenshot, page.CaptureScreenshotParams{
		CaptureBeyondViewport: &yes,
		OptimizeForSpeed:      &yes,
		Clip:                  &page.Viewport{Width: whole.Width, Height: min(whole.Height, most), Scale: 1},
	})
	if err := os.WriteFile(filepath.Join(kept, name), picture.Data, 0o666); err != nil {
		b.t.Fatal(err)
	}
}

// fromFolder is a handbook opened as files, without a server.
func (h *handbook) fromFolder(t *testing.T) *handbook {
	t.Helper()
	dir, err := filepath.Abs(h.dir)
	if err != nil {
		t.Fatal(err)
	}
	home := &url.URL{Scheme: "file", Path: filepath.ToSlash(dir) + "/"}
	return &handbook{dir: dir, home: home.String(), pages: h.pages, parsed: h.parsed}
}

func TestOpenedFromAFolder(t *testing.T) {
	t.Parallel()
	h := published(t).fromFolder(t)
	tour(t, h.toured(), func(b *tab, address string) {
		b.heard()
		b.visit(h.home + address)
		b.ready()
		said, asked := b.heard()
		for _, words := range said {
			b.t.Errorf("%s: on the console: %s", address, words)
		}
		foreign(b.t, h, address, asked)
	})
}
