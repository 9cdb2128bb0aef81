package slip

import "math"

// WaterOfDamp returns the water of a lump in percent of its damp weight, from
// its weights damp and dry (g). Pottery counts so.
func WaterOfDamp(damp, dry float64) float64 { return 100 * (damp - dry) / damp }

// WaterOfDry returns the water of a lump in percent of its dry weight.
// Source: ASTM D2216, water over dry mass, as a manual of its publisher prints
// it (read).
func WaterOfDry(damp, dry float64) float64 { return 100 * (damp - dry) / dry }

// WaterDoubt returns the standard uncertainty of WaterOfDamp where the scale
// shows steps of step (g): step/√12 for each weighing (JCGM 100, 4.3.7).
func WaterDoubt(damp, dry, step float64) float64 {
	share := dry / damp
	return float64(100 * step / damp * math.Sqrt((1+float64(share*share))/12))
}

// Rewet returns the water (g) to add to damp clay (g) to bring it from one water
// content to another, both in percent of the damp weight and below 100; negative
// where it has to dry.
func Rewet(damp, from, to float64) float64 { return Damp(Dried(damp, from), to) - damp }

// LossADay returns what a pot loses a day, in percent of its weight, from two
// weighings (g) so many hours apart.
func LossADay(first, later, hours float64) float64 {
	return 100 * (first - later) / first * 24 / hours
}
