//go:build judges

package trial

import (
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
)

// steppedLesson has cautions, a drawing, times, a weighing order and a shine to wait for
// among its steps; so say the tests that use them.
const (
	steppedLesson = "mixing/make-slip.html"
	timedLesson   = "mixing/correct-bucket.html"
	shinyLesson   = "slip/coat-a-pot.html"
)

// visible lists what of a lesson's own words is in sight, in short, in the order of the
// screen: "step-3", "caution.1", "H2".
const visible = `[...document.querySelectorAll("main > *, .steps > li")]
	.filter(e => e.checkVisibility() && !e.matches("h1, .step-head, .step-foot, ol"))
	.map(e => e.id || e.getAttribute("aria-labelledby") || e.tagName)`

// atPlace is what the head of the step view says.
const atPlace = `document.querySelector(".step-place")?.textContent ?? ""`

// bench opens the step view.
func (b *tab) bench() {
	b.t.Helper()
	b.tap(`document.querySelector("[data-go-on]")`)
	if !b.until(`document.querySelector(".step-place")?.checkVisibility()`) {
		b.t.Fatal("one step to a screen never comes")
	}
}

// at waits until a step is shown.
func (b *tab) at(step, of int) {
	b.t.Helper()
	want := "Step " + strconv.Itoa(step) + " of " + strconv.Itoa(of)
	if !b.until(atPlace + " === " + quoted(want)) {
		b.t.Fatalf("the place is %q, want %q", ask[string](b, atPlace), want)
	}
}

// sees wants elements to be in sight, and no others of the lesson's.
func (b *tab) sees(want ...string) {
	b.t.Helper()
	if got := strings.Join(ask[[]string](b, visible), " "); got != strings.Join(want, " ") {
		b.t.Errorf("in sight are %s, want %s", got, strings.Join(want, " "))
	}
}

// strike presses a key of the keyboard.
func (b *tab) strike(key string) {
	b.t.Helper()
	for _, kind := range []input.DispatchKeyEventType{input.DispatchKeyEventTypeKeyDown, input.DispatchKeyEventTypeKeyUp} {
		call(b, input.DispatchKeyEvent, input.DispatchKeyEventParams{Type: kind, Key: key, Code: key})
	}
}

// TestOneStepToAScreen walks through a lesson with one finger.
func TestOneStepToAScreen(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := phone(t)
	b.size(360, 740)
	b.visit(h.home + steppedLesson)
	b.bench()
	b.at(1, 15)
	b.sees("mix-it", "step-1", "recipe.1")
	b.tap(key("Next"))
	b.at(2, 15)
	b.sees("mix-it", "caution.1", "step-2", "recipe.1")
	if told := ask[string](b, `document.activeElement.id + " " + document.activeElement.getAttribute("aria-describedby")`); told != "step-2 caution.1" {
		t.Errorf("the focus is on %q, want it on the step, told with its caution", told)
	}
	for _, fault := range append(ask[[]string](b, small), ask[[]string](b, crowded)...) {
		t.Error(fault)
	}
	ask[bool](b, `(document.querySelector(".step-now").scrollIntoView({block: "center"}), true)`) // out from under the keys
	for _, fault := range b.accessible() {
		t.Error(fault)
	}
	b.tap(key("Next"))
	b.at(3, 15)
	b.sees("mix-it", "caution.1", "step-3", "recipe.1")
	if whole := ask[bool](b, `document.getElementById("caution.1").nextElementSibling.checkVisibility()`); whole {
		t.Error("of an earlier step's caution more than its headline stands there")
	}
	if said, _ := b.heard(); len(said) > 0 {
		t.Errorf("on the console: %v", said)
	}
}

