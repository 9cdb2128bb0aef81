package slip

// Bucket is a slip that stain goes into.
type Bucket struct {
	Volume  float64 // mL
	Gravity float64 // specific gravity as measured, with the stain that is in it
	Solids  float64 // density of the base, g/mL
	Now     float64 // stain in it already, % over base
	Stain   float64 // density of the stain, g/mL
}

// Solid returns the density (g/mL) of all that is dry in the bucket. The stain
// already in it was weighed with the slip, so the solids that Gravity speaks
// of are a mix.
func (b Bucket) Solid() float64 { return Mixed(b.Solids, b.Now, b.Stain) }

// Base returns the dry base (g) in the bucket, without the stain already in it.
// Stain is counted over this and nothing else: what is in and what is wanted
// are percentages of the same base, so that their difference can be weighed.
func (b Bucket) Base() float64 {
	base, _ := Share(DryAt(b.Volume, b.Gravity, b.Solid()), b.Now)
	return base
}

// Unwatered returns the specific gravity after so much stain (g) and no water.
func (b Bucket) Unwatered(stain float64) float64 {
	return (float64(b.Volume*b.Gravity) + stain) / (b.Volume + stain/b.Stain)
}

// Hold returns the water (g) that brings the specific gravity back to what it
// was before so much stain (g) went in. Holds for 1 < Gravity <= Stain: a stain
// lighter than the slip would make it thinner by itself.
func (b Bucket) Hold(stain float64) float64 {
	return stain * (b.Stain - b.Gravity) / (b.Stain * (b.Gravity - 1))
}

// Filled returns the volume (mL) after so much stain (g) and water (g).
func (b Bucket) Filled(stain, water float64) float64 {
	return b.Volume + stain/b.Stain + water
}
