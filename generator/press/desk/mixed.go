package desk

import (
	"slipbook/calculators/form"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// Mixed is what the studio mixes itself of something that a page names. A blank one
// is what the script of a plan fills in.
type Mixed struct {
	Blank bool
	Of    string // its name
	By    []Proved
	Care  care.Care // of weighing and mixing, in the form care.Mixing
}

// Proved is a recipe, and the tile that it was tested on.
type Proved struct {
	imprint.Link
	Proof imprint.Link // its words alone where there is no tile
}

// Shows reports whether what weighing and mixing call for has a place on the page.
func (m Mixed) Shows() bool { return m.Blank || m.Care.Any() }

// MixedOf is what is mixed here of what an answer is about. to returns the way to a
// page from the home page's address of it.
func MixedOf(all []form.Mixed, to func(string) string) []Mixed {
	var views []Mixed
	for _, m := range all {
		v := Mixed{Of: m.Of, Care: care.Care{Says: m.Says}}
		for _, r := range m.By {
			by := Proved{Link: imprint.Link{Title: r.Name, Address: to(r.Page)}, Proof: imprint.Link{Title: r.Proof}}
			if r.Tile != "" {
				by.Proof.Address = to(r.Tile)
			}
			v.By = append(v.By, by)
		}
		views = append(views, v)
	}
	return views
}
