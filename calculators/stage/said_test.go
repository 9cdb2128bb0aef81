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
	if err == nil || err.Error() != "The decoration table is too long." {
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
