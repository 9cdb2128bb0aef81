package catalog

import (
	"math"

	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/slip"
)

var clayWater = &form.Calculator{
	Name: "clay-water",
	Inputs: []form.Input{
		{Name: "damp", Kind: quantity.Mass, Needed: true, Group: "what", Side: "lump", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "dry", Kind: quantity.Mass, Needed: true, Group: "what", Side: "lump", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "clay-water", Kind: quantity.Percent, Needed: true, Group: "what", First: true, Low: form.Limit{End: form.From},
			High: form.Limit{End: form.UpTo, Value: 90, Why: "high"}},
		{Name: "earlier", Kind: quantity.Mass, Needed: true, Group: "what", Side: "pot", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "later", Kind: quantity.Mass, Needed: true, Group: "what", Side: "pot", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "hours", Kind: quantity.Number, Default: "24", First: true, Low: form.Limit{End: form.From, Value: 1, Why: "low"}, High: form.Limit{End: form.UpTo, Value: 720}},
		{Name: "clay", Kind: quantity.Mass, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "to", Kind: quantity.Percent, First: true, Low: form.Limit{End: form.From},
			High: form.Limit{End: form.UpTo, Value: 90, Why: "high"}},
		scaleStep,
	},
	Outputs: []form.Output{
		{Name: "water-of-damp", Unit: "%", Digits: 3},
		{Name: "water-of-dry", Unit: "%", Digits: 3},
		{Name: "dry-clay", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "water-held", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "water-to-add", Unit: "g", Digits: 4, As: form.Water},
		{Name: "water-to-lose", Unit: "g", Digits: 4, As: form.Water},
		{Name: "new-mass", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "loss-a-day", Unit: "%", Digits: 2},
	},
	Says:    []string{"two-ways-of-counting", "dry-until-it-stays"},
	MayHurt: []string{dryPowder},
	Next: []form.Next{
		{Calculator: "slip-batch", Carry: []form.Carry{{Into: "clay-water", From: "water-of-damp"}}, If: "water-of-damp"},
		{Calculator: "clay-colour", Carry: []form.Carry{{Into: "clay", From: "clay"}, {Into: "clay-water", From: "water-of-damp"}}, If: "water-of-damp"},
	},
	Work: workDrying,
	Draw: drawDrying,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		clayWater.Example = form.Example{
			Given: []form.Setting{{Name: "damp", Text: "104.6 g"}, {Name: "dry", Text: "81.6 g"}, {Name: "clay", Text: "3 kg"}, {Name: "to", Text: "25"}},
		}
		clayWater.Table = form.Table{
			Down: "clay-water", Values: []string{"1 %", "5 %", "10 %", "15 %", "18 %"},
			Across: "to", AcrossValues: []string{"20 %", "22 %", "24 %", "26 %", "30 %"},
			Show: []string{"water-to-add"},
			Also: []form.Setting{{Name: "clay", Text: "1 kg"}, {Name: "damp", Text: ""}, {Name: "dry", Text: ""}},
		}
		clayWater.Formula = dryingFormulas
	}
}

func workDrying(e *form.Evaluation) {
	if e.Has("earlier") {
		e.Unused("clay", "pot-only")
		e.Unused("to", "pot-only")
		dryEnough(e)
		return
	}
	e.Unused("hours", "lump-only")
	percent, ok := waterOf(e)
	if !ok {
		return
	}
	switch {
	case e.Has("to") && !e.Has("clay"):
		e.Missing("clay")
	case e.Has("clay"):
		lot(e, percent)
	default:
		e.Headline("holds")
	}
}

// waterOf says what water (% of the damp weight) the clay holds, as weighed or
// as given.
func waterOf(e *form.Evaluation) (percent float64, ok bool) {
	if e.Has("clay-water") {
		e.Unused("mass-resolution", "not-weighed")
		doubtShare(e, "clay-water")
		percent = e.Value("clay-water")
		e.Set("water-of-damp", percent)
		e.Set("water-of-dry", 100*percent/(100-percent))
		return percent, true
	}
	damp, dry := e.Value("damp"), e.Value("dry")
	if dry > damp {
		e.Refuse("dry", "heavier-dry")
		return 0, false
	}
	percent = slip.WaterOfDamp(damp, dry)
	if percent > 90 {
		e.Refuse("dry", "nearly-water")
		return 0, false
	}
	u := slip.WaterDoubt(damp, dry, resolution(e, damp, "damp", "dry"))
	e.SetWithin("water-of-damp", percent, u)
	// As the one moves so does the other, by the square of damp over dry.
	e.SetWithin("water-of-dry", slip.WaterOfDry(damp, dry), float64(u*(damp/dry)*(damp/dry)))
	return percent, true
}

