package slip

import (
	"math"
	"testing"
)

// TestRatioDoubt finds the doubt of a ratio by moving each time a little.
func TestRatioDoubt(t *testing.T) {
	for _, times := range [][3]float64{{62, 26, 0.5}, {30, 29, 1}, {200, 10, 0.2}} {
		slip, water, off := times[0], times[1], times[2]
		up := (FlowRatio(slip+1e-4, water) - FlowRatio(slip-1e-4, water)) / 2e-4
		down := (FlowRatio(slip, water+1e-4) - FlowRatio(slip, water-1e-4)) / 2e-4
		want := math.Hypot(up, down) * off / math.Sqrt(3)
		if got := RatioDoubt(slip, water, off); math.Abs(got-want) > 1e-7*want {
			t.Errorf("%v: %v, want %v", times, got, want)
		}
	}
}
