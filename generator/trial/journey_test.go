//go:build judges

package trial

import (
	"strings"
	"testing"

	"slipbook/calculators/catalog"
	engine "slipbook/calculators/form"
)

// TestJourneys walks through the handbook as a student does, in each engine: from the
// state of the pot to a lesson, through each calculator, and on by the address that
// she sends to a friend.
func TestJourneys(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	inEachEngine(t, func(t *testing.T, b *tab) {
		b.findsALesson(h)
		b.worksStepByStep(h)
		b.fillsIn(h, s)
		if b.driver != nil && b.driver.prints { // of Chromium TestPagesPrint wants it
			b.printsPages(h)
		}
	})
}

// TestJourneysWithoutANetwork looks for a word, loses the network, gets a new edition,
// and comes back, in each engine. The service worker gets a server of its own, which
// really goes away.
func TestJourneysWithoutANetwork(t *testing.T) {
	t.Parallel()
	s := settings(t)
	inEachEngine(t, func(t *testing.T, b *tab) {
		o := outpostOf(t)
		if b.driver == nil {
			b = keeper(t) // the shared windows keep nothing
		}
		b.size(360, 740)
		b.keepAll(o.home + "index.html")
		o.close()
		b.looksUp(o)
		b.calculatesWithoutANetwork(o, s)
		o.open()
		b.takesTheNewEdition(o)
	})
}

// looksUp goes to the search as one does, types a word with a slip of the finger, and
// follows what is found to its place in the page.
func (b *tab) looksUp(o *outpost) {
	b.t.Helper()
	b.visit(o.home + "slip/inlay.html")
	b.goBy(`header a[href$="search.html"]`)
	if !b.until(`document.activeElement === document.querySelector("[data-find] input")`) {
		b.t.Fatal("the box is not ready to be typed into")
	}
	b.keys("scrpae flush") // for "scrape"
	if !b.until(`document.querySelector("[data-found-list] a")?.hash === "#scrape-flush"`) {
		b.t.Fatalf("found are %q", ask[[]string](b, foundPlaces))
	}
	b.goBy("[data-found-list] a")
	if !b.until(`location.hash === "#scrape-flush" && Math.abs(document.querySelector("#scrape-flush").getBoundingClientRect().top) < innerHeight / 2`) {
		b.t.Error("what was found is not what stands in the window")
	}
}

// calculatesWithoutANetwork opens what was never opened before: a lesson, and a
// calculator, which it fills in.
func (b *tab) calculatesWithoutANetwork(o *outpost, s engine.Settings) {
	b.t.Helper()
	b.visit(o.home + "wash/thin-a-wash.html")
	b.ready()
	if !ask[bool](b, `document.querySelector("h1") !== null && getComputedStyle(document.body).fontFamily.includes("Palatino")`) {
		b.t.Error("without a network a lesson has no words, or no look")
	}
	f := formAt(b, o.handbook, catalog.In("en-GB").Find("slip-density"))
	f.fill(f.calc.Example.Given, false)
	f.agree(f.calc.Example.Given, s)
}

// takesTheNewEdition is told of a new edition in the middle of a sum, takes it, and
// still has what was typed; then the network goes again.
func (b *tab) takesTheNewEdition(o *outpost) {
	b.t.Helper()
	typed := ask[string](b, `document.querySelector("[data-input=mass] input").value`)
	o.republish("slip/coat-a-pot", came)
	ask[bool](b, `navigator.serviceWorker.getRegistration().then(r => r.update()).then(() => true)`)
	if !b.until(newsSays(newWords)) {
		b.t.Fatal("nobody is told of the new edition")
	}
	ask[bool](b, "window.beforeNew = true")
	b.goTo(key("Take it now"))
	if !b.until(`!window.beforeNew && document.readyState === "complete"`) {
		b.t.Fatal("the page does not go along with the new edition")
	}
	b.ready()
	if kept := ask[string](b, `document.querySelector("[data-input=mass] input").value`); typed == "" || kept != typed {
		b.t.Errorf("%q was typed, and with the new edition there stands %q", typed, kept)
	}
	o.close()
	b.visit(o.home + "slip/coat-a-pot.html")
	if !ask[bool](b, hasCome) {
		b.t.Error("without a network it is not the new edition that opens")
	}
}

