//go:build judges

package trial

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"slipbook/calculators/catalog"
)

// without is a copy of a handbook in which the scripts of some names are spoilt:
// they are gone, or hold something else.
func (h *handbook) without(t *testing.T, instead string, names ...string) *handbook {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(h.dir)); err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		files, err := filepath.Glob(filepath.Join(dir, "assets", name+"-*.js"))
		if err != nil || len(files) != 1 {
			t.Fatalf("%d scripts are called %s: %v", len(files), name, err)
		}
		if err = os.Remove(files[0]); err == nil && instead != "" {
			err = os.WriteFile(files[0], []byte(instead), 0o666)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	spoilt, err := serve(dir)
	if err != nil {
		t.Fatal(err)
	}
	return spoilt
}

// atTime moves the page's own animations to a time after it was opened, in
// milliseconds, and returns what then stands in place of each calculator: the
// height of its form, and of the words that it has not come.
const atTime = `(ms => {
	document.getAnimations().forEach(a => { a.pause(); a.currentTime = ms })
	return [...document.querySelectorAll(".reckon")].map(e => {
		const words = e.querySelector("[data-late]")
		return {form: e.querySelector("form").getBoundingClientRect().height,
			words: words.checkVisibility({visibilityProperty: true}) && words.innerText.length > 40 ? words.getBoundingClientRect().height : 0}
	})
})`

// openFolds opens the calculators of a lesson.
const openFolds = `(document.querySelectorAll("[data-fold]").forEach(fold => { fold.open = true }), true)`

// stand is what stands in place of a calculator, in CSS pixels.
type stand struct{ Form, Words float64 }

// withDesk lists a page of each kind that has calculators.
func (h *handbook) withDesk(t *testing.T) []string {
	t.Helper()
	pages := []string{"calculators/slip-density.html", "calculators/stage-plan.html", h.one(t, "state")}
	for _, address := range h.all(t, "lesson") {
		if strings.Contains(h.document(t, address).source, "data-calculator=") {
			return append(pages, address)
		}
	}
	t.Fatal("no lesson has a calculator")
	return nil
}

// TestScriptThatNeverComes opens pages whose script is lost on the way, or
// arrives spoilt: within eight seconds each says so, leaves no hole, and keeps
// its example and table.
func TestScriptThatNeverComes(t *testing.T) {
	t.Parallel()
	h := published(t)
	for _, instead := range []string{"", "(", "throw new Error('no')"} {
		names := []string{"calculator", "planner"}
		if instead == "(" {
			names = append(names, "lesson") // which folds calculators, and loads that of calculators
		}
		spoilt := h.without(t, instead, names...)
		tour(t, h.withDesk(t), func(b *tab, address string) {
			b.size(360, 640)
			b.visit(spoilt.home + address)
			ask[bool](b, openFolds)
			before := ask[[]stand](b, atTime+"(4000)")
			after := ask[[]stand](b, atTime+"(8000)")
			if len(after) == 0 {
				b.t.Fatalf("%s: no calculator", address)
			}
			for n := range after {
				if before[n].Words > 0 || after[n].Words < 20 || after[n].Form > 1 {
					b.t.Errorf("%s with a script of %q: before %v, after eight seconds %v", address, instead, before[n], after[n])
				}
			}
			for _, fault := range slices.Concat(b.accessible(), ask[[]string](b, widest)) {
				b.t.Errorf("%s: %s", address, fault)
			}
			if name, own := strings.CutPrefix(strings.TrimSuffix(address, ".html"), "calculators/"); own {
				exampleStands(b.t, b, catalog.In("en-GB").Find(name), settings(b.t))
			}
		})
	}
}

// TestScriptThatComesSaysNothing wants the words of a script that never came to
// be gone once it has.
func TestScriptThatComesSaysNothing(t *testing.T) {
	t.Parallel()
	h := published(t)
	tour(t, h.withDesk(t), func(b *tab, address string) {
		b.visit(h.home + address)
		ask[bool](b, openFolds)
		b.ready()
		if n := ask[int](b, `document.querySelectorAll("[data-late]").length`); n > 0 {
			b.t.Errorf("%s: %d calculators still say that they have not come", address, n)
		}
	})
}

// pressable lists what looks as if it could be pressed or typed into, and does
// nothing without a script.
const pressable = `[...document.querySelectorAll("button, input, select, textarea, [role=button], [contenteditable], [data-late]")]
	.filter(e => e.checkVisibility({visibilityProperty: true})).map(e => e.outerHTML.slice(0, 120))`

// TestNothingIsDeadWithoutScripts wants no page without scripts to show a button
// or a box.
func TestNothingIsDeadWithoutScripts(t *testing.T) {
	t.Parallel()
	h := published(t)
	tour(t, h.toured(), func(b *tab, address string) {
		call(b, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
		b.do(chromedp.Navigate(h.home + address))
		for _, dead := range ask[[]string](b, pressable) {
			b.t.Errorf("%s: dead without a script: %s", address, dead)
		}
	})
}
