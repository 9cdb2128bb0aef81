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
	Name:    "slip-batch",
	Title:   "Mix a slip from powder or clay",
	Purpose: "Says what to weigh for the slip you need, from dry powder or damp clay, in the order to weigh it.",
	Inputs: []form.Input{
		{Name: "volume", Label: "How much slip", Help: "The whole lot. Or give people and an amount each instead.", Kind: quantity.Volume, Needed: true, Group: "amount", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		forPeople, forEach, forSpare,
		{Name: "specific-gravity", Label: "Specific gravity wanted", Help: "For example 1.45.", Kind: quantity.Gravity, Needed: true, First: true,
			Low: form.Limit{End: form.Above, Value: 1, Why: "1 is plain water, with no clay in it. Give a number above 1, for example 1.45."}},
		{Name: "stain", Label: "Stain", Help: "Grams for every 100 g of dry base. Leave 0 for a slip without stain.", Kind: quantity.Percent, Default: "0", First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
		{Name: "clay-water", Label: "Water in the clay", Help: "Leave 0 for dry powder. Damp clay: in percent of its damp weight. A lump of 100 g that dries to 80 g holds 20 %.", Kind: quantity.Percent, Default: "0", First: true, Low: form.Limit{End: form.From},
			High: form.Limit{End: form.UpTo, Value: 90, Why: "That is water with a little clay in it. Clay from the bag holds about 20 %."}},
		{Name: "scale-limit", Label: "The most your scale bears", Help: "Less the weight of the bowl on it. Blank: everything is weighed in one go.", Kind: quantity.Mass, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		solidsDensity,
		stainDensity,
	},
	Outputs: []form.Output{
		{Name: "clay-to-weigh", Label: "Clay or powder to weigh", Unit: "g", Digits: 5, As: form.Weighed},
		{Name: "stain-mass", Label: "Stain", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "water-to-add", Label: "Water to add", Unit: "g", Digits: 5, As: form.Water},
		{Name: "slip-mass", Label: "The slip will weigh", Unit: "g", Digits: 5, As: form.Weighed},
		{Name: "dry-base", Label: "Dry base in it", Unit: "g", Digits: 5, As: form.Weighed},
		{Name: "water", Label: "Water in it, all told", Unit: "g", Digits: 5, As: form.Water},
	},
	Columns: []form.Column{
		{Name: "load", Label: "Load", Unit: "1", Digits: 3},
		{Name: "what", Label: "What", Text: true},
		{Name: "weigh", Label: "Weigh", Unit: "g", Digits: 5, As: form.Weighed},
		{Name: "total", Label: "In the bucket by then", Unit: "g", Digits: 5, As: form.Weighed},
	},
	Notes: []string{
		"Water first, powder onto it, a handful at a time. Let it soak overnight without stirring; then stir.",
		"Sieve it: 80 mesh for a slip without stain, 100 to 120 mesh with stain in it.",
		"1 gram of water is 1 mL. Measure the slip the next day, before you use it, and write the number on the bucket.",
	},
	Hazards: []string{dryPowder},
	MayHurt: []string{stainPowder},
	Next: []form.Next{
		{Words: "Measure the slip the next day", Calculator: "slip-density", Carry: []form.Carry{{Into: "solids-density", From: "solids-density"}}},
		{Words: "Bring it to the number", Calculator: "slip-adjust", Carry: []form.Carry{{Into: "slip-mass", From: "slip-mass"}, {Into: "to", From: "specific-gravity"}, {Into: "solids-density", From: "solids-density"}, {Into: "stain", From: "stain"}}},
	},
	WeighRows: true,
	Work:      workBatch,
	Draw:      drawBatch,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		slipBatch.Example = form.Example{
			Case:  "Twelve students need 150 mL of blue slip each, a tenth to spare, from bagged clay that is one fifth water, on a scale that bears 1 kg beside the bowl.",
			Given: []form.Setting{{Name: "people", Text: "12"}, {Name: "each", Text: "150 mL"}, {Name: "spare", Text: "10"}, {Name: "specific-gravity", Text: "1.45"}, {Name: "stain", Text: "8"}, {Name: "clay-water", Text: "20"}, {Name: "scale-limit", Text: "1 kg"}},
		}
		slipBatch.Table = form.Table{
			Caption: "One litre of slip from dry powder, without stain",
			Down:    "specific-gravity", Values: []string{"1.30", "1.35", "1.40", "1.45", "1.50", "1.55", "1.60", "1.65", "1.70", "1.75"},
			Show: []string{"dry-base", "water", "slip-mass"},
			Also: []form.Setting{{Name: "people", Text: ""}, {Name: "each", Text: ""}, {Name: "spare", Text: ""}, {Name: "volume", Text: "1 L"}, {Name: "stain", Text: "0"}, {Name: "clay-water", Text: "0"}, {Name: "scale-limit", Text: ""}},
		}
		slipBatch.Formulas = batchFormulas
	}
}

func workBatch(e *form.Evaluation) {
	doubtShare(e, "clay-water")
	gravity, solids, percent := e.Value("specific-gravity"), e.Value("solids-density"), e.Value("stain")
	if mix := slip.Mixed(solids, percent, e.Value("stain-density")); gravity >= mix {
		tooHeavy(e, gravity, "specific-gravity", "There is no slip of {specific-gravity} without water in it: the dry mix itself is only {}.", form.WithUnit(e.Text(mix, 4), "g/mL"))
		return
	}
	volume := volumeWanted(e)
	batch := slip.Make(volume, gravity, solids, percent, e.Value("stain-density"))
	clay := slip.Damp(batch.Base, e.Value("clay-water"))
	if e.Value("clay-water") > batch.Wettest() {
		e.Refuse("clay-water", "The damp clay brings {} of water with it, and this slip has room for {}. Let the clay dry to {} of water or less, or start from powder.",
			form.WithUnit(e.Text(clay-batch.Base, 4), "g"), form.WithUnit(e.Text(batch.Water, 4), "g"), form.WithUnit(strconv.Itoa(int(batch.Wettest())), "%"))
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
		sayPeople(e, "slip", volume)
	}
	sayBatch(e, gravity, batch.Stain)
}

// mostLoads bounds the rows of a mixing sheet.
const mostLoads = 60

// loads lists what to weigh in its order, each thing in equal loads that the
// scale bears.
func loads(e *form.Evaluation, water, clay, stain float64) {
	base := "Dry base"
	if e.Value("clay-water") > 0 {
		base = "Damp clay"
	}
	things := []struct {
		words string
		mass  float64
	}{{"Water", water}, {base, clay}, {"Stain, alone on the fine scale", stain}}
	total, n := 0.0, 0
	for _, thing := range things {
		count := 1.0
		if e.Has("scale-limit") {
			count = slip.Loads(thing.mass, e.Value("scale-limit"))
		}
		if float64(n)+count > mostLoads {
			e.Refuse("scale-limit", "In loads of {scale-limit} this would take more than {} of them. Use a scale that bears more, or make less slip.", strconv.Itoa(mostLoads))
			return
		}
		for i := 1; i <= int(count) && thing.mass > 0; i++ {
			words := thing.words
			if count > 1 {
				words += ", load " + strconv.Itoa(i) + " of " + strconv.Itoa(int(count))
			}
			n++
			total += thing.mass / count
			e.Row(float64(n), words, thing.mass/count, total)
		}
	}
}

func sayBatch(e *form.Evaluation, gravity, stain float64) {
	base := "dry base"
	if e.Value("clay-water") > 0 {
		base = "damp clay"
		e.Note("Damp clay softens slowly in water: slice it thin. Lumps that are bone dry fall apart by themselves, and sooner.")
		e.Note("To know the clay’s water, weigh a slice damp and again when it is bone dry: what it lost, in percent of its damp weight.")
	}
	sentence := "Weigh {clay-to-weigh} of {}"
	if e.Weighable("stain-mass") {
		sentence += " and {stain-mass} of stain"
	}
	if e.Weighable("water-to-add") {
		sentence += " into {water-to-add} of water."
	} else {
		sentence += ". It brings all the water that the slip needs."
	}
	e.Headline(sentence, base)
	if stain > 0 {
		e.Warn(stainPowder)
	}
	littleStain(e, stain)
	judgeGravity(e, gravity)
	if stain > 0 {
		e.Judge(form.OfStain, e.Value("stain"), e.Shown("stain")+" of stain")
	}
}

// drawBatch shows the slip as if all had settled.
func drawBatch(e *form.Evaluation) string {
	base, _ := e.Result("dry-base")
	stain, _ := e.Result("stain-mass")
	water, _ := e.Result("water")
	d := sheet(e, "The slip as if all had settled: {dry-base} of dry base and {stain-mass} of stain under {water} of water.")
	d.Sunk(sketch.Powder{Class: "clay", Room: base.Value / e.Value("solids-density"), Words: brief(e, "base {dry-base}")},
		sketch.Powder{Class: "colour", Room: stain.Value / e.Value("stain-density"), Words: brief(e, "stain {stain-mass}")}, sketch.Powder{Class: "water", Room: water.Value, Words: brief(e, "water {water}")})
	return d.String()
}

func batchFormulas() []Formula {
	return []Formula{
		{
			Math: Equal(Letter("D"), Fraction(Row(Letter("V"), Times, Bracket(Letter("d"), Minus, One)),
				Row(One, Minus, Fraction(One, Letter("s")), Plus, Fraction(Letter("p"), Hundred), Times, Bracket(One, Minus, Fraction(One, Sub(Letter("s"), Letter("c"))))))),
			Where: []Symbol{
				{Letter: "D", Means: "dry base, g"},
				{Letter: "V, d", Means: "slip wanted, mL, and its specific gravity"},
				{Letter: "s, s_c", Means: "densities of the dry base and of the stain, g/mL"},
				{Letter: "p", Means: "stain, g for 100 g of base"},
			},
		},
		{
			Math: Equal(Letter("W"), Row(Letter("V"), Times, Letter("d"), Minus, Letter("D"), Times, Bracket(One, Plus, Fraction(Letter("p"), Hundred)))),
			Where: []Symbol{
				{Letter: "W", Means: "water in the slip, g"},
			},
		},
		{
			Math: Equal(Words("damp clay"), Fraction(Letter("D"), Row(One, Minus, Fraction(Letter("w"), Hundred)))),
			Where: []Symbol{
				{Letter: "w", Means: "water in the clay, % of its damp weight; it is taken off the water to add"},
			},
		},
	}
}
