package press

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"slipbook/calculators/catalog"
	"slipbook/generator/markup"
)

func TestChoicesOfAnInput(t *testing.T) {
	p := calculatorPress(t, '.')
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
		if box := calculatorPress(t, '.').box(fit, in, "", "calculator.1"); box.Choices[0].ID != "" || box.Default != "" {
			t.Errorf("%s cannot be left to its alternative: %+v", in.Name, box.Choices)
		}
		return
	}
	t.Error("slip-fit has no choice among its alternatives: this test looks at the wrong place")
}

// TestClaysAreOffered wants the course's clays to be offered where a number is
// asked that they fill in, and no empty chooser where it names none.
func TestClaysAreOffered(t *testing.T) {
	p := calculatorPress(t, '.')
	html := printCalculator(t, p, "shrinkage-size", 1, markup.Setting{Name: "body", Value: "Lantern porcelain"})
	wantHolds(t, html, `<option value="heron-stoneware">Heron stoneware</option>`, `<option value="lantern-porcelain" selected>Lantern porcelain</option>`,
		`data-still="“The clay shrinks in all” / “Clay of the studio”"`)
	if len(p.settings.Bodies) < 3 || !strings.Contains(html, "lantern-porcelain%2526") && !strings.Contains(html, "lantern-porcelain%26") {
		t.Error("the form does not carry the clays to the engine")
	}
	p.settings.Bodies = nil
	p.printed.Clear()
	html = printCalculator(t, p, "shrinkage-size", 1)
	wantHolds(t, html, `data-still="“The clay shrinks in all”"`)
	if strings.Contains(html, `data-input="body"`) {
		t.Error("a course without clays offers them")
	}
}

func TestLayersComeFromTheTable(t *testing.T) {
	p := calculatorPress(t, '.')
	html := printCalculator(t, p, "stage-plan", 1, markup.Setting{Name: "layers", Value: "slip, wash"})
	table := p.settings.Table
	if len(table.Media) < 5 || len(table.Techniques) < 5 {
		t.Fatalf("the demo course has %d media and %d techniques", len(table.Media), len(table.Techniques))
	}
	for _, m := range table.Media {
		wantHolds(t, html, `data-fits="`+m.Base+`" data-words="`+strings.Join(m.Words, "|")+`">`+m.Name+`</option>`)
	}
	for _, q := range table.Techniques {
		wantHolds(t, html, `data-fits="`+strings.Join(q.With, " ")+`" data-words="`+strings.Join(q.Words, "|")+`">`+q.Name+`</option>`)
	}
	wantHolds(t, html, `name="layers" value="slip, wash"`, `data-layers="8"`)
}

func TestOtherWordsAreTyped(t *testing.T) {
	html := printCalculator(t, calculatorPress(t, ','), "tile-plan", 1, markup.Setting{Name: "cones", Value: "06, 6"})
	wantHolds(t, html, `name="cones" value="06, 6"`, `inputmode="text"`)
	if strings.Contains(html, "data-layers") || strings.Contains(html, "data-medium") {
		t.Error("words that are no layers are offered as layers")
	}
}

func TestTableStaysOutOfPages(t *testing.T) {
	p := calculatorPress(t, '.')
	for name, clays := range map[string]bool{"slip-density": false, "stage-plan": false, "slip-fit": true} {
		html := printCalculator(t, p, name, 0)
		if !strings.Contains(html, `data-settings="decimal=.&amp;measures=metric`) || strings.Contains(html, "&amp;table=") || strings.Contains(html, "&amp;body=") != clays {
			t.Errorf("%s: the settings in the page are more than it can need, or less", name)
		}
	}
}

func TestStepsAskTheirQuestions(t *testing.T) {
	cell := func(column, text string) catalog.Cell { return catalog.Cell{Column: column, Text: text, IsText: true} }
	answer := &catalog.Answer{Rows: [][]catalog.Cell{
		{cell("step", "1"), cell("state", "Bisque"), cell("what", "Put it on."), cell("why", "It holds."), cell("caution", "Wear gloves."), cell("ask", "Does the label say so?")},
		{cell("step", "2"), cell("state", "Bisque"), cell("what", "Fire it."), cell("why", ""), cell("caution", "It is hot.")},
	}}
	want := []stepView{
		{State: "Bisque", What: "Put it on.", Why: "It holds.", Ask: "Does the label say so?", Caution: "Wear gloves."},
		{State: "Bisque", What: "Fire it.", Caution: "It is hot."},
	}
	if diff := cmp.Diff(want, steps(answer)); diff != "" {
		t.Errorf("steps (-want +got):\n%s", diff)
	}
}

func TestOnlyPlansLoadTheTable(t *testing.T) {
	e := printed(t, small(t))
	for address, data := range e {
		if !strings.HasSuffix(address, ".html") {
			continue
		}
		wants := strings.Contains(string(data), `data-calculator="stage-plan"`)
		if has := strings.Contains(string(data), "assets/table-"); has != wants {
			t.Errorf("%s loads the decoration table: %t", address, has)
		}
	}
}
