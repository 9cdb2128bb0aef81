// Package porosity is the arithmetic of what fired clay drinks: how much water
// its open pores take up, and how much of it they are. It exists apart from the
// catalog so that each formula stands once, under its source, and is tested
// without a form around it.
//
// Source of the formulas: ASTM C373 (its procedure read, the formulas as read in
// notes on it and on its sister for refractories, ASTM C20). 1 g of water counts
// as 1 cm³. Weights are in g; functions do not check their ranges, the catalog
// refuses the rest in words.
//
// Arithmetic is + - * / and math.Sqrt, each product in float64() unless it goes
// straight into another product or a quotient, so that amd64, arm64 and wasm
// agree to the last bit.
package porosity

import "math"

// Tile is one fired tile's weights (g): dry, soaked full and wiped, and soaked
// while it hangs under water. Holds for Suspended < Dry <= Soaked.
type Tile struct{ Dry, Soaked, Suspended float64 }

// Absorption returns the water that the tile took up, in percent of its dry
// weight. It needs no suspended weight.
func (t Tile) Absorption() float64 { return 100 * (t.Soaked - t.Dry) / t.Dry }

// Porosity returns the room of the open pores, in percent of all the room that
// the tile fills.
func (t Tile) Porosity() float64 { return 100 * (t.Soaked - t.Dry) / (t.Soaked - t.Suspended) }

// Bulk returns the density (g/mL) of the tile with all its pores.
func (t Tile) Bulk() float64 { return t.Dry / (t.Soaked - t.Suspended) }

// Apparent returns the specific gravity of the tile without its open pores.
func (t Tile) Apparent() float64 { return t.Dry / (t.Dry - t.Suspended) }

// Reading returns by how much (%, 95 %) the absorption may be off because the
// scale shows no finer step (g): step/√12 for each of the two readings (JCGM
// 100, 4.3.7), coverage factor 2.
func (t Tile) Reading(step float64) float64 {
	ratio := t.Soaked / t.Dry
	return float64(200 * step / t.Dry * math.Sqrt((1+float64(ratio*ratio))/12))
}
