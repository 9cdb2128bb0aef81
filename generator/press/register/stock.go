package register

import (
	"slipbook/calculators/form"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/proof"
)

// stockView is the stock book: a row for each tub, to print and fill in by hand.
type stockView struct {
	imprint.Framed
	Rows      []stockRow
	Classes   string // where they are; empty while there are none
	Materials string
}

// stockRow is a tub in the stock book.
type stockRow struct {
	Of     imprint.Link
	Safety care.Care
	Class  classView
	Review string         // when its sheet is read again, ISO 8601
	Uses   []stockUse     // the recipes that it is in
	Over   []imprint.Link // the recipes that it goes over, as their clear
	Needs  string         // what all classes together take; empty where they take none
}

// stockUse is a recipe, and what one litre of it takes.
type stockUse struct {
	Of   imprint.Link
	Take string
}

// Stock is the stock book, or nothing while the studio keeps no register.
func (r *Register) Stock() []imprint.Sheet {
	if len(r.reading.Course.Materials) == 0 {
		return nil
	}
	title, description := r.Say("stock"), r.Say("stock-description")
	return []imprint.Sheet{{Address: address.Stock, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		v := stockView{Framed: imprint.Framed{Shell: r.frame.Shell(at, imprint.About{Kind: "stock", Title: title, Description: description, Gathered: true})},
			Classes: r.frame.WhereThere(at, address.Classes), Materials: at.To(address.Materials)}
		uses, needs := r.uses(at), r.needs()
		for _, m := range byName(r.reading.Course.Materials) {
			row := stockRow{Of: materialLink(at, m), Safety: r.materialSafety(m, at), Class: r.classOf(m), Review: m.Sheet.Review, Uses: uses[m.ID], Over: r.coloursUnder(m, at)}
			if g := needs[m.ID]; g > 0 {
				row.Needs = r.grams(g)
			}
			v.Rows = append(v.Rows, row)
		}
		return v, nil
	}}}
}

// uses lists, by material, the recipes that it is in, with what a litre takes.
func (r *Register) uses(at imprint.Place) map[string][]stockUse {
	all := map[string][]stockUse{}
	for _, recipe := range r.reading.Course.Recipes {
		for _, p := range proof.Together(r.reading.Portions(recipe, []form.Setting{proof.Litre})) {
			all[p.Material] = append(all[p.Material], stockUse{recipeLink(at, recipe), r.grams(p.Grams)})
		}
	}
	return all
}

// coloursUnder links the recipes that a clear goes over.
func (r *Register) coloursUnder(clear *course.Material, at imprint.Place) (links []imprint.Link) {
	for _, recipe := range r.reading.Course.Recipes {
		if recipe.Clear == clear.ID {
			links = append(links, recipeLink(at, recipe))
		}
	}
	return links
}

// owedByStock is the hazards of each tub, in a line, and who may open it.
func (r *Register) owedByStock() []care.Owed { return r.owedByTubs(address.Stock) }
