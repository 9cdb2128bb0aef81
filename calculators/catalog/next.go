package catalog

import (
	"slipbook/calculators/letters"
	"slipbook/calculators/quantity"
)

// Next is a calculator to go on to from an answer, with numbers carried over.
type Next struct {
	Words      string // what is done there: "Make the bucket thinner or thicker"
	Calculator string
	Carry      []Carry
	If         string // an output that the answer must have for it; empty = always
}

// Carry takes an output, or an input as it was typed, into an input of the
// next calculator. What the answer does not have is left out.
type Carry struct{ Into, From string }

// Onward is a next calculator of an answer.
type Onward struct {
	Words   string
	Request string // encoded: what stands behind "?" in the address of its form, filled in
}

// onward makes the answer's next calculators of those declared.
func (b *bench) onward() {
	for _, next := range b.calculator.Next {
		if _, ok := b.result(next.If); next.If != "" && !ok {
			continue
		}
		var given []Setting
		for _, c := range next.Carry {
			given = append(given, b.carried(c)...)
		}
		b.answer.Next = append(b.answer.Next, Onward{next.Words, Request(next.Calculator, given)})
	}
}

// carried writes a number for the next form. Links use the decimal point; the
// number is what its text was rounded to, so that a reader knows it again.
func (b *bench) carried(c Carry) []Setting {
	point := quantity.Style{Decimal: '.'}
	if r, ok := b.result(c.From); ok && !r.IsText {
		text := quantity.FormatPlaces(r.Value, 4, b.calculator.Output(c.From).Places, point)
		if r.u > 0 {
			text = quantity.FormatPlaces(quantity.RoundTo(r.Value, place(r.u), quantity.Nearest), 12, b.calculator.Output(c.From).Places, point)
		}
		return b.withUnitOf(c.Into, plain(text), r.Unit)
	}
	g := b.given(c.From)
	switch {
	case g == nil || !b.typed(c.From):
		return nil
	case len(g.typed) == 0:
		return []Setting{{c.Into, g.Text}}
	}
	return b.withUnitOf(c.Into, number(g.typed[0].Given), g.typed[0].Unit)
}

// plain takes the spaces out of a printed number.
func plain(text string) string { return letters.ReplaceAll(text, "\u202f", "") }

// withUnitOf gives an input with its unit. A number with exactly three digits
// behind its point gets a fourth where the comma is decimal: "1.605" could also
// be 1605 there.
func (b *bench) withUnitOf(name, text, unit string) []Setting {
	if _, after, found := letters.Cut(text, "."); found && len(after) == 3 && b.settings.Style.Decimal == ',' {
		text += "0"
	}
	if unit == "1" {
		return []Setting{{name, text}}
	}
	return []Setting{{name, text}, {name + ".unit", unit}}
}
