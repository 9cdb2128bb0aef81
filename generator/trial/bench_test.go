//go:build judges

package trial

import (
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"

	"slipbook/calculators/catalog"
	engine "slipbook/calculators/form"
)

// phone makes a tab a phone: narrow, and touched.
func phone(t *testing.T) *tab {
	t.Helper()
	b := open(t)
	b.size(360, 640)
	call(b, emulation.SetTouchEmulationEnabled, emulation.SetTouchEmulationEnabledParams{Enabled: true})
	return b
}

// spot is where a finger lands.
type spot struct {
	X, Y float64
	On   bool // nothing lies over it
}

// tap touches an element with one finger, where it is in sight and large
// enough for a wet one.
func (b *tab) tap(element string) {
	b.t.Helper()
	if !b.until(element) {
		b.t.Fatalf("there is no %s to touch", element)
	}
	at := ask[spot](b, `(e => {
		e.scrollIntoView({block: "center"})
		const r = e.getBoundingClientRect(), x = r.left + r.width / 2, y = r.top + r.height / 2
		return {x, y, on: r.width >= 44 && r.height >= 47.5 && e.contains(document.elementFromPoint(x, y))}
	})(`+element+")")
	if !at.On {
		b.t.Fatalf("%s is covered, or too small for a finger", element)
	}
	ask[bool](b, `(window.tapped = false, document.addEventListener("click", () => { window.tapped = true }, {capture: true, once: true}), true)`)
	point := []*input.TouchPoint{{X: at.X, Y: at.Y}}
	call(b, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: input.DispatchTouchEventTypeTouchStart, TouchPoints: point})
	call(b, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: input.DispatchTouchEventTypeTouchEnd, TouchPoints: []*input.TouchPoint{}})
	// The browser makes a click of a touch a moment later. It may lead to another page.
	if !b.until("window.tapped !== false") {
		b.t.Fatalf("a touch of %s presses nothing", element)
	}
}

// tool is the button of a form that starts one of its tools.
func tool(name string) string { return `document.querySelector("[data-tool=` + name + `]")` }

// key is a button of the page, by its words.
func key(words string) string {
	return `[...document.querySelectorAll("button")].find(b => b.checkVisibility() && b.textContent.trim() === ` + quoted(words) + `)`
}

const inBenchMode = `document.querySelector("[data-tool=bench]").ariaPressed === "true"`

// inSight lists the inputs whose boxes can be seen.
const inSight = `[...document.querySelectorAll("form [data-input]")].filter(e => e.checkVisibility()).map(e => e.dataset.input)`

func TestBenchModeShowsOneThingLarge(t *testing.T) {
	t.Parallel()
	h := published(t)
	eachKind(t, func(t *testing.T, c *engine.Calculator) {
		b := phone(t)
		f := formAt(b, h, c)
		size := `parseFloat(getComputedStyle(document.querySelector("form [data-input]")).fontSize)`
		before := ask[float64](b, size)
		b.tap(tool("bench"))
		if !b.until(inBenchMode) {
			t.Fatal("the switch does not switch")
		}
		if after := ask[float64](b, size); after < 1.2*before {
			t.Errorf("type was %v px and is %v px in bench mode", before, after)
		}
		seen := map[string]bool{}
		for place := 0; ; place++ {
			shown := ask[[]string](b, inSight)
			groups := map[string]bool{}
			for _, name := range shown {
				seen[name] = true
				groups[c.Input(name).Group] = true
			}
			if len(shown) > 1 && (len(groups) > 1 || groups[""]) && !ask[bool](b, `document.querySelector("form").matches(".at-answer")`) {
				t.Errorf("at place %d there are %v in sight at once", place+1, shown)
			}
			for _, fault := range append(append(ask[[]string](b, small), ask[[]string](b, crowded)...), ask[[]string](b, widest)...) {
				t.Errorf("at place %d: %s", place+1, fault)
			}
			if place == 0 || place == 2 {
				f.judged("in bench mode at place %d", place+1)
			}
			if ask[bool](b, key("Next")+`.ariaDisabled === "true"`) {
				break
			}
			b.tap(key("Next"))
		}
		for _, in := range c.Inputs {
			if in.First && !seen[in.Name] {
				t.Errorf("%s is never in sight", in.Name)
			}
		}
		b.tap(tool("bench"))
		if len(ask[[]string](b, inSight)) < len(seen) || ask[bool](b, inBenchMode) {
			t.Error("bench mode does not end")
		}
		if said, _ := b.heard(); len(said) > 0 {
			t.Errorf("on the console: %v", said)
		}
	})
}

