package slip

// Mixed returns the density (g/mL) of a dry mix of base and stain, the stain
// counted in percent over 100 of base. The room of the powders adds, not their
// densities: the mean is harmonic.
func Mixed(base, percent, stain float64) float64 {
	return (100 + percent) / (100/base + percent/stain)
}

// Batch is what a slip is made of, in g. All of the water is in it, that of
// damp clay too.
type Batch struct{ Base, Stain, Water float64 }

// Make returns what makes a volume (mL) of slip of a specific gravity from base
// of density solids and percent of stain, over the base, of density stain
// (both g/mL). Holds for 1 <= gravity <= Mixed(solids, percent, stain), where
// no water is left. Exact: the volumes of base, stain and water add up to the
// volume, their masses to its mass.
func Make(volume, gravity, solids, percent, stain float64) Batch {
	dry := DryAt(volume, gravity, Mixed(solids, percent, stain))
	base, colour := Share(dry, percent)
	return Batch{base, colour, float64(volume*gravity) - dry}
}
