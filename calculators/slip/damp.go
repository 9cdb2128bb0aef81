package slip

// The water of damp clay is counted in percent of its wet weight: 1000 g that
// dry to 800 g hold 20 %. Counted on the dry weight it would be 25 %.

// Damp returns the damp clay (g) that holds a dry mass (g), at a water content
// (%) below 100.
func Damp(dry, water float64) float64 { return dry * 100 / (100 - water) }

// Dried returns the dry clay (g) in a mass (g) of damp clay.
func Dried(damp, water float64) float64 { return damp * (100 - water) / 100 }

// Wettest returns the largest water content (%) of damp clay that still leaves
// room for a batch: at it, all of the batch's water comes with the clay.
func (b Batch) Wettest() float64 { return 100 * b.Water / (b.Water + b.Base) }
