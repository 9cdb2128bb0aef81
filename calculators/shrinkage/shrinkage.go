// Package shrinkage is the arithmetic of clay getting smaller: what test bars
// say, and what size to make a thing now so that it has another when fired. It
// exists apart from the catalog so that each formula stands once, with its
// basis named: percentages are of the fresh (plastic) length unless a function
// says otherwise. Percentages on two bases may never be added, only compounded.
//
// Lengths may be in any one unit; percentages are numbers of percent.
//
// Arithmetic is + - * / and math.Sqrt, each product in float64() unless it
// goes straight into another product or a quotient, so that amd64, arm64 and wasm agree to the last bit.
package shrinkage

// Linear returns the linear shrinkage from one length to another, in percent of
// the first. Source: the plastic-length basis of ASTM C326 when the first is
// the fresh length.
func Linear(before, after float64) float64 { return 100 * (before - after) / before }

// Volume returns the volume shrinkage (%) that goes with a linear shrinkage (%)
// that is the same in all directions.
func Volume(linear float64) float64 {
	left := 1 - linear/100
	return float64(100 * (1 - float64(left*left*left)))
}

// Remaining returns the shrinkage still to come, in percent of the present
// length, when sofar (%) of a total (%), both of the fresh length, is over.
// Holds for 0 <= sofar < 100 and sofar <= total.
func Remaining(total, sofar float64) float64 {
	return float64(100 * (1 - (1-total/100)/(1-sofar/100)))
}

// Fired returns what a size becomes when it shrinks by a percentage.
func Fired(size, percent float64) float64 { return float64(size * (1 - percent/100)) }

// Unfired returns the size that becomes another by shrinking by a percentage
// below 100.
func Unfired(fired, percent float64) float64 { return fired / (1 - percent/100) }

// Enlargement returns by how many percent a drawing of the finished size must
// grow to be laid on the clay. It is more than the shrinkage: 12 % of the
// large size is 13.6 % of the small one.
func Enlargement(percent float64) float64 { return 100 * percent / (100 - percent) }

// FiredCapacity returns what a capacity becomes when all lengths shrink by a
// percentage.
func FiredCapacity(capacity, percent float64) float64 {
	left := 1 - percent/100
	return float64(capacity * left * left * left)
}

// UnfiredCapacity returns the capacity that becomes another by shrinking.
func UnfiredCapacity(fired, percent float64) float64 {
	left := 1 - percent/100
	return fired / (left * left * left)
}
