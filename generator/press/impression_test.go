package press

import (
	"errors"
	"strings"
	"testing"
)

func BenchmarkPrint(b *testing.B) {
	p := newPress(b, small(b))
	r, shelf := read(b, p), shared()
	b.ReportAllocs()
	for b.Loop() {
		e, err := p.Print(r, shelf)
		if err != nil || len(e) == 0 {
			b.Fatal(err)
		}
	}
}

func TestBindRefusesAnAddressTwice(t *testing.T) {
	sheets := []sheet{{address: "slip/index.html"}, {address: "contents.html"}}
	pages := [][]byte{[]byte("a"), []byte("b")}
	if _, err := bind(sheets, pages, map[string][]byte{"contents.html": nil}); err == nil || !strings.Contains(err.Error(), "contents.html") {
		t.Errorf("a page on a file's address: %v", err)
	}
	sheets[1].address = "slip/index.html"
	if _, err := bind(sheets, pages); err == nil || !strings.Contains(err.Error(), "slip/index.html") {
		t.Errorf("two pages on one address: %v", err)
	}
}

// TestPrintAllFailsAlike demands the first error in the order of the sheets,
// whichever worker fails first.
func TestPrintAllFailsAlike(t *testing.T) {
	i := newImpression(newPress(t, small(t)), read(t, newPress(t, small(t))), shared())
	fault := func(text string) func() (any, error) {
		return func() (any, error) { return nil, errors.New(text) }
	}
	for range 20 {
		_, err := i.printAll([]sheet{i.contentsSheet(), {"a.html", "lesson", fault("first")}, {"b.html", "lesson", fault("second")}})
		if err == nil || err.Error() != "page a.html: first" {
			t.Fatalf("got %v", err)
		}
	}
}

// TestPrintOneIsStrict demands an error, not a hole, where a template asks for
// what its view does not have.
func TestPrintOneIsStrict(t *testing.T) {
	p := newPress(t, small(t))
	i := newImpression(p, read(t, p), shared())
	_, err := i.printOne(sheet{"x.html", "contents", func() (any, error) { return map[string]any{}, nil }})
	if err == nil {
		t.Error("a view without a shell was printed")
	}
}
