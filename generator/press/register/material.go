package register

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// materialsView is the register: every material of the studio's, and what the
// program knows of others.
type materialsView struct {
	imprint.Framed
	Tubs    []tubView
	Generic []genericView
	Recipes string // where the recipes are; empty while there are none
	Labels  string
	Stock   string
	Paper   string
}

// tubView is a material in the register.
type tubView struct {
	Of      imprint.Link
	Safety  care.Care
	Class   classView
	Sheet   course.Sheet
	Storage string
}

// genericView is what is true of all of a kind.
type genericView struct {
	ID, Name, What, Role, SheetSays string
	CAS                             []string
	Own                             []imprint.Link // the studio's entries of this kind
}

// materialView is the page of one material.
type materialView struct {
	imprint.Framed
	course.Material
	Safety   care.Care
	Weighs   string // its density in words; empty where nothing is said
	InClass  classView
	Recipes  []imprint.Link // that it is in
	Register string
	Label    string
}

// Materials is the register, or nothing while the studio keeps none.
func (r *Register) Materials() []imprint.Sheet {
	if len(r.reading.Course.Materials) == 0 {
		return nil
	}
	title, description := r.Say("materials"), r.Say("materials-description")
	return []imprint.Sheet{{Address: address.Materials, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		v := materialsView{Framed: imprint.Framed{Shell: r.frame.Shell(at, imprint.About{Kind: "materials", Title: title, Description: description, Gathered: true})},
			Recipes: r.frame.WhereThere(at, address.Recipes), Labels: r.frame.WhereThere(at, address.Labels), Stock: r.frame.WhereThere(at, address.Stock),
			Paper: r.frame.WhereThere(at, address.Paper)}
		for _, m := range byName(r.reading.Course.Materials) {
			v.Tubs = append(v.Tubs, tubView{Of: materialLink(at, m), Safety: r.materialSafety(m, at), Class: r.classOf(m), Sheet: m.Sheet, Storage: m.Storage})
		}
		for _, g := range byName(r.reading.Course.GenericMaterials) {
			v.Generic = append(v.Generic, genericView{ID: at.ID(g.ID), Name: g.Name, What: g.What, Role: g.Role, SheetSays: g.SheetSays, CAS: g.CAS, Own: r.ownOf(at, g.ID)})
		}
		return v, nil
	}}}
}

// byName sorts materials by their names, capital letters aside.
func byName(materials []*course.Material) []*course.Material {
	return slices.SortedFunc(slices.Values(materials), func(a, b *course.Material) int {
		return cmp.Or(cmp.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)), cmp.Compare(a.ID, b.ID))
	})
}

// ownOf links the studio's entries of a kind.
func (r *Register) ownOf(at imprint.Place, kind string) []imprint.Link {
	var links []imprint.Link
	for _, m := range r.reading.Course.Materials {
		if m.Is == kind {
			links = append(links, materialLink(at, m))
		}
	}
	return links
}

// MaterialPages are the pages of the studio's materials.
func (r *Register) MaterialPages() []imprint.Sheet {
	var sheets []imprint.Sheet
	for _, m := range r.reading.Course.Materials {
		sheets = append(sheets, imprint.Sheet{Address: address.Material(m.ID), Title: m.Name, Description: m.What,
			View: func(at imprint.Place) (imprint.PageView, error) { return r.material(m, at), nil }})
	}
	return sheets
}

func (r *Register) material(m *course.Material, at imprint.Place) materialView {
	v := materialView{
		Framed:   imprint.Framed{Shell: r.frame.Shell(at, imprint.About{Kind: "material", Title: m.Name, Description: m.What, Gathered: true})},
		Material: *m,
		Safety:   r.materialSafety(m, at),
		InClass:  r.classOf(m),
		Register: at.To(address.Materials),
		Label:    r.frame.WhereThere(at, address.MaterialLabel(m.ID, r.paper())),
	}
	if m.Density > 0 {
		v.Weighs = r.figure(m.Density)
	}
	for _, recipe := range r.reading.Course.Recipes {
		if slices.Contains(r.reading.Course.MaterialsOf(recipe), m) || recipe.Clear == m.ID {
			v.Recipes = append(v.Recipes, recipeLink(at, recipe))
		}
	}
	return v
}

// owedByMaterials is the hazards of each tub, in a line, and who may open it.
func (r *Register) owedByMaterials() []care.Owed { return r.owedByTubs(address.Materials) }

// owedByTubs is what a page that lists all tubs owes of each.
func (r *Register) owedByTubs(page string) []care.Owed {
	at := imprint.Place{Page: page}
	var all []care.Owed
	for _, m := range r.reading.Course.Materials {
		c := r.materialSafety(m, at)
		all = append(all, care.Owed{Name: m.Name, Form: care.Line, Care: c}, care.Owed{Name: m.Name, Form: care.Who, Care: c})
	}
	return all
}

// Owes lists how to find what each page of the register owes its reader, by address.
func (r *Register) Owes() map[string]func() []care.Owed {
	all := map[string]func() []care.Owed{address.Materials: r.owedByMaterials, address.Recipes: r.owedByRecipes}
	all[address.Classes], all[address.Stock] = r.owedByClasses, r.owedByStock
	for _, s := range r.reading.Course.Sessions {
		all[address.Class(s.ID)] = func() []care.Owed { return r.owedByClass(s) }
	}
	for _, m := range r.reading.Course.Materials {
		all[address.Material(m.ID)] = func() []care.Owed {
			return []care.Owed{{Name: m.Name, Form: care.Whole, Care: r.materialSafety(m, imprint.Place{Page: address.Material(m.ID)})}}
		}
	}
	for _, recipe := range r.reading.Course.Recipes {
		all[address.Recipe(recipe.ID)] = func() []care.Owed { return r.owedByRecipe(recipe) }
	}
	maps.Copy(all, r.owedOnPaper())
	return all
}
