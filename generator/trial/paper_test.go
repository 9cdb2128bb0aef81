//go:build judges

package trial

import (
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
)

// leastOnPaper is the smallest type on a poster or a form, in points.
const leastOnPaper = 9

// onItsSide reports whether a page is a form that lies on its side: all but the one about a
// single case.
func onItsSide(address string) bool {
	return kind(address) == "form" && !strings.Contains(address, "incident")
}

// piecesOnPaper returns the pieces of text of a poster or a form that are printed.
const piecesOnPaper = `[...document.querySelectorAll(":is(.poster, .blank-form) :is(h1, h2, h3, p, li, dt, dd, th, td)")].filter(e => e.checkVisibility()
	&& !e.querySelector("p, li, dt, dd")).map(e => {
		const whole = e.cloneNode(true)
		whole.querySelectorAll(".unseen, .care-lesson").forEach(e => e.remove())
		return whole.textContent.trim()
	}).filter(words => words)`

// onOneSheet wants a page to print on one sheet of each paper, whole and large enough
// to read.
func (b *tab) onOneSheet(address string, pieces []string) {
	b.t.Helper()
	for _, p := range papers {
		s := b.print(p)
		if s.pages != 1 || !s.is(p, onItsSide(address)) {
			b.t.Errorf("%s, %s: %d pages of %g by %g points", address, p.name, s.pages, s.width, s.height)
		}
		if size := s.smallestType(b.t); size < leastOnPaper {
			b.t.Errorf("%s, %s: type of %.1f points, the least is %d", address, p.name, size, leastOnPaper)
		}
		said := letters(strings.Join(s.words(b.t, asDrawn), " "))
		for _, words := range pieces {
			if !strings.Contains(said, letters(words)) {
				b.t.Errorf("%s, %s: the sheet lacks %q", address, p.name, words)
			}
		}
	}
}

// TestPaperPrintsOnOneSheetEach prints every poster and form on both papers, as a
// course prints them that says where it is published: the code takes room.
func TestPaperPrintsOnOneSheetEach(t *testing.T) {
	t.Parallel()
	h := publishedAt(t, "GB")
	tour(t, h.all(t, "poster", "form"), func(b *tab, address string) {
		b.visit(h.home + address)
		call(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
		b.size(printedWidth(papers[0], address), 900)
		b.t.Logf("%s is %v px high", address, ask[float64](b, `document.querySelector(".poster, .blank-form").getBoundingClientRect().height`))
		pieces := ask[[]string](b, piecesOnPaper)
		if len(pieces) < 10 {
			b.t.Errorf("%s has only %d pieces of text: this test looks at the wrong place", address, len(pieces))
		}
		for _, fault := range ask[[]string](b, cut) {
			b.t.Errorf("%s: %s", address, fault)
		}
		b.onOneSheet(address, pieces)
		if kind(address) == "poster" && ask[int](b, `document.querySelectorAll(".poster .qr").length`) != 1 {
			b.t.Errorf("%s bears no code", address)
		}
	})
}

// TestPaperOnAScreen looks at the list, a poster and each form as a phone shows them,
// and has axe and the Nu checker judge them.
func TestPaperOnAScreen(t *testing.T) {
	t.Parallel()
	h := published(t)
	all := h.all(t, "paper", "poster", "form")
	tour(t, all, func(b *tab, address string) {
		b.size(320, 700)
		b.visit(h.home + address)
		b.ready()
		b.fits(address, windowWidths)
		for _, fault := range slices.Concat(ask[[]string](b, small), ask[[]string](b, crowded)) {
			b.t.Errorf("%s: %s", address, fault)
		}
	})
	h.judge(t, all, func(string) []look { return twoLooks })
	var at []string
	for _, address := range all {
		at = append(at, h.home+address)
	}
	for _, r := range nu(t, at) {
		t.Error(r)
	}
}
