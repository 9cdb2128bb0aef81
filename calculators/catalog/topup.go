package catalog

import (
	"math"

	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/slip"
)

var bucketTopUp = &form.Calculator{
	Name: "bucket-top-up",
	Inputs: []form.Input{
		{Name: "volume", Kind: quantity.Volume, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "specific-gravity", Kind: quantity.Gravity, Needed: true, First: true, Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		{Name: "gravity-mixed", Kind: quantity.Gravity, First: true, Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		{Name: "to", Kind: quantity.Gravity, First: true, Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		{Name: "volume-wanted", Kind: quantity.Volume, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "stain-now", Kind: quantity.Percent, Default: "0", First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
		{Name: "stain", Kind: quantity.Percent, First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
		solidsDensity, stainDensity,
	},
	Outputs: []form.Output{
		{Name: "water-gone", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "dry-left", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "stain-left", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "water-to-add", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "base-to-add", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "stain-to-add", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "water-to-remove", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "water-with-slip", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "slip-to-add", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "stain-with-slip", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "new-volume", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "gravity-then", Unit: "1", Digits: 4, Places: 2},
		{Name: "stain-then", Unit: "%", Digits: 3},
	},
	Says:    []string{"scrape-rim-back", "water-before-powder", "measure-after"},
	MayHurt: []string{dryPowder, stainPowder, wetColour, rinseWater},
	Next: []form.Next{
		{Calculator: "slip-density", Carry: []form.Carry{{Into: "solids-density", From: "solids-density"}}},
		{Calculator: "slip-batch", If: "slip-to-add", Carry: []form.Carry{{Into: "volume", From: "slip-to-add"}, {Into: "specific-gravity", From: "gravity-then"}, {Into: "stain", From: "stain-then"}, {Into: "solids-density", From: "solids-density"}}},
		{Calculator: "slip-adjust", Carry: []form.Carry{{Into: "volume", From: "new-volume"}, {Into: "to", From: "gravity-then"}, {Into: "stain", From: "stain-then"}, {Into: "solids-density", From: "solids-density"}}},
	},
	Work: workTopUp,
	Draw: drawTopUp,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		bucketTopUp.Example = form.Example{
			Given: []form.Setting{{Name: "volume", Text: "3 L"}, {Name: "specific-gravity", Text: "1.55"}, {Name: "gravity-mixed", Text: "1.45"}, {Name: "volume-wanted", Text: "6 L"}, {Name: "stain-now", Text: "8"}},
		}
		bucketTopUp.Table = form.Table{
			Down: "specific-gravity", Values: []string{"1.40", "1.45", "1.50", "1.55", "1.60", "1.65", "1.70"},
			Show: []string{"water-gone", "dry-left", "water-to-add", "base-to-add", "slip-to-add"},
			Also: []form.Setting{{Name: "volume", Text: "1 L"}, {Name: "volume-wanted", Text: "2 L"}, {Name: "stain-now", Text: "0"}},
		}
		bucketTopUp.Formula = topUpFormulas
	}
}

func workTopUp(e *form.Evaluation) {
	b := slip.Bucket{Volume: e.Value("volume"), Gravity: e.Value("specific-gravity"), Solids: e.Value("solids-density"), Now: e.Value("stain-now"), Stain: e.Value("stain-density")}
	if b.Gravity > b.Solid() {
		tooHeavy(e, b.Gravity, "specific-gravity", "heavier-than-powder", "powder", form.WithUnit(e.Text(b.Solid(), 4), "g/mL"))
	}
	asItWas(e)
	wanted := slip.Mixed(b.Solids, e.Value("stain"), b.Stain)
	if to := e.Value("to"); to >= wanted {
		tooHeavy(e, to, "to", "no-slip", "mix", form.WithUnit(e.Text(wanted, 4), "g/mL"))
	}
	if e.Refused() {
		return
	}
	left := b.Batch()
	if mixed := e.Value("gravity-mixed"); mixed > 0 && mixed <= b.Gravity {
		e.Set("water-gone", slip.Water(b.Volume, b.Gravity, mixed))
	} else if mixed > 0 {
		e.Note("thinner-than-mixed")
	}
	e.Set("dry-left", left.Base)
	if left.Stain > 0 {
		e.Set("stain-left", left.Stain)
		e.Warn(wetColour)
	}
	topUp(e, b)
	judgeGravity(e, e.Value("to"))
	if e.Value("stain") > 0 {
		e.Judge(form.OfStain, e.Value("stain"), e.Say("judge.of-stain", "stain", e.Shown("stain")))
	}
}

// asItWas lets what is wanted be as it was mixed, where nobody says otherwise.
func asItWas(e *form.Evaluation) {
	switch {
	case e.Has("to"):
	case e.Has("gravity-mixed"):
		e.Stand("to", e.Value("gravity-mixed"))
	default:
		e.Refuse("to", "what-number")
	}
	if !e.Has("stain") {
		e.Stand("stain", e.Value("stain-now"))
	}
}

// topUp says what to add: what brings the bucket to its number, and fresh slip
// for the rest of what is wanted, from powder or ready.
func topUp(e *form.Evaluation, b slip.Bucket) {
	to, stain := e.Value("to"), e.Value("stain")
	first := b.Brought(to, stain)
	rest, all := e.Value("volume-wanted")-first.Volume, e.Value("volume-wanted")
	if rest <= 0 {
		rest, all = 0, first.Volume
	}
	fresh := slip.Make(rest, to, b.Solids, stain, b.Stain)
	if tooColoured(e, b, first.Stain+fresh.Stain) {
		return
	}
	setAdded(e, slip.Batch{Base: fresh.Base, Stain: first.Stain + fresh.Stain, Water: first.Water + fresh.Water})
	if rest > 0 && first.Water >= 0 && first.Stain >= 0 {
		e.Set("water-with-slip", first.Water)
		e.Set("slip-to-add", rest)
		if first.Stain > 0 {
			e.Set("stain-with-slip", first.Stain)
		}
	}
	e.Set("new-volume", all)
	e.Set("gravity-then", to)
	if stain > 0 {
		e.Set("stain-then", stain)
	}
	if rest == 0 && e.Has("volume-wanted") {
		e.Note("makes-more")
	}
	sayTopUp(e)
}

// hair is what counts as nothing, for the computer's fractions.
const hair = 1e-6

// tooColoured refuses a bucket with more stain in it than fresh slip without any
// can thin to what is wanted, and says from which volume on it could.
func tooColoured(e *form.Evaluation, b slip.Bucket, add float64) bool {
	wanted := e.Value("stain")
	switch {
	case add >= -hair:
		return false
	case wanted == 0:
		e.Refuse("stain", "stain-stays")
		return true
	}
	solids := slip.Mixed(b.Solids, wanted, b.Stain)
	dry := b.Batch().Stain * (100 + wanted) / wanted
	room := (dry + slip.Wetted(dry, e.Value("to"), solids)) / e.Value("to")
	least := e.Amount(room, "mL", 3, 0, form.Bucket)
	if e.Has("volume-wanted") {
		e.Refuse("stain", "more-stain", "least", least)
	} else {
		e.Refuse("stain", "more-stain-now", "least", least)
	}
	return true
}

// setAdded sets what goes in, or what water has to come out, and warns of it.
func setAdded(e *form.Evaluation, add slip.Batch) {
	e.Set("water-to-add", math.Max(0, add.Water))
	e.Set("base-to-add", add.Base)
	if e.Value("stain") > 0 {
		e.Set("stain-to-add", math.Max(0, add.Stain))
	}
	if add.Base > 0 {
		e.Warn(dryPowder)
	}
	if add.Stain > hair {
		e.Warn(stainPowder)
		if add.Stain < 1 {
			e.Note("doubt.little-stain")
		}
	}
	if add.Water < -hair {
		e.Set("water-to-remove", -add.Water)
		e.Note("take-off-clear")
		e.Warn(rinseWater)
	}
}

// sayTopUp says first what goes in, in its order.
func sayTopUp(e *form.Evaluation) {
	var things []string
	for _, thing := range [...]struct{ output, words string }{{"water-to-add", "of-water"}, {"base-to-add", "of-base"}, {"stain-to-add", "of-stain"}} {
		if e.Weighable(thing.output) {
			things = append(things, e.Say(thing.words))
		}
	}
	switch {
	case len(things) > 1:
		e.Headline("add-in-order", "things", e.Listing(things))
	case len(things) > 0:
		e.Headline("add", "thing", things[0])
	case !e.Weighable("water-to-remove"):
		e.Headline("right")
	}
	if e.Weighable("water-to-remove") {
		e.Answer.Headline = form.Join(e.Say("take-off"), e.Answer.Headline)
	}
	if e.Weighable("slip-to-add") {
		e.Note("or-ready-slip")
	}
}

// drawTopUp shows the bucket now and then, to one scale: on the right what was
// added, on the left the clear water that has to come off.
func drawTopUp(e *form.Evaluation) string {
	value := func(name string) float64 {
		r, _ := e.Result(name)
		return r.Value
	}
	kept := e.Value("volume") - value("water-to-remove")
	scale := (sketch.JarFloor - sketch.JarTop) / math.Max(e.Value("volume"), value("new-volume"))
	d := sheet(e, "alternative")
	d.Pair(float64(kept*scale), brief(e, "holds"), e.Shown("specific-gravity"), e.Gravity(e.Value("to")),
		sketch.Layer{Class: "clay", Height: float64(value("base-to-add") / e.Value("solids-density") * scale)},
		sketch.Layer{Class: "colour", Height: float64(value("stain-to-add") / e.Value("stain-density") * scale)},
		sketch.Layer{Class: "water", Height: float64(value("water-to-add") * scale)})
	if off := float64(value("water-to-remove") * scale); off > 0 {
		d.Box("water", 30, sketch.JarFloor-float64(kept*scale)-off, sketch.JarWidth, off)
	}
	return d.String()
}

func topUpFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Words(say("gone")), Row(Letter("V"), Times, Fraction(Row(Letter("d"), Minus, Sub(Letter("d"), Number("0"))), Row(Sub(Letter("d"), Number("0")), Minus, One)))),
			Where: []Symbol{
				{Letter: "V, d", Means: say("V-d")},
				{Letter: "d_0", Means: say("d_0")},
			},
		},
		{
			Math: Equal(Letter("D"), Fraction(Row(Letter("V"), Times, Bracket(Letter("d"), Minus, One)),
				Row(One, Minus, Fraction(One, Letter("s")), Plus, Fraction(Sub(Letter("p"), Number("0")), Hundred), Times, Bracket(One, Minus, Fraction(One, Sub(Letter("s"), Letter("c"))))))),
			Where: []Symbol{
				{Letter: "D", Means: say("D")},
				{Letter: "s, s_c", Means: say("s-s_c")},
				{Letter: "p, p_0", Means: say("p-p_0")},
			},
		},
		{
			Math: Equal(Words(say("stain-first")), Row(Letter("D"), Times, Fraction(Row(Letter("p"), Minus, Sub(Letter("p"), Number("0"))), Hundred))),
		},
		{
			Math: Equal(Words(say("fresh")), Row(Letter("N"), Minus, Letter("V"), Minus, Words(say("added")))),
			Where: []Symbol{
				{Letter: "N", Means: say("N")},
			},
		},
	}
}
