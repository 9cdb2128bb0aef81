//go:build judges

package trial

import (
	"context"
	"sync"
	"testing"

	cdbrowser "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// window is a window of the browser with one page in it and a memory of its own.
// Tests have it one after another, since to open one takes as long as to visit
// several pages.
type window struct {
	ctx   context.Context
	close context.CancelFunc
}

// free are the windows that no test has.
var free struct {
	mu  sync.Mutex
	all []*window
}

// takeWindow returns a window that is empty or new.
func takeWindow() (*window, error) {
	free.mu.Lock()
	if last := len(free.all) - 1; last >= 0 {
		defer free.mu.Unlock()
		w := free.all[last]
		free.all = free.all[:last]
		return w, nil
	}
	free.mu.Unlock()
	w, err := newWindow()
	if err != nil {
		return nil, err
	}
	// Each window would take the whole handbook for when there is no network.
	_, err = chromedp.Call(w.ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: "delete Navigator.prototype.serviceWorker"})
	return w, err
}

// newWindow opens a window with an empty memory, which keeps what it is given.
func newWindow() (*window, error) {
	browser.once.Do(startBrowser)
	if browser.err != nil {
		return nil, browser.err
	}
	w := &window{}
	w.ctx, w.close = chromedp.NewContext(browser.ctx, chromedp.WithNewBrowserContext())
	if err := tell(w.ctx, network.Enable, network.EnableParams{}); err != nil {
		return nil, err
	}
	return w, tell(w.ctx, emulation.SetScrollbarsHidden, emulation.SetScrollbarsHiddenParams{Hidden: true})
}

// browserOf returns the browser itself, started.
func browserOf(t *testing.T) context.Context {
	t.Helper()
	browser.once.Do(startBrowser)
	if browser.err != nil {
		t.Fatal(browser.err)
	}
	return browser.ctx
}

// tell sends one command of the browser's protocol that answers nothing.
func tell[P, R any](ctx context.Context, command cdp.Command[P, R], params P) error {
	_, err := chromedp.Call(ctx, command, params)
	return err
}

// leave makes a window ready for the next test: nothing is kept, nothing is
// emulated. One in which a test failed is closed.
func (w *window) leave(failed bool) {
	if failed || w.clean() != nil {
		w.close()
		return
	}
	free.mu.Lock()
	defer free.mu.Unlock()
	free.all = append(free.all, w)
}

// clean empties a window.
func (w *window) clean() error {
	ctx, stop := context.WithTimeout(w.ctx, patience)
	defer stop()
	if err := tell(ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{}); err != nil {
		return err
	}
	// A page that never came has no memory to empty.
	forget := chromedp.Evaluate[bool]("(() => { try { localStorage.clear() } catch { return false } return true })()")
	if _, err := chromedp.Run(ctx, forget); err != nil {
		return err
	}
	if err := chromedp.Do(ctx, chromedp.Navigate("about:blank")); err != nil {
		return err
	}
	if err := tell(ctx, emulation.SetTouchEmulationEnabled, emulation.SetTouchEmulationEnabledParams{}); err != nil {
		return err
	}
	if err := tell(ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{}); err != nil {
		return err
	}
	if err := tell(ctx, emulation.ClearDeviceMetricsOverride, cdp.Empty{}); err != nil {
		return err
	}
	if err := tell(ctx, network.SetCacheDisabled, network.SetCacheDisabledParams{}); err != nil {
		return err
	}
	return tell(ctx, cdbrowser.SetDownloadBehavior, cdbrowser.SetDownloadBehaviorParams{
		Behavior: cdbrowser.SetDownloadBehaviorBehaviorDefault, BrowserContextID: chromedp.FromContext(w.ctx).BrowserContextID})
}
