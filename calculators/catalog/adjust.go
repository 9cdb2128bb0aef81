package catalog

import (
	"math"

	"slipbook/calculators/quantity"
	"slipbook/calculators/slip"
)

var slipAdjust = &Calculator{
	Name:    "slip-adjust",
	Title:   "Make a bucket thinner or thicker",
	Purpose: "Says how much water to add, or how much dry mix to add or clear water to take off, to bring a bucket to the number you want.",
	Inputs: []Input{
		{Name: "volume", Label: "Slip in the bucket, by volume", Help: "If you know its volume.", Kind: quantity.Volume, Needed: true, Group: "amount", First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e7, ""}},
		{Name: "slip-mass", Label: "Slip in the bucket, by weight", Help: "Instead of the volume: the bucket's weight less the empty bucket's.", Kind: quantity.Mass, Needed: true, Group: "amount", First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 2e7, ""}},
		{Name: "from", Label: "Specific gravity now", Help: "As you measured it, for example 1.60.", Kind: quantity.Gravity, Needed: true, First: true,
			Low: Limit{Above, 1, "1 is plain water, and less than 1 is thinner than water. A slip is more than 1, for example 1.60."}},
		{Name: "to", Label: "Specific gravity wanted", Help: "For example 1.45.", Kind: quantity.Gravity, Needed: true, First: true,
			Low: Limit{Above, 1, "1 is plain water: no amount of water brings a slip that far. Give a number above 1, for example 1.45."}},
		solidsDensity,
		{Name: "stain", Label: "Stain in the slip", Help: "Grams for every 100 g of dry base, so that dry mix can be weighed out as base and stain.", Kind: quantity.Percent, Default: "0", Low: Limit{From, 0, ""}, High: Limit{UpTo, 100, ""}},
	},
	Outputs: []Output{
		{Name: "water-to-add", Label: "Water to add", Unit: "mL", Digits: 4, As: Bucket},
		{Name: "first-pour", Label: "Pour this much first", Unit: "mL", Digits: 4, As: Bucket},
		{Name: "new-volume", Label: "The bucket then holds", Unit: "mL", Digits: 4, As: Bucket},
		{Name: "powder-to-add", Label: "Dry mix to add", Unit: "g", Digits: 4, As: Weighed},
		{Name: "powder-base", Label: "of it, base", Unit: "g", Digits: 4, As: Weighed},
		{Name: "powder-stain", Label: "of it, stain", Unit: "g", Digits: 4, As: Weighed},
		{Name: "volume-after-powder", Label: "With the powder it holds", Unit: "mL", Digits: 4, As: Bucket},
		{Name: "water-to-remove", Label: "Or take off clear water", Unit: "mL", Digits: 4, As: Bucket},
		{Name: "volume-after-removal", Label: "Without that water it holds", Unit: "mL", Digits: 4, As: Bucket},
	},
	Notes: []string{
		"Specific gravity is not flow. A slip with a thinner in it (deflocculated) gels or settles by chemistry; this sum brings the number right, not the feel.",
	},
	Example: Example{
		Case:  "Two litres of slip measure 1.60 and should be 1.45.",
		Given: []Setting{{"volume", "2 L"}, {"from", "1.60"}, {"to", "1.45"}},
	},
	Table: Table{
		Caption: "Water to add to one litre, mL",
		Down:    "from", Values: []string{"1.40", "1.45", "1.50", "1.55", "1.60", "1.65", "1.70", "1.75"},
		Across: "to", AcrossValues: []string{"1.30", "1.35", "1.40", "1.45", "1.50"},
		Show: []string{"water-to-add"},
		Also: []Setting{{"volume", "1 L"}},
	},
	MayHurt: []string{dryPowder, stainPowder, rinseWater},
	Next: []Next{
		{Words: "Measure it again", Calculator: "slip-density", Carry: []Carry{{"solids-density", "solids-density"}}},
		{Words: "Colour the bucket at its new number", Calculator: "slip-colour", If: "new-volume",
			Carry: []Carry{{"volume", "new-volume"}, {"specific-gravity", "to"}, {"stain-now", "stain"}, {"solids-density", "solids-density"}}},
	},
	work: workAdjust,
	draw: drawAdjust,
}

func workAdjust(b *bench) {
	now, wanted, solids := b.value("from"), b.value("to"), b.value("solids-density")
	if now > solids {
		b.tooHeavy(now, "from", "A slip of {from} would be heavier than its dry powder ({solids-density}). Measure it again.")
	}
	if wanted > now && wanted >= solids {
		b.tooHeavy(wanted, "to", "No amount of powder makes a slip of {to}: the dry powder itself is only {solids-density}.")
	}
	if b.refused() {
		return
	}
	volume := b.value("volume")
	if b.has("slip-mass") {
		volume = b.value("slip-mass") / now
	}
	switch {
	case math.Abs(wanted-now) <= nearEnough:
		b.leave(volume, now, wanted)
	case wanted < now:
		b.thin(volume, now, wanted)
	default:
		b.thicken(volume, now, wanted, solids)
	}
	b.judgeGravity(wanted)
}

// leave says that a bucket is right as it is: nothing is added.
func (b *bench) leave(volume, now, wanted float64) {
	b.set("water-to-add", 0)
	b.set("new-volume", volume)
	b.headline("Right as it is: {from} is within {} of {to}, and no bucket is measured closer.", b.text(0.01, 1))
	if wanted == now {
		b.headline("Right as it is: the bucket is already at {from}.")
	}
}

// nearEnough is how near to the number wanted a bucket counts as there: what a
// jar and a line can tell, and a hair for the computer's fractions.
const nearEnough = 0.01 + 1e-9

func (b *bench) thin(volume, now, wanted float64) {
	water := slip.Water(volume, now, wanted)
	b.set("water-to-add", water)
	b.set("first-pour", 4*water/5)
	b.set("new-volume", volume+water)
	b.headline("Add {water-to-add} of water, {first-pour} of it first.")
	b.note("Pour the first four fifths, stir, wait, and measure again before you pour the rest. Water is quick to add and slow to take out.")
	b.note("If the reading is {} off, the water is {} off: that is what the last fifth waits for.", b.text(0.01, 1), b.amount(float64(0.01*volume)/(wanted-1), "mL", 4, 0, Bucket))
	if water > volume/2 {
		b.note("The bucket has to hold {new-volume}.")
	}
}

func (b *bench) thicken(volume, now, wanted, solids float64) {
	powder := slip.Powder(volume, now, wanted, solids)
	base, stain := slip.Share(powder, b.value("stain"))
	removed := slip.Decant(volume, now, wanted)
	b.set("powder-to-add", powder)
	b.set("powder-base", base)
	b.set("powder-stain", stain)
	b.set("volume-after-powder", volume+powder/solids)
	b.set("water-to-remove", removed)
	b.set("volume-after-removal", volume-removed)
	b.headline("Add {powder-to-add} of the same dry mix, or take off {water-to-remove} of clear water.")
	b.note("The powder has to be the same dry mix as the slip, stain and all; another clay changes the colour and the fit.")
	b.note("Take off clear water only, after the slip has stood. Cloudy water carries clay and stain away with it.")
	b.warn(dryPowder)
	if stain > 0 {
		b.warn(stainPowder)
	}
	b.warn(rinseWater)
}
