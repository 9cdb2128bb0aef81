package proof

import (
	"cmp"
	"fmt"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// retest reports a tile that was to be tried again by now.
func (g *gate) retest(t *course.Tile) {
	if t.Due(g.today) {
		g.report(t.Spots.Of("retest"), finding.TileRetest, fmt.Sprintf("tile %s was to be tried again by %s", t.Code, t.Retest),
			"Make one like it, and write it down in a row of its own. In this row write the next day, or leave `retest` empty.")
	}
}

// proofs checks that the tile of each version of a recipe shows that very mix. An
// older version may name a tile that failed: that is why there is a newer one.
func (g *gate) proofs(r *course.Recipe) {
	for _, v := range r.Versions {
		if v.Tile == "" {
			continue
		}
		if text, do := g.unproven(r, v); text != "" {
			g.report(v.Spots.Of("tile"), finding.RecipeProof, text, do)
		}
	}
}

// unproven says why the tile of a version proves nothing of it, and what to write;
// nothing where it does.
func (g *gate) unproven(r *course.Recipe, v course.Version) (text, do string) {
	const other = "Name a tile of this recipe and this version, or take `tile` away until one is fired."
	t, there := g.course.FindTile(v.Tile)
	switch {
	case !there:
		return fmt.Sprintf("no tile `%s` hangs on the wall", v.Tile), source.Meant(v.Tile, g.tileCodes()) + "Write the code of a row of tiles.csv, or take `tile` away."
	case t.Recipe != r.ID:
		return fmt.Sprintf("tile %s is of `%s`, not of this recipe", t.Code, cmp.Or(t.Recipe, t.Medium)), other
	case t.Version == 0:
		return fmt.Sprintf("tile %s does not say of which version it is", t.Code), fmt.Sprintf("Write `%d` into its column `version` if it is of this one.", v.Number)
	case t.Version != v.Number:
		return fmt.Sprintf("tile %s is of version %d, not of version %d", t.Code, t.Version, v.Number), other
	case t.Fired == "":
		return fmt.Sprintf("tile %s is not fired yet", t.Code), "Take `tile` away until it is, or write the day into its column `fired`."
	case t.Fired < v.Date:
		return fmt.Sprintf("tile %s was fired on %s, before version %d was mixed on %s", t.Code, t.Fired, v.Number, v.Date), other
	case t.Verdict == course.TileFailed && v.Number == r.Newest().Number:
		return fmt.Sprintf("tile %s failed, and version %d is the one in use", t.Code, v.Number), "Mix a better version, or name another tile of this one; if none is good, take `tile` away."
	}
	return "", ""
}

// tileCodes lists the codes of the tiles on the wall.
func (g *gate) tileCodes() []string {
	var all []string
	for _, t := range g.course.Tiles {
		all = append(all, t.Code)
	}
	return all
}
