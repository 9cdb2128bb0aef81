package slip

// A recipe counts its base in parts of 100 and its additions in percent over
// that base, so that 8 % of stain in 1000 g of base is 80 g on top.

// Hundred scales parts of any sum above 0 to percentages that add up to 100, and
// returns what the parts added up to.
func Hundred(parts []float64) (percent []float64, sum float64) {
	for _, p := range parts {
		sum += p
	}
	percent = make([]float64, len(parts))
	for i, p := range parts {
		percent[i] = 100 * p / sum
	}
	return percent, sum
}

// BaseOf returns the base (g) of a recipe of which all that is dry, with percent
// of additions over the base, weighs dry (g).
func BaseOf(dry, percent float64) float64 { return dry * 100 / (100 + percent) }

// BaseFrom returns the base (g) of the largest batch that a mass (g) of one
// material allows, which is percent (above 0) over the base.
func BaseFrom(mass, percent float64) float64 { return mass * 100 / percent }

// Wetted returns the water (g) that makes slip of a specific gravity from dry
// solids (g) of density solids (g/mL). Holds for 1 < gravity <= solids. By mass
// and volume balance.
func Wetted(dry, gravity, solids float64) float64 {
	return dry * (solids - gravity) / (solids * (gravity - 1))
}
