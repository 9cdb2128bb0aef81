//go:build judges

package trial

import (
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// smallest is the smallest type that a card may be printed in, in points.
const smallest = 8

// onCard returns the pieces of text on a card.
const onCard = `[...document.querySelectorAll("h1, .card :is(h2, h3, p, li, dt, dd, th, td)")].filter(e => e.checkVisibility()
	&& !e.querySelector("p, li, dt, dd")).map(` + asPrinted + `).map(words => words.trim()).filter(words => words)`

func TestCardsPrintOnOneSheetEach(t *testing.T) {
	t.Parallel()
	h := published(t)
	tour(t, h.all(t, "course-card", "card"), func(b *tab, address string) {
		b.visit(h.home + address)
		pieces := ask[[]string](b, onCard)
		if len(pieces) < 10 {
			b.t.Errorf("%s has only %d pieces of text: this test looks at the wrong place", address, len(pieces))
		}
		for _, p := range papers {
			s := b.print(p)
			if s.pages != 1 || !s.is(p, false) {
				b.t.Errorf("%s, %s: %d pages of %g by %g points", address, p.name, s.pages, s.width, s.height)
			}
			if size := s.smallestType(b.t); size < smallest {
				b.t.Errorf("%s, %s: type of %.1f points, the least is %d", address, p.name, size, smallest)
			}
			said := letters(strings.Join(s.words(b.t, asDrawn), " "))
			for _, words := range pieces {
				if !strings.Contains(said, letters(words)) {
					b.t.Errorf("%s, %s: the sheet lacks %q", address, p.name, words)
				}
			}
		}
	})
}

// fontSize is a size of type, and pageHeight the height of a page, as pdftohtml
// writes them in units of its own.
var (
	fontSize   = regexp.MustCompile(`<fontspec [^>]*size="(\d+)"`)
	pageHeight = regexp.MustCompile(`<page [^>]*height="(\d+)"`)
)

// smallestType returns the size of the smallest type in a document in points, to
// a sixth of a point.
func (s sheet) smallestType(t *testing.T) float64 {
	t.Helper()
	out, err := exec.Command("pdftohtml", "-xml", "-stdout", "-i", "-zoom", "3", s.file).Output()
	if err != nil {
		t.Fatalf("pdftohtml: %v", err)
	}
	height := pageHeight.FindSubmatch(out)
	sizes := fontSize.FindAllSubmatch(out, -1)
	if height == nil || len(sizes) == 0 {
		t.Fatalf("pdftohtml tells no sizes:\n%.400s", out)
	}
	least := 1e9
	for _, m := range sizes {
		size, err := strconv.ParseFloat(string(m[1]), 64)
		if err != nil {
			t.Fatal(err)
		}
		least = min(least, size)
	}
	return least * s.height / number(t, height[1])
}
