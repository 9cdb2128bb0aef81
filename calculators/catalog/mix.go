package catalog

import (
	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/wash"
)

var washMix = &form.Calculator{
	Name:    "wash-mix",
	Title:   "Mix a stain wash",
	Purpose: "Says what to weigh for the wash you need, from its parts by weight.",
	Inputs: []form.Input{
		{Name: "volume", Label: "How much wash", Help: "The whole lot. Or give people and an amount each instead.", Kind: quantity.Volume, Needed: true, Group: "amount", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		forPeople, forEach, forSpare,
		{Name: "stain-parts", Label: "Parts of stain", Help: "By weight.", Kind: quantity.Number, Default: "1", First: true,
			Low: form.Limit{End: form.Above, Why: "A wash without stain has no colour. Give its parts by weight, for example 1."}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "flux-parts", Label: "Parts of flux", Help: "By weight. The borate flux that fixes the stain to the pot.", Kind: quantity.Number, Default: "1", First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "water-parts", Label: "Parts of water", Help: "By weight, which for water is also by mL.", Kind: quantity.Number, Default: "10", First: true,
			Low: form.Limit{End: form.Above, Why: "A wash needs water. Give its parts by weight, for example 10."}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		stainDensity, fluxDensity,
	},
	Outputs: []form.Output{
		{Name: "stain-mass", Label: "Stain", Unit: "g", Digits: 4, As: form.Weighed, Alone: true},
		{Name: "flux-mass", Label: "Flux", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "water", Label: "Water", Unit: "g", Digits: 4, As: form.Poured},
		{Name: "strength", Label: "Strength: dry powder in 100 mL", Unit: "g/100 mL", Digits: 4},
		{Name: "stain-strength", Label: "of it, stain", Unit: "g/100 mL", Digits: 4},
		{Name: "stain-by-mass", Label: "Stain by weight", Unit: "%", Digits: 3, Aside: true},
		{Name: "density", Label: "Density", Unit: "g/mL", Digits: 4, Aside: true},
	},
	Notes: []string{
		"Stir at every brush load: the powder sinks within minutes, and the last strokes would be the darkest.",
		"A borate flux can gel when it stands. Stir before you add any water.",
		"1 gram of water is 1 mL. The powder has to be weighed: a spoon measures room, not weight.",
		"Write the strength on the cup. A wash is too thin to be judged by weighing a jar; it is known by what was weighed in.",
	},
	Hazards: []string{stainPowder, washColour},
	Cautions: []string{
		"Some borates carry a reproductive caution. Pregnant or asthmatic? Ask your doctor first, and let somebody else mix until you know.",
	},
	Next: []form.Next{
		{Words: "Thin it, or make a ladder of cups", Calculator: "wash-dilute", Carry: []form.Carry{{Into: "volume", From: "volume"}, {Into: "from", From: "strength"}}},
	},
	Weigh: []string{"water", "stain-mass", "flux-mass"}, // water first, so that powder falls into it and does not rise
	Work:  workMix,
	Draw:  drawMix,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		washMix.Example = form.Example{
			Case:  "Six students need 30 mL each to wash into carved lines on bare bisque, with a tenth to spare.",
			Given: []form.Setting{{Name: "people", Text: "6"}, {Name: "each", Text: "30 mL"}, {Name: "spare", Text: "10"}, {Name: "stain-parts", Text: "1"}, {Name: "flux-parts", Text: "1"}, {Name: "water-parts", Text: "10"}},
		}
		washMix.Table = form.Table{
			Caption: "Where to start, for 100 mL (common practice; test on your own tiles)",
			Cases: []form.Case{
				{Words: "On bare bisque, 1 + 1 + 10", Given: []form.Setting{{Name: "stain-parts", Text: "1"}, {Name: "flux-parts", Text: "1"}, {Name: "water-parts", Text: "10"}}},
				{Words: "Under a clear glaze, 3 + 1 + 30", Given: []form.Setting{{Name: "stain-parts", Text: "3"}, {Name: "flux-parts", Text: "1"}, {Name: "water-parts", Text: "30"}}},
				{Words: "On unfired glaze, 3 + 1 + 30", Given: []form.Setting{{Name: "stain-parts", Text: "3"}, {Name: "flux-parts", Text: "1"}, {Name: "water-parts", Text: "30"}}},
			},
			Show: []string{"stain-mass", "flux-mass", "water", "strength"},
			Also: []form.Setting{{Name: "people", Text: ""}, {Name: "each", Text: ""}, {Name: "spare", Text: ""}, {Name: "volume", Text: "100 mL"}},
		}
		washMix.Formulas = mixFormulas
	}
}

func workMix(e *form.Evaluation) {
	parts := wash.Parts{
		Stain: e.Value("stain-parts"), Flux: e.Value("flux-parts"), Water: e.Value("water-parts"),
		StainDensity: e.Value("stain-density"), FluxDensity: e.Value("flux-density"),
	}
	volume := volumeWanted(e)
	stain, flux, water := parts.Fill(volume)
	e.Set("stain-mass", stain)
	e.Set("flux-mass", flux)
	e.Set("water", water)
	e.Set("strength", parts.Strength())
	e.Set("stain-strength", parts.StainStrength())
	e.Set("stain-by-mass", 100*parts.Stain/parts.Mass())
	e.Set("density", parts.Density())
	if e.Has("people") {
		sayPeople(e, "wash", volume)
	}
	e.Headline("Weigh {stain-mass} of stain and {flux-mass} of flux into {water} of water.")
	if parts.Flux == 0 {
		e.Headline("Weigh {stain-mass} of stain into {water} of water, without flux.")
		e.Note("There is no flux in this. Stain alone does not melt and stays powder on bare clay; on unfired glaze the glaze can fix it.")
	}
	if !e.Weighable("stain-mass") {
		e.Headline("The stain is {stain-mass}: make a larger lot.")
	}
	littleStain(e, stain)
	e.Judge(form.OfWash, parts.Strength(), e.Shown("strength"))
}

// drawMix shows the wash as if its powders had sunk.
func drawMix(e *form.Evaluation) string {
	stain, _ := e.Result("stain-mass")
	flux, _ := e.Result("flux-mass")
	water, _ := e.Result("water")
	d := sheet(e, "The wash as if its powder had sunk: {stain-mass} of stain and {flux-mass} of flux under {water} of water.")
	d.Sunk(sketch.Powder{Class: "colour", Room: stain.Value / e.Value("stain-density"), Words: brief(e, "stain {stain-mass}")},
		sketch.Powder{Class: "glaze", Room: flux.Value / e.Value("flux-density"), Words: brief(e, "flux {flux-mass}")}, sketch.Powder{Class: "water", Room: water.Value, Words: brief(e, "water {water}")})
	return d.String()
}

func mixFormulas() []Formula {
	return []Formula{
		{
			Math: Equal(Letter("v"), Row(Fraction(Letter("a"), Sub(Letter("s"), Letter("a"))), Plus, Fraction(Letter("f"), Sub(Letter("s"), Letter("f"))), Plus, Letter("w"))),
			Where: []Symbol{
				{Letter: "v", Means: "room that the parts fill together"},
				{Letter: "a, f, w", Means: "parts of stain, flux and water by weight"},
				{Letter: "s_a, s_f", Means: "densities of stain and flux, g/mL"},
			},
		},
		{
			Math:  Equal(Words("stain"), Row(Letter("V"), Times, Fraction(Letter("a"), Letter("v")))),
			Where: []Symbol{{Letter: "V", Means: "wash wanted, mL; flux and water likewise, with f and w for a"}},
		},
		{
			Math: Equal(Words("strength"), Row(Hundred, Times, Fraction(Row(Letter("a"), Plus, Letter("f")), Letter("v")))),
		},
	}
}
