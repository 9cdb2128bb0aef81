package catalog

import (
	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/wash"
)

var washMix = &form.Calculator{
	Name: "wash-mix",
	Inputs: []form.Input{
		{Name: "volume", Kind: quantity.Volume, Needed: true, Group: "amount", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		forPeople, forEach, forSpare,
		{Name: "stain-parts", Kind: quantity.Number, Default: "1", First: true,
			Low: form.Limit{End: form.Above, Why: "low"}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "flux-parts", Kind: quantity.Number, Default: "1", First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "water-parts", Kind: quantity.Number, Default: "10", First: true,
			Low: form.Limit{End: form.Above, Why: "low"}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		stainDensity, fluxDensity,
	},
	Outputs: []form.Output{
		{Name: "stain-mass", Unit: "g", Digits: 4, As: form.Weighed, Alone: true},
		{Name: "flux-mass", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "water", Unit: "g", Digits: 4, As: form.Poured},
		{Name: "strength", Unit: "g/100 mL", Digits: 4},
		{Name: "stain-strength", Unit: "g/100 mL", Digits: 4},
		{Name: "stain-by-mass", Unit: "%", Digits: 3, Aside: true},
		{Name: "density", Unit: "g/mL", Digits: 4, Aside: true},
	},
	Says:    []string{"stir-every-brush", "borate-flux-can", "gram-water-ml", "write-strength-cup"},
	Hazards: []string{stainPowder, washColour},
	Cares:   []string{"some-borates-carry"},
	Next: []form.Next{
		{Calculator: "wash-dilute", Carry: []form.Carry{{Into: "volume", From: "volume"}, {Into: "from", From: "strength"}}},
	},
	Weigh: []string{"water", "stain-mass", "flux-mass"}, // water first, so that powder falls into it and does not rise
	Work:  workMix,
	Draw:  drawMix,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		washMix.Example = form.Example{
			Given: []form.Setting{{Name: "people", Text: "6"}, {Name: "each", Text: "30 mL"}, {Name: "spare", Text: "10"}, {Name: "stain-parts", Text: "1"}, {Name: "flux-parts", Text: "1"}, {Name: "water-parts", Text: "10"}},
		}
		washMix.Table = form.Table{
			Cases: []form.Case{
				{ID: "on-bare-bisque-1-1-10", Given: []form.Setting{{Name: "stain-parts", Text: "1"}, {Name: "flux-parts", Text: "1"}, {Name: "water-parts", Text: "10"}}},
				{ID: "under-a-clear-glaze-3-1-30", Given: []form.Setting{{Name: "stain-parts", Text: "3"}, {Name: "flux-parts", Text: "1"}, {Name: "water-parts", Text: "30"}}},
				{ID: "on-unfired-glaze-3-1-30", Given: []form.Setting{{Name: "stain-parts", Text: "3"}, {Name: "flux-parts", Text: "1"}, {Name: "water-parts", Text: "30"}}},
			},
			Show: []string{"stain-mass", "flux-mass", "water", "strength"},
			Also: []form.Setting{{Name: "people", Text: ""}, {Name: "each", Text: ""}, {Name: "spare", Text: ""}, {Name: "volume", Text: "100 mL"}},
		}
		washMix.Formula = mixFormulas
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
		sayPeople(e, volume)
	}
	e.Headline("weigh-stain-flux")
	if parts.Flux == 0 {
		e.Headline("weigh-stain-into")
		e.Note("there-no-flux")
	}
	if !e.Weighable("stain-mass") {
		e.Headline("stain-make-larger")
	}
	littleStain(e, stain)
	e.Judge(form.OfWash, parts.Strength(), e.Shown("strength"))
}

// drawMix shows the wash as if its powders had sunk.
func drawMix(e *form.Evaluation) string {
	stain, _ := e.Result("stain-mass")
	flux, _ := e.Result("flux-mass")
	water, _ := e.Result("water")
	d := sheet(e, "alternative")
	d.Sunk(sketch.Powder{Class: "colour", Room: stain.Value / e.Value("stain-density"), Words: brief(e, "stain")},
		sketch.Powder{Class: "glaze", Room: flux.Value / e.Value("flux-density"), Words: brief(e, "flux")}, sketch.Powder{Class: "water", Room: water.Value, Words: brief(e, "water")})
	return d.String()
}

func mixFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Letter("v"), Row(Fraction(Letter("a"), Sub(Letter("s"), Letter("a"))), Plus, Fraction(Letter("f"), Sub(Letter("s"), Letter("f"))), Plus, Letter("w"))),
			Where: []Symbol{
				{Letter: "v", Means: say("v")},
				{Letter: "a, f, w", Means: say("a-f-w")},
				{Letter: "s_a, s_f", Means: say("s_a-s_f")},
			},
		},
		{
			Math:  Equal(Words(say("stain")), Row(Letter("V"), Times, Fraction(Letter("a"), Letter("v")))),
			Where: []Symbol{{Letter: "V", Means: say("V")}},
		},
		{
			Math: Equal(Words(say("strength")), Row(Hundred, Times, Fraction(Row(Letter("a"), Plus, Letter("f")), Letter("v")))),
		},
	}
}
