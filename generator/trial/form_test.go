//go:build judges

package trial

import (
	"cmp"
	"fmt"
	"net/url"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp/kb"

	"slipbook/calculators/catalog"
	engine "slipbook/calculators/form"
	"slipbook/calculators/quantity"
	"slipbook/calculators/stage"
)

// form is one calculator's form on the page in a tab.
type form struct {
	*tab
	calc *engine.Calculator
	slow bool   // type key by key
	last string // the first number of the last good answer, in words
}

// formAt opens the page of a calculator.
func formAt(b *tab, h *handbook, c *engine.Calculator) *form {
	b.t.Helper()
	b.visit(h.home + "calculators/" + c.Name + ".html")
	f := &form{tab: b, calc: c}
	b.ready()
	return f
}

// settled reports whether every calculator of the page has its engine: then it is
// no longer busy, and answers, or says what is wrong or still to be filled in. One that
// is folded in a lesson begins when it is opened.
const settled = `[...document.querySelectorAll("form[data-calculator]")].filter(form => !form.closest("[data-fold]:not([open])")).every(form => form.ariaBusy !== "true" &&
	[...form.querySelectorAll("[data-headline], .reckon-wrong")].some(e => e.textContent.trim() !== ""))`

// ready waits until the calculators of the page can calculate.
func (b *tab) ready() {
	b.t.Helper()
	if !b.until(settled) {
		said, _ := b.heard()
		b.t.Fatalf("the calculators of %s never became ready: %v", ask[string](b, "location.href"), said)
	}
}

// unfold opens everything that is folded away on a page.
func (b *tab) unfold() {
	b.t.Helper()
	ask[bool](b, "document.querySelectorAll('details').forEach(d => { d.open = true }) || true")
}

// css selects the form.
func (f *form) css() string { return `form[data-calculator="` + f.calc.Name + `"]` }

// boxes is a JavaScript expression for the controls of one input.
func (f *form) boxes(input string) string {
	named := `[name="` + input + `"]`
	return "[...document.querySelectorAll(" + quoted(f.css()+" input"+named+", "+f.css()+" select"+named) + ")]"
}

// typeInto types into the n-th box of an input over what is there: key by key
// if slow, else at once, as a keyboard that completes words does.
func (f *form) typeInto(name string, n int, text string) {
	f.t.Helper()
	box := fmt.Sprintf("%s[%d]", f.boxes(name), n)
	if in := f.calc.Input(name); len(in.Choices) > 0 {
		f.pick(box, cmp.Or(text, in.Default))
		return
	}
	if !ask[bool](f.tab, "(box => { if (!box) return false; box.focus(); box.select(); return document.activeElement === box })("+box+")") {
		f.t.Fatalf("%s: box %d of %s is missing or cannot be typed into", f.calc.Name, n+1, name)
	}
	switch {
	case text == "" && ask[string](f.tab, box+".value") == "":
	case text == "":
		f.keys(kb.Backspace)
	case f.slow || f.driver != nil:
		f.keys(text)
	default:
		call(f.tab, input.InsertText, input.InsertTextParams{Text: text})
	}
}

// pick chooses one option of a chooser, by its value or its words.
func (f *form) pick(chooser, option string) {
	f.t.Helper()
	ok := ask[bool](f.tab, `((chooser, option) => {
		const same = text => text.toLowerCase() === option.toLowerCase()
		const at = [...chooser.options].findIndex(o => same(o.value) || same(o.text))
		if (at < 0) return false
		chooser.focus()
		chooser.selectedIndex = at
		for (const event of ["input", "change"]) chooser.dispatchEvent(new Event(event, {bubbles: true}))
		return true
	})(`+chooser+", "+quoted(option)+")")
	if !ok {
		f.t.Fatalf("%s: %s offers no %q", f.calc.Name, chooser, option)
	}
}

// rows are the rows of choosers that stand for the layers of a plan, and coats
// those for what is on the pot already.
const (
	rows  = `document.querySelectorAll("[data-input=layers] li")`
	coats = `document.querySelectorAll("[data-input=already] li")`
)

// layers chooses the layers that a text names, a row for each.
func (f *form) layers(text string) {
	f.t.Helper()
	table := settings(f.t).Table
	understood, err := table.Layers(text)
	if err != nil {
		f.t.Fatal(err)
	}
	f.rowsFor("layers", rows, max(1, len(understood.Layers)))
	for n, layer := range understood.Layers {
		row := fmt.Sprintf("%s[%d]", rows, n)
		medium := stage.BareClay
		if layer.Medium >= 0 {
			medium = table.Media[layer.Medium].Name
		}
		f.pick(row+".querySelector('select')", medium)
		ways := row + ".querySelectorAll('[data-way]')"
		for ask[string](f.tab, ways+"[0].value") != "" {
			f.pick(ways+"[0]", "")
		}
		for m, q := range layer.Ways {
			f.pick(fmt.Sprintf("%s[%d]", ways, m), stage.Tellable(table.Techniques[q].Name))
		}
	}
}

