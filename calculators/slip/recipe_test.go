package slip

import (
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*math.Max(1, math.Abs(want))) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

func TestHundred(t *testing.T) {
	percent, sum := Hundred([]float64{2, 1, 1})
	if sum != 4 || percent[0] != 50 || percent[1] != 25 || percent[2] != 25 {
		t.Errorf("%v of %v", percent, sum)
	}
}

// TestWetted wants water for a dry mass to lead back to the mass that Make finds
// in the slip.
func TestWetted(t *testing.T) {
	for _, gravity := range []float64{1.1, 1.45, 2} {
		batch := Make(1000, gravity, 2.6, 8, 4.5)
		near(t, "water", Wetted(batch.Base+batch.Stain, gravity, Mixed(2.6, 8, 4.5)), batch.Water)
		near(t, "base", BaseOf(batch.Base+batch.Stain, 8), batch.Base)
		near(t, "base of its stain", BaseFrom(batch.Stain, 8), batch.Base)
	}
}

// TestBlendAndBack blends, and wants the shares that were asked for.
func TestBlendAndBack(t *testing.T) {
	gravities, shares := []float64{1.5, 1.42, 1.3}, []float64{50, 20, 30}
	volumes := Blend(120, gravities, shares)
	near(t, "cup", volumes[0]+volumes[1]+volumes[2], 120)
	for i, got := range Blended(volumes, gravities) {
		near(t, "share", got, shares[i])
	}
}

// TestAlligation mixes two slips in the shares found for a number, and wants it.
func TestAlligation(t *testing.T) {
	share := ShareFor(1.4, 1.6, 1.3)
	near(t, "gravity", Joined(share, 1.6, 1-share, 1.3), 1.4)
}

// TestBrought brings buckets to a number, and wants the batch of that number and
// volume, but for nothing lost or won of the base.
func TestBrought(t *testing.T) {
	b := Bucket{Volume: 3000, Gravity: 1.6, Solids: 2.6, Now: 4, Stain: 4.5}
	for _, wanted := range [][2]float64{{1.45, 4}, {1.45, 8}, {1.7, 4}, {1.3, 0}} {
		step, now := b.Brought(wanted[0], wanted[1]), b.Batch()
		then := Make(step.Volume, wanted[0], b.Solids, wanted[1], b.Stain)
		near(t, "base", then.Base, now.Base)
		near(t, "stain", then.Stain, now.Stain+step.Stain)
		near(t, "water", then.Water, now.Water+step.Water)
	}
	near(t, "as Water has it", b.Brought(1.45, 4).Water, Water(3000, 1.6, 1.45))
}
