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
		e.Refuse("solids-density", "Powder of {solids-density} cannot make a slip of {}: dry powder is heavier than any slip of it. Either number may be mistyped; clay is about 2.6.",
			e.Gravity(gravity))
		return
	}
	e.Refuse(input, sentence, texts...)
}

// littleStain warns of a weight that a kitchen scale does not see well, or not
// at all.
func littleStain(e *form.Evaluation, stain float64) {
	switch {
	case stain > 0 && !e.Weighable("stain-mass"):
		e.Note("The stain would be {}, less than the scale can show. Make a larger lot, or weigh on a finer scale.", form.WithUnit(e.Text(stain, 2), "g"))
	case stain > 0 && stain < 1:
		e.Note("This is less than 1 g of stain. Weigh on a scale that shows hundredths, or make more than you need.")
	}
}

// doubtPercent asks about a percentage that looks like a part of the whole:
// 0.12 where 12 is meant.
func doubtPercent(e *form.Evaluation, name string) {
	if v := e.Value(name); v > 0 && v < 1 {
		e.Note("{} is less than 1\u00a0%. Did you mean {}?", e.Shown(name), form.WithUnit(e.Text(float64(100*v), 4), "%"))
	}
}

// doubtShare says so where a percentage looks like a part of one.
func doubtShare(e *form.Evaluation, name string) {
	if v := e.Value(name); v > 0 && v < 1 {
		e.Note("{} is read as a percentage, less than 1 in 100. If you mean a part of the whole, such as 0.2 for a fifth, write 20.", e.Shown(name))
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
		e.Answer.Judged = append(e.Answer.Judged, text+": thicker than any slip that moves, which ends near "+e.Text(thickest, 2)+". Check the numbers.")
	case gravity < thinnest:
		e.Answer.Judged = append(e.Answer.Judged, text+": too thin to be judged by weighing a jar, which begins near "+e.Text(thinnest, 3)+". A small error in the weight becomes a large one in the dry clay: go by what was weighed in.")
	default:
		e.Judge(form.OfSlip, gravity, text)
	}
}
