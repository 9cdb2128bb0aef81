package table

import (
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
)

// Proof is the tile that a version of a recipe names for itself, as pages cite it:
// evidence of this studio, or that there is none.
type Proof struct {
	Code    string // of the tile that is named; empty where none is
	Address string // of it on the wall; empty where no such tile hangs
	*course.Tile
	Clear *imprint.Link // nil where it is bare
	Of    bool          // it is a tile of this recipe and of this version
}

// Tested reports whether the tile proves the version: it was made of it, was fired,
// and came out of the kiln as something to use.
func (p Proof) Tested() bool {
	return p.Of && p.Fired != "" && p.CameOut()
}

// Failed reports whether the tile was made of the version, was fired, and failed.
func (p Proof) Failed() bool {
	return p.Of && p.Fired != "" && p.Verdict == course.TileFailed
}

// ProofOf looks up the tile that a version of a recipe names.
func (r *Table) ProofOf(recipe *course.Recipe, v course.Version, at imprint.Place) Proof {
	p := Proof{Code: v.Tile}
	t, there := r.reading.Course.FindTile(v.Tile)
	if !there {
		return p
	}
	p.Code, p.Tile, p.Address = t.Code, t, at.To(address.Tile(t.Code))
	p.Of = t.MadeOf(recipe, v)
	if clear, there := r.reading.Course.FindMaterial(t.Clear); there {
		p.Clear = &imprint.Link{Title: clear.Name, Address: at.To(address.Material(clear.ID))}
	}
	return p
}

// Newest looks up the tile that the newest version of a recipe names.
func (r *Table) Newest(recipe *course.Recipe, at imprint.Place) Proof {
	newest := recipe.Newest()
	if newest == nil {
		return Proof{}
	}
	return r.ProofOf(recipe, *newest, at)
}

// citedView is a recipe of the studio's, and the tile that proves it.
type citedView struct {
	Of    imprint.Link
	Cone  string
	Proof Proof
}

// citedOf lists the recipes of a medium, those for a state alone where one is named.
func (r *Table) citedOf(medium, state string, at imprint.Place) (all []citedView) {
	for _, recipe := range r.reading.Course.Recipes {
		if recipe.Medium == medium && (state == "" || recipe.GoesOn(state)) {
			all = append(all, citedView{imprint.Link{Title: recipe.Title, Address: at.To(address.Recipe(recipe.ID))}, recipe.Cone, r.Newest(recipe, at)})
		}
	}
	return all
}
