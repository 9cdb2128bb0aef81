package catalog

import (
	"math"
	"strconv"

	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/slip"
	"slipbook/calculators/tile"
)

var wetBlend = &form.Calculator{
	Name: "wet-blend",
	Inputs: []form.Input{
		{Name: "kind", Kind: quantity.Number, Default: "line", First: true,
			Choices: []form.Choice{{ID: "line"}, {ID: "triaxial"}}},
		{Name: "points", Kind: quantity.Number, Needed: true, First: true, Whole: true,
			Low: form.Limit{End: form.From, Value: 2, Why: "low"}, High: form.Limit{End: form.UpTo, Value: float64(mostMixes)}},
		{Name: "first-gravity", Kind: quantity.Gravity, Needed: true, First: true, Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		{Name: "second-gravity", Kind: quantity.Gravity, Needed: true, First: true, Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		{Name: "third-gravity", Kind: quantity.Gravity, First: true, Low: form.Limit{End: form.Above, Value: 1, Why: "low"}},
		{Name: "each", Kind: quantity.Volume, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "volume-resolution", Kind: quantity.Volume, Default: "1", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1000}},
		solidsDensity,
	},
	Outputs: []form.Output{
		{Name: "cups", Unit: "1", Digits: 6},
		{Name: "first-needed", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "second-needed", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "third-needed", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "second-for-hundred", Unit: "mL", Digits: 4},
		{Name: "third-for-hundred", Unit: "mL", Digits: 4},
		{Name: "least-dry", Unit: "g", Digits: 3},
		{Name: "largest-error", Unit: "%", Digits: 2},
	},
	Columns: []form.Column{
		{Name: "code", Text: true},
		{Name: "first", Unit: "%", Digits: 4},
		{Name: "second", Unit: "%", Digits: 4},
		{Name: "third", Unit: "%", Digits: 4},
		{Name: "first-volume", Unit: "mL", Digits: 6},
		{Name: "second-volume", Unit: "mL", Digits: 6},
		{Name: "third-volume", Unit: "mL", Digits: 6},
		{Name: "error", Unit: "%", Digits: 2},
	},
	Says:    []string{"shares-are-dry", "stir-before-drawing", "write-code-on"},
	Hazards: []string{wetColour},
	Cares:   []string{"wipe-while-wet"},
	Next: []form.Next{
		{Calculator: "slip-adjust", Carry: []form.Carry{{Into: "from", From: "first-gravity"}, {Into: "to", From: "second-gravity"}, {Into: "solids-density", From: "solids-density"}}},
	},
	Work: workBlend,
	Draw: drawBlend,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		wetBlend.Example = form.Example{
			Given: []form.Setting{{Name: "kind", Text: "line"}, {Name: "points", Text: "5"}, {Name: "first-gravity", Text: "1.50"}, {Name: "second-gravity", Text: "1.42"}, {Name: "each", Text: "40 mL"}},
		}
		wetBlend.Table = form.Table{
			Down: "first-gravity", Values: []string{"1.30", "1.35", "1.40", "1.45", "1.50", "1.55", "1.60"},
			Across: "second-gravity", AcrossValues: []string{"1.30", "1.35", "1.40", "1.45", "1.50", "1.55", "1.60"},
			Show: []string{"second-for-hundred"},
		}
		wetBlend.Formula = blendFormulas
	}
}

func workBlend(e *form.Evaluation) {
	names := []string{"first-gravity", "second-gravity", "third-gravity"}
	if e.Word("kind") == "line" {
		e.Unused("third-gravity", "line-of-two")
		names = names[:2]
	}
	need(e, names[len(names)-1])
	var gravities []float64
	for _, name := range names {
		gravity := e.Value(name)
		if solids := e.Value("solids-density"); gravity > solids {
			tooHeavy(e, gravity, name, "heavier-than-powder", "gravity", e.Gravity(gravity))
		}
		gravities = append(gravities, gravity)
	}
	points := int(e.Value("points"))
	if count := tile.Count(points); len(names) == 3 && count > mostMixes {
		e.Refuse("points", "too-many-cups", "cups", strconv.Itoa(count), "most", strconv.Itoa(mostMixes))
	}
	if e.Refused() {
		return
	}
	cups := linesOf(points)
	if len(names) == 3 {
		cups = cups[:0]
		for _, s := range tile.Triaxial(points) {
			cups = append(cups, s[:])
		}
	}
	if fillCups(e, cups, gravities); !e.Refused() {
		sayWetBlend(e, gravities)
	}
}

// linesOf returns the shares (%) of two slips along a line, from all of the
// first to all of the second.
func linesOf(points int) [][]float64 {
	var cups [][]float64
	for _, second := range tile.Line(0, 100, points) {
		cups = append(cups, []float64{100 - second, second})
	}
	return cups
}

