package catalog

import (
	"math"

	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/slip"
)

var slipAdjust = &form.Calculator{
	Name:    "slip-adjust",
	Title:   "Make a bucket thinner or thicker",
	Purpose: "Says how much water to add, or how much dry mix to add or clear water to take off, to bring a bucket to the number you want.",
	Inputs: []form.Input{
		{Name: "volume", Label: "Slip in the bucket, by volume", Help: "If you know its volume.", Kind: quantity.Volume, Needed: true, Group: "amount", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "slip-mass", Label: "Slip in the bucket, by weight", Help: "Instead of the volume: the bucket's weight less the empty bucket's.", Kind: quantity.Mass, Needed: true, Group: "amount", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 2e7}},
		{Name: "from", Label: "Specific gravity now", Help: "As you measured it, for example 1.60.", Kind: quantity.Gravity, Needed: true, First: true,
			Low: form.Limit{End: form.Above, Value: 1, Why: "1 is plain water, and less than 1 is thinner than water. A slip is more than 1, for example 1.60."}},
		{Name: "to", Label: "Specific gravity wanted", Help: "For example 1.45.", Kind: quantity.Gravity, Needed: true, First: true,
			Low: form.Limit{End: form.Above, Value: 1, Why: "1 is plain water: no amount of water brings a slip that far. Give a number above 1, for example 1.45."}},
		solidsDensity,
		{Name: "stain", Label: "Stain in the slip", Help: "Grams for every 100 g of dry base, so that dry mix can be weighed out as base and stain.", Kind: quantity.Percent, Default: "0", Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
	},
	Outputs: []form.Output{
		{Name: "water-to-add", Label: "Water to add", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "first-pour", Label: "Pour this much first", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "new-volume", Label: "The bucket then holds", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "powder-to-add", Label: "Dry mix to add", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "powder-base", Label: "of it, base", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "powder-stain", Label: "of it, stain", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "volume-after-powder", Label: "With the powder it holds", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "water-to-remove", Label: "Or take off clear water", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "volume-after-removal", Label: "Without that water it holds", Unit: "mL", Digits: 4, As: form.Bucket},
	},
	Notes: []string{
		"Specific gravity is not flow. A slip with a thinner in it (deflocculated) gels or settles by chemistry; this sum brings the number right, not the feel.",
	},
	MayHurt: []string{dryPowder, stainPowder, rinseWater},
	Next: []form.Next{
		{Words: "Measure it again", Calculator: "slip-density", Carry: []form.Carry{{Into: "solids-density", From: "solids-density"}}},
		{Words: "Colour the bucket at its new number", Calculator: "slip-colour", If: "new-volume",
			Carry: []form.Carry{{Into: "volume", From: "new-volume"}, {Into: "specific-gravity", From: "to"}, {Into: "stain-now", From: "stain"}, {Into: "solids-density", From: "solids-density"}}},
	},
	Work: workAdjust,
	Draw: drawAdjust,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		slipAdjust.Example = form.Example{
			Case:  "Two litres of slip measure 1.60 and should be 1.45.",
			Given: []form.Setting{{Name: "volume", Text: "2 L"}, {Name: "from", Text: "1.60"}, {Name: "to", Text: "1.45"}},
		}
		slipAdjust.Table = form.Table{
			Caption: "Water to add to one litre, mL",
			Down:    "from", Values: []string{"1.40", "1.45", "1.50", "1.55", "1.60", "1.65", "1.70", "1.75"},
			Across: "to", AcrossValues: []string{"1.30", "1.35", "1.40", "1.45", "1.50"},
			Show: []string{"water-to-add"},
			Also: []form.Setting{{Name: "volume", Text: "1 L"}},
		}
		slipAdjust.Formulas = adjustFormulas
	}
}

func workAdjust(e *form.Evaluation) {
	now, wanted, solids := e.Value("from"), e.Value("to"), e.Value("solids-density")
	if now > solids {
		tooHeavy(e, now, "from", "A slip of {from} would be heavier than its dry powder ({solids-density}). Measure it again.")
	}
	if wanted > now && wanted >= solids {
		tooHeavy(e, wanted, "to", "No amount of powder makes a slip of {to}: the dry powder itself is only {solids-density}.")
	}
	if e.Refused() {
		return
	}
	volume := e.Value("volume")
	if e.Has("slip-mass") {
		volume = e.Value("slip-mass") / now
	}
	switch {
	case math.Abs(wanted-now) <= nearEnough:
		leave(e, volume, now, wanted)
	case wanted < now:
		thin(e, volume, now, wanted)
	default:
		thicken(e, volume, now, wanted, solids)
	}
	judgeGravity(e, wanted)
}

