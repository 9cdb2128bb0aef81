//go:build judges

package trial

import (
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"slipbook/calculators/catalog"
	engine "slipbook/calculators/form"
	"slipbook/calculators/quantity"
)

// typedBoxes are the boxes to type into that are in sight, in order.
const typedBoxes = `[...document.querySelectorAll("form [data-input] input[name]")].filter(e => e.checkVisibility())`

// focused is what has the focus, if it is one of the form's boxes.
const focused = `(e => e.closest("[data-input]") && e.name ? e : null)(document.activeElement)`

// selected reports whether all that stands in the box with the focus is selected.
const selected = `(e => e.selectionStart === 0 && e.selectionEnd === e.value.length)(document.activeElement)`

// nextOnly fills in a form as a phone's keyboard does: a tap into the first
// box, then text and "next" for each box, and nothing else. What a request does
// not name is emptied.
func (f *form) nextOnly(given []engine.Setting) {
	f.t.Helper()
	texts := map[string][]string{}
	for _, in := range f.calc.Inputs {
		text, _ := textOf(given, in.Name)
		texts[in.Name] = []string{text}
		if in.List && !in.Words {
			texts[in.Name] = strings.Fields(strings.ReplaceAll(text, ";", " "))
		}
		if !in.Words && len(in.Choices) == 0 {
			unit, _ := textOf(given, in.Name+".unit")
			f.choose(in.Name, unit)
		}
	}
	first := ask[string](f.tab, typedBoxes+`.find(e => e.closest("[data-rows-most]") === null)?.name ?? ""`)
	if first == "" {
		f.t.Fatalf("%s: there is no box to type into", f.calc.Name)
	}
	controls := `[...document.querySelectorAll("form [data-input] :is(input, select)[name]:not([name$='.unit'])")].filter(e => e.checkVisibility())`
	if ask[bool](f.tab, controls+`[0].localName === "select"`) {
		ask[bool](f.tab, controls+"[0].focus() || true") // a finger would open the phone's own list
	} else {
		f.enter(controls + "[0]")
	}
	for range ask[int](f.tab, controls+".length") {
		for ask[bool](f.tab, `document.activeElement.matches("[data-rows] select")`) {
			f.do(chromedp.KeyEvent(kb.Enter)) // a row of the plan: it is chosen already
		}
		name := ask[string](f.tab, focused+`?.name ?? ""`)
		in := f.calc.Input(name)
		if in == nil {
			f.t.Fatalf("%s: “next” left the boxes before the last, to %q", f.calc.Name, name)
		}
		text := ""
		if rest := texts[name]; len(rest) > 0 {
			text, texts[name] = rest[0], rest[1:]
		}
		switch {
		case len(in.Choices) > 0:
			f.pick("document.activeElement", firstOf(text, in.Default))
		case text == "":
			f.do(chromedp.KeyEvent(kb.Backspace))
		default:
			f.do(chromedp.KeyEvent(text))
		}
		f.do(chromedp.KeyEvent(kb.Enter))
	}
}

// enter touches a box and waits until it has the focus and what is in it is
// selected.
func (f *form) enter(box string) {
	f.t.Helper()
	f.tap(box)
	if !f.until("document.activeElement === " + box) {
		f.t.Fatalf("%s: a finger does not enter %s", f.calc.Name, box)
	}
}

// firstOf returns the first text that is not blank.
func firstOf(texts ...string) string {
	for _, text := range texts {
		if text != "" {
			return text
		}
	}
	return ""
}

// TestNextAlone fills calculators in by "next" alone, then twice more over what
// stands there.
func TestNextAlone(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	eachKind(t, func(t *testing.T, c *engine.Calculator) {
		f := formAt(phone(t), h, c)
		f.unfold()
		next := newChance(c, s)
		for range 3 {
			given := next.short(t)
			if text, layered := textOf(given, "layers"); layered { // chosen, not typed
				f.layers(text)
				coats, _ := textOf(given, "already")
				f.coats(coats)
			}
			f.nextOnly(given)
			f.agree(given, s)
			if !f.until(`document.activeElement === document.querySelector("[data-result]")`) {
				t.Errorf("after the last box “next” does not lead to the answer: %v", given)
			}
		}
	})
}

