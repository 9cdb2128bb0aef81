package quantity

import "unicode/utf8"

// Read understands text as one quantity of the kind. unit is the ID of the
// chosen unit, used when the text names none ("" = canonical); one that does
// not fit the kind is refused whatever the text says. An error is a sentence or
// two for a student: what was typed, what is allowed, an example.
//
// Texts over 64 bytes are refused. Negative numbers are understood: what range
// makes sense is for the asker to say. The value is always finite, and never a
// negative zero.
func Read(text string, kind Kind, unit string, style Style) (Quantity, error) {
	b := &box{kind, style}
	if Canonical(kind) == "" {
		return Quantity{}, b.refuse("no-kind", "typed", b.quote(string(kind)))
	}
	t, err := b.take(text)
	if err != nil {
		return Quantity{}, err
	}
	n, err := b.amount(t)
	if err != nil {
		return Quantity{}, err
	}
	u, err := b.chosen(unit, n)
	if err != nil {
		return Quantity{}, err
	}
	if t.unit != "" {
		if q, ok, err := b.pounds(t, n); ok {
			return q, err
		}
		if hasDigit(t.unit) && spelled(fold(t.unit)) == "" {
			return Quantity{}, b.several(t, n)
		}
		if u, err = b.unit(t.unit, n); err != nil {
			return Quantity{}, err
		}
	}
	return b.measured(n, u, t.unit != "")
}

// take bounds and cleans a text and tells its number and unit apart.
func (b *box) take(text string) (*typed, error) {
	if len(text) > longest {
		return nil, b.refuse("too-long", "wants", b.wants())
	}
	cleaned := clean(text)
	for _, r := range cleaned {
		if r == utf8.RuneError || control(r) {
			return nil, b.broken()
		}
	}
	if cleaned == "" {
		return nil, b.refuse("nothing", "wants", b.wants())
	}
	t, ok := split(cleaned)
	if !ok || t.programming() {
		return nil, b.notNumber(cleaned)
	}
	return t, nil
}

// chosen returns the unit that was chosen beside the box.
func (b *box) chosen(unit string, n *amount) (*Unit, error) {
	if unit == "" {
		unit = Canonical(b.kind)
	}
	return b.unit(unit, n)
}

// gramsAsGravity asks back where a gravity box holds the grams that a measured
// volume weighs: people say "one-fifty" for 1.50.
func (b *box) gramsAsGravity(n *amount) error {
	for _, of := range []struct {
		weight       float64
		volume, size string
	}{{10, "10 mL", "10"}, {100, "100 mL", "100"}, {1000, b.style.say("litre"), "1000"}} {
		if gravity := n.value / of.weight; 1 < gravity && gravity < 3 {
			text := plainText(gravity, 6, b.style)
			if len(text) == len("1.6") {
				text += "0"
			}
			return b.refuse("grams", "gravity", text, "typed", n.text, "volume", of.volume, "size", of.size)
		}
	}
	return nil
}

// measured puts number and unit together, and asks where the number shows that
// something else was meant. named says that the text itself named the unit.
func (b *box) measured(n *amount, u *Unit, named bool) (Quantity, error) {
	if n.fraction && !u.parted() {
		return Quantity{}, b.noFraction(n, u, named)
	}
	if b.kind == Gravity && u.Factor == 1 {
		if err := b.gramsAsGravity(n); err != nil {
			return Quantity{}, err
		}
	}
	return Quantity{Value: float64(n.value * u.Factor), Unit: u.ID, Given: n.value, Step: float64(n.step * u.Factor)}, nil
}