// leave says that a bucket is right as it is: nothing is added.
func leave(e *form.Evaluation, volume, now, wanted float64) {
	e.Set("water-to-add", 0)
	e.Set("new-volume", volume)
	e.Headline("Right as it is: {from} is within {} of {to}, and no bucket is measured closer.", e.Text(0.01, 1))
	if wanted == now {
		e.Headline("Right as it is: the bucket is already at {from}.")
	}
}

// nearEnough is how near to the number wanted a bucket counts as there: what a
// jar and a line can tell, and a hair for the computer's fractions.
const nearEnough = 0.01 + 1e-9

func thin(e *form.Evaluation, volume, now, wanted float64) {
	water := slip.Water(volume, now, wanted)
	e.Set("water-to-add", water)
	e.Set("first-pour", 4*water/5)
	e.Set("new-volume", volume+water)
	e.Headline("Add {water-to-add} of water, {first-pour} of it first.")
	e.Note("Pour the first four fifths, stir, wait, and measure again before you pour the rest. Water is quick to add and slow to take out.")
	e.Note("If the reading is {} off, the water is {} off: that is what the last fifth waits for.", e.Text(0.01, 1), e.Amount(float64(0.01*volume)/(wanted-1), "mL", 4, 0, form.Bucket))
	if water > volume/2 {
		e.Note("The bucket has to hold {new-volume}.")
	}
}

func thicken(e *form.Evaluation, volume, now, wanted, solids float64) {
	powder := slip.Powder(volume, now, wanted, solids)
	base, stain := slip.Share(powder, e.Value("stain"))
	removed := slip.Decant(volume, now, wanted)
	e.Set("powder-to-add", powder)
	e.Set("powder-base", base)
	e.Set("powder-stain", stain)
	e.Set("volume-after-powder", volume+powder/solids)
	e.Set("water-to-remove", removed)
	e.Set("volume-after-removal", volume-removed)
	e.Headline("Add {powder-to-add} of the same dry mix, or take off {water-to-remove} of clear water.")
	e.Note("The powder has to be the same dry mix as the slip, stain and all; another clay changes the colour and the fit.")
	e.Note("Take off clear water only, after the slip has stood. Cloudy water carries clay and stain away with it.")
	e.Warn(dryPowder)
	if stain > 0 {
		e.Warn(stainPowder)
	}
	e.Warn(rinseWater)
}

// drawAdjust shows the bucket before and after, to one scale.
func drawAdjust(e *form.Evaluation) string {
	before := e.Value("volume")
	if e.Has("slip-mass") {
		before = e.Value("slip-mass") / e.Value("from")
	}
	if after, thinner := e.Result("new-volume"); thinner {
		d := sheet(e, "The bucket before, and after {water-to-add} of water, to one scale.")
		more := "+ {water-to-add}"
		if after.Value == before {
			d, more = sheet(e, "The bucket, right as it is."), "right as it is"
		}
		scale := (sketch.JarFloor - sketch.JarTop) / after.Value
		d.Pair(float64(before*scale), brief(e, more), e.Words("{from}"), e.Words("{to}"), sketch.Layer{Class: "water", Height: float64((after.Value - before) * scale)})
		return d.String()
	}
	after, _ := e.Result("volume-after-powder")
	d := sheet(e, "The bucket before, and after {powder-to-add} of dry mix, to one scale.")
	scale := (sketch.JarFloor - sketch.JarTop) / after.Value
	d.Pair(float64(before*scale), brief(e, "+ {powder-to-add}"), e.Words("{from}"), e.Words("{to}"), sketch.Layer{Class: "clay", Height: float64((after.Value - before) * scale)})
	return d.String()
}

func adjustFormulas() []Formula {
	return []Formula{
		{
			Math: Equal(Letter("W"), Row(Letter("V"), Times, Fraction(Row(Sub(Letter("d"), One), Minus, Sub(Letter("d"), Number("2"))), Row(Sub(Letter("d"), Number("2")), Minus, One)))),
			Where: []Symbol{
				{Letter: "W", Means: "water to add, mL (taken off instead when it comes out negative)"},
				{Letter: "V", Means: "slip in the bucket, mL"},
				{Letter: "d_1, d_2", Means: "specific gravity now, and wanted"},
			},
		},
		{
			Math: Equal(Letter("P"), Row(Letter("V"), Times, Fraction(Row(Bracket(Sub(Letter("d"), Number("2")), Minus, Sub(Letter("d"), One)), Times, Letter("s")), Row(Letter("s"), Minus, Sub(Letter("d"), Number("2")))))),
			Where: []Symbol{
				{Letter: "P", Means: "dry mix to add, g"},
				{Letter: "s", Means: "density of the dry powder, g/mL"},
			},
		},
	}
}
