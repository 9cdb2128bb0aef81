package register

import (
	"cmp"
	"maps"
	"slices"
	"strconv"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
)

// wallView is the wall of test tiles: a row for each colour, and in it a hook for each
// cone that it was tried at, bare and under a clear.
type wallView struct {
	imprint.Framed
	Narrow  narrowing
	Tiles   int // that hang there
	Colours int
	Empty   int    // hooks
	Most    string // that a plan for one adds, in percent, where no strength is written down
	Rows    []wallRow
	Plan    string // where tiles are planned
	Drawn   bool   // some tiles are drawings, for want of a photo
}

// wallColumn is a cone, bare or under a clear.
type wallColumn struct {
	Cone string
	Bare bool
}

// wallRow is a colour: a recipe in one strength, or what was not mixed here.
type wallRow struct {
	ID      string
	Of      imprint.Link
	Percent string
	Hooks   []hook // the coolest first
}

// hook is a place on the wall; nothing hangs there while it was not tried.
type hook struct {
	Column wallColumn
	Tiles  []tileView
	Plan   string // of an empty one: the tiles that would fill it, planned
}

// Wall is the wall, or nothing while no tile is written down.
func (r *Register) Wall() []imprint.Sheet {
	if len(r.reading.Course.Tiles) == 0 {
		return nil
	}
	title, description := r.Say("wall"), r.Say("wall-description")
	return []imprint.Sheet{{Address: address.Wall, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		v := wallView{Framed: imprint.Framed{Shell: r.frame.Shell(at, imprint.About{Kind: "wall", Title: title, Description: description, Gathered: true, Wall: true})},
			Plan: at.To(address.Calculator(tilePlanner)), Tiles: len(r.reading.Course.Tiles), Most: mostTried, Narrow: r.narrowing()}
		columns, hung := r.wallColumns(), r.hung()
		for _, key := range r.colours() {
			v.add(r.wallRow(key, hung[key], columns, at))
		}
		return v, nil
	}}}
}

// add hangs up a row, and counts it.
func (v *wallView) add(row wallRow) {
	v.Rows = append(v.Rows, row)
	v.Colours++
	for _, h := range row.Hooks {
		if len(h.Tiles) == 0 {
			v.Empty++
		}
		v.Drawn = v.Drawn || slices.ContainsFunc(h.Tiles, func(t tileView) bool { return t.Drawn })
	}
}

// colour tells apart the rows of the wall.
type colour struct{ recipe, medium, percent string }

func colourOf(t *course.Tile) colour { return colour{t.Recipe, t.Medium, t.Percent} }

// id is that of its row.
func (c colour) id() string {
	id := "colour." + cmp.Or(c.recipe, c.medium)
	if c.percent != "" {
		id += "." + c.percent
	}
	return id
}

// hung is the tiles of each row.
func (r *Register) hung() map[colour][]*course.Tile {
	all := map[colour][]*course.Tile{}
	for _, t := range r.reading.Course.Tiles {
		all[colourOf(t)] = append(all[colourOf(t)], t)
	}
	return all
}

// colours lists them in the order in which the file first has each recipe, and
// within one the weaker before the stronger.
func (r *Register) colours() []colour {
	first := map[colour]int{} // without its strength
	for n, t := range r.reading.Course.Tiles {
		mix := colour{t.Recipe, t.Medium, ""}
		if _, there := first[mix]; !there {
			first[mix] = n
		}
	}
	return slices.SortedFunc(maps.Keys(r.hung()), func(a, b colour) int {
		return cmp.Or(cmp.Compare(first[colour{a.recipe, a.medium, ""}], first[colour{b.recipe, b.medium, ""}]),
			cmp.Compare(a.strength(), b.strength()), cmp.Compare(a.percent, b.percent))
	})
}

// strength is how much colour it holds, in percent; 0 where nobody wrote it down.
func (c colour) strength() float64 {
	percent, err := strconv.ParseFloat(c.percent, 64)
	if err != nil {
		return 0
	}
	return percent
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

// wallRow hangs the tiles of a colour.
func (r *Register) wallRow(key colour, tiles []*course.Tile, columns []wallColumn, at imprint.Place) wallRow {
	row := wallRow{ID: at.ID(key.id()), Of: r.colourLink(key, at), Percent: key.percent}
	for _, column := range columns {
		h, tried := hook{Column: column}, (*course.Tile)(nil)
		for _, t := range tiles {
			if t.Cone != column.Cone {
				continue
			}
			tried = t
			if (t.Clear == course.NoClear) == column.Bare {
				h.Tiles = append(h.Tiles, r.tile(t, row, at))
			}
		}
		if tried == nil {
			continue // nobody tried it at this cone
		}
		if len(h.Tiles) == 0 {
			h.Plan = at.To(r.planFor(tried, column))
		}
		row.Hooks = append(row.Hooks, h)
	}
	return row
}

// colourLink leads to the recipe of a row, or to its medium where it was not mixed
// here.
func (r *Register) colourLink(key colour, at imprint.Place) imprint.Link {
	if recipe, there := r.reading.Course.FindRecipe(key.recipe); there {
		return recipeLink(at, recipe)
	}
	if m, there := r.Decoration.FindMedium(key.medium); there {
		return imprint.Link{Title: m.Name, Address: at.To(address.Medium(m.ID))}
	}
	return imprint.Link{}
}
