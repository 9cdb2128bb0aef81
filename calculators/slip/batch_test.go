package slip

import (
	"math"
	"testing"
)

// TestMixed wants the mean that keeps the room of the powders, and not that of
// their densities.
func TestMixed(t *testing.T) {
	for _, test := range [][4]float64{{2.6, 0, 4.5, 2.6}, {2.6, 100, 2.6, 2.6}, {2.5, 100, 5, 10.0 / 3}, {2.6, 10, 4.5, 2.703781512605042}} {
		if got := Mixed(test[0], test[1], test[2]); math.Abs(got-test[3]) > 1e-12 {
			t.Errorf("%v with %v %% of %v: %v, want %v", test[0], test[1], test[2], got, test[3])
		}
	}
}

// TestWettest makes batches from clay that brings all of the water.
func TestWettest(t *testing.T) {
	for _, gravity := range []float64{1.2, 1.45, 1.75, 2} {
		batch := Make(1000, gravity, 2.6, 8, 4.5)
		damp := Damp(batch.Base, batch.Wettest())
		if math.Abs(damp-batch.Base-batch.Water) > 1e-9 {
			t.Errorf("at %v: %v g of damp clay for %v", gravity, damp, batch)
		}
		if dry := Dried(damp, batch.Wettest()); math.Abs(dry-batch.Base) > 1e-9 {
			t.Errorf("at %v: it dries to %v g, not %v", gravity, dry, batch.Base)
		}
	}
}
