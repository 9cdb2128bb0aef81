// Package wash is the arithmetic of stain washes: a little ground stain and
// flux in a lot of water. They hold too little to be known by weighing a jar
// (under a specific gravity of 1.15 the error eats the answer), so everything
// here is reckoned from what was weighed in. It exists apart from the catalog
// so that each formula stands once and is tested without a form around it.
//
// Units throughout: mass in g, volume in mL, density in g/mL, strength in g of
// dry matter per 100 mL of wash. Functions do not check their ranges, each
// says what it holds for.
//
// Arithmetic is + - * / only, so that amd64, arm64 and wasm agree to the last
// bit.
package wash

// Parts are the proportions of a wash by mass, with the densities (g/mL) of
// its powders; water counts 1 g/mL.
type Parts struct {
	Stain, Flux, Water        float64
	StainDensity, FluxDensity float64
}

// Mass returns the mass (g) of the parts together.
func (p Parts) Mass() float64 { return p.Stain + p.Flux + p.Water }

// Volume returns the volume (mL) that the parts fill, volumes taken as additive.
func (p Parts) Volume() float64 {
	return p.Stain/p.StainDensity + p.Flux/p.FluxDensity + p.Water
}

// Density returns the density (g/mL) of the wash.
func (p Parts) Density() float64 { return p.Mass() / p.Volume() }

// Strength returns the dry matter, g per 100 mL of wash.
func (p Parts) Strength() float64 { return 100 * (p.Stain + p.Flux) / p.Volume() }

// StainStrength returns the stain alone, g per 100 mL of wash.
func (p Parts) StainStrength() float64 { return 100 * p.Stain / p.Volume() }

// Fill returns the parts as grams that fill a volume (mL).
func (p Parts) Fill(volume float64) (stain, flux, water float64) {
	whole := p.Volume()
	return volume * p.Stain / whole, volume * p.Flux / whole, volume * p.Water / whole
}

// WaterFor returns the parts of water that bring stain and flux to a strength (g
// per 100 mL); not above 0 for a strength that the powders alone fall short of.
func (p Parts) WaterFor(strength float64) float64 {
	return 100*(p.Stain+p.Flux)/strength - p.Stain/p.StainDensity - p.Flux/p.FluxDensity
}

// Thin returns the volume (mL) that a volume of one strength becomes at a lower
// one: C1 V1 = C2 V2. Holds for 0 < to <= from.
func Thin(volume, from, to float64) float64 { return volume * from / to }
