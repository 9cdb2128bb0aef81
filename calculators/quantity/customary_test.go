package quantity

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

func TestCustomary(t *testing.T) {
	for _, c := range []struct {
		value float64
		kind  Kind
		like  string
		want  string
	}{
		{115.4545, Length, "in", "4 9/16 in"},
		{25.4, Length, "in", "1 in"},
		{12.7, Length, "in", "1/2 in"},
		{2, Length, "in", ""}, // a sixteenth is too coarse for it
		{115.4545, Length, "cm", ""},
		{588.8, Volume, "US gallon", "2 1/2 US cups"},
		{605.7, Volume, "US cup", "20 1/2 US fl oz"},
		{3785.411784, Volume, "US pint", "1 US gallon"},
		{236.5882365, Volume, "US quart", "1 US cup"},
		{30, Volume, "US fl oz", "1 US fl oz"},
		{1, Volume, "US fl oz", ""},
		{588.8, Volume, "mL", ""},
		{568.26125, Volume, "imperial gallon", "1 imperial pint"},
		{9092.18, Volume, "imperial pint", "2 imperial gallons"},
		{850, Mass, "oz", "30 oz"},
		{2768.1, Mass, "lb", "6 lb 2 oz"},
		{907.18474, Mass, "lb", "2 lb"},
		{850, Mass, "kg", ""},
		{0, Mass, "oz", ""},
		{-3, Length, "in", ""},
		{3, Percent, "in", ""},
	} {
		if got := strings.ReplaceAll(Customary(c.value, c.kind, c.like, point), "\u00a0", " "); got != c.want {
			t.Errorf("%v like %s: got %q, want %q", c.value, c.like, got, c.want)
		}
	}
}

// TestCustomaryIsNear reads what is written back, over four decades.
func TestCustomaryIsNear(t *testing.T) {
	for _, c := range []struct {
		kind Kind
		like string
		from float64 // from here on it always has words
	}{{Length, "in", 16}, {Volume, "US cup", 75}, {Volume, "imperial pint", 710}, {Mass, "lb", 1}} {
		for value := 1.0; value < 20000; value *= 1.037 {
			text := Customary(value, c.kind, c.like, us)
			if text == "" {
				if value >= c.from {
					t.Errorf("%v like %s has no words", value, c.like)
				}
				continue
			}
			if got := back(t, text); math.Abs(got-value) > value/20*1.0001 {
				t.Errorf("%v like %s became %q, which is %v", value, c.like, text, got)
			}
		}
	}
}

// back returns what a text of Customary says in the canonical unit.
func back(t *testing.T, text string) float64 {
	t.Helper()
	sum, count := 0.0, 0.0
	for _, word := range strings.Fields(strings.ReplaceAll(strings.ReplaceAll(text, "\u202f", ""), "US ", "US_")) {
		switch above, below, fraction := strings.Cut(word, "/"); {
		case fraction:
			a, _ := strconv.ParseFloat(above, 64)
			b, _ := strconv.ParseFloat(below, 64)
			count += a / b
		case word[0] >= '0' && word[0] <= '9':
			n, err := strconv.ParseFloat(word, 64)
			if err != nil {
				t.Fatal(err)
			}
			count += n
		case word == "fl" || word == "imperial":
			continue
		default:
			size, ok := map[string]float64{"in": 25.4, "oz": pound / 16, "lb": pound, "US_fl": usGallon / 128, "US_cup": usGallon / 16, "US_cups": usGallon / 16,
				"US_quart": usGallon / 4, "US_quarts": usGallon / 4, "US_gallon": usGallon, "US_gallons": usGallon,
				"pint": imperialGallon / 8, "pints": imperialGallon / 8, "gallon": imperialGallon, "gallons": imperialGallon}[word]
			if !ok {
				t.Fatalf("%q in %q", word, text)
			}
			sum, count = sum+count*size, 0
		}
	}
	return sum
}

func TestWhose(t *testing.T) {
	for id, want := range map[string]string{"US cup": "us", "imperial pint": "imperial", "mL": "", "US ": "", "": ""} {
		if got := Whose(id); got != want {
			t.Errorf("%q is %q", id, got)
		}
	}
}

func TestFormatTo(t *testing.T) {
	for _, c := range []struct {
		value, step float64
		way         Round
		want        string
	}{
		{53.128, 0.1, Nearest, "53.1"}, {53, 0.1, Nearest, "53.0"}, {0.35, 0.1, Nearest, "0.4"}, {2768.1, 5, Nearest, "2770"},
		{2.5, 5, Nearest, "5"}, {2.49, 5, Nearest, "0"}, {1.4606, 0.001, Down, "1.460"}, {1.4606, 0.001, Up, "1.461"},
		{1.45, 0.01, Down, "1.45"}, {1.45, 0.01, Up, "1.45"}, {0.3, 0.1, Down, "0.3"}, {812.5, 10, Nearest, "810"}, {28.1, 10, Up, "30"},
		{12345.6, 0.05, Nearest, "12\u202f345.60"}, {588.8, 10, Nearest, "590"}, {0.00021, 0.0001, Up, "0.0003"}, {10, 0.3, Nearest, "9.9"},
	} {
		if got := FormatTo(c.value, c.step, c.way, point); got != c.want {
			t.Errorf("%v to %v, %d: got %q, want %q", c.value, c.step, c.way, got, c.want)
		}
	}
	if got := FormatTo(1.5, 0.01, Nearest, comma); got != "1,50" {
		t.Errorf("with a comma: %q", got)
	}
}

// TestStep wants what the last figure typed stands for.
func TestStep(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		want float64
	}{
		{"174.5 g", Mass, 0.1}, {"420", Mass, 1}, {"1 745.50", Mass, 0.01}, {"0.18 kg", Mass, 10}, {"49 oz", Mass, pound / 16},
		{"49.2 oz", Mass, 0.1 * pound / 16}, {"3 lb 1 oz", Mass, pound / 16}, {"4 1/2 in", Length, inch / 2}, {"1.2 L", Volume, 100},
	} {
		q, err := Read(c.text, c.kind, "", point)
		if err != nil || math.Abs(q.Step-c.want) > 1e-9*c.want {
			t.Errorf("%q: step %v (%v), want %v", c.text, q.Step, err, c.want)
		}
	}
}
