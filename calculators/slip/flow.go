package slip

import "math"

// FlowRatio returns how many times as long slip takes through a cup as water,
// from the seconds (above 0) of each. It is an index of the cup's own, no
// viscosity: another cup gives another number.
// Source: ASTM D6910 calls the Marsh funnel's seconds "not a true viscosity" but
// "an index value" relative to water, for which that funnel takes about 26 s a
// US quart (both read).
func FlowRatio(slip, water float64) float64 { return slip / water }

// RatioDoubt returns the standard uncertainty of a ratio of two times (s), each
// stopped to within ± tolerance (s).
// Source: JCGM 100 (GUM) 5.1, relative variances of a quotient add; 4.3.7.
func RatioDoubt(above, below, tolerance float64) float64 {
	a, b := tolerance/above, tolerance/below
	return float64(above / below * math.Sqrt((float64(a*a)+float64(b*b))/3))
}

// Dose returns what to weigh (g) to bring so many percent of the dry powder (g)
// into a slip, of a solution that holds strength percent of the additive by
// weight; 100 for the additive itself.
func Dose(dry, percent, strength float64) float64 { return dry * percent / strength }
