package catalog

import (
	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/slip"
)

var bucketMix = &form.Calculator{
	Name: "bucket-mix",
	Inputs: []form.Input{
		{Name: "first-gravity", Kind: quantity.Gravity, Needed: true, First: true, Low: form.Limit{End: form.From, Value: 1, Why: "low"}},
		{Name: "first-volume", Kind: quantity.Volume, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "second-gravity", Kind: quantity.Gravity, Needed: true, First: true, Low: form.Limit{End: form.From, Value: 1, Why: "low"}},
		{Name: "second-volume", Kind: quantity.Volume, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "to", Kind: quantity.Gravity, First: true, Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		{Name: "volume", Kind: quantity.Volume, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "first-stain", Kind: quantity.Percent, Default: "0", Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
		{Name: "second-stain", Kind: quantity.Percent, Default: "0", Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
		solidsDensity, stainDensity,
	},
	Outputs: []form.Output{
		{Name: "specific-gravity", Unit: "1", Digits: 4, Places: 2},
		{Name: "first-pour", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "second-pour", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "new-volume", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "first-share", Unit: "%", Digits: 3},
		{Name: "dry-base", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "stain", Unit: "%", Digits: 3},
	},
	Says:    []string{"stir-both-first", "cup-before-bucket"},
	MayHurt: []string{wetColour, rinseWater},
	Next: []form.Next{
		{Calculator: "slip-density", Carry: []form.Carry{{Into: "solids-density", From: "solids-density"}}},
		{Calculator: "slip-adjust", Carry: []form.Carry{{Into: "volume", From: "new-volume"}, {Into: "from", From: "specific-gravity"}, {Into: "solids-density", From: "solids-density"}}},
		{Calculator: "slip-colour", Carry: []form.Carry{{Into: "volume", From: "new-volume"}, {Into: "specific-gravity", From: "specific-gravity"}, {Into: "stain-now", From: "stain"}, {Into: "solids-density", From: "solids-density"}}},
	},
	Work: workBuckets,
	Draw: drawBuckets,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		bucketMix.Example = form.Example{
			Given: []form.Setting{{Name: "first-gravity", Text: "1.60"}, {Name: "first-volume", Text: "2 L"}, {Name: "second-gravity", Text: "1.25"}, {Name: "to", Text: "1.45"}, {Name: "first-stain", Text: "8"}},
		}
		bucketMix.Table = form.Table{
			Down: "first-gravity", Values: []string{"1.50", "1.55", "1.60", "1.65", "1.70", "1.75"},
			Across: "second-gravity", AcrossValues: []string{"1.20", "1.25", "1.30", "1.35", "1.40"},
			Show: []string{"second-pour"},
			Also: []form.Setting{{Name: "first-volume", Text: "1 L"}, {Name: "first-stain", Text: "0"}},
		}
		bucketMix.Formula = bucketFormulas
	}
}

func workBuckets(e *form.Evaluation) {
	first, second := bucketOf(e, "first-gravity", "first-stain"), bucketOf(e, "second-gravity", "second-stain")
	if !e.Refused() && first.Gravity == 1 && second.Gravity == 1 {
		e.Refuse("second-gravity", "both-water")
	}
	if e.Has("to") {
		share := shareOf(e, first.Gravity, second.Gravity)
		if e.Refused() {
			return
		}
		all := mixWanted(e, share)
		first.Volume, second.Volume = float64(all*share), float64(all*(1-share))
	} else {
		e.Unused("volume", "volume-unused")
		need(e, "first-volume")
		need(e, "second-volume")
		first.Volume, second.Volume = e.Value("first-volume"), e.Value("second-volume")
	}
	if !e.Refused() {
		pourBoth(e, first, second)
	}
}

// bucketOf returns a bucket as it is, or refuses it where it is heavier than
// its powder. Its volume is not known yet.
func bucketOf(e *form.Evaluation, gravity, stain string) slip.Bucket {
	b := slip.Bucket{Gravity: e.Value(gravity), Solids: e.Value("solids-density"), Now: e.Value(stain), Stain: e.Value("stain-density")}
	if b.Gravity > b.Solid() {
		tooHeavy(e, b.Gravity, gravity, "heavier-than-powder", "gravity", e.Gravity(b.Gravity), "powder", form.WithUnit(e.Text(b.Solid(), 4), "g/mL"))
	}
	return b
}

// shareOf returns the part by volume that the first bucket has of the mix
// wanted, or refuses a number that does not lie between the two.
func shareOf(e *form.Evaluation, first, second float64) float64 {
	to := e.Value("to")
	switch {
	case first == second && to == first:
		e.Refuse("to", "alike")
	case to > first && to > second:
		e.Refuse("to", "too-thick")
	case to < first && to < second:
		e.Refuse("to", "too-thin")
	}
	return slip.ShareFor(to, first, second)
}

// mixWanted returns how much of the mix (mL) there is to be: what was asked for,
// or as much as the buckets allow.
func mixWanted(e *form.Evaluation, share float64) float64 {
	allows := 0.0
	for _, bucket := range [...]struct {
		name  string
		share float64
	}{{"first-volume", share}, {"second-volume", 1 - share}} {
		if most := e.Value(bucket.name) / bucket.share; e.Has(bucket.name) && bucket.share > 0 && (allows == 0 || most < allows) {
			allows = most
		}
	}
	wanted := e.Value("volume")
	switch {
	case allows == 0 && wanted == 0:
		e.Refuse("volume", "how-much")
	case wanted == 0:
		return allows
	case allows > 0 && lacks(e, wanted, allows):
		e.Note("not-so-much", "most", e.Amount(allows, "mL", 4, 0, form.Poured))
	}
	return wanted
}

// pourBoth answers for two buckets of which so much goes into one.
func pourBoth(e *form.Evaluation, first, second slip.Bucket) {
	a, b := first.Batch(), second.Batch()
	gravity := slip.Joined(first.Volume, first.Gravity, second.Volume, second.Gravity)
	if e.Has("to") {
		gravity = e.Value("to") // exactly, whatever the sum was rounded to
	}
	all := first.Volume + second.Volume
	e.Set("specific-gravity", gravity)
	e.Set("first-pour", first.Volume)
	e.Set("second-pour", second.Volume)
	e.Set("new-volume", all)
	e.Set("first-share", 100*first.Volume/all)
	e.Set("dry-base", a.Base+b.Base)
	if a.Stain+b.Stain > 0 {
		e.Set("stain", 100*(a.Stain+b.Stain)/(a.Base+b.Base))
		e.Warn(wetColour, rinseWater)
	}
	sayBuckets(e, gravity)
}

func sayBuckets(e *form.Evaluation, gravity float64) {
	switch {
	case !e.Has("to"):
		e.Headline("comes-to")
	case !e.Weighable("second-pour"):
		e.Headline("first-alone")
	case !e.Weighable("first-pour"):
		e.Headline("second-alone")
	default:
		e.Headline("pour")
	}
	judgeGravity(e, gravity)
	if e.Value("first-stain") != e.Value("second-stain") {
		e.Note("stain-shares")
	}
	if stain, coloured := e.Result("stain"); coloured {
		e.Judge(form.OfStain, stain.Value, e.Say("judge.of-stain", "stain", e.Shown("stain")))
	}
}

// drawBuckets shows the two pours and the bucket that they fill, to one scale.
func drawBuckets(e *form.Evaluation) string {
	first, _ := e.Result("first-pour")
	second, _ := e.Result("second-pour")
	scale := (sketch.JarFloor - sketch.JarTop) / (first.Value + second.Value)
	a, b := sketch.Layer{Class: "clay", Height: float64(first.Value * scale)}, sketch.Layer{Class: "slip", Height: float64(second.Value * scale)}
	d := sheet(e, "alternative")
	for i, jar := range [...][]sketch.Layer{{a}, {b}, {a, b}} {
		d.Jar(30+float64(215*float64(i)), sketch.JarWidth, sketch.JarTop-20, jar...)
	}
	d.Words("+", 212, 170, "middle")
	d.Words("=", 427, 170, "middle")
	d.Words(e.Gravity(e.Value("first-gravity")), 105, sketch.JarFloor+32, "middle")
	d.Words(e.Gravity(e.Value("second-gravity")), 320, sketch.JarFloor+32, "middle")
	d.Words(e.Shown("specific-gravity"), 535, sketch.JarFloor+32, "middle")
	return d.String()
}

func bucketFormulas(say func(string) string) []Formula {
	a, b := Letter("A"), Letter("B")
	return []Formula{
		{
			Math: Equal(Letter("d"), Fraction(Row(Sub(Letter("V"), a), Times, Sub(Letter("d"), a), Plus, Sub(Letter("V"), b), Times, Sub(Letter("d"), b)), Row(Sub(Letter("V"), a), Plus, Sub(Letter("V"), b)))),
			Where: []Symbol{
				{Letter: "d", Means: say("d")},
				{Letter: "V_A, d_A", Means: say("V_A-d_A")},
			},
		},
		{Math: Equal(Fraction(Sub(Letter("V"), a), Sub(Letter("V"), b)), Fraction(Row(Letter("d"), Minus, Sub(Letter("d"), b)), Row(Sub(Letter("d"), a), Minus, Letter("d"))))},
		{
			Math: Equal(Words(say("stain")), Fraction(Row(Sub(Letter("D"), a), Times, Sub(Letter("p"), a), Plus, Sub(Letter("D"), b), Times, Sub(Letter("p"), b)), Row(Sub(Letter("D"), a), Plus, Sub(Letter("D"), b)))),
			Where: []Symbol{
				{Letter: "D_A, p_A", Means: say("D_A-p_A")},
			},
		},
	}
}
