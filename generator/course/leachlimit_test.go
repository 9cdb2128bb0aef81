package course_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"slipbook/generator/course"
)

// publishedLimits reads the list of the limits of what leaches out, each with its
// source, without its head.
func publishedLimits(t *testing.T) [][]string {
	t.Helper()
	f, err := os.Open("../../testdata/published/leach-limits.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

// TestLimitsAreTheStrictestRead compares the limits with the published ones, each with
// its source, and wants the strictest of each.
func TestLimitsAreTheStrictestRead(t *testing.T) {
	strictest := map[[3]string]float64{}
	for _, row := range publishedLimits(t) {
		key := [3]string{row[0], row[1], map[string]string{"mg/L": "mg/L", "mg/dm2": "mg/dm²"}[row[3]]}
		limit, err := strconv.ParseFloat(row[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		if least, there := strictest[key]; !there || limit < least {
			strictest[key] = limit
		}
	}
	for key, want := range strictest {
		for unit, factor := range map[string]float64{key[2]: 1, "µ" + key[2][1:]: 1000} {
			got, known := course.LeachLimit(key[1], course.Leached{Metal: key[0], Unit: unit})
			if !known || got != want*factor {
				t.Errorf("%s from %s: %g %s, want %g", key[0], key[1], got, unit, want*factor)
			}
		}
	}
	if _, known := course.LeachLimit("cup", course.Leached{Metal: "lead", Unit: "mg/dm²"}); known {
		t.Error("a limit by the surface of a cup was made up")
	}
}
