//go:build judges

package trial

import (
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"slipbook/calculators/catalog"
	engine "slipbook/calculators/form"
	"slipbook/calculators/quantity"
)

// linked is what a form shows when its numbers came with a link.
const linked = "[...document.querySelectorAll('[data-linked]')].some(e => e.checkVisibility())"

func TestAddressRestoresTheForm(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	eachKind(t, func(t *testing.T, c *engine.Calculator) {
		given := newChance(c, s).good(t)
		f := formAt(open(t), h, c)
		f.fill(given, true)
		f.agree(given, s)
		f.addressed(given, s)
		address := ask[string](f.tab, "location.href")

		f.reload()
		f.ready()
		f.agree(given, s)
		if ask[bool](f.tab, linked) {
			t.Error("after a reload the form takes its own numbers for somebody else's")
		}

		other := &form{tab: open(t), calc: c}
		other.visit(address)
		other.ready()
		other.agree(given, s)
		other.stands(given)
		other.clears(s)
	})
}

// addressed waits until the page's address asks for what the form shows: browsers
// are slow to set an address, so the answer goes first.
func (f *form) addressed(given []engine.Setting, s engine.Settings) {
	f.t.Helper()
	if want := catalog.Solve(f.calc.Name, given, s); len(want.Outputs) == 0 {
		f.t.Fatalf("%s: %v has no answer", f.calc.Name, given)
	}
	var name string
	var faults []string
	if !eventually(func() bool {
		var asked []engine.Setting
		name, asked = f.request()
		faults = differences(catalog.Solve(f.calc.Name, asked, s), f.shown())
		return name == f.calc.Name && len(faults) == 0
	}) {
		f.t.Errorf("the address asks for the calculator %q, and not for what was typed:\n%s", name, strings.Join(faults, "\n"))
	}
}

// stands checks that the boxes hold the texts of a request.
func (f *form) stands(given []engine.Setting) {
	f.t.Helper()
	for _, in := range f.calc.Inputs {
		text, _ := textOf(given, in.Name)
		if in.List && !in.Words {
			text = strings.Join(strings.Fields(strings.ReplaceAll(text, ";", " ")), " ")
		}
		if still := ask[string](f.tab, f.boxes(in.Name)+".map(b => b.value).join(' ').trim()"); text != "" && !means(f.t, &in, still, text) {
			f.t.Errorf("%s: the link said %q for %s, the box says %q", f.calc.Name, text, in.Name, still)
		}
	}
}

// means reports whether a box holds what a link said: a choice by its id, layers
// by the names that stand for the same ones, and everything else as written.
func means(t *testing.T, in *engine.Input, still, text string) bool {
	t.Helper()
	for _, c := range in.Choices {
		if strings.EqualFold(text, c.ID) || strings.EqualFold(text, c.Label) {
			return still == c.ID
		}
	}
	if in.Name != "layers" && in.Name != "already" {
		return still == text
	}
	return understood(t, in, still) == understood(t, in, text)
}

// understood returns what a text of rows comes to, as choosers write it, or the
// text where they hold less.
func understood(t *testing.T, in *engine.Input, text string) string {
	t.Helper()
	table := settings(t).Table
	u, err := table.Layers(text)
	if in.Name == "already" {
		_, u, err = table.Coats(text, 0)
	}
	if err != nil || u.Chosen == "" {
		return text
	}
	return u.Chosen
}

// clears checks that a form opened by a link offers to clear it, and does.
func (f *form) clears(s engine.Settings) {
	f.t.Helper()
	if !ask[bool](f.tab, linked) {
		f.t.Errorf("%s: a form filled by a link does not say so", f.calc.Name)
		return
	}
	f.do(chromedp.Click(chromedp.CSS("[data-linked] button")))
	if query := ask[string](f.tab, "location.search"); query != "" {
		f.t.Errorf("%s: cleared, and the address still says %q", f.calc.Name, query)
	}
	if ask[bool](f.tab, linked) {
		f.t.Errorf("%s: cleared, and it still speaks of a link", f.calc.Name)
	}
	for _, in := range f.calc.Inputs {
		if in.Needed && in.Default == "" {
			if still := ask[string](f.tab, f.boxes(in.Name)+".map(b => b.value).join('')"); still != "" {
				f.t.Errorf("%s: cleared, and %s still says %q", f.calc.Name, in.Name, still)
			}
		}
	}
	f.fill(f.calc.Example.Given, false)
	f.agree(f.calc.Example.Given, s)
}

