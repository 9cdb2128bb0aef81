//go:build judges

package trial

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"slipbook/calculators/catalog"
)

// unpackOld writes the program of Chromium 103, which npm carries packed.
const unpackOld = `const fs = require("fs"), zlib = require("zlib")
fs.writeFileSync(process.argv[2], zlib.brotliDecompressSync(fs.readFileSync(process.argv[1])), {mode: 0o755})`

// inOldPage is what the trial itself asks of pages, and Chromium 103 does not know.
const inOldPage = `Element.prototype.checkVisibility ??= function (how) {
	return this.getClientRects().length > 0 && (!how?.visibilityProperty || getComputedStyle(this).visibility === "visible")
}`

// openOld opens a page in Chromium 103 of June 2022, the oldest that the handbook's
// scripts are written for.
func openOld(t *testing.T) *tab {
	t.Helper()
	program := filepath.Join(t.TempDir(), "chromium-103")
	packed := root + "/testdata/node_modules/@sparticuz/chromium/bin/chromium.br"
	if said, err := exec.Command("node", "-e", unpackOld, packed, program).CombinedOutput(); err != nil {
		t.Fatalf("an engine to judge with is missing: %v\n%s", err, said)
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(program), chromedp.DisableGPU,
		chromedp.Flag("headless", true), chromedp.Flag("no-zygote", true), chromedp.Flag("in-process-gpu", true),
		chromedp.Flag("disable-software-rasterizer", true))
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	ctx, stop := context.WithTimeout(context.Background(), patienceForTab)
	t.Cleanup(stop)
	ctx, end := chromedp.NewExecAllocator(ctx, options...)
	t.Cleanup(end)
	ctx, leave := chromedp.NewContext(ctx)
	t.Cleanup(leave)
	b := &tab{t: t, ctx: ctx}
	if err := chromedp.Do(ctx); err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Listen(ctx, b.hear); err != nil {
		t.Fatal(err)
	}
	call(b, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: inOldPage})
	return b
}

// TestOldestEngine makes the journeys in the oldest engine that the README names.
func TestOldestEngine(t *testing.T) {
	t.Parallel()
	h, s, o := published(t), settings(t), outpostOf(t)
	b := openOld(t)
	b.size(360, 740)
	b.visit(h.home + "index.html")
	if agent := ask[string](b, "navigator.userAgent"); !strings.Contains(agent, "Chrome/103.") || ask[bool](b, `CSS.supports("selector(:has(a))")`) {
		t.Fatalf("the old engine is %s", agent)
	}
	b.findsALesson(h)
	b.worksStepByStep(h)
	b.fillsIn(h, s)
	b.benchInTheOldest(h)
	b.keepAll(o.home + "index.html")
	o.close()
	b.looksUp(o)
	b.calculatesWithoutANetwork(o, s)
	if said, _ := b.heard(); len(said) > 0 {
		t.Errorf("on the console: %q", said)
	}
}

// benchInTheOldest has a calculator fill the window, and ticks a line of a mixing sheet.
func (b *tab) benchInTheOldest(h *handbook) {
	b.t.Helper()
	f := formAt(b, h, catalog.In("en-GB").Find("slip-batch"))
	f.fill(f.calc.Example.Given, false)
	b.goTo(tool("bench"))
	if !b.until(inBenchMode + ` && !document.querySelector(".foot").checkVisibility() && document.querySelector(".reckon-bench input").checkVisibility()`) {
		b.t.Error("in bench mode the page around the calculator stands there still")
	}
	b.goTo(tool("bench"))
	b.goTo(tool("sheet"))
	if !b.until(`[...document.querySelectorAll(".tally-lines label")].length > 1`) {
		b.t.Fatal("the mixing sheet does not come")
	}
	if empty := ask[int](b, `[...document.querySelectorAll(".tally-lines label")].filter(l => !/[a-z]{3}/i.test(l.textContent)).length`); empty > 0 {
		b.t.Errorf("%d lines of the mixing sheet do not say what to weigh", empty)
	}
}
