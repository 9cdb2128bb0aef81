package quantity

import "slipbook/calculators/letters"

// Texts that hold more than one number are refused, each with the way on that
// its writer most likely needs.

// several refuses a text whose unit, or what stands in its place, holds
// another number.
func (b *box) several(t *typed, n *amount) error {
	rest := t.unit
	for _, sign := range [...]string{"±", "+/-", "+-", "-/+"} {
		if letters.HasPrefix(rest, sign) {
			return b.refuse("doubt", "typed", b.quote(t.text), "number", n.typed)
		}
	}
	for _, word := range [...]string{"to ", "~", "…"} {
		if after, found := letters.CutPrefix(rest, word); found {
			return b.inRange(t, n.typed, letters.TrimPrefix(after, " "))
		}
	}
	for _, mark := range [...]string{"'", "’", "‘"} {
		if after, found := letters.CutPrefix(rest, mark); found && len(after) >= 3 && digits(after[:3]) == 3 && !n.fraction {
			return b.refuse("apostrophe", "typed", b.quote(t.text), "plain", n.typed+after, "spaced", n.typed+" "+after)
		}
	}
	if sum := b.sum(t); sum != "" {
		return b.refuse("two-parts", "typed", b.quote(t.text), "sum", sum)
	}
	key := "two-numbers"
	if b.kind == Mass {
		key = "two-weights"
	}
	return b.refuse(key, "typed", b.quote(t.text), "example", b.example())
}

// sum returns a quantity in two parts, "1.5 kg 200 g", as one in the unit of the
// first; "" where one of them cannot be read.
func (b *box) sum(t *typed) string {
	i := letters.IndexAny(t.unit, "0123456789")
	if i < 1 || t.negative || t.unit[i-1] == '.' { // "2 lb.3 oz" could mean 3 oz or 0.3 oz
		return ""
	}
	if other, ok := split(t.unit[i:]); !ok || other.unit == "" {
		return ""
	}
	first, err := Read(t.signed()+" "+letters.TrimSuffix(letters.TrimSuffix(t.unit[:i], " "), ","), b.kind, "", b.style)
	if err != nil || first.Unit == one {
		return ""
	}
	second, err := Read(t.unit[i:], b.kind, "", b.style)
	u := find(b.kind, first.Unit)
	if err != nil || second.Unit == one || u == nil {
		return ""
	}
	return plainText((first.Value+second.Value)/u.Factor, 6, b.style) + " " + first.Unit
}

// span refuses "1.45-1.5", a number that a dash runs through.
func (b *box) span(t *typed) error {
	low, high, _ := letters.Cut(t.number, "-")
	return b.inRange(t, letters.TrimSuffix(low, " "), letters.TrimPrefix(high, " "))
}

// inRange refuses a range and offers its middle.
func (b *box) inRange(t *typed, low, high string) error {
	from, err := Read(low, Number, "", b.style)
	to, err2 := Read(high, b.kind, "", b.style)
	if err != nil || err2 != nil || to.Given <= from.Given {
		return b.refuse("two-numbers", "typed", b.quote(t.text), "example", b.example())
	}
	return b.refuse("range", "typed", b.quote(t.text), "middle", plainText((from.Given+to.Given)/2, 6, b.style))
}
