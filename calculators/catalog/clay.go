package catalog

import (
	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/slip"
)

var clayColour = &form.Calculator{
	Name:    "clay-colour",
	Title:   "Colour a lump of clay",
	Purpose: "Says how much stain goes into a lump of damp clay, for inlay and for marbled bodies.",
	Inputs: []form.Input{
		{Name: "clay", Label: "Damp clay", Help: "As it comes from the bag.", Kind: quantity.Mass, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "clay-water", Label: "Water in the clay", Help: "In percent of its damp weight, about 20 from the bag. A lump of 100 g that dries to 80 g holds 20 %.", Kind: quantity.Percent, Needed: true, First: true, Low: form.Limit{End: form.From},
			High: form.Limit{End: form.UpTo, Value: 90, Why: "That is water with a little clay in it. Clay from the bag holds about 20 %."}},
		{Name: "stain", Label: "Stain wanted", Help: "Grams for every 100 g of dry clay, from your test tile.", Kind: quantity.Percent, Needed: true, First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
	},
	Outputs: []form.Output{
		{Name: "stain-mass", Label: "Stain to add", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "dry-clay", Label: "Dry clay in the lump", Unit: "g", Digits: 4},
		{Name: "water-held", Label: "Water in the lump", Unit: "g", Digits: 4},
	},
	Notes: []string{
		"Stir the stain to a paste with a little water, spread it on slices of the clay, stack them and wedge until no streak is left.",
		"Wedge coloured clay apart from white clay, the palest first, and clean the board, the wire and your hands between two colours.",
		"Stain changes how a clay shrinks. Fire a tile with the colours side by side before you make a pot of them.",
	},
	Hazards: []string{stainPowder},
	Cautions: []string{
		"Keep the gloves on as long as you wedge: wet stain rubs into the skin. The supplier’s safety data sheet and local rules come first.",
	},
	Next: []form.Next{
		{Words: "Plan test tiles up to that colour", Calculator: "tile-plan", Carry: []form.Carry{{Into: "high", From: "stain"}}},
	},
	Work: workClay,
	Draw: drawClay,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		clayColour.Example = form.Example{
			Case:  "A 500 g lump of porcelain, one fifth of it water, is to be blue for inlay.",
			Given: []form.Setting{{Name: "clay", Text: "500 g"}, {Name: "clay-water", Text: "20"}, {Name: "stain", Text: "8"}},
		}
		clayColour.Table = form.Table{
			Caption: "Stain for one kilogram of damp clay, g",
			Down:    "clay-water", Values: []string{"16 %", "18 %", "20 %", "22 %", "24 %", "26 %"},
			Across: "stain", AcrossValues: []string{"2 %", "4 %", "6 %", "8 %", "10 %", "15 %"},
			Show: []string{"stain-mass"},
			Also: []form.Setting{{Name: "clay", Text: "1 kg"}},
		}
		clayColour.Formulas = clayFormulas
	}
}

func workClay(e *form.Evaluation) {
	doubtShare(e, "clay-water")
	damp, percent := e.Value("clay"), e.Value("stain")
	dry := slip.Dried(damp, e.Value("clay-water"))
	stain := dry * percent / 100
	e.Set("stain-mass", stain)
	e.Set("dry-clay", dry)
	e.Set("water-held", damp-dry)
	switch {
	case stain == 0:
		e.Headline("Nothing to wedge in: you asked for 0\u00a0% of stain.")
		return
	case !e.Weighable("stain-mass"):
		e.Headline("The stain is {stain-mass}: colour a larger lump.")
	default:
		e.Headline("Wedge in {stain-mass} of stain.")
	}
	e.Judge(form.OfStain, percent, e.Shown("stain"))
	if damp > dry && stain > 0 {
		e.Note("Reckoned on the damp clay it would have been {} of stain, {} times as much.", form.WithUnit(e.Text(damp*percent/100, 4), "g"), e.Text(damp/dry, 3))
	}
	littleStain(e, stain)
}

// drawClay shows a lump by weight: its dry clay, its water, the stain.
func drawClay(e *form.Evaluation) string {
	d := sheet(e, "The lump by weight, to scale: {dry-clay} of dry clay and {water-held} of water, and beside it {stain-mass} of stain.")
	x, total := 30.0, 0.0
	parts := [...]struct{ class, name, words string }{{"clay", "dry-clay", "dry clay"}, {"water", "water-held", "water"}, {"colour", "stain-mass", "stain"}}
	for _, part := range parts {
		r, _ := e.Result(part.name)
		total += r.Value
	}
	for i, part := range parts {
		r, _ := e.Result(part.name)
		width := 560 * r.Value / total
		d.Box(part.class, x, 30, width, 100)
		d.Box("ink", x, 30, width, 100)
		d.Aside(brief(e, part.words+" {"+part.name+"}"), 90, 184+float64(float64(i)*48))
		d.Box(part.class, 40, 162+float64(float64(i)*48), 30, 30)
		d.Box("ink", 40, 162+float64(float64(i)*48), 30, 30)
		x += width
	}
	return d.String()
}

func clayFormulas() []Formula {
	return []Formula{
		{
			Math: Equal(Words("stain"), Row(Letter("M"), Times, Bracket(One, Minus, Fraction(Letter("w"), Hundred)), Times, Fraction(Letter("p"), Hundred))),
			Where: []Symbol{
				{Letter: "M", Means: "damp clay, g"},
				{Letter: "w", Means: "water in it, % of its damp weight"},
				{Letter: "p", Means: "stain, g for 100 g of dry clay"},
			},
		},
	}
}
