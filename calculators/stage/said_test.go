package stage_test

import (
	"slices"
	"strings"
	"testing"

	"slipbook/calculators/stage"
	"slipbook/calculators/stage/stagetest"
)

// What a plan says, held word for word on the studio's table, or on one of which
// a row was changed.

// TestConflictNamesWhatHoldsLongest wants the reason that a student can do least
// about to be named first: what lies loose below forbids it in every state, the
// medium in this one, and a way of working gives way to another.
func TestConflictNamesWhatHoldsLongest(t *testing.T) {
	table := stagetest.Table()
	for _, c := range []struct{ state, layers, options, what, rule string }{
		{"bisque", "slip by stencil", "already wash", "Coloured slip by stencil over stain wash that no firing has fixed.", "The reason of stain-wash under coloured-slip."},
		{"bone-dry", "slip by stencil", "", "Coloured slip on a pot that is “bone dry”.", "The reason of coloured slip when bone dry."},
		{"glaze-fired", "enamel by stencil", "", "Stencil on a pot that is “glaze-fired”.", "The reason of stencil when glaze-fired."},
	} {
		p := table.Plan(wish(t, table, c.state, c.layers, c.options))
		if p.Conflict == nil {
			t.Errorf("%s on %s works", c.layers, c.state)
		} else if p.Conflict.What != c.what || p.Conflict.Rule != c.rule {
			t.Errorf("%s on %s: %q, %q", c.layers, c.state, p.Conflict.What, p.Conflict.Rule)
		}
	}
}