// TestTicksAndPlaceAreKept ticks a step, and comes again in every way there is.
func TestTicksAndPlaceAreKept(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := phone(t)
	b.visit(h.home + steppedLesson + "#step-3")
	b.bench()
	b.at(3, 15)
	b.tap(`document.querySelector(".step-tools input")`)
	b.tap(key("Next"))
	b.reload()
	b.at(4, 15)
	b.tap(key("Back"))
	b.at(3, 15)
	if !ask[bool](b, `document.querySelector(".step-tools input").checked`) {
		t.Error("the tick did not survive a reload")
	}
	b.tap(key("Leave"))
	if !b.until(`document.querySelector("#step-12").checkVisibility() && !document.querySelector(".step-head")`) {
		t.Fatal("the way out leads nowhere")
	}
	if done := ask[[]string](b, `[...document.querySelectorAll("[data-done]")].map(e => e.id + ": " + e.querySelector("[data-number]").ariaLabel)`); strings.Join(done, ", ") != "step-3: Step 3, done" {
		t.Errorf("ticked on the page: %v", done)
	}
	b.visit(h.home + steppedLesson)
	if at := ask[string](b, `document.querySelector("[data-go-on]").textContent`); at != "Go on at step 3" {
		t.Errorf("on a new visit the button says %q", at)
	}
	b.tap(key("Clear the ticks"))
	if !b.until(`document.querySelectorAll("[data-done]").length === 0`) {
		t.Error("the ticks cannot be cleared")
	}
	b.tap(key("Bring them back"))
	if !b.until(`document.querySelectorAll("[data-done]").length === 1`) {
		t.Error("the ticks cannot be brought back")
	}
	if said, _ := b.heard(); len(said) > 0 {
		t.Errorf("on the console: %v", said)
	}
}

// TestOneStepByKeys walks by the keyboard, leaves by the browser's own way back, and
// looks at what hinders sight: large letters, forced colours, a narrow window.
func TestOneStepByKeys(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	b.size(320, 640)
	b.visit(h.home + steppedLesson)
	ask[bool](b, `document.querySelector("[data-go-on]").click() || true`)
	b.at(1, 15)
	b.strike("ArrowRight")
	b.at(2, 15)
	b.strike("Enter")
	b.at(3, 15)
	b.strike("ArrowLeft")
	b.at(2, 15)
	call(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{
		{Name: "forced-colors", Value: "active"}, {Name: "prefers-reduced-motion", Value: "reduce"}}})
	b.dress("html { font-size: 200% !important }")
	if wide := ask[int](b, "document.documentElement.scrollWidth"); wide > 320 {
		t.Errorf("with letters of twice the size the step is %d px wide", wide)
	}
	if keys := ask[[]string](b, small); len(keys) > 0 {
		t.Error(keys)
	}
	b.dress("")
	ask[bool](b, "history.back() || true")
	if !b.until(`!document.querySelector(".step-head") && document.activeElement.matches("#step-2 > [data-number]")`) {
		t.Errorf("the browser's own way back leads to %q", ask[string](b, `document.activeElement.outerHTML.slice(0, 80)`))
	}
	ask[bool](b, `document.querySelector("[data-go-on]").click() || true`)
	b.at(2, 15)
	b.strike("Escape")
	if !b.until(`!document.querySelector(".step-head")`) {
		t.Error("Escape does not leave")
	}
}

