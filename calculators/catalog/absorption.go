package catalog

import (
	"math"
	"strconv"

	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/porosity"
	"slipbook/calculators/quantity"
	"slipbook/calculators/shrinkage"
)

var absorption = &form.Calculator{
	Name: "absorption",
	Inputs: []form.Input{
		{Name: "dry", Kind: quantity.Mass, List: true, Most: shrinkage.MostBars, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "soaked", Kind: quantity.Mass, List: true, Most: shrinkage.MostBars, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "suspended", Kind: quantity.Mass, List: true, Most: shrinkage.MostBars, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		scaleStep,
	},
	Outputs: []form.Output{
		{Name: "absorption", Unit: "%", Digits: 3},
		{Name: "least", Unit: "%", Digits: 3},
		{Name: "most", Unit: "%", Digits: 3},
		{Name: "porosity", Unit: "%", Digits: 3},
		{Name: "bulk-density", Unit: "g/mL", Digits: 3},
		{Name: "apparent-gravity", Unit: "1", Digits: 3},
		{Name: "absorption-ci", Unit: "%", Digits: 2, Aside: true},
		{Name: "tiles", Unit: "1", Digits: 3, Aside: true},
	},
	Columns: []form.Column{
		{Name: "tile", Unit: "1", Digits: 3},
		{Name: "absorption", Unit: "%", Digits: 3},
		{Name: "porosity", Unit: "%", Digits: 3},
		{Name: "bulk-density", Unit: "g/mL", Digits: 3},
		{Name: "apparent-gravity", Unit: "1", Digits: 3},
	},
	Says:  []string{"vitrified-is-not-safe", "boil-and-soak", "bare-tiles"},
	Cares: []string{"boiling-tiles"},
	Next: []form.Next{
		{Calculator: "shrinkage-test"},
	},
	Work: workAbsorption,
	Draw: drawAbsorption,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		absorption.Example = form.Example{
			Given: []form.Setting{{Name: "dry", Text: "62.41 58.93 60.20 61.77 59.48"}, {Name: "soaked", Text: "63.92 60.29 61.66 63.21 60.87"}, {Name: "suspended", Text: "36.12 34.08 34.83 35.73 34.41"}, {Name: "mass-resolution", Text: "0.01 g"}},
		}
		absorption.Table = form.Table{
			Down: "soaked", Values: []string{"100 g", "100.5 g", "101 g", "102 g", "103 g", "105 g", "108 g", "110 g", "115 g"},
			Show: []string{"absorption", "porosity", "bulk-density"},
			Also: []form.Setting{{Name: "dry", Text: "100 g"}, {Name: "suspended", Text: "60 g"}},
		}
		absorption.Formula = absorptionFormulas
	}
}

func workAbsorption(e *form.Evaluation) {
	dry, soaked, suspended := e.List("dry"), e.List("soaked"), e.List("suspended")
	hung := e.Has("suspended")
	sameTiles(e, "soaked", len(soaked), len(dry))
	if hung {
		sameTiles(e, "suspended", len(suspended), len(dry))
	}
	if e.Refused() {
		return
	}
	tiles := make([]porosity.Tile, len(dry))
	for i := range tiles {
		tiles[i] = porosity.Tile{Dry: dry[i], Soaked: soaked[i]}
		if hung {
			tiles[i].Suspended = suspended[i]
		}
		tilePossible(e, i, tiles[i])
	}
	if !e.Refused() {
		answerAbsorption(e, tiles, hung)
	}
}

// sameTiles refuses a list that has not one weight for each tile.
func sameTiles(e *form.Evaluation, name string, count, tiles int) {
	if count != tiles {
		e.Refuse(name, "tile-count", "these", e.Count("weights", count), "dry", e.Count("weights", tiles))
	}
}

// mostDrunk is the most water (% of the dry weight) that fired clay takes up: our
// own limit, wider than any body in print. More is a slip of the pen.
const mostDrunk = 60

