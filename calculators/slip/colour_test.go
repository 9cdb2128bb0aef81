package slip

import (
	"math"
	"testing"
)

// TestTwoSteps colours a bucket in two steps, measuring in between, and wants
// the stain of one step.
func TestTwoSteps(t *testing.T) {
	white := Bucket{Volume: 2000, Gravity: 1.45, Solids: 2.6, Stain: 4.5}
	once := white.Base() * 12 / 100
	first := white.Base() * 5 / 100
	water := white.Hold(first)
	pale := Bucket{Volume: white.Filled(first, water), Gravity: white.Gravity, Solids: 2.6, Now: 5, Stain: 4.5}
	if second := pale.Base() * (12 - 5) / 100; math.Abs(first+second-once) > 1e-9 {
		t.Errorf("%v g and then %v g, at once %v g", first, second, once)
	}
	dry := Bucket{Volume: white.Volume + first/4.5, Gravity: white.Unwatered(first), Solids: 2.6, Now: 5, Stain: 4.5}
	if math.Abs(dry.Base()-white.Base()) > 1e-9 {
		t.Errorf("without water the base became %v g from %v g", dry.Base(), white.Base())
	}
}
