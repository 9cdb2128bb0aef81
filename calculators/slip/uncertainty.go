package slip

import "math"

// Doubt is what limits a density measurement.
type Doubt struct {
	Resolution float64 // of the scale, g: each weighing is uncertain by resolution/√12
	Tolerance  float64 // of the measuring vessel, ± mL: uncertain by tolerance/√3
	Line       float64 // by how much two fillings to one line may differ, ± mL: uncertain by line/√3
	Tared      bool    // the empty vessel was weighed too
}

// weighing returns the variance (g²) of one reading of the scale.
// Source: JCGM 100 (GUM) F.2.2.1: half the resolution either way, rectangular.
func (d Doubt) weighing() float64 { return d.Resolution * d.Resolution / 12 }

// net returns the variance (g²) of the weight of what is in the vessel.
func (d Doubt) net() float64 {
	if d.Tared {
		return float64(2 * d.weighing())
	}
	return d.weighing()
}

// ByVolume returns the standard uncertainty of a specific gravity that was found
// as net mass (g) over volume (mL), first order.
// Source: JCGM 100 (GUM) 5.1, relative variances of a quotient add.
func (d Doubt) ByVolume(gravity, mass, volume float64) float64 {
	vessel := d.Tolerance * d.Tolerance / 3
	return float64(gravity * math.Sqrt(d.net()/float64(mass*mass)+vessel/float64(volume*volume)))
}

// ByWater returns the standard uncertainty of a specific gravity that was found
// as net mass of slip over net mass of water (g) in the same vessel of a volume
// (mL), first order. The weighing of the empty vessel enters both masses, hence
// (gravity-1)²; slip and water were filled to the line one after the other.
func (d Doubt) ByWater(gravity, water, volume float64) float64 {
	parts := 1 + float64(gravity*gravity)
	if d.Tared {
		parts += float64((gravity - 1) * (gravity - 1))
	}
	line := gravity * d.Line / volume
	return math.Sqrt(float64(d.weighing()*parts)/float64(water*water) + float64(line*line)/3)
}

// DryByVolume returns the standard uncertainty of the dry solids (g) that Dry
// finds from a net mass and a measured volume, for solids of density solids and
// water of density water (both g/mL).
func (d Doubt) DryByVolume(solids, water float64) float64 {
	room := float64(water * d.Tolerance)
	return math.Sqrt(d.net()+float64(room*room)/3) * solids / (solids - water)
}

// DryByWater is DryByVolume where the volume was found by weighing water. The
// empty vessel cancels out: the dry solids follow from the difference between
// the vessel full of slip and full of water. density is the slip's (g/mL).
func (d Doubt) DryByWater(density, solids, water float64) float64 {
	line := float64(density * d.Line)
	return math.Sqrt(float64(2*d.weighing())+float64(line*line)/3) * solids / (solids - water)
}
