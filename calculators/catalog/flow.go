package catalog

import (
	"math"

	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/slip"
)

var flowLog = &form.Calculator{
	Name: "flow-log",
	Inputs: []form.Input{
		{Name: "slip-seconds", Kind: quantity.Number, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 3600}},
		{Name: "water-seconds", Kind: quantity.Number, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 3600}},
		{Name: "rested-seconds", Kind: quantity.Number, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 3600}},
		{Name: "wanted-seconds", Kind: quantity.Number, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 3600}},
		{Name: "specific-gravity", Kind: quantity.Gravity, First: true, Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		{Name: "wanted-gravity", Kind: quantity.Gravity, First: true, Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		{Name: "volume", Kind: quantity.Volume, Group: "bucket", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "slip-mass", Kind: quantity.Mass, Group: "bucket", Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 2e7}},
		{Name: "dry-mass", Kind: quantity.Mass, Group: "bucket", Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 2e7}},
		{Name: "additive", Kind: quantity.Number, Default: "deflocculant", First: true, Choices: []form.Choice{{ID: "deflocculant"}, {ID: "flocculant"}}},
		{Name: "step", Kind: quantity.Percent, Default: "0.02", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: mostDose, Why: "high"}},
		{Name: "steps", Kind: quantity.Number, Default: "5", Whole: true, Low: form.Limit{End: form.From, Value: 1}, High: form.Limit{End: form.UpTo, Value: 50}},
		{Name: "strength", Kind: quantity.Percent, Default: "100", Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 100}},
		{Name: "time-tolerance", Kind: quantity.Number, Default: "0.5", Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 60}},
		solidsDensity,
	},
	Outputs: []form.Output{
		{Name: "flow-ratio", Unit: "1", Digits: 3},
		{Name: "gelling", Unit: "1", Digits: 3},
		{Name: "gravity-off", Unit: "1", Digits: 2},
		{Name: "dry-mass", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "step-mass", Unit: "g", Digits: 3, As: form.Weighed},
		{Name: "all-steps", Unit: "g", Digits: 3, As: form.Weighed},
	},
	Columns: []form.Column{
		{Name: "step", Unit: "1", Digits: 2},
		{Name: "percent", Unit: "%", Digits: 3},
		{Name: "weigh", Unit: "g", Digits: 3, As: form.Weighed},
		{Name: "total", Unit: "g", Digits: 3, As: form.Weighed},
	},
	Says:  []string{"same-cup", "number-is-not-flow", "one-step-at-a-time"},
	Cares: []string{"additives-sting"},
	Next: []form.Next{
		{Calculator: "slip-adjust", Carry: []form.Carry{{Into: "volume", From: "volume"}, {Into: "slip-mass", From: "slip-mass"}, {Into: "from", From: "specific-gravity"}, {Into: "to", From: "wanted-gravity"}, {Into: "solids-density", From: "solids-density"}}, If: "gravity-off"},
		{Calculator: "slip-density", Carry: []form.Carry{{Into: "solids-density", From: "solids-density"}}},
	},
	Work: workFlow,
	Draw: drawFlow,
}

// mostDose is how much of a deflocculant or a flocculant (% of the dry powder)
// is the end of what helps: common practice. Suppliers' pages name about 0.1 to
// 0.2 % as usual and 0.5 % as the most (read); beyond it a deflocculant
// thickens again.
const mostDose = 0.5

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		flowLog.Example = form.Example{
			Given: []form.Setting{{Name: "slip-seconds", Text: "62"}, {Name: "water-seconds", Text: "26"}, {Name: "rested-seconds", Text: "81"}, {Name: "wanted-seconds", Text: "45"}, {Name: "specific-gravity", Text: "1.45"}, {Name: "wanted-gravity", Text: "1.45"}, {Name: "volume", Text: "5 L"}, {Name: "step", Text: "0.02"}, {Name: "steps", Text: "5"}},
		}
		flowLog.Table = form.Table{
			Down: "specific-gravity", Values: []string{"1.30", "1.40", "1.45", "1.50", "1.60", "1.70", "1.80"},
			Show: []string{"dry-mass", "step-mass", "all-steps"},
			Also: []form.Setting{{Name: "volume", Text: "1 L"}, {Name: "wanted-gravity", Text: ""}, {Name: "step", Text: "0.1"}},
		}
		flowLog.Formula = flowFormulas
	}
}

func workFlow(e *form.Evaluation) {
	seconds, water, off := e.Value("slip-seconds"), e.Value("water-seconds"), e.Value("time-tolerance")
	if seconds < water {
		e.Refuse("water-seconds", "faster-than-water")
	}
	dry := dryInBucket(e)
	if e.Refused() {
		return
	}
	e.SetWithin("flow-ratio", slip.FlowRatio(seconds, water), slip.RatioDoubt(seconds, water, off))
	if e.Has("rested-seconds") {
		rested := e.Value("rested-seconds")
		e.SetWithin("gelling", slip.FlowRatio(rested, seconds), slip.RatioDoubt(rested, seconds, off))
		if rested < seconds {
			e.Note("settles")
		} else {
			e.Note("gels")
		}
	}
	if e.Has("specific-gravity") && e.Has("wanted-gravity") {
		if gap := e.Value("specific-gravity") - e.Value("wanted-gravity"); math.Abs(gap) > nearEnough {
			e.Set("gravity-off", gap)
		}
	}
	sayFlow(e)
	if dry > 0 {
		doses(e, dry)
	} else {
		for _, name := range [...]string{"step", "steps", "strength"} {
			e.Unused(name, "no-bucket")
		}
	}
}

