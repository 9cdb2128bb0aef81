// Package slip is the arithmetic of clay suspensions: what a weighed jar says
// about its dry content, and how much water or powder moves a bucket from one
// specific gravity to another. It exists apart from the catalog so that each
// formula stands once, under its source, and is tested against published
// figures without a form around it.
//
// Units throughout: mass in g, volume in mL, density in g/mL, percentages as
// numbers of percent. Functions do not check their ranges, each says what it
// holds for; the catalog refuses the rest in words.
//
// Arithmetic is + - * / and math.Sqrt, each product in float64() unless it
// goes straight into another product or a quotient, so that amd64, arm64 and wasm agree to the last bit.
package slip

// Dry returns the dry solids (g) in a volume (mL) of slip that weighs mass (g),
// for solids of density solids and water of density water (both g/mL).
// Holds for water < mass/volume <= solids.
//
// Source: A. Brongniart, Traité des arts céramiques vol. 1 (1854) p. 249, as
// cited by Harrison et al., Handbook for Australian Potters, and GTZ, Forming
// Techniques for the Self-Reliant Potter (1991), appendix; with a water
// density that is not 1 by algebra.
func Dry(mass, volume, solids, water float64) float64 {
	return (mass - float64(water*volume)) * solids / (solids - water)
}

// DryAt returns the dry solids (g) in a volume (mL) of slip of specific gravity
// gravity, water at 1 g/mL. Holds for 1 <= gravity <= solids.
func DryAt(volume, gravity, solids float64) float64 {
	return volume * (gravity - 1) * solids / (solids - 1)
}

// Water returns the water (mL) that thins a volume (mL) from one specific
// gravity to a lower one. It does not depend on the solids.
// Holds for 1 < to <= from. By mass and volume balance.
func Water(volume, from, to float64) float64 {
	return volume * (from - to) / (to - 1)
}

// Decant returns the clear water (mL) to take off a settled volume (mL) to
// bring it from one specific gravity to a higher one.
// Holds for 1 < from <= to. By mass and volume balance.
func Decant(volume, from, to float64) float64 {
	return volume * (to - from) / (to - 1)
}

// Powder returns the dry mix (g) that thickens a volume (mL) from one specific
// gravity to a higher one; the volume grows by the powder's own, Powder/solids.
// Holds for 1 <= from <= to < solids. By mass and volume balance.
func Powder(volume, from, to, solids float64) float64 {
	return volume * (to - from) * solids / (solids - to)
}

// Share parts a dry mass (g) that is base and stain together, the stain
// counted over 100 of base, into the two.
func Share(mass, stain float64) (base, colour float64) {
	return mass * 100 / (100 + stain), mass * stain / (100 + stain)
}
