package catalog

import (
	"math"
	"strconv"

	"slipbook/calculators/decimal"
	"slipbook/calculators/form"
	"slipbook/calculators/letters"
	"slipbook/calculators/quantity"
	"slipbook/calculators/slip"
	"slipbook/calculators/tile"
)

// mostMaterials is how many materials the base of a recipe may have, and how
// many additions.
const mostMaterials = 12

var recipeScale = &form.Calculator{
	Name: "recipe-scale",
	Inputs: []form.Input{
		{Name: "parts", Kind: quantity.Number, Needed: true, First: true, List: true, Most: mostMaterials, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "additions", Kind: quantity.Percent, First: true, List: true, Most: mostMaterials, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 100}},
		{Name: "names", Kind: quantity.Number, First: true, Words: true, List: true, Most: 2 * mostMaterials},
		{Name: "first", Kind: quantity.Number, Words: true, List: true, Most: mostMaterials},
		{Name: "dry-mass", Kind: quantity.Mass, Needed: true, Group: "amount", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "volume", Kind: quantity.Volume, Needed: true, Group: "amount", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		forPeople, forEach,
		{Name: "which", Kind: quantity.Number, Needed: true, Group: "amount", Side: "only", First: true, Words: true},
		{Name: "have", Kind: quantity.Mass, Needed: true, Group: "amount", Side: "only", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "specific-gravity", Kind: quantity.Gravity, First: true, Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		{Name: "scale-limit", Kind: quantity.Mass, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		forSpare, solidsDensity, stainDensity,
	},
	Outputs: []form.Output{
		{Name: "dry-total", Unit: "g", Digits: 5, As: form.Weighed},
		{Name: "base-mass", Unit: "g", Digits: 5, As: form.Weighed},
		{Name: "additions-mass", Unit: "g", Digits: 4, As: form.Weighed},
		{Name: "water", Unit: "g", Digits: 5, As: form.Water},
		{Name: "slip-mass", Unit: "g", Digits: 5, As: form.Weighed},
		{Name: "new-volume", Unit: "mL", Digits: 4, As: form.Bucket},
		{Name: "loads", Unit: "1", Digits: 2},
		{Name: "largest-error", Unit: "%", Digits: 2},
	},
	Columns: []form.Column{
		{Name: "what", Text: true},
		{Name: "share", Unit: "%", Digits: 4},
		{Name: "weigh", Unit: "g", Digits: 5, As: form.Weighed},
		{Name: "total", Unit: "g", Digits: 6, As: form.Weighed},
		{Name: "error", Unit: "%", Digits: 2},
	},
	Says:    []string{"additions-over-base", "tick-each-line", "write-recipe-on"},
	Hazards: []string{dryPowder},
	MayHurt: []string{stainPowder},
	Next: []form.Next{
		{Calculator: "slip-density", If: "water", Carry: []form.Carry{{Into: "solids-density", From: "solids-density"}}},
		{Calculator: "slip-adjust", If: "water", Carry: []form.Carry{{Into: "slip-mass", From: "slip-mass"}, {Into: "to", From: "specific-gravity"}, {Into: "solids-density", From: "solids-density"}}},
	},
	WeighRows: true,
	Work:      workRecipe,
	Draw:      drawRecipe,
}

// recipe is what is weighed: materials in their order, each in percent over the
// base, and of them all the additions.
type recipe struct {
	names   []string
	percent []float64
	over    float64 // percent
	order   []int   // in which they are weighed: what goes into the water before the powder first
}

func workRecipe(e *form.Evaluation) {
	r := readRecipe(e)
	if e.Has("volume") || e.Has("people") {
		need(e, "specific-gravity")
	}
	gravity, solids := e.Value("specific-gravity"), slip.Mixed(e.Value("solids-density"), r.over, e.Value("stain-density"))
	if gravity >= solids {
		tooHeavy(e, gravity, "specific-gravity", "no-slip", "mix", form.WithUnit(e.Text(solids, 4), "g/mL"))
	}
	only := onlySoMuch(e, r)
	if e.Refused() {
		return
	}
	volume, water := volumeWanted(e), 0.0
	base := r.sized(e, only, volume)
	dry := base + base*r.over/100
	if gravity > 0 {
		water = slip.Wetted(dry, gravity, solids)
	}
	if gravity > 0 && volume == 0 {
		volume = (dry + water) / gravity
	}
	e.Set("dry-total", dry)
	e.Set("base-mass", base)
	if r.over > 0 {
		e.Set("additions-mass", dry-base)
		e.Warn(stainPowder)
	}
	if gravity > 0 {
		e.Set("water", water)
		e.Set("slip-mass", float64(volume*gravity))
		e.Set("new-volume", volume)
		judgeGravity(e, gravity)
	}
	if loads := recipeLoads(e, dry+water); !e.Refused() {
		r.weighOut(e, base/loads, water/loads)
		sayRecipe(e, int(loads))
	}
}

// readRecipe returns the materials, their base scaled to 100, and says so where
// that changed a number.
func readRecipe(e *form.Evaluation) recipe {
	base, sum := slip.Hundred(e.List("parts"))
	r := recipe{percent: append(base, e.List("additions")...), names: pieces(e, "names", "")}
	for _, percent := range e.List("additions") {
		r.over += percent
	}
	if count := len(r.percent); len(r.names) == 0 {
		r.names = numbered(e, count)
	} else if len(r.names) != count {
		e.Refuse("names", "name-each", "names", e.Count("names", len(r.names)), "materials", e.Count("materials", count))
	}
	r.inOrder(e)
	if math.Abs(sum-100) > 1e-9 {
		e.Note("scaled", "sum", e.Text(sum, 6))
	}
	return r
}

// numbered returns names for materials that have none.
func numbered(e *form.Evaluation, count int) (names []string) {
	for i := range count {
		names = append(names, e.Say("number", "number", strconv.Itoa(i+1)))
	}
	return names
}

// inOrder puts those first that are said to go into the water before the powder.
func (r *recipe) inOrder(e *form.Evaluation) {
	before := make([]bool, len(r.percent))
	for _, typed := range pieces(e, "first", "") {
		if n := r.named(typed); n < 0 {
			e.Refuse("first", "no-such-material", "typed", form.Clip(typed), "materials", e.Listing(r.names))
		} else {
			before[n] = true
		}
	}
	for _, first := range [...]bool{true, false} {
		for i := range before {
			if before[i] == first {
				r.order = append(r.order, i)
			}
		}
	}
}

// named returns a material by its name or its number, from 0; -1 where there is none.
func (r *recipe) named(typed string) int {
	n, _ := decimal.Natural(typed)
	for i, name := range r.names {
		if letters.SameWord(typed, name) {
			n = i + 1
		}
	}
	if n < 1 || n > len(r.percent) {
		return -1
	}
	return n - 1
}

// onlySoMuch returns which material there is only so much of, from 0; -1 where
// nobody said so.
func onlySoMuch(e *form.Evaluation, r recipe) int {
	typed := e.Word("which")
	if typed == "" {
		return -1
	}
	n := r.named(typed)
	switch {
	case n < 0:
		e.Refuse("which", "no-such-material", "typed", form.Clip(typed), "materials", e.Listing(r.names))
	case r.percent[n] == 0:
		e.Refuse("which", "none-in-it")
	}
	return n
}

// sized returns the base (g) of the batch that was asked for, of a volume (mL)
// where it was asked for by that.
func (r recipe) sized(e *form.Evaluation, only int, volume float64) float64 {
	switch {
	case e.Has("dry-mass"):
		return slip.BaseOf(e.Value("dry-mass"), r.over)
	case only >= 0:
		e.Note("takes-all", "material", r.names[only])
		return slip.BaseFrom(e.Value("have"), r.percent[only])
	case e.Has("people"):
		sayPeople(e, volume)
	}
	return slip.Make(volume, e.Value("specific-gravity"), e.Value("solids-density"), r.over, e.Value("stain-density")).Base
}

// recipeLoads returns in how many equal loads all of it is weighed, so that the
// tub of each stays on the scale.
func recipeLoads(e *form.Evaluation, all float64) float64 {
	if !e.Has("scale-limit") {
		return 1
	}
	loads := slip.Loads(all, e.Value("scale-limit"))
	if loads > mostLoads {
		e.Refuse("scale-limit", "too-many-loads", "most", strconv.Itoa(mostLoads))
	}
	e.Set("loads", loads)
	return loads
}

// tub is a tub on the scale that bears all which goes into it, of so many g to
// 100 of base: what should be in it by now, and by the scale.
type tub struct{ base, step, total, shown float64 }

// add adds a row for what goes in next, and returns how far off (%) its own
// scale leaves it.
func (t *tub) add(e *form.Evaluation, what string, mass float64) float64 {
	weighed := quantity.RoundTo(mass, e.Settings.Step(mass), quantity.Nearest)
	off := tile.Error(mass, weighed)
	t.total += mass
	t.shown += weighed
	e.Row(what, 100*mass/t.base, mass, t.total, off)
	row := e.Answer.Rows[len(e.Answer.Rows)-1]
	row[3].Text = e.Text(quantity.RoundTo(t.shown, t.step, quantity.Nearest), 12)
	return math.Abs(off)
}

// weighOut lists one load in the order in which it goes into a tub, and says
// what the scales make of it.
func (r recipe) weighOut(e *form.Evaluation, base, water float64) {
	all := base + base*r.over/100 + water
	t := tub{base: base, step: e.Settings.Step(all)}
	if water > 0 {
		t.add(e, e.Say("water"), water)
	}
	worst, safe, alone := 0.0, 0.0, []string(nil)
	for _, i := range r.order {
		percent := r.percent[i]
		mass := base * percent / 100
		worst = math.Max(worst, t.add(e, r.names[i], mass))
		if percent > 0 {
			safe = math.Max(safe, tile.SafeBase(percent, e.Settings.Step(0)))
		}
		if t.step > e.Settings.Step(mass) && mass > 0 && tile.SafeBase(percent, t.step) > base {
			alone = append(alone, r.names[i])
		}
	}
	e.Set("largest-error", worst)
	if worst > 1 {
		e.Note("off", "safe", e.Amount(safe+safe*r.over/100, "g", 3, 0, form.Weighed))
	}
	if len(alone) > 0 {
		e.Note("weigh-alone", "materials", e.Listing(alone), "step", form.WithUnit(e.Text(t.step, 4), "g"))
	}
}

// sayRecipe says first what to weigh.
func sayRecipe(e *form.Evaluation, loads int) {
	switch {
	case !e.Weighable("dry-total"):
		e.Headline("too-little")
	case e.Weighable("water"):
		e.Headline("weigh-into-water")
	default:
		e.Headline("weigh-dry")
	}
	if loads > 1 {
		e.Answer.Headline = form.Join(e.Answer.Headline, e.Say("in-loads", "loads", strconv.Itoa(loads)))
	}
}

// drawRecipe shows the dry mix by weight as a bar, its materials by their
// numbers.
func drawRecipe(e *form.Evaluation) string {
	rows := e.Answer.Rows
	if e.Has("specific-gravity") {
		rows = rows[1:] // its water
	}
	var words []string
	total := 0.0
	for _, row := range rows {
		total += row[2].Value
		words = append(words, e.Say("share", "share", form.WithUnit(row[1].Text, "%"), "material", row[0].Text))
	}
	base := append(pieces(e, "names", ""), numbered(e, len(rows))...)[:len(e.List("parts"))]
	d := sheet(e, "alternative", "materials", e.Listing(words))
	x := 30.0
	for i, row := range rows {
		class, width := [...]string{"clay", "slip"}[i%2], 580*row[2].Value/total
		if !letters.In(base, row[0].Text) {
			class = "colour"
		}
		d.Box(class, x, 80, width, 120)
		d.Box("ink", x, 80, width, 120)
		if width >= 28 {
			d.Words(strconv.Itoa(i+1), x+width/2, 240, "middle")
		}
		x += width
	}
	return d.String()
}