func TestUnitChoosers(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	each(t, func(t *testing.T, c *engine.Calculator) {
		f := formAt(open(t), h, c)
		choices, choosers := 0, 0
		for i, in := range c.Inputs {
			offered := ask[[]string](f.tab, f.boxes(in.Name+".unit")+".flatMap(e => [...e.options].map(o => o.value))")
			if in.Words || len(in.Choices) > 0 {
				continue
			}
			if len(quantity.Units(in.Kind)) > 1 {
				choosers++
			}
			if len(quantity.Units(in.Kind)) > 1 && len(offered) < 2 {
				t.Errorf("%s has no chooser for its units", in.Name)
			}
			for _, unit := range tried(c, i, offered) {
				given := inUnit(c, in, unit, s)
				if len(catalog.Solve(c.Name, given, s).Errors) > 0 {
					continue // an input that the example leaves to its alternative
				}
				choices++
				f.fill(given, true)
				f.agree(given, s)
			}
		}
		if choosers > 3 && choices == 0 {
			t.Error("no unit could be chosen at all")
		}
	})
}

// tried lists the units that a test chooses at an input: all of them at the first of
// its kind in the catalog, one at the others, whose choosers are the same.
func tried(c *engine.Calculator, i int, offered []string) []string {
	for _, other := range catalog.In("en-GB") {
		for j := range other.Inputs {
			if other.Inputs[j].Kind != c.Inputs[i].Kind {
				continue
			}
			if len(offered) == 0 || other.Name == c.Name && j == i {
				return offered
			}
			return offered[i%len(offered):][:1]
		}
	}
	return offered
}

// inUnit returns the example with one input as bare numbers of a chosen unit.
func inUnit(c *engine.Calculator, in engine.Input, unit string, s engine.Settings) []engine.Setting {
	var given []engine.Setting
	for _, g := range c.Example.Given {
		if g.Name != in.Name {
			given = append(given, g)
		}
	}
	factor := 1.0
	for _, u := range quantity.Units(in.Kind) {
		if u.ID == unit {
			factor = u.Factor
		}
	}
	var texts []string
	for _, g := range catalog.Solve(c.Name, c.Example.Given, s).Inputs {
		for _, value := range g.Values {
			if g.Name == in.Name {
				texts = append(texts, strconv.FormatFloat(value/factor, 'f', 4, 64))
			}
		}
	}
	return append(given, engine.Setting{Name: in.Name, Text: strings.Join(texts, " ")}, engine.Setting{Name: in.Name + ".unit", Text: unit})
}

func TestKeyboardOnly(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	eachKind(t, func(t *testing.T, c *engine.Calculator) {
		f := formAt(open(t), h, c)
		ask[bool](f.tab, "window.notReloaded = true")
		reached := map[string]bool{}
		for n := 0; n < 150 && !reachedAll(c, reached); n++ {
			f.do(chromedp.KeyEvent(kb.Tab))
			at := ask[string](f.tab, "document.activeElement.name || document.activeElement.closest('[data-input]')?.dataset.input || ''")
			reached[at] = true
			if text, ok := textOf(c.Example.Given, at); ok && !inList(c, at) {
				f.do(chromedp.KeyEvent("a", chromedp.KeyModifiers(chromedp.ModifierCtrl)), chromedp.KeyEvent(text))
			}
		}
		for _, in := range c.Inputs {
			if in.First && !reached[in.Name] {
				t.Errorf("the key Tab never comes to %s", in.Name)
			}
		}
		if !ask[bool](f.tab, f.boxes(c.Inputs[0].Name)+"[0].focus() || true") {
			t.Fatal("no first box")
		}
		f.fill(c.Example.Given, false)
		f.do(chromedp.KeyEvent(kb.Enter))
		f.agree(c.Example.Given, s)
		if !ask[bool](f.tab, "!!window.notReloaded") {
			t.Error("the key Enter loads the page anew")
		}
	})
}

// reachedAll reports whether the focus came to every box that is there from the
// first.
func reachedAll(c *engine.Calculator, reached map[string]bool) bool {
	for _, in := range c.Inputs {
		if in.First && !reached[in.Name] {
			return false
		}
	}
	return true
}

// inList reports whether an input is a list.
func inList(c *engine.Calculator, name string) bool {
	for _, in := range c.Inputs {
		if in.Name == name {
			return in.List
		}
	}
	return false
}
