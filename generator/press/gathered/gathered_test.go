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
	frame := &imprint.Frame{Course: c, Bundle: presstest.Bundle()}
	calculators := desk.New(theme, rules, r.Settings, c.Language)
	decoration, err := table.New(theme, rules, frame, calculators, r)
	if err != nil {
		t.Fatal(err)
	}
	return New(r, decoration, frame, setting.New(theme, calculators, decoration, register.New(r, decoration, frame, calculators), false), false)
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
	if last != "card-6" {
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
	}{{"card-1", 94, 51}, {"card-2", 101, 55}, {"card-3", 112, 61}, {"card-4", 122, 67}, {"card-5", 135, 74}} {
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

// TestFaultsSayWhyWhereItMayNot wants the table's reason beside the fault of what
// may not simply go on: of a yes the reason says why it holds, which is no cause.
func TestFaultsSayWhyWhereItMayNot(t *testing.T) {
	for _, c := range []struct {
		verdict course.Verdict
		want    string
	}{
		{course.Yes, "It blisters Thin it. Wet"},
		{course.Label, "It blisters Because. Thin it. Wet"},
		{course.Risky, "It blisters Because. Thin it. Wet"},
		{course.Never, "It blisters Because. Thin it. Wet"},
	} {
		i := opened(t, presstest.Small(t))
		m := course.Medium{ID: "m", On: map[string]course.Pair{"wet": {Verdict: c.verdict, Reason: "Because.", Fault: "It blisters.", Remedy: "Thin it."}}}
		faults := i.tableFaults(m, imprint.Place{Page: address.Faults})
		if len(faults) != 1 {
			t.Fatalf("%s: %d faults", c.verdict, len(faults))
		}
		f := faults[0]
		said := strings.Join(strings.Fields(string(f.Seen)+" "+string(f.Means)+" "+f.Where[0].Title), " ")
		if said != c.want {
			t.Errorf("%s: %q, want %q", c.verdict, said, c.want)
		}
	}
}

// TestFaultsAreWords wants signs in the table's sentences to stay signs: they come
// from a file that anybody may write, and are set as HTML.
func TestFaultsAreWords(t *testing.T) {
	i := opened(t, presstest.Small(t))
	pair := course.Pair{Verdict: course.Yes, Fault: "Cracks <b>under</b> 1 mm & more.", Remedy: "Coats < 2."}
	f := i.tableFaults(course.Medium{ID: "m", On: map[string]course.Pair{"wet": pair}}, imprint.Place{Page: address.Faults})[0]
	if f.Seen != "Cracks &lt;b&gt;under&lt;/b&gt; 1 mm &amp; more" || f.Means != "Coats &lt; 2." {
		t.Errorf("%q, %q", f.Seen, f.Means)
	}
}

// TestFaultOfTwoStatesStandsOnce wants what goes wrong in the same way in two
// states to be told once, with a link to each; what has another remedy is
// another fault.
func TestFaultOfTwoStatesStandsOnce(t *testing.T) {
	i := opened(t, presstest.Small(t))
	peels := course.Pair{Verdict: course.Risky, Reason: "Too dry.", Fault: "It peels.", Remedy: "Wait."}
	other := peels
	other.Remedy = "Damp it."
	m := course.Medium{ID: "m", On: map[string]course.Pair{"wet": peels, "leather-hard": peels, "bone-dry": other}}
	var said []string
	for _, f := range i.tableFaults(m, imprint.Place{Page: address.Faults}) {
		row := string(f.Seen) + ": " + string(f.Means)
		for _, where := range f.Where {
			row += " " + where.Title
		}
		said = append(said, row)
	}
	if want := []string{"It peels: Too dry. Wait. Wet Leather-hard", "It peels: Too dry. Damp it. Bone dry"}; !slices.Equal(said, want) {
		t.Errorf("%q, want %q", said, want)
	}
}

// TestEveryCardOfTheDemoBeginsWithItsHazards goes through the program's own table as
// the demo course has it.
func TestEveryCardOfTheDemoBeginsWithItsHazards(t *testing.T) {
	r := opened(t, presstest.Demo(t, "../../../content"))
	for n, s := range r.Cards() {
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
		t.Run(s.Title, func(t *testing.T) { presstest.Cared(t, r.Decoration, r.Word, piece, r.Decoration.Media[n].Care) })
	}
}
