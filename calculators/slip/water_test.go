package slip

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"
)

// TestWaterDensity compares with the paper's own formula and with an
// independent one, degree by degree; the file names both sources.
func TestWaterDensity(t *testing.T) {
	file, err := os.Open("../../testdata/published/water-density.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil || len(rows) != 42 {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for _, row := range rows[1:] {
		var x [3]float64
		for i := range x {
			if x[i], err = strconv.ParseFloat(row[i], 64); err != nil {
				t.Fatal(err)
			}
		}
		got := 1000 * WaterDensity(x[0])
		if math.Abs(got-x[1]) > 0.00006 {
			t.Errorf("%v °C: %v, the paper %v kg/m³", x[0], got, x[1])
		}
		if math.Abs(got-x[2]) > 0.0012 {
			t.Errorf("%v °C: %v, IAPWS %v kg/m³", x[0], got, x[2])
		}
	}
}
