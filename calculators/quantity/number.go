package quantity

import (
	"slipbook/calculators/decimal"
	"slipbook/calculators/letters"
)

// amount is a number that was understood, before its unit.
type amount struct {
	typed    string // with its sign
	text     string // for a sentence that says what to write: as typed, a fraction as a decimal
	value    float64
	step     float64 // what its last figure stands for
	fraction bool    // written as a fraction, which only inches may be
}

// amount reads the number of a typed text.
func (b *box) amount(t *typed) (*amount, error) {
	var value, step float64
	var err error
	if n := letters.TrimLeft(t.number, "- "); n != t.number {
		return nil, b.twoSigns(t, n)
	}
	fraction := letters.IndexByte(t.number, '/') >= 0
	if fraction {
		value, step, err = b.fraction(t)
	} else {
		value, step, err = b.decimal(t)
	}
	if err != nil {
		return nil, err
	}
	if t.negative && value != 0 {
		value = -value
	}
	n := &amount{typed: t.signed(), text: t.signed(), value: value, step: step, fraction: fraction}
	if fraction {
		n.text = plainText(value, 6, b.style)
	}
	return n, nil
}

// decimal reads a number without its sign: digits in groups of three or
// ungrouped, with at most one decimal mark of either kind.
func (b *box) decimal(t *typed) (value, step float64, err error) {
	s := t.number
	points, commas := letters.Count(s, "."), letters.Count(s, ",")
	switch {
	case letters.IndexByte(s, '-') >= 0:
		return 0, 0, b.span(t)
	case points > 0 && commas > 0:
		return 0, 0, b.marks(t, "both-marks")
	case points > 1:
		return 0, 0, b.marks(t, "points")
	case commas > 1:
		return 0, 0, b.marks(t, "commas")
	}
	mark := b.style.mark()
	if points+commas == 1 {
		mark = '.'
		if commas == 1 {
			mark = ','
		}
	}
	whole, after, _ := letters.Cut(s, string(rune(mark)))
	if !grouped(whole, true) || !grouped(after, false) {
		return 0, 0, b.groups(t)
	}
	if mark != b.style.mark() && len(after) == 3 && 1 <= len(whole) && len(whole) <= 3 {
		return 0, 0, b.twoReadings(t, whole, after)
	}
	value, ok := decimal.Parse(ungroup(whole) + "." + ungroup(after))
	if !ok {
		return 0, 0, b.notNumber(t.text)
	}
	step = 1
	for range ungroup(after) {
		step /= 10
	}
	return value, step, nil
}

// grouped reports whether the digits of s stand together or in groups of three
// separated by one space; the group farthest from the decimal mark may be shorter.
// No digits at all pass.
func grouped(s string, beforeMark bool) bool {
	if letters.IndexByte(s, ' ') < 0 {
		return true
	}
	groups := letters.Split(s, " ")
	short := len(groups) - 1
	if beforeMark {
		short = 0
	}
	for i, g := range groups {
		if len(g) > 3 || len(g) == 0 || i != short && len(g) != 3 {
			return false
		}
	}
	return true
}

// ungroup takes the spaces out.
func ungroup(s string) string {
	b := make([]byte, 0, len(s))
	for i := 0; i < len(s); i++ {
		if s[i] != ' ' {
			b = append(b, s[i])
		}
	}
	return string(b)
}

// twoSigns refuses a sign after a sign. number is what follows them.
func (b *box) twoSigns(t *typed, number string) error {
	key := "two-signs"
	if t.negative {
		key = "two-minus-signs"
	}
	return b.refuse(key, "typed", b.quote(t.text), "number", number)
}

// marks refuses a number with too many marks.
func (b *box) marks(t *typed, what string) error {
	return b.refuse(what, "typed", t.signed(), "example", b.spell("1 745.5"))
}

// groups refuses digits that spaces part in another way than by threes.
func (b *box) groups(t *typed) error {
	return b.refuse("groups",
		"typed", t.signed(), "example", b.spell("1 745.5"))
}

// twoReadings refuses a number whose mark can be a decimal mark or stand
// between thousands.
func (b *box) twoReadings(t *typed, whole, after string) error {
	small := b.spell(whole + "." + after)
	large, spaced := whole+after, whole+" "+after
	if whole[0] == '0' {
		large = letters.TrimLeft(large[:len(large)-1], "0") + large[len(large)-1:]
		spaced = large
	}
	if t.negative {
		small, large, spaced = "-"+small, "-"+large, "-"+spaced
	}
	return b.refuse("two-readings", "typed", t.signed(), "small", small, "large", large, "spaced", spaced)
}
