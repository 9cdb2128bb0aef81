//go:build judges

package quantity

import (
	"math"
	"os/exec"
	"strings"
	"testing"
)

// TestUnitsAgainstGNUUnits has GNU units, whose table of units was made by
// others from the same laws, judge every factor.
func TestUnitsAgainstGNUUnits(t *testing.T) {
	judged := map[string][2]string{ // the unit there, and our canonical one
		"g":               {"gram", "gram"},
		"kg":              {"kilogram", "gram"},
		"oz":              {"ounce", "gram"},
		"lb":              {"pound", "gram"},
		"mL":              {"milliliter", "milliliter"},
		"cc":              {"cc", "milliliter"},
		"L":               {"liter", "milliliter"},
		"US fl oz":        {"usfloz", "milliliter"},
		"US cup":          {"uscup", "milliliter"},
		"US pint":         {"uspint", "milliliter"},
		"US quart":        {"usquart", "milliliter"},
		"US gallon":       {"usgallon", "milliliter"},
		"imperial pint":   {"brpint", "milliliter"},
		"imperial gallon": {"brgallon", "milliliter"},
		"mm":              {"millimeter", "millimeter"},
		"cm":              {"centimeter", "millimeter"},
		"in":              {"inch", "millimeter"},
		"cm²":             {"cm^2", "cm^2"},
		"in²":             {"inch^2", "cm^2"},
		"%":               {"percent", "percent"},
		"°C":              {"tempC(1) - tempC(0)", "degC"},
		one:               {"1", "1"},
		perHundred:        {"gram/(100 milliliter)", "gram/(100 milliliter)"},
		perOne:            {"gram/cc", "gram/milliliter"},
	}
	for _, kind := range Kinds() {
		for _, u := range Units(kind) {
			names, ok := judged[u.ID]
			if !ok {
				t.Errorf("%s is not judged", u.ID)
				continue
			}
			want := gnuUnits(t, names[0], names[1])
			if math.Abs(u.Factor-want) > math.Abs(want)*1e-12 {
				t.Errorf("%s is %v %s, GNU units says %v", u.ID, u.Factor, Canonical(kind), want)
			}
		}
	}
}

// TestSpoonsAgainstGNUUnits judges the spoons, which no chooser offers. Its
// British spoons are the metric ones of 5 and 15 mL.
func TestSpoonsAgainstGNUUnits(t *testing.T) {
	for typed, there := range map[string]string{"US tsp": "usteaspoon", "US tbsp": "ustablespoon", "metric tsp": "brteaspoon", "metric tbsp": "brtablespoon"} {
		q, err := Read("1 "+typed, Volume, "", point)
		want := gnuUnits(t, there, "milliliter")
		if err != nil || math.Abs(q.Value-want) > want*1e-12 {
			t.Errorf("1 %s is %v mL, %v; GNU units says %v", typed, q.Value, err, want)
		}
	}
	for _, there := range []string{"gram/cm^3", "kilogram/liter"} {
		if want := gnuUnits(t, there, "gram/milliliter"); math.Abs(want-1) > 1e-12 {
			t.Errorf("%s is taken for g/mL, GNU units says %v", there, want)
		}
	}
}

// TestSentencesAgainstGNUUnits judges the sizes that are only spoken of.
func TestSentencesAgainstGNUUnits(t *testing.T) {
	for word, there := range map[string]string{"pint": "brpint", "quart": "brquart", "gallon": "brgallon", "fl oz": "brfloz"} {
		m, _, ok := measureOf(word)
		want := gnuUnits(t, there, "milliliter")
		if !ok || math.Abs(m.size-want) > want*1e-12 {
			t.Errorf("the imperial %s is %v mL, GNU units says %v", word, m.size, want)
		}
	}
	want := gnuUnits(t, "tempF(68.5)", "tempC")
	_, err := Read("68.5 °F", Temperature, "", point)
	if err == nil || !strings.Contains(err.Error(), " "+Format(want, 4, point)+" °C") {
		t.Errorf("68.5 °F: %v, GNU units says %v", err, want)
	}
}

// gnuUnits asks GNU units how many of one unit there are in another.
func gnuUnits(t *testing.T, from, to string) float64 {
	t.Helper()
	out, err := exec.Command("units", "--terse", "--output-format", "%.17g", from, to).CombinedOutput()
	if err != nil {
		t.Fatalf("GNU units, %s to %s: %v: %s (is the package units installed?)", from, to, err, out)
	}
	return number(t, strings.TrimSpace(string(out)))
}
