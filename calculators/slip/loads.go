package slip

import "math"

// Loads returns the number of equal loads in which a mass (g) is weighed on a
// scale that bears at most limit (g, above 0): a whole number, so large that
// no load is over the limit by as much as its last bit.
func Loads(mass, limit float64) float64 {
	loads := math.Max(1, math.Ceil(mass/limit))
	if mass/loads > limit {
		loads++
	}
	return loads
}
