package main

import (
	"strings"
	"testing"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
)

// asks is one question to the planner as a student types it.
type asks struct{ state, already, layers, food string }

// plan asks for a plan on the demo course's table.
func (a asks) plan(b *bench) *form.Answer {
	return catalog.Solve("stage-plan", []form.Setting{
		{Name: "state", Text: a.state}, {Name: "already", Text: a.already}, {Name: "layers", Text: a.layers}, {Name: "food", Text: a.food},
	}, settingsOf(b.d))
}

// TestNothingOverOnGlaze wants whatever is no on-glaze colour to be refused once
// on-glaze colour is on the pot, fired or not, and the reason told.
func TestNothingOverOnGlaze(t *testing.T) {
	b := newBench(demoTable(t))
	for _, on := range []string{"enamel", "lustre", "decal"} {
		for _, how := range []string{" fixed", " loose", ""} {
			for _, layers := range []string{"clear glaze", "underglaze", "underglaze, clear glaze", "clear glaze, enamel"} {
				a := asks{"glaze-fired", on + how, layers, "no"}.plan(b)
				if len(a.Errors) > 0 || output(a, "conflict") == "" || !strings.Contains(output(a, "changed"), "new pot") && output(a, "changed") != "Without glaze." {
					t.Errorf("%s over %s%s: %s %v", layers, on, how, a.Headline, a.Errors)
				}
				if layers == "clear glaze" && !strings.Contains(output(a, "rule"), "its firing is the last and coolest") {
					t.Errorf("%s over %s%s: %s", layers, on, how, output(a, "rule"))
				}
			}
		}
	}
	if a := (asks{"glaze-fired", "enamel fixed", "lustre", "no"}).plan(b); output(a, "conflict") != "" {
		t.Errorf("lustre is fired cooler than enamel: %s", a.Headline)
	}
	if a := (asks{"glaze-fired", "lustre fixed", "enamel", "no"}).plan(b); output(a, "conflict") == "" {
		t.Errorf("enamel is fired hotter than lustre: %s", a.Headline)
	}
}

// TestLooseOnGlazeIsTheInstructors wants on-glaze colour that no firing has
// fixed to stay what the student said, to be asked about, and to be handled by
// the instructor alone, from the first step to its firing.
func TestLooseOnGlazeIsTheInstructors(t *testing.T) {
	b := newBench(demoTable(t))
	for _, on := range []string{"enamel", "lustre", "decal"} {
		for _, how := range []string{" loose", ""} {
			a := asks{"glaze-fired", on + how, on, "no"}.plan(b)
			rows := rowsOf(a)
			if len(rows) == 0 || !strings.Contains(output(a, "wish"), "(loose)") || !strings.Contains(rows[0]["ask"], "that is not fired is on the pot. Does the instructor agree") {
				t.Errorf("%s%s: %s %v %v", on, how, a.Headline, a.Errors, rows)
			}
			for _, row := range rows {
				if row["who"] != people[2].words || row["title"] != "On-glaze fire" && !strings.Contains(row["caution"], "The instructor works, in gloves.") {
					t.Errorf("%s%s: %v", on, how, row)
				}
			}
		}
	}
	for _, a := range []asks{
		{"bisque", "enamel fixed", "underglaze", "no"},
		{"unfired-glaze", "lustre", "stain wash", "no"},
		{"glaze-fired", "clear glaze loose", "enamel", "no"},
	} {
		if got := a.plan(b); len(got.Errors) != 1 || got.Errors[0].Input != "already" {
			t.Errorf("%+v: %s %v", a, got.Headline, got.Errors)
		}
	}
}

// TestLooseOxideStaysTheInstructors wants every step after a raw oxide is on to
// carry its mask, its gloves and its person until a firing has fixed it.
func TestLooseOxideStaysTheInstructors(t *testing.T) {
	b := newBench(demoTable(t))
	for _, a := range []asks{
		{"bisque", "", "oxide wash, clear glaze dipped", "yes"},
		{"bisque", "", "oxide wash wiped back, underglaze, clear glaze dipped", "yes"},
		{"bisque", "oxide wash loose", "clear glaze dipped", "yes"},
		{"leather-hard", "", "oxide wash", "yes"},
		{"unfired-glaze", "oxide wash loose", "stain wash", "yes"},
	} {
		on := a.already != ""
		for _, row := range rowsOf(a.plan(b)) {
			on = on || strings.HasPrefix(row["title"], "Put on oxide wash")
			fire := row["title"] == "Fire" || row["title"] == "Bisque fire"
			carries := strings.Contains(row["wear"], "nitrile gloves, a fitted respirator") && strings.Contains(row["who"], "instructor")
			if on && !fire && !carries {
				t.Errorf("%+v: %v", a, row)
			}
		}
		if !on {
			t.Errorf("%+v: no oxide went on: %s", a, a.plan(b).Headline)
		}
	}
}
