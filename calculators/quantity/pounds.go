package quantity

import (
	"math"

	"slipbook/calculators/letters"
)

// pounds reads "2 lb 3 oz", given as pounds. ok is false when t is something
// else.
func (b *box) pounds(t *typed, lb *amount) (q Quantity, ok bool, err error) {
	ounces, ok := ouncesAfterPounds(t)
	if !ok || b.kind != Mass {
		return Quantity{}, false, nil
	}
	oz, err := b.amount(ounces)
	if err != nil {
		return Quantity{}, true, err
	}
	if t.negative {
		oz.value = -oz.value
	}
	all := plainText(float64(lb.value*16)+oz.value, 6, b.style) + " oz"
	switch {
	case lb.value != math.Trunc(lb.value):
		return Quantity{}, true, b.refuse("whole-pounds", "ounces", all)
	case math.Abs(oz.value) >= 16:
		return Quantity{}, true, b.refuse("too-many-ounces", "ounces", all)
	}
	given := lb.value + oz.value/16
	return Quantity{Value: float64(given * pound), Unit: "lb", Given: given, Step: float64(oz.step * pound / 16)}, true, nil
}

// ouncesAfterPounds returns the second half of "2 lb 3 oz".
func ouncesAfterPounds(t *typed) (*typed, bool) {
	i := letters.IndexAny(t.unit, "0123456789")
	if i < 1 || t.unit[i-1] == '.' || t.unit[i-1] == ',' {
		return nil, false // "2 lb.3 oz" could mean 3 oz or 0.3 oz
	}
	if spelled(fold(letters.TrimSuffix(t.unit[:i], ", "))) != "lb" {
		return nil, false
	}
	second, ok := split(t.unit[i:])
	return second, ok && spelled(fold(second.unit)) == "oz"
}
