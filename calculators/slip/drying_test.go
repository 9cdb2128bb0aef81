package slip

import (
	"math"
	"testing"
)

// TestWaterDoubt finds the doubt of a water content by moving each weighing.
func TestWaterDoubt(t *testing.T) {
	for _, lump := range [][3]float64{{100, 80, 0.1}, {50, 49.9, 1}, {12, 6, 0.01}} {
		damp, dry, step := lump[0], lump[1], lump[2]
		up := (WaterOfDamp(damp+1e-4, dry) - WaterOfDamp(damp-1e-4, dry)) / 2e-4
		down := (WaterOfDamp(damp, dry+1e-4) - WaterOfDamp(damp, dry-1e-4)) / 2e-4
		want := math.Hypot(up, down) * step / math.Sqrt(12)
		if got := WaterDoubt(damp, dry, step); math.Abs(got-want) > 1e-6*want {
			t.Errorf("%v: %v, want %v", lump, got, want)
		}
	}
}

// TestRewet wants the water added to be all that the two lumps differ in.
func TestRewet(t *testing.T) {
	for _, to := range []float64{0, 5, 20, 45} {
		water := Rewet(1000, 12, to)
		if got := WaterOfDamp(1000+water, Dried(1000, 12)); math.Abs(got-to) > 1e-12 {
			t.Errorf("to %v %%: %v g more make %v %%", to, water, got)
		}
	}
}
