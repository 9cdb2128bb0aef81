package catalog_test

import (
	"strings"
	"testing"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/calculators/stage/stagetest"
)

// TestPlanSaysWhatWasUnderstood wants an answer to carry its wish in the
// table's own words: for the choosers of the form, where they can hold it, and
// for whoever reads the plan, whole.
func TestPlanSaysWhatWasUnderstood(t *testing.T) {
	type given []form.Setting
	for _, tt := range []struct {
		given         given
		layers, coats string // for the choosers
		wish          string
	}{
		{given{{Name: "state", Text: "soft-leather-hard"}, {Name: "layers", Text: "slip trailed and scratched, clear glaze"}},
			"Coloured slip by Trailing then Scratching, Glaze", "",
			"Soft leather-hard: coloured slip (trailing, scratching), glaze."},
		{given{{Name: "state", Text: "bisque"}, {Name: "already", Text: "slip fixed, wash"}, {Name: "layers", Text: "wash"}, {Name: "finish", Text: "bare"}, {Name: "food", Text: "no"}},
			"Stain wash", "Coloured slip fixed, Stain wash",
			"Bisque: stain wash. On it already: coloured slip (fixed), stain wash (loose). It ends bare. Not for food or drink."},
		{given{{Name: "state", Text: "leather-hard"}, {Name: "layers", Text: "blue slip, carved clay"}, {Name: "places", Text: "different"}, {Name: "body", Text: "Yard paper clay"}},
			"", "", "Leather-hard: coloured slip, carving. Each on a place of its own. Of Yard paper clay."},
	} {
		a := catalog.Solve("stage-plan", tt.given, form.Settings{Table: stagetest.Table()})
		if len(a.Errors) > 0 {
			t.Errorf("%v: %v", tt.given, a.Errors)
			continue
		}
		chosen := map[string]string{}
		for _, c := range a.Chosen {
			chosen[c.Input] = c.Text
		}
		if chosen["layers"] != tt.layers || chosen["already"] != tt.coats {
			t.Errorf("%v: the choosers get %v", tt.given, chosen)
		}
		for _, r := range a.Outputs {
			if r.Name == "wish" && r.Text != tt.wish {
				t.Errorf("%v: planned for %q, want %q", tt.given, r.Text, tt.wish)
			}
		}
	}
}

// TestPlanOfTooMuch wants a wish that takes more work than a page can do to be
// refused with what to write instead.
func TestPlanOfTooMuch(t *testing.T) {
	table, wishes := stagetest.Wide(70, 40)
	for _, w := range wishes {
		if !table.Plan(w).TooMany {
			continue
		}
		layers := ""
		for _, layer := range w.Layers {
			layers += table.Media[layer.Medium].Name + ", "
		}
		a := catalog.Solve("stage-plan", []form.Setting{{Name: "state", Text: table.States[w.State].ID}, {Name: "layers", Text: layers}, {Name: "places", Text: "different"}, {Name: "food", Text: "no"}}, form.Settings{Table: table})
		if len(a.Errors) != 1 || a.Errors[0].Input != "layers" || !strings.Contains(a.Errors[0].Text, "too many ways") || len(a.Outputs) > 0 {
			t.Errorf("%s: %+v", layers, a)
		}
		return
	}
	t.Error("no wish takes too much work")
}

// TestPlanSaysThatABarePotIsNotForFood wants that before anything else in the
// headline, also of what stands in for a wish that cannot be had.
func TestPlanSaysThatABarePotIsNotForFood(t *testing.T) {
	for _, c := range []struct{ layers, begins string }{
		{"wash", "A pot that ends bare is not"},
		{"wash, slip", "That does not work"},
	} {
		for _, food := range []string{"yes", "no"} {
			a := catalog.Solve("stage-plan", []form.Setting{{Name: "state", Text: "bisque"}, {Name: "layers", Text: c.layers}, {Name: "finish", Text: "bare"}, {Name: "food", Text: food}}, form.Settings{Table: stagetest.Table()})
			said := strings.Contains(a.Headline, "A pot that ends bare is not for food or drink.")
			if said != (food == "yes") || said && !strings.HasPrefix(a.Headline, c.begins) {
				t.Errorf("%s, for food: %s: %s %v", c.layers, food, a.Headline, a.Errors)
			}
		}
	}
}
