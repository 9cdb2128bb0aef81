package course_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"slipbook/calculators/stage"
	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
)

// loaded is the small course after edits, which must leave nothing to report.
func loaded(t *testing.T, edits ...edit) *course.Course {
	t.Helper()
	files := coursetest.Small()
	for _, e := range edits {
		e.apply(t, files)
	}
	c, found := new(course.Reader).Load(files)
	if len(found) > 0 {
		t.Fatal(findings(found))
	}
	return c
}

// TestTableTravels makes sure that the planner's text of a table is the table:
// no sentence holds a tab or a line end.
func TestTableTravels(t *testing.T) {
	for name, c := range map[string]*course.Course{"demo": demo(t), "small": loaded(t)} {
		table := c.Decoration.Table()
		again, err := stage.Decode(table.Encode())
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		table.Words = nil // which do not travel with it
		if d := cmp.Diff(table, again); d != "" {
			t.Errorf("%s: %s", name, d)
		}
		if table.Encode() != c.Decoration.Table().Encode() {
			t.Errorf("%s: the table differs from one time to the next", name)
		}
	}
}

// TestTableResolves makes sure that every id in the planner's table leads
// somewhere.
func TestTableResolves(t *testing.T) {
	table := demo(t).Decoration.Table()
	media, techniques := map[string]bool{}, map[string]bool{}
	for _, m := range table.Media {
		if media[m.ID] {
			t.Errorf("two media are %s", m.ID)
		}
		media[m.ID] = true
		if !media[m.Base] || m.Best < 0 || m.Best >= len(table.States) || m.On[m.Best].Verdict == stage.Never {
			t.Errorf("%s: base %s, best %d", m.ID, m.Base, m.Best)
		}
	}
	for _, q := range table.Techniques {
		techniques[q.ID] = true
		for _, id := range q.With {
			if !media[id] {
				t.Errorf("%s is for %s, which is not there", q.ID, id)
			}
		}
	}
	for _, o := range table.Overs {
		if !media[o.Under] || !media[o.Above] {
			t.Errorf("%s on %s: one is not there", o.Above, o.Under)
		}
		for _, id := range o.Unless {
			if !techniques[id] {
				t.Errorf("%s on %s unless %s, which is not there", o.Above, o.Under, id)
			}
		}
	}
	for _, b := range table.Bodies {
		for _, c := range b.Changes {
			if !media[c.Medium] {
				t.Errorf("%s changes %s, which is not there", b.ID, c.Medium)
			}
		}
	}
}

// spelt writes the media of a table with a letter for each verdict, a capital
// for physics.
func spelt(table *stage.Table) string {
	var b strings.Builder
	for _, m := range table.Media {
		fmt.Fprintf(&b, "%s of %s, best %d: ", m.ID, m.Base, m.Best)
		for _, r := range m.On {
			letter := "ylrn"[r.Verdict : r.Verdict+1]
			if r.Verdict == stage.Never && r.Basis == stage.Physics {
				letter = strings.ToUpper(letter)
			}
			b.WriteString(letter)
		}
		b.WriteString("\n")
	}
	for _, body := range table.Bodies {
		fmt.Fprintf(&b, "%s (%s):", body.ID, body.Name)
		for _, c := range body.Changes {
			fmt.Fprintf(&b, " %s %d %c", c.Medium, c.State, "ylrn"[c.Verdict])
		}
		b.WriteString("\n")
	}
	return b.String()
}

const ruledHouse = `exceptions:
  - id: no-leather-wash
    kind: house
    name: Wash on bisque only
    medium: stain-wash
    states:
      leather-hard: {verdict: never, rule: house, reason: It smudges., fault: It smears., remedy: Wait.}
  - id: dry-slip
    kind: house
    name: Slip on dry clay
    medium: coloured-slip
    states:
      bone-dry: {verdict: label, reason: Some kinds hold., fault: It flakes., remedy: Look at the jar.}
`

