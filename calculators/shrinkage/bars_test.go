package shrinkage

import (
	"math"
	"testing"
)

// TestCallipers holds how fine a result callipers allow: about ± 0.08 % for a
// bar of 100 mm read to a tenth, and no less for many bars that agree.
func TestCallipers(t *testing.T) {
	bar := Bar{Plastic: 100, Dry: 94, Fired: 88}
	want := 2 * 0.1 / math.Sqrt(12) * math.Hypot(1, 0.88)
	for n := 2; n <= MostBars; n++ {
		bars := make([]Bar, n)
		for i := range bars {
			bars[i] = bar
		}
		if got := Test(bars, 0.1); math.Abs(got.Half-want) > 1e-12 || got.Half != got.Callipers {
			t.Fatalf("%d bars that agree: %+v, want ± %v", n, got, want)
		}
	}
	if math.Abs(want-0.077) > 0.0005 {
		t.Errorf("the figure in the comment: %v", want)
	}
	// Bars that differ leave more than the callipers do: 4.303 × 0.3 / √3.
	found := Test([]Bar{{100, 94, 88}, {100, 93.8, 87.7}, {100, 94.2, 88.3}}, 0.1)
	if math.Abs(found.Half-0.745) > 0.001 {
		t.Errorf("the lesson's bars: ± %v", found.Half)
	}
}

func TestAstray(t *testing.T) {
	for _, test := range []struct {
		values    []float64
		place     int
		from, off float64
	}{
		{[]float64{6}, 0, 6, 0},
		{[]float64{6, 7}, 1, 6, 1},
		{[]float64{6, 51, 6.4}, 1, 6.2, 44.8},
		{[]float64{1, 6, 6, 7}, 0, 6, -5},
		{[]float64{6, 6, 6}, 2, 6, 0},
		{[]float64{9, 5, 6, 7, 8, 30}, 5, 7, 23},
	} {
		before := append([]float64(nil), test.values...)
		place, from, off := Astray(test.values)
		if place != test.place || math.Abs(from-test.from)+math.Abs(off-test.off) > 1e-12 {
			t.Errorf("%v: number %d, %v from %v", test.values, place, off, from)
		}
		for i := range before {
			if before[i] != test.values[i] {
				t.Errorf("%v was put in order", before)
			}
		}
	}
}

// TestSoFar holds the figures for a clay of 12 %, and that they go with the
// clay.
func TestSoFar(t *testing.T) {
	for state, want := range map[State]float64{Fresh: 0, LeatherHard: 3, BoneDry: 6, Bisque: 7} {
		percent, doubt := SoFar(12, state)
		if percent != want || doubt != min(want, 1) {
			t.Errorf("state %d: %v ± %v, want %v", state, percent, doubt, want)
		}
		if double, _ := SoFar(24, state); double != 2*want {
			t.Errorf("state %d of twice the clay: %v", state, double)
		}
		if none, doubt := SoFar(0, state); none != 0 || doubt != 0 {
			t.Errorf("state %d of a clay that does not shrink: %v ± %v", state, none, doubt)
		}
	}
}

// TestMismatchDoubt holds what three bars of each clay and a guessed state
// leave: ± 0.75 for each clay and ± 1 for the state make ± 1.6.
func TestMismatchDoubt(t *testing.T) {
	if got := MismatchDoubt(12, 3, 12, 0.75, 1, 0.75); math.Abs(got-1.635) > 0.005 {
		t.Errorf("± %v, want 1.635", got)
	}
	if got := MismatchDoubt(12, 3, 12, 0, 0, 0); got != 0 {
		t.Errorf("certain numbers leave ± %v", got)
	}
}
