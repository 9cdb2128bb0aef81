//go:build judges

package preview

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/chromedp"
)

// tab opens a page in a browser and returns a function that waits until it shows
// words, and one that returns what the browser complained of.
func tab(t *testing.T, address string) (shows func(words string), complaints func() []string) {
	t.Helper()
	path, err := exec.LookPath("chromium")
	must(t, err)
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.DisableGPU)
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	ctx, stop := context.WithTimeout(context.Background(), 10*time.Minute)
	t.Cleanup(stop)
	ctx, stop = chromedp.NewExecAllocator(ctx, options...)
	t.Cleanup(stop)
	ctx, stop = chromedp.NewContext(ctx)
	t.Cleanup(stop)
	var mu sync.Mutex
	var said []string
	must(t, chromedp.Listen(ctx, func(event any) {
		if e, ok := event.(*log.EventEntryAdded); ok {
			mu.Lock()
			defer mu.Unlock()
			said = append(said, e.Entry.Text+" "+e.Entry.URL)
		}
	}))
	must(t, chromedp.Do(ctx, chromedp.Navigate(address)))
	shows = func(words string) {
		t.Helper()
		var text string
		for end := time.Now().Add(time.Minute); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
			// A page that is just being loaded again cannot be asked.
			text, _ = chromedp.Run(ctx, chromedp.Evaluate[string]("document.body.innerText"))
			if strings.Contains(text, words) {
				return
			}
		}
		t.Fatalf("the page does not show %q but:\n%s", words, text)
	}
	return shows, func() []string {
		mu.Lock()
		defer mu.Unlock()
		return said
	}
}

// An open page follows the saves by itself: to the next text, to the findings
// of a broken edit with the last good page below, and back when it is mended.
func TestAPageFollowsSavesInABrowser(t *testing.T) {
	folder := t.TempDir()
	save := func(text string) {
		must(t, os.WriteFile(filepath.Join(folder, "home.md"), []byte(text), 0o644))
	}
	save("first")
	s := start(t, folder)
	shows, complaints := tab(t, s.url)
	shows("first")
	save("second")
	shows("second")
	if said := complaints(); len(said) > 0 {
		t.Errorf("the browser complains: %q", said)
	}
	save("a mistake")
	shows("One thing to mend")
	shows("home.md:1:1")
	shows("The page as it last printed")
	save("panic now")
	shows("slipbook itself failed")
	save("mended")
	shows("mended")
	for _, said := range complaints() {
		if !strings.Contains(said, "500 (Internal Server Error)") {
			t.Errorf("the browser complains: %s", said)
		}
	}
}
