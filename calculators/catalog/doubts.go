package catalog

import (
	"slipbook/calculators/form"
	"slipbook/calculators/quantity"
)

// tooHeavy refuses a slip of a gravity that its dry powder cannot make. Where
// the powder alone is too light and is not the usual one, its density is as
// likely mistyped as the gravity: the refusal then stands there and names both.
func tooHeavy(e *form.Evaluation, gravity float64, input, sentence string, texts ...string) {
	if solids := e.Value("solids-density"); solids <= gravity && !form.Same(solidsDensity.Default, solids) {
		e.Refuse("solids-density", "doubt.light-powder",
			"gravity", e.Gravity(gravity))
		return
	}
	e.Refuse(input, sentence, texts...)
}

// littleStain warns of a weight that a kitchen scale does not see well, or not
// at all.
func littleStain(e *form.Evaluation, stain float64) {
	switch {
	case stain > 0 && !e.Weighable("stain-mass"):
		e.Note("doubt.no-stain", "stain", form.WithUnit(e.Text(stain, 2), "g"))
	case stain > 0 && stain < 1:
		e.Note("doubt.little-stain")
	}
}

// doubtPercent asks about a percentage that looks like a part of the whole:
// 0.12 where 12 is meant.
func doubtPercent(e *form.Evaluation, name string) {
	if v := e.Value(name); v > 0 && v < 1 {
		e.Judged("doubt.percent", "typed", e.Shown(name), "meant", form.WithUnit(e.Text(float64(100*v), 4), "%"))
	}
}

// smallest is below what size, in mm, no pot is made, and a number is likely one of
// centimetres or inches.
const smallest = 10

// doubtSize asks about a size that is smaller than any pot.
func doubtSize(e *form.Evaluation, name string) {
	if v := e.Value(name); v > 0 && v < smallest {
		e.Judged("doubt.size", "typed", e.Shown(name))
	}
}

// doubtShare says so where a percentage looks like a part of one.
func doubtShare(e *form.Evaluation, name string) {
	if v := e.Value(name); v > 0 && v < 1 {
		e.Judged("doubt.share", "typed", e.Shown(name))
	}
}

// The specific gravities between which a weighed jar tells something of a slip.
const (
	thinnest = 1.15
	thickest = 1.9
)

// judgeGravity judges the specific gravity of a slip, and warns of one that no
// slip in use has.
func judgeGravity(e *form.Evaluation, gravity float64) {
	text := quantity.FormatPlaces(gravity, 3, 2, e.Settings.Style)
	switch {
	case gravity > thickest:
		e.Judged("doubt.thickest", "gravity", text, "thickest", e.Text(thickest, 2))
	case gravity < thinnest:
		e.Judged("doubt.thinnest", "gravity", text, "thinnest", e.Text(thinnest, 3))
	default:
		e.Judge(form.OfSlip, gravity, text)
	}
}
