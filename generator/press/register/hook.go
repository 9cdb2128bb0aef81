package register

import (
	"strconv"
	"strings"

	"slipbook/calculators/form"
	"slipbook/generator/address"
	"slipbook/generator/course"
)

// tilePlanner is the calculator that plans test tiles.
const tilePlanner = "tile-plan"

const (
	// mostTried is up to how much colour a plan goes, in percent, where the wall names
	// no strength: usual in a slip, common practice.
	mostTried = "10"
	// tileBase is what each mix of a plan has of its base: enough for a tile in several
	// coats, and for a scale of 0.1 g.
	tileBase = "100 g"
	// weakBase takes its place below 1 %, where the scale would not show so little.
	weakBase = "1000 g"
	// leastTried is the strength from which a plan halves it, in percent: less can
	// hardly be weighed.
	leastTried = 0.1
	// mostCoats is how many the calculator knows.
	mostCoats = 10
)

// planFor is the address of a plan for an empty hook: two mixes in the coats of a
// tile that hangs in the same row, with half of its colour and with all; without a
// strength, the mix as it is and with as much colour as is usual.
func (r *Register) planFor(t *course.Tile, column wallColumn) string {
	low, high, base := "0", mostTried, tileBase
	if percent := colourOf(t).strength(); percent >= leastTried {
		low, high = r.figure(percent/2), r.figure(percent)
		if percent < 1 {
			base = weakBase
		}
	}
	given := []form.Setting{{Name: "kind", Text: "line"}, {Name: "points", Text: "2"}, {Name: "low", Text: low}, {Name: "high", Text: high}, {Name: "base", Text: base}}
	if t.Coats > 0 {
		given = append(given, form.Setting{Name: "coats", Text: strconv.Itoa(min(t.Coats, mostCoats))})
	}
	given = append(given, form.Setting{Name: "cones", Text: column.Cone}, form.Setting{Name: "finishes", Text: r.finish(t, column)})
	return address.Calculator(tilePlanner) + "?" + form.Request(tilePlanner, given) + "#" + address.CalculatorID(0)
}

// finish says how the tiles of a column end, in the words of one entry of a list:
// under the clear of their recipe where it has one for this cone.
func (r *Register) finish(t *course.Tile, column wallColumn) string {
	if column.Bare {
		return r.Say("wall-no-clear")
	}
	name := r.Say("wall-some-clear")
	if recipe, there := r.reading.Course.FindRecipe(t.Recipe); there && recipe.Cone == column.Cone {
		if clear, there := r.reading.Course.FindMaterial(recipe.Clear); there {
			name = clear.Name
		}
	}
	return strings.NewReplacer(",", " ", ";", " ").Replace(name)
}
