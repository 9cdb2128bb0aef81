package register

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"slipbook/calculators/form"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/table"
	"slipbook/generator/proof"
)

// recipesView is the list of the recipes, by what they are.
type recipesView struct {
	imprint.Framed
	Media     []recipesOf
	Materials string
	Labels    string
	Classes   string
}

// recipesOf is the recipes of one medium.
type recipesOf struct {
	Medium  imprint.Link
	Recipes []recipeEntry
}

// recipeEntry is a recipe in the list.
type recipeEntry struct {
	Of     imprint.Link
	Cone   string
	Proof  table.Proof // of its newest version
	Safety care.Care
}

// recipeView is the page of one recipe.
type recipeView struct {
	imprint.Framed
	Of         *course.Recipe
	Medium     imprint.Link
	States     []imprint.Link
	Not        []imprint.Link // the states that its medium never goes on
	Untried    []imprint.Link // the others
	Clear      *imprint.Link  // nil where it stays bare
	Safety     care.Care
	InClass    classView
	Order      orderView
	Parts      []partView
	Calculator any         // what the piece "calculator" prints
	Proof      table.Proof // of its newest version
	Versions   []versionView
	Tiles      []tileMention // those that failed first
	Tested     *reportView   // it goes where food does, as this report says; nil: it does not
	Reports    []reportView  // on it, whether they answer or not
	Eat        string
	Recipes    string
	Label      string
}

// versionView is a version of a recipe, and the tile that proves it.
type versionView struct {
	course.Version
	Proof table.Proof
}

// partView is a material of a recipe, and what its sheet says in a few words.
type partView struct {
	Of     imprint.Link
	Amount string // "40", "8 %"
	Over   bool   // it comes on top of the base
	Note   string // of what it is a percentage, where that is not the base
	Signal string
}

// orderView is a weighing order, as its piece prints it.
type orderView struct {
	ID    string // of its name; empty where it has none
	Title string
	Page  string // of the recipe; empty on that page
	Size  string // "1000 g of the dry mix"
	Rows  []orderRow
	Water []orderRow // what is measured by the water
	Mesh  int
	// Number is the specific gravity to check, in words.
	Number string
	Notes  []string
	Safety care.Care
}

// orderRow is one thing that is weighed.
type orderRow struct{ What, Weigh, Total string }

// Recipes is the list of the recipes, or nothing while there are none.
func (r *Register) Recipes() []imprint.Sheet {
	if len(r.reading.Course.Recipes) == 0 {
		return nil
	}
	title, description := r.Say("recipes"), r.Say("recipes-description")
	return []imprint.Sheet{{Address: address.Recipes, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		v := recipesView{Framed: imprint.Framed{Shell: r.frame.Shell(at, imprint.About{Kind: "recipes", Title: title, Description: description, Gathered: true})},
			Materials: r.frame.WhereThere(at, address.Materials), Labels: r.frame.WhereThere(at, address.Labels), Classes: r.frame.WhereThere(at, address.Classes)}
		for _, m := range r.Decoration.Media {
			if of := r.recipesOf(m, at); len(of.Recipes) > 0 {
				v.Media = append(v.Media, of)
			}
		}
		return v, nil
	}}}
}

func (r *Register) recipesOf(m course.Medium, at imprint.Place) recipesOf {
	of := recipesOf{Medium: imprint.Link{Title: m.Name, Address: at.To(address.Medium(m.ID))}}
	for _, recipe := range r.reading.Course.Recipes {
		if recipe.Medium == m.ID {
			of.Recipes = append(of.Recipes, recipeEntry{recipeLink(at, recipe), recipe.Cone, r.Newest(recipe, at), r.recipeSafety(recipe, at)})
		}
	}
	return of
}

// RecipePages are the pages of the recipes.
func (r *Register) RecipePages() []imprint.Sheet {
	var sheets []imprint.Sheet
	for _, recipe := range r.reading.Course.Recipes {
		sheets = append(sheets, imprint.Sheet{Address: address.Recipe(recipe.ID), Title: recipe.Title, Description: recipe.About,
			View: func(at imprint.Place) (imprint.PageView, error) { return r.recipe(recipe, at) }})
	}
	return sheets
}

func (r *Register) recipe(recipe *course.Recipe, at imprint.Place) (imprint.PageView, error) {
	v := recipeView{
		Framed:   imprint.Framed{Shell: r.frame.Shell(at, imprint.About{Kind: "recipe", Title: recipe.Title, Description: recipe.About, Desk: true, Gathered: true})},
		Of:       recipe,
		Safety:   r.recipeSafety(recipe, at),
		InClass:  r.classOf(r.reading.Course.MaterialsOf(recipe)...),
		Order:    r.order(recipe, nil, at),
		Parts:    r.parts(recipe, at),
		Proof:    r.Newest(recipe, at),
		Versions: r.versions(recipe, at),
		Tiles:    r.tilesOf(recipe, at),
		Tested:   r.tested(recipe, at),
		Reports:  r.reportsOf(recipe, at),
		Eat:      at.To(address.Eat),
		Recipes:  at.To(address.Recipes),
		Label:    r.frame.WhereThere(at, address.RecipeLabel(recipe.ID, r.paper())),
	}
	if m, there := r.Decoration.FindMedium(recipe.Medium); there {
		v.Medium = imprint.Link{Title: m.Name, Address: at.To(address.Medium(m.ID))}
		v.States, v.Not, v.Untried = r.whereOn(recipe, *m, at)
	}
	if clear, there := r.reading.Course.FindMaterial(recipe.Clear); there {
		link := materialLink(at, clear)
		v.Clear = &link
	}
	var fill []markup.Setting
	for _, s := range append(r.reading.Mix(recipe), proof.BatchSize(recipe)) {
		fill = append(fill, markup.Setting{Name: s.Name, Value: s.Text})
	}
	var err error
	v.Calculator, err = r.calculators.Fixed(r.calculators.List.Find(proof.RecipeCalculator), fill, []string{"parts", "additions", "names", "first", "stain-density", "solids-density"}, 1, at)
	return v, err
}

