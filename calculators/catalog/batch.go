package catalog

import (
	"math"
	"strconv"

	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/slip"
)

var slipBatch = &form.Calculator{
	Name: "slip-batch",
	Inputs: []form.Input{
		{Name: "volume", Kind: quantity.Volume, Needed: true, Group: "amount", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		forPeople, forEach, forSpare,
		{Name: "specific-gravity", Kind: quantity.Gravity, Needed: true, First: true,
			Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		{Name: "stain", Kind: quantity.Percent, Default: "0", First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
		{Name: "clay-water", Kind: quantity.Percent, Default: "0", First: true, Low: form.Limit{End: form.From},
			High: form.Limit{End: form.UpTo, Value: 90, Why: "high"}},
		{Name: "scale-limit", Kind: quantity.Mass, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		solidsDensity,
		stainDensity,
	},
	Outputs: []form.Output{
		{Name: "clay-to-weigh", Unit: "g", Digits: 5, As: form.Weighed},
		{Name: "stain-mass", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "water-to-add", Unit: "g", Digits: 5, As: form.Water},
		{Name: "slip-mass", Unit: "g", Digits: 5, As: form.Weighed},
		{Name: "dry-base", Unit: "g", Digits: 5, As: form.Weighed},
		{Name: "water", Unit: "g", Digits: 5, As: form.Water},
	},
	Columns: []form.Column{
		{Name: "load", Unit: "1", Digits: 3},
		{Name: "what", Text: true},
		{Name: "weigh", Unit: "g", Digits: 5, As: form.Weighed},
		{Name: "total", Unit: "g", Digits: 5, As: form.Weighed},
	},
	Says:    []string{"water-first-powder", "sieve-mesh-slip", "gram-water-ml"},
	Hazards: []string{dryPowder},
	MayHurt: []string{stainPowder},
	Next: []form.Next{
		{Calculator: "slip-density", Carry: []form.Carry{{Into: "solids-density", From: "solids-density"}}},
		{Calculator: "slip-adjust", Carry: []form.Carry{{Into: "slip-mass", From: "slip-mass"}, {Into: "to", From: "specific-gravity"}, {Into: "solids-density", From: "solids-density"}, {Into: "stain", From: "stain"}}},
	},
	WeighRows: true,
	Work:      workBatch,
	Draw:      drawBatch,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		slipBatch.Example = form.Example{
			Given: []form.Setting{{Name: "people", Text: "12"}, {Name: "each", Text: "150 mL"}, {Name: "spare", Text: "10"}, {Name: "specific-gravity", Text: "1.45"}, {Name: "stain", Text: "8"}, {Name: "clay-water", Text: "20"}, {Name: "scale-limit", Text: "1 kg"}},
		}
		slipBatch.Table = form.Table{
			Down: "specific-gravity", Values: []string{"1.30", "1.35", "1.40", "1.45", "1.50", "1.55", "1.60", "1.65", "1.70", "1.75"},
			Show: []string{"dry-base", "water", "slip-mass"},
			Also: []form.Setting{{Name: "people", Text: ""}, {Name: "each", Text: ""}, {Name: "spare", Text: ""}, {Name: "volume", Text: "1 L"}, {Name: "stain", Text: "0"}, {Name: "clay-water", Text: "0"}, {Name: "scale-limit", Text: ""}},
		}
		slipBatch.Formula = batchFormulas
	}
}

func workBatch(e *form.Evaluation) {
	doubtShare(e, "clay-water")
	gravity, solids, percent := e.Value("specific-gravity"), e.Value("solids-density"), e.Value("stain")
	if mix := slip.Mixed(solids, percent, e.Value("stain-density")); gravity >= mix {
		tooHeavy(e, gravity, "specific-gravity", "no-slip", "mix", form.WithUnit(e.Text(mix, 4), "g/mL"))
		return
	}
	volume := volumeWanted(e)
	batch := slip.Make(volume, gravity, solids, percent, e.Value("stain-density"))
	clay := slip.Damp(batch.Base, e.Value("clay-water"))
	if e.Value("clay-water") > batch.Wettest() {
		e.Refuse("clay-water", "clay-too-wet",
			"brought", form.WithUnit(e.Text(clay-batch.Base, 4), "g"), "room", form.WithUnit(e.Text(batch.Water, 4), "g"), "wettest", form.WithUnit(strconv.Itoa(int(batch.Wettest())), "%"))
		return
	}
	water := math.Max(0, batch.Water-(clay-batch.Base)) // where the clay brings all of it, rounding may leave a hair less
	e.Set("clay-to-weigh", clay)
	e.Set("stain-mass", batch.Stain)
	e.Set("water-to-add", water)
	e.Set("slip-mass", float64(volume*gravity))
	e.Set("dry-base", batch.Base)
	e.Set("water", batch.Water)
	loads(e, water, clay, batch.Stain)
	if e.Has("people") {
		sayPeople(e, volume)
	}
	sayBatch(e, gravity, batch.Stain)
}

// mostLoads bounds the rows of a mixing sheet.
const mostLoads = 60

// loads lists what to weigh in its order, each thing in equal loads that the
// scale bears.
func loads(e *form.Evaluation, water, clay, stain float64) {
	base := "load-base"
	if e.Value("clay-water") > 0 {
		base = "load-clay"
	}
	things := []struct {
		words string
		mass  float64
	}{{"load-water", water}, {base, clay}, {"load-stain", stain}}
	total, n := 0.0, 0
	for _, thing := range things {
		count := 1.0
		if e.Has("scale-limit") {
			count = slip.Loads(thing.mass, e.Value("scale-limit"))
		}
		if float64(n)+count > mostLoads {
			e.Refuse("scale-limit", "too-many-loads", "most", strconv.Itoa(mostLoads))
			return
		}
		for i := 1; i <= int(count) && thing.mass > 0; i++ {
			words := e.Say(thing.words)
			if count > 1 {
				words = e.Say("load", "what", words, "load", strconv.Itoa(i), "count", strconv.Itoa(int(count)))
			}
			n++
			total += thing.mass / count
			e.Row(float64(n), words, thing.mass/count, total)
		}
	}
}

func sayBatch(e *form.Evaluation, gravity, stain float64) {
	base := e.Say("of-base")
	if e.Value("clay-water") > 0 {
		base = e.Say("of-clay")
		e.Note("damp-clay-softens")
		e.Note("know-clay-s")
	}
	if e.Weighable("stain-mass") {
		base = e.Say("with-stain", "base", base)
	}
	if e.Weighable("water-to-add") {
		e.Headline("weigh", "base", base)
	} else {
		e.Headline("weigh-no-water", "base", base)
	}
	if stain > 0 {
		e.Warn(stainPowder)
	}
	littleStain(e, stain)
	judgeGravity(e, gravity)
	if stain > 0 {
		e.Judge(form.OfStain, e.Value("stain"), e.Say("judge.of-stain", "stain", e.Shown("stain")))
	}
}

// drawBatch shows the slip as if all had settled.
func drawBatch(e *form.Evaluation) string {
	base, _ := e.Result("dry-base")
	stain, _ := e.Result("stain-mass")
	water, _ := e.Result("water")
	d := sheet(e, "alternative")
	d.Sunk(sketch.Powder{Class: "clay", Room: base.Value / e.Value("solids-density"), Words: brief(e, "base")},
		sketch.Powder{Class: "colour", Room: stain.Value / e.Value("stain-density"), Words: brief(e, "stain")}, sketch.Powder{Class: "water", Room: water.Value, Words: brief(e, "water")})
	return d.String()
}

func batchFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Letter("D"), Fraction(Row(Letter("V"), Times, Bracket(Letter("d"), Minus, One)),
				Row(One, Minus, Fraction(One, Letter("s")), Plus, Fraction(Letter("p"), Hundred), Times, Bracket(One, Minus, Fraction(One, Sub(Letter("s"), Letter("c"))))))),
			Where: []Symbol{
				{Letter: "D", Means: say("D")},
				{Letter: "V, d", Means: say("V-d")},
				{Letter: "s, s_c", Means: say("s-s_c")},
				{Letter: "p", Means: say("p")},
			},
		},
		{
			Math: Equal(Letter("W"), Row(Letter("V"), Times, Letter("d"), Minus, Letter("D"), Times, Bracket(One, Plus, Fraction(Letter("p"), Hundred)))),
			Where: []Symbol{
				{Letter: "W", Means: say("W")},
			},
		},
		{
			Math: Equal(Words(say("damp-clay")), Fraction(Letter("D"), Row(One, Minus, Fraction(Letter("w"), Hundred)))),
			Where: []Symbol{
				{Letter: "w", Means: say("w")},
			},
		},
	}
}