// coats chooses what is on the pot already, a row for each.
func (f *form) coats(text string) {
	f.t.Helper()
	_, understood, err := settings(f.t).Table.Coats(text, 0)
	if err != nil || text != "" && understood.Chosen == "" {
		f.t.Fatalf("no choosers hold %q: %v", text, err)
	}
	var wanted []string
	if text != "" {
		wanted = strings.Split(understood.Chosen, ", ")
	}
	f.rowsFor("already", coats, len(wanted))
	for n, coat := range wanted {
		row := fmt.Sprintf("%s[%d]", coats, n)
		fixed := ""
		for _, said := range []string{stage.SaidFixed, stage.SaidLoose} {
			if medium, is := strings.CutSuffix(coat, " "+said); is {
				coat, fixed = medium, said
			}
		}
		f.pick(row+".querySelector('select')", coat)
		f.pick(row+".querySelector('[data-fixed]')", fixed)
	}
}

// rowsFor adds rows to an input, or takes some away.
func (f *form) rowsFor(input, rows string, wanted int) {
	f.t.Helper()
	press := func(what string) {
		ask[bool](f.tab, "document.querySelector('[data-input="+input+"] ["+what+"]').click() || true")
	}
	for n := ask[int](f.tab, rows+".length"); n > wanted; n-- {
		press("data-less")
	}
	for n := ask[int](f.tab, rows+".length"); n < wanted; n++ {
		press("data-more")
	}
	if got := ask[int](f.tab, rows+".length"); got != wanted {
		f.t.Fatalf("%s has %d rows, want %d", input, got, wanted)
	}
}

// count returns how many boxes an input has.
func (f *form) count(input string) int {
	f.t.Helper()
	return ask[int](f.tab, f.boxes(input)+".length")
}

// held returns what stands in the boxes of each input.
func (f *form) held() map[string][]string {
	f.t.Helper()
	return ask[map[string][]string](f.tab, `(held => {
		for (const box of document.querySelectorAll(`+quoted(f.css()+" :is(input, select)[name]")+`)) (held[box.name] ??= []).push(box.value)
		return held
	})({})`)
}

// fill types a request into the form, wherever something else stands. Boxes
// that the request does not name are left as they are, or emptied.
func (f *form) fill(given []engine.Setting, emptyOthers bool) {
	f.t.Helper()
	f.unfold()
	held := f.held()
	for _, in := range f.calc.Inputs {
		text, named := textOf(given, in.Name)
		if !named && !emptyOthers {
			continue
		}
		switch in.Name {
		case "layers":
			f.layers(text)
			continue
		case "already":
			f.coats(text)
			continue
		}
		texts := []string{text}
		if in.List && !in.Words {
			texts = strings.Fields(strings.ReplaceAll(text, ";", " "))
		}
		for n := range max(len(texts), len(held[in.Name])) {
			text, before := "", ""
			if n < len(texts) {
				text = texts[n]
			}
			if n < len(held[in.Name]) {
				before = held[in.Name][n]
			} else {
				f.another(in.Name)
			}
			if text != before {
				f.typeInto(in.Name, n, text)
			}
		}
		unit, _ := textOf(given, in.Name+".unit")
		f.choose(in.Name, unit)
	}
}

// choose sets the unit of an input; the first one for none.
func (f *form) choose(input, unit string) {
	f.t.Helper()
	chooser := f.boxes(input+".unit") + "[0]"
	ok := ask[bool](f.tab, `((chooser, unit, only) => {
		if (!chooser) return unit === "" || unit === only
		const before = chooser.value
		chooser.value = unit || chooser.options[0].value
		if (chooser.value !== before) for (const event of ["input", "change"]) chooser.dispatchEvent(new Event(event, {bubbles: true}))
		return unit === "" || chooser.value === unit
	})(`+chooser+", "+quoted(unit)+", "+quoted(f.onlyUnit(input))+")")
	if !ok {
		f.t.Errorf("%s: %s cannot be given in %q", f.calc.Name, input, unit)
	}
}

// onlyUnit returns the unit of an input that offers no other; else "".
func (f *form) onlyUnit(input string) string {
	for _, in := range f.calc.Inputs {
		if units := quantity.Units(in.Kind); in.Name == input && len(units) == 1 {
			return units[0].ID
		}
	}
	return ""
}

