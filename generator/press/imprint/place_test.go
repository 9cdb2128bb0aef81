package imprint

import (
	"testing"

	"slipbook/generator/address"
)

// TestPlaceOnAPage wants addresses from the page, and ids and levels as they are.
func TestPlaceOnAPage(t *testing.T) {
	at := Place{Page: "slip/mix.html"}
	for to, want := range map[string]string{
		"":                           "",
		"slip/mix.html#weigh-first":  "#weigh-first",
		"slip/measure.html":          "measure.html",
		"glossary.html#bisque":       "../glossary.html#bisque",
		"calculators/x.html?a=1#b":   "../calculators/x.html?a=1#b",
		address.CalculatorFolder:     "../calculators/",
		"book/1.html#page.slip.a.b":  "../book/1.html#page.slip.a.b",
		"pictures/jar-ABCDEFGH.jpeg": "../pictures/jar-ABCDEFGH.jpeg",
	} {
		if got := at.To(to); got != want {
			t.Errorf("%s is %q, want %q", to, got, want)
		}
	}
	if id := at.ID("note.1"); id != "note.1" {
		t.Errorf("id %q", id)
	}
	for level := 1; level <= 6; level++ {
		if got := at.Level(level); got != level {
			t.Errorf("level %d became %d", level, got)
		}
	}
}

// twoVolumes are the chapters of a book on two pages.
func twoVolumes() Chapters {
	return Chapters{
		"index.html":         {"0", "book/0.html"},
		"slip/index.html":    {"1", "book/0.html"},
		"slip/mix.html":      {"1.1", "book/0.html"},
		"wash/thin.html":     {"2.1", "book/2.html"},
		address.Glossary:     {"D.4", "book/2.html"},
		address.Hazards:      {"D.3", "book/0.html"},
		"states/bisque.html": {"A.4", "book/0.html"},
	}
}

// TestPlaceInTheBook wants what the book holds to be within it, with the number of
// another chapter behind the sign, and what it does not hold beside it.
func TestPlaceInTheBook(t *testing.T) {
	at := Place{Page: "slip/mix.html", Book: twoVolumes()}
	for to, want := range map[string]string{
		"":                          "",
		"slip/mix.html":             "#page.slip.mix",
		"slip/mix.html#weigh-first": "#page.slip.mix.weigh-first",
		"slip/index.html":           "#page.slip.index\t1",
		"states/bisque.html#a.b":    "#page.states.bisque.a.b\tA.4",
		"wash/thin.html":            "2.html#page.wash.thin\t2.1",
		"wash/thin.html#note.1":     "2.html#page.wash.thin.note.1\t2.1",
		"glossary.html#bisque":      "2.html#page.glossary.bisque", // everybody finds that chapter
		"hazards.html#dust":         "#page.hazards.dust",
		"hazards.html":              "#page.hazards\tD.3",
		"calculators/x.html?a=1#b":  "../calculators/x.html?a=1#b",
		address.CalculatorFolder:    "../calculators/",
		"chart.html":                "../chart.html",
	} {
		if got := at.To(to); got != want {
			t.Errorf("%s is %q, want %q", to, got, want)
		}
	}
	contents := Place{Page: address.Book, Book: twoVolumes()}
	if got := contents.To("wash/thin.html"); got != "book/2.html#page.wash.thin\t2.1" {
		t.Errorf("from the contents %q", got)
	}
	if got := at.ID("note.1"); got != "page.slip.mix.note.1" {
		t.Errorf("id %q", got)
	}
	if got := at.ID(""); got != "" {
		t.Errorf("no id became %q", got)
	}
	for level, want := range map[int]int{1: 2, 2: 3, 5: 6, 6: 6} {
		if got := at.Level(level); got != want {
			t.Errorf("level %d became %d, want %d", level, got, want)
		}
	}
}
