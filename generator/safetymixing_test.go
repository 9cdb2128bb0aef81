package main

import (
	"os"
	"slices"
	"strings"
	"testing"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/calculators/stage"
	"slipbook/generator/course"
	"slipbook/generator/proof"
)

// demoCourse is the demo as it is read, with the table that its pages plan with.
func demoCourse(t *testing.T) (*course.Course, *stage.Table) {
	t.Helper()
	c, found := new(course.Reader).Load(os.DirFS("../content"))
	if len(found) > 0 {
		t.Fatal(found)
	}
	return c, proof.Table(c, c.Language, "")
}

// onlyFired are hazards that a firing has, of what burns out.
var onlyFired = []string{"kiln-fume", "hot-kiln", "splinter"}

// TestMixingSaysWhatTheSheetsSay holds what stands beside a plan, for each medium that
// the studio mixes, to the files of the register: nothing of it is dropped.
func TestMixingSaysWhatTheSheetsSay(t *testing.T) {
	c, table := demoCourse(t)
	mixed := 0
	for _, m := range table.Media {
		own, _ := c.Decoration.FindMedium(m.ID)
		for _, r := range c.Recipes {
			if r.Medium != m.ID {
				continue
			}
			mixed++
			if !slices.ContainsFunc(m.Recipes, func(one stage.Recipe) bool { return one.Name == r.Title }) {
				t.Errorf("%s: %q is not told of", m.ID, r.Title)
			}
			for _, tub := range c.MaterialsOf(r) {
				wants := slices.Concat(tub.Wear, tub.Metals)
				for _, h := range c.Decoration.Hazards {
					if slices.Contains(tub.Hazards, h.ID) && !slices.Contains(own.Hazards, h.ID) && !slices.Contains(onlyFired, h.ID) {
						wants = append(wants, h.Short)
					}
				}
				if tub.Class.Says == course.ClassedOpen {
					wants = append(wants, tub.Name)
				}
				if tub.Class.Signal == "Danger" {
					wants = append(wants, "Danger")
				}
				for _, want := range wants {
					if !strings.Contains(m.Mixing, want) {
						t.Errorf("%s: of %s in %s, %q is missing in %q", m.ID, tub.Name, r.Title, want, m.Mixing)
					}
				}
			}
		}
	}
	if mixed < 10 {
		t.Errorf("%d recipes: this test looks at the wrong place", mixed)
	}
}

// TestWetMixKeepsItsAllergen wants whoever puts a mix on to read what its sheets say of
// skin and eyes, with the gloves and without the respirator that powder asks for.
func TestWetMixKeepsItsAllergen(t *testing.T) {
	c, table := demoCourse(t)
	for _, m := range table.Media {
		wet := strings.Join(m.Wet, "\n")
		for _, r := range c.Recipes {
			if r.Medium != m.ID {
				continue
			}
			for _, tub := range c.MaterialsOf(r) {
				if slices.Contains(tub.Class.Statements, "H317") && (!strings.Contains(wet, r.Title) || !strings.Contains(wet, "May cause an allergic skin reaction") || !strings.Contains(wet, "nitrile gloves")) {
					t.Errorf("%s: %s holds %s, and wet it says %q", m.ID, r.Title, tub.Name, wet)
				}
			}
		}
		if strings.Contains(wet, "respirator") {
			t.Errorf("%s: putting it on asks for what powder does: %q", m.ID, wet)
		}
	}
}

// TestPlanTellsOfMixing wants every plan with a medium that is mixed here to say what
// mixing calls for, and each step that lays it on what stays in the wet bucket.
func TestPlanTellsOfMixing(t *testing.T) {
	_, table := demoCourse(t)
	for _, c := range []struct{ state, layers, media string }{
		{"leather-hard", "slip poured then scratched, clear glaze", "Coloured slip|Glaze"},
		{"bisque", "stain wash wiped back, clear glaze", "Stain wash|Glaze"},
		{"leather-hard", "slip", "Coloured slip|Glaze"}, // the glaze is added
		{"bone-dry", "slip", "Underglaze|"},             // what may stand in its place
		{"bisque", "wax", "Glaze"},
	} {
		a := catalog.Solve("stage-plan", []form.Setting{{Name: "state", Text: c.state}, {Name: "layers", Text: c.layers}}, form.Settings{Table: table})
		var told []string
		for _, m := range a.Mixed {
			told = append(told, m.Of)
		}
		for medium := range strings.SplitSeq(c.media, "|") {
			i := slices.IndexFunc(table.Media, func(m stage.Medium) bool { return m.Name == medium })
			if i < 0 || !slices.ContainsFunc(rowsOf(a), func(row map[string]string) bool {
				return strings.HasPrefix(row["title"], "Put on "+strings.ToLower(medium))
			}) {
				continue
			}
			if m := table.Media[i]; len(m.Recipes) > 0 && !slices.ContainsFunc(a.Mixed, func(one form.Mixed) bool {
				return one.Of == m.Name && one.Says == m.Mixing && len(one.By) == len(m.Recipes)
			}) {
				t.Errorf("%s, %s: the plan puts %s on and tells of mixing %q", c.state, c.layers, medium, told)
			}
			for _, row := range rowsOf(a) {
				if !strings.HasPrefix(row["title"], "Put on "+strings.ToLower(medium)) {
					continue
				}
				for _, wet := range table.Media[i].Wet {
					if !strings.Contains(row["caution"], wet) {
						t.Errorf("%s, %s: %q lacks %q", c.state, c.layers, row["title"], wet)
					}
				}
			}
		}
		if len(told) == 0 {
			t.Errorf("%s, %s: nothing is told of mixing", c.state, c.layers)
		}
	}
}

// TestPlansNameTheTileOfEachRecipe wants a plan to say of each recipe which tile of the
// wall it was tested on, by the files themselves, or that there is none.
func TestPlansNameTheTileOfEachRecipe(t *testing.T) {
	c, _ := demoCourse(t)
	c.Recipes[0].Versions[0].Tile, c.Recipes[1].Versions[0].Tile = "", c.Recipes[2].Versions[0].Tile
	failed, _ := c.TileOf(c.Recipes[3])
	failed.Verdict = course.TileFailed
	table := proof.Table(c, c.Language, "")
	tested, untested := 0, 0
	for _, m := range table.Media {
		for _, r := range m.Recipes {
			i := slices.IndexFunc(c.Recipes, func(own *course.Recipe) bool { return own.Title == r.Name })
			newest := c.Recipes[i].Versions[0]
			k := slices.IndexFunc(c.Tiles, func(tile *course.Tile) bool {
				return tile.Code == newest.Tile && tile.Recipe == c.Recipes[i].ID && tile.Version == newest.Number && tile.Fired != "" && tile.Verdict != ""
			})
			want := "untested"
			if k >= 0 {
				tested++
				want = "our tile " + c.Tiles[k].Code + ", cone " + c.Tiles[k].Cone
				if c.Tiles[k].Verdict == course.TileFailed {
					want = "failed on " + want
				}
			} else {
				untested++
			}
			if r.Proof != want || (r.Tile != "") != (k >= 0) {
				t.Errorf("%s: a plan says %q (%s), the wall %q", r.Name, r.Proof, r.Tile, want)
			}
		}
	}
	if tested < 5 || untested < 2 {
		t.Errorf("%d tested recipes and %d others: this test looks at the wrong place", tested, untested)
	}
}
