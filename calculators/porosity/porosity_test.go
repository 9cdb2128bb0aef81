package porosity

import (
	"math"
	"testing"
)

// TestTile wants a tile to be made of its clay and its open pores, as the scale
// saw them.
func TestTile(t *testing.T) {
	for _, tile := range []Tile{{100, 105, 60}, {57.31, 57.42, 33.02}, {80, 96, 49}} {
		room := tile.Soaked - tile.Suspended // mL of water that it pushes away
		pores := room * tile.Porosity() / 100
		for what, got := range map[string][2]float64{
			"water in the pores":   {pores, tile.Dry * tile.Absorption() / 100},
			"porosity":             {tile.Porosity(), tile.Absorption() * tile.Bulk()},
			"weight":               {room * tile.Bulk(), tile.Dry},
			"room without pores":   {tile.Dry / tile.Apparent(), room - pores},
			"what water bears off": {tile.Soaked - room, tile.Suspended},
		} {
			if math.Abs(got[0]-got[1]) > 1e-12*math.Max(1, got[1]) {
				t.Errorf("%+v: %s: %v and %v", tile, what, got[0], got[1])
			}
		}
	}
}

// TestReading finds what the scale leaves uncertain by moving each weighing.
func TestReading(t *testing.T) {
	tile, at := Tile{100, 108, 60}, func(dry, soaked float64) float64 { return Tile{dry, soaked, 0}.Absorption() }
	up := (at(tile.Dry+1e-4, tile.Soaked) - at(tile.Dry-1e-4, tile.Soaked)) / 2e-4
	down := (at(tile.Dry, tile.Soaked+1e-4) - at(tile.Dry, tile.Soaked-1e-4)) / 2e-4
	want := 2 * math.Hypot(up, down) * 0.1 / math.Sqrt(12)
	if got := tile.Reading(0.1); math.Abs(got-want) > 1e-7*want {
		t.Errorf("%v, want %v", got, want)
	}
}
