//go:build judges

package trial

import (
	"fmt"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// reached are pages of the kinds that a student has in hand, each of which is gone
// through by keys.
var reached = []string{"home", "state", "lesson", "calculator", "search", "answers", "tried"}

// farApart sets the distances of WCAG 2.2, success criterion 1.4.12.
const farApart = `(() => {
	const sheet = new CSSStyleSheet()
	sheet.replaceSync("* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-block-end: 2em !important }")
	document.adoptedStyleSheets = [sheet]
	return true
})()`

// clipped lists words that do not fit what holds them, and cannot be scrolled to.
// What only a screen reader hears is 1 px wide on purpose.
const clipped = `[...document.body.querySelectorAll("*")].filter(e => e.checkVisibility() && e.clientWidth > 1 && !(e instanceof SVGElement) && !e.matches("select, input"))
	.filter(e => [[getComputedStyle(e).overflowX, e.scrollWidth - e.clientWidth], [getComputedStyle(e).overflowY, e.scrollHeight - e.clientHeight]]
		.some(([how, over]) => ["hidden", "clip"].includes(how) && over > 1))
	.map(e => "words are cut off: " + e.outerHTML.slice(0, 140))`

// TestWordsMayBeSpaced sets words as far apart as the standard asks pages to bear.
func TestWordsMayBeSpaced(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	for _, k := range reached {
		address := h.one(t, k)
		b.size(360, 740)
		b.visit(h.home + address)
		b.ready()
		ask[bool](b, farApart)
		for _, fault := range append(ask[[]string](b, clipped), ask[[]string](b, widest)...) {
			t.Errorf("%s, spaced: %s", address, fault)
		}
	}
}

// hasFocus says what has the focus: its place in the page's order, and what is wrong
// with how it is seen.
const hasFocus = `(() => {
	const e = document.activeElement, all = [...document.querySelectorAll("*")]
	if (!e || e === document.body) return {at: -1, fault: ""}
	const box = [...e.getClientRects()].find(r => r.width > 0) ?? e.getBoundingClientRect(), style = getComputedStyle(e)
	const marked = style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2
	const hit = document.elementFromPoint(Math.min(Math.max(box.left + box.width / 2, 1), innerWidth - 1), Math.min(Math.max(box.top + box.height / 2, 1), innerHeight - 1))
	const seen = hit && (e.contains(hit) || hit.contains(e) || e.closest("label")?.contains(hit))
	return {at: all.indexOf(e), fault: !marked ? "has no outline" : box.bottom < 0 || box.top > innerHeight ? "is out of the window" : seen ? "" : "lies under " + hit?.outerHTML.slice(0, 80), what: e.outerHTML.slice(0, 120)}
})()`

// TestKeysGoThroughPages presses Tab through pages, with the reader's own colours: the
// focus goes forward in the page, has an outline, and is never covered.
func TestKeysGoThroughPages(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	b.size(360, 740)
	for n, k := range reached {
		colours := []string{"none", "active"}[n%2]
		call(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "forced-colors", Value: colours}}})
		address := h.one(t, k)
		b.visit(h.home + address)
		b.ready()
		if k == "search" { // which puts the focus into its box
			ask[bool](b, "(document.activeElement.blur(), document.querySelector('.skip').focus(), true)")
		}
		last, steps := -1, 0
		for ; steps < 40; steps++ {
			b.do(chromedp.KeyEvent(kb.Tab))
			now := ask[struct {
				At          int
				Fault, What string
			}](b, hasFocus)
			if now.At < 0 {
				break
			}
			if now.Fault != "" || now.At <= last {
				t.Errorf("%s, forced colours %s: Tab %d comes to %s, place %d after %d: %s", address, colours, steps+1, now.What, now.At, last, now.Fault)
			}
			last = now.At
		}
		if steps < 8 {
			t.Errorf("%s: Tab comes to %d things alone", address, steps)
		}
	}
}

// TestNothingMovesForWhoeverAsks looks for what moves by itself, and has the reader ask
// for less of it.
func TestNothingMovesForWhoeverAsks(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	b.scheme("light") // asks for less motion as well
	const moving = `document.getAnimations().filter(a => (a.effect?.getKeyframes() ?? []).some(k => ["transform", "translate", "rotate", "scale", "left", "top", "insetBlockStart"].some(p => p in k)))
		.map(a => a.effect.target.outerHTML.slice(0, 120))
		.concat([...document.querySelectorAll("*")].filter(e => getComputedStyle(e).scrollBehavior === "smooth").map(e => "scrolls smoothly: " + e.localName))`
	for _, k := range reached {
		b.visit(h.home + h.one(t, k))
		for _, what := range ask[[]string](b, moving) {
			t.Errorf("%s: moves: %s", k, what)
		}
	}
}

// TestForcedColoursTellApart has the reader's own colours: what is chosen, wrong or
// pressed must be told by more than a colour of ours.
func TestForcedColoursTellApart(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	call(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: "forced-colors", Value: "active"}}})
	b.visit(h.home + "calculators/slip-density.html")
	b.ready()
	const edgeless = `[...document.querySelectorAll("button, input, select, summary")].filter(e => e.checkVisibility() && e.type !== "checkbox" && e.type !== "radio" && e.localName !== "summary")
		.filter(e => { const s = getComputedStyle(e); return s.borderTopStyle === "none" || parseFloat(s.borderTopWidth) < 1 || s.borderTopColor === s.backgroundColor })
		.map(e => e.outerHTML.slice(0, 120))`
	for _, what := range ask[[]string](b, edgeless) {
		t.Errorf("has no edge: %s", what)
	}
	if n := ask[int](b, `[...document.querySelectorAll("button, input")].filter(e => e.checkVisibility()).length`); n < 5 {
		t.Error(fmt.Sprint(n, " things to press: this test looks at the wrong page"))
	}
}
