package catalog

import (
	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/slip"
)

var slipColour = &form.Calculator{
	Name:    "slip-colour",
	Title:   "Colour a bucket of slip",
	Purpose: "Says how much stain a bucket takes for the colour you want, reckoned on the dry clay in it, and how much water that may need.",
	Inputs: []form.Input{
		{Name: "volume", Label: "Slip in the bucket, by volume", Help: "If you know its volume.", Kind: quantity.Volume, Needed: true, Group: "amount", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "slip-mass", Label: "Slip in the bucket, by weight", Help: "Instead of the volume: the bucket's weight less the empty bucket's.", Kind: quantity.Mass, Needed: true, Group: "amount", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 2e7}},
		{Name: "specific-gravity", Label: "Specific gravity now", Help: "As you measured it, for example 1.45.", Kind: quantity.Gravity, Needed: true, First: true,
			Low: form.Limit{End: form.Above, Value: 1, Why: "1 is plain water, and less than 1 is thinner than water. A slip is more than 1, for example 1.45."}},
		{Name: "stain", Label: "Stain wanted", Help: "Grams for every 100 g of dry base, from your test tile.", Kind: quantity.Percent, Needed: true, First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
		{Name: "stain-now", Label: "Stain in it already", Help: "The same way. Leave 0 for a slip without stain.", Kind: quantity.Percent, Default: "0", First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
		solidsDensity,
		stainDensity,
	},
	Outputs: []form.Output{
		{Name: "stain-mass", Label: "Stain to add", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "water-to-hold", Label: "Water to add, at most", Unit: "g", Digits: 4, As: form.Bucket},
		{Name: "new-volume", Label: "With both the bucket holds", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "specific-gravity-if-no-water", Label: "Specific gravity without that water", Unit: "1", Digits: 4, Places: 2},
		{Name: "dry-base", Label: "Dry base in the bucket", Unit: "g", Digits: 4, As: form.Weighed},
	},
	Notes: []string{
		"Stain is counted over the dry base alone: not over the wet slip, and not over base and stain together.",
		"Stir the stain to a paste in a little of the water, pour it in, stir, and sieve the bucket through 100 to 120 mesh.",
		"The water is a ceiling. It holds the number, not the feel: stir in half of it, wait, look how the slip runs, and measure.",
	},
	Hazards: []string{stainPowder},
	Next: []form.Next{
		{Words: "Bring it to a number", Calculator: "slip-adjust", Carry: []form.Carry{{Into: "volume", From: "new-volume"}, {Into: "from", From: "specific-gravity"}, {Into: "stain", From: "stain"}, {Into: "solids-density", From: "solids-density"}}},
		{Words: "Measure it", Calculator: "slip-density", Carry: []form.Carry{{Into: "solids-density", From: "solids-density"}}},
	},
	Work: workColour,
	Draw: drawColour,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		slipColour.Example = form.Example{
			Case:  "Two litres of slip at 1.45 have 3 % of stain in them, and the tile that pleased had 8 %.",
			Given: []form.Setting{{Name: "volume", Text: "2 L"}, {Name: "specific-gravity", Text: "1.45"}, {Name: "stain", Text: "8"}, {Name: "stain-now", Text: "3"}},
		}
		slipColour.Table = form.Table{
			Caption: "Stain to add to one litre of slip without stain, g",
			Down:    "specific-gravity", Values: []string{"1.30", "1.35", "1.40", "1.45", "1.50", "1.55", "1.60", "1.65", "1.70", "1.75"},
			Across: "stain", AcrossValues: []string{"2 %", "4 %", "6 %", "8 %", "10 %", "15 %"},
			Show: []string{"stain-mass"},
			Also: []form.Setting{{Name: "volume", Text: "1 L"}, {Name: "stain-now", Text: "0"}},
		}
		slipColour.Formulas = colourFormulas
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
		e.Refuse("stain", "There is more stain in it already ({stain-now}) than the {stain} you want, and stain cannot be taken out. Mix in slip without stain instead.")
	case gravity > bucket.Solid():
		tooHeavy(e, gravity, "specific-gravity", "A slip of {specific-gravity} would be heavier than its dry powder ({}). Measure it again.", form.WithUnit(e.Text(bucket.Solid(), 4), "g/mL"))
	case gravity > bucket.Stain:
		e.Refuse("stain-density", "A stain of {stain-density} is lighter than the slip ({specific-gravity}) and would thin it, so there is no water to add. Check its density; most stains are about 4.5.")
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
		e.Judge(form.OfStain, wanted, e.Shown("stain")+" of stain")
	}
}

// sayColour shows beside the answer what the usual mistake would have made of
// it: percent of the wet slip, which weighs so many times its dry base.
func sayColour(e *form.Evaluation, stain, times float64) {
	if stain == 0 {
		e.Headline("Nothing to do: the slip already has {} of stain.", form.WithUnit(e.Text(e.Value("stain"), 6), "%"))
		if e.Value("stain") == 0 {
			e.Headline("Nothing to do: there is no stain in the slip, and none is wanted.")
		}
		return
	}
	e.Headline("Add {stain-mass} of stain, and at most {water-to-hold} of water.")
	if !e.Weighable("water-to-hold") {
		e.Headline("Add {stain-mass} of stain, and no water.")
	}
	if !e.Weighable("stain-mass") {
		e.Headline("Nothing to do on this scale: the stain is {stain-mass}.")
	}
	e.Note("Reckoned on the wet slip it would have been {} of stain, {} times as much.", e.Amount(float64(stain*times), "g", 4, 0, form.Weighed), e.Text(times, 2))
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
	d := sheet(e, "The bucket before, and after {stain-mass} of stain and {water-to-hold} of water, to one scale.")
	d.Pair(float64((after.Value-room-water.Value)*scale), brief(e, "+ {stain-mass}"), e.Words("{stain-now}"), e.Words("{stain}"),
		sketch.Layer{Class: "colour", Height: float64(room * scale)}, sketch.Layer{Class: "water", Height: float64(water.Value * scale)})
	d.Words("of stain", 460, sketch.JarTop+float64((room+water.Value)*scale/2)+41, sketch.TextSize, "start")
	return d.String()
}

func colourFormulas() []Formula {
	return []Formula{
		{
			Math: Equal(Words("stain to add"), Row(Letter("D"), Times, Fraction(Row(Letter("p"), Minus, Sub(Letter("p"), Number("0"))), Hundred))),
			Where: []Symbol{
				{Letter: "D", Means: "dry base in the bucket, g"},
				{Letter: "p, p_0", Means: "stain wanted, and in it already, g for 100 g of base"},
			},
		},
		{
			Math: Equal(Letter("D"), Fraction(Row(Letter("V"), Times, Bracket(Letter("d"), Minus, One)),
				Row(One, Minus, Fraction(One, Letter("s")), Plus, Fraction(Sub(Letter("p"), Number("0")), Hundred), Times, Bracket(One, Minus, Fraction(One, Sub(Letter("s"), Letter("c"))))))),
			Where: []Symbol{
				{Letter: "V, d", Means: "slip in the bucket, mL, and its specific gravity now"},
				{Letter: "s, s_c", Means: "densities of the dry base and of the stain, g/mL"},
			},
		},
		{
			Math: Equal(Words("water to hold"), Row(Words("stain to add"), Times, Fraction(Row(Sub(Letter("s"), Letter("c")), Minus, Letter("d")), Row(Sub(Letter("s"), Letter("c")), Times, Bracket(Letter("d"), Minus, One))))),
		},
	}
}
