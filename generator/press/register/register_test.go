package register

import (
	"slices"
	"strings"
	"testing"

	"slipbook/calculators/form"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
)

// kept is a studio with a clay, a stain of which nobody can tell the class, a harmless
// whiting and a slip of the three, in the small course.
func kept(t *testing.T) (*Register, *course.Recipe) {
	t.Helper()
	c := presstest.Small(t)
	sheet := course.Sheet{Supplier: "Supplier A (invented)", Date: "2026-01-10", ReadBy: "Nobody", Read: "2026-02-01", Review: "2028-02-01", Invented: true, Spots: course.Spots{}}
	c.Materials = []*course.Material{
		{ID: "clay", Own: true, Name: "Clay", What: "A clay.", Density: 2.6, Care: course.Care{Hazards: []string{"dust"}},
			Sheet: sheet, Class: course.Class{Says: course.Classed, Signal: "Danger", Pictograms: []string{"GHS08"}, Statements: []string{"H350i", "H372"}, Precautions: []string{"P260", "P501"}}},
		{ID: "stain", Own: true, Name: "Stain", What: "A stain.", Care: course.Care{Hazards: []string{"blade"}, Who: course.WithInstructor},
			Sheet: sheet, Class: course.Class{Says: course.ClassedOpen, Signal: "Warning", Pictograms: []string{"GHS07"}, Statements: []string{"H317"}, Precautions: []string{"P261"}}},
		{ID: "whiting", Own: true, Name: "Whiting", What: "Chalk.", Sheet: sheet, Class: course.Class{Says: course.NotClassed}},
	}
	recipe := &course.Recipe{ID: "slip", Title: "Slip", About: "A slip.", Medium: "coloured-slip", States: []string{"wet"}, Cone: "6", Clear: course.NoClear, Food: "no", Water: 75,
		Base:      []course.Share{{Material: "clay", Amount: 90}, {Material: "whiting", Amount: 10}},
		Additions: []course.Share{{Material: "stain", Amount: 8, Of: course.OfBase}},
		Versions:  []course.Version{{Number: 1, Date: "2026-01-01"}, {Number: 3, Date: "2026-03-01"}, {Number: 2, Date: "2026-02-01"}}}
	c.Recipes = []*course.Recipe{recipe}
	return registerOf(t, c), recipe
}

func TestClassesTogether(t *testing.T) {
	r, recipe := kept(t)
	v := r.classOf(r.reading.Course.MaterialsOf(recipe)...)
	if v.Signal != "Danger" || v.Not || !slices.Equal(v.Unclear, []string{"Stain"}) {
		t.Errorf("%+v", v)
	}
	if want := []string{"May cause cancer by inhalation", "Causes damage to organs through prolonged or repeated exposure", "May cause an allergic skin reaction"}; !slices.Equal(v.Statements, want) {
		t.Errorf("statements %q, want the graver first: %q", v.Statements, want)
	}
	if len(v.Precautions) != 2 || !strings.HasPrefix(v.Precautions[0], "Do not breathe") {
		t.Errorf("precautions %q", v.Precautions)
	}
	if len(v.Pictograms) != 2 || v.Pictograms[1].Icon != "ghs08" {
		t.Errorf("pictograms %v", v.Pictograms)
	}
	if harmless := r.classOf(r.reading.Course.Materials[2]); !harmless.Not || harmless.Signal != "" {
		t.Errorf("%+v", harmless)
	}
}

// TestRecipeCarriesItsMaterials wants the hazards of all materials and of the medium,
// and the strictest person, before all else on the page of a recipe.
func TestRecipeCarriesItsMaterials(t *testing.T) {
	r, _ := kept(t)
	if m, there := r.Decoration.FindMedium("coloured-slip"); there {
		m.Care = course.Care{}
	}
	owed := r.Owes()[address.Recipe("slip")]()
	if len(owed) != 1 || owed[0].Form != care.Whole || owed[0].Care.Who != care.WhoWords[course.WithInstructor] {
		t.Fatalf("%+v", owed)
	}
	var ids []string
	for _, h := range owed[0].Care.Hazards {
		ids = append(ids, h.ID)
	}
	if !slices.Equal(ids, []string{"dust", "blade"}) {
		t.Errorf("hazards %q", ids)
	}
}

