//go:build judges

package trial

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
)

// cut lists what a sheet of paper cuts off: what is wider than the page or than
// the column that it stands in, and what a screen would scroll.
const cut = `(() => {
	const wide = document.scrollingElement
	const found = wide.scrollWidth > wide.clientWidth + 1 ? ["the page is " + wide.scrollWidth + " px wide on " + wide.clientWidth + " px of paper"] : []
	for (const e of document.body.querySelectorAll("*")) {
		if (!e.checkVisibility() || e.closest("svg") || e.closest(".unseen, .reckon-voice")) continue
		const style = getComputedStyle(e)
		const room = e.parentElement.clientWidth
		const scrolls = style.overflowX !== "visible" && e.scrollWidth > e.clientWidth + 1
		const spills = (e.localName === "table" || e.localName === "math") && room > 0 && e.getBoundingClientRect().width > room + 1
		if (scrolls || spills) found.push(e.scrollWidth + " px in " + Math.min(room, e.clientWidth || room) + " px: " + e.outerHTML.slice(0, 120))
	}
	return found
})()`

// printedWidth is the width that a page's words have on a paper, in CSS pixels:
// recap cards have narrower margins than other pages, the book broader ones.
func printedWidth(p paper, address string) int64 {
	margins := map[string]float64{"card": 24, "course-card": 24, "book": 44, "chart": 16, "label": 20, "class": 28, "stock": 24, "poster": 24, "form": 24}[kind(address)]
	if margins == 0 {
		margins = 36
	}
	across := p.short
	if k := kind(address); k == "chart" || k == "stock" || onItsSide(address) {
		across = p.longer // they lie on their sides
	}
	return int64(math.Floor(across*96/72 - margins*96/25.4))
}

// TestNothingIsCutOnPaper looks at every page as it is laid out on paper, in the
// machine's own letters and in wide ones.
func TestNothingIsCutOnPaper(t *testing.T) {
	t.Parallel()
	h := published(t)
	tour(t, h.toured(), func(b *tab, address string) {
		call(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
		b.visit(h.home + address)
		b.ready()
		b.unfold()
		for _, letters := range []string{"", "* { font-family: Verdana, 'DejaVu Sans', sans-serif !important }"} {
			b.dress(letters)
			for n, p := range papers {
				if kind(address) == "label" && !strings.HasSuffix(address, labelPapers[n]) {
					continue // it is for the other paper
				}
				b.size(printedWidth(p, address), 900)
				for _, fault := range ask[[]string](b, cut) {
					b.t.Error(fmt.Sprintf("%s on %s: ", address, p.name) + fault)
				}
			}
		}
	})
}
