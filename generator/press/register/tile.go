package register

import (
	"html/template"
	"path"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
)

// tileView is a tile as it hangs on the wall.
type tileView struct {
	ID string
	course.Tile
	Of       string // its colour's name
	BodyName string
	Clear    *imprint.Link // nil where it is bare
	Photos   []tilePhoto   // before the firing, then after; a drawing stands where there are none
	Drawn    bool          // what is shown of it is a drawing
	Due      bool          // it was to be tried again by now
	Reports  []reportView  // of leach tests, of its very combination
}

// tilePhoto is a picture of a tile.
type tilePhoto struct {
	After bool // the firing
	Shown template.HTML
	Drawn bool
}

// tileMention is a tile named on another page.
type tileMention struct {
	course.Tile
	To string // where it hangs
}

// tile makes the view of a tile in its row.
func (r *Register) tile(t *course.Tile, row wallRow, at imprint.Place) tileView {
	v := tileView{ID: at.ID(address.TileID(t.Code)), Tile: *t, Of: row.Of.Title, BodyName: r.bodyName(t.Body), Due: t.Due(r.reading.Today), Reports: r.reportsOn(t, at)}
	if clear, there := r.reading.Course.FindMaterial(t.Clear); there {
		link := materialLink(at, clear)
		v.Clear = &link
	}
	for n, file := range []string{t.Before, t.After} {
		if picture, there := r.reading.Course.Pictures[file]; there {
			drawn := strings.EqualFold(path.Ext(file), ".svg")
			v.Photos = append(v.Photos, tilePhoto{n == 1, imprint.Picture(at, picture, r.tileWords(v, n == 1), tileSizes), drawn})
			v.Drawn = v.Drawn || drawn
		}
	}
	v.Drawn = v.Drawn || len(v.Photos) == 0 && t.Colour != ""
	return v
}

// tileSizes is how wide a photo of a tile is shown: as a hook.
const tileSizes = "(min-width: 37rem) 11rem, 44vw"

// tileWords says what a picture of a tile shows, for whoever cannot see it: what the
// table says of the tile.
func (r *Register) tileWords(v tileView, after bool) string {
	what := []string{v.Of}
	if v.Percent != "" {
		what = append(what, v.Percent+" %")
	}
	what = append(what, v.BodyName)
	if v.Clear != nil {
		what = append(what, v.Clear.Title)
	} else {
		what = append(what, r.Say("wall-no-clear"))
	}
	words := strings.Join(what, ", ")
	if after {
		return r.Say("wall-alt-after", v.Code, v.Cone, words)
	}
	return r.Say("wall-alt-before", v.Code, words)
}

// bodyName is what a clay body is called.
func (r *Register) bodyName(id string) string {
	for _, b := range r.reading.Course.Bodies {
		if b.ID == id {
			return b.Name
		}
	}
	return id
}

// Pictures lists the pictures that the wall shows, as far as there are any.
func (r *Register) Pictures() []*course.Picture {
	var all []*course.Picture
	for _, t := range r.reading.Course.Tiles {
		for _, file := range []string{t.Before, t.After} {
			if picture, there := r.reading.Course.Pictures[file]; there {
				all = append(all, picture)
			}
		}
	}
	return all
}

// tilesOf lists the tiles of a recipe, those that failed first: they warn.
func (r *Register) tilesOf(recipe *course.Recipe, at imprint.Place) []tileMention {
	var failed, others []tileMention
	for _, t := range r.reading.Course.Tiles {
		mention := tileMention{*t, at.To(address.Tile(t.Code))}
		switch {
		case t.Recipe != recipe.ID:
		case t.Verdict == course.TileFailed:
			failed = append(failed, mention)
		default:
			others = append(others, mention)
		}
	}
	return append(failed, others...)
}
