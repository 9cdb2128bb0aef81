package catalog

import (
	"slipbook/calculators/quantity"
	"slipbook/calculators/slip"
)

var slipColour = &Calculator{
	Name:    "slip-colour",
	Title:   "Colour a bucket of slip",
	Purpose: "Says how much stain a bucket takes for the colour you want, reckoned on the dry clay in it, and how much water that may need.",
	Inputs: []Input{
		{Name: "volume", Label: "Slip in the bucket, by volume", Help: "If you know its volume.", Kind: quantity.Volume, Needed: true, Group: "amount", First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e7, ""}},
		{Name: "slip-mass", Label: "Slip in the bucket, by weight", Help: "Instead of the volume: the bucket's weight less the empty bucket's.", Kind: quantity.Mass, Needed: true, Group: "amount", First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 2e7, ""}},
		{Name: "specific-gravity", Label: "Specific gravity now", Help: "As you measured it, for example 1.45.", Kind: quantity.Gravity, Needed: true, First: true,
			Low: Limit{Above, 1, "1 is plain water, and less than 1 is thinner than water. A slip is more than 1, for example 1.45."}},
		{Name: "stain", Label: "Stain wanted", Help: "Grams for every 100 g of dry base, from your test tile.", Kind: quantity.Percent, Needed: true, First: true, Low: Limit{From, 0, ""}, High: Limit{UpTo, 100, ""}},
		{Name: "stain-now", Label: "Stain in it already", Help: "The same way. Leave 0 for a slip without stain.", Kind: quantity.Percent, Default: "0", First: true, Low: Limit{From, 0, ""}, High: Limit{UpTo, 100, ""}},
		solidsDensity,
		stainDensity,
	},
	Outputs: []Output{
		{Name: "stain-mass", Label: "Stain to add", Unit: "g", Digits: 4, As: Weighed},
		{Name: "water-to-hold", Label: "Water to add, at most", Unit: "g", Digits: 4, As: Bucket},
		{Name: "new-volume", Label: "With both the bucket holds", Unit: "mL", Digits: 4, As: Bucket},
		{Name: "specific-gravity-if-no-water", Label: "Specific gravity without that water", Unit: "1", Digits: 4, Places: 2},
		{Name: "dry-base", Label: "Dry base in the bucket", Unit: "g", Digits: 4, As: Weighed},
	},
	Notes: []string{
		"Stain is counted over the dry base alone: not over the wet slip, and not over base and stain together.",
		"Stir the stain to a paste in a little of the water, pour it in, stir, and sieve the bucket through 100 to 120 mesh.",
		"The water is a ceiling. It holds the number, not the feel: stir in half of it, wait, look how the slip runs, and measure.",
	},
	Hazards: []string{stainPowder},
	Next: []Next{
		{Words: "Bring it to a number", Calculator: "slip-adjust", Carry: []Carry{{"volume", "new-volume"}, {"from", "specific-gravity"}, {"stain", "stain"}, {"solids-density", "solids-density"}}},
		{Words: "Measure it", Calculator: "slip-density", Carry: []Carry{{"solids-density", "solids-density"}}},
	},
	Example: Example{
		Case:  "Two litres of slip at 1.45 have 3 % of stain in them, and the tile that pleased had 8 %.",
		Given: []Setting{{"volume", "2 L"}, {"specific-gravity", "1.45"}, {"stain", "8"}, {"stain-now", "3"}},
	},
	Table: Table{
		Caption: "Stain to add to one litre of slip without stain, g",
		Down:    "specific-gravity", Values: []string{"1.30", "1.35", "1.40", "1.45", "1.50", "1.55", "1.60", "1.65", "1.70", "1.75"},
		Across: "stain", AcrossValues: []string{"2 %", "4 %", "6 %", "8 %", "10 %", "15 %"},
		Show: []string{"stain-mass"},
		Also: []Setting{{"volume", "1 L"}, {"stain-now", "0"}},
	},
	work: workColour,
	draw: drawColour,
}

func workColour(b *bench) {
	gravity, wanted, now := b.value("specific-gravity"), b.value("stain"), b.value("stain-now")
	bucket := slip.Bucket{Volume: b.value("volume"), Gravity: gravity, Solids: b.value("solids-density"), Now: now, Stain: b.value("stain-density")}
	if b.has("slip-mass") {
		bucket.Volume = b.value("slip-mass") / gravity
	}
	switch {
	case wanted < now:
		b.refuse("stain", "There is more stain in it already ({stain-now}) than the {stain} you want, and stain cannot be taken out. Mix in slip without stain instead.")
	case gravity > bucket.Solid():
		b.tooHeavy(gravity, "specific-gravity", "A slip of {specific-gravity} would be heavier than its dry powder ({}). Measure it again.", withUnit(b.text(bucket.Solid(), 4), "g/mL"))
	case gravity > bucket.Stain:
		b.refuse("stain-density", "A stain of {stain-density} is lighter than the slip ({specific-gravity}) and would thin it, so there is no water to add. Check its density; most stains are about 4.5.")
	}
	if b.refused() {
		return
	}
	base := bucket.Base()
	stain := base * (wanted - now) / 100
	water := bucket.Hold(stain)
	b.set("stain-mass", stain)
	b.set("water-to-hold", water)
	b.set("new-volume", bucket.Filled(stain, water))
	b.set("specific-gravity-if-no-water", bucket.Unwatered(stain))
	b.set("dry-base", base)
	b.sayColour(stain, float64(bucket.Volume*gravity)/base)
	b.judgeGravity(gravity)
	if wanted > 0 {
		b.judge(OfStain, wanted, b.shown("stain")+" of stain")
	}
}

// sayColour shows beside the answer what the usual mistake would have made of
// it: percent of the wet slip, which weighs so many times its dry base.
func (b *bench) sayColour(stain, times float64) {
	if stain == 0 {
		b.headline("Nothing to do: the slip already has {} of stain.", withUnit(b.text(b.value("stain"), 6), "%"))
		if b.value("stain") == 0 {
			b.headline("Nothing to do: there is no stain in the slip, and none is wanted.")
		}
		return
	}
	b.headline("Add {stain-mass} of stain, and at most {water-to-hold} of water.")
	if !b.weighable("water-to-hold") {
		b.headline("Add {stain-mass} of stain, and no water.")
	}
	if !b.weighable("stain-mass") {
		b.headline("Nothing to do on this scale: the stain is {stain-mass}.")
	}
	b.note("Reckoned on the wet slip it would have been {} of stain, {} times as much.", b.amount(float64(stain*times), "g", 4, 0, Weighed), b.text(times, 2))
	b.littleStain(stain)
}