// fillCups adds a row for each cup, with its volumes as the syringe can draw
// them, and says how much of each slip that takes.
func fillCups(e *form.Evaluation, cups [][]float64, gravities []float64) {
	step, each, parts := e.Value("volume-resolution"), e.Value("each"), len(gravities)
	needed, worst, least := make([]float64, parts), 0.0, math.Inf(1)
	for i, code := range tile.Codes(len(cups)) {
		row := make([]any, len(e.Calculator.Columns))
		row[0] = code
		drawn := slip.Blend(each, gravities, cups[i])
		dry := 0.0
		for part, volume := range drawn {
			drawn[part] = tile.Rounded(volume, step)
			if volume > 0 && drawn[part] == 0 {
				e.Refuse("each", "cannot-draw", "volume", form.WithUnit(e.Text(volume, 2), "mL"))
				return
			}
			needed[part] += drawn[part]
			dry += slip.DryAt(drawn[part], gravities[part], e.Value("solids-density"))
			row[1+part], row[4+part] = cups[i][part], drawn[part]
		}
		off := 0.0
		for part, share := range slip.Blended(drawn, gravities) {
			off = math.Max(off, math.Abs(share-cups[i][part]))
		}
		if off < leastOff {
			off = 0
		}
		row[7] = off
		e.Row(row...)
		worst, least = math.Max(worst, off), math.Min(least, dry)
	}
	e.Set("cups", float64(len(cups)))
	for part, name := range []string{"first-needed", "second-needed", "third-needed"}[:parts] {
		e.Set(name, needed[part])
	}
	e.Set("second-for-hundred", matching(gravities[0], gravities[1]))
	if parts > 2 {
		e.Set("third-for-hundred", matching(gravities[0], gravities[2]))
	}
	e.Set("least-dry", least)
	e.Set("largest-error", worst)
}

// leastOff is below what a share (%) is told to be off: it is what arithmetic of binary
// fractions leaves of volumes that fit exactly.
const leastOff = 1e-9

// matching returns how much (mL) of a slip holds as much dry as 100 mL of the
// first.
func matching(first, gravity float64) float64 { return 100 * (first - 1) / (gravity - 1) }

// farOff is from how many points of a share on a cup is no longer what it is
// called.
const farOff = 2

func sayWetBlend(e *form.Evaluation, gravities []float64) {
	plain := slip.Blended([]float64{1, 1, 1}[:len(gravities)], gravities)
	first, second := e.Text(plain[0], 3), e.Text(plain[1], 3)
	if len(gravities) > 2 {
		e.Headline("blend-triaxial")
		e.Note("by-plain-thirds", "first", first, "second", second, "third", e.Text(plain[2], 3))
	} else {
		e.Headline("blend-line")
		e.Note("by-plain-halves", "first", first, "second", second)
	}
	if worst, _ := e.Result("largest-error"); worst.Value > farOff {
		e.Judged("far-off", "off", e.Text(worst.Value, 2))
	}
}

// drawBlend shows the cups of a line, each slip as high as it is poured, or
// where the cups of a triaxial stand between the three slips.
func drawBlend(e *form.Evaluation) string {
	rows := e.Answer.Rows
	if e.Word("kind") == "triaxial" {
		return drawTriangle(e, sheet(e, "triangle"), "1", "2", "3")
	}
	d := sheet(e, "line", "cups", e.Shown("cups"))
	if len(rows) > mostDrawn {
		rows = rows[:mostDrawn] // the table has them all
	}
	room := (sketch.Width - 40) / float64(len(rows))
	for i, row := range rows {
		full := row[3].Value + row[4].Value
		first := (sketch.JarFloor - sketch.JarTop) * row[3].Value / full
		x := 20 + float64(float64(i)*room)
		d.Jar(x+8, room-16, sketch.JarTop-20, sketch.Layer{Class: "clay", Height: first}, sketch.Layer{Class: "colour", Height: sketch.JarFloor - sketch.JarTop - first})
		d.Words(row[0].Text, x+room/2, sketch.JarFloor+32, "middle")
	}
	return d.String()
}

func blendFormulas(say func(string) string) []Formula {
	a, b := One, Number("2")
	return []Formula{
		{
			Math: Equal(Sub(Letter("V"), b), Row(Sub(Letter("V"), a), Times, Fraction(Row(Sub(Letter("d"), a), Minus, One), Row(Sub(Letter("d"), b), Minus, One)))),
			Where: []Symbol{
				{Letter: "V_1, V_2", Means: say("V_1-V_2")},
				{Letter: "d_1, d_2", Means: say("d_1-d_2")},
			},
		},
		{
			Math: Equal(Sub(Letter("v"), a), Row(Letter("E"), Times, Fraction(Fraction(Sub(Letter("w"), a), Row(Sub(Letter("d"), a), Minus, One)),
				Row(Fraction(Sub(Letter("w"), a), Row(Sub(Letter("d"), a), Minus, One)), Plus, Fraction(Sub(Letter("w"), b), Row(Sub(Letter("d"), b), Minus, One)))))),
			Where: []Symbol{
				{Letter: "v_1", Means: say("v_1")},
				{Letter: "E", Means: say("E")},
				{Letter: "w_1, w_2", Means: say("w_1-w_2")},
			},
		},
	}
}
