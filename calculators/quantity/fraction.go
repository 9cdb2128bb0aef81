package quantity

import (
	"strconv"

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
		return 0, 0, refuse("$ divides by 0. Write the fraction as on the rule, for example 4 1/2 in.", t.signed())
	}
	if cut >= 0 && n >= d {
		return 0, 0, refuse("$ has a fraction of 1 or more beside its whole number. Write it as on the rule, for example 4 1/2 in.", t.signed())
	}
	return (float64(w*d) + n) / d, 1 / d, nil
}

// natural reads a whole number of ASCII digits and nothing else.
func natural(s string) (float64, bool) {
	v, err := strconv.ParseFloat(s, 64)
	return v, err == nil && digits(s) == len(s)
}

// noFraction refuses a fraction where the unit is not the inch.
func (b *box) noFraction(n *amount, u *Unit) error {
	plain := n.text
	if u.ID != one {
		plain += " " + u.ID
	}
	if b.kind == Length {
		return refuse("A fraction is read only in inches. Write $ in, or $.", n.typed, plain)
	}
	if b.kind == Percent {
		return refuse("A fraction is read only for a length in inches. Of a hundred that is $: write $ %.", plainText(float64(100*n.value), 6, b.style), plainText(float64(100*n.value), 6, b.style))
	}
	return refuse("A fraction is read only for a length in inches. Write $.", plain)
}
