package catalog

import (
	"math"
	"strconv"

	"slipbook/calculators/quantity"
	"slipbook/calculators/slip"
)

var slipBatch = &Calculator{
	Name:    "slip-batch",
	Title:   "Mix a slip from powder or clay",
	Purpose: "Says what to weigh for the slip you need, from dry powder or damp clay, in the order to weigh it.",
	Inputs: []Input{
		{Name: "volume", Label: "How much slip", Help: "The whole lot. Or give people and an amount each instead.", Kind: quantity.Volume, Needed: true, Group: "amount", First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e7, ""}},
		forPeople, forEach, forSpare,
		{Name: "specific-gravity", Label: "Specific gravity wanted", Help: "For example 1.45.", Kind: quantity.Gravity, Needed: true, First: true,
			Low: Limit{Above, 1, "1 is plain water, with no clay in it. Give a number above 1, for example 1.45."}},
		{Name: "stain", Label: "Stain", Help: "Grams for every 100 g of dry base. Leave 0 for a slip without stain.", Kind: quantity.Percent, Default: "0", First: true, Low: Limit{From, 0, ""}, High: Limit{UpTo, 100, ""}},
		{Name: "clay-water", Label: "Water in the clay", Help: "Leave 0 for dry powder. Damp clay: in percent of its damp weight. A lump of 100 g that dries to 80 g holds 20 %.", Kind: quantity.Percent, Default: "0", First: true, Low: Limit{From, 0, ""},
			High: Limit{UpTo, 90, "That is water with a little clay in it. Clay from the bag holds about 20 %."}},
		{Name: "scale-limit", Label: "The most your scale bears", Help: "Less the weight of the bowl on it. Blank: everything is weighed in one go.", Kind: quantity.Mass, First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e6, ""}},
		solidsDensity,
		stainDensity,
	},
	Outputs: []Output{
		{Name: "clay-to-weigh", Label: "Clay or powder to weigh", Unit: "g", Digits: 5, As: Weighed},
		{Name: "stain-mass", Label: "Stain", Unit: "g", Digits: 4, As: Weighed},
		{Name: "water-to-add", Label: "Water to add", Unit: "g", Digits: 5, As: Water},
		{Name: "slip-mass", Label: "The slip will weigh", Unit: "g", Digits: 5, As: Weighed},
		{Name: "dry-base", Label: "Dry base in it", Unit: "g", Digits: 5, As: Weighed},
		{Name: "water", Label: "Water in it, all told", Unit: "g", Digits: 5, As: Water},
	},
	Columns: []Column{
		{Name: "load", Label: "Load", Unit: "1", Digits: 3},
		{Name: "what", Label: "What", Text: true},
		{Name: "weigh", Label: "Weigh", Unit: "g", Digits: 5, As: Weighed},
		{Name: "total", Label: "In the bucket by then", Unit: "g", Digits: 5, As: Weighed},
	},
	Notes: []string{
		"Water first, powder onto it, a handful at a time. Let it soak overnight without stirring; then stir.",
		"Sieve it: 80 mesh for a slip without stain, 100 to 120 mesh with stain in it.",
		"1 gram of water is 1 mL. Measure the slip the next day, before you use it, and write the number on the bucket.",
	},
	Hazards: []string{dryPowder},
	MayHurt: []string{stainPowder},
	Next: []Next{
		{Words: "Measure the slip the next day", Calculator: "slip-density", Carry: []Carry{{"solids-density", "solids-density"}}},
		{Words: "Bring it to the number", Calculator: "slip-adjust", Carry: []Carry{{"slip-mass", "slip-mass"}, {"to", "specific-gravity"}, {"solids-density", "solids-density"}, {"stain", "stain"}}},
	},
	Example: Example{
		Case:  "Twelve students need 150 mL of blue slip each, a tenth to spare, from bagged clay that is one fifth water, on a scale that bears 1 kg beside the bowl.",
		Given: []Setting{{"people", "12"}, {"each", "150 mL"}, {"spare", "10"}, {"specific-gravity", "1.45"}, {"stain", "8"}, {"clay-water", "20"}, {"scale-limit", "1 kg"}},
	},
	Table: Table{
		Caption: "One litre of slip from dry powder, without stain",
		Down:    "specific-gravity", Values: []string{"1.30", "1.35", "1.40", "1.45", "1.50", "1.55", "1.60", "1.65", "1.70", "1.75"},
		Show: []string{"dry-base", "water", "slip-mass"},
		Also: []Setting{{"people", ""}, {"each", ""}, {"spare", ""}, {"volume", "1 L"}, {"stain", "0"}, {"clay-water", "0"}, {"scale-limit", ""}},
	},
	work: workBatch,
	draw: drawBatch,
}

