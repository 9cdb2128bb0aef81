package desk

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/calculators/quantity"
)

func TestTakeUnits(t *testing.T) {
	for _, tt := range []struct {
		name string
		kind quantity.Kind
		in   []string
		out  []string
		unit string
	}{
		{"one with a unit", quantity.Mass, []string{"62.4 g"}, []string{"62.4"}, "g"},
		{"the longer unit", quantity.Mass, []string{"1 kg"}, []string{"1"}, "kg"},
		{"no space", quantity.Volume, []string{"100mL"}, []string{"100"}, "mL"},
		{"a unit of two words", quantity.Volume, []string{"2 US pint"}, []string{"2"}, "US pint"},
		{"none", quantity.Mass, []string{"62.4"}, []string{"62.4"}, ""},
		{"two units in one", quantity.Mass, []string{"2 lb 3 oz"}, []string{"2 lb 3"}, "oz"},
		{"a fraction", quantity.Length, []string{"4 1/2 in"}, []string{"4 1/2"}, "in"},
		{"a list with blanks", quantity.Length, []string{"10 cm", "10.1 cm", ""}, []string{"10", "10.1", ""}, "cm"},
		{"a list of two minds", quantity.Length, []string{"10 cm", "101 mm"}, []string{"10 cm", "101 mm"}, ""},
		{"a unit alone", quantity.Mass, []string{"g"}, []string{"g"}, ""},
		{"words", quantity.Mass, []string{"a jug"}, []string{"a jug"}, ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			texts := append([]string(nil), tt.in...)
			unit := takeUnits(texts, tt.kind)
			if unit != tt.unit {
				t.Errorf("unit %q, want %q", unit, tt.unit)
			}
			if diff := cmp.Diff(tt.out, texts); diff != "" {
				t.Errorf("texts (-want +got):\n%s", diff)
			}
		})
	}
}

func TestPieces(t *testing.T) {
	for _, tt := range []struct {
		text string
		list bool
		want []string
	}{
		{"1 745", false, []string{"1 745"}},
		{"100 101 102", true, []string{"100", "101", "102"}},
		{"4 1/2; 4 5/8", true, []string{"4 1/2", "4 5/8"}},
		{"4 1/2", true, []string{"4 1/2"}},
		{"100 mm 101 mm", true, []string{"100 mm 101 mm"}},
	} {
		if diff := cmp.Diff(tt.want, pieces(tt.text, tt.list)); diff != "" {
			t.Errorf("%q (-want +got):\n%s", tt.text, diff)
		}
	}
}

func TestAlternativesStandTogether(t *testing.T) {
	p := demo(t)
	shape := func(choices []Choice) [][][]string {
		var all [][][]string
		for _, c := range choices {
			var sides [][]string
			for _, side := range c.Sides {
				var names []string
				for _, b := range side {
					names = append(names, b.Name)
				}
				sides = append(sides, names)
			}
			all = append(all, sides)
		}
		return all
	}
	first, more := p.Boxes(catalog.Find("slip-density"), nil, "calculator.1", "")
	if diff := cmp.Diff([][][]string{{{"mass"}}, {{"tare"}}, {{"volume"}, {"water-mass"}}}, shape(first)); diff != "" {
		t.Errorf("in sight (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff([][][]string{{{"solids-density"}}, {{"temperature"}}, {{"mass-resolution"}}, {{"volume-tolerance"}}, {{"line-tolerance"}}}, shape(more)); diff != "" {
		t.Errorf("behind more (-want +got):\n%s", diff)
	}
	first, _ = p.Boxes(catalog.Find("wash-mix"), nil, "calculator.1", "")
	if diff := cmp.Diff([][]string{{"volume"}, {"people", "each"}}, shape(first)[0]); diff != "" {
		t.Errorf("people and each are one side (-want +got):\n%s", diff)
	}
}

// TestKeysFitWhatIsTyped wants a phone's keyboard with the stroke and the space
// where fractions and lists are typed, and steps that fit what is measured.
func TestKeysFitWhatIsTyped(t *testing.T) {
	for _, c := range []struct {
		name       string
		in         form.Input
		mode, step string
	}{
		{"people", form.Input{Whole: true}, "numeric", "1"},
		{"a length, in inches too", form.Input{Kind: quantity.Length}, "text", ""},
		{"a list of masses", form.Input{Kind: quantity.Mass, List: true}, "text", ""},
		{"a mass", form.Input{Kind: quantity.Mass}, "decimal", ""},
		{"a specific gravity", form.Input{Kind: quantity.Gravity}, "decimal", "0.01"},
	} {
		if mode, step := keypad(&c.in), c.in.Step(); mode != c.mode || step != c.step {
			t.Errorf("%s: keys %q and step %q, want %q and %q", c.name, mode, step, c.mode, c.step)
		}
	}
}
