package catalog

import (
	"math"

	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/slip"
)

var slipCoverage = &form.Calculator{
	Name: "coverage",
	Inputs: []form.Input{
		{Name: "width", Kind: quantity.Length, Needed: true, Group: "surface", Side: "sizes", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 2000}},
		{Name: "height", Kind: quantity.Length, Needed: true, Group: "surface", Side: "sizes", First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 2000}},
		{Name: "area", Kind: quantity.Area, Needed: true, Group: "surface", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "foot-width", Kind: quantity.Length, First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 2000}},
		{Name: "sides", Kind: quantity.Number, Default: "outside", First: true,
			Choices: []form.Choice{{ID: "outside"}, {ID: "outside-and-foot"}, {ID: "inside"}, {ID: "both"}}},
		{Name: "coats", Kind: quantity.Number, Default: "1", First: true, Whole: true, Low: form.Limit{End: form.From, Value: 1}, High: form.Limit{End: form.UpTo, Value: 20}},
		{Name: "thickness", Kind: quantity.Length, Default: "0.5", Group: "coat", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 10}},
		{Name: "taken", Kind: quantity.Volume, Group: "coat", Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "before", Kind: quantity.Mass, Group: "coat", Side: "weighed", Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "after", Kind: quantity.Mass, Group: "coat", Side: "weighed", Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "weighed", Kind: quantity.Number, Default: "wet", Choices: []form.Choice{{ID: "wet"}, {ID: "dry"}}},
		{Name: "pots", Kind: quantity.Number, Default: "1", First: true, Whole: true, Low: form.Limit{End: form.From, Value: 1}, High: form.Limit{End: form.UpTo, Value: 1000}},
		forSpare,
		{Name: "specific-gravity", Kind: quantity.Gravity, First: true, Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		solidsDensity,
		scaleStep,
	},
	Outputs: []form.Output{
		{Name: "each", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "volume", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "pots-per-litre", Unit: "1", Digits: 3},
		{Name: "area", Unit: "cm²", Digits: 3},
		{Name: "coat", Unit: "mm", Digits: 2},
		{Name: "dry-coat", Unit: "mm", Digits: 2},
	},
	Says:    []string{"counts-the-pot", "dip-needs-full", "dry-without-air"},
	Hazards: []string{wetColour},
	Next: []form.Next{
		{Calculator: "slip-batch", Carry: []form.Carry{{Into: "volume", From: "volume"}, {Into: "specific-gravity", From: "specific-gravity"}, {Into: "solids-density", From: "solids-density"}}},
		{Calculator: "slip-density", Carry: []form.Carry{{Into: "solids-density", From: "solids-density"}}},
	},
	Work: workCoverage,
	Draw: drawCoverage,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		slipCoverage.Example = form.Example{
			Given: []form.Setting{{Name: "width", Text: "80 mm"}, {Name: "height", Text: "100 mm"}, {Name: "coats", Text: "2"}, {Name: "thickness", Text: "0.25 mm"}, {Name: "pots", Text: "20"}, {Name: "spare", Text: "33"}, {Name: "specific-gravity", Text: "1.45"}},
		}
		slipCoverage.Table = form.Table{
			Down: "width", Values: []string{"60 mm", "80 mm", "100 mm", "120 mm", "150 mm", "200 mm"},
			Across: "height", AcrossValues: []string{"60 mm", "80 mm", "100 mm", "120 mm", "150 mm", "200 mm"},
			Show: []string{"each"},
			Also: []form.Setting{{Name: "coats", Text: "1"}, {Name: "pots", Text: "1"}, {Name: "spare", Text: "0"}},
		}
		slipCoverage.Formula = coverageFormulas
	}
}

func workCoverage(e *form.Evaluation) {
	surface := surfaceOf(e)
	if !e.Has("before") {
		e.Unused("weighed", "no-weights")
	}
	thickness, u := coatOf(e, surface)
	if e.Refused() {
		return
	}
	each := float64(slip.CoatVolume(surface, thickness) * e.Value("coats"))
	e.Set("each", each)
	e.Set("volume", float64(each*e.Value("pots")*(1+e.Value("spare")/100)))
	e.Set("pots-per-litre", 1000/each)
	e.Set("area", surface)
	e.SetWithin("coat", thickness, u)
	if u == 0 {
		e.Show("coat", form.WithUnit(e.Text(thickness, 2), "mm"))
	}
	if e.Has("specific-gravity") {
		dry := slip.CoatDry(float64(thickness*e.Value("coats")), e.Value("specific-gravity"), e.Value("solids-density"))
		e.Set("dry-coat", dry)
		e.Show("dry-coat", form.WithUnit(e.Text(dry, 2), "mm"))
	}
	sayCoverage(e, thickness)
}

// surfaceOf returns the area (cm²) of one pot that gets slip: as given, or of
// its sizes. A wall counts as having no thickness, and so a pot as large inside
// as outside.
func surfaceOf(e *form.Evaluation) float64 {
	if e.Has("area") {
		e.Unused("foot-width", "area-given")
		e.Unused("sides", "area-given")
		return e.Value("area")
	}
	foot := e.Value("width")
	if e.Has("foot-width") {
		foot = e.Value("foot-width")
	}
	doubtSize(e, "width")
	wall, floor := slip.Wall(e.Value("width"), foot, e.Value("height")), slip.Disc(foot)
	area := wall
	switch e.Word("sides") {
	case "outside-and-foot", "inside":
		area = wall + floor
	case "both":
		area = float64(2*wall) + floor
	}
	if area == 0 {
		e.Refuse("height", "no-surface")
	}
	return area
}

