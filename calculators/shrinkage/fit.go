package shrinkage

import "math"

// Mismatch returns by how many percent a slip ends too short (plus) or too long
// (minus) for the pot it is on: the pot still shrinks by remaining (%) of its
// present length, the slip by slip (%) of its own. Holds for percentages below
// 100, in drying and firing; how the two cool is another matter. What is less
// than the rounding of the sum counts as 0.
func Mismatch(remaining, slip float64) float64 {
	mismatch := float64(100 * ((1-remaining/100)/(1-slip/100) - 1))
	if math.Abs(mismatch) < rounding {
		return 0
	}
	return mismatch
}

// rounding is far more than the sum is rounded by, and far less than anybody
// can measure, in %.
const rounding = 1e-9

// Fit says what a mismatch may lead to.
type Fit uint8

// The fits, from a slip too long to one too short.
const (
	Lifts Fit = iota
	Fits
	Risks
	Peels
)

// MismatchDoubt returns by how much (% either way) a mismatch may be wrong when
// the pot's shrinkage in all, what it has shrunk so far and the slip's
// shrinkage (all %) may be wrong by so much each, independently of one another
// and to the same degree of certainty: first order, added in squares (JCGM
// 100, 5.1.2). Holds for percentages below 100.
func MismatchDoubt(total, sofar, slip, byTotal, bySofar, bySlip float64) float64 {
	t, a, s := byTotal/(100-total), bySofar/(100-sofar), bySlip/(100-slip)
	ratio := (100 - total) / (100 - sofar) / (100 - slip)
	return float64(1e4 * ratio * math.Sqrt(float64(t*t)+float64(a*a)+float64(s*s)))
}

// Judge names the fit of a mismatch (%). The bands are our own guess for a
// thin coat, chosen so that they agree with what the decoration table says of
// each state, and wait to be replaced by a studio's own tiles: −1 to +4.5 fits,
// up to 6 is risky, over 6 peels, and under −1 the slip is too long and may
// lift. The ends belong to the milder fit.
func Judge(mismatch float64) Fit {
	switch {
	case mismatch < -1-rounding:
		return Lifts
	case mismatch <= 4.5+rounding:
		return Fits
	case mismatch <= 6+rounding:
		return Risks
	}
	return Peels
}