func TestWeighingOrder(t *testing.T) {
	r, recipe := kept(t)
	v := r.order(recipe, []form.Setting{{Name: "dry-mass", Text: "1080 g"}}, imprint.Place{Page: "recipes/slip.html"})
	var rows []string
	for _, row := range v.Rows {
		rows = append(rows, row.What+" "+row.Weigh)
	}
	if want := "Clay 900 g"; len(rows) != 4 || rows[1] != want || rows[2] != "Whiting 100 g" || rows[3] != "Stain 80 g" {
		t.Errorf("rows %q", rows)
	}
}

// TestLabelsLeaveNothingOutInSilence wants the large label to say all, and a smaller
// one that it says less.
func TestLabelsLeaveNothingOutInSilence(t *testing.T) {
	r, recipe := kept(t)
	text := r.recipeText(recipe, imprint.Place{Page: "labels/recipe-slip-a4.html"})
	if text.Version == nil || text.Version.Number != 3 {
		t.Errorf("version %v", text.Version)
	}
	large := text.fitted(labelFormats[0])
	if large.More || len(large.Statements) != 3 || len(large.Precautions) != 3 || len(large.Hazards) != 2 || large.Parts == "" {
		t.Errorf("large: %+v", large)
	}
	for _, f := range []labelFormat{{letters: 60}, {letters: 60, Whole: true, Roomy: true}} {
		small := text.fitted(f)
		if !small.More || len(small.Statements) == 3 || small.InClass.Signal != "Danger" || !slices.Equal(small.InClass.Unclear, []string{"Stain"}) {
			t.Errorf("small: %+v", small)
		}
	}
}

// TestQRCode wants a code of the size that the standard gives for so long a text, with
// its white margin.
func TestQRCode(t *testing.T) {
	code, err := qrCode("https://handbook.example/recipes/slip.html")
	if err != nil || code.Side != 37 || code.Path == "" {
		t.Error(err, code)
	}
	if _, err := qrCode(strings.Repeat("x", 4000)); err == nil {
		t.Error("a text that no code holds is drawn")
	}
}

// TestLabelsOfTheUnitedStates wants labels there to say where the rest of the hazards
// is told, on the smallest one too, and others not to.
func TestLabelsOfTheUnitedStates(t *testing.T) {
	for law, want := range map[string]bool{course.LawUS: true, "GB": false, "": false} {
		r, recipe := kept(t)
		r.reading.Course.Law = law
		at := imprint.Place{Page: address.RecipeLabel(recipe.ID, "us")}
		text := r.recipeText(recipe, at)
		small := text.fitted(labelFormats[len(labelFormats)-1])
		if text.AsUS != want || small.AsUS != want || !small.More {
			t.Errorf("%q: %v on all, %v on the smallest", law, text.AsUS, small.AsUS)
		}
	}
}

func TestLimitsOfOneLaw(t *testing.T) {
	r, _ := kept(t)
	block := &markup.Block{Limits: &markup.Limits{About: markup.Name{ID: "food-leach"}}}
	r.reading.Course.Law = "GB"
	if v := r.Limits(block, "").(limitsView); v.Compare || len(v.Laws) != 1 || !slices.Equal(v.Laws[0].Laws, []string{"GB"}) || len(v.Laws[0].Rows) != 6 {
		t.Errorf("of Great Britain: %+v", v)
	}
	r.reading.Course.Law = ""
	if v := r.Limits(block, "").(limitsView); !v.Compare || len(v.Laws) != 3 {
		t.Errorf("of a course without a law: %+v", v)
	}
}