// dryInBucket returns the dry powder (g) in the bucket, as given or of its
// volume or weight; 0 where nobody said how much there is.
func dryInBucket(e *form.Evaluation) float64 {
	gravity, solids, volume := e.Value("specific-gravity"), e.Value("solids-density"), e.Value("volume")
	switch {
	case e.Has("specific-gravity") && gravity > solids:
		tooHeavy(e, gravity, "specific-gravity", "heavier-than-powder")
		return 0
	case e.Has("dry-mass"):
		return e.Value("dry-mass")
	case !e.Has("volume") && !e.Has("slip-mass"):
		return 0
	case !e.Has("specific-gravity"):
		e.Refuse("specific-gravity", "bucket-needs-number")
		return 0
	case e.Has("slip-mass"):
		volume = e.Value("slip-mass") / gravity
	}
	return slip.DryAt(volume, gravity, solids)
}

// The seconds between which a flow cup tells something: ASTM D1200, 1.2 (read).
// ISO 2431 ends at 100 too.
const (
	quickest = 20
	slowest  = 100
)

// flowNear is how near to the seconds wanted a slip counts as there, as a share
// of them: our own rule.
const flowNear = 0.1

// sayFlow says first whether the slip runs as it should, and if not, whether
// that is a matter of water or of chemistry.
func sayFlow(e *form.Evaluation) {
	wanted := e.Value("wanted-seconds")
	off := e.Value("slip-seconds") - wanted
	_, numberOff := e.Result("gravity-off")
	known := e.Has("specific-gravity") && e.Has("wanted-gravity")
	switch {
	case numberOff:
		e.Headline("number-first")
	case !e.Has("wanted-seconds"):
		e.Headline("as-water")
	case math.Abs(off) <= float64(flowNear*wanted):
		e.Headline("right")
	case known && off > 0:
		e.Headline("too-slow")
	case known:
		e.Headline("too-quick")
	case off > 0:
		e.Headline("slow-unmeasured")
	default:
		e.Headline("quick-unmeasured")
	}
	judgeFlow(e, off, wanted)
}

// judgeFlow judges how the slip runs by the studio's numbers, whether the
// additive that was chosen brings it nearer, and whether the cup fits.
func judgeFlow(e *form.Evaluation, off, wanted float64) {
	seconds := e.Value("slip-seconds")
	ratio := slip.FlowRatio(seconds, e.Value("water-seconds"))
	e.Judge(form.OfFlow, ratio, e.Say("of-flow", "ratio", e.Text(ratio, 2)))
	if e.Has("wanted-seconds") && math.Abs(off) > float64(flowNear*wanted) {
		switch makesSlower := e.Word("additive") == "flocculant"; {
		case off > 0 && makesSlower:
			e.Judged("slower-still")
		case off < 0 && !makesSlower:
			e.Judged("quicker-still")
		}
	}
	if seconds < quickest || seconds > slowest {
		e.Judged("beyond-the-cup")
	}
}

// doses lists the steps in which the additive goes into a bucket that holds so
// much dry powder (g), as far as it helps.
func doses(e *form.Evaluation, dry float64) {
	step, strength := e.Value("step"), e.Value("strength")
	each := slip.Dose(dry, step, strength)
	n := 0
	for n < int(e.Value("steps")) && float64(step*float64(n+1)) <= mostDose+1e-9 {
		n++
		e.Row(float64(n), float64(step*float64(n)), each, float64(each*float64(n)))
	}
	e.Set("dry-mass", dry)
	e.Set("step-mass", each)
	e.Set("all-steps", float64(each*float64(n)))
	if n < int(e.Value("steps")) {
		e.Note("stops-at", "most", form.WithUnit(e.Text(mostDose, 1), "%"))
	}
	if !e.Weighable("step-mass") {
		e.Note("too-small")
	}
}

// drawFlow shows the times as bars, to one scale.
func drawFlow(e *form.Evaluation) string {
	d := sheet(e, "alternative")
	bars := [...]struct {
		class, name, words string
	}{{"water", "water-seconds", "water"}, {"slip", "slip-seconds", "stirred"}, {"clay", "rested-seconds", "rested"}}
	longest := math.Max(e.Value("slip-seconds"), e.Value("rested-seconds"))
	for i, bar := range bars {
		if !e.Has(bar.name) {
			continue
		}
		y := 30 + float64(float64(i)*96)
		length := 380 * e.Value(bar.name) / longest
		d.Box(bar.class, 30, y, length, 64)
		d.Box("ink", 30, y, length, 64)
		d.Aside(e.Say(drawing(e, bar.words)), sketch.Width-210, y+40)
	}
	return d.String()
}

func flowFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Letter("r"), Fraction(Letter("t"), Sub(Letter("t"), Letter("w")))),
			Where: []Symbol{
				{Letter: "r", Means: say("r")},
				{Letter: "t", Means: say("t")},
				{Letter: "t_w", Means: say("t_w")},
			},
		},
		{
			Math:  Equal(Words(say("gelling")), Fraction(Sub(Letter("t"), Letter("r")), Letter("t"))),
			Where: []Symbol{{Letter: "t_r", Means: say("t_r")}},
		},
		{
			Math: Equal(Words(say("one-step")), Row(Letter("D"), Times, Fraction(Letter("p"), Letter("c")))),
			Where: []Symbol{
				{Letter: "D", Means: say("D")},
				{Letter: "p", Means: say("p")},
				{Letter: "c", Means: say("c")},
			},
		},
	}
}
