package desk

import (
	"bytes"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/calculators/catalog"
	"slipbook/calculators/stage"
	"slipbook/generator/press/presstest"
)

// TestStepsOnACardCarryTheirHazards plans each medium of the demo course from
// each state: what a step asks to wear, where, and who, stands before what is to
// be done, and each sentence of caution once.
func TestStepsOnACardCarryTheirHazards(t *testing.T) {
	p := ofTheDemo(t, '.')
	table := p.Settings.Table
	guarded := 0
	for medium := range table.Media {
		for state := range table.States {
			plan := table.Plan(stage.Wish{State: state, Body: -1, Food: true, Layers: []stage.Layer{{Medium: medium}}})
			cautions := ""
			for n, step := range ShortSteps(plan.Steps, "en-GB") {
				var out bytes.Buffer
				if err := p.theme.Pages.ExecuteTemplate(&out, "step-short", step); err != nil {
					t.Fatal(err)
				}
				root, err := html.Parse(&out)
				if err != nil {
					t.Fatal(err)
				}
				from := plan.Steps[n]
				before, _, found := strings.Cut(presstest.Text(root), from.What)
				if !found {
					t.Fatalf("%s, step %d: %q is not there: %q", table.Media[medium].Name, n+1, from.What, presstest.Text(root))
				}
				wanted := []string{from.Wear, from.Place}
				if from.Who != stage.Student {
					wanted = append(wanted, catalog.Doer("en-GB", from.Who))
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

// stepTexts are the texts of a step by the name under which a script fills each
// in.
var stepTexts = map[string]func(*Step, string){
	"title": func(s *Step, text string) { s.Title = text }, "what": func(s *Step, text string) { s.What = text },
	"wear": func(s *Step, text string) { s.Wear = text }, "place": func(s *Step, text string) { s.Place = text },
	"who": func(s *Step, text string) { s.Who = text }, "caution": func(s *Step, text string) { s.Caution = text },
	"risk": func(s *Step, text string) { s.Risk = text },
	"ask":  func(s *Step, text string) { s.Ask = text }, "wait": func(s *Step, text string) { s.Wait = text },
	"why": func(s *Step, text string) { s.Why = text }, "trouble": func(s *Step, text string) { s.Trouble = text },
}

// TestStepSaysWhateverItHas gives a step one text at a time, and wants each to
// stand on the page whether or not there are others; what protects somebody
// stands before what to do. The step that a script fills in has a place for each.
func TestStepSaysWhateverItHas(t *testing.T) {
	p := calculators(t, presstest.Small(t))
	printed := func(form string, s Step) string {
		var out bytes.Buffer
		if err := p.theme.Pages.ExecuteTemplate(&out, form, s); err != nil {
			t.Fatal(err)
		}
		return out.String()
	}
	blank := printed("plan-title", Step{Blank: true}) + printed("plan-step", Step{Blank: true})
	for name, put := range stepTexts {
		s := Step{Who: catalog.Doer("en-GB", stage.Student), You: catalog.Doer("en-GB", stage.Student), What: "Do this."}
		if name == "who" {
			s.Who = catalog.Doer("en-GB", stage.Instructor)
		}
		put(&s, "Only "+name+" is said.")
		page := printed("plan-title", s) + printed("plan-step", s)
		if !strings.Contains(page, "Only "+name+" is said.") {
			t.Errorf("the page does not say %s: %s", name, page)
		}
		if !strings.Contains(blank, `data-say="`+name+`"`) {
			t.Errorf("a script cannot say %s", name)
		}
		guards := name == "wear" || name == "place" || name == "who" || name == "caution"
		if before, _, _ := strings.Cut(page, "Do this."); guards && !strings.Contains(before, "Only "+name) {
			t.Errorf("%s stands behind what to do", name)
		}
		if card := printed("step-short", s); guards && !strings.Contains(card, "Only "+name) {
			t.Errorf("a card does not say %s: %s", name, card)
		}
	}
	guarded := Step{Wear: "a mask", Lesson: "../safety/dust.html", What: "Do this."}
	if page := printed("plan-step", guarded); !strings.Contains(page, `href="../safety/dust.html"`) || !strings.Contains(blank, "data-lesson") {
		t.Errorf("no way to the lesson: %s", page)
	}
}
