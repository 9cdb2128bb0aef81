//go:build judges

package trial

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"slipbook/calculators/catalog"
	engine "slipbook/calculators/form"
	"slipbook/calculators/stage"
)

// TestExampleTypedByAStudent types each example key by key: the answer comes, says all
// that it has to say, in order, and leads on.
func TestExampleTypedByAStudent(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	each(t, func(t *testing.T, c *engine.Calculator) {
		f := formAt(open(t), h, c)
		f.slow = true
		f.fill(c.Example.Given, false)
		f.agree(c.Example.Given, s)
		if said, _ := f.heard(); len(said) > 0 {
			t.Errorf("on the console: %v", said)
		}
		answer := catalog.Solve(c.Name, c.Example.Given, s)
		f.says(answer)
		f.whole(answer)
	})
}

// offTheSheet lists words of drawings that do not fit on the sheet they are drawn on.
const offTheSheet = `[...document.querySelectorAll("svg.drawing text")].filter(text => text.checkVisibility()).flatMap(text => {
	const box = text.getBBox(), sheet = text.ownerSVGElement.viewBox.baseVal
	const fits = box.x >= sheet.x && box.y >= sheet.y && box.x + box.width <= sheet.x + sheet.width && box.y + box.height <= sheet.y + sheet.height
	return fits ? [] : [` + "`“${text.textContent}” is drawn from ${Math.round(box.x)}, ${Math.round(box.y)} to ${Math.round(box.x + box.width)}, ${Math.round(box.y + box.height)} on a sheet of ${sheet.width} × ${sheet.height}`" + `]
})`

func TestChanceCasesTyped(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	each(t, func(t *testing.T, c *engine.Calculator) {
		next := newChance(c, s)
		f := formAt(open(t), h, c)
		for n := range 3 {
			f.slow = n == 0
			given := next.good(t)
			f.fill(given, true)
			f.agree(given, s)
			for _, fault := range ask[[]string](f.tab, offTheSheet) {
				t.Errorf("%v: %s", given, fault)
			}
		}
	})
}

// says wants every word of an answer on the page.
func (f *form) says(answer *engine.Answer) {
	f.t.Helper()
	said := ask[string](f.tab, "document.querySelector('main').innerText")
	wanted := append([]string{answer.Headline}, append(answer.Notes, answer.Cautions...)...)
	for _, r := range answer.Outputs {
		wanted = append(wanted, r.Text)
	}
	for _, r := range answer.Rows {
		wanted = append(wanted, wordsOf(f.calc, r)...)
	}
	for _, p := range answer.Read {
		wanted = append(wanted, p.Text)
	}
	for _, w := range wanted {
		if !shows(said, w) {
			f.t.Errorf("the page does not show %q", w)
		}
	}
	if answer.Drawing != "" && !ask[bool](f.tab, "!!document.querySelector("+quoted("[data-drawing] svg")+")") {
		f.t.Error("the answer's drawing is not shown")
	}
}

// wordsOf returns what a row of an answer has to show. The steps of a plan are
// numbered by their list, lead to a lesson by a link, and say who does them
// where there is anything to take care of.
func wordsOf(c *engine.Calculator, row []engine.Cell) []string {
	var words []string
	care := false
	for _, cell := range row {
		care = care || cell.Text != "" && slices.Contains([]string{"wear", "place", "caution"}, cell.Column)
		switch {
		case c.Name == "stage-plan" && slices.Contains([]string{"step", "action", "lesson", "who"}, cell.Column):
			if cell.Column == "who" && (care || cell.Text != catalog.Doer("en-GB", stage.Student)) {
				words = append(words, cell.Text)
			}
		default:
			words = append(words, cell.Text)
		}
	}
	return words
}

// bad are things typed into a box of numbers that no calculator may swallow.
var bad = []string{"abc", "-5", "1e400", "NaN", "3 bananas", "1,234"}

func TestBadInputAtItsBox(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	each(t, func(t *testing.T, c *engine.Calculator) {
		f := formAt(open(t), h, c)
		f.fill(c.Example.Given, true)
		f.agree(c.Example.Given, s)
		refusals, numbers := 0, 0
		for _, in := range c.Inputs {
			if in.Words || in.Bodies || len(in.Choices) > 0 {
				continue
			}
			numbers++
			for n, text := range bad {
				if numbers > 1 && (n+numbers)%3 != 0 {
					continue // all boxes are read alike: the first gets all, the others two each
				}
				given, inBox := with(c.Example.Given, in, text)
				want := catalog.Solve(c.Name, given, s)
				if len(want.Errors) == 0 || in.List && strings.Contains(text, " ") {
					continue // "-5" may be a good number for some
				}
				refusals++
				before, _, _ := strings.Cut(ask[string](f.tab, f.boxes(in.Name)+".map(b => b.value).join('|')"), "|")
				f.typeInto(in.Name, 0, text)
				f.leave()
				f.refused(in.Name, text, inBox, want)
				if refusals == 1 {
					f.judged("with %q at %s", text, in.Name)
				}
				f.typeInto(in.Name, 0, before)
				f.agree(c.Example.Given, s)
			}
		}
		if numbers > 0 && refusals < 5 {
			t.Errorf("only %d of the bad inputs were refused", refusals)
		}
	})
}

// judged lets axe judge the page as it stands.
func (f *form) judged(when string, details ...any) {
	f.t.Helper()
	for _, fault := range f.accessible() {
		f.t.Errorf(f.calc.Name+" "+when+": %s", append(details, fault)...)
	}
}

