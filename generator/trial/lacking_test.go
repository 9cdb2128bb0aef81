//go:build judges

package trial

import (
	"testing"

	"github.com/chromedp/cdproto/page"

	"slipbook/calculators/catalog"
)

// TestFeaturesTakenAway takes from the browser, before the page loads, what older ones do
// not have, and wants the page to go on, or to say why not.
func TestFeaturesTakenAway(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	for _, lack := range []struct {
		name, without string
		answers       bool
		shows         string // what must come to be true besides; empty: nothing
	}{
		{"DecompressionStream", "delete window.DecompressionStream", false,
			"[...document.querySelectorAll('[data-failed]')].some(e => e.checkVisibility() && e.innerText.trim().length > 20)"},
		{"WebAssembly", "delete window.WebAssembly", false,
			"[...document.querySelectorAll('[data-failed]')].some(e => e.checkVisibility() && e.innerText.trim().length > 20)"},
		{"storage", `Object.defineProperty(window, "localStorage", {get() { throw new DOMException("no", "SecurityError") }})`, true, ""},
		{"idle callbacks, wake lock, cloning", `delete window.requestIdleCallback; delete Navigator.prototype.wakeLock; delete window.structuredClone; delete Array.prototype.findLast; delete URLSearchParams.prototype.size`, true,
			`[...document.querySelectorAll("[data-tool=awake]")].every(e => !e.checkVisibility())`},
		{"role and aria by property", `for (const name of Object.getOwnPropertyNames(Element.prototype)) if (/^(role|aria[A-Z])/.test(name)) delete Element.prototype[name]`, true,
			`document.querySelector("[data-voice]") !== null && document.querySelector("[data-tool=bench]").getAttribute("aria-pressed") === "false"`},
		{"clipboard", "delete Navigator.prototype.clipboard", true,
			`(document.querySelector("[data-tool=copy]").click(), document.querySelector("[data-by-hand]").checkVisibility() && document.querySelector("[data-by-hand] input").value.includes("slip-density"))`},
	} {
		t.Run(lack.name, func(t *testing.T) {
			b := open(t)
			made := call(b, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: lack.without})
			t.Cleanup(func() {
				call(b, page.RemoveScriptToEvaluateOnNewDocument, page.RemoveScriptToEvaluateOnNewDocumentParams(made))
			})
			c := catalog.In("en-GB").Find("slip-density")
			b.visit(h.home + "calculators/" + c.Name + ".html")
			if lack.answers {
				f := &form{tab: b, calc: c}
				if !b.until(`document.querySelector("form[data-calculator]").getAttribute("aria-busy") !== "true"`) {
					t.Fatal("the calculator never comes")
				}
				f.fill(c.Example.Given, false)
				f.agree(c.Example.Given, s)
			} else {
				exampleStands(t, b, c, s)
			}
			if lack.shows != "" && !b.until(lack.shows) {
				t.Errorf("it never comes true: %s", lack.shows)
			}
		})
	}
}
