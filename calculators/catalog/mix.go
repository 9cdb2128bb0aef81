package catalog

import (
	"slipbook/calculators/quantity"
	"slipbook/calculators/wash"
)

var washMix = &Calculator{
	Name:    "wash-mix",
	Title:   "Mix a stain wash",
	Purpose: "Says what to weigh for the wash you need, from its parts by weight.",
	Inputs: append(amount("wash"), []Input{
		{Name: "stain-parts", Label: "Parts of stain", Help: "By weight.", Kind: quantity.Number, Default: "1", First: true,
			Low: above(0).because("A wash without stain has no colour. Give its parts by weight, for example 1."), High: upTo(1e6)},
		{Name: "flux-parts", Label: "Parts of flux", Help: "By weight. The borate flux that fixes the stain to the pot.", Kind: quantity.Number, Default: "1", First: true, Low: from(0), High: upTo(1e6)},
		{Name: "water-parts", Label: "Parts of water", Help: "By weight, which for water is also by mL.", Kind: quantity.Number, Default: "10", First: true,
			Low: above(0).because("A wash needs water. Give its parts by weight, for example 10."), High: upTo(1e6)},
		powderDensity("stain-density", "How heavy the stain is", "4.5"),
		powderDensity("flux-density", "How heavy the flux is", "2.5"),
	}...),
	Outputs: []Output{
		{Name: "stain-mass", Label: "Stain", Unit: "g", Digits: 4, As: Weighed},
		{Name: "flux-mass", Label: "Flux", Unit: "g", Digits: 4, As: Weighed},
		{Name: "water", Label: "Water", Unit: "g", Digits: 4, As: Poured},
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
	Hazards: []string{stainPowder},
	Cautions: []string{
		"Some borates carry a reproductive caution. Pregnant or asthmatic? Ask your doctor first, and let somebody else mix until you know.",
	},
	Next: []Next{
		{Words: "Thin it, or make a ladder of cups", Calculator: "wash-dilute", Carry: []Carry{{"volume", "volume"}, {"from", "strength"}}},
	},
	Example: Example{
		Case:  "Six students need 30 mL each to wash into carved lines on bare bisque, with a tenth to spare.",
		Given: []Setting{{"people", "6"}, {"each", "30 mL"}, {"spare", "10"}, {"stain-parts", "1"}, {"flux-parts", "1"}, {"water-parts", "10"}},
	},
	Table: Table{
		Caption: "Where to start, for 100 mL (common practice; test on your own tiles)",
		Cases: []Case{
			{"On bare bisque, 1 + 1 + 10", []Setting{{"stain-parts", "1"}, {"flux-parts", "1"}, {"water-parts", "10"}}},
			{"Under a clear glaze, 3 + 1 + 30", []Setting{{"stain-parts", "3"}, {"flux-parts", "1"}, {"water-parts", "30"}}},
			{"On unfired glaze, 3 + 1 + 30", []Setting{{"stain-parts", "3"}, {"flux-parts", "1"}, {"water-parts", "30"}}},
		},
		Show: []string{"stain-mass", "flux-mass", "water", "strength"},
		Also: []Setting{{"people", ""}, {"each", ""}, {"spare", ""}, {"volume", "100 mL"}},
	},
	work: workMix,
	draw: drawMix,
}

// amount declares how much of something to make: a volume, or people with an
// amount each and a spare.
func amount(of string) []Input {
	return []Input{
		{Name: "volume", Label: "How much " + of, Help: "The whole lot. Or give people and an amount each instead.", Kind: quantity.Volume, Needed: true, Group: "amount", First: true, Low: above(0), High: upTo(1e7)},
		{Name: "people", Label: "People", Help: "How many will use it.", Kind: quantity.Number, Needed: true, Group: "amount", Side: "class", First: true, Whole: true, Low: from(1), High: upTo(1000)},
		{Name: "each", Label: "Amount each", Help: "For one person.", Kind: quantity.Volume, Needed: true, Group: "amount", Side: "class", First: true, Low: above(0), High: upTo(1e6)},
		{Name: "spare", Label: "To spare", Help: "On top, for a class. Not used when you give the whole lot.", Kind: quantity.Percent, Default: "10", Low: from(0), High: upTo(200)},
	}
}

// volumeWanted gives the volume (mL) that such inputs ask for; where that is
// the whole lot, nothing is spared.
func (b *bench) volumeWanted() float64 {
	if !b.has("people") {
		b.unused("spare", "“To spare” is for a class. You gave the whole lot, so nothing was added.")
		return b.value("volume")
	}
	return float64(b.value("people") * b.value("each") * (1 + b.value("spare")/100))
}

func powderDensity(name, label, value string) Input {
	return Input{
		Name: name, Label: label, Help: "Its density in g/mL. Leave " + value + " unless its sheet gives another.",
		Kind: quantity.Density, Default: value,
		Low:  above(1).because("Powder that is no heavier than water would float. Leave " + value + " unless its sheet gives another."),
		High: upTo(10).because("No ceramic powder is that heavy. Leave " + value + " unless its sheet gives another."),
	}
}

func workMix(b *bench) {
	parts := wash.Parts{
		Stain: b.value("stain-parts"), Flux: b.value("flux-parts"), Water: b.value("water-parts"),
		StainDensity: b.value("stain-density"), FluxDensity: b.value("flux-density"),
	}
	volume := b.volumeWanted()
	stain, flux, water := parts.Fill(volume)
	b.set("stain-mass", stain)
	b.set("flux-mass", flux)
	b.set("water", water)
	b.set("strength", parts.Strength())
	b.set("stain-strength", parts.StainStrength())
	b.set("stain-by-mass", 100*parts.Stain/parts.Mass())
	b.set("density", parts.Density())
	if b.has("people") {
		b.sayPeople("wash", volume)
	}
	b.headline("Weigh {stain-mass} of stain and {flux-mass} of flux into {water} of water.")
	if parts.Flux == 0 {
		b.headline("Weigh {stain-mass} of stain into {water} of water, without flux.")
		b.note("There is no flux in this. Stain alone does not melt and stays powder on bare clay; on unfired glaze the glaze can fix it.")
	}
	if !b.weighable("stain-mass") {
		b.headline("The stain is {stain-mass}: make a larger lot.")
	}
	b.littleStain(stain)
	b.judge(OfWash, parts.Strength(), b.shown("strength"))
}