func TestBenchModeSteps(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := phone(t)
	f := formAt(b, h, catalog.In("en-GB").Find("slip-density"))
	b.tap(tool("bench"))
	b.until(inBenchMode)
	value := f.boxes("mass") + "[0].value"
	press := func(sign string) { b.tap(key(sign)) }
	for _, tt := range []struct{ typed, sign, want string }{
		{"", "+", "1"}, {"", "−", "0"}, {"0", "−", "0"}, {"212.4", "+", "212.5"}, {"212.4", "−", "212.3"}, {"0.25", "+", "0.26"},
		{"12", "+", "13"}, {"150", "−", "145"}, {"1 745", "+", "1795"}, {"0.3", "−", "0.2"}, {"1,745", "+", "1,745"}, {"2 lb 3 oz", "+", "2 lb 3 oz"},
	} {
		f.typeInto("mass", 0, tt.typed)
		press(tt.sign)
		if got := ask[string](b, value); got != tt.want {
			t.Errorf("%q and %s makes %q, want %q", tt.typed, tt.sign, got, tt.want)
		}
	}
	g := formAt(b, h, catalog.In("en-GB").Find("slip-adjust"))
	b.tap(tool("bench"))
	b.until(inBenchMode)
	for ask[bool](b, "!("+inSight+`.includes("from"))`) {
		b.tap(key("Next"))
	}
	g.typeInto("from", 0, "1.5")
	press("+")
	if got := ask[string](b, g.boxes("from")+"[0].value"); got != "1.51" {
		t.Errorf("a specific gravity of 1.5 and + makes %q, want 1.51", got)
	}
}

// TestBenchModeOpensAtItsTop opens bench mode from far down the page: the step
// begins at the top of the window, with the way out and “Next”, the strong one.
func TestBenchModeOpensAtItsTop(t *testing.T) {
	t.Parallel()
	h := published(t)
	eachKind(t, func(t *testing.T, c *engine.Calculator) {
		b := phone(t)
		formAt(b, h, c)
		if first := ask[string](b, `document.querySelector(".reckon button:not([data-clear], [data-input] *)").dataset.tool`); first != "bench" {
			t.Errorf("the first button is %q", first)
		}
		b.tap(tool("bench"))
		b.until(inBenchMode)
		if !b.until(inWindow(`document.querySelector("form [data-input]")`) + " && " + inWindow(tool("bench"))) {
			t.Error("bench mode opens somewhere else than at the top of its step")
		}
		strong := ask[[]string](b, `[...document.querySelectorAll("button.reckon-go")].filter(e => e.checkVisibility()).map(e => e.textContent)`)
		if len(strong) != 1 || strong[0] != "Next" {
			t.Errorf("the strong buttons of a step are %v", strong)
		}
	})
}

// TestBenchModeWithASheetHasAWayOut scrolls through a sheet in bench mode: what
// ends bench mode stays in sight.
func TestBenchModeWithASheetHasAWayOut(t *testing.T) {
	t.Parallel()
	h := published(t)
	for _, name := range sheets {
		t.Run(name, func(t *testing.T) {
			f := sheetOf(t, h, name)
			f.tap(key("Put the sheet away"))
			f.tap(tool("bench"))
			f.until(inBenchMode)
			for ask[bool](f.tab, key("Next")+`.ariaDisabled !== "true"`) {
				f.tap(key("Next"))
			}
			f.tap(tool("sheet"))
			f.until(sheetLines + ".length > 1")
			for n := range ask[int](f.tab, sheetLines+".length") {
				f.tap(sheetLines + "[" + itoa(n) + `].querySelector("label")`)
				if !ask[bool](f.tab, inWindow(tool("bench"))) {
					t.Errorf("at line %d the way out of bench mode is out of sight", n+1)
				}
			}
			f.judged("with its sheet in bench mode")
			f.tap(tool("bench"))
			if ask[bool](f.tab, inBenchMode) || !ask[bool](f.tab, `document.querySelector("form").checkVisibility()`) {
				t.Error("bench mode does not end, or the boxes do not come back")
			}
		})
	}
}

