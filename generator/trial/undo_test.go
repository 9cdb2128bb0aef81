//go:build judges

package trial

import (
	"slices"
	"testing"

	"github.com/chromedp/chromedp"

	engine "slipbook/calculators/form"
)

// TestStartAgainCanBeUndone empties a form by mistake, twice.
func TestStartAgainCanBeUndone(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	eachKind(t, func(t *testing.T, c *engine.Calculator) {
		given := newChance(c, s).good(t)
		b := phone(t)
		f := formAt(b, h, c)
		f.fill(given, true)
		f.agree(given, s)
		for range 2 {
			b.tap(key("Start again"))
			if !b.until("(" + inWindow(key("Bring my numbers back")) + ") && location.search === ''") {
				t.Fatal("nothing offers to bring the numbers back")
			}
			b.tap(key("Bring my numbers back"))
			f.agree(given, s)
			if ask[bool](b, "!!"+key("Bring my numbers back")) {
				t.Error("the numbers are back, and still offered")
			}
		}
		f.stands(given)
	})
}

// TestTicksComeBack changes a number under a sheet with ticks, and puts the
// sheet away: both can be taken back.
func TestTicksComeBack(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	for _, name := range sheets {
		t.Run(name, func(t *testing.T) {
			f := sheetOf(t, h, name)
			f.tap(sheetLines + `[0].querySelector("label")`)
			f.tap(sheetLines + `[1].querySelector("label")`)
			ticked := func(when string) {
				t.Helper()
				if !f.until(sheetTicks + `.slice(0, 2).every(tick => tick)`) {
					t.Errorf("%s the ticks are %v", when, ask[[]bool](f.tab, sheetTicks))
				}
			}
			f.fill([]engine.Setting{{Name: "people", Text: "3"}}, false)
			f.until(sheetTicks + ".every(tick => !tick)")
			f.tap(key("Back to the amounts I ticked"))
			f.agree(f.calc.Example.Given, s)
			ticked("with the amounts back,")
			if ask[bool](f.tab, "!!"+key("Back to the amounts I ticked")) {
				t.Error("the ticks are there, and still offered")
			}
			f.tap(key("Put the sheet away"))
			if !f.until(inWindow(key("Take it out again"))) {
				t.Fatal("nothing offers the sheet again")
			}
			f.tap(key("Take it out again"))
			ticked("taken out again,")
			f.tap(key("Start again"))
			f.tap(key("Bring my numbers back"))
			ticked("started again and taken back,")
		})
	}
}

// TestANewSheetIsNotTicked opens a sheet anew: what was ticked for another
// batch of the same amounts has not been weighed for this one.
func TestANewSheetIsNotTicked(t *testing.T) {
	t.Parallel()
	f := sheetOf(t, published(t), "wash-mix")
	f.tap(sheetLines + `[0].querySelector("label")`)
	f.tap(key("Put the sheet away"))
	f.tap(tool("sheet"))
	f.until(sheetLines + ".length > 1")
	if ticks := ask[[]bool](f.tab, sheetTicks); slices.Contains(ticks, true) {
		t.Errorf("a new sheet is ticked: %v", ticks)
	}
}

// TestReloadKeepsTheSheetInPlace reloads with a line of the sheet in a place of
// the window: it is there again, with its tick and its number.
func TestReloadKeepsTheSheetInPlace(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	for _, name := range sheets {
		t.Run(name, func(t *testing.T) {
			f := sheetOf(t, h, name)
			f.tap(sheetLines + `[0].querySelector("label")`)
			line := sheetLines + `[1].getBoundingClientRect().top`
			for _, above := range []string{"40", "200"} {
				ask[bool](f.tab, "(scrollBy({top: "+line+" - "+above+`, behavior: "instant"}), true)`)
				before := ask[float64](f.tab, line)
				f.do(chromedp.Reload())
				f.ready()
				f.agree(f.calc.Example.Given, s)
				if !f.until(sheetLines + `.length > 1 && Math.abs(` + line + ` - ` + ftoa(before) + `) < 3`) {
					t.Errorf("the second line was %v px down the window, and after a reload it is at %v", before, ask[float64](f.tab, line))
				}
				if ticks := ask[[]bool](f.tab, sheetTicks); len(ticks) == 0 || !ticks[0] || slices.Contains(ticks[1:], true) {
					t.Errorf("after a reload the ticks are %v", ticks)
				}
			}
			// A new visit comes to the sheet, too.
			f.lose(h)
			f.agree(f.calc.Example.Given, s)
			if !f.until(sheetLines + ".length > 1 && " + inWindow(`document.querySelector(".tally")`)) {
				t.Error("a new visit does not come back to the sheet")
			}
		})
	}
}

// TestReloadKeepsTheAnswerInPlace does so without a sheet.
func TestReloadKeepsTheAnswerInPlace(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	eachKind(t, func(t *testing.T, c *engine.Calculator) {
		f := formAt(phone(t), h, c)
		f.fill(c.Example.Given, true)
		f.agree(c.Example.Given, s)
		f.leave()
		for _, at := range []string{answersHead, `document.querySelector("form [data-input]")`} {
			top := "(" + at + ").getBoundingClientRect().top"
			ask[bool](f.tab, "(scrollBy({top: "+top+` - 60, behavior: "instant"}), true)`)
			before := ask[float64](f.tab, top)
			f.do(chromedp.Reload())
			f.ready()
			f.agree(c.Example.Given, s)
			if !f.until("Math.abs(" + top + " - " + ftoa(before) + ") < 3") {
				t.Errorf("%s was %v px down the window, and after a reload it is at %v", at, before, ask[float64](f.tab, top))
			}
		}
	})
}

// TestExampleIsNotTheReadersOwn wants an example's weights to look like none of
// the reader's.
func TestExampleIsNotTheReadersOwn(t *testing.T) {
	t.Parallel()
	f := sheetOf(t, published(t), "slip-batch")
	look := func(of string) string {
		return ask[string](f.tab, `(s => [s.fontSize, s.fontStyle, s.fontFamily].join("; "))(getComputedStyle(document.querySelector(`+quoted(of)+`)))`)
	}
	mine := []string{look("[data-head]"), look(".tally-lines b"), look("[data-answers] dd"), look(".tally-case")}
	for _, of := range []string{".reckon-example .reckon-said", ".reckon-example dd", ".reckon-example p"} {
		if slices.Contains(mine, look(of)) {
			t.Errorf("%s looks like the reader's own: %s", of, look(of))
		}
	}
}
