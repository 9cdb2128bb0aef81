package catalog

import (
	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/slip"
)

var slipColour = &form.Calculator{
	Name: "slip-colour",
	Inputs: []form.Input{
		{Name: "volume", Kind: quantity.Volume, Needed: true, Group: "amount", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "slip-mass", Kind: quantity.Mass, Needed: true, Group: "amount", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 2e7}},
		{Name: "specific-gravity", Kind: quantity.Gravity, Needed: true, First: true,
			Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		{Name: "stain", Kind: quantity.Percent, Needed: true, First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
		{Name: "stain-now", Kind: quantity.Percent, Default: "0", First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
		solidsDensity,
		stainDensity,
	},
	Outputs: []form.Output{
		{Name: "stain-mass", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "water-to-hold", Unit: "g", Digits: 4, As: form.Bucket},
		{Name: "new-volume", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "specific-gravity-if-no-water", Unit: "1", Digits: 4, Places: 2},
		{Name: "dry-base", Unit: "g", Digits: 4, As: form.Weighed},
	},
	Says:    []string{"stain-counted-over", "stir-stain-paste", "water-ceiling-holds"},
	Hazards: []string{stainPowder},
	Next: []form.Next{
		{Calculator: "slip-adjust", Carry: []form.Carry{{Into: "volume", From: "new-volume"}, {Into: "from", From: "specific-gravity"}, {Into: "stain", From: "stain"}, {Into: "solids-density", From: "solids-density"}}},
		{Calculator: "slip-density", Carry: []form.Carry{{Into: "solids-density", From: "solids-density"}}},
	},
	Work: workColour,
	Draw: drawColour,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		slipColour.Example = form.Example{
			Given: []form.Setting{{Name: "volume", Text: "2 L"}, {Name: "specific-gravity", Text: "1.45"}, {Name: "stain", Text: "8"}, {Name: "stain-now", Text: "3"}},
		}
		slipColour.Table = form.Table{
			Down: "specific-gravity", Values: []string{"1.30", "1.35", "1.40", "1.45", "1.50", "1.55", "1.60", "1.65", "1.70", "1.75"},
			Across: "stain", AcrossValues: []string{"2 %", "4 %", "6 %", "8 %", "10 %", "15 %"},
			Show: []string{"stain-mass"},
			Also: []form.Setting{{Name: "volume", Text: "1 L"}, {Name: "stain-now", Text: "0"}},
		}
		slipColour.Formula = colourFormulas
	}
}

func workColour(e *form.Evaluation) {
	gravity, wanted, now := e.Value("specific-gravity"), e.Value("stain"), e.Value("stain-now")
	bucket := slip.Bucket{Volume: e.Value("volume"), Gravity: gravity, Solids: e.Value("solids-density"), Now: now, Stain: e.Value("stain-density")}
	if e.Has("slip-mass") {
		bucket.Volume = e.Value("slip-mass") / gravity
	}
	switch {
	case wanted < now:
		e.Refuse("stain", "there-more-stain")
	case gravity > bucket.Solid():
		tooHeavy(e, gravity, "specific-gravity", "heavier-than-powder", "powder", form.WithUnit(e.Text(bucket.Solid(), 4), "g/mL"))
	case gravity > bucket.Stain:
		e.Refuse("stain-density", "stain-lighter-than")
	}
	if e.Refused() {
		return
	}
	base := bucket.Base()
	stain := base * (wanted - now) / 100
	water := bucket.Hold(stain)
	e.Set("stain-mass", stain)
	e.Set("water-to-hold", water)
	e.Set("new-volume", bucket.Filled(stain, water))
	e.Set("specific-gravity-if-no-water", bucket.Unwatered(stain))
	e.Set("dry-base", base)
	sayColour(e, stain, float64(bucket.Volume*gravity)/base)
	judgeGravity(e, gravity)
	if wanted > 0 {
		e.Judge(form.OfStain, wanted, e.Say("judge.of-stain", "stain", e.Shown("stain")))
	}
}

// sayColour shows beside the answer what the usual mistake would have made of
// it: percent of the wet slip, which weighs so many times its dry base.
func sayColour(e *form.Evaluation, stain, times float64) {
	if stain == 0 {
		e.Headline("has-it", "stain", form.WithUnit(e.Text(e.Value("stain"), 6), "%"))
		if e.Value("stain") == 0 {
			e.Headline("nothing-do-there")
		}
		return
	}
	e.Headline("add-stain-most")
	if !e.Weighable("water-to-hold") {
		e.Headline("add-stain-no")
	}
	if !e.Weighable("stain-mass") {
		e.Headline("nothing-do-scale")
	}
	e.Note("on-wet", "stain", e.Amount(float64(stain*times), "g", 4, 0, form.Weighed), "times", e.Text(times, 2))
	littleStain(e, stain)
}

// drawColour shows the bucket before and after, to one scale: the stain lies
// on the slip as a thin layer, its water above.
func drawColour(e *form.Evaluation) string {
	stain, _ := e.Result("stain-mass")
	water, _ := e.Result("water-to-hold")
	after, _ := e.Result("new-volume")
	room := stain.Value / e.Value("stain-density")
	scale := (sketch.JarFloor - sketch.JarTop) / after.Value
	d := sheet(e, "alternative")
	d.Pair(float64((after.Value-room-water.Value)*scale), brief(e, "more"), e.Shown("stain-now"), e.Shown("stain"),
		sketch.Layer{Class: "colour", Height: float64(room * scale)}, sketch.Layer{Class: "water", Height: float64(water.Value * scale)})
	d.Words(e.Say("of-stain"), 460, sketch.JarTop+float64((room+water.Value)*scale/2)+41, "start")
	return d.String()
}

func colourFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Words(say("stain-add")), Row(Letter("D"), Times, Fraction(Row(Letter("p"), Minus, Sub(Letter("p"), Number("0"))), Hundred))),
			Where: []Symbol{
				{Letter: "D", Means: say("D")},
				{Letter: "p, p_0", Means: say("p-p_0")},
			},
		},
		{
			Math: Equal(Letter("D"), Fraction(Row(Letter("V"), Times, Bracket(Letter("d"), Minus, One)),
				Row(One, Minus, Fraction(One, Letter("s")), Plus, Fraction(Sub(Letter("p"), Number("0")), Hundred), Times, Bracket(One, Minus, Fraction(One, Sub(Letter("s"), Letter("c"))))))),
			Where: []Symbol{
				{Letter: "V, d", Means: say("V-d")},
				{Letter: "s, s_c", Means: say("s-s_c")},
			},
		},
		{
			Math: Equal(Words(say("water-hold")), Row(Words(say("stain-add")), Times, Fraction(Row(Sub(Letter("s"), Letter("c")), Minus, Letter("d")), Row(Sub(Letter("s"), Letter("c")), Times, Bracket(Letter("d"), Minus, One))))),
		},
	}
}
