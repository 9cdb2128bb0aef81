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
	Name: "slip-adjust",
	Inputs: []form.Input{
		{Name: "volume", Kind: quantity.Volume, Needed: true, Group: "amount", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "slip-mass", Kind: quantity.Mass, Needed: true, Group: "amount", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 2e7}},
		{Name: "from", Kind: quantity.Gravity, Needed: true, First: true,
			Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		{Name: "to", Kind: quantity.Gravity, Needed: true, First: true,
			Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		solidsDensity,
		{Name: "stain", Kind: quantity.Percent, Default: "0", Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
	},
	Outputs: []form.Output{
		{Name: "water-to-add", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "first-pour", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "new-volume", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "powder-to-add", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "powder-base", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "powder-stain", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "volume-after-powder", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "water-to-remove", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "volume-after-removal", Unit: "mL", Digits: 4, As: form.Bucket},
	},
	Says:    []string{"specific-gravity-not"},
	MayHurt: []string{dryPowder, stainPowder, rinseWater},
	Next: []form.Next{
		{Calculator: "slip-density", Carry: []form.Carry{{Into: "solids-density", From: "solids-density"}}},
		{Calculator: "slip-colour", If: "new-volume",
			Carry: []form.Carry{{Into: "volume", From: "new-volume"}, {Into: "specific-gravity", From: "to"}, {Into: "stain-now", From: "stain"}, {Into: "solids-density", From: "solids-density"}}},
	},
	Work: workAdjust,
	Draw: drawAdjust,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		slipAdjust.Example = form.Example{
			Given: []form.Setting{{Name: "volume", Text: "2 L"}, {Name: "from", Text: "1.60"}, {Name: "to", Text: "1.45"}},
		}
		slipAdjust.Table = form.Table{
			Down: "from", Values: []string{"1.40", "1.45", "1.50", "1.55", "1.60", "1.65", "1.70", "1.75"},
			Across: "to", AcrossValues: []string{"1.30", "1.35", "1.40", "1.45", "1.50"},
			Show: []string{"water-to-add"},
			Also: []form.Setting{{Name: "volume", Text: "1 L"}},
		}
		slipAdjust.Formula = adjustFormulas
	}
}

func workAdjust(e *form.Evaluation) {
	now, wanted, solids := e.Value("from"), e.Value("to"), e.Value("solids-density")
	if now > solids {
		tooHeavy(e, now, "from", "slip-would-heavier")
	}
	if wanted > now && wanted >= solids {
		tooHeavy(e, wanted, "to", "no-amount-powder")
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
	e.Headline("right-near", "near", e.Text(0.01, 1))
	if wanted == now {
		e.Headline("right-bucket-already")
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
	e.Headline("add-water-first")
	e.Note("pour-first-four")
	e.Note("off", "reading", e.Text(0.01, 1), "water", e.Amount(float64(0.01*volume)/(wanted-1), "mL", 4, 0, form.Bucket))
	if water > volume/2 {
		e.Note("bucket-has-hold")
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
	e.Headline("add-same-dry")
	e.Note("powder-has-same")
	e.Note("take-off-clear")
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
		d := sheet(e, "alternative")
		more := "more-water"
		if after.Value == before {
			d, more = sheet(e, "right"), "right-beside"
		}
		scale := (sketch.JarFloor - sketch.JarTop) / after.Value
		d.Pair(float64(before*scale), brief(e, more), e.Shown("from"), e.Shown("to"), sketch.Layer{Class: "water", Height: float64((after.Value - before) * scale)})
		return d.String()
	}
	after, _ := e.Result("volume-after-powder")
	d := sheet(e, "alternative-2")
	scale := (sketch.JarFloor - sketch.JarTop) / after.Value
	d.Pair(float64(before*scale), brief(e, "more-powder"), e.Shown("from"), e.Shown("to"), sketch.Layer{Class: "clay", Height: float64((after.Value - before) * scale)})
	return d.String()
}

func adjustFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Letter("W"), Row(Letter("V"), Times, Fraction(Row(Sub(Letter("d"), One), Minus, Sub(Letter("d"), Number("2"))), Row(Sub(Letter("d"), Number("2")), Minus, One)))),
			Where: []Symbol{
				{Letter: "W", Means: say("W")},
				{Letter: "V", Means: say("V")},
				{Letter: "d_1, d_2", Means: say("d_1-d_2")},
			},
		},
		{
			Math: Equal(Letter("P"), Row(Letter("V"), Times, Fraction(Row(Bracket(Sub(Letter("d"), Number("2")), Minus, Sub(Letter("d"), One)), Times, Letter("s")), Row(Letter("s"), Minus, Sub(Letter("d"), Number("2")))))),
			Where: []Symbol{
				{Letter: "P", Means: say("P")},
				{Letter: "s", Means: say("s")},
			},
		},
	}
}