func workBatch(b *bench) {
	b.doubtShare("clay-water")
	gravity, solids, percent := b.value("specific-gravity"), b.value("solids-density"), b.value("stain")
	if mix := slip.Mixed(solids, percent, b.value("stain-density")); gravity >= mix {
		b.tooHeavy(gravity, "specific-gravity", "There is no slip of {specific-gravity} without water in it: the dry mix itself is only {}.", withUnit(b.text(mix, 4), "g/mL"))
		return
	}
	volume := b.volumeWanted()
	batch := slip.Make(volume, gravity, solids, percent, b.value("stain-density"))
	clay := slip.Damp(batch.Base, b.value("clay-water"))
	if b.value("clay-water") > batch.Wettest() {
		b.refuse("clay-water", "The damp clay brings {} of water with it, and this slip has room for {}. Let the clay dry to {} of water or less, or start from powder.",
			withUnit(b.text(clay-batch.Base, 4), "g"), withUnit(b.text(batch.Water, 4), "g"), withUnit(strconv.Itoa(int(batch.Wettest())), "%"))
		return
	}
	water := math.Max(0, batch.Water-(clay-batch.Base)) // where the clay brings all of it, rounding may leave a hair less
	b.set("clay-to-weigh", clay)
	b.set("stain-mass", batch.Stain)
	b.set("water-to-add", water)
	b.set("slip-mass", float64(volume*gravity))
	b.set("dry-base", batch.Base)
	b.set("water", batch.Water)
	b.loads(water, clay, batch.Stain)
	if b.has("people") {
		b.sayPeople("slip", volume)
	}
	b.sayBatch(gravity, batch.Stain)
}

// mostLoads bounds the rows of a mixing sheet.
const mostLoads = 60

// loads lists what to weigh in its order, each thing in equal loads that the
// scale bears.
func (b *bench) loads(water, clay, stain float64) {
	base := "Dry base"
	if b.value("clay-water") > 0 {
		base = "Damp clay"
	}
	things := []struct {
		words string
		mass  float64
	}{{"Water", water}, {base, clay}, {"Stain, alone on the fine scale", stain}}
	total, n := 0.0, 0
	for _, thing := range things {
		count := 1.0
		if b.has("scale-limit") {
			count = slip.Loads(thing.mass, b.value("scale-limit"))
		}
		if float64(n)+count > mostLoads {
			b.refuse("scale-limit", "In loads of {scale-limit} this would take more than {} of them. Use a scale that bears more, or make less slip.", strconv.Itoa(mostLoads))
			return
		}
		for i := 1; i <= int(count) && thing.mass > 0; i++ {
			words := thing.words
			if count > 1 {
				words += ", load " + strconv.Itoa(i) + " of " + strconv.Itoa(int(count))
			}
			n++
			total += thing.mass / count
			b.row(float64(n), words, thing.mass/count, total)
		}
	}
}

func (b *bench) sayBatch(gravity, stain float64) {
	base := "dry base"
	if b.value("clay-water") > 0 {
		base = "damp clay"
		b.note("Damp clay softens slowly in water: slice it thin. Lumps that are bone dry fall apart by themselves, and sooner.")
		b.note("To know the clay’s water, weigh a slice damp and again when it is bone dry: what it lost, in percent of its damp weight.")
	}
	sentence := "Weigh {clay-to-weigh} of {}"
	if b.weighable("stain-mass") {
		sentence += " and {stain-mass} of stain"
	}
	if b.weighable("water-to-add") {
		sentence += " into {water-to-add} of water."
	} else {
		sentence += ". It brings all the water that the slip needs."
	}
	b.headline(sentence, base)
	if stain > 0 {
		b.warn(stainPowder)
	}
	b.littleStain(stain)
	b.judgeGravity(gravity)
	if stain > 0 {
		b.judge(OfStain, b.value("stain"), b.shown("stain")+" of stain")
	}
}

// weighable says whether an output is an amount that can be measured out: more
// than nothing, and more than the scale's or the jug's least.
func (b *bench) weighable(name string) bool {
	r, _ := b.result(name)
	return r.Text != "" && (r.Text[0] >= '0' && r.Text[0] <= '9')
}

// sayPeople says how much a class needs in all, and each of it.
func (b *bench) sayPeople(of string, volume float64) {
	all := b.amount(volume, "mL", 4, 0, Poured)
	people := "each of {people} people"
	if b.value("people") == 1 {
		people = "one person"
	}
	if b.value("spare") == 0 {
		b.note("That is {} of "+of+": {each} for "+people+", and none to spare.", all)
		return
	}
	b.note("That is {} of "+of+": {each} for "+people+", and {spare} to spare.", all)
}

// littleStain warns of a weight that a kitchen scale does not see well, or not
// at all.
func (b *bench) littleStain(stain float64) {
	switch {
	case stain > 0 && !b.weighable("stain-mass"):
		b.note("The stain would be {}, less than the scale can show. Make a larger lot, or weigh on a finer scale.", withUnit(b.text(stain, 2), "g"))
	case stain > 0 && stain < 1:
		b.note("This is less than 1 g of stain. Weigh on a scale that shows hundredths, or make more than you need.")
	}
}