// TestTroubleComesBeforeItsRemedy wants each fault followed by what to do about
// it, those of the worst rule first.
func TestTroubleComesBeforeItsRemedy(t *testing.T) {
	table := stagetest.Table()
	slip, stencil := &table.Media[0].On[1], &table.Techniques[0].On[1][0].Rule
	slip.Verdict, slip.Fault, slip.Remedy = stage.Label, "It peels.", "Scrape it off."
	stencil.Verdict, stencil.Fault, stencil.Remedy = stage.Risky, "It runs under.", "Press it down."
	p := table.Plan(wish(t, table, "leather-hard", "slip by stencil", ""))
	if got, want := p.Steps[0].Trouble, "It runs under. Press it down. It peels. Scrape it off."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestHiddenColourIsSaid wants the warning where an opaque glaze lies over
// colour, and nowhere else.
func TestHiddenColourIsSaid(t *testing.T) {
	table := stagetest.Table()
	for _, c := range []struct {
		state, layers, options string
		hidden                 bool
	}{
		{"leather-hard", "slip, white glaze", "", true},
		{"bisque", "wash, white glaze", "", true},
		{"bisque", "white glaze", "", false},
		{"bisque", "white glaze, wash", "", false},
		{"bisque", "wax, white glaze", "", false},
		{"bisque", "white glaze, enamel", "", false},
		{"leather-hard", "slip, clear glaze", "", false},
		{"leather-hard", "slip, white glaze", "apart", false},
		{"leather-hard", "carved, white glaze", "", false},
	} {
		p := table.Plan(wish(t, table, c.state, c.layers, c.options))
		said := slices.ContainsFunc(p.Ends, func(s string) bool { return strings.HasPrefix(s, "You will not see it") })
		if p.Conflict != nil || said != c.hidden {
			t.Errorf("%s %s: %q, conflict %+v", c.layers, c.options, p.Ends, p.Conflict)
		}
	}
}

// TestTableWithoutEnd wants a table to be refused in words that no studio has,
// long before it fills a phone.
func TestTableWithoutEnd(t *testing.T) {
	_, err := stage.Decode(strings.Repeat("firing\t0\t0\t\t\t\t\t0\t0\t0\t\t\n", 50000))
	if err == nil || err.Error() != "table: too long" {
		t.Errorf("error %v", err)
	}
	long := stagetest.Table()
	for len(long.Overs) < 1000 {
		long.Overs = append(long.Overs, long.Overs...)
	}
	if _, err := stage.Decode(long.Encode()); err != nil {
		t.Errorf("a table with a thousand rows: %v", err)
	}
}

// planned plans a wish that works.
func planned(t *testing.T, table *stage.Table, state, layers, options string) stage.Plan {
	t.Helper()
	p := table.Plan(wish(t, table, state, layers, options))
	if p.Conflict != nil {
		t.Fatalf("%s on a %s pot: %+v", layers, state, p.Conflict)
	}
	return p
}

// TestNotesAreTrueOfThePlan wants the word about a laboratory for food under a
// glaze alone, and the rub for what it can tell something of.
func TestNotesAreTrueOfThePlan(t *testing.T) {
	table := stagetest.Table()
	const laboratory, rub = "a glaze that a laboratory has tested", "Whether bisque heat fixes stain wash depends on its flux."
	for _, c := range []struct {
		layers, options string
		food, rubbed    bool
	}{
		{"wash", "", true, false},
		{"wash", "no food", false, false},
		{"wash", "bare", false, false},
		{"wash", "bare no food", false, false},
		{"wash waxed, clear glaze dipped", "", true, true},
		{"oxide wash, wax, clear glaze dipped", "", true, false},
	} {
		notes := strings.Join(planned(t, table, "bisque", c.layers, c.options).Notes, " ")
		if got := strings.Contains(notes, laboratory); got != c.food {
			t.Errorf("%s, %s: the laboratory is named: %v", c.layers, c.options, got)
		}
		if got := strings.Contains(notes, "Whether bisque heat fixes"); got != c.rubbed || got && !strings.Contains(notes, rub) {
			t.Errorf("%s, %s: the rub is named: %v: %s", c.layers, c.options, got, notes)
		}
	}
}

// TestReportsAreNamedForFood wants plans for food to say which reports of leach tests
// answer, or that none does, and others to say nothing of them; also once the table has
// travelled.
func TestReportsAreNamedForFood(t *testing.T) {
	for want, reports := range map[string][]stage.Report{
		"This studio has no leach report that counts, so whatever you plan is untested, and not for food.":                                   nil,
		"This studio has leach reports that count: report 14 (until 2027-05-04). Whether one is of your pot the plan cannot know":            {{Number: "14", Until: "2027-05-04"}},
		"that count: report 9 (until 2027-02-01), report 14 (until 2027-05-04) and report 15 (until 2027-05-05). Whether one is of your pot": {{Number: "9", Until: "2027-02-01"}, {Number: "14", Until: "2027-05-04"}, {Number: "15", Until: "2027-05-05"}},
	} {
		told := stagetest.Table()
		told.TellReports(reports)
		table, err := stage.Decode(told.Encode())
		if err != nil {
			t.Fatal(err)
		}
		table.Words = told.Words
		for options, food := range map[string]bool{"": true, "no food": false, "bare": false} {
			notes := strings.Join(planned(t, table, "bisque", "wash", options).Notes, " ")
			if got := strings.Contains(notes, want); got != food || !food && strings.Contains(notes, "leach report") {
				t.Errorf("%q: %q, want in it: %v, %q", options, notes, food, want)
			}
		}
	}
	if notes := strings.Join(planned(t, stagetest.Table(), "bisque", "wash", "").Notes, " "); strings.Contains(notes, "leach") {
		t.Errorf("a table that was told of no course says %q", notes)
	}
}

// TestInstructorIsNamedWhereItIsTheirs wants it said at the head of a plan and of
// a step that the instructor does something, for washing a glaze off too, and
// not where a student does it with the instructor.
func TestInstructorIsNamedWhereItIsTheirs(t *testing.T) {
	table := stagetest.Table()
	for i := range table.Transitions {
		if table.Transitions[i].Move == stage.Strip {
			table.Transitions[i].Who = stage.Instructor
		}
	}
	for _, c := range []struct {
		state, layers, action string // the instructor's; empty = none
	}{
		{"bisque", "oxide wash", ""},
		{"glaze-fired", "enamel", "put on"},
		{"unfired-glaze", "engobe", "wash off"},
	} {
		p := planned(t, table, c.state, c.layers, "")
		if got := slices.Contains(p.Ends, "The instructor does part of it."); got != (c.action != "") {
			t.Errorf("%s: said in the headline: %v", c.layers, got)
		}
		for _, step := range p.Steps {
			if got := strings.HasPrefix(step.What, "The instructor does this step, and you watch. "); got != (step.Action == c.action) {
				t.Errorf("%s: %q", c.layers, step.What)
			}
		}
	}
}

// TestWaitsForACoatThatIsWet wants the wait for a coat to lose its shine where it
// has just been laid on, and not for one that has long been dry.
func TestWaitsForACoatThatIsWet(t *testing.T) {
	table := stagetest.Table()
	for _, c := range []struct {
		state, layers, options string
		step                   int
		waits                  bool
	}{
		{"leather-hard", "slip, underglaze", "", 0, false},
		{"leather-hard", "slip, underglaze", "", 1, true},
		{"leather-hard", "slip, underglaze", "apart", 1, false},
		{"bisque", "wash", "already wash", 0, false},
	} {
		p := planned(t, table, c.state, c.layers, c.options)
		if got := p.Steps[c.step].Wait; (got == "Wait until the coat below has lost its shine.") != c.waits {
			t.Errorf("%s, %s: step %d waits: %q", c.layers, c.options, c.step+1, got)
		}
	}
}

// TestGlazeOverWhatIsLoose wants the ways by which a glaze goes on over loose
// colour to be named: those that nothing has to be asked for, and none that is a
// danger of its own.
func TestGlazeOverWhatIsLoose(t *testing.T) {
	table := stagetest.Table()
	said := func() []string { return planned(t, table, "bisque", "wash, clear glaze", "").Ends }
	if got := said(); !slices.Equal(got, []string{"Put glaze on by dipping, not by brushing."}) {
		t.Errorf("%q", got)
	}
	for i := range table.Techniques {
		if table.Techniques[i].ID == "dipping" {
			table.Techniques[i].On[3][0].Verdict = stage.Label
		}
	}
	if got := said(); !slices.Equal(got, []string{"Put glaze on, but not by brushing."}) {
		t.Errorf("with a label to ask for dipping: %q", got)
	}
}

// TestNamedMetalIsAskedAbout wants the question about a metal to give the word
// that somebody typed.
func TestNamedMetalIsAskedAbout(t *testing.T) {
	table := stagetest.Table()
	if got, want := planned(t, table, "bisque", "cobalt wash", "").Steps[0].Ask, "You wrote “cobalt”. Is it the raw metal?"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := planned(t, table, "bisque", "wash", "").Steps[0].Ask; got != "" {
		t.Errorf("asked of a stain wash: %q", got)
	}
}

// TestFoodIsKeptOffWhatMayHarm wants each step that lays something on to say what
// must stay off surfaces for food, and a pot that ends bare to be for none: on a
// pot for food or drink alone.
func TestFoodIsKeptOffWhatMayHarm(t *testing.T) {
	table := stagetest.Table()
	const keepOff = "Keep it off every surface that food, drink or lips touch."
	for _, c := range []struct {
		state, layers, options string
		kept                   string // the steps that say so, by the medium that they lay on
		notFood                bool
	}{
		{"glaze-fired", "enamel", "", "enamel", false},
		{"glaze-fired", "enamel", "no food", "", false},
		{"bisque", "wash, clear glaze", "", "", false},
		{"bisque", "clear glaze, wash", "", "stain wash", false},
		{"bisque", "clear glaze, wash", "no food", "", false},
		{"bisque", "clear glaze, wash, white glaze", "", "", false},
		{"unfired-glaze", "wash", "", "stain wash", false},
		{"leather-hard", "wash", "", "", false},
		{"bisque", "wash", "bare", "", true},
		{"bisque", "wash", "bare no food", "", false},
	} {
		p := planned(t, table, c.state, c.layers, c.options)
		var kept []string
		for _, step := range p.Steps {
			if strings.Contains(step.Caution, keepOff) {
				kept = append(kept, strings.TrimPrefix(step.Title, "Put on "))
			}
		}
		if got := strings.Join(kept, ", "); got != c.kept || (p.NotFood != "") != c.notFood {
			t.Errorf("%s, %s: kept off is %q, want %q; not for food: %q", c.layers, c.options, got, c.kept, p.NotFood)
		}
	}
}
