package tile

import (
	"math"
	"testing"
)

func TestRounded(t *testing.T) {
	tests := []struct {
		name             string
		mass, step, want float64
	}{
		{"to the tenth", 0.825, 0.1, 0.8},
		{"a number of tenths as it is written", 0.31, 0.1, 0.3},
		{"half up", 0.25, 0.1, 0.3},
		{"half up in spite of binary fractions", 0.35, 0.1, 0.4},
		{"less than half", 0.3499, 0.1, 0.3},
		{"to nothing", 0.04, 0.1, 0},
		{"nothing", 0, 0.1, 0},
		{"hundredths", 1.2345, 0.01, 1.23},
		{"grams", 17.5, 1, 18},
		{"fives", 12.4, 5, 10},
		{"exact", 100, 0.1, 100},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := Rounded(test.mass, test.step); got != test.want {
				t.Errorf("%v on a scale of %v: %v, want %v", test.mass, test.step, got, test.want)
			}
		})
	}
}

func TestError(t *testing.T) {
	for _, test := range [][3]float64{{0.4, 0.3, -25}, {0.15, 0.2, 100.0 / 3}, {2, 2, 0}, {0, 0, 0}, {0.04, 0, -100}} {
		if got := Error(test[0], test[1]); math.Abs(got-test[2]) > 1e-12 {
			t.Errorf("%v weighed as %v: %v, want %v", test[0], test[1], got, test[2])
		}
	}
}

// TestSafeBase weighs the smallest amount of any base from the safe one on.
func TestSafeBase(t *testing.T) {
	for _, step := range []float64{0.01, 0.1, 0.5, 1} {
		for _, percent := range []float64{0.25, 1, 3.3, 100} {
			safe := SafeBase(percent, step)
			for base := safe; base < 2*safe; base += safe / 997 {
				mass := base * percent / 100
				if off := Error(mass, Rounded(mass, step)); math.Abs(off) > 1+1e-6 {
					t.Fatalf("%v %% of %v g on a scale of %v: %v %% off", percent, base, step, off)
				}
			}
		}
	}
}