// lot says what a whole lot of that clay holds, and how to bring it to another
// water content.
func lot(e *form.Evaluation, percent float64) {
	clay := e.Value("clay")
	dry := slip.Dried(clay, percent)
	e.Set("dry-clay", dry)
	e.Set("water-held", clay-dry)
	if !e.Has("to") {
		e.Headline("lot-holds")
		return
	}
	doubtShare(e, "to")
	water := slip.Rewet(clay, percent, e.Value("to"))
	if e.Text(e.Value("to"), 3) == e.Text(percent, 3) {
		water = 0
	}
	e.Set("new-mass", clay+water)
	switch {
	case water == 0:
		e.Set("water-to-add", 0)
		e.Headline("as-it-is")
	case water > 0:
		e.Set("water-to-add", water)
		e.Headline("add")
		e.Warn(dryPowder)
		e.Note("slake-dry")
	default:
		e.Set("water-to-lose", -water)
		e.Headline("lose")
	}
}

// boneDry is the loss a day (% of the weight) below which a pot counts as bone
// dry: common practice, as laboratories call a weight constant that changes by
// less than a tenth of a percent (read: 0.1 and 0.2 %).
const boneDry = 0.1

// dryEnough judges by two weighings whether a pot may go into the kiln.
func dryEnough(e *form.Evaluation) {
	earlier, later, hours := e.Value("earlier"), e.Value("later"), e.Value("hours")
	loss := slip.LossADay(earlier, later, hours)
	switch {
	case later > earlier && slip.LossADay(earlier, later, 24) < -1:
		e.Refuse("later", "gained")
		return
	case later < earlier/2:
		e.Refuse("later", "lost-half")
		return
	}
	u := 100 * resolution(e, earlier, "earlier", "later") / math.Sqrt(6) / earlier * 24 / hours
	e.SetWithin("loss-a-day", loss, u)
	most := form.WithUnit(e.Text(boneDry, 1), "%")
	switch {
	case loss >= boneDry+float64(2*u):
		e.Headline("not-yet", "most", most)
	case later > earlier && loss+float64(2*u) < boneDry:
		e.Headline("took-up")
	case loss+float64(2*u) < boneDry:
		e.Headline("ready", "most", most)
	default:
		e.Headline("cannot-tell", "most", most)
	}
	e.Note("thickest-part")
}

// drawDrying shows the clay by weight, its dry part and its water; or the pot
// then and now.
func drawDrying(e *form.Evaluation) string {
	if e.Has("earlier") {
		d := sheet(e, "pot")
		most := math.Max(e.Value("earlier"), e.Value("later"))
		for i, name := range [...]string{"earlier", "later"} {
			y := 50 + float64(float64(i)*120)
			d.Box("clay", 30, y, 400*e.Value(name)/most, 80)
			d.Box("ink", 30, y, 400*e.Value(name)/most, 80)
			d.Aside(e.Shown(name), 470, y+50)
		}
		return d.String()
	}
	water, _ := e.Result("water-of-damp")
	d := sheet(e, "alternative")
	drawShare(d, water.Value, e.Say(drawing(e, "dry")), e.Say(drawing(e, "water")))
	return d.String()
}

func dryingFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Letter("w"), Row(Hundred, Times, Fraction(Row(Letter("M"), Minus, Letter("D")), Letter("M")))),
			Where: []Symbol{
				{Letter: "w", Means: say("w")},
				{Letter: "M", Means: say("M")},
				{Letter: "D", Means: say("D")},
			},
		},
		{
			Math:  Equal(Letter("m"), Row(Hundred, Times, Fraction(Row(Letter("M"), Minus, Letter("D")), Letter("D")))),
			Where: []Symbol{{Letter: "m", Means: say("m")}},
		},
		{
			Math: Equal(Words(say("water-to-add")), Row(Letter("C"), Times, Bracket(Fraction(Row(Hundred, Minus, Letter("w")), Row(Hundred, Minus, Sub(Letter("w"), Number("2")))), Minus, One))),
			Where: []Symbol{
				{Letter: "C", Means: say("C")},
				{Letter: "w_2", Means: say("w_2")},
			},
		},
		{
			Math: Equal(Words(say("loss-a-day")), Row(Hundred, Times, Fraction(Row(Sub(Letter("M"), One), Minus, Sub(Letter("M"), Number("2"))), Sub(Letter("M"), One)), Times, Fraction(Number("24"), Letter("h")))),
			Where: []Symbol{
				{Letter: "M_1, M_2", Means: say("M_1-M_2")},
				{Letter: "h", Means: say("h")},
			},
		},
	}
}
