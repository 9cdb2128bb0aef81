package form

import (
	"math"

	"slipbook/calculators/quantity"
)

// Measure says how an amount is measured out, and so to what its text is
// rounded. Its value is never rounded.
type Measure uint8

// The ways to measure out.
const (
	Reckoned Measure = iota // not at all: its digits count
	Weighed                 // on the scale that takes it: its step counts
	Poured                  // from a jug or a syringe: whole mL, tenths below 10
	Bucket                  // water for a bucket: 10 mL, whole mL below 100
	Water                   // water on the scale: its step counts, and the volume stands beside
	Ruled                   // along a ruler: tenths of a millimetre, whole ones from a metre on
)

// litres is from how many mL on a volume is written in litres.
const litres = 3000

// stepOf returns to what an amount is rounded; 0 = by its digits.
func (e *Evaluation) stepOf(m Measure, value float64) float64 {
	switch {
	case m == Weighed, m == Water:
		return e.Settings.Step(value)
	case m == Reckoned:
		return 0
	case m == Ruled && value < 1000:
		return 0.1
	case m == Ruled:
		return 1
	case value >= 30000:
		return 100
	case value >= 1000, m == Bucket && value >= 100:
		return 10
	case value >= 10, m == Bucket:
		return 1
	}
	return 0.1
}

// Amount writes a value with its unit as it is measured out, in the measures
// of the person who asks: what they typed of that kind, or else the course's,
// with the metric figure beside it. Powder stands in grams first. Nothing and
// what is below every step have words.
func (e *Evaluation) Amount(value float64, unit string, digits, places int, m Measure) string {
	if m != Reckoned && value >= 0 {
		step := e.stepOf(m, value)
		switch {
		case value == 0:
			return e.Say("amount.none")
		case value < step/2 && (m == Weighed || m == Water):
			return e.Say("amount.unweighable")
		case value < step/2:
			return e.Say("amount.unmeasurable")
		}
		return e.beside(value, unit, m, e.metric(value, unit, func(v, scale float64) string {
			return e.Text(quantity.RoundTo(v, float64(step*scale), quantity.Nearest), 12)
		}))
	}
	return e.beside(value, unit, m, e.metric(value, unit, func(v, _ float64) string {
		return quantity.FormatPlaces(v, digits, places, e.Settings.Style)
	}))
}

// metric writes a value with its unit, large volumes in litres and lengths in
// centimetres for those who typed centimetres. write gets the value and what
// one canonical unit is of the unit chosen.
func (e *Evaluation) metric(value float64, unit string, write func(value, scale float64) string) string {
	switch {
	case unit == "mL" && math.Abs(value) >= litres:
		return WithUnit(write(value/1000, 0.001), "L")
	case unit == "mm" && e.like(quantity.Length) == "cm":
		return WithUnit(write(value/10, 0.1), "cm")
	}
	return WithUnit(write(value, 1), unit)
}

// beside puts a value in the measures of the person who asks beside its metric
// text: before it, but behind it where it is weighed.
func (e *Evaluation) beside(value float64, unit string, m Measure, metric string) string {
	kind := quantity.Mass
	switch {
	case unit == "mL", unit == "g" && (m == Poured || m >= Bucket):
		kind = quantity.Volume // a gram of water is a millilitre
	case unit == "mm":
		kind = quantity.Length
	case unit != "g":
		return metric
	}
	own := quantity.Customary(value, kind, e.like(kind), e.Settings.Style)
	switch {
	case own == "":
		return metric
	case unit == "g":
		return metric + " (" + own + ")"
	}
	return own + " (" + metric + ")"
}

// like returns the unit in which a kind is answered: that of the first such
// input that the person typed, or what goes with the course's measures.
func (e *Evaluation) like(kind quantity.Kind) string {
	for _, g := range e.Answer.Inputs {
		if len(g.AsTyped) > 0 && e.Calculator.Input(g.Name).Kind == kind && e.Typed(g.Name) {
			return g.AsTyped[0].Unit
		}
	}
	switch measures := e.Settings.Style.Measures; {
	case kind == quantity.Volume && measures == "us":
		return "US cup"
	case kind == quantity.Volume && measures == "imperial":
		return "imperial pint"
	case kind == quantity.Length && measures == "us":
		return "in"
	}
	return ""
}

// Place returns the place of the first figure of an uncertainty u above 0: 0.01
// for 0.0144.
func Place(u float64) float64 {
	p := 1.0
	for p > u && p > 1e-9 {
		p /= 10
	}
	for float64(p*10) <= u {
		p = float64(p * 10)
	}
	return p
}

// doubtful writes a value with its unit and what it is sure to within, ± 2 u,
// both to the place of the first figure of its standard uncertainty u: "810 ±
// 30 g/L". The doubt is rounded up.
func (e *Evaluation) doubtful(value, u float64, unit string) string {
	p := Place(u)
	return WithUnit(quantity.FormatTo(value, p, quantity.Nearest, e.Settings.Style)+" ± "+
		quantity.FormatTo(float64(2*u), p, quantity.Up, e.Settings.Style), unit)
}

// Weighable reports whether an output is an amount that can be measured out:
// more than nothing, and more than the scale's or the jug's least.
func (e *Evaluation) Weighable(name string) bool {
	r, _ := e.Result(name)
	return r.Text != "" && (r.Text[0] >= '0' && r.Text[0] <= '9')
}