// whereOn lists the states that a recipe goes on, those that its medium never does,
// and those of which the recipe says nothing.
func (r *Register) whereOn(recipe *course.Recipe, m course.Medium, at imprint.Place) (on, not, untried []imprint.Link) {
	for _, s := range r.Decoration.States {
		link := imprint.Link{Title: s.Name, Address: at.To(address.State(s.ID))}
		switch {
		case recipe.GoesOn(s.ID):
			on = append(on, link)
		case m.On[s.ID].Verdict == course.Never:
			not = append(not, link)
		default:
			untried = append(untried, link)
		}
	}
	return on, not, untried
}

// parts lists what a recipe is made of.
func (r *Register) parts(recipe *course.Recipe, at imprint.Place) []partView {
	var all []partView
	add := func(s course.Share, over bool) {
		v := partView{Of: imprint.Link{Title: s.Material}, Amount: r.figure(s.Amount), Over: over}
		if over {
			v.Amount += " %"
		}
		switch s.Of {
		case course.OfDry:
			v.Note = r.Say("recipe-of-dry")
		case course.OfWater:
			v.Note = r.Say("recipe-of-water")
		}
		if m, there := r.reading.Course.FindMaterial(s.Material); there {
			v.Of, v.Signal = materialLink(at, m), r.classOf(m).Signal
		}
		all = append(all, v)
	}
	for _, s := range recipe.Base {
		add(s, false)
	}
	for _, s := range recipe.Additions {
		add(s, true)
	}
	return all
}

// versions lists what became of a recipe.
func (r *Register) versions(recipe *course.Recipe, at imprint.Place) []versionView {
	var all []versionView
	for _, v := range recipe.Versions {
		all = append(all, versionView{v, r.ProofOf(recipe, v, at)})
	}
	return all
}

// figure writes a number as the course's readers do.
func (r *Register) figure(n float64) string {
	return strings.Replace(strconv.FormatFloat(n, 'f', -1, 64), ".", string(r.reading.Course.Decimal), 1)
}

// order makes the weighing order of a recipe for a batch of some size.
func (r *Register) order(recipe *course.Recipe, size []form.Setting, at imprint.Place) orderView {
	answer := r.reading.Weigh(recipe, size)
	v := orderView{Title: recipe.Title, Mesh: recipe.Mesh, Safety: r.recipeSafety(recipe, at), Number: r.gravity(recipe)}
	for _, row := range answer.Rows {
		v.Rows = append(v.Rows, orderRow{row[0].Text, withUnit(row[2]), withUnit(row[3])})
	}
	for _, s := range recipe.InWater() {
		name := s.Material
		if m, there := r.reading.Course.FindMaterial(s.Material); there {
			name = m.Name
		}
		of := r.Say("recipe-by-water", r.figure(s.Amount))
		if len(answer.Rows) > 0 { // the first is the water
			of = r.figure(proof.ByWater(answer, s)) + " g, " + of
		}
		v.Water = append(v.Water, orderRow{What: name, Weigh: of})
	}
	v.Size = answer.Headline
	for _, note := range answer.Notes {
		if !slices.Contains(r.standingNotes(), note) {
			v.Notes = append(v.Notes, note)
		}
	}
	return v
}

// standingNotes are the notes that stand on the page of the calculator whatever is
// weighed.
func (r *Register) standingNotes() []string {
	return r.calculators.List.Find(proof.RecipeCalculator).Notes
}

// gravity is the number of a recipe as it is mixed, to two places.
func (r *Register) gravity(recipe *course.Recipe) string {
	if m, there := r.Decoration.FindMedium(recipe.Medium); there && m.Kind == "powder" {
		return ""
	}
	return strings.Replace(strconv.FormatFloat(r.reading.Gravity(recipe), 'f', 2, 64), ".", string(r.reading.Course.Decimal), 1)
}

// withUnit is a cell of an answer with its unit.
func withUnit(c form.Cell) string { return fmt.Sprintf("%s g", c.Text) }

// Block sets a recipe in a lesson, as a weighing order.
func (r *Register) Block(b *markup.Block, id string, at imprint.Place) any {
	recipe, there := r.reading.Course.FindRecipe(b.Words)
	if !there {
		return nil
	}
	var size []form.Setting
	for _, f := range b.Fill {
		size = append(size, form.Setting{Name: f.Name, Text: f.Value})
	}
	v := r.order(recipe, size, at)
	v.ID, v.Page = id, at.To(address.Recipe(recipe.ID))
	return v
}

// owedByRecipes is the hazards of each recipe, beside its name.
func (r *Register) owedByRecipes() []care.Owed {
	at := imprint.Place{Page: address.Recipes}
	var all []care.Owed
	for _, recipe := range r.reading.Course.Recipes {
		all = append(all, care.Owed{Name: recipe.Title, Form: care.Line, Care: r.recipeSafety(recipe, at)})
	}
	return all
}

// owedByRecipe is the hazards of its materials and of its medium, before all else.
func (r *Register) owedByRecipe(recipe *course.Recipe) []care.Owed {
	return []care.Owed{{Name: recipe.Title, Form: care.Whole, Care: r.recipeSafety(recipe, imprint.Place{Page: address.Recipe(recipe.ID)})}}
}
