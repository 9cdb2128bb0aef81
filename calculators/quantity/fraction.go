package quantity

import (
	"slipbook/calculators/decimal"
	"slipbook/calculators/letters"
)

// fraction reads "5/8", "4 1/2" and "4-1/2", without a sign. Whether a
// fraction is allowed is for the unit to say, which is not known yet.
func (b *box) fraction(t *typed) (value, step float64, err error) {
	above, below, _ := letters.Cut(t.number, "/")
	above, below = letters.TrimSuffix(above, " "), letters.TrimPrefix(below, " ")
	whole := "0"
	cut := letters.LastIndexAny(above, " -")
	if cut >= 0 {
		whole, above = above[:cut], above[cut+1:]
	}
	w, okW := natural(ungroup(whole))
	n, okN := natural(above)
	d, okD := natural(below)
	if !okW || !okN || !okD || !grouped(whole, true) {
		return 0, 0, b.notNumber(t.text)
	}
	if d == 0 {
		return 0, 0, b.refuse("divides-by-nothing", "typed", t.signed())
	}
	if cut >= 0 && n >= d {
		return 0, 0, b.refuse("fraction-too-large", "typed", t.signed())
	}
	return (float64(w*d) + n) / d, 1 / d, nil
}

// natural reads a whole number of ASCII digits and nothing else.
func natural(s string) (float64, bool) {
	v, ok := decimal.Parse(s)
	return v, ok && digits(s) == len(s)
}

// parted reports whether fractions of the unit are usual: inches, pounds and
// ounces, spoons, and the measures of a US or British kitchen.
func (u *Unit) parted() bool {
	return u.ID == "in" || u.ID == "lb" || u.ID == "oz" || Whose(u.ID) != "" || letters.HasSuffix(u.ID, "spoon")
}

// noFraction refuses a fraction where the unit is not one that is parted so.
// named says that the text itself named the unit.
func (b *box) noFraction(n *amount, u *Unit, named bool) error {
	plain := n.text
	if u.ID != one {
		plain += " " + u.ID
	}
	switch {
	case b.kind == Length:
		return b.refuse("fraction-inches", "typed", n.typed, "plain", plain)
	case b.kind == Percent && !named && letters.IndexByte(n.typed, ' ') < 0:
		return b.refuse("fraction-percent", "typed", n.typed, "percent", n.text, "part", plainText(float64(100*n.value), 6, b.style))
	}
	return b.refuse("fraction-nowhere", "plain", plain)
}
