// Package tile plans test tiles: which mixes, what to weigh for each on the
// scale at hand, and what to scratch into the back so that nobody reads it
// wrong after the firing. It exists apart from the catalog so that counting,
// rounding and codes are tested without a form around them.
//
// Percentages are numbers of percent, masses in g.
//
// Arithmetic is + - * / and exact rounding only, so that amd64, arm64 and wasm
// agree to the last bit.
package tile

// Line returns so many percentages (2 or more) in equal steps from low to high,
// both in, and both exactly.
func Line(low, high float64, points int) []float64 {
	steps := make([]float64, points)
	last := float64(points - 1)
	for i := range steps {
		step := float64(i)
		steps[i] = low + (high-low)*step/last
	}
	steps[points-1] = high // exactly, whatever the sum was rounded to
	return steps
}

// Doubling returns so many percentages from low on, each twice the one before.
func Doubling(low float64, points int) []float64 {
	steps := make([]float64, points)
	for i := range steps {
		steps[i] = low
		low += low
	}
	return steps
}

// Count returns how many mixes a triaxial has with so many along one side.
func Count(side int) int { return side * (side + 1) / 2 }

// Triaxial returns the shares (%) of three mixes A, B and C, with so many (2 or
// more) along one side of the triangle: row by row from the corner of A to the
// side from B to C.
func Triaxial(side int) [][3]float64 {
	steps := side - 1
	share := func(of int) float64 { return 100 * float64(of) / float64(steps) }
	var shares [][3]float64
	for row := range side {
		for c := range row + 1 {
			shares = append(shares, [3]float64{share(steps - row), share(row - c), share(c)})
		}
	}
	return shares
}
