//go:build judges

package trial

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// How long a test may wait for one thing, how long it may keep its tab, and how
// much longer for each page that it visits there. A busy machine may take its
// time: these only end what would never come.
const (
	patience        = 2 * time.Minute
	patienceForTab  = 10 * time.Minute
	patienceForPage = 5 * time.Second
)

// browser is the one browser of the trial; each test has a tab of its own.
var browser struct {
	once  sync.Once
	ctx   context.Context
	close []context.CancelFunc
	err   error
}

// unwanted are habits of the browser that cost a trial a third of its time: each
// visit would start a process of its own, and one more in advance.
var unwanted = []string{"Translate", "BlinkGenPropertyTrees", "SpareRendererForSitePerProcess", "BackForwardCache",
	"ProactivelySwapBrowsingInstance", "PaintHolding"}

// startBrowser starts Chromium with a new profile.
func startBrowser() {
	path, err := exec.LookPath("chromium")
	if err != nil {
		browser.err = fmt.Errorf("no browser to judge with: %w", err)
		return
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-software-rasterizer", true), chromedp.Flag("process-per-site", true),
		chromedp.Flag("disable-features", strings.Join(unwanted, ",")))
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	ctx, stop := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, leave := chromedp.NewContext(ctx)
	browser.ctx, browser.close = ctx, []context.CancelFunc{leave, stop}
	browser.err = chromedp.Do(ctx)
}

// closeBrowser ends the browser, if it was ever started.
func closeBrowser() {
	for _, end := range browser.close {
		end()
	}
}

// tab is a test's page of the browser, with an ear on everything it says and asks.
type tab struct {
	t      *testing.T
	ctx    context.Context
	driver *driver // of another engine than Chromium's

	mu    sync.Mutex
	said  []string // messages to the console and exceptions, since last heard
	asked []string // addresses requested, since last heard
}

// open returns a test a tab that shares nothing with the others, to visit a few
// pages.
func open(t *testing.T) *tab {
	t.Helper()
	return openFor(t, 0)
}

// openFor returns a test a tab in which it visits many pages.
func openFor(t *testing.T, pages int) *tab {
	t.Helper()
	w, err := takeWindow()
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithTimeout(w.ctx, patienceForTab+time.Duration(pages)*patienceForPage)
	b := &tab{t: t, ctx: ctx}
	t.Cleanup(func() {
		stop()
		w.leave(t.Failed())
	})
	if err := chromedp.Listen(ctx, b.hear); err != nil {
		t.Fatal(err)
	}
	return b
}

// tabs is how many tabs share the visits of a tour. The tests run as many at
// once as there are processors.
const tabs = 2

// tour visits pages, each once: two tabs share them. What a visit reports it
// reports to the test of its tab; when that ends, the other tab goes on.
func tour(t *testing.T, pages []string, visit func(b *tab, address string)) {
	t.Helper()
	var next atomic.Int64
	t.Run("tour", func(t *testing.T) { // ends when both tabs are done
		for n := range tabs {
			t.Run(fmt.Sprintf("tab %d", n+1), func(t *testing.T) {
				t.Parallel()
				b := openFor(t, len(pages))
				for at := next.Add(1); at <= int64(len(pages)); at = next.Add(1) {
					visit(b, pages[at-1])
				}
			})
		}
	})
}

// hear notes what a page says to the console and asks of the network.
func (b *tab) hear(event any) {
	b.mu.Lock()
	defer b.mu.Unlock()
	switch e := event.(type) {
	case *runtime.EventConsoleAPICalled:
		var words []string
		for _, a := range e.Args {
			words = append(words, strings.Trim(string(a.Value), `"`)+a.Description)
		}
		b.said = append(b.said, string(e.Type)+": "+strings.Join(words, " "))
	case *runtime.EventExceptionThrown:
		words := e.ExceptionDetails.Text
		if e.ExceptionDetails.Exception != nil {
			words += " " + e.ExceptionDetails.Exception.Description
		}
		b.said = append(b.said, "exception: "+words)
	case *log.EventEntryAdded:
		b.said = append(b.said, string(e.Entry.Source)+" "+string(e.Entry.Level)+": "+e.Entry.Text+" "+e.Entry.URL)
	case *network.EventRequestWillBeSent:
		b.asked = append(b.asked, e.Request.URL)
	}
}

// heard returns what the page said and asked since the last call.
func (b *tab) heard() (said, asked []string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	said, asked = b.said, b.asked
	b.said, b.asked = nil, nil
	return said, asked
}

