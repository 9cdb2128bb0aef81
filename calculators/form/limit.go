package form

import (
	"math"

	"slipbook/calculators/quantity"
)

// Outside says in words why a value is refused; empty when it is in range.
func (in *Input) Outside(value float64, style quantity.Style) string {
	show := func(x float64) string {
		return WithUnit(quantity.Format(x, 7, style), quantity.Canonical(in.Kind))
	}
	low, high := in.Low, in.High
	switch {
	case low.End != NoEnd && (value < low.Value || low.End == Above && value == low.Value):
		if low.Why != "" && in.Kind == quantity.Gravity {
			return "This was read as " + show(value) + ". " + low.Why
		}
		if low.Why != "" && (value >= 0 || in.Kind == quantity.Temperature) {
			return low.Why
		}
		if low.End == Above {
			return "This was read as " + show(value) + ", but it has to be more than " + show(low.Value) + "."
		}
		return "This was read as " + show(value) + ", but it cannot be less than " + show(low.Value) + "."
	case high.End != NoEnd && value > high.Value:
		if high.Why != "" {
			return high.Why
		}
		return "This was read as " + show(value) + ", but it cannot be more than " + show(high.Value) + "." + in.unitDoubt()
	case in.Whole && value != math.Trunc(value):
		return "This was read as " + show(value) + ", but it has to be a whole number."
	}
	return ""
}

// unitDoubt asks about the unit where there is more than one.
func (in *Input) unitDoubt() string {
	if len(quantity.Units(in.Kind)) > 1 {
		return " Is the unit right?"
	}
	return ""
}
