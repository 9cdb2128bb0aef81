//go:build judges

package trial

import (
	"context"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/chromedp"

	"slipbook/calculators/catalog"
)

// outpost is a server of its own for one test: it can be closed, and spoil files.
type outpost struct {
	*handbook
	t       *testing.T
	address string
	server  *http.Server

	mu     sync.Mutex
	spoilt map[string]string // by address: what it sends instead; empty: an error
	asked  map[string]int
}

// outpostOf serves a copy of the published demo course.
func outpostOf(t *testing.T) *outpost {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "handbook")
	if err := os.CopyFS(dir, os.DirFS(published(t).dir)); err != nil {
		t.Fatal(err)
	}
	o := &outpost{handbook: &handbook{dir: dir}, t: t, address: "127.0.0.1:0", spoilt: map[string]string{}, asked: map[string]int{}}
	o.open()
	o.home = "http://" + o.address + folder
	t.Cleanup(o.close)
	return o
}

// open begins to serve, at the same address as before.
func (o *outpost) open() {
	o.t.Helper()
	listener, err := net.Listen("tcp", o.address)
	if err != nil {
		o.t.Fatal(err)
	}
	o.address = listener.Addr().String()
	o.server = &http.Server{Handler: o}
	go o.server.Serve(listener)
}

// close ends every connection, and answers none.
func (o *outpost) close() { o.server.Close() }

// ServeHTTP sends a file, or what it is spoilt to.
func (o *outpost) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	at := strings.TrimPrefix(r.URL.Path, folder)
	o.mu.Lock()
	instead, is := o.spoilt[at]
	o.asked[at]++
	o.mu.Unlock()
	switch {
	case is && instead == "":
		http.Error(w, "spoilt", http.StatusInternalServerError)
	case is:
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		w.Write([]byte(instead))
	default:
		handler(o.dir).ServeHTTP(w, r)
	}
}

// spoil has a file come otherwise from now on.
func (o *outpost) spoil(at, instead string) {
	o.mu.Lock()
	defer o.mu.Unlock()
	o.spoilt[at] = instead
}

// heal has every file come as it is, and forgets what was asked for.
func (o *outpost) heal() {
	o.mu.Lock()
	defer o.mu.Unlock()
	clear(o.spoilt)
	clear(o.asked)
}

// asks counts how often files were asked for since.
func (o *outpost) asks(at string) int {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.asked[at]
}

// keeper is a tab of a window that keeps what it is given.
func keeper(t *testing.T) *tab {
	t.Helper()
	w, err := newWindow()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(w.close)
	return hearing(t, w)
}

// hearing is a tab with an ear.
func hearing(t *testing.T, w *window) *tab {
	t.Helper()
	ctx, stop := context.WithTimeout(w.ctx, patienceForTab)
	t.Cleanup(stop)
	b := &tab{t: t, ctx: ctx}
	if err := chromedp.Listen(ctx, b.hear); err != nil {
		t.Fatal(err)
	}
	return b
}

// another is a further tab of the same window.
func (b *tab) another() *tab {
	b.t.Helper()
	ctx, stop := chromedp.NewContext(b.ctx)
	b.t.Cleanup(stop)
	return hearing(b.t, &window{ctx: ctx})
}

// newsSays is whether the quiet line says something.
func newsSays(words string) string {
	return `[...document.querySelectorAll(".news [role=status]")].some(e => e.textContent === ` + quoted(words) + `)`
}

const (
	readyWords = "The handbook is ready without a network."
	newWords   = "A new edition of the handbook is here."
	held       = `navigator.serviceWorker.controller !== null`
	caught     = `caches.keys().then(names => names.filter(n => n.startsWith("slipbook ")))`
)

// keepAll visits a page and waits until the handbook is kept.
func (b *tab) keepAll(address string) {
	b.t.Helper()
	b.visit(address)
	if !b.until(newsSays(readyWords)) {
		b.t.Fatalf("the handbook is never ready: %v", ask[string](b, "document.body.innerText.slice(-400)"))
	}
}

