//go:build judges

package trial

import (
	"encoding/csv"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// What the search is held to.
const (
	findLimit   = 10_000 // bytes of its script, gzipped
	leastThree  = 0.90   // of the questions have their place among the first three
	leastFirst  = 0.75   // have it first
	foundPlaces = `[...document.querySelectorAll("[data-found-list] a")].map(a => a.href)`
)

// look types words into the box and returns where what is found leads to, from the
// root of the handbook; the page must be open.
func (b *tab) look(h *handbook, typed string) []string {
	b.t.Helper()
	ask[bool](b, `(box => {
		document.querySelector("[data-found-list]").replaceChildren()
		document.querySelector("[data-found]").hidden = true
		box.value = `+quoted(typed)+`
		box.dispatchEvent(new Event("input", {bubbles: true}))
		return true
	})(document.querySelector("[data-find] input"))`)
	b.until(`document.querySelector("[data-found-list]").childElementCount > 0`)
	var all []string
	for _, to := range ask[[]string](b, foundPlaces) {
		all = append(all, strings.TrimPrefix(to, h.home))
	}
	return all
}

// searching opens the page on which one looks for words.
func (b *tab) searching(h *handbook, query string) {
	b.t.Helper()
	b.visit(h.home + h.one(b.t, "search") + query)
	if !b.until(`document.querySelector("[data-find]").checkVisibility()`) {
		b.t.Fatal("the box does not come")
	}
}

// isThere reports whether an address is one of some places, as
// testdata/search-questions.csv writes them.
func isThere(address, places string) bool {
	return slices.ContainsFunc(strings.Fields(places), func(place string) bool {
		page, _, _ := strings.Cut(address, "#")
		return address == place || page == place || strings.HasSuffix(place, "/") && strings.HasPrefix(address, place)
	})
}

// score counts how many questions have their place first, and among the first three.
type score struct{ first, three, all int }

func (s *score) add(at int) {
	s.all++
	if at == 0 {
		s.first++
	}
	if at >= 0 && at < 3 {
		s.three++
	}
}

// TestQuestionsAreAnswered types questions as people do, and wants the place that
// answers them to stand among the first.
func TestQuestionsAreAnswered(t *testing.T) {
	t.Parallel()
	file, err := os.Open(root + "/testdata/search-questions.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil || len(rows) < 61 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	h := published(t)
	b := phone(t)
	b.searching(h, "")
	var all, held score
	for _, row := range rows[1:] {
		found := b.look(h, row[0])
		at := slices.IndexFunc(found, func(to string) bool { return isThere(to, row[2]) })
		if at != 0 {
			t.Logf("%q: place %d; first are %q", row[0], at+1, found[:min(3, len(found))])
		}
		all.add(at)
		if row[1] != "" {
			held.add(at)
		}
	}
	t.Logf("of %d first %d, among the first three %d; of %d held back %d and %d", all.all, all.first, all.three, held.all, held.first, held.three)
	if float64(all.three) < leastThree*float64(all.all) || float64(all.first) < leastFirst*float64(all.all) {
		t.Error("too few questions are answered")
	}
}

// TestSearchFromAPhone looks for something, follows it to the heading, comes back to
// what was found, and judges the page with it.
func TestSearchFromAPhone(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := phone(t)
	b.visit(h.home + "slip/inlay.html")
	b.tap(`document.querySelector("header a[href$='search.html']")`)
	if !b.until(`document.activeElement === document.querySelector("[data-find] input") && document.activeElement.value === ""`) {
		t.Fatal("one tap does not lead to the box")
	}
	for _, key := range "scrape flush" {
		b.do(chromedp.KeyEvent(string(key)))
	}
	if !b.until(`document.querySelector("[data-found-list] a")?.hash === "#scrape-flush"`) {
		t.Fatalf("found are %q", ask[[]string](b, foundPlaces))
	}
	if marks := ask[[]string](b, `[...document.querySelector("[data-found-list] li").querySelectorAll("mark")].map(m => m.textContent.toLowerCase())`); !slices.Contains(marks, "scrape") {
		t.Errorf("marked are %q", marks)
	}
	if !b.until(`/^Found: [0-9]+$/.test(document.querySelector("[data-found-count]").textContent)`) {
		t.Error("how much is found is not said")
	}
	for _, scheme := range []string{"light", "dark"} {
		b.scheme(scheme)
		for _, fault := range b.accessible() {
			t.Errorf("%s: %s", scheme, fault)
		}
	}
	for _, fault := range slices.Concat(ask[[]string](b, small), ask[[]string](b, crowded)) {
		t.Error(fault)
	}
	b.fits("what is found", []int64{320, 768, 1280})
	b.lettersOf(32)
	b.fits("what is found, in large letters", []int64{320, 1280})
	b.lettersOf(16)
	b.size(360, 640)
	b.tap(`document.querySelector("[data-found-list] a")`)
	if !b.until(`document.readyState === "complete" && location.hash === "#scrape-flush" && document.querySelector("#scrape-flush").getBoundingClientRect().top < innerHeight / 2`) {
		t.Error("the place that was found is not where one comes to")
	}
	b.do(chromedp.NavigateBack())
	if !b.until(`document.querySelector("[data-find] input")?.value === "scrape flush" && document.querySelector("[data-found-list] a")?.checkVisibility()`) {
		t.Error("what was found is gone when one comes back")
	}
}

// TestSearchByAddressAndKeyboard opens an address that somebody sent, asks for more,
// and follows a result by keys alone; then looks for what is nowhere.
func TestSearchByAddressAndKeyboard(t *testing.T) {
	t.Parallel()
	for _, h := range []*handbook{published(t), published(t).fromFolder(t)} {
		b := open(t)
		b.searching(h, "?q=gl%C3%A1ze")
		if !b.until(`document.querySelectorAll("[data-found-list] a").length === 20`) {
			t.Fatalf("%s: found are %q", h.home, ask[[]string](b, foundPlaces))
		}
		if !b.tabTo(`document.querySelector("[data-found-more]")`, 30) {
			t.Fatal("the key Tab does not come to “more”")
		}
		b.do(chromedp.KeyEvent(kb.Enter))
		if !b.until(`document.activeElement === document.querySelectorAll("[data-found-list] a")[20]`) {
			t.Error("more does not lead to what it shows")
		}
		to := ask[string](b, "document.activeElement.href")
		b.do(chromedp.KeyEvent(kb.Enter))
		if !b.until(`location.href === ` + quoted(to)) {
			t.Errorf("the key Enter does not lead to %s", to)
		}
		b.searching(h, "?q=zzyzx")
		if !b.until(`document.querySelector("[data-found-count]").textContent.startsWith("Nothing has these words")`) || ask[bool](b, `document.querySelector("[data-found]").checkVisibility()`) {
			t.Error("it is not said that nothing was found")
		}
	}
}

// TestIndexWithoutAScript wants the index alone, whole, where no script runs.
func TestIndexWithoutAScript(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	call(b, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
	b.do(chromedp.Navigate(h.home + h.one(t, "search")))
	if ask[bool](b, `document.querySelector("[data-find]").checkVisibility()`) {
		t.Error("a box is shown that does nothing")
	}
	links := ask[[]string](b, `[...document.querySelectorAll(".index a")].filter(a => a.checkVisibility()).map(a => a.getAttribute("href"))`)
	for _, want := range []string{"slip/inlay.html", "glossary.html#sgraffito", "faults.html#crawling", "states/bone-dry.html", "media/underglaze.html", "calculators/slip-density.html", "materials/soda-ash.html", "underglaze/index.html#asked.1"} {
		if !slices.Contains(links, want) {
			t.Errorf("the index does not lead to %s", want)
		}
	}
	if see := ask[[]string](b, `[...document.querySelectorAll(".index li")].map(l => l.textContent.trim())`); !slices.Contains(see, "mishima: see Inlay") {
		t.Error("another name leads nowhere")
	}
	b.fits("the index", []int64{320, 1280})
}

// TestWordsThatSayNothingAreNotMarked looks for "off", which is made alike to "of".
func TestWordsThatSayNothingAreNotMarked(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	b.visit(h.home + "search.html?q=slip+comes+off")
	const marks = `[...document.querySelectorAll("[data-found-list] mark")].map(m => m.textContent.toLowerCase())`
	if !b.until(marks + `.includes("off")`) {
		t.Fatalf("marked are %q", ask[[]string](b, marks))
	}
	if all := ask[[]string](b, marks); slices.Contains(all, "of") {
		t.Errorf("marked are %q", all)
	}
}

// TestScriptOfTheSearch wants it on its page alone, and small.
func TestScriptOfTheSearch(t *testing.T) {
	t.Parallel()
	published(t).scriptOfOneKind(t, "find", "search", findLimit)
}