// TestTheScreensStateInWords wants the switch that keeps the screen awake to
// say whether it does.
func TestTheScreensStateInWords(t *testing.T) {
	t.Parallel()
	f := formAt(phone(t), published(t), catalog.In("en-GB").Find("slip-density"))
	f.fill(f.calc.Example.Given, true)
	f.agree(f.calc.Example.Given, settings(t))
	said := tool("awake") + ".textContent"
	if before := ask[string](f.tab, said); !strings.HasSuffix(before, ": off") {
		t.Errorf("the switch says %q at the start", before)
	}
	ask[bool](f.tab, "(navigator.wakeLock.request = async () => ({release: async () => {}}), true)")
	f.tap(tool("awake"))
	if !f.until(said + `.endsWith(": on")`) {
		t.Errorf("switched on, it says %q", ask[string](f.tab, said))
	}
	f.tap(tool("awake"))
	if !f.until(said + `.endsWith(": off")`) {
		t.Errorf("switched off, it says %q", ask[string](f.tab, said))
	}
}

// lose leaves a page as a phone does that needs its memory, and comes back by
// the page's plain address.
func (f *form) lose(h *handbook) {
	f.t.Helper()
	f.visit("about:blank")
	f.visit(h.home + "calculators/" + f.calc.Name + ".html")
	f.ready()
}

func TestBenchModeThroughAReload(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	eachKind(t, func(t *testing.T, c *engine.Calculator) {
		b := phone(t)
		f := formAt(b, h, c)
		b.tap(tool("bench"))
		b.until(inBenchMode)
		b.tap(key("Next"))
		place := `document.querySelector(".reckon-way [role=status]").textContent`
		at := ask[string](b, place)
		b.tap(tool("bench")) // the boxes are all in sight for the test's fingers
		f.fill(c.Example.Given, true)
		f.agree(c.Example.Given, s)
		b.tap(tool("bench"))
		b.tap(key("Next"))
		for _, again := range []func(){func() { f.reload(); f.ready() }, func() { f.lose(h) }} {
			again()
			f.agree(c.Example.Given, s)
			if !b.until(inBenchMode) {
				t.Fatal("bench mode is over after a reload")
			}
			if now := ask[string](b, place); now != at {
				t.Errorf("it was at %q, and after a reload at %q", at, now)
			}
		}
		// An address with numbers wins over what is kept.
		in := c.Example.Given[0]
		f.visit(h.home + "calculators/" + c.Name + ".html?" + engine.Request(c.Name, []engine.Setting{in}))
		f.ready()
		b.until(inBenchMode)
		_, others := f.request()
		if len(others) > 1 {
			for _, o := range c.Example.Given[1:] {
				if input := c.Input(o.Name); input.Needed && ask[string](b, f.boxes(o.Name)+".map(e => e.value).join('')") != "" {
					t.Errorf("the address gave only %s, and %s is there from before", in.Name, o.Name)
				}
			}
		}
		for ask[bool](b, key("Next")+`.ariaDisabled !== "true"`) {
			b.tap(key("Next"))
		}
		b.tap(key("Start again"))
		f.lose(h)
		if values := f.shown(); len(values) > 0 && c.Input(in.Name).Needed {
			t.Errorf("cleared, and after a reload there is an answer: %v", values)
		}
	})
}

func TestNothingIsKeptWithoutBenchMode(t *testing.T) {
	t.Parallel()
	h := published(t)
	f := formAt(open(t), h, catalog.In("en-GB").Find("wash-mix"))
	f.fill(f.calc.Example.Given, true)
	f.agree(f.calc.Example.Given, settings(t))
	if n := ask[int](f.tab, "localStorage.length"); n != 0 {
		t.Errorf("%d things are kept on the phone, and nobody asked for it", n)
	}
}

// forgetful is a browser that keeps nothing, as private windows and some pages
// opened as files do.
const forgetful = `Object.defineProperty(window, "localStorage", {get() { throw new DOMException("no", "SecurityError") }})`

func TestBenchModeWhereNothingIsKept(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	b := phone(t)
	f := formAt(b, h, catalog.In("en-GB").Find("wash-mix"))
	ask[bool](b, "("+forgetful+", true)")
	f.fill(f.calc.Example.Given, true)
	f.agree(f.calc.Example.Given, s)
	b.tap(tool("bench"))
	if !b.until(inBenchMode) {
		t.Error("no bench mode")
	}
	f.agree(f.calc.Example.Given, s)
	if said, _ := b.heard(); len(said) > 0 {
		t.Errorf("on the console: %v", said)
	}
}
