package table

import (
	"bytes"
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
)

// TestProofOfARecipe wants a tile to prove a version only if it was made of it, fired,
// and is something to use, and wants untested in words wherever none does.
func TestProofOfARecipe(t *testing.T) {
	c := presstest.Harmful(t)
	recipe := &course.Recipe{ID: "slip", Title: "Slip", Medium: "coloured-slip", Cone: "6"}
	c.Recipes = append(c.Recipes, recipe)
	tile := func(code, of string, version int, fired, verdict string) {
		c.Tiles = append(c.Tiles, &course.Tile{Code: code, Recipe: of, Version: version, Fired: fired, Verdict: verdict, Cone: "6", Clear: course.NoClear, Batch: "2026-08"})
	}
	tile("R1", "slip", 2, "2026-09-12", course.TileGood)
	tile("R2", "slip", 2, "2026-09-12", course.TileUsable)
	tile("R3", "slip", 2, "2026-09-12", course.TileFailed)
	tile("R4", "slip", 2, "2026-09-12", "")
	tile("R5", "slip", 2, "", course.TileGood)
	tile("R6", "slip", 1, "2026-09-12", course.TileGood)
	tile("R7", "other", 2, "2026-09-12", course.TileGood)
	r := newTable(t, c)
	for _, tt := range []struct {
		code   string
		tested bool
		says   string
	}{
		{"r1", true, `<a href="../tiles/index.html#tile.r1">our tile R1</a>, batch 2026-08, cone 6, bare`},
		{"R2", true, `bare, usable`},
		{"R3", false, `<b>failed</b>: <a href="../tiles/index.html#tile.r3">our tile R3</a>, batch 2026-08, cone 6`},
		{"R4", false, `<b>untested</b>: <a href="../tiles/index.html#tile.r4">our tile R4</a>, not judged yet`},
		{"R5", false, `<b>untested</b>: <a href="../tiles/index.html#tile.r5">our tile R5</a>, not fired yet`},
		{"R6", false, `<b>untested</b>: <a href="../tiles/index.html#tile.r6">our tile R6</a>, of another mix or version`},
		{"R7", false, `<b>untested</b>: <a href="../tiles/index.html#tile.r7">our tile R7</a>, of another mix or version`},
		{"R9", false, `<b>untested</b>: tile R9 does not hang on the wall`},
		{"", false, `<b>untested</b>`},
	} {
		recipe.Versions = []course.Version{{Number: 2, Tile: tt.code}, {Number: 1, Tile: "R1"}}
		p := r.Newest(recipe, imprint.Place{Page: "recipes/slip.html"})
		var out bytes.Buffer
		if err := r.Pages.ExecuteTemplate(&out, "tested", p); err != nil {
			t.Fatal(err)
		}
		if p.Tested() != tt.tested || !strings.HasSuffix(out.String(), tt.says) {
			t.Errorf("%s: %v, %s; want %v, %s", tt.code, p.Tested(), &out, tt.tested, tt.says)
		}
	}
	if recipe.Versions = nil; r.Newest(recipe, imprint.Place{Page: "recipes/slip.html"}).Tested() {
		t.Error("a recipe without a version is proved")
	}
}
