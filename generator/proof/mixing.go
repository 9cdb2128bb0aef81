package proof

import (
	"slices"

	"slipbook/calculators/stage"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/ghs"
)

// Table returns the decoration table of a course as the planner takes it, with what
// the studio mixes of each medium. A plan names media; which powder somebody weighs
// for one stands in the recipes, and what that powder does on the sheets of their
// materials. It is put into words here, once, in a language.
func Table(c *course.Course, language, today string) *stage.Table {
	t := c.Planner(language, today)
	for i := range t.Media {
		m := &t.Media[i]
		own, there := c.Decoration.FindMedium(m.Base)
		if !there {
			continue
		}
		var recipes []*course.Recipe
		for _, r := range c.Recipes {
			if r.Medium == m.ID || r.ID == m.ID && r.Medium == m.Base {
				recipes = append(recipes, r)
				m.Recipes = append(m.Recipes, recipeOf(c, t, r))
			}
		}
		m.Mixing = t.SayMixing(MixingOf(c, recipes, own.Care))
		m.Wet = wetOfAll(c, t, recipes, own.Care)
	}
	return t
}

// recipeOf returns a recipe as a plan names it, with the tile that it was tested on.
func recipeOf(c *course.Course, t *stage.Table, r *course.Recipe) stage.Recipe {
	named := stage.Recipe{Name: r.Title, Page: address.Recipe(r.ID), Proof: t.SayProof("", "", false)}
	if tile, tested := c.TileOf(r); tested {
		named.Proof, named.Tile = t.SayProof(tile.Code, tile.Cone, !tile.CameOut()), address.Tile(tile.Code)
	}
	return named
}

// MixingOf returns what weighing and mixing some recipes call for by the sheets of
// their materials, beside what is told of their medium. What only firings have is
// told where a plan fires.
func MixingOf(c *course.Course, recipes []*course.Recipe, told course.Care) stage.Mixing {
	var mixing stage.Mixing
	var codes []string
	var rows []course.Care
	for _, r := range recipes {
		for _, m := range c.MaterialsOf(r) {
			rows = append(rows, m.Care)
			codes = append(codes, m.Class.Statements...)
			mixing.Invented = mixing.Invented || m.Sheet.Invented
			mixing.Wear = course.Worn(mixing.Wear, m.Wear...)
			if m.Class.Says == course.ClassedOpen && !slices.Contains(mixing.Unclear, m.Name) {
				mixing.Unclear = append(mixing.Unclear, m.Name)
			}
		}
	}
	mixing.Signal, mixing.Metals = ghs.Signal(codes), metalsOf(c, recipes)
	hazards, who := beside(c.Decoration, rows, told)
	mixing.Who = map[course.Who]stage.Who{course.WithInstructor: stage.WithInstructor, course.Instructor: stage.Instructor}[who]
	for _, h := range hazards {
		mixing.Wear = course.Worn(mixing.Wear, h.Wear...)
		mixing.Shorts = append(mixing.Shorts, h.Short)
		if p, there := c.Decoration.FindPlace(h.Place); there && !slices.Contains(mixing.Places, p.Name) {
			mixing.Places = append(mixing.Places, p.Name)
		}
	}
	return mixing
}

// metalsOf lists the recipes that hold metals, with those that they hold.
func metalsOf(c *course.Course, recipes []*course.Recipe) (all []stage.Held) {
	for _, r := range recipes {
		held := stage.Held{Recipe: r.Title}
		for _, m := range c.MaterialsOf(r) {
			for _, metal := range m.Metals {
				if !slices.Contains(held.Metals, metal) {
					held.Metals = append(held.Metals, metal)
				}
			}
		}
		if len(held.Metals) > 0 {
			all = append(all, held)
		}
	}
	return all
}

// beside returns the hazards of some rows that another does not tell of already and
// that are not of firings alone, and the strictest of the people whom the rows allow.
func beside(d *course.Decoration, rows []course.Care, told course.Care) ([]course.Hazard, course.Who) {
	all, who := d.HazardsOf(rows...)
	return slices.DeleteFunc(all, func(h course.Hazard) bool { return slices.Contains(told.Hazards, h.ID) || ofFiring(d, h) }), who
}

// wetOf returns what a recipe still does to whoever handles it wet, a text each: the
// hazards to health that are not of powder alone, and what the sheets say of skin and
// eyes.
func wetOf(c *course.Course, t *stage.Table, r *course.Recipe, told course.Care) (texts []string) {
	var rows []course.Care
	for _, m := range c.MaterialsOf(r) {
		rows = append(rows, m.Care)
	}
	hazards, _ := beside(c.Decoration, rows, told)
	for _, h := range hazards {
		if !h.Dry && h.Health {
			texts = append(texts, h.Short)
		}
	}
	for _, m := range c.MaterialsOf(r) {
		for _, code := range m.Class.Statements {
			if words, known := ghs.Statement(code); known && ghs.Contact(code) {
				texts = append(texts, t.SayTouch(words, wornWet(c.Decoration, m)))
			}
		}
	}
	return texts
}

// ofFiring reports whether a hazard comes with every firing of a kind.
func ofFiring(d *course.Decoration, h course.Hazard) bool {
	return slices.Contains(d.Firing.Hazards, h.ID) ||
		slices.ContainsFunc(d.Transitions, func(tr course.Transition) bool {
			return tr.Fires() && slices.Contains(tr.Hazards, h.ID)
		})
}

// wornWet is what the sheet of a material says to wear, without what comes off again
// when all of it is wet.
func wornWet(d *course.Decoration, m *course.Material) []string {
	return slices.DeleteFunc(slices.Clone(m.Wear), func(w string) bool {
		return slices.ContainsFunc(d.Hazards, func(h course.Hazard) bool { return slices.Contains(h.UntilWet, w) })
	})
}

// wetOfAll words what stays in the wet buckets of some recipes, each thing once, with
// the recipes that have it.
func wetOfAll(c *course.Course, t *stage.Table, recipes []*course.Recipe, told course.Care) (wet []string) {
	var texts []string
	names := map[string][]string{}
	for _, r := range recipes {
		for _, text := range wetOf(c, t, r, told) {
			if !slices.Contains(texts, text) {
				texts = append(texts, text)
			}
			if !slices.Contains(names[text], r.Title) {
				names[text] = append(names[text], r.Title)
			}
		}
	}
	for _, text := range texts {
		wet = append(wet, t.SayWet(names[text], text))
	}
	return wet
}
