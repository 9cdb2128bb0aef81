package catalog

import (
	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/slip"
)

var clayColour = &form.Calculator{
	Name: "clay-colour",
	Inputs: []form.Input{
		{Name: "clay", Kind: quantity.Mass, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "clay-water", Kind: quantity.Percent, Needed: true, First: true, Low: form.Limit{End: form.From},
			High: form.Limit{End: form.UpTo, Value: 90, Why: "high"}},
		{Name: "stain", Kind: quantity.Percent, Needed: true, First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
	},
	Outputs: []form.Output{
		{Name: "stain-mass", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "dry-clay", Unit: "g", Digits: 4},
		{Name: "water-held", Unit: "g", Digits: 4},
	},
	Says:    []string{"stir-stain-paste", "wedge-coloured-clay", "stain-changes-how"},
	Hazards: []string{stainPowder},
	Cares:   []string{"keep-gloves-long"},
	Next: []form.Next{
		{Calculator: "tile-plan", Carry: []form.Carry{{Into: "high", From: "stain"}}},
	},
	Work: workClay,
	Draw: drawClay,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		clayColour.Example = form.Example{
			Given: []form.Setting{{Name: "clay", Text: "500 g"}, {Name: "clay-water", Text: "20"}, {Name: "stain", Text: "8"}},
		}
		clayColour.Table = form.Table{
			Down: "clay-water", Values: []string{"16 %", "18 %", "20 %", "22 %", "24 %", "26 %"},
			Across: "stain", AcrossValues: []string{"2 %", "4 %", "6 %", "8 %", "10 %", "15 %"},
			Show: []string{"stain-mass"},
			Also: []form.Setting{{Name: "clay", Text: "1 kg"}},
		}
		clayColour.Formula = clayFormulas
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
		e.Headline("nothing-wedge-you")
		return
	case !e.Weighable("stain-mass"):
		e.Headline("stain-colour-larger")
	default:
		e.Headline("wedge-stain")
	}
	e.Judge(form.OfStain, percent, e.Shown("stain"))
	if damp > dry && stain > 0 {
		e.Note("on-damp", "stain", form.WithUnit(e.Text(damp*percent/100, 4), "g"), "times", e.Text(damp/dry, 3))
	}
	littleStain(e, stain)
}

// drawClay shows a lump by weight: its dry clay, its water, the stain.
func drawClay(e *form.Evaluation) string {
	d := sheet(e, "alternative")
	x, total := 30.0, 0.0
	parts := [...]struct{ class, name, words string }{{"clay", "dry-clay", "clay"}, {"water", "water-held", "water"}, {"colour", "stain-mass", "stain"}}
	for _, part := range parts {
		r, _ := e.Result(part.name)
		total += r.Value
	}
	for i, part := range parts {
		r, _ := e.Result(part.name)
		width := 560 * r.Value / total
		d.Box(part.class, x, 30, width, 100)
		d.Box("ink", x, 30, width, 100)
		d.Aside(brief(e, part.words), 90, 184+float64(float64(i)*48))
		d.Box(part.class, 40, 162+float64(float64(i)*48), 30, 30)
		d.Box("ink", 40, 162+float64(float64(i)*48), 30, 30)
		x += width
	}
	return d.String()
}

func clayFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Words(say("stain")), Row(Letter("M"), Times, Bracket(One, Minus, Fraction(Letter("w"), Hundred)), Times, Fraction(Letter("p"), Hundred))),
			Where: []Symbol{
				{Letter: "M", Means: say("M")},
				{Letter: "w", Means: say("w")},
				{Letter: "p", Means: say("p")},
			},
		},
	}
}