// short returns the next request whose lists need no more boxes than there are.
func (c *chance) short(t *testing.T) []engine.Setting {
	t.Helper()
	for range 1000 {
		given := c.good(t)
		if !slices.ContainsFunc(given, func(s engine.Setting) bool {
			in := c.calc.Input(s.Name)
			return in != nil && in.List && !in.Words && len(strings.Fields(strings.ReplaceAll(s.Text, ";", " "))) > 3
		}) {
			return given
		}
	}
	t.Fatalf("%s: no short request", c.calc.Name)
	return nil
}

// TestEnteringSelects enters every box by a finger and by the key Tab: what
// stands in it is selected, so that a digit takes its place.
func TestEnteringSelects(t *testing.T) {
	t.Parallel()
	h := published(t)
	eachKind(t, func(t *testing.T, c *engine.Calculator) {
		b := phone(t)
		f := formAt(b, h, c)
		f.fill(c.Example.Given, true)
		f.leave()
		count := ask[int](b, typedBoxes+".length")
		for n := range count {
			box := typedBoxes + "[" + itoa(n) + "]"
			f.enter(box)
			if !b.until(selected) {
				t.Errorf("box %d is entered by a finger, and %q is not selected", n+1, ask[string](b, box+".value"))
			}
		}
		f.leave()
		ask[bool](b, `(e => { e.tabIndex = -1; e.focus(); return true })(document.querySelector("main"))`)
		for n := range count {
			box := typedBoxes + "[" + itoa(n) + "]"
			if !b.tabTo(box, 40) {
				t.Fatalf("the key Tab does not come to box %d", n+1)
			}
			if !ask[bool](b, selected) {
				t.Errorf("box %d is entered by Tab, and %q is not selected", n+1, ask[string](b, box+".value"))
			}
		}
	})
}

// TestSecondClickPutsTheCaret lets a reader mend one digit of a number, and
// go on with one that is half typed after a look into another window.
func TestSecondClickPutsTheCaret(t *testing.T) {
	t.Parallel()
	b := open(t)
	f := formAt(b, published(t), catalog.In("en-GB").Find("slip-density"))
	f.typeInto("mass", 0, "212.4")
	f.leave()
	click := chromedp.Click(chromedp.CSS(f.css() + " [name=mass]"))
	f.do(click)
	if !b.until(selected) {
		t.Fatal("the first click does not select")
	}
	f.do(click)
	const caret = "document.activeElement.selectionStart === document.activeElement.selectionEnd"
	if !b.until(caret) {
		t.Error("a second click selects again: no digit can be mended")
	}
	ask[bool](b, `(e => {
		for (const kind of ["focusout", "focusin"]) e.dispatchEvent(new FocusEvent(kind, {bubbles: true}))
		return true
	})(document.activeElement)`)
	if !ask[bool](b, caret) {
		t.Error("coming back to the window selects what is only half typed")
	}
}

// scolded lists what is said to be wrong on the page.
const scolded = `[...document.querySelectorAll("form .reckon-wrong, form [aria-invalid=true]")].filter(e => e.checkVisibility()).map(e => e.textContent || e.name)`

