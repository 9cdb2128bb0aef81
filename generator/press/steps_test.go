package press

import (
	"bytes"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/calculators/catalog"
	"slipbook/calculators/stage"
	"slipbook/generator/proof"
)

// TestStepsOnACardCarryTheirHazards plans each medium of the demo course from
// each state: what a step asks to wear, where, and who, stands before what is to
// be done, and each sentence of caution once.
func TestStepsOnACardCarryTheirHazards(t *testing.T) {
	p := calculatorPress(t, '.')
	table := p.settings.Table
	guarded := 0
	for medium := range table.Media {
		for state := range table.States {
			plan := table.Plan(stage.Wish{State: state, Body: -1, Food: true, Layers: []stage.Layer{{Medium: medium}}})
			cautions := ""
			for n, step := range shortSteps(plan.Steps) {
				var out bytes.Buffer
				if err := p.templates.ExecuteTemplate(&out, "step-short", step); err != nil {
					t.Fatal(err)
				}
				root, err := html.Parse(&out)
				if err != nil {
					t.Fatal(err)
				}
				from := plan.Steps[n]
				before, _, found := strings.Cut(text(root), from.What)
				if !found {
					t.Fatalf("%s, step %d: %q is not there: %q", table.Media[medium].Name, n+1, from.What, text(root))
				}
				wanted := []string{from.Wear, from.Place}
				if from.Who != stage.Student {
					wanted = append(wanted, catalog.Doer(from.Who))
				}
				for _, words := range wanted {
					if !strings.Contains(before, words) {
						t.Errorf("%s, step %d: %q does not stand before what to do: %q", table.Media[medium].Name, n+1, words, before)
					}
				}
				cautions += before
				if !strings.Contains(cautions, from.Caution) {
					t.Errorf("%s, step %d: nowhere until then stands %q", table.Media[medium].Name, n+1, from.Caution)
				}
				if from.Hazards != 0 {
					guarded++
				}
			}
		}
	}
	if guarded < 50 {
		t.Errorf("only %d steps have hazards", guarded)
	}
}

// TestCardPlansForFood wants the order of work on a card to keep what is not for
// food off what food touches: whoever holds the card may be making a mug.
func TestCardPlansForFood(t *testing.T) {
	p := calculatorPress(t, '.')
	i := newImpression(p, &proof.Reading{}, shared())
	kept := 0
	for _, m := range p.table.Media {
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
