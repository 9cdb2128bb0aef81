package desk

import (
	"testing"

	"slipbook/calculators/catalog"
)

func TestChoicesOfAnInput(t *testing.T) {
	p := demo(t)
	plan := catalog.Find("stage-plan")
	for _, tt := range []struct{ name, input, filled, chosen, first string }{
		{"needed and blank", "state", "", "", ""},
		{"filled in by its id", "state", "bone-dry", "bone-dry", ""},
		{"filled in by its label", "state", "Bone dry", "bone-dry", ""},
		{"a default stands", "places", "", "same", "same"},
		{"filled in over a default", "places", "different", "different", "same"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			box := p.box(plan, plan.Input(tt.input), tt.filled, "calculator.1")
			if got := box.Choices[0].ID; got != tt.first {
				t.Errorf("the first choice is %q, want %q", got, tt.first)
			}
			chosen := ""
			for _, c := range box.Choices {
				if c.Chosen {
					chosen += c.ID
				}
			}
			if chosen != tt.chosen {
				t.Errorf("chosen: %q, want %q", chosen, tt.chosen)
			}
		})
	}
}

func TestChoiceAmongAlternativesMayStayBlank(t *testing.T) {
	fit := catalog.Find("slip-fit")
	for i := range fit.Inputs {
		in := &fit.Inputs[i]
		if !in.Bodies || in.Group == "" {
			continue
		}
		if box := demo(t).box(fit, in, "", "calculator.1"); box.Choices[0].ID != "" || box.Default != "" {
			t.Errorf("%s cannot be left to its alternative: %+v", in.Name, box.Choices)
		}
		return
	}
	t.Error("slip-fit has no choice among its alternatives: this test looks at the wrong place")
}