// leave takes the finger out of the form, as one does to read the answer.
func (f *form) leave() {
	f.t.Helper()
	ask[bool](f.tab, "document.activeElement.blur() || true")
}

// another asks the form for one more box of a list.
func (f *form) another(input string) {
	f.t.Helper()
	before := f.count(input)
	ask[bool](f.tab, "(box => { box.closest('[data-input]').querySelector('[data-add]').click(); return true })("+f.boxes(input)+"[0])")
	if f.count(input) != before+1 {
		f.t.Fatalf("%s: no button gives %s another box", f.calc.Name, input)
	}
}

// textOf returns the text of an input in a request.
func textOf(given []engine.Setting, input string) (string, bool) {
	for _, s := range given {
		if s.Name == input {
			return s.Text, true
		}
	}
	return "", false
}

// shown returns the values of the answers in the form, by output; outputs that
// show nothing are left out.
func (f *form) shown() map[string]string {
	f.t.Helper()
	return ask[map[string]string](f.tab, `Object.fromEntries([...document.querySelectorAll("main output")]
		.filter(o => o.querySelector("data")).map(o => [o.name, o.querySelector("data").value]))`)
}

// agree waits until the form shows exactly the native answer to a request.
func (f *form) agree(given []engine.Setting, s engine.Settings) {
	f.t.Helper()
	want := catalog.Solve(f.calc.Name, given, s)
	var faults []string
	if eventually(func() bool { faults = differences(want, f.shown()); return len(faults) == 0 }) {
		if len(want.Outputs) > 0 {
			f.last = want.Outputs[0].Text
		}
		return
	}
	f.t.Errorf("%s with %v: the page does not show what the same code answers natively:\n%s", f.calc.Name, given, strings.Join(faults, "\n"))
}

// differences compares shown values with an answer, to the last bit.
func differences(want *engine.Answer, shown map[string]string) []string {
	var faults []string
	for _, r := range want.Outputs {
		text, ok := shown[r.Name]
		value, err := strconv.ParseFloat(text, 64)
		if r.IsText && text == r.Text {
			delete(shown, r.Name)
			continue
		}
		if !ok || err != nil || value != r.Value {
			faults = append(faults, fmt.Sprintf("  %s shows %q, the answer is %v", r.Name, text, r.Value))
		}
		delete(shown, r.Name)
	}
	for name, text := range shown {
		faults = append(faults, fmt.Sprintf("  %s shows %q, there is no such answer", name, text))
	}
	return faults
}

// shows reports whether a page's words hold a text: as whole words and numbers,
// however the lines are broken.
func shows(words, text string) bool {
	words, text = " "+strings.Join(strings.Fields(words), " ")+" ", strings.Join(strings.Fields(text), " ")
	for at := 0; ; at++ {
		n := strings.Index(words[at:], text)
		if n < 0 {
			return false
		}
		at += n
		if !partOfNumber.MatchString(words[:at]) && !restOfNumber.MatchString(words[at+len(text):]) {
			return true
		}
	}
}

// What stands before or after a number that is only a part of another.
var (
	partOfNumber = regexp.MustCompile(`[0-9][.,]?$`)
	restOfNumber = regexp.MustCompile(`^[.,]?[0-9]`)
)

// request reads the request out of the page's address.
func (f *form) request() (calculator string, given []engine.Setting) {
	f.t.Helper()
	u, err := url.Parse(ask[string](f.tab, "location.href"))
	if err != nil {
		f.t.Fatal(err)
	}
	for pair := range strings.SplitSeq(u.RawQuery, "&") {
		name, text, _ := strings.Cut(pair, "=")
		name, _ = url.QueryUnescape(name)
		text, _ = url.QueryUnescape(text)
		if name == "calculator" {
			calculator = text
		} else if name != "" {
			given = append(given, engine.Setting{Name: name, Text: text})
		}
	}
	return calculator, given
}

// each runs a test on every calculator of the catalog, as many at once as there
// are processors.
func each(t *testing.T, test func(t *testing.T, c *engine.Calculator)) {
	all := catalog.In("en-GB")
	if len(all) < 6 {
		t.Fatalf("the catalog has %d calculators", len(all))
	}
	inTurn(t, all, test)
}

// inTurn runs a test on calculators, each as a test of its own.
func inTurn(t *testing.T, all []*engine.Calculator, test func(t *testing.T, c *engine.Calculator)) {
	for _, c := range all {
		t.Run(c.Name, func(t *testing.T) {
			t.Parallel()
			test(t, c)
		})
	}
}
