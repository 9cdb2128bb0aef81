//go:build judges

package trial

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
)

// onLine opens a tab in a window of its own, whose browser says what its line is like.
func onLine(t *testing.T, line string) *tab {
	t.Helper()
	b := keeper(t)
	call(b, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{
		Source: "delete Navigator.prototype.serviceWorker; Object.defineProperty(navigator, 'connection', {value: " + line + "})",
	})
	return b
}

// asset returns the address of the one shared file of a name.
func (o *outpost) asset(name, extension string) string {
	o.t.Helper()
	for _, file := range o.files(o.t, extension) {
		if strings.HasPrefix(file, "assets/"+name+"-") {
			return file
		}
	}
	o.t.Fatalf("there is no %s%s", name, extension)
	return ""
}

// TestThinLine wants the calculators to come over a thin line when a box is touched
// and no sooner, with words that say how much it is; and what is here already, or comes
// over a good line, by itself. Bench mode comes with the calculators.
func TestThinLine(t *testing.T) {
	t.Parallel()
	published(t)
	for line, thin := range map[string]bool{"{effectiveType: '3g'}": true, "{effectiveType: '4g', saveData: true}": true, "{effectiveType: '4g'}": false} {
		t.Run(line, func(t *testing.T) {
			o := outpostOf(t)
			o.lasting = true
			b := onLine(t, line)
			at := o.home + "calculators/slip-density.html"
			b.visit(at)
			if thin {
				b.wants(o)
			}
			b.comes(o)
			b.visit("about:blank")
			b.visit(at)
			b.comes(o)
		})
	}
}

// wants finds that a calculator waits to be wanted, and wants it.
func (b *tab) wants(o *outpost) {
	b.t.Helper()
	kilobytes := 0.0
	for _, name := range []string{"calculators", "words"} {
		kilobytes += float64(len(o.read(b.t, o.asset(name, ".bin")))) / 1000
	}
	says := fmt.Sprintf("%.0f kB", 10*math.Round(kilobytes/10))
	if !b.until(`document.querySelector("[data-waits] [data-headline]")?.textContent.includes(` + quoted(says) + `)`) {
		b.t.Fatalf("the page does not say that the calculator waits, and that it is %s", says)
	}
	for _, name := range []string{"calculators", "words"} {
		if n := o.asks(o.asset(name, ".bin")); n != 0 {
			b.t.Errorf("%s were asked for %d times before anybody wanted them", name, n)
		}
	}
	ask[bool](b, `(document.querySelector("[data-input] input").focus(), true)`)
}

// comes waits until calculators and bench mode are there, each asked for once in all.
func (b *tab) comes(o *outpost) {
	b.t.Helper()
	b.ready()
	if !b.until("globalThis.atBench") {
		b.t.Error("bench mode does not come by itself")
	}
	for _, file := range []string{o.asset("calculators", ".bin"), o.asset("bench", ".js"), o.asset("bench", ".css")} {
		if n := o.asks(file); n != 1 {
			b.t.Errorf("%s was asked for %d times, want once", file, n)
		}
	}
}

// TestCalculatorsInALessonAreWanted opens one over a thin line: that is to want it.
func TestCalculatorsInALessonAreWanted(t *testing.T) {
	t.Parallel()
	o := outpostOf(t)
	pages := published(t).withDesk(t)
	b := onLine(t, "{effectiveType: '2g'}")
	b.visit(o.home + pages[len(pages)-1])
	if n := o.asks(o.asset("calculators", ".bin")); n != 0 {
		t.Errorf("the calculators were asked for %d times before one was opened", n)
	}
	ask[bool](b, openFolds)
	if !b.until("globalThis.atBench") {
		t.Error("the calculators do not come when one is opened")
	}
}