// TestTimersFollowTheClock starts a timer, and lets the page's clock run.
func TestTimersFollowTheClock(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := phone(t)
	b.visit(h.home + timedLesson + "#step-3")
	// The clock is our own; it goes on over a reload.
	const clock = `(() => { const now = Date.now.bind(Date); Date.now = () => now() + Number(sessionStorage.getItem("ahead") ?? 0); return true })()`
	ask[bool](b, clock)
	b.bench()
	b.at(3, 22)
	b.tap(key("Start 2 minutes"))
	line := `document.querySelector(".step-timers li span").textContent`
	if !b.until(line + `.startsWith("Step 3: 1:5")`) {
		t.Errorf("the timer says %q", ask[string](b, line))
	}
	ask[bool](b, `sessionStorage.setItem("ahead", "100000") || true`)
	if !b.until(line + `.startsWith("Step 3: 0:1")`) {
		t.Errorf("100 seconds later the timer says %q", ask[string](b, line))
	}
	ask[bool](b, `(localStorage.setItem(Object.keys(localStorage)[0], localStorage.getItem(Object.keys(localStorage)[0]).replace(/"end":\d+/, '"end":' + (Date.now() - 200000))), true)`)
	b.reload()
	voice := `document.querySelector(".step-timers [role=status]").textContent`
	if !b.until(voice + ` === "Step 3: 2 minutes over. Look at it: a clock sees no clay."`) {
		t.Errorf("a timer that ended while the page was away is told as %q", ask[string](b, voice))
	}
	b.reload()
	b.at(3, 22)
	if told := ask[string](b, voice); told != "" {
		t.Errorf("it is told again: %q", told)
	}
	b.tap(key("Put away"))
	if !b.until(`!document.querySelector(".step-timers li")`) {
		t.Error("a timer that is over cannot be put away")
	}
}

// TestShineGone asks at a step that waits for it.
func TestShineGone(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := phone(t)
	b.visit(h.home + shinyLesson)
	number := ask[int](b, `[...document.querySelectorAll("[data-step-key]")].findIndex(e => e.matches("[data-until=shine]")) + 1`)
	b.visit(h.home + shinyLesson + "#step-" + strconv.Itoa(number))
	b.bench()
	b.tap(key("Not yet"))
	if !b.until(`document.querySelector(".step-timers li span")?.textContent.startsWith("Step ` + strconv.Itoa(number) + `: 2:5")`) {
		t.Error("Not yet starts no timer")
	}
	b.tap(key("Stop"))
	b.tap(key("Let it run on"))
	if !b.until(`document.querySelector(".step-timers li span")?.textContent.startsWith("Step ` + strconv.Itoa(number) + `: 2:")`) {
		t.Error("a timer that was stopped does not run on")
	}
	b.tap(key("Stop"))
	b.tap(key("Yes"))
	if !b.until(`document.querySelector(".step-now")?.id === "step-` + strconv.Itoa(number+1) + `" && document.querySelector("#step-` + strconv.Itoa(number) + `").matches("[data-done]")`) {
		t.Error("Yes does not tick the step and go on")
	}
}

// TestLessonsNumbersAreTheLessons opens a calculator of a lesson, and types.
func TestLessonsNumbersAreTheLessons(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := phone(t)
	const page = "mixing/coat-by-weight.html"
	b.visit(h.home + page)
	if _, asked := b.heard(); strings.Contains(strings.Join(asked, " "), "calculator") {
		t.Errorf("a folded calculator loads its script: %v", asked)
	}
	whose := `document.querySelector("[data-whose]").firstChild.textContent.trim()`
	b.tap(`document.querySelector("[data-fold] > summary")`)
	b.ready()
	if got := ask[string](b, whose); got != "The lesson’s numbers." {
		t.Errorf("as the lesson has them: %q", got)
	}
	ask[bool](b, `(i => { i.focus(); i.value = "77"; return i.dispatchEvent(new Event("input", {bubbles: true})) })(document.querySelector("[data-fold] [data-input] input"))`)
	const own = "Your own numbers, not the lesson’s."
	if !b.until(whose + " === " + quoted(own)) {
		t.Errorf("once the reader has typed: %q", ask[string](b, whose))
	}
	b.tap(tool("bench"))
	b.until(inBenchMode)
	b.visit("about:blank")
	b.visit(h.home + page)
	if !b.until(inBenchMode + " && " + whose + " === " + quoted(own)) {
		t.Errorf("numbers kept from a visit before are told as %q", ask[string](b, whose))
	}
	b.tap(tool("bench"))
	b.tap(key("Back to the lesson’s"))
	if !b.until(whose + ` === "The lesson’s numbers."`) {
		t.Errorf("back at the lesson’s: %q", ask[string](b, whose))
	}
}
