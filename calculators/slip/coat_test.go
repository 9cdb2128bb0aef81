package slip

import (
	"math"
	"testing"
)

// TestWallOfAConeIsSummed wants the wall of a frustum to be as large as a
// thousand thin hoops of it together, widest first or last.
func TestWallOfAConeIsSummed(t *testing.T) {
	for _, pot := range [][3]float64{{80, 80, 100}, {160, 70, 60}, {70, 160, 60}, {120, 0, 80}} {
		top, foot, height := pot[0], pot[1], pot[2]
		const hoops = 1000
		slant := math.Hypot(height, (top-foot)/2) / hoops
		sum := 0.0
		for i := range hoops {
			sum += math.Pi * (foot + (top-foot)*(float64(i)+0.5)/hoops) * slant / 100
		}
		if got := Wall(top, foot, height); math.Abs(got-sum) > 1e-9*sum {
			t.Errorf("the wall of %v is %v cm², its hoops are %v", pot, got, sum)
		}
	}
}

// TestCoatHoldsItsPowder wants a dry coat without air to hold the grains of the
// wet one.
func TestCoatHoldsItsPowder(t *testing.T) {
	for _, gravity := range []float64{1, 1.3, 1.45, 1.8, 2.6} {
		powder := DryAt(CoatVolume(250, 0.5), gravity, 2.6)
		if got := CoatVolume(250, CoatDry(0.5, gravity, 2.6)) * 2.6; math.Abs(got-powder) > 1e-12*math.Max(1, powder) {
			t.Errorf("at %v: %v g of powder in the dry coat, %v g in the wet one", gravity, got, powder)
		}
	}
	if got := Coat(250, CoatVolume(250, 0.5)); math.Abs(got-0.5) > 1e-15 {
		t.Errorf("a coat of 0.5 mm comes back as %v", got)
	}
}
