package catalog

import (
	"slipbook/calculators/quantity"
	"slipbook/calculators/slip"
)

var clayColour = &Calculator{
	Name:    "clay-colour",
	Title:   "Colour a lump of clay",
	Purpose: "Says how much stain goes into a lump of damp clay, for inlay and for marbled bodies.",
	Inputs: []Input{
		{Name: "clay", Label: "Damp clay", Help: "As it comes from the bag.", Kind: quantity.Mass, Needed: true, First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e6, ""}},
		{Name: "clay-water", Label: "Water in the clay", Help: "In percent of its damp weight, about 20 from the bag. A lump of 100 g that dries to 80 g holds 20 %.", Kind: quantity.Percent, Needed: true, First: true, Low: Limit{From, 0, ""},
			High: Limit{UpTo, 90, "That is water with a little clay in it. Clay from the bag holds about 20 %."}},
		{Name: "stain", Label: "Stain wanted", Help: "Grams for every 100 g of dry clay, from your test tile.", Kind: quantity.Percent, Needed: true, First: true, Low: Limit{From, 0, ""}, High: Limit{UpTo, 100, ""}},
	},
	Outputs: []Output{
		{Name: "stain-mass", Label: "Stain to add", Unit: "g", Digits: 4, As: Weighed},
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
	Next: []Next{
		{Words: "Plan test tiles up to that colour", Calculator: "tile-plan", Carry: []Carry{{"high", "stain"}}},
	},
	Example: Example{
		Case:  "A 500 g lump of porcelain, one fifth of it water, is to be blue for inlay.",
		Given: []Setting{{"clay", "500 g"}, {"clay-water", "20"}, {"stain", "8"}},
	},
	Table: Table{
		Caption: "Stain for one kilogram of damp clay, g",
		Down:    "clay-water", Values: []string{"16 %", "18 %", "20 %", "22 %", "24 %", "26 %"},
		Across: "stain", AcrossValues: []string{"2 %", "4 %", "6 %", "8 %", "10 %", "15 %"},
		Show: []string{"stain-mass"},
		Also: []Setting{{"clay", "1 kg"}},
	},
	work: workClay,
	draw: drawClay,
}

func workClay(b *bench) {
	b.doubtShare("clay-water")
	damp, percent := b.value("clay"), b.value("stain")
	dry := slip.Dried(damp, b.value("clay-water"))
	stain := dry * percent / 100
	b.set("stain-mass", stain)
	b.set("dry-clay", dry)
	b.set("water-held", damp-dry)
	switch {
	case stain == 0:
		b.headline("Nothing to wedge in: you asked for 0\u00a0% of stain.")
		return
	case !b.weighable("stain-mass"):
		b.headline("The stain is {stain-mass}: colour a larger lump.")
	default:
		b.headline("Wedge in {stain-mass} of stain.")
	}
	b.judge(OfStain, percent, b.shown("stain"))
	if damp > dry && stain > 0 {
		b.note("Reckoned on the damp clay it would have been {} of stain, {} times as much.", withUnit(b.text(damp*percent/100, 4), "g"), b.text(damp/dry, 3))
	}
	b.littleStain(stain)
}
