package table

import (
	"slices"

	"slipbook/calculators/catalog"
	"slipbook/calculators/stage"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// mostCited is how many recipes are cited under a medium on the page of a state:
// where there are more, the page of the medium has them.
const mostCited = 3

// mixedView is what the studio mixes itself of a medium, as its page tells it.
type mixedView struct {
	Care    care.Care // of weighing and mixing, in the form care.Mixing
	Wet     []string  // what of it stays in the wet bucket
	Recipes []citedView
}

// planned is a medium as the planner has it, which knows what mixing it calls for.
func (r *Table) planned(id string) (stage.Medium, bool) {
	t := r.reading.Settings.Table
	if t == nil {
		return stage.Medium{}, false
	}
	i := slices.IndexFunc(t.Media, func(m stage.Medium) bool { return m.ID == id })
	if i < 0 {
		return stage.Medium{}, false
	}
	return t.Media[i], true
}

// mixed is what is mixed here of a medium; nil where nothing is.
func (r *Table) mixed(m course.Medium, at imprint.Place) *mixedView {
	own, there := r.planned(m.ID)
	if !there || len(own.Recipes) == 0 {
		return nil
	}
	return &mixedView{Care: r.MixingCare(m.ID), Wet: own.Wet, Recipes: r.citedOf(m.ID, "", at)}
}

// MixingCare is what weighing and mixing a medium call for, in the words that a plan
// has for it.
func (r *Table) MixingCare(id string) care.Care {
	own, _ := r.planned(id)
	return care.Care{Says: own.Mixing}
}

// MixedHere is where the page of a medium tells of its recipes.
func (r *Table) MixedHere(id string, at imprint.Place) string {
	return at.To(address.Medium(id) + "#" + mixedID)
}

// owedByMixing is what weighing and mixing a medium call for.
func (r *Table) owedByMixing(m course.Medium) care.Owed {
	return care.Owe(m.Name, care.Mixing, r.MixingCare(m.ID))
}

// owedByPlanner is the same of all media that the planner's worked example names.
func (r *Table) owedByPlanner() []care.Owed {
	var all []care.Owed
	c := r.calculators.List.Find(catalog.Plan)
	for _, mixed := range catalog.Solve(c.Name, c.Example.Given, r.calculators.Settings).Mixed {
		all = append(all, care.Owe(mixed.Of, care.Mixing, care.Care{Says: mixed.Says}))
	}
	return all
}

// cite puts the recipes of a medium for a state into what is told of it there, or,
// where they are many, the way to them.
func (r *Table) cite(f *fate, medium, state string, at imprint.Place) {
	f.Cited = r.citedOf(medium, state, at)
	if f.Recipes = len(f.Cited); f.Recipes > mostCited {
		f.Cited, f.Further = nil, r.MixedHere(medium, at)
	}
}

// mixedID is the id of what is mixed here on a medium's page.
const mixedID = "mixed.here"
