package proof

import (
	"fmt"
	"math"
	"strconv"

	"slipbook/calculators/form"
	"slipbook/calculators/quantity"
	"slipbook/generator/course"
	"slipbook/generator/finding"
)

// What classes take from the shelf: weighed by the same calculator as the recipes.

// Spare is how much more (percent) is mixed than a class needs by the head.
var Spare = form.Setting{Name: "spare", Text: "10"}

// Litre is the batch by which the stock book tells what recipes take.
var Litre = form.Setting{Name: "volume", Text: "1 L"}

// Portion is so much (g) of a material, as the scales weigh it.
type Portion struct {
	Material string // its id
	Grams    float64
}

// SizeFor returns what says at the calculator how much of a recipe is mixed for a
// class: a volume for each and some to spare, or the litres in all. Where the scales
// of the course bear less, it is weighed in loads.
func (r *Reading) SizeFor(s *course.Session, m course.Mixed) []form.Setting {
	var size []form.Setting
	if m.Each != "" {
		size = []form.Setting{{Name: "people", Text: strconv.Itoa(s.People)}, {Name: "each", Text: m.Each}, Spare}
	} else {
		size = []form.Setting{{Name: "volume", Text: r.number(m.Litres) + " L"}}
	}
	most := 0.0
	for _, scale := range r.Settings.Scales {
		most = math.Max(most, scale.To)
	}
	if most > 0 {
		size = append(size, form.Setting{Name: "scale-limit", Text: r.number(most) + " g"})
	}
	return size
}

// Portions returns what a batch of a recipe takes of each material, in the order in
// which they are weighed; nothing where the calculator refuses it.
func (r *Reading) Portions(recipe *course.Recipe, size []form.Setting) (all []Portion) {
	answer := r.Weigh(recipe, size)
	dry := recipe.Weighed()
	if len(answer.Errors) > 0 || len(answer.Rows) != 1+len(dry) { // the first is the water
		return nil
	}
	loads := 1.0
	if n := output(answer, "loads"); n > 0 {
		loads = n
	}
	for i, s := range dry {
		grams := answer.Rows[1+i][2].Value
		all = append(all, Portion{s.Material, loads * quantity.RoundTo(grams, r.Settings.Step(grams), quantity.Nearest)})
	}
	for _, s := range recipe.InWater() {
		all = append(all, Portion{s.Material, loads * ByWater(answer, s)})
	}
	return all
}

// ByWater returns how much (g, to a tenth) is added of what is a percentage of the
// water; 0 where the calculator refused the batch.
func ByWater(answer *form.Answer, s course.Share) float64 {
	if len(answer.Rows) == 0 {
		return 0
	}
	return math.Round(answer.Rows[0][2].Value*s.Amount/10) / 10
}

// output returns a figure of an answer, 0 where it has none of that name.
func output(answer *form.Answer, name string) float64 {
	for _, o := range answer.Outputs {
		if o.Name == name {
			return o.Value
		}
	}
	return 0
}

// Shelf returns what a class takes of each material over all that is mixed for it, in
// the order in which its recipes first have them.
func (r *Reading) Shelf(s *course.Session) []Portion {
	var all []Portion
	for _, m := range s.Mix {
		if recipe, there := r.Course.FindRecipe(m.Recipe); there {
			all = append(all, r.Portions(recipe, r.SizeFor(s, m))...)
		}
	}
	return Together(all)
}

// Together adds up the portions of each material, in the order of the first of each.
// Scales show tenths of a gram and coarser; what is finer is what sums of fractions
// lose.
func Together(portions []Portion) (all []Portion) {
	at := map[string]int{}
	for _, p := range portions {
		n, there := at[p.Material]
		if !there {
			n = len(all)
			at[p.Material] = n
			all = append(all, Portion{Material: p.Material})
		}
		all[n].Grams = math.Round(1e4*(all[n].Grams+p.Grams)) / 1e4
	}
	return all
}

// checkSessions has the calculator weigh what is mixed for every class, so that no
// sheet of a class asks for what cannot be weighed.
func checkSessions(r *Reading) finding.List {
	var found finding.List
	for _, s := range r.Course.Sessions {
		for _, m := range s.Mix {
			if recipe, there := r.Course.FindRecipe(m.Recipe); there {
				found = append(found, r.checkMixed(s, m, recipe)...)
			}
		}
	}
	return found
}

// checkMixed holds the amount of one recipe to what can be weighed and stirred.
func (r *Reading) checkMixed(s *course.Session, m course.Mixed, recipe *course.Recipe) (found finding.List) {
	at, size := m.Spots.Of("litres"), r.SizeFor(s, m)
	if m.Each != "" {
		at = m.Spots.Of("each")
	}
	report := func(text, do string) { found = append(found, at.Find(finding.ClassAmount, text, do)) }
	answer := r.Weigh(recipe, size)
	for _, refused := range answer.Errors {
		report("the calculator "+RecipeCalculator+" refuses this amount: "+refused.Text, "Write a volume for each, such as `each: 60 mL`, or in all, such as `litres: 2`.")
	}
	if litres := output(answer, "new-volume") / 1000; litres > course.MostLitres {
		report(fmt.Sprintf("that is %.0f L of `%s` for %d people", litres, m.Recipe, s.People), fmt.Sprintf("Look at its unit again. More than %d L is no batch for one class.", course.MostLitres))
	}
	for _, p := range r.Portions(recipe, size) {
		if p.Grams == 0 {
			report(fmt.Sprintf("so little of `%s` takes less of `%s` than the scale shows", m.Recipe, p.Material), "Mix enough for several classes, such as `litres: 1`, and keep the rest.")
		}
	}
	return found
}