// goBy presses the first link in sight that leads to an address, and waits for its page.
func (b *tab) goBy(link string) {
	b.t.Helper()
	before := ask[string](b, "location.href")
	where := ask[[]int](b, `(link => {
		if (!link) return []
		link.scrollIntoView({block: "center"})
		const box = link.getClientRects()[0]
		return [Math.round(box.x + box.width / 2), Math.round(box.y + box.height / 2)]
	})([...document.querySelectorAll(`+quoted(link)+`)].find(link => link.checkVisibility()))`)
	if len(where) == 0 {
		b.t.Fatalf("%s: no link in sight is a %s", before, link)
	}
	b.press(where[0], where[1])
	if !b.until("location.href !== " + quoted(before) + ` && document.readyState === "complete"`) {
		b.t.Fatalf("%s: %s leads nowhere", before, link)
	}
}

// findsALesson goes from the home page by the state of the pot to a lesson.
func (b *tab) findsALesson(h *handbook) {
	b.t.Helper()
	b.size(360, 740)
	b.visit(h.home + "index.html")
	b.goBy(`main a[href$="states/leather-hard.html"]`)
	b.goBy(`main a[href^="../slip/"]`)
	if title := ask[string](b, `document.querySelector("h1").innerText`); strings.TrimSpace(title) == "" {
		b.t.Error("a lesson without a title")
	}
	if wide := ask[int](b, "document.documentElement.scrollWidth"); wide > ask[int](b, "innerWidth") {
		b.t.Errorf("the lesson is %d px wide in a window of 360", wide)
	}
}

// fillsIn types the example of each calculator, and opens the address anew that then
// stands above the page.
func (b *tab) fillsIn(h *handbook, s engine.Settings) {
	b.t.Helper()
	for _, c := range catalog.In("en-GB") {
		f := formAt(b, h, c)
		f.fill(c.Example.Given, false)
		f.agree(c.Example.Given, s)
		address := ask[string](b, "location.href")
		b.visit("about:blank")
		b.visit(address)
		b.ready()
		f.agree(c.Example.Given, s)
	}
}

// worksStepByStep has one step to a screen, ticks one, and comes again.
func (b *tab) worksStepByStep(h *handbook) {
	b.t.Helper()
	b.size(360, 740)
	b.visit(h.home + steppedLesson)
	b.goTo(`document.querySelector("[data-go-on]")`)
	b.at(1, 15)
	b.goTo(key("Next"))
	b.at(2, 15)
	b.sees("mix-it", "caution.1", "step-2", "recipe.1")
	b.goTo(`document.querySelector(".step-tools input")`)
	b.visit("about:blank")
	b.visit(h.home + steppedLesson)
	if !b.until(`document.querySelector("[data-go-on]").textContent === "Go on at step 2" && document.querySelector("#step-2").matches("[data-done]")`) {
		b.t.Errorf("the place is not kept: %q", ask[string](b, `document.querySelector("[data-go-on]").textContent`))
	}
}

// goTo presses an element with the pointer, where it is in sight.
func (b *tab) goTo(element string) {
	b.t.Helper()
	if !b.until(element + "?.checkVisibility()") {
		b.t.Fatalf("there is no %s to press", element)
	}
	at := ask[[]int](b, `(e => {
		e.scrollIntoView({block: "center"})
		const box = e.getBoundingClientRect()
		return [Math.round(box.x + box.width / 2), Math.round(box.y + box.height / 2)]
	})(`+element+")")
	b.press(at[0], at[1])
}
