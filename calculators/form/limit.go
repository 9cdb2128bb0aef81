package form

import (
	"math"

	"slipbook/calculators/quantity"
)

// outside says in words why a value is refused; empty when it is in range.
func (e *Evaluation) outside(in *Input, value float64) string {
	show := func(x float64) string { return WithUnit(e.Text(x, 7), quantity.Canonical(in.Kind)) }
	low, high := in.Low, in.High
	switch {
	case low.End != NoEnd && (value < low.Value || low.End == Above && value == low.Value):
		why := e.why(in, low)
		switch {
		case why != "" && in.Kind == quantity.Gravity:
			return e.Say("form.read-as", "value", show(value), "why", why)
		case why != "" && (value >= 0 || in.Kind == quantity.Temperature):
			return why
		case low.End == Above:
			return e.Say("form.not-above", "value", show(value), "least", show(low.Value))
		}
		return e.Say("form.too-small", "value", show(value), "least", show(low.Value))
	case high.End != NoEnd && value > high.Value:
		if why := e.why(in, high); why != "" {
			return why
		}
		key := "form.too-large"
		if len(quantity.Units(in.Kind)) > 1 {
			key = "form.too-large-unit"
		}
		return e.Say(key, "value", show(value), "most", show(high.Value))
	case in.Whole && value != math.Trunc(value):
		return e.Say("form.not-whole", "value", show(value))
	}
	return ""
}
