// Package register makes the pages of what a studio keeps: its materials with what
// their sheets say, its recipes as weighing orders, and the labels for its buckets.
// It exists so that whatever is made from a material carries its hazards, whoever
// wrote the page; nothing here is written twice.
package register

import (
	"slices"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/desk"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/table"
	"slipbook/generator/proof"
)

// Register is what the studio keeps, as pages show it.
type Register struct {
	*table.Table // with the theme and what is said of safety
	reading      *proof.Reading
	calculators  *desk.Calculators
	frame        *imprint.Frame
}

// New makes it.
func New(r *proof.Reading, t *table.Table, frame *imprint.Frame, calculators *desk.Calculators) *Register {
	return &Register{t, r, calculators, frame}
}

// recipeSafety is the safety of mixing a recipe, with all that the sheets of its
// materials say to wear.
func (r *Register) recipeSafety(recipe *course.Recipe, at imprint.Place) care.Care {
	return r.workSafety(at, r.reading.Course.MixingCare(recipe), r.reading.Course.MaterialsOf(recipe))
}

// workSafety is the safety of work of which some rows tell, with all that the sheets
// of its materials say to wear.
func (r *Register) workSafety(at imprint.Place, rows []course.Care, materials []*course.Material) care.Care {
	c := r.Care(at, rows...)
	for _, m := range materials {
		c.Wear = course.Worn(c.Wear, m.Wear...)
	}
	c.Wear = course.Worn(nil, c.Wear...)
	return r.ofPowder(c)
}

// ofPowder adds to the safety of work with powder that it is for those on the fit-test list.
func (r *Register) ofPowder(c care.Care) care.Care {
	if c.Who == "" && slices.ContainsFunc(c.Hazards, func(h care.Hazard) bool { return r.isOfPowder(h.ID) }) {
		c.Who = care.FitTested
	}
	return c
}

// isOfPowder reports whether a hazard ends when all is wet.
func (r *Register) isOfPowder(id string) bool {
	return slices.ContainsFunc(r.Decoration.Hazards, func(h course.Hazard) bool { return h.ID == id && h.Dry })
}

// materialSafety is the safety of opening a tub, with what its sheet says to wear. A tub
// of powder is opened where powder is weighed, wherever what is mixed from it goes on.
func (r *Register) materialSafety(m *course.Material, at imprint.Place) care.Care {
	c := r.Care(at, m.Care)
	c.Wear = course.Worn(nil, append(slices.Clone(c.Wear), m.Wear...)...)
	var open []string
	for _, h := range r.Decoration.Hazards {
		if place, there := r.Decoration.FindPlace(h.Place); there && h.Dry && slices.Contains(m.Hazards, h.ID) {
			open = care.AppendNew(open, place.Name)
		}
	}
	if len(open) > 0 {
		c.Places = open
	}
	return r.ofPowder(c)
}

// materialLink is a link to a material's own page.
func materialLink(at imprint.Place, m *course.Material) imprint.Link {
	return imprint.Link{Title: m.Name, Address: at.To(address.Material(m.ID)), About: m.What}
}

// recipeLink is a link to a recipe's page.
func recipeLink(at imprint.Place, r *course.Recipe) imprint.Link {
	return imprint.Link{Title: r.Title, Address: at.To(address.Recipe(r.ID)), About: r.About}
}