// tilePossible refuses a tile that no clay makes.
func tilePossible(e *form.Evaluation, i int, t porosity.Tile) {
	wrong := func(input, key, other string) {
		e.Answer.RefuseValue(input, i, e.Say(key, "tile", strconv.Itoa(i+1), "this", typedLength(e, input, i), "other", typedLength(e, other, i)))
	}
	switch {
	case t.Soaked < t.Dry:
		wrong("soaked", "lighter-soaked", "dry")
	case t.Absorption() > mostDrunk:
		wrong("soaked", "drinks-too-much", "dry")
	}
	if t.Suspended >= t.Dry {
		wrong("suspended", "hangs-too-heavy", "dry")
	}
}

// answerAbsorption says what the tiles drink, the mean of them with its doubt:
// what they scatter by, and never less than the scale leaves, since it misreads
// all of them alike.
func answerAbsorption(e *form.Evaluation, tiles []porosity.Tile, hung bool) {
	n := float64(len(tiles))
	drunk := make([]float64, len(tiles))
	least, most, reading, pores, bulk, apparent := math.Inf(1), 0.0, 0.0, 0.0, 0.0, 0.0
	step := resolution(e, e.List("dry")[0], "dry", "soaked", "suspended")
	for i, t := range tiles {
		drunk[i] = t.Absorption()
		least, most = math.Min(least, drunk[i]), math.Max(most, drunk[i])
		reading += t.Reading(step) / n
		if !hung {
			e.Row(float64(i+1), drunk[i])
			continue
		}
		e.Row(float64(i+1), drunk[i], t.Porosity(), t.Bulk(), t.Apparent())
		pores, bulk, apparent = pores+t.Porosity()/n, bulk+t.Bulk()/n, apparent+t.Apparent()/n
	}
	mean, half := shrinkage.Scatter(drunk)
	if len(tiles) == 1 {
		half = reading
	}
	half = math.Max(half, reading)
	e.SetWithin("absorption", mean, half/2)
	if len(tiles) > 1 {
		e.Set("least", least)
		e.Set("most", most)
	}
	if hung {
		e.Set("porosity", pores)
		e.Set("bulk-density", bulk)
		e.Set("apparent-gravity", apparent)
	}
	e.Set("absorption-ci", half)
	e.Set("tiles", n)
	sayAbsorption(e, mean, half)
}

func sayAbsorption(e *form.Evaluation, mean, half float64) {
	switch tiles := len(e.List("dry")); {
	case mean <= half:
		e.Headline("nothing-seen")
	case tiles == 1:
		e.Headline("one-drinks")
	default:
		e.Headline("drink", "tiles", e.Count("tiles", tiles))
	}
	if len(e.List("dry")) < 5 {
		e.Note("five-tiles")
	}
	e.Judge(form.OfAbsorption, mean, e.Say("of-absorption", "absorption", form.WithUnit(e.Text(mean, 2), "%")))
	if len(e.Answer.Judged) == 0 {
		e.Note("no-limit")
	}
}

// drawAbsorption shows a soaked tile by weight: its clay, and the water that it
// drank.
func drawAbsorption(e *form.Evaluation) string {
	drunk, _ := e.Result("absorption")
	d := sheet(e, "alternative")
	drawShare(d, 100*drunk.Value/(100+drunk.Value), e.Say(drawing(e, "clay")), e.Say(drawing(e, "water")))
	return d.String()
}

func absorptionFormulas(say func(string) string) []Formula {
	water := Row(Letter("M"), Minus, Letter("D"))
	room := Row(Letter("M"), Minus, Letter("S"))
	return []Formula{
		{
			Math: Equal(Letter("A"), Row(Hundred, Times, Fraction(water, Letter("D")))),
			Where: []Symbol{
				{Letter: "A", Means: say("A")},
				{Letter: "D", Means: say("D")},
				{Letter: "M", Means: say("M")},
			},
		},
		{
			Math: Equal(Letter("P"), Row(Hundred, Times, Fraction(water, room))),
			Where: []Symbol{
				{Letter: "P", Means: say("P")},
				{Letter: "S", Means: say("S")},
			},
		},
		{
			Math:  Equal(Letter("B"), Fraction(Letter("D"), room)),
			Where: []Symbol{{Letter: "B", Means: say("B")}},
		},
		{
			Math:  Equal(Letter("T"), Fraction(Letter("D"), Row(Letter("D"), Minus, Letter("S")))),
			Where: []Symbol{{Letter: "T", Means: say("T")}},
		},
	}
}