// onPhone opens the page "On this phone" and waits for words.
func (b *tab) onPhone(o *outpost, words string) {
	b.t.Helper()
	b.visit(o.home + "phone.html")
	b.phoneSays(words)
}

func (b *tab) phoneSays(words string) {
	b.t.Helper()
	if !b.until(`document.querySelector("[data-state]").textContent.includes(` + quoted(words) + `)`) {
		b.t.Fatalf("the page says %q, want %q", ask[string](b, `document.querySelector("[data-kept]").innerText`), words)
	}
}

// TestHandbookWithoutANetwork takes the network away for good after one visit.
func TestHandbookWithoutANetwork(t *testing.T) {
	t.Parallel()
	o, s := outpostOf(t), settings(t)
	b := keeper(t)
	b.size(360, 640)
	b.keepAll(o.home + "slip/coat-a-pot.html")
	for _, name := range []string{"book.html", "labels/material-river-ball-clay-a4.html"} {
		if o.asks(name) > 0 {
			t.Errorf("%s is taken, and is for printing", name)
		}
	}
	o.close()

	b.visit(o.home + "wash/thin-a-wash.html") // a lesson with a calculator
	b.ready()
	if !ask[bool](b, `document.querySelector("h1").textContent.length > 3 && getComputedStyle(document.body).fontFamily.includes("Palatino")`) {
		t.Error("without a network a lesson has no words, or no look")
	}
	b.visit(o.home + "states/leather-hard.html") // a state, with a plan
	b.ready()
	for _, home := range []string{"", "index.html", "slip/", "slip"} {
		b.visit(o.home + home)
		if !ask[bool](b, `document.querySelector("h1") !== null && document.styleSheets.length > 0 && document.styleSheets[0].cssRules.length > 10`) {
			t.Errorf("without a network %q does not open as it is", home)
		}
	}
	f := formAt(b, o.handbook, catalog.In("en-GB").Find("slip-density"))
	f.fill(f.calc.Example.Given, true)
	f.agree(f.calc.Example.Given, s)
	b.tap(tool("bench"))
	if !b.until(inBenchMode) {
		t.Error("bench mode does not start without a network")
	}
	f.reload()
	f.ready()
	f.agree(f.calc.Example.Given, s)
	b.visit(o.home + "calculators/slip-density.html?calculator=slip-density&mass=212.4&mass.unit=g&tare=62.4&tare.unit=g&volume=100&volume.unit=mL")
	b.ready()
	if !ask[bool](b, `document.querySelector("[data-headline]").textContent.includes("1.5")`) {
		t.Errorf("an address with numbers answers %q", ask[string](b, `document.querySelector("[data-headline]").textContent`))
	}
	b.visit(o.home + "book.html")
	if !b.until(`location.pathname.endsWith("/phone.html") && document.querySelector("[data-away]").innerText.includes("book.html")`) {
		t.Errorf("a page that is not kept leads to %s", ask[string](b, "location.href"))
	}
	b.phoneSays("The whole handbook is on this phone")
	if said, _ := b.heard(); len(said) > 1 { // the book, which did not come
		t.Errorf("on the console: %q", said)
	}

	b.tap(key("Drop it from this phone"))
	b.phoneSays("Nothing is kept on this phone")
	if left := ask[[]string](b, caught); len(left) > 0 {
		t.Errorf("dropped, and there is still %q", left)
	}
	o.open()
	b.visit(o.home + "slip/coat-a-pot.html")
	if ask[int](b, `navigator.serviceWorker.getRegistrations().then(all => all.length)`) > 0 || ask[bool](b, held) {
		t.Error("dropped, and a worker is still there")
	}
	b.onPhone(o, "as you wanted")
	b.tap(key("Take it onto this phone"))
	b.phoneSays("The whole handbook is on this phone")
}
