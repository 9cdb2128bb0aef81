package slip

import "math"

// Doubt is what limits a density measurement.
type Doubt struct {
	Resolution float64 // of the scale, g: each weighing is uncertain by resolution/√12
	Tolerance  float64 // of the measuring vessel, ± mL: uncertain by tolerance/√3
	Tared      bool    // the empty vessel was weighed too
}

// weighing gives the variance (g²) of one reading of the scale.
// Source: JCGM 100 (GUM) F.2.2.1: half the resolution either way, rectangular.
func (d Doubt) weighing() float64 { return d.Resolution * d.Resolution / 12 }

// ByVolume gives the standard uncertainty of a specific gravity that was found
// as net mass (g) over volume (mL), first order.
// Source: JCGM 100 (GUM) 5.1, relative variances of a quotient add.
func (d Doubt) ByVolume(gravity, mass, volume float64) float64 {
	weighings := d.weighing()
	if d.Tared {
		weighings += weighings
	}
	vessel := d.Tolerance * d.Tolerance / 3
	return float64(gravity * math.Sqrt(weighings/float64(mass*mass)+vessel/float64(volume*volume)))
}

// ByWater gives the standard uncertainty of a specific gravity that was found
// as net mass of slip over net mass of water (g) in the same vessel, first
// order. The weighing of the empty vessel enters both, hence (gravity-1)².
func (d Doubt) ByWater(gravity, water float64) float64 {
	parts := 1 + float64(gravity*gravity)
	if d.Tared {
		parts += float64((gravity - 1) * (gravity - 1))
	}
	return math.Sqrt(float64(d.weighing()*parts)) / water
}
