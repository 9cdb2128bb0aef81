package proof

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// The gate: nothing is published that works with a material whose hazards nobody
// wrote down, or with a recipe that leads where its materials must not go.

// checkRegister holds the studio's materials, recipes and classes to the rules of the gate.
// today is a date of ISO 8601; reviews before it are due.
func checkRegister(c *course.Course, today string) finding.List {
	g := &gate{course: c, today: today}
	for _, m := range c.Materials {
		g.material(m)
	}
	for _, r := range c.Recipes {
		g.recipe(r)
		g.proofs(r)
	}
	for _, t := range c.Tiles {
		g.retest(t)
	}
	for _, s := range c.Sessions {
		g.session(s)
	}
	for _, l := range c.Leach {
		g.future(l)
	}
	return g.found
}

// gate is the register being checked.
type gate struct {
	course *course.Course
	today  string
	found  finding.List
}

func (g *gate) report(at finding.Spot, rule *finding.Rule, text, do string) {
	g.found = append(g.found, at.Find(rule, text, do))
}

// recipe checks what a recipe is made of, and where it leads.
func (g *gate) recipe(r *course.Recipe) {
	g.base(r)
	for _, s := range r.Additions {
		if s.Of == "" {
			g.report(s.Spots[""], finding.RecipeAddition, fmt.Sprintf("%g %% of `%s` does not say of what", s.Amount, s.Material),
				"Write `of: base`, of the 100 parts; `of: dry`, of all that is weighed dry; or `of: water`.")
		}
	}
	var metals []string
	for _, s := range slices.Concat(r.Base, r.Additions) {
		m := g.used(s)
		if m == nil {
			continue
		}
		g.tooHot(r, s, m)
		g.spoiled(r, s, m)
		metals = append(metals, m.Metals...)
	}
	g.clear(r)
	g.food(r, metals)
}

// base checks that the base comes to 100.
func (g *gate) base(r *course.Recipe) {
	sum := 0.0
	for _, s := range r.Base {
		sum += s.Amount
	}
	if len(r.Base) > 0 && math.Abs(sum-100) > 0.05 {
		g.report(r.Spots.Of("base"), finding.RecipeBase, fmt.Sprintf("the base comes to %g parts instead of 100", math.Round(sum*1000)/1000),
			"Multiply each part by 100 and divide it by the sum; what comes on top of the base stands under `additions`.")
	}
}

// used returns the studio's entry of a material, and reports one that has none.
func (g *gate) used(s course.Share) *course.Material {
	if s.Material == "" {
		return nil
	}
	if m, there := g.course.FindMaterial(s.Material); there {
		return m
	}
	at := s.Spots.Of("material")
	if m, there := g.course.FindGeneric(s.Material); there {
		g.report(at, finding.RecipeMaterial, fmt.Sprintf("`%s` stands in the program’s own list alone: nobody in this studio has read its sheet", s.Material),
			fmt.Sprintf("Write materials/NAME.yaml for the tub on your shelf, with `is: %s` and the supplier’s sheet, and name that here.", m.ID))
		return nil
	}
	var ids []string
	for _, m := range g.course.Materials {
		ids = append(ids, m.ID)
	}
	g.report(at, finding.RecipeMaterial, fmt.Sprintf("there is no entry for `%s`", s.Material),
		source.Meant(s.Material, ids)+fmt.Sprintf("Write materials/%s.yaml, with the supplier’s safety data sheet beside you.", s.Material))
	return nil
}

// tooHot reports a colour that is lost at the recipe's cone.
func (g *gate) tooHot(r *course.Recipe, s course.Share, m *course.Material) {
	if m.HighestCone != "" && r.Cone != "" && course.ConeRank(r.Cone) > course.ConeRank(m.HighestCone) {
		g.report(s.Spots.Of("material"), finding.RecipeCone, fmt.Sprintf("%s stands cone %s at the most, and the recipe goes to cone %s", m.Name, m.HighestCone, r.Cone),
			"Take a colour made for that heat, or fire lower.")
	}
}

// spoiled reports a colour that the clear over it spoils.
func (g *gate) spoiled(r *course.Recipe, s course.Share, m *course.Material) {
	clear, there := g.course.FindMaterial(r.Clear)
	if !there {
		return
	}
	for _, what := range m.SpoiledBy {
		if slices.Contains(clear.Holds, what) {
			g.report(r.Spots.Of("clear"), finding.RecipeClear, fmt.Sprintf("%s holds %s, which spoils the colour of %s", clear.Name, what, m.Name),
				"Name a clear without it, or take another colour.")
		}
	}
}

// clear checks that the clear over a recipe is one that the studio has, and says
// what it holds.
func (g *gate) clear(r *course.Recipe) {
	if r.Clear == "" || r.Clear == course.NoClear {
		return
	}
	m := g.used(course.Share{Material: r.Clear, Spots: course.Spots{"": r.Spots.Of("clear")}})
	if m != nil && len(m.Holds) == 0 {
		g.report(m.Spots.Of("holds"), finding.RecipeClear, fmt.Sprintf("recipes go under %s, and nothing says what it holds", m.Name),
			"Write from its sheet or label what may change a colour, such as `holds: [zinc, boron]`.")
	}
}

// food reports what is meant for food and has no test that counts.
func (g *gate) food(r *course.Recipe, metals []string) {
	tested := g.leachTest(r)
	if r.Food != "yes" {
		return
	}
	at := r.Spots.Of("food")
	table := g.course.Decoration.Metals
	never := table.NeverFood
	if words := slices.Concat(table.Words, table.Also, table.Unplanned); len(words) > 0 { // iron harms nobody on a plate
		metals = slices.DeleteFunc(metals, func(metal string) bool { return !slices.Contains(words, metal) })
	}
	for _, metal := range metals {
		if slices.Contains(never, metal) {
			g.report(at, finding.RecipeFood, "it holds "+metal+", which never goes where food or drink does", "Write `food: no`.")
			return
		}
	}
	why := ""
	switch {
	case tested:
		return
	case len(metals) > 0:
		why = "it holds " + strings.Join(slices.Compact(slices.Sorted(slices.Values(metals))), ", ")
	case r.Clear == course.NoClear:
		why = "it stays bare"
	default:
		why = "its clear may hold what leaches out"
	}
	g.report(at, finding.RecipeFood, "this is for food or drink, "+why+", and names no test", "Write the number of the laboratory’s report in leach.csv as `leach-test`, or `food: no`.")
}
