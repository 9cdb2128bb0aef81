package quantity

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

func TestUnitsOfEachKind(t *testing.T) {
	tests := []struct {
		kind Kind
		name string
		want []string
	}{
		{Mass, "a weight", []string{"g", "kg", "oz", "lb"}},
		{Volume, "a volume", []string{"mL", "cc", "L", "US fl oz", "US cup", "US pint", "US quart", "US gallon", "imperial pint", "imperial gallon"}},
		{Length, "a length", []string{"mm", "cm", "in"}},
		{Area, "an area", []string{"cm²", "in²"}},
		{Percent, "a percentage", []string{"%"}},
		{Temperature, "a temperature", []string{"°C"}},
		{Number, "a number", []string{"1"}},
		{Gravity, "a specific gravity", []string{"1"}},
		{Strength, "a strength", []string{"g/100 mL"}},
		{Density, "a density", []string{"g/mL"}},
	}
	if len(tests) != len(Kinds()) {
		t.Errorf("there are %d kinds, and %d are tested", len(Kinds()), len(tests))
	}
	for i, tt := range tests {
		t.Run(string(tt.kind), func(t *testing.T) {
			if Kinds()[i] != tt.kind {
				t.Errorf("kind %d is %s, want %s", i, Kinds()[i], tt.kind)
			}
			if got := point.say("kind." + string(tt.kind)); got != tt.name {
				t.Errorf("Name is %q, want %q", got, tt.name)
			}
			if got := Canonical(tt.kind); got != tt.want[0] {
				t.Errorf("Canonical is %q, want %q", got, tt.want[0])
			}
			got := Units(tt.kind)
			if len(got) != len(tt.want) {
				t.Fatalf("there are %d units, want %d", len(got), len(tt.want))
			}
			for j, u := range got {
				if u.ID != tt.want[j] || u.Kind != tt.kind {
					t.Errorf("unit %d is %v, want %s of %s", j, u, tt.want[j], tt.kind)
				}
			}
			if got[0].Factor != 1 {
				t.Errorf("the canonical unit has the factor %v", got[0].Factor)
			}
		})
	}
}

func TestNoSuchKind(t *testing.T) {
	if u := Units("colour"); u != nil {
		t.Errorf("Units of no kind: %v", u)
	}
	if c := Canonical("colour"); c != "" {
		t.Errorf("Canonical of no kind: %q", c)
	}
}

// TestUnitsReadAsChosenAndTyped holds every unit to both ways of giving it.
func TestUnitsReadAsChosenAndTyped(t *testing.T) {
	for _, kind := range Kinds() {
		for _, u := range Units(kind) {
			want := Quantity{Value: 3 * u.Factor, Unit: u.ID, Given: 3, Step: u.Factor}
			for _, style := range []Style{point, comma, us, uk} {
				if got, err := Read("3", kind, u.ID, style); err != nil || got != want {
					t.Errorf("%s chosen for %s: %v, %v, want %v", u.ID, kind, got, err, want)
				}
				if u.ID == one {
					continue // nobody types it
				}
				if got, err := Read("3 "+u.ID, kind, "", style); err != nil || got != want {
					t.Errorf("%s typed for %s: %v, %v, want %v", u.ID, kind, got, err, want)
				}
			}
		}
	}
}

// TestSpellingsAreTheirUnits guards the table of spellings: each stands once,
// folded, and for a unit that exists.
func TestSpellingsAreTheirUnits(t *testing.T) {
	seen := map[string]string{}
	note := func(id, list string) {
		for word := range strings.SplitSeq(list, "|") {
			if fold(word) != word {
				t.Errorf("%q for %s is not folded: it would never be found", word, id)
			}
			if other, ok := seen[word]; ok {
				t.Errorf("%q stands for %s and for %s", word, other, id)
			}
			seen[word] = id
		}
	}
	for _, s := range spellings {
		if kindOf(s.id) == "" {
			t.Errorf("%s is not a unit", s.id)
		}
		note(s.id, s.typed)
	}
	for _, v := range vessels {
		if kindOf(v.us) != Volume || v.imperial != "" && kindOf(v.imperial) != Volume {
			t.Errorf("the %s names a unit that is no volume", v.name)
		}
		note(v.name, v.typed)
	}
	for _, s := range spoons {
		note(s.typed, s.typed)
	}
	note("Fahrenheit", fahrenheit)
}

// TestPublishedUnits compares the units with testdata/published, by row.
func TestPublishedUnits(t *testing.T) {
	// What each row asks for: one of the unit, in a multiple of the canonical one.
	covered := map[string]struct {
		unit string
		per  float64
	}{
		"UN-01": {"US gallon", 1000},
		"UN-02": {"US pint", 1},
		"UN-03": {"US fl oz", 1},
		"UN-04": {"US cup", 1},
		"UN-06": {"lb", 1},
		"UN-07": {"oz", 1},
		"UN-08": {"imperial gallon", 1000},
		"UN-09": {"imperial pint", 1},
		"UN-11": {"in", 1},
	}
	found := 0
	for _, row := range published(t) {
		id, source := row["id"], row["source"]
		want, tolerance := number(t, row["expected"]), number(t, row["tolerance"])
		got := 0.0
		if c, ok := covered[id]; ok {
			q, err := Read("1", kindOf(c.unit), c.unit, point)
			if err != nil {
				t.Errorf("%s (%s): %v", id, source, err)
			}
			got = q.Value / c.per
		} else if id == "UN-10" { // the imperial fluid ounce is only spoken of, in sentences
			m, _, _ := measureOf("fl oz")
			got = m.size
		} else {
			continue
		}
		found++
		if math.Abs(got-want) > tolerance {
			t.Errorf("%s (%s): %s is %v, want %v ± %v", id, source, row["inputs"], got, want, tolerance)
		}
	}
	if found != len(covered)+1 {
		t.Errorf("%d rows were compared, want %d", found, len(covered)+1)
	}
}

// published reads the published check values, each row by the heads of its
// columns.
func published(t *testing.T) []map[string]string {
	t.Helper()
	file, err := os.Open("../../testdata/published/mixing-checks.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	all, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []map[string]string
	for _, line := range all[1:] {
		row := map[string]string{}
		for i, head := range all[0] {
			row[head] = line[i]
		}
		rows = append(rows, row)
	}
	return rows
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
