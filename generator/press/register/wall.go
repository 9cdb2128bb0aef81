package register

import (
	"cmp"
	"slices"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
)

// wallView is the wall of test tiles: a row for each colour, and in it a hook for each
// cone that it was tried at, bare and under a clear.
type wallView struct {
	imprint.Framed
	Rows  []wallRow
	Plan  string // where tiles are planned
	Drawn bool   // some tiles are drawings, for want of a photo
}

// wallColumn is a cone, bare or under a clear.
type wallColumn struct {
	Cone string
	Bare bool
}

// wallRow is a colour: a recipe in one strength, or what was not mixed here.
type wallRow struct {
	Of      imprint.Link
	Percent string
	Hooks   []hook // the coolest first
}

// hook is a place on the wall; nothing hangs there while it was not tried.
type hook struct {
	Column wallColumn
	Tiles  []tileView
}

// tileView is a tile as it hangs.
type tileView struct {
	ID string // on the wall; on another page the way there
	course.Tile
	BodyName string
	Clear    *imprint.Link // nil where it is bare
	Reports  []reportView  // of its very combination
}

// Wall is the wall, or nothing while no tile is written down.
func (r *Register) Wall() []imprint.Sheet {
	if len(r.reading.Course.Tiles) == 0 {
		return nil
	}
	title, description := r.Say("wall"), r.Say("wall-description")
	return []imprint.Sheet{{Address: address.Wall, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		v := wallView{Framed: imprint.Framed{Shell: r.frame.Shell(at, imprint.About{Kind: "wall", Title: title, Description: description, Gathered: true})},
			Plan: at.To(address.Calculator("tile-plan"))}
		columns := r.wallColumns()
		for _, key := range r.colours() {
			v.Rows = append(v.Rows, r.wallRow(key, columns, at))
		}
		v.Drawn = slices.ContainsFunc(r.reading.Course.Tiles, func(t *course.Tile) bool { return t.Colour != "" })
		return v, nil
	}}}
}

// colour tells apart the rows of the wall.
type colour struct{ recipe, medium, percent string }

func colourOf(t *course.Tile) colour { return colour{t.Recipe, t.Medium, t.Percent} }

// colours lists them in the order in which the file first has each recipe, and
// within one the weaker before the stronger.
func (r *Register) colours() []colour {
	var all []colour
	first := map[string]int{}
	for n, t := range r.reading.Course.Tiles {
		c := colourOf(t)
		if _, there := first[c.recipe+c.medium]; !there {
			first[c.recipe+c.medium] = n
		}
		if !slices.Contains(all, c) {
			all = append(all, c)
		}
	}
	slices.SortStableFunc(all, func(a, b colour) int {
		return cmp.Or(cmp.Compare(first[a.recipe+a.medium], first[b.recipe+b.medium]), cmp.Compare(len(a.percent), len(b.percent)), cmp.Compare(a.percent, b.percent))
	})
	return all
}

// wallColumns lists the cones that tiles were fired to or wait for, each bare and
// under a clear, the coolest first.
func (r *Register) wallColumns() []wallColumn {
	var cones []string
	for _, t := range r.reading.Course.Tiles {
		if !slices.Contains(cones, t.Cone) {
			cones = append(cones, t.Cone)
		}
	}
	slices.SortFunc(cones, func(a, b string) int { return cmp.Compare(course.ConeRank(a), course.ConeRank(b)) })
	var columns []wallColumn
	for _, cone := range cones {
		columns = append(columns, wallColumn{cone, true}, wallColumn{cone, false})
	}
	return columns
}

func (r *Register) wallRow(key colour, columns []wallColumn, at imprint.Place) wallRow {
	row := wallRow{Percent: key.percent}
	if recipe, there := r.reading.Course.FindRecipe(key.recipe); there {
		row.Of = recipeLink(at, recipe)
	} else if m, there := r.Decoration.FindMedium(key.medium); there {
		row.Of = imprint.Link{Title: m.Name, Address: at.To(address.Medium(m.ID))}
	}
	for _, column := range columns {
		if !slices.ContainsFunc(r.reading.Course.Tiles, func(t *course.Tile) bool { return colourOf(t) == key && t.Cone == column.Cone }) {
			continue // nobody tried it at this cone
		}
		h := hook{Column: column}
		for _, t := range r.reading.Course.Tiles {
			if colourOf(t) == key && t.Cone == column.Cone && (t.Clear == course.NoClear) == column.Bare {
				h.Tiles = append(h.Tiles, r.tile(t, at))
			}
		}
		row.Hooks = append(row.Hooks, h)
	}
	return row
}

func (r *Register) tile(t *course.Tile, at imprint.Place) tileView {
	v := tileView{ID: at.ID(TileID(t.Code)), Tile: *t, BodyName: r.bodyName(t.Body), Reports: r.reportsOn(t, at)}
	if clear, there := r.reading.Course.FindMaterial(t.Clear); there {
		link := materialLink(at, clear)
		v.Clear = &link
	}
	return v
}

// TileID returns the id of a tile on the wall.
func TileID(code string) string { return "tile." + strings.ToLower(code) }

// tileLink is a link to a tile on the wall, or its code alone where none hangs there.
func (r *Register) tileLink(code string, at imprint.Place) imprint.Link {
	for _, t := range r.reading.Course.Tiles {
		if strings.EqualFold(t.Code, code) {
			return imprint.Link{Title: t.Code, Address: at.To(address.Wall + "#" + TileID(t.Code)), About: t.Remark}
		}
	}
	return imprint.Link{Title: code}
}

// tilesOf lists the tiles of a recipe, those that failed first: they warn.
func (r *Register) tilesOf(recipe *course.Recipe, at imprint.Place) []tileView {
	var failed, others []tileView
	for _, t := range r.reading.Course.Tiles {
		switch {
		case t.Recipe != recipe.ID:
		case t.Verdict == course.TileFailed:
			failed = append(failed, r.tile(t, imprint.Place{}))
		default:
			others = append(others, r.tile(t, imprint.Place{}))
		}
	}
	all := append(failed, others...)
	for i := range all {
		all[i].ID = at.To(address.Wall + "#" + TileID(all[i].Code))
	}
	return all
}