// TestNothingIsScoldedTooSoon types what cannot be right into the first box
// and goes on: nobody is told off before the boxes that an answer needs have
// been filled and left, and then the message stands at its box.
func TestNothingIsScoldedTooSoon(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	each(t, func(t *testing.T, c *engine.Calculator) {
		f := formAt(phone(t), h, c)
		var first *engine.Input
		for i := range c.Inputs {
			in := &c.Inputs[i]
			if _, given := textOf(c.Example.Given, in.Name); given && first == nil && in.First && len(in.Choices) == 0 && !in.Words {
				first = in
			}
		}
		if first == nil {
			return // nothing is typed here
		}
		f.typeInto(first.Name, 0, "12 bananas")
		f.do(chromedp.KeyEvent(kb.Enter))
		if !f.until(`document.querySelector("[data-headline]").textContent.includes("still to fill")`) || len(ask[[]string](f.tab, scolded)) > 0 {
			needs := catalog.Solve(c.Name, []engine.Setting{{Name: first.Name, Text: "12 bananas"}}, s)
			if len(needs.Errors) > 1 {
				t.Errorf("other boxes are empty, and this is said already: %v", ask[[]string](f.tab, scolded))
			}
		}
		given, _ := with(c.Example.Given, *first, "12 bananas")
		f.fill(given, false)
		f.do(chromedp.KeyEvent(kb.Enter))
		f.leave()
		if !f.until(f.boxes(first.Name) + `.some(box => box.getAttribute("aria-invalid") === "true")`) {
			t.Errorf("everything is filled and left, and nothing is said at %s", first.Name)
		}
	})
}

// TestASlipIsNotScolded types the numbers of a jar: at no moment is a number
// that is only half typed called wrong.
func TestASlipIsNotScolded(t *testing.T) {
	t.Parallel()
	f := formAt(phone(t), published(t), catalog.In("en-GB").Find("slip-density"))
	ask[bool](f.tab, `(() => {
		window.heard = []
		new MutationObserver(() => window.heard.push(...`+scolded+`)).observe(document.querySelector("form"), {subtree: true, childList: true, attributes: true})
		return true
	})()`)
	f.enter(f.boxes("mass") + "[0]")
	for _, text := range []string{"420", "180", "160"} {
		f.do(chromedp.KeyEvent(text), chromedp.KeyEvent(kb.Enter))
	}
	f.agree([]engine.Setting{{Name: "mass", Text: "420"}, {Name: "tare", Text: "180"}, {Name: "volume", Text: "160"}}, settings(t))
	if heard := ask[[]string](f.tab, "window.heard"); len(heard) > 0 {
		t.Errorf("while a jar was typed in, this was said: %q", heard)
	}
	if spoken := ask[string](f.tab, `document.querySelector("form [data-voice]").textContent`); strings.Contains(spoken, "heavier") {
		t.Errorf("and spoken: %q", spoken)
	}
}

// TestOneWrongBar marks the bar that is wrong, and no other.
func TestOneWrongBar(t *testing.T) {
	t.Parallel()
	f := formAt(open(t), published(t), catalog.In("en-GB").Find("shrinkage-test"))
	f.fill(f.calc.Example.Given, true)
	f.agree(f.calc.Example.Given, settings(t))
	for n := range 3 {
		for _, wrong := range []string{"abc", "0", "200"} { // not read, out of range, longer than before
			f.typeInto("dry", n, wrong)
			f.leave()
			marked := ask[[]bool](f.tab, f.boxes("dry")+`.map(e => e.getAttribute("aria-invalid") === "true")`)
			if slices.Index(marked, true) != n || slices.Contains(marked[n+1:], true) {
				t.Errorf("bar %d is %q, and marked are %v", n+1, wrong, marked)
			}
		}
		f.typeInto("dry", n, "94")
	}
}

// TestConstantsStand wants what differs from pot to pot blank at the start, and
// what hardly ever does filled in.
func TestConstantsStand(t *testing.T) {
	t.Parallel()
	h := published(t)
	each(t, func(t *testing.T, c *engine.Calculator) {
		f := formAt(open(t), h, c)
		for _, in := range c.Inputs {
			held := strings.Join(ask[[]string](f.tab, f.boxes(in.Name)+".map(e => e.value)"), "")
			if in.Default == "" && held != "" && len(quantity.Units(in.Kind)) > 0 && len(in.Choices) == 0 {
				t.Errorf("%s holds %q from the start", in.Name, held)
			}
			if in.Default != "" && in.Group == "" && held == "" {
				t.Errorf("%s is a constant, and its box is blank", in.Name)
			}
		}
	})
}
