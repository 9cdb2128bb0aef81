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
		b.fillsIn(h, s)
		if b.driver != nil && b.driver.prints { // of Chromium TestPagesPrint wants it
			b.printsPages(h)
		}
	})
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
