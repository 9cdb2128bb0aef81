//go:build judges

package trial

import (
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	engine "slipbook/calculators/form"
)

func itoa(n int) string { return strconv.Itoa(n) }

func ftoa(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// inWindow reports whether the top of an element is in the window.
func inWindow(element string) string {
	return `(r => r.height > 0 && r.top >= -1 && r.top < innerHeight - 24)((` + element + `).getBoundingClientRect())`
}

// answersHead is the first answer in words.
const answersHead = `document.querySelector("[data-head]")`

// TestWorkItOutLeadsToTheAnswer presses the button: the answer comes into the
// window and takes the focus.
func TestWorkItOutLeadsToTheAnswer(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	eachKind(t, func(t *testing.T, c *engine.Calculator) {
		b := phone(t)
		f := formAt(b, h, c)
		b.tap(key("Work it out"))
		if ask[bool](b, "!"+inWindow("document.activeElement")) {
			t.Error("the button, with boxes still to fill, does not lead to the first of them")
		}
		f.fill(c.Example.Given, true)
		f.agree(c.Example.Given, s)
		b.tap(key("Work it out"))
		if !b.until(inWindow(answersHead)) {
			t.Error("“Work it out” does not bring the answer into the window")
		}
		if !ask[bool](b, `document.activeElement === document.querySelector("[data-result]")`) {
			t.Error("the answer does not have the focus")
		}
	})
}

// TestLinkLeadsToTheAnswer opens a friend's link: the answer is in the window,
// and with it what says that the numbers came by a link.
func TestLinkLeadsToTheAnswer(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	eachKind(t, func(t *testing.T, c *engine.Calculator) {
		f := formAt(phone(t), h, c)
		f.fill(c.Example.Given, true)
		f.agree(c.Example.Given, s)
		if !f.until(`location.search.includes("calculator=` + c.Name + `")`) {
			t.Fatal("the address holds no numbers")
		}
		link := ask[string](f.tab, "location.href") + "#calculator.0"
		friend := &form{tab: phone(t), calc: c}
		friend.visit(link)
		friend.ready()
		friend.agree(c.Example.Given, s)
		if !friend.until(inWindow(answersHead)) {
			t.Error("a link does not lead to its answer")
		}
		if !ask[bool](friend.tab, `document.querySelector("[data-result] [data-linked]").checkVisibility()`) {
			t.Error("beside the answer nothing says that its numbers came with a link")
		}
	})
}

// whole wants of an answer, in this order: cautions, the headline, the judgement, the
// figures, and links to what comes next, which fill that form.
func (f *form) whole(answer *engine.Answer) {
	f.t.Helper()
	wanted := append([]string{}, answer.Cautions...)
	wanted = append(wanted, answer.Headline)
	wanted = append(wanted, answer.Judged...)
	for _, r := range answer.Outputs {
		if !f.calc.Output(r.Name).Aside {
			wanted = append(wanted, r.Text)
			break
		}
	}
	for _, n := range answer.Next {
		wanted = append(wanted, n.Words)
	}
	f.unfold()
	said := spaced(ask[string](f.tab, `document.querySelector("[data-result]").innerText`))
	at := 0
	for _, w := range wanted {
		n := after(said, spaced(w), at)
		if n < 0 {
			f.t.Errorf("the answer does not say %q, or in another order:\n%s", w, said)
			continue
		}
		at = n
	}
	f.goesOn(answer.Next)
}

// goesOn follows the links of an answer: each opens a calculator that exists,
// with the numbers in its boxes.
func (f *form) goesOn(next []engine.Onward) {
	f.t.Helper()
	links := ask[[]string](f.tab, `[...document.querySelectorAll("[data-next] a")].map(a => a.href)`)
	if len(links) != len(next) {
		f.t.Fatalf("%s: %d links go on from the answer, want %d", f.calc.Name, len(links), len(next))
	}
	for n, link := range links {
		f.do(chromedp.Navigate(link))
		f.ready()
		if faults := ask[[]string](f.tab, lacking+"("+quoted(next[n].Request)+")"); len(faults) > 0 {
			f.t.Errorf("%s: “%s” leads to a form that lacks %v", f.calc.Name, next[n].Words, faults)
		}
	}
}

// lacking returns what of a request does not stand in the form that it leads to.
// A quantity that is asked for in one unit only has it beside its box.
const lacking = `(text => {
	const request = new URLSearchParams(text)
	const form = document.querySelector('form[data-calculator="' + request.get("calculator") + '"]')
	const stands = (name, value) => [...form.querySelectorAll("[name]")].some(e => e.name === name && e.value === value)
	const beside = (name, value) => name.endsWith(".unit") && !form.elements[name] &&
		form.querySelector('[name="' + name.slice(0, -5) + '"]')?.closest("[data-input]").textContent.includes(value)
	return [...request].filter(([name, value]) => name !== "calculator" && !stands(name, value) && !beside(name, value)).map(pair => pair.join("="))
})`

// spaced is a text with single plain spaces.
func spaced(text string) string { return strings.Join(strings.Fields(text), " ") }

// after returns where a text ends that stands at a place or later; -1 if nowhere.
func after(said, text string, at int) int {
	n := strings.Index(said[at:], text)
	if n < 0 {
		return -1
	}
	return at + n + len(text)
}
