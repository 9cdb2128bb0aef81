package register

import (
	"slices"
	"strings"
	"testing"

	"slipbook/generator/address"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// TestPowderIsForTheFitTested wants tubs of powder to be opened under the extraction by
// those on the list, or by fewer, wherever the wet mix is brushed.
func TestPowderIsForTheFitTested(t *testing.T) {
	r := shown(t)
	for _, m := range r.reading.Course.Materials {
		c := r.materialSafety(m, imprint.Place{Page: address.Material(m.ID)})
		if !slices.ContainsFunc(m.Hazards, func(id string) bool { return slices.Contains([]string{"raw-metal", "dry-powder", "stain-powder"}, id) }) {
			continue
		}
		if want := []string{"under the dust extraction, at a bench wiped wet"}; !slices.Equal(c.Places, want) {
			t.Errorf("%s is opened %q, want %q", m.ID, c.Places, want)
		}
		if c.Who == "" {
			t.Errorf("any student may open %s", m.ID)
		}
	}
	trimmings, _ := r.reading.Course.FindMaterial("heron-trimmings")
	if got := r.materialSafety(trimmings, imprint.Place{}).Who; got != care.FitTested {
		t.Errorf("trimmings are for %q", got)
	}
}

// TestLabelsOfWetBuckets wants of a wet mix what it asks for wet and dry, who mixes and who
// brushes it, and no weight to tell a wash by.
func TestLabelsOfWetBuckets(t *testing.T) {
	r := shown(t)
	for id, want := range map[string]struct{ worn, who, mixing string }{
		"white-slip-cone-6": {r.Say("label-wet"), "", ""},
		"wren-blue-slip":    {r.Say("label-wet-gloves"), "", ""},
		"soot-wash-bare":    {r.Say("label-wet-gloves"), "", ""},
		"red-sigillata":     {r.Say("label-wet-eyes"), "", "who-instructor"},
		"iron-wash":         {r.Say("label-wet-gloves"), "who-with-instructor", ""},
	} {
		recipe, there := r.reading.Course.FindRecipe(id)
		if !there {
			t.Fatal(id)
		}
		l := r.recipeText(recipe, imprint.Place{Page: address.RecipeLabel(id, "a4")})
		if worn := l.InClass.Precautions[0]; worn != want.worn || l.Who != want.who || l.Mixing != want.mixing {
			t.Errorf("%s: %q, for %q, mixed by %q; want %+v", id, worn, l.Who, l.Mixing, want)
		}
		if all := strings.Join(l.InClass.Precautions, " "); strings.Contains(all, "Wear respiratory") || strings.Contains(all, "Wear protective") || strings.Contains(all, "vapors") {
			t.Errorf("%s: %s", id, all)
		}
		if wash := strings.Contains(id, "-wash"); wash == (l.Gravity != "") {
			t.Errorf("%s has the number %q", id, l.Gravity)
		}
	}
}

// TestGraverStatementOfAMix leaves the milder of two statements out of a mix, and of nothing
// else.
func TestGraverStatementOfAMix(t *testing.T) {
	for given, want := range map[string]string{"H350i H372 H373": "H350i H372", "H373": "H373", "H317 H373": "H317 H373"} {
		if got := strings.Join(graver(strings.Fields(given)), " "); got != want {
			t.Errorf("%s became %s, want %s", given, got, want)
		}
	}
}
