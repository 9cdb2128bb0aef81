package tile

import "math"

// Rounded returns the mass (g) nearest to another that a scale with steps of
// step (g, above 0) can show. A half goes up, also one that the binary
// fractions of a computer hold a hair too small: 0.35 on a scale of 0.1 is 0.4,
// as it would be on paper.
func Rounded(mass, step float64) float64 {
	steps := math.Floor(mass/step + 0.5 + 1e-9)
	if step < 1 {
		return steps / (1 / step) // 3 steps of 0.1 are 0.3, and not its neighbour
	}
	return float64(steps * step)
}

// Error returns by how many percent of the mass intended a rounded one is too
// large (plus) or too small (minus); 0 where nothing was intended.
func Error(intended, rounded float64) float64 {
	if intended == 0 {
		return 0
	}
	return 100 * (rounded - intended) / intended
}

// SafeBase returns the smallest base (g) at which the smallest percentage (above
// 0) of it is weighed within 1 % whatever it is: half a step of the scale, the
// most that rounding can miss by, is then 1 % of it.
func SafeBase(smallest, step float64) float64 { return 5000 * step / smallest }
