package stage_test

import (
	"reflect"
	"testing"

	"slipbook/calculators/stage"
	"slipbook/calculators/stage/stagetest"
)

// TestChosen writes wishes as the choosers of a form do, and nothing where
// choosers hold less than was typed.
func TestChosen(t *testing.T) {
	table := stagetest.Table()
	for text, want := range map[string]string{
		"slip dipped then scratched, wash wiped": "Coloured slip by Dipping then Scratching, Stain wash by Wiping back",
		"sgraffito slip dipped":                  "Coloured slip by Dipping then Scratching",
		"underglase":                             "Underglaze",
		"carved and stamped, slip":               "clay by Carving then Stamping, Coloured slip",
		"slip, clay carved":                      "Coloured slip, clay by Carving",
		"wash waxed, clear glaze over it":        "Stain wash, Wax, Glaze",
		"blue slip":                              "",
		"cobalt wash":                            "",
		"":                                       "",
	} {
		got, err := table.Layers(text)
		if err != nil {
			t.Errorf("%q: %v", text, err)
		} else if got.Chosen != want {
			t.Errorf("%q: chosen %q, want %q", text, got.Chosen, want)
		}
	}
	for text, want := range map[string]string{
		"slip fixed, wash loose": "Coloured slip fixed, Stain wash loose",
		"fired slip, wash":       "Coloured slip fixed, Stain wash",
		"slip trailed":           "",
		"carved":                 "",
		"blue slip":              "",
	} {
		if _, got, err := table.Coats(text, 3); err != nil || got.Chosen != want {
			t.Errorf("already %q: chosen %q, want %q (%v)", text, got.Chosen, want, err)
		}
	}
}

// TestChosenIsUnderstood reads back what choosers write of every layer with two
// ways of working: it is the same layer.
func TestChosenIsUnderstood(t *testing.T) {
	table := stagetest.Table()
	for medium := -1; medium < len(table.Media); medium++ {
		for _, wished := range layersOf(table, medium) {
			text := table.Choice(wished)
			got, err := table.Layers("Engobe, " + text)
			if err != nil || len(got.Layers) != 2 || !reflect.DeepEqual(got.Layers[1], wished) || got.Chosen != "Engobe, "+text {
				t.Errorf("%q is read as %+v, want %+v (%v)", text, got, wished, err)
			}
		}
	}
}

// layersOf lists the layers of a medium with up to two ways of working that are
// for it, those that lay on before those that take away; -1 is the clay itself.
func layersOf(table *stage.Table, medium int) []stage.Layer {
	var layers []stage.Layer
	if medium >= 0 {
		layers = append(layers, stage.Layer{Medium: medium})
	}
	for i := range table.Techniques {
		if !table.Fits(i, medium) {
			continue
		}
		layers = append(layers, stage.Layer{Medium: medium, Ways: []int{i}})
		for j := range table.Techniques {
			if i != j && table.Fits(j, medium) && (table.Techniques[j].Takes || !table.Techniques[i].Takes) {
				layers = append(layers, stage.Layer{Medium: medium, Ways: []int{i, j}})
			}
		}
	}
	return layers
}

// TestNamesOfSeveralWords holds ways of working whose names have in them what
// parts layers, or a medium: neither parts nor adds a layer there.
func TestNamesOfSeveralWords(t *testing.T) {
	table := stagetest.Table()
	add := func(name string, takes bool, words ...string) int {
		q := stage.Technique{Name: name, Words: words, Takes: takes, Best: -1}
		for range table.States {
			q.On = append(q.On, stage.Cell{{}})
		}
		table.Techniques = append(table.Techniques, q)
		return len(table.Techniques) - 1
	}
	relief := add("Slip wiped off relief", true, "slip off relief")
	dots := add("Dots, lines and bands", false)
	slip, underglaze, glaze := 0, 2, 5
	for text, want := range map[string][]stage.Layer{
		"Coloured slip by Slip wiped off relief":                        {{Medium: slip, Ways: []int{relief}}},
		"underglaze by slip wiped off relief, clear glaze":              {{Medium: underglaze, Ways: []int{relief}}, {Medium: glaze}},
		"slip wiped off relief":                                         {{Medium: slip, Ways: []int{relief}}},
		"coloured slip off relief":                                      {{Medium: slip, Ways: []int{relief}}},
		"Underglaze by Dots lines and bands":                            {{Medium: underglaze, Ways: []int{dots}}},
		"slip in dots lines and bands then slip wiped off relief":       {{Medium: slip, Ways: []int{dots, relief}}},
		"Underglaze by Dots lines and bands then slip wiped off relief": {{Medium: underglaze, Ways: []int{dots, relief}}},
	} {
		got, err := table.Layers(text)
		if err != nil || !reflect.DeepEqual(got.Layers, want) || len(got.Left) > 0 {
			t.Errorf("%q is read as %+v, want %+v (%v)", text, got, want, err)
		}
	}
	if got, err := table.Layers("underglaze dipped, slip wiped off relief"); err != nil || len(got.Layers) != 2 {
		t.Errorf("after a comma the medium within a name is one: %+v (%v)", got, err)
	}
	if got := table.Choice(stage.Layer{Medium: slip, Ways: []int{dots, relief}}); got != "Coloured slip by Dots lines and bands then Slip wiped off relief" {
		t.Errorf("choosers write %q", got)
	}
}
