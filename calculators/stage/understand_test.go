package stage_test

import (
	"strings"
	"testing"

	"slipbook/calculators/stage/stagetest"
)

// TestLayers holds what is made of a person's words: layers by id, ways by id,
// then how words were read and which were left out.
func TestLayers(t *testing.T) {
	table := stagetest.Table()
	for text, want := range map[string]string{
		"slip by stencil, wash wiped back, clear glaze brushed": "coloured-slip stencil, stain-wash wiping-back, glaze brushing",
		"Coloured Slip; OXIDE WASH":                             "coloured-slip, oxide-wash",
		"slip + underglaze & clear glaze":                       "coloured-slip, underglaze, glaze",
		"slip then clear glaze":                                 "coloured-slip, glaze",
		"slip dipped, then scratched":                           "coloured-slip dipping scratching",
		"slip dipped and sgraffito":                             "coloured-slip dipping scratching",
		"scratched and dipped slip":                             "coloured-slip dipping scratching",
		"blue underglaze, clear glaze":                          "underglaze, glaze | left blue",
		"3 coats of velvet underglaze":                          "underglaze | left 3 velvet",
		"underglase":                                            "underglaze | read underglase underglaze",
		"slip by sgraffitto":                                    "coloured-slip scratching | read sgraffitto sgraffito",
		"underglasse":                                           "underglaze | read underglasse underglaze",
		"glise":                                                 "error: “glise” names no medium of the table.",
		"slp":                                                   "error: “slp” names no medium of the table.",
		"slip by stensil":                                       "coloured-slip stencil | read stensil stencil",
		"clear glaze over underglaze":                           "underglaze, glaze",
		"underglaze under clear glaze":                          "underglaze, glaze",
		"clear glaze over underglaze over slip":                 "coloured-slip, underglaze, glaze",
		"wash waxed":                                            "stain-wash, wax",
		"slip dipped, wax, slip dipped":                         "coloured-slip dipping, wax, coloured-slip dipping",
		"carved":                                                "clay carving",
		"carved, slip":                                          "clay carving, coloured-slip",
		"carved then stamped, slip":                             "clay carving stamping, coloured-slip",
		"slip, clay carved":                                     "coloured-slip, clay carving",
		"slip dipped, the clay carved then stamped":             "coloured-slip dipping, clay carving stamping",
		"slip on clay":                                          "coloured-slip | left clay",
		"clay":                                                  "error: “clay” names no medium of the table.",
		"clay trailed":                                          "error: “clay trailed” is a way of working, and names no medium.",
		"majolica":                                              "opaque-glaze, stain-wash brushing | read majolica white glaze",
		"cobalt wash":                                           "stain-wash (cobalt)",
		"cobolt wash":                                           "stain-wash (cobalt) | read cobolt cobalt",
		"lead glaze":                                            "glaze (lead)",
		"cobalt lead wash":                                      "stain-wash (cobalt and lead)",
		"wash, then brushed in cobalt":                          "stain-wash brushing (cobalt)",
		"carved in cobalt":                                      "error: “carved in cobalt” names a metal and no medium.",
		"zinc glaze":                                            "error: “zinc” is not planned here. Show its safety data sheet to the instructor",
		"uraniun wash":                                          "error: “uranium” is not planned here.",
		"underglaze on bisque":                                  "underglaze | left bisque",
		"overglaze":                                             "error: Do you mean enamel, or wash",
		"cobalt":                                                "error: “cobalt” names a metal and no medium.",
		"underglaze without glaze":                              "error: In “underglaze without glaze” something is ruled out.",
		"trailed":                                               "error: “trailed” is a way of working, and names no medium.",
		"engobe wiped back":                                     "error: Wiping back is not a way of working with engobe.",
		"My pot is bisque and I want a wash":                    "error: “my pot is bisque” says what the pot is now. Say that under “Your pot is now”, and write here only what goes on it:",
		"leather-hard":                                          "error: “leather hard” says what the pot is now. Say that under “Your pot is now”, and write here only what goes on it:",
		"pale blue, slip":                                       "error: “pale blue” is a colour. Write beside it what it is in:",
		"mud":                                                   "error: “mud” names no medium of the table.",
		"slip underglaze":                                       "error: In “slip underglaze” there are two layers",
		" , ;":                                                  "",
		"slip,slip,slip,slip,slip,slip,slip,slip,slip": "error: Those are too many layers.",
	} {
		got, err := table.Layers(text)
		if err != nil {
			if !strings.HasPrefix("error: "+err.Error(), want) || !strings.HasPrefix(want, "error") {
				t.Errorf("%q: %v", text, err)
			}
			continue
		}
		var layers []string
		for _, l := range got.Layers {
			s := "clay"
			if l.Medium >= 0 {
				s = table.Media[l.Medium].ID
			}
			for _, q := range l.Ways {
				s += " " + table.Techniques[q].ID
			}
			if l.Metal != "" {
				s += " (" + l.Metal + ")"
			}
			layers = append(layers, s)
		}
		said := strings.Join(layers, ", ")
		if len(got.Read) > 0 {
			said += " | read " + strings.NewReplacer("“", "", "”", "", "is read as ", "").Replace(strings.Join(got.Read, ", "))
		}
		if len(got.Left) > 0 {
			said += " | left " + strings.Join(got.Left, " ")
		}
		if !strings.HasPrefix(said, want) || want == "" && said != "" {
			t.Errorf("%q: got %q, want %q", text, said, want)
		}
	}
}

// TestNoSlipIsMendedAcrossHazards gives two words of different hazards the same
// distance from what was typed: neither may be taken.
func TestNoSlipIsMendedAcrossHazards(t *testing.T) {
	table := stagetest.Table()
	table.Media[0].Words = append(table.Media[0].Words, "crestine")
	table.Media[4].Words = append(table.Media[4].Words, "crestane") // the oxide wash
	if got, err := table.Layers("crestone slip"); err != nil || len(got.Read) > 0 || strings.Join(got.Left, " ") != "crestone" {
		t.Errorf("%+v, %v", got, err)
	}
	if got, err := table.Layers("crestone"); err == nil {
		t.Errorf("%+v", got)
	}
}
