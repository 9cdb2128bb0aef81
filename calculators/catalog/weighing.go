package catalog

import (
	"math"

	"slipbook/calculators/form"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
)

// scaleStep asks how fine the scale is, where that limits an answer.
var scaleStep = form.Input{Name: "mass-resolution", Shared: "mass-resolution", Kind: quantity.Mass, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 1000}}

// finestTyped is the least that a weighing as typed is taken to tell (g): a
// nought behind the mark is often left out.
const finestTyped = 0.1

// resolution returns the smallest step of the scale (g): as given, or of the
// course's scale that takes so much (g), or else the finest last figure of the
// inputs of these names as they were typed.
func resolution(e *form.Evaluation, most float64, names ...string) float64 {
	if e.Has("mass-resolution") {
		return e.Value("mass-resolution")
	}
	step := 0.0
	if len(e.Settings.Scales) > 0 {
		step = e.Settings.Step(most)
	} else {
		for _, name := range names {
			if g := e.Given(name); g != nil && e.Typed(name) && g.Values[0] > 0 {
				for _, typed := range g.AsTyped {
					if step == 0 || typed.Step < step {
						step = typed.Step
					}
				}
			}
		}
		step = math.Max(step, finestTyped)
	}
	e.Stand("mass-resolution", step)
	return step
}

// drawShare draws a lump by weight, so many percent of it water, with the words
// for both.
func drawShare(d *sketch.Drawing, percent float64, dry, water string) {
	wide := 560 * percent / 100
	d.Box("clay", 30, 30, 560-wide, 100)
	d.Box("water", 590-wide, 30, wide, 100)
	d.Box("ink", 30, 30, 560, 100)
	for i, part := range [...]struct{ class, words string }{{"clay", dry}, {"water", water}} {
		y := 162 + float64(float64(i)*60)
		d.Box(part.class, 40, y, 30, 30)
		d.Box("ink", 40, y, 30, 30)
		d.Aside(part.words, 90, y+22)
	}
}
