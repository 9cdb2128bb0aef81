package register

import (
	"strings"
	"testing"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
)

// TestWallHasEmptyHooks wants a hook for each way that a colour was not tried at a
// cone at which it was, and none for other cones.
func TestWallHasEmptyHooks(t *testing.T) {
	r, recipe := kept(t)
	r.reading.Course.Tiles = []*course.Tile{
		{Code: "R2", Recipe: recipe.ID, Medium: recipe.Medium, Percent: "10", Cone: "6", Clear: course.NoClear},
		{Code: "R1", Recipe: recipe.ID, Medium: recipe.Medium, Percent: "8", Cone: "04", Clear: "whiting"},
	}
	at := imprint.Place{Page: address.Wall}
	colours := r.colours()
	if len(colours) != 2 || colours[0].percent != "8" {
		t.Fatalf("colours %v, want the weaker first", colours)
	}
	row := r.wallRow(colours[0], r.hung()[colours[0]], r.wallColumns(), at)
	if row.ID != "colour.slip.8" {
		t.Errorf("the row's id is %q", row.ID)
	}
	if len(row.Hooks) != 2 || !row.Hooks[0].Column.Bare || row.Hooks[0].Column.Cone != "04" || len(row.Hooks[0].Tiles) != 0 || len(row.Hooks[1].Tiles) != 1 {
		t.Errorf("hooks %+v", row.Hooks)
	}
	if of := r.tilesOf(recipe, imprint.Place{Page: address.Recipe(recipe.ID)}); len(of) != 2 || of[0].To != "../tiles/index.html#tile.r2" {
		t.Errorf("the page of the recipe leads to %+v", of)
	}
}

// atWall returns a wall as its page prints it.
func atWall(t *testing.T, r *Register) wallView {
	t.Helper()
	v, err := r.Wall()[0].View(imprint.Place{Page: address.Wall})
	if err != nil {
		t.Fatal(err)
	}
	return v.(wallView)
}

// TestEmptyHooksLeadToAnAnswer works out what each empty hook leads to.
func TestEmptyHooksLeadToAnAnswer(t *testing.T) {
	r, recipe := kept(t)
	for _, percent := range []string{"", "0", "0.001", "0.1", "0.5", "2.5", "8", "10", "999.999"} {
		for _, tile := range []course.Tile{{Cone: "022", Clear: course.NoClear}, {Cone: "6", Clear: "whiting", Coats: 12, Recipe: recipe.ID}} {
			tile.Code, tile.Percent, tile.Medium = "R1", percent, recipe.Medium
			r.reading.Course.Tiles = []*course.Tile{&tile}
			v := atWall(t, r)
			if v.Tiles != 1 || v.Colours != 1 || v.Empty != 1 {
				t.Fatalf("%q: %d tiles, %d colours, %d empty hooks", percent, v.Tiles, v.Colours, v.Empty)
			}
			for _, h := range v.Rows[0].Hooks {
				if (h.Plan == "") != (len(h.Tiles) > 0) {
					t.Fatalf("%q: %d tiles, planned by %q", percent, len(h.Tiles), h.Plan)
				}
				if h.Plan != "" {
					answers(t, r, h, percent)
				}
			}
		}
	}
}

// answers wants the plan of an empty hook to be worked out, for its cone, its finish
// and its strength.
func answers(t *testing.T, r *Register, h hook, percent string) {
	t.Helper()
	_, query, _ := strings.Cut(h.Plan, "?")
	request, at, _ := strings.Cut(query, "#")
	name, given, err := form.ReadRequest(request)
	answer := catalog.Solve(name, given, r.reading.Settings)
	if err != nil || name != tilePlanner || at != address.CalculatorID(0) || len(answer.Errors) > 0 || len(answer.Rows) != 2 {
		t.Fatalf("%s: %v %v", h.Plan, err, answer.Errors)
	}
	for _, row := range answer.Rows[1:] {
		if want := (colour{percent: percent}).strength(); want >= leastTried && row[1].Value != want {
			t.Errorf("%s: the stronger mix has %g %%, want %g", h.Plan, row[1].Value, want)
		}
	}
	said := map[string]string{}
	for _, g := range given {
		said[g.Name] = g.Text
	}
	if said["cones"] != h.Column.Cone || (said["finishes"] == "bare") != h.Column.Bare {
		t.Errorf("%+v is planned for %v", h.Column, said)
	}
}

// TestTileShowsItsPhotos wants photos in the place of the drawing, with words of the
// tile's own, and their files to be published.
func TestTileShowsItsPhotos(t *testing.T) {
	r, recipe := kept(t)
	c := r.reading.Course
	c.Pictures = map[string]*course.Picture{"pictures/r1.jpg": course.Whole("pictures/r1.jpg", 8, 6, []byte("a tile")), "pictures/r1.svg": {Path: "pictures/r1.svg", Width: 8, Height: 6, SVG: []byte("<svg></svg>")}}
	tile := &course.Tile{Code: "R1", Recipe: recipe.ID, Percent: "8", Body: "buff", Cone: "6", Clear: "whiting", After: "pictures/r1.jpg", Before: "pictures/r1.svg", Colour: "#000000"}
	at := imprint.Place{Page: address.Wall}
	row := wallRow{Of: imprint.Link{Title: "Slip"}}
	v := r.tile(tile, row, at)
	if len(v.Photos) != 2 || v.Photos[0].After || !v.Photos[0].Drawn || v.Photos[1].Drawn || !v.Drawn {
		t.Fatalf("%+v", v.Photos)
	}
	presstest.Holds(t, string(v.Photos[1].Shown), `src="../pictures/r1-`, `width="8" height="6"`, `alt="Tile R1 after firing to cone 6: Slip, 8 %, `, `, Whiting."`)
	if all := r.Pictures(); len(all) != 0 {
		t.Errorf("%d pictures of a wall where nothing hangs", len(all))
	}
	c.Tiles = []*course.Tile{tile}
	if all := r.Pictures(); len(all) != 2 {
		t.Errorf("%d pictures, want 2", len(all))
	}
	tile.Before, tile.After = "", ""
	if v := r.tile(tile, row, at); len(v.Photos) != 0 || !v.Drawn {
		t.Errorf("without photos %+v", v)
	}
}

// TestWallOffersWhatHangsThere wants nothing to choose that would leave nothing.
func TestWallOffersWhatHangsThere(t *testing.T) {
	r, recipe := kept(t)
	r.reading.Course.Bodies = []course.Body{{ID: "buff", Name: "Buff"}, {ID: "white", Name: "White"}}
	r.reading.Today = "2026-07-01"
	tile := course.Tile{Code: "R1", Recipe: recipe.ID, Medium: recipe.Medium, Body: "white", Cone: "6", Clear: course.NoClear, Coats: 2, Place: "top shelf", Retest: "2026-06-30"}
	other := tile
	other.Code, other.Coats, other.Place, other.Retest = "R2", 0, "", "2026-07-01"
	r.reading.Course.Tiles = []*course.Tile{&tile, &other}
	v := atWall(t, r)
	for name, got := range map[string][]offer{"white White": v.Narrow.Bodies, "2 2": v.Narrow.Coats, "none bare": v.Narrow.Clears, "top shelf top shelf": v.Narrow.Places} {
		if len(got) != 1 || got[0].Value+" "+got[0].Words != name {
			t.Errorf("%q is offered, want %q", got, name)
		}
	}
	if hung := v.Rows[0].Hooks[0].Tiles; !hung[0].Due || hung[1].Due {
		t.Errorf("due: %v and %v, want the first alone", hung[0].Due, hung[1].Due)
	}
}