// do runs steps in the tab; a step that fails ends the test.
func (b *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	if err := chromedp.Do(b.ctx, steps...); err != nil {
		b.t.Fatal(err)
	}
}

// drive gives one command to a browser of another engine.
func (b *tab) drive(c command, parameters any) {
	b.t.Helper()
	if err := b.driver.do(c, parameters); err != nil {
		b.t.Fatal(err)
	}
}

// keys presses keys, one after the other.
func (b *tab) keys(text string) {
	b.t.Helper()
	if b.driver == nil {
		b.do(chromedp.KeyEvent(text))
	} else if err := b.driver.keys(text); err != nil {
		b.t.Fatal(err)
	}
}

// press presses the pointer's button at a point of the window, in CSS pixels.
func (b *tab) press(x, y int) {
	b.t.Helper()
	if b.driver == nil {
		b.do(chromedp.MouseClickXY(float64(x), float64(y)))
	} else if err := b.driver.press(x, y); err != nil {
		b.t.Fatal(err)
	}
}

// call sends one command of the browser's protocol.
func call[P, R any](b *tab, command cdp.Command[P, R], params P) R {
	b.t.Helper()
	result, err := chromedp.Call(b.ctx, command, params)
	if err != nil {
		b.t.Fatalf("%s: %v", command.Method, err)
	}
	return result
}

// ask returns the value of a JavaScript expression in the page, awaited.
func ask[T any](b *tab, expression string) T {
	b.t.Helper()
	value, err := valueOf[T](b, expression)
	if errors.Is(err, errLeft) {
		value, err = valueOf[T](b, expression)
	}
	if err != nil {
		b.t.Fatalf("%v\nin: %.400s", err, expression)
	}
	return value
}

// valueOf returns the value of a JavaScript expression in the page, awaited, or why
// there is none.
func valueOf[T any](b *tab, expression string) (value T, err error) {
	if b.driver == nil {
		return chromedp.Run(b.ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	}
	found, err := b.driver.ask(expression)
	if err != nil {
		return value, err
	}
	return value, json.Unmarshal(found, &value)
}

// eventually asks again and again, less and less often, whether something has
// come true, and reports whether it has.
func eventually(has func() bool) bool {
	pause := 5 * time.Millisecond
	for end := time.Now().Add(patience); !has(); pause = min(2*pause, 200*time.Millisecond) {
		if time.Now().After(end) {
			return false
		}
		time.Sleep(pause)
	}
	return true
}

// until waits for a JavaScript expression to become true, and reports whether it
// did.
func (b *tab) until(expression string) bool {
	b.t.Helper()
	became := false
	eventually(func() bool {
		// A page that is just being left cannot be asked.
		yes, err := valueOf[bool](b, "!!("+expression+")")
		became = yes && err == nil
		return became || b.ctx.Err() != nil
	})
	return became
}

// size sets the size of the window in CSS pixels.
func (b *tab) size(width, height int64) {
	b.t.Helper()
	if b.driver != nil {
		b.drive(resize, map[string]any{"width": width, "height": height})
		return
	}
	b.do(chromedp.EmulateViewport(width, height))
	if !b.until(fmt.Sprintf("innerWidth === %d && innerHeight === %d", width, height)) {
		b.t.Fatalf("the window does not become %d by %d px", width, height)
	}
}

// scheme sets whether the reader prefers "light" or "dark".
func (b *tab) scheme(name string) {
	b.t.Helper()
	call(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: name}, {Name: "prefers-reduced-motion", Value: "reduce"}},
	})
}

// reload loads the page anew and waits until the new one is there.
func (b *tab) reload() {
	b.t.Helper()
	ask[bool](b, "window.beforeReload = true")
	if b.driver != nil {
		b.drive(refresh, map[string]any{})
	} else {
		b.do(chromedp.Reload())
	}
	if !b.until(`!window.beforeReload && document.readyState === "complete"`) {
		b.t.Fatal("the page does not load anew")
	}
}

// visit opens a page and waits until it has been drawn.
func (b *tab) visit(address string) {
	b.t.Helper()
	if b.driver != nil {
		b.drive(navigate, map[string]any{"url": address})
	} else {
		b.do(chromedp.Navigate(address))
	}
	ask[bool](b, "new Promise(drawn => requestAnimationFrame(() => requestAnimationFrame(() => drawn(true))))")
}
