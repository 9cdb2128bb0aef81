package gathered

import (
	"os"
	"slices"
	"strings"
	"testing"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/desk"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
	"slipbook/generator/press/register"
	"slipbook/generator/press/setting"
	"slipbook/generator/press/table"
)

// opened opens the room for a course in the studio theme.
func opened(t *testing.T, c *course.Course) *Gathered {
	t.Helper()
	r, theme := presstest.Read(t, c), presstest.Studio(t)
	rules := &care.Rules{Decoration: c.Decoration, Addresses: r.Addresses}
	frame := &imprint.Frame{Course: c, Bundle: presstest.Bundle(), There: map[string]bool{}, FaultsOn: map[string]string{}}
	calculators := desk.New(theme, rules, r.Settings, c.Language)
	decoration, err := table.New(theme, rules, frame, calculators, r)
	if err != nil {
		t.Fatal(err)
	}
	return New(r, decoration, frame, setting.New(theme, calculators, decoration, register.New(r, decoration, frame, calculators), r.Course.Units, false), false)
}

// ofTheDemo is the room for a course with the demo course's decoration table.
func ofTheDemo(t *testing.T) *Gathered {
	t.Helper()
	demo, _ := new(course.Reader).Load(os.DirFS("../../../content"))
	return opened(t, &course.Course{Language: "en-GB", Decimal: '.', Measures: "metric", Decoration: demo.Decoration, Bodies: demo.Bodies})
}

// TestCardPlansForFood wants the order of work on a card to keep what is not for
// food off what food touches: whoever holds the card may be making a mug.
func TestCardPlansForFood(t *testing.T) {
	i := ofTheDemo(t)
	kept := 0
	for _, m := range i.Decoration.Media {
		said := false
		for _, step := range i.cardPlan(m) {
			said = said || strings.Contains(step.Caution, "Keep it off every surface that food, drink or lips touch.")
		}
		if want := !m.Food && m.Kind != "resist"; said != want && (want || m.Kind != "on-glaze") {
			t.Errorf("%s: the card says to keep it off food: %v", m.Name, said)
		}
		if said {
			kept++
		}
	}
	if kept == 0 {
		t.Error("no card keeps anything off food")
	}
}

// TestCardSize wants smaller type for more words, and a class for any number.
func TestCardSize(t *testing.T) {
	last := ""
	for n := 10; n < 3000; n *= 2 {
		pieces := make([]int, n)
		for k := range pieces {
			pieces[k] = 80
		}
		size := cardSize(presstest.Studio(t).Print.Card, pieces)
		if size < last || size == "" {
			t.Errorf("%d pieces: %q after %q", n, size, last)
		}
		last = size
	}
	if last != "card-3" {
		t.Errorf("the most words get %q", last)
	}
}

// TestCardTakesNoMoreThanItsSheet fills a card with pieces of one line and of
// two: what two columns of US Letter hold of them in each type was reckoned by
// hand, as 1400 points parted by 1.3 times the type, and 0.2 of a line between
// two pieces. One piece more calls for the next smaller type.
func TestCardTakesNoMoreThanItsSheet(t *testing.T) {
	for _, c := range []struct {
		class    string
		one, two int // so many fit
	}{{"card-1", 94, 51}, {"card-2", 101, 55}} {
		for letters, most := range map[int]int{40: c.one, 120: c.two} {
			pieces := slices.Repeat([]int{letters}, most)
			if got := cardSize(presstest.Studio(t).Print.Card, pieces); got != c.class {
				t.Errorf("%d pieces of %d letters are set as %s, want %s", most, letters, got, c.class)
			}
			if got := cardSize(presstest.Studio(t).Print.Card, append(pieces, letters)); got <= c.class {
				t.Errorf("%d pieces of %d letters are set as %s, and do not fit", most+1, letters, got)
			}
		}
	}
}

// TestEveryCardOfTheDemoBeginsWithItsHazards goes through the program's own table as
// the demo course has it.
func TestEveryCardOfTheDemoBeginsWithItsHazards(t *testing.T) {
	r := opened(t, presstest.Demo(t, "../../../content"))
	media := map[string]course.Medium{}
	for _, m := range r.Decoration.Media {
		media[address.Card(m.ID)] = m
	}
	for _, s := range r.Cards() {
		view, err := s.View(imprint.Place{Page: s.Address})
		if err != nil {
			t.Fatal(err)
		}
		page, err := imprint.Execute(r.Pages, "card", view)
		if err != nil {
			t.Fatal(err)
		}
		_, piece, _ := strings.Cut(string(page), `<div class="care">`)
		piece, _, _ = strings.Cut(piece, "<h3>")
		t.Run(s.Title, func(t *testing.T) { presstest.Cared(t, r.Decoration, r.Word, piece, media[s.Address].Care) })
	}
}
