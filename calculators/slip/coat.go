package slip

import "math"

// Wall returns the area (cm²) of the curved wall of a pot between two rims of
// diameters top and foot (mm) that lie height (mm) apart, along its outside: a
// frustum of a cone, or where both are equal a cylinder.
//
// Source: π(R+r)√(h²+(R−r)²), the lateral area of a conical frustum, as in
// textbooks of solid geometry.
func Wall(top, foot, height float64) float64 {
	off := (top - foot) / 2
	return math.Pi * (top + foot) / 2 * math.Sqrt(float64(height*height)+float64(off*off)) / 100
}

// Disc returns the area (cm²) of a flat foot or floor of a diameter (mm).
func Disc(width float64) float64 { return math.Pi * width * width / 400 }

// CoatVolume returns the slip (mL) in a wet coat of a thickness (mm) on an area
// (cm²).
// Source: the spreading rate of coatings, 1 L at 100 µm wet covers 10 m².
func CoatVolume(area, thickness float64) float64 { return area * thickness / 10 }

// Coat returns the wet thickness (mm) of a coat that took a volume (mL) of slip
// on an area (cm², above 0).
func Coat(area, volume float64) float64 { return 10 * volume / area }

// CoatDry returns what is left (mm) of a wet coat (mm) of slip of a specific
// gravity when its water is gone, if its grains packed without air: the volume
// share of its solids. Holds for 1 <= gravity <= solids.
// Source: dry film = wet film x solids by volume (practice of coatings).
func CoatDry(wet, gravity, solids float64) float64 {
	return wet * (gravity - 1) / (solids - 1)
}