// with returns a request with the first value of one input changed to a text,
// and all that then stands in that input.
func with(given []engine.Setting, in engine.Input, text string) (changed []engine.Setting, all string) {
	all = text
	for _, s := range given {
		if s.Name != in.Name {
			changed = append(changed, s)
		} else if _, others, more := strings.Cut(s.Text, " "); in.List && more {
			all = text + " " + others
		}
	}
	return append(changed, engine.Setting{Name: in.Name, Text: all}), all
}

// refused checks that a refusal stands at its boxes, that what was typed stays
// and that no answer remains.
func (f *form) refused(input, typed, all string, want *engine.Answer) {
	f.t.Helper()
	for _, e := range want.Errors {
		first := f.boxes(e.Input) + "[0]"
		said := "(box => (box.getAttribute('aria-describedby') || '').split(/\\s+/).map(id => document.getElementById(id)?.innerText || '').join(' '))(" + first + ")"
		if !f.until(first + "?.getAttribute('aria-invalid') === 'true'") {
			f.t.Errorf("%s with %q at %s: the box %s is not marked as invalid (%s)", f.calc.Name, typed, input, e.Input, e.Text)
			continue
		}
		if words := ask[string](f.tab, said); !shows(words, e.Text) {
			f.t.Errorf("%s with %q at %s: at the box %s stands %q, want %q", f.calc.Name, typed, input, e.Input, words, e.Text)
		}
	}
	if still := ask[string](f.tab, f.boxes(input)+".map(b => b.value).join(' ').trim()"); still != all {
		f.t.Errorf("%s: %q was typed at %s, and now it says %q", f.calc.Name, all, input, still)
	}
	words := strings.TrimSpace(ask[string](f.tab, "document.querySelector('[data-headline]').innerText"))
	if !shows(words, f.last) || strings.HasSuffix(words, " for") {
		f.t.Errorf("%s with %q at %s: what was before (%s) is not told, or not in whole words: %q", f.calc.Name, typed, input, f.last, words)
	}
	if shown := f.shown(); len(shown) > 0 {
		f.t.Errorf("%s with %q at %s: refused, and the old answers are still there: %v", f.calc.Name, typed, input, shown)
	}
}

// listen counts how often the form speaks to a screen reader.
const listen = `(() => {
	window.spoken = []
	const voice = document.querySelector("form [data-voice]")
	new MutationObserver(() => { window.spoken.push(voice.textContent) }).observe(voice, {childList: true, characterData: true, subtree: true})
	return true
})()`

// holdPauses keeps the page from ending a pause of its own accord: what it wants
// to do after one waits until the test says so, however long a busy machine
// takes from key to key.
const holdPauses = `(() => {
	const set = window.setTimeout, clear = window.clearTimeout, held = new Map()
	let last = 1e9
	window.setTimeout = (then, wait, ...more) => {
		if (!(wait >= 300)) return set(then, wait, ...more)
		held.set(++last, () => then(...more))
		return last
	}
	window.clearTimeout = id => { if (!held.delete(id)) clear(id) }
	window.endPauses = () => {
		for (let n = 0; held.size > 0 && n < 20; n++) for (const [id, then] of [...held]) if (held.delete(id)) then()
		return held.size === 0
	}
	return true
})()`

// numberOf is the first number of an example with which the answer in words changes
// when it is one more: the same answer again would be nothing to speak of.
func numberOf(t *testing.T, c *engine.Calculator) (input, other string) {
	base := catalog.Solve(c.Name, c.Example.Given, settings(t)).Headline
	for i, s := range c.Example.Given {
		first, rest, _ := strings.Cut(s.Text, " ")
		n, err := strconv.ParseFloat(first, 64)
		if err != nil {
			continue
		}
		more := strconv.FormatFloat(n+1, 'f', -1, 64)
		given := slices.Clone(c.Example.Given)
		given[i].Text = strings.TrimSpace(more + " " + rest)
		if catalog.Solve(c.Name, given, settings(t)).Headline != base {
			return s.Name, more
		}
	}
	first := c.Input(c.Example.Given[0].Name)
	for _, choice := range first.Choices {
		if choice.ID != c.Example.Given[0].Text {
			return first.Name, choice.ID
		}
	}
	t.Fatalf("%s has an example without a number or a choice", c.Name)
	return "", ""
}

func TestAnswerIsSpokenOnce(t *testing.T) {
	t.Parallel()
	h := published(t)
	eachKind(t, func(t *testing.T, c *engine.Calculator) {
		f := formAt(open(t), h, c)
		f.fill(c.Example.Given, true)
		f.leave()
		f.slow = true
		ask[bool](f.tab, listen)
		ask[bool](f.tab, holdPauses)
		input, text := numberOf(t, c)
		f.typeInto(input, 0, text)
		if early := ask[[]string](f.tab, "window.spoken"); len(early) > 0 {
			t.Errorf("while somebody types, this is said: %q", early)
		}
		if !ask[bool](f.tab, "window.endPauses()") {
			t.Error("pauses follow pauses without end")
		}
		if !f.until("window.spoken.length > 0") {
			t.Error("nothing is said after the last key")
		}
		if spoken := ask[[]string](f.tab, "window.spoken"); len(spoken) != 1 || strings.TrimSpace(spoken[0]) == "" {
			t.Errorf("after one number was typed, this was said: %q; want one sentence, once", spoken)
		}
	})
}
