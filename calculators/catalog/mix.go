package catalog

import (
	"slipbook/calculators/quantity"
	"slipbook/calculators/wash"
)

var washMix = &Calculator{
	Name:    "wash-mix",
	Title:   "Mix a stain wash",
	Purpose: "Says what to weigh for the wash you need, from its parts by weight.",
	Inputs: []Input{
		{Name: "volume", Label: "How much wash", Help: "The whole lot. Or give people and an amount each instead.", Kind: quantity.Volume, Needed: true, Group: "amount", First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e7, ""}},
		forPeople, forEach, forSpare,
		{Name: "stain-parts", Label: "Parts of stain", Help: "By weight.", Kind: quantity.Number, Default: "1", First: true,
			Low: Limit{Above, 0, "A wash without stain has no colour. Give its parts by weight, for example 1."}, High: Limit{UpTo, 1e6, ""}},
		{Name: "flux-parts", Label: "Parts of flux", Help: "By weight. The borate flux that fixes the stain to the pot.", Kind: quantity.Number, Default: "1", First: true, Low: Limit{From, 0, ""}, High: Limit{UpTo, 1e6, ""}},
		{Name: "water-parts", Label: "Parts of water", Help: "By weight, which for water is also by mL.", Kind: quantity.Number, Default: "10", First: true,
			Low: Limit{Above, 0, "A wash needs water. Give its parts by weight, for example 10."}, High: Limit{UpTo, 1e6, ""}},
		stainDensity, fluxDensity,
	},
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
	Hazards: []string{stainPowder, washColour},
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

// forPeople, forEach and forSpare ask how much a class needs, beside a volume of the
// whole lot.
var (
	forPeople = Input{Name: "people", Label: "People", Help: "How many will use it.", Kind: quantity.Number, Needed: true, Group: "amount", Side: "class", First: true, Whole: true, Low: Limit{From, 1, ""}, High: Limit{UpTo, 1000, ""}}
	forEach   = Input{Name: "each", Label: "Amount each", Help: "For one person.", Kind: quantity.Volume, Needed: true, Group: "amount", Side: "class", First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e6, ""}}
	forSpare  = Input{Name: "spare", Label: "To spare", Help: "On top, for a class. Not used when you give the whole lot.", Kind: quantity.Percent, Default: "10", Low: Limit{From, 0, ""}, High: Limit{UpTo, 200, ""}}
)

// stainDensity and fluxDensity are asked by calculators that weigh them.
var (
	stainDensity = Input{Name: "stain-density", Label: "How heavy the stain is", Help: "Its density in g/mL. Leave 4.5 unless its sheet gives another.", Kind: quantity.Density, Default: "4.5",
		Low:  Limit{Above, 1, "Powder that is no heavier than water would float. Leave 4.5 unless its sheet gives another."},
		High: Limit{UpTo, 10, "No ceramic powder is that heavy. Leave 4.5 unless its sheet gives another."}}
	fluxDensity = Input{Name: "flux-density", Label: "How heavy the flux is", Help: "Its density in g/mL. Leave 2.5 unless its sheet gives another.", Kind: quantity.Density, Default: "2.5",
		Low:  Limit{Above, 1, "Powder that is no heavier than water would float. Leave 2.5 unless its sheet gives another."},
		High: Limit{UpTo, 10, "No ceramic powder is that heavy. Leave 2.5 unless its sheet gives another."}}
)

// volumeWanted gives the volume (mL) that such inputs ask for; where that is
// the whole lot, nothing is spared.
func (b *bench) volumeWanted() float64 {
	if !b.has("people") {
		b.unused("spare", "“To spare” is for a class. You gave the whole lot, so nothing was added.")
		return b.value("volume")
	}
	return float64(b.value("people") * b.value("each") * (1 + b.value("spare")/100))
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