// coatOf returns how thick (mm) one wet coat is on an area (cm²): as given, or
// by the slip that it took, or by what the pot gained; and its standard
// uncertainty where it was weighed.
func coatOf(e *form.Evaluation, area float64) (thickness, u float64) {
	gravity, solids := e.Value("specific-gravity"), e.Value("solids-density")
	switch {
	case e.Has("specific-gravity") && gravity > solids:
		tooHeavy(e, gravity, "specific-gravity", "heavier-than-powder")
	case e.Has("taken"):
		return slip.Coat(area, e.Value("taken")), 0
	case !e.Has("before") && e.Typed("thickness"):
		return e.Value("thickness"), 0
	case !e.Has("before"): // half a millimetre in all, in however many coats
		return e.Value("thickness") / e.Value("coats"), 0
	case !e.Has("specific-gravity"):
		e.Refuse("specific-gravity", "weights-need-number")
	case e.Value("after") <= e.Value("before"):
		e.Refuse("after", "no-gain")
	default:
		// What a mL of the coat adds to the weight: all of it, or its powder.
		perML := gravity
		if e.Word("weighed") == "dry" {
			perML = slip.DryAt(1, gravity, solids)
		}
		gain := e.Value("after") - e.Value("before")
		thickness = slip.Coat(area, gain/perML)
		return thickness, thickness * resolution(e, e.Value("after"), "before", "after") / math.Sqrt(6) / gain
	}
	return 0, 0
}

func sayCoverage(e *form.Evaluation, thickness float64) {
	switch {
	case e.Has("before"):
		e.Headline("coat-is")
	case !e.Weighable("each"):
		e.Headline("too-little")
	case e.Value("pots") == 1 && e.Value("spare") == 0:
		e.Headline("for-one-exactly")
	default:
		e.Headline("have-ready", "pots", e.Count("pots", int(e.Value("pots"))))
	}
	if e.Word("weighed") == "dry" {
		e.Note("dry-gain")
	}
	if e.Typed("thickness") || !e.Has("thickness") {
		all := float64(thickness * e.Value("coats"))
		e.Judge(form.OfCoat, all, e.Say("whole-coat", "coat", form.WithUnit(e.Text(all, 2), "mm")))
	} else {
		e.Note("half-millimetre")
	}
	if e.Has("specific-gravity") {
		judgeGravity(e, e.Value("specific-gravity"))
	}
}

// drawCoverage shows the pot from its side, to scale, or a square as large as
// the area that was given.
func drawCoverage(e *form.Evaluation) string {
	top, foot, height := e.Value("width"), e.Value("foot-width"), e.Value("height")
	d := sheet(e, "alternative")
	if e.Has("area") {
		d.Box("slip", 40, 40, 240, 240)
		d.Box("ink", 40, 40, 240, 240)
	} else {
		if !e.Has("foot-width") {
			foot = top
		}
		scale := 240 / math.Max(height, math.Max(top, foot))
		left, right := float64(top*scale)/2, float64(foot*scale)/2
		for _, class := range [...]string{"slip", "ink"} {
			d.Path(class, "M", 160-left, 280-float64(height*scale), "L", 160-right, 280.0, "H", 160+right, "L", 160+left, 280-float64(height*scale), "Z")
		}
	}
	d.Aside(e.Say(drawing(e, "area")), 320, 110)
	d.Aside(brief(e, "each"), 320, 200)
	return d.String()
}

func coverageFormulas(say func(string) string) []Formula {
	two := Number("2")
	return []Formula{
		{
			Math: Equal(Letter("A"), Row(Letter("π"), Times, Bracket(Letter("R"), Plus, Letter("r")), Times, Root(Row(
				Power(Letter("h"), two), Plus, Power(Bracket(Letter("R"), Minus, Letter("r")), two))))),
			Where: []Symbol{
				{Letter: "A", Means: say("A")},
				{Letter: "R, r", Means: say("R-r")},
				{Letter: "h", Means: say("h")},
			},
		},
		{
			Math: Equal(Letter("V"), Row(Letter("A"), Times, Letter("t"), Times, Letter("n"))),
			Where: []Symbol{
				{Letter: "V", Means: say("V")},
				{Letter: "t", Means: say("t")},
				{Letter: "n", Means: say("n")},
			},
		},
		{
			Math: Equal(Letter("t"), Fraction(Letter("G"), Row(Letter("A"), Times, Letter("d")))),
			Where: []Symbol{
				{Letter: "G", Means: say("G")},
				{Letter: "d", Means: say("d")},
			},
		},
		{
			Math: Equal(Sub(Letter("t"), Letter("d")), Row(Letter("t"), Times, Fraction(Row(Letter("d"), Minus, One), Row(Letter("s"), Minus, One)))),
			Where: []Symbol{
				{Letter: "t_d", Means: say("t_d")},
				{Letter: "s", Means: say("s")},
			},
		},
	}
}
