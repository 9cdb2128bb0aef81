package slip

// Joined returns the specific gravity of two slips poured together, volumes in
// mL. By mass and volume balance; what is dry in them does not matter.
func Joined(volumeA, gravityA, volumeB, gravityB float64) float64 {
	return (float64(volumeA*gravityA) + float64(volumeB*gravityB)) / (volumeA + volumeB)
}

// ShareFor returns the part (0 to 1) of a mix by volume that a slip of specific
// gravity a has to be, so that with one of specific gravity b it comes to a
// wanted one: alligation. Holds for a wanted one from a to b, and a unlike b.
func ShareFor(wanted, a, b float64) float64 { return (wanted - b) / (a - b) }

// Blend returns the volumes (mL) of slips of such specific gravities, all above
// 1 and of solids of one density, that fill a cup of each mL and hold dry solids
// in such shares (%, 100 in all). The density of the solids cancels out: a
// volume holds dry solids in proportion to gravity - 1.
func Blend(each float64, gravities, shares []float64) []float64 {
	volumes, all := make([]float64, len(shares)), 0.0
	for i, share := range shares {
		volumes[i] = share / (gravities[i] - 1)
		all += volumes[i]
	}
	for i := range volumes {
		volumes[i] = each * volumes[i] / all
	}
	return volumes
}

// Blended returns the shares (%) of the dry solids that volumes (mL) of such
// slips hold: what Blend was asked for, where nothing was rounded.
func Blended(volumes, gravities []float64) []float64 {
	shares, all := make([]float64, len(volumes)), 0.0
	for i, v := range volumes {
		shares[i] = float64(v * (gravities[i] - 1))
		all += shares[i]
	}
	for i := range shares {
		shares[i] = 100 * shares[i] / all
	}
	return shares
}
