package press

import (
	"errors"
	"strings"
	"testing"

	"slipbook/generator/address"
	"slipbook/generator/press/imprint"
)

func BenchmarkPrint(b *testing.B) {
	theme, r, shelf := studio(b), read(b, small(b)), shared()
	b.ReportAllocs()
	for b.Loop() {
		e, err := Print(theme, r, shelf, Copy{})
		if err != nil {
			b.Fatal(err)
		}
		if all, err := everything(e); err != nil || len(all) == 0 {
			b.Fatal(err)
		}
	}
}

// TestPrintRefusesAnAddressTwice wants two pages, or a page and a file, of one
// address to be an error that names it.
func TestPrintRefusesAnAddressTwice(t *testing.T) {
	bundle := shared()
	bundle.Files["contents.html"] = nil
	if _, err := Print(studio(t), read(t, small(t)), bundle, Copy{}); err == nil || !strings.Contains(err.Error(), "contents.html") {
		t.Errorf("a page on a file's address: %v", err)
	}
	c := small(t)
	c.Units[0].Lessons[0].Address = "slip/index.html"
	if _, err := Print(studio(t), read(t, c), shared(), Copy{}); err == nil || !strings.Contains(err.Error(), "slip/index.html") {
		t.Errorf("two pages on one address: %v", err)
	}
}

// TestAllFailsAlike demands the first error in the order of the addresses,
// whichever worker fails first.
func TestAllFailsAlike(t *testing.T) {
	e, err := Print(studio(t), read(t, small(t)), shared(), Copy{})
	if err != nil {
		t.Fatal(err)
	}
	for at, text := range map[string]string{"slip/mix.html": "first", "wash/thin.html": "second"} {
		s := e.sheets[at]
		s.View = func(imprint.Place) (imprint.PageView, error) { return nil, errors.New(text) }
		e.sheets[at] = s
	}
	for range 20 {
		if all, err := everything(e); all != nil || err == nil || err.Error() != "page slip/mix.html: first" {
			t.Fatalf("got %v", err)
		}
	}
}

// TestEditionAnswersOnePage wants each page and file by itself as All prints it,
// in any order, and no answer where there is none.
func TestEditionAnswersOnePage(t *testing.T) {
	want := printed(t, small(t))
	e, err := Print(studio(t), read(t, small(t)), shared(), Copy{})
	if err != nil {
		t.Fatal(err)
	}
	addresses, pages := addressesOf(t, e), 0
	if len(addresses) != len(want) {
		t.Errorf("%d addresses, want %d", len(addresses), len(want))
	}
	for n := range addresses {
		at := addresses[len(addresses)-1-n]
		data, ok, err := e.File(at)
		if !ok || err != nil || string(data) != string(want[at]) {
			t.Errorf("%s: there %v, %v, %d bytes, want %d", at, ok, err, len(data), len(want[at]))
		}
		if strings.HasSuffix(at, ".html") {
			pages++
		}
	}
	if e.Pages() != pages {
		t.Errorf("%d pages, want %d", e.Pages(), pages)
	}
	if data, ok, err := e.File("nowhere.html"); data != nil || ok || err != nil {
		t.Errorf("a page that is not there: %q, %v, %v", data, ok, err)
	}
}

// strange is a view that lacks what every page prints.
type strange struct{ imprint.Framed }

// TestPrintOneIsStrict demands an error, not a hole, where a template asks for
// what its view does not have.
func TestPrintOneIsStrict(t *testing.T) {
	kind := imprint.Kind{Template: "contents"}
	view := func(imprint.Place) (imprint.PageView, error) { return strange{}, nil }
	if _, err := newPress(t, small(t)).printOne(imprint.Sheet{Address: address.Contents, Kind: &kind, View: view}); err == nil {
		t.Error("a view without units was printed as the contents")
	}
}
