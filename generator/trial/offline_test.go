//go:build judges

package trial

import (
	"context"
	"crypto/sha256"
	"fmt"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"slipbook/calculators/catalog"
	"slipbook/generator/offline"
)

// outpost is a server of its own for one test: it can be closed, and spoil files.
type outpost struct {
	*handbook
	t       *testing.T
	address string
	server  *http.Server
	lasting bool // it says that shared files never change under their names

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

// cutOff ends the connection in place of a file.
const cutOff = "cut off"

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
	case is && instead == cutOff:
		panic(http.ErrAbortHandler)
	case is && instead == "":
		http.Error(w, "spoilt", http.StatusInternalServerError)
	case is:
		w.Header().Set("Content-Type", "text/html; charset=utf-8")
		w.Write([]byte(instead))
	default:
		if o.lasting && strings.HasPrefix(at, "assets/") {
			w.Header().Set("Cache-Control", "public, max-age=31536000, immutable")
		}
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

// askedFor counts the files that were asked for since.
func (o *outpost) askedFor() int {
	o.mu.Lock()
	defer o.mu.Unlock()
	return len(o.asked)
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

// republish publishes the demo course into the folder that is served, with a sentence
// more in a lesson.
func (o *outpost) republish(lesson, sentence string) {
	o.t.Helper()
	content := filepath.Join(o.t.TempDir(), "content")
	if err := os.CopyFS(content, os.DirFS(root+"/content")); err != nil {
		o.t.Fatal(err)
	}
	file := filepath.Join(content, "units", filepath.FromSlash(lesson)+".md")
	text, err := os.ReadFile(file)
	if err == nil {
		err = os.WriteFile(file, append(text, "\n"+sentence+"\n"...), 0o666)
	}
	if err == nil {
		err = publishTo(o.dir, nil, "--content", content)
	}
	if err != nil {
		o.t.Fatal(err)
	}
}

// newsSays is whether the quiet line says something.
func newsSays(words string) string {
	return `[...document.querySelectorAll(".news [role=status]")].some(e => e.textContent === ` + quoted(words) + `)`
}

// crowdedNews is what stands too close in the line that tells of the handbook: it lies over
// the page until it is closed, so what is under it does not count.
var crowdedNews = strings.Replace(crowded, "filter(e =>", `filter(e => e.closest(".news") &&`, 1)

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
	b.keepAll(o.home + "calculators/slip-density.html")
	for _, fault := range append(append(ask[[]string](b, small), ask[[]string](b, crowdedNews)...), b.accessible()...) {
		t.Errorf("with the line that says so: %s", fault)
	}
	for _, name := range []string{"book.html", "labels/material-river-ball-clay-a4.html"} {
		if o.asks(name) > 0 {
			t.Errorf("%s is taken, and is for printing", name)
		}
	}
	o.close()

	b.tap(tool("bench")) // on the page that was open all the time
	if !b.until(inBenchMode) {
		t.Error("on the first page bench mode does not start without a network")
	}
	b.tap(tool("bench"))
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
	b.tap(key("Keep it"))
	b.phoneSays("The whole handbook is on this phone")
	b.tap(key("Drop it from this phone"))
	b.tap(key("Yes, drop it"))
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

// TestHandbookCanBeInstalled wants the browser to find nothing that keeps the handbook from
// being put on the phone's first screen. It looks in a window that remembers, since in a
// private one nothing can be installed.
func TestHandbookCanBeInstalled(t *testing.T) {
	t.Parallel()
	o := outpostOf(t)
	ctx, stop := chromedp.NewContext(browserOf(t))
	t.Cleanup(stop)
	b := hearing(t, &window{ctx: ctx})
	b.keepAll(o.home + "index.html")
	for _, e := range call(b, page.GetInstallabilityErrors, cdp.Empty{}).InstallabilityErrors {
		b.t.Errorf("it cannot be installed: %s %v", e.ErrorID, e.ErrorArguments)
	}
	manifest := call(b, page.GetAppManifest, page.GetAppManifestParams{})
	for _, e := range manifest.Errors {
		b.t.Errorf("%s: %s", manifest.URL, e.Message)
	}
	if !strings.Contains(manifest.Data, "Colour at the bench") {
		b.t.Errorf("%s names nothing: %s", manifest.URL, manifest.Data)
	}
}

// takeNew says yes to a new edition, and waits until it and the other tabs have gone along.
func (b *tab) takeNew(others ...*tab) {
	b.t.Helper()
	all := append([]*tab{b}, others...)
	for _, tab := range all {
		ask[bool](tab, "window.beforeNew = true")
	}
	b.tap(key("Take it now"))
	for n, tab := range all {
		if !tab.until(`!window.beforeNew && document.readyState === "complete"`) {
			b.t.Fatalf("tab %d does not go along", n+1)
		}
	}
}

const came = "This sentence came with the second edition."

const hasCome = `document.querySelector("main").innerText.includes("` + came + `")`

// TestNewEditionIsTakenWhole publishes anew under a reader who is in the middle of a
// sum, and has a second page open.
func TestNewEditionIsTakenWhole(t *testing.T) {
	t.Parallel()
	o := outpostOf(t)
	b := keeper(t)
	b.size(360, 640)
	b.keepAll(o.home + "calculators/slip-density.html")
	f := &form{tab: b, calc: catalog.In("en-GB").Find("slip-density")}
	b.ready()
	f.typeInto("mass", 0, "212.4")
	if !b.until(`location.search.includes("212.4")`) {
		t.Fatal("what is typed does not get into the address")
	}
	second := b.another()
	second.size(360, 640)
	second.visit(o.home + "slip/coat-a-pot.html")

	o.heal()
	o.republish("slip/coat-a-pot", came)
	second.reload() // asks whether there is a new worker
	for n, tab := range []*tab{b, second} {
		if !tab.until(newsSays(newWords)) {
			t.Fatalf("tab %d is not told of the new edition", n+1)
		}
	}
	if ask[bool](second, hasCome) {
		t.Error("the new edition is shown before anybody said yes")
	}
	if n := o.askedFor(); n > 6 {
		t.Errorf("one lesson is new, and %d files were fetched", n)
	}
	second.tap(key("Later"))
	second.reload()
	second.visit(o.home + "slip/coat-a-pot.html")
	if ask[bool](second, "new Promise(done => setTimeout(() => done(true), 1500))"); ask[bool](second, hasCome) || ask[bool](second, newsSays(newWords)) {
		t.Error("put off, and the new edition is shown, or told of, again")
	}

	b.takeNew(second)
	if !ask[bool](second, hasCome) {
		t.Error("the second tab goes along, and has the old words")
	}
	b.ready()
	if mass := ask[string](b, f.boxes("mass")+"[0].value"); mass != "212.4" || ask[bool](b, linked) {
		t.Errorf("212.4 was typed, and with the new edition there stands %q", mass)
	}
	if left := ask[[]string](b, caught); len(left) != 1 {
		t.Errorf("kept are %q, want the new edition alone", left)
	}
	o.close()
	second.visit(o.home + "wash/thin-a-wash.html")
	second.ready()
	if second.visit(o.home + "slip/coat-a-pot.html"); !ask[bool](second, hasCome) {
		t.Error("without a network the new edition is not the one that opens")
	}
	if said, _ := second.heard(); len(said) > 0 {
		t.Errorf("on the console: %q", said)
	}
}

// TestBrokenUpdateLeavesTheOldEdition lets a new edition fail on one file, in every way.
func TestBrokenUpdateLeavesTheOldEdition(t *testing.T) {
	t.Parallel()
	const lesson = "slip/coat-a-pot.html"
	o := outpostOf(t)
	b := keeper(t)
	o.spoil("wash/wipe-back.html", "")
	b.onPhone(o, "The server sent something else")
	o.heal()
	b.tap(key("Try again"))
	b.phoneSays("The whole handbook is on this phone")
	if n := o.askedFor(); n > 40 {
		t.Errorf("most of the handbook had come, and of it %d files are fetched again", n)
	}
	before := ask[[]string](b, caught)
	o.republish("slip/coat-a-pot", came)
	for _, way := range []struct{ instead, says string }{
		{"", "The server sent something else"},
		{"<!doctype html><title>Hotel</title><p>Sign in to use this network.", "The server sent something else"},
		{cutOff, "The network was lost"},
	} {
		o.heal()
		o.spoil(lesson, way.instead)
		b.onPhone(o, "The whole handbook is on this phone")
		ask[bool](b, `navigator.serviceWorker.getRegistration().then(r => r.update()).then(() => true)`)
		b.phoneSays(way.says)
		if o.asks(lesson) < 2 {
			t.Errorf("%q: a file that did not come is asked for %d times", way.instead, o.asks(lesson))
		}
		if !b.until(`navigator.serviceWorker.getRegistration().then(r => !r.installing && !r.waiting)`) {
			t.Errorf("%q: half an edition waits to begin", way.instead)
		}
		for _, address := range []string{lesson, "wash/thin-a-wash.html"} {
			if b.visit(o.home + address); ask[bool](b, hasCome) || !ask[bool](b, `document.querySelector("h1") !== null`) {
				t.Errorf("%q: %s is not as it was", way.instead, address)
			}
		}
	}
	o.heal()
	b.onPhone(o, "The whole handbook is on this phone")
	ask[bool](b, `navigator.serviceWorker.getRegistration().then(r => r.update()).then(() => true)`)
	b.phoneSays(newWords)
	if n := o.askedFor(); n > 6 {
		t.Errorf("what had come is fetched again: %d files", n)
	}
	b.takeNew()
	if !b.until(`caches.keys().then(names => !names.includes(` + quoted(before[0]) + `))`) {
		t.Error("mended, and the new edition does not come")
	}
	if b.visit(o.home + lesson); !ask[bool](b, hasCome) {
		t.Error("mended, and the old words stand there")
	}
}

// unit is the box that chooses a unit.
func unitBox(id string) string {
	return `document.querySelector("[data-units] input[value=` + id + `]")`
}

// TestLargeHandbookAsksFirst keeps a handbook as one that is too large to be taken
// whole: the demo course, with the one word in its worker that says so.
func TestLargeHandbookAsksFirst(t *testing.T) {
	t.Parallel()
	o := outpostOf(t)
	icon := o.read(t, o.files(t, ".png")[0])
	photo := func(at string) string {
		return fmt.Sprintf("[%q,%d,%q,1]", at, len(icon), offline.Digest(sha256.Sum256(icon)))
	}
	worker := strings.NewReplacer(`"whole":true`, `"whole":false`, `"core":[`, `"core":[`+photo("jar-816.png")+",", `"rest":[`, `"rest":[`+photo("jar-1088.png")).Replace(string(o.read(t, "sw.js")))
	for name, data := range map[string][]byte{"sw.js": []byte(worker), "jar-816.png": icon} {
		if err := os.WriteFile(filepath.Join(o.dir, name), data, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	b := keeper(t)
	b.size(360, 640)
	b.visit(o.home + "index.html")
	if !b.until(newsSays("What every unit needs is ready without a network. On the page “On this phone” you can choose units.")) {
		t.Fatal("it does not say that it is ready in part")
	}
	if n := o.asks("wash/index.html") + o.asks("slip/index.html"); n > 0 {
		t.Errorf("%d pages of units are taken without being asked for", n)
	}
	b.visit(o.home + "wash/thin-a-wash.html") // a page that is opened stays
	b.ready()
	o.spoil("week/firing.html", "<!doctype html><title>Hotel</title><p>Sign in to use this network.")
	b.visit(o.home + "week/firing.html") // what is not the page does not stay
	b.onPhone(o, "Of the handbook")
	for _, fault := range append(append(ask[[]string](b, small), ask[[]string](b, crowded)...), ask[[]string](b, widest)...) {
		t.Error(fault)
	}
	for _, fault := range b.accessible() {
		t.Error(fault)
	}
	choose := func(id, says string) {
		ask[bool](b, "("+unitBox(id)+".click(), true)")
		if room := `document.querySelector("[data-unit-room=` + id + `]").textContent`; !b.until(room + `.includes("on this phone") === ` + says) {
			t.Errorf("the unit %s chosen or not, it says %q", id, ask[string](b, room))
		}
	}
	choose("slip", "true")
	choose("size", "true")
	choose("size", "false")
	o.close()
	ask[bool](b, "("+unitBox("look")+".click(), true)")
	b.phoneSays("The network was lost")
	for address, there := range map[string]bool{"slip/coat-a-pot.html": true, "calculators/slip-density.html": true, "wash/thin-a-wash.html": true, "size/size-a-pot.html": false, "wash/wipe-back.html": false, "week/firing.html": false} {
		b.visit(o.home + address)
		if !b.until(`document.querySelector("h1") && location.pathname.endsWith("/phone.html") !== ` + map[bool]string{true: "true", false: "false"}[there]) {
			t.Errorf("without a network %s leads to %s", address, ask[string](b, "location.href"))
		}
	}
	if size := ask[int](b, `fetch("/bench/notes/jar-1088.png").then(r => r.arrayBuffer(), () => new ArrayBuffer(0)).then(b => b.byteLength)`); size != len(icon) {
		t.Errorf("without a network a photo of which another width is kept has %d bytes", size)
	}
}

// TestPhonePageSaysWhyNothingIsKept takes away in turn what keeping needs.
func TestPhonePageSaysWhyNothingIsKept(t *testing.T) {
	t.Parallel()
	h := published(t)
	for _, lack := range []struct{ home, without, says string }{
		{h.home, "", "This browser cannot keep a handbook here."}, // the windows of the trial have no service workers
		{h.home, `Object.defineProperty(window, "isSecureContext", {value: false})`, "This page came over http, not https"},
		{h.fromFolder(t).home, "", "These pages were opened from a folder."},
	} {
		b := open(t)
		if lack.without != "" {
			made := call(b, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: lack.without})
			t.Cleanup(func() {
				call(b, page.RemoveScriptToEvaluateOnNewDocument, page.RemoveScriptToEvaluateOnNewDocumentParams(made))
			})
		}
		b.visit(lack.home + "phone.html")
		b.phoneSays(lack.says)
		if dead := ask[[]string](b, pressable); len(dead) > 0 {
			t.Errorf("%s: nothing can be kept, and it offers %q", lack.says, dead)
		}
	}
	b := open(t)
	call(b, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
	b.do(chromedp.Navigate(h.home + "phone.html"))
	if said := ask[string](b, "document.querySelector('[data-state]').textContent"); !strings.Contains(said, "runs no scripts") {
		t.Errorf("without scripts it says %q", said)
	}
}
