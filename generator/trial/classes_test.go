//go:build judges

package trial

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// fullest is a class as large as a sheet has room for: four mixes of many tubs and
// steps, with tubs that only the instructor opens.
const fullest = `
  - id: fullest
    title: The fullest class that a sheet has room for
    people: 60
    when: 2027-04-01
    with: instructor
    lesson: units/underglaze/clear-over-colour.md
    mix:
      - {recipe: yard-white-engobe, each: 80 mL}
      - {recipe: brushing-clear-cone-6, litres: 40}
      - {recipe: red-sigillata, each: 30 mL}
      - {recipe: iron-wash, each: 20 mL}
    tubs: [black-cobalt-oxide, manganese-dioxide, copper-carbonate]
    put-out:
      - 60 bisque cups, rinsed and dry, and 60 test tiles of the same clay
      - 60 flat brushes, 60 round ones and 60 fine flat sponges
      - three buckets of rinsing water and the settling bucket
      - gloves in three sizes, aprons, and safety glasses for everybody
    firing: 60 cups fill the large kiln, on four shelves, in the first week of April.
`

// TestClassSheetsPrintOnTwoPages prints the sheet of each class, and of the fullest, on
// both papers: on two pages at most, with every tub, amount and step on them.
func TestClassSheetsPrintOnTwoPages(t *testing.T) {
	t.Parallel()
	h := withClass(t, fullest)
	b := open(t)
	for _, address := range h.all(t, "class") {
		for _, p := range papers {
			b.visit(h.home + address)
			b.ready()
			s := b.print(p)
			if s.pages > 2 || !s.is(p, false) {
				t.Errorf("%s on %s: %d pages of %g by %g points, want two upright at most", address, p.name, s.pages, s.width, s.height)
			}
			said := letters(strings.Join(s.words(t, asDrawn), " "))
			for _, words := range ask[[]string](b, `[...document.querySelectorAll(".session h1, .session h2, .session li, .session .care dd, .session .order-name, .session tbody td:not(.tick):not(.shelf-class), .session th[scope=row], .session .order-note, .session-done")].map(e => e.textContent)`) {
				if !strings.Contains(said, letters(words)) {
					t.Errorf("%s on %s: the printed sheet lacks %q", address, p.name, words)
				}
			}
		}
	}
}

// TestStockBookPrints wants the stock book on its side with every tub of the register,
// the names of its columns on each page, and room to write.
func TestStockBookPrints(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	for _, p := range papers {
		b.visit(h.home + h.one(t, "stock"))
		b.ready()
		s := b.print(p)
		if s.pages < 2 || s.pages > 8 || !s.is(p, true) {
			t.Errorf("%s: %d pages of %g by %g points, want a few on their sides", p.name, s.pages, s.width, s.height)
		}
		pages := s.words(t, asDrawn)
		for n, page := range pages {
			if said := letters(page); n < len(pages)-1 && !strings.Contains(said, "OntheshelfDateBatchnumberOrdered") {
				t.Errorf("%s, page %d: without the names of its columns", p.name, n+1)
			}
		}
		said := letters(strings.Join(pages, " "))
		tubs := ask[[]string](b, `[...document.querySelectorAll(".stock tbody th > a")].map(e => e.textContent)`)
		if len(tubs) < 40 {
			t.Errorf("%d tubs", len(tubs))
		}
		for _, tub := range tubs {
			if !strings.Contains(said, letters(tub)) {
				t.Errorf("%s: the stock book lacks %q", p.name, tub)
			}
		}
	}
}

// withClass is the demo course with one more class.
func withClass(t *testing.T, class string) *handbook {
	t.Helper()
	content, dir := filepath.Join(t.TempDir(), "content"), filepath.Join(t.TempDir(), "handbook")
	err := os.CopyFS(content, os.DirFS(root+"/content"))
	file := filepath.Join(content, "classes.yaml")
	classes, readErr := os.ReadFile(file)
	if err == nil && readErr == nil {
		err = os.WriteFile(file, append(classes, class...), 0o666)
	}
	if err == nil {
		err = publishTo(dir, nil, "--content", content)
	}
	if err != nil || readErr != nil {
		t.Fatal(fmt.Errorf("%w, %w", err, readErr))
	}
	h, err := serve(dir)
	if err != nil {
		t.Fatal(err)
	}
	return h
}
