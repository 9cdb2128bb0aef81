//go:build judges

package trial

import (
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// What a page of entries shows.
const (
	filterBox   = `document.querySelector("[data-filter] input")`
	filterCount = `document.querySelector("[data-filter-count]").textContent`
	leftNames   = `[...document.querySelectorAll("[data-entry]")].filter(e => e.checkVisibility()).map(e => (e.querySelector("[data-entry-name]") ?? e).textContent.trim())`
)

// typed types words into the box of a page of entries and waits until that is said.
func (b *tab) typed(words, said string) {
	b.t.Helper()
	ask[bool](b, "("+filterBox+".select(), true)")
	b.keys(words)
	if !b.until(filterCount + " === " + quoted(said)) {
		b.t.Errorf("for %q it is said %q, want %q", words, ask[string](b, filterCount), said)
	}
}

// TestPageIsNarrowedByWords looks for words as people type them, and finds the whole page
// again by each way back.
func TestPageIsNarrowedByWords(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := phone(t)
	b.visit(h.home + "glossary.html")
	b.tap(filterBox)
	all := len(ask[[]string](b, leftNames))
	b.typed("mishma", "1 of "+itoa(all)+" left")
	if left := ask[[]string](b, leftNames); !slices.Equal(left, []string{"Inlay"}) || !ask[bool](b, `location.search === "?q=mishma"`) {
		t.Errorf("left are %q at %s", left, ask[string](b, "location.search"))
	}
	for _, fault := range slices.Concat(ask[[]string](b, small), ask[[]string](b, crowded), b.accessible()) {
		t.Error(fault)
	}
	b.lettersOf(32)
	b.fits("a page with its box, in large letters", []int64{320})
	b.lettersOf(16)
	b.size(360, 640)
	b.keys(kb.Escape)
	if left := len(ask[[]string](b, leftNames)); left != all || !b.until(filterCount+` === ""`) {
		t.Errorf("the key Escape leaves %d of %d", left, all)
	}
	b.typed("frit", "1 of "+itoa(all)+" left")
	b.tap(`document.querySelector("[data-filter-more]")`)
	if left := ask[[]string](b, leftNames); len(left) < 3 || !slices.Contains(left, "Frit") {
		t.Errorf("asked for those that only tell of it, left are %q", left)
	}
	b.tap(key("Clear"))
	if left := len(ask[[]string](b, leftNames)); left != all || !ask[bool](b, "document.activeElement === "+filterBox) {
		t.Errorf("the key “Clear” leaves %d of %d, or not the box", left, all)
	}
	b.typed("zzyzx", "Nothing here has these words.")
	b.tap(`document.querySelector("[data-filter-none] a")`)
	if !b.until(`location.href.endsWith("search.html?q=zzyzx") && document.querySelector("[data-find] input")?.value === "zzyzx"`) {
		t.Errorf("the way to look everywhere leads to %s", ask[string](b, "location.href"))
	}
	b.do(chromedp.NavigateBack())
	if !b.until(filterBox + `?.value === "zzyzx" && ` + leftNames + ".length === 0") {
		t.Error("the words are gone when one comes back")
	}
	b.visit(h.home + "faults.html?q=crawls#pinholes")
	if !b.until(inWindow(`document.querySelector("#pinholes")`) + " && " + filterBox + `.value === ""`) {
		t.Error("what the address names stays out of sight")
	}
	call(b, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
	b.do(chromedp.Reload())
	if ask[bool](b, `document.querySelector("[data-filter] input").checkVisibility()`) || ask[bool](b, leftNames+".length < 100") {
		t.Error("without a script there is a box, or not the whole page")
	}
}

// TestListsToJumpWithAreInTheFirstScreen wants them whole there, and a way back behind
// what is long.
func TestListsToJumpWithAreInTheFirstScreen(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := phone(t)
	b.size(360, 740)
	for _, page := range []string{"faults.html", "answers.html", "glossary.html"} {
		b.visit(h.home + page)
		if at := ask[float64](b, `document.querySelector("#list\\.top").getBoundingClientRect().bottom`); at > 740 {
			t.Errorf("%s: the list ends %v px down the page", page, at)
		}
		if far := ask[float64](b, `(tops => Math.max(...tops.slice(1).map((top, n) => top - tops[n])))([...document.querySelectorAll("#list\\.top, .to-list")].map(e => e.getBoundingClientRect().top))`); far > 6*740 {
			t.Errorf("%s: one scrolls %v px without a way back", page, far)
		}
		b.tap(`document.querySelector("[data-entries]:nth-of-type(2) .to-list a")`)
		if !b.until(inWindow(`document.querySelector("#list\\.top")`)) {
			t.Errorf("%s: the way back does not lead to the list", page)
		}
	}
}

// TestCardIsPrintedAndShared presses the keys of a card, in a browser that shares and in
// one that lets no page share or copy.
func TestCardIsPrintedAndShared(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := phone(t)
	card := h.one(t, "card")
	b.visit(h.home + card + "?x=1#y")
	ask[bool](b, `(window.done = [], window.print = () => done.push("print"), Object.defineProperty(navigator, "share", {configurable: true, value: async ({url}) => { done.push(url) }}), true)`)
	b.tap(key("Print this page"))
	b.tap(key("Share it"))
	if !b.until("done.length === 2") || ask[string](b, "done.join()") != "print,"+h.home+card {
		t.Errorf("done was %q", ask[string](b, "done.join()"))
	}
	ask[bool](b, `(Object.defineProperty(navigator, "share", {value: async () => { throw new Error("not now") }}), Object.defineProperty(navigator, "clipboard", {value: {writeText: async () => { throw new Error("no") }}}), true)`)
	b.tap(key("Share it"))
	if !b.until(`document.activeElement.value === ` + quoted(h.home+card)) {
		t.Error("where nothing is shared or copied, no box holds the link")
	}
	for _, fault := range slices.Concat(ask[[]string](b, small), b.accessible()) {
		t.Error(fault)
	}
	b.lettersOf(32)
	b.fits("a card with its link, in large letters", []int64{320})
	b.lettersOf(16)
}

// TestOpenSheetIsToldOf wants a sheet that is open to be named where one goes to work, and
// left whole by a link with other numbers.
func TestOpenSheetIsToldOf(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	f := sheetOf(t, h, "wash-mix")
	f.tap(sheetLines + `[0].querySelector("label")`)
	another := ask[string](f.tab, `(q => (q.set("people", "2"), "?" + q))(new URLSearchParams(location.search))`)
	const goOn = `document.querySelector("[data-open-work] a")`
	for _, page := range []string{"index.html", "calculators/index.html"} {
		f.visit(h.home + page)
		if !f.until(goOn) || ask[string](f.tab, goOn+".textContent") != "Go on: Mix a stain wash" {
			t.Fatalf("%s does not tell of it", page)
		}
	}
	f.tap(goOn)
	ticked := func(when string) {
		t.Helper()
		if !f.until(sheetTicks + "[0] && " + inWindow(`document.querySelector(".tally")`)) {
			t.Errorf("%s the sheet is not there with its tick", when)
		}
	}
	ticked("gone on,")
	for _, link := range []string{"?calculator=wash-mix&people=2", another} {
		f.visit(h.home + "calculators/wash-mix.html" + link)
		f.ready()
		if !f.until(key("Back to my sheet")+" && "+inWindow(key("Back to my sheet"))) || ask[bool](f.tab, sheetLines+".length > 0") {
			t.Fatalf("%s: a link with other numbers does not offer the sheet that is open", link)
		}
	}
	f.tap(key("Back to my sheet"))
	f.agree(f.calc.Example.Given, s)
	ticked("taken back,")
	f.tap(key("Put the sheet away"))
	f.visit(h.home + "index.html")
	if said := ask[string](f.tab, `document.querySelector("[data-open-work]").textContent`); strings.TrimSpace(said) != "" {
		t.Errorf("put away, it is still told of: %q", said)
	}
}