// TestTableOfExceptions makes sure that each kind of exception reaches the
// planner, and that a product starts from what the house rules leave.
func TestTableOfExceptions(t *testing.T) {
	tests := []struct {
		name  string
		edits []edit
		want  string
	}{
		{"a recipe and a body", nil,
			"coloured-slip of coloured-slip, best 1: yynNNN\nstain-wash of stain-wash, best 3: nryylN\n" +
				"mill-slip of coloured-slip, best 1: yyrNNN\nwhite (White porcelain): coloured-slip 1 r\n"},
		{"house rules", []edit{{table, "exceptions:\n", ruledHouse}},
			"coloured-slip of coloured-slip, best 1: yylNNN\nstain-wash of stain-wash, best 3: nnyylN\n" +
				"mill-slip of coloured-slip, best 1: yyrNNN\nwhite (White porcelain): coloured-slip 1 r\n"},
		{"a recipe with a best state of its own", []edit{{table, "    medium: coloured-slip\n    states:\n      bone-dry", "    medium: coloured-slip\n    best: wet\n    states:\n      bone-dry"}},
			"coloured-slip of coloured-slip, best 1: yynNNN\nstain-wash of stain-wash, best 3: nryylN\n" +
				"mill-slip of coloured-slip, best 0: yyrNNN\nwhite (White porcelain): coloured-slip 1 r\n"},
		{"one body, two exceptions", []edit{{table, "  - id: mill-slip\n    kind: recipe\n    name: Mill slip\n", "  - id: dry-slip-on-white\n    kind: body\n    body: white\n"}},
			"coloured-slip of coloured-slip, best 1: yynNNN\nstain-wash of stain-wash, best 3: nryylN\n" +
				"white (White porcelain): coloured-slip 2 r coloured-slip 1 r\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d := loaded(t, tt.edits...).Decoration
			if diff := cmp.Diff(tt.want, spelt(d.Table())); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestTableByHand makes sure that a table that no file was read for becomes one
// for the planner, a product of a medium that is not there left out.
func TestTableByHand(t *testing.T) {
	d := &course.Decoration{
		States:     []course.State{{ID: "wet", Name: "Wet"}},
		Media:      []course.Medium{{ID: "slip", Name: "Slip", Kind: "clay", Best: "wet", On: map[string]course.Pair{"wet": {Verdict: course.Risky, Reason: "It drips."}}}},
		Techniques: []course.Technique{{ID: "dipping", Name: "Dipping", On: map[string]course.Cell{"wet": {{Pair: course.Pair{Verdict: course.Label, Reason: "It drips."}}}}}},
		Exceptions: []course.Exception{{ID: "c", Kind: "product", Name: "Lost", Medium: "gone"}},
	}
	table := d.Table()
	if table.Media[0].On[0].Verdict != stage.Risky || table.Techniques[0].On[0][0].Verdict != stage.Label || len(table.Media) != 1 {
		t.Errorf("%+v", table)
	}
}

// TestTableFiresGlazeFirst makes sure that the planner learns where glaze is
// fired, however the file orders its firings.
func TestTableFiresGlazeFirst(t *testing.T) {
	for _, order := range [][2]string{{"glaze-fire", "last-firing"}, {"last-firing", "glaze-fire"}} {
		d := loaded(t).Decoration
		for i := range d.Transitions {
			if d.Transitions[i].ID == "glaze-fire" && order[0] != "glaze-fire" {
				d.Transitions[i], d.Transitions[i+1] = d.Transitions[i+1], d.Transitions[i]
				break
			}
		}
		for _, tr := range d.Table().Transitions {
			if tr.Move == stage.Fire {
				if tr.ID != "glaze-fire" {
					t.Errorf("in the order %v, %s is the first firing", order, tr.ID)
				}
				break
			}
		}
	}
}

// TestHouseRulesHoldEverywhere makes sure that what a rule of the house says is
// what the pages see.
func TestHouseRulesHoldEverywhere(t *testing.T) {
	d := loaded(t, edit{table, "exceptions:\n", ruledHouse}).Decoration
	m, _ := d.FindMedium("stain-wash")
	if p := m.On["leather-hard"]; p.Verdict != course.Never || p.Reason != "It smudges." {
		t.Errorf("%+v", p)
	}
}
