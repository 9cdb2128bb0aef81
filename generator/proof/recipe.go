package proof

import (
	"strconv"
	"strings"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/calculators/slip"
	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
	"slipbook/generator/source"
)

// How recipes are weighed: by the calculator that scales them, whose boxes a recipe
// fills in, but for how much of it.

// RecipeCalculator is the calculator that scales recipes.
const RecipeCalculator = "recipe-scale"

// BatchSize is how much of a recipe is weighed where nobody says otherwise: dry, a
// small bucket of it, or of what is mostly water a jar.
func BatchSize(r *course.Recipe) form.Setting {
	if r.Water >= thin {
		return form.Setting{Name: "dry-mass", Text: "50 g"}
	}
	return form.Setting{Name: "dry-mass", Text: "1000 g"}
}

// thin is from how many parts of water on 100 a recipe is a wash.
const thin = 300

// The densities (g/mL) of what no entry tells: those that the calculators take.
const (
	usualSolids = 2.6
	usualStain  = 4.5
)

// Mix returns what a recipe fills in at its calculator: the parts of the base, what
// is added dry, their names, and the number that it is mixed to.
func (r *Reading) Mix(recipe *course.Recipe) []form.Setting {
	var parts, additions, names, first []string
	for _, s := range recipe.Base {
		parts, names = append(parts, r.number(s.Amount)), append(names, r.tub(s.Material))
	}
	for _, s := range recipe.Dry() {
		additions, names = append(additions, r.number(s.Amount)), append(names, r.tub(s.Material))
		if s.First {
			first = append(first, r.tub(s.Material))
		}
	}
	solids, stain := r.densities(recipe)
	return []form.Setting{
		{Name: "parts", Text: strings.Join(parts, "; ")},
		{Name: "additions", Text: strings.Join(additions, "; ")},
		{Name: "names", Text: strings.Join(names, "; ")},
		{Name: "first", Text: strings.Join(first, "; ")},
		{Name: "solids-density", Text: r.number(solids)},
		{Name: "stain-density", Text: r.number(stain)},
		{Name: "specific-gravity", Text: r.number(r.Gravity(recipe))},
	}
}

// tub returns what a material is called among others in one box.
func (r *Reading) tub(id string) string {
	name := id
	if m, there := r.Course.FindMaterial(id); there {
		name = m.Name
	}
	return strings.NewReplacer(";", " ", ",", " ").Replace(name)
}

// number writes a number as the course's readers do.
func (r *Reading) number(n float64) string {
	return strings.Replace(strconv.FormatFloat(n, 'f', -1, 64), ".", string(r.Course.Decimal), 1)
}

// densities returns the density (g/mL) of a recipe's base and of what is added dry:
// of those whose entries tell it, by mass.
func (r *Reading) densities(recipe *course.Recipe) (base, added float64) {
	return r.density(recipe.Base, usualSolids), r.density(recipe.Dry(), usualStain)
}

// density returns that of a mix of powders: mass over the sum of the volumes, to
// two places.
func (r *Reading) density(shares []course.Share, usual float64) float64 {
	mass, volume := 0.0, 0.0
	for _, s := range shares {
		d := usual
		if m, there := r.Course.FindMaterial(s.Material); there && m.Density > 0 {
			d = m.Density
		}
		mass, volume = mass+s.Amount, volume+s.Amount/d
	}
	if volume == 0 {
		return usual
	}
	return float64(int(100*mass/volume+0.5)) / 100
}

// Gravity returns the specific gravity that a recipe is mixed to: its own, or what
// its water makes of it.
func (r *Reading) Gravity(recipe *course.Recipe) float64 {
	if recipe.Gravity > 0 {
		return recipe.Gravity
	}
	over := recipe.Over()
	base, added := r.densities(recipe)
	dry := 100 + over
	gravity := (dry + recipe.Water) / (dry/slip.Mixed(base, over, added) + recipe.Water)
	return float64(int(1e5*gravity+0.5)) / 1e5 // so that its water comes out to the gram
}

// Weigh works a recipe out: what is weighed, in order, for a batch of some size.
// Without a size it is that of BatchSize.
func (r *Reading) Weigh(recipe *course.Recipe, size []form.Setting) *form.Answer {
	if len(size) == 0 {
		size = []form.Setting{BatchSize(recipe)}
	}
	return catalog.Solve(RecipeCalculator, append(r.Mix(recipe), size...), r.Settings)
}

// recipe holds a block that shows a recipe to the course's recipes and to the
// calculator.
func (s *resolver) recipe(b *markup.Block, text *source.Text) {
	recipe, there := s.Course.FindRecipe(b.Words)
	if !there {
		ids := idsOf(s.Course.Recipes, func(r *course.Recipe) string { return r.ID })
		do := "There is none yet; write it as a file of the folder recipes."
		if len(ids) > 0 {
			do = source.Meant(b.Words, ids) + "Write one of: " + strings.Join(ids, ", ") + "."
		}
		text.Report(b.Offset, finding.UnknownName, "there is no recipe \""+b.Words+"\"", do)
		return
	}
	s.filled(catalog.Find(RecipeCalculator), b, s.Mix(recipe), text)
}

// checkRecipes has the calculator weigh every recipe once, so that none is refused
// on its own page.
func checkRecipes(r *Reading) (found finding.List) {
	for _, recipe := range r.Course.Recipes {
		if len(recipe.Base) == 0 {
			continue // that is said already
		}
		for _, refused := range r.Weigh(recipe, nil).Errors {
			found = append(found, recipe.Spots.Of("base").Find(finding.CalculatorInput, "the calculator "+RecipeCalculator+" refuses this recipe: "+refused.Text, "Look at its parts, its additions and its water."))
		}
	}
	return found
}
