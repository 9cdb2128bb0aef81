package form

import (
	"slipbook/calculators/letters"
	"slipbook/calculators/quantity"
)

// Next is a calculator to go on to from an answer, with numbers carried over.
// What is done there is said after the calculator's name and ".next.".
type Next struct {
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
func (e *Evaluation) onward() {
	for _, next := range e.Calculator.Next {
		if _, ok := e.Result(next.If); next.If != "" && !ok {
			continue
		}
		var given []Setting
		for _, c := range next.Carry {
			given = append(given, e.carried(c)...)
		}
		e.Answer.Next = append(e.Answer.Next, Onward{e.Settings.Words.Text(e.Calculator.Name + ".next." + next.Calculator), Request(next.Calculator, given)})
	}
}

// carried writes a number for the next form. Links use the decimal point; the
// number is what its text was rounded to, so that a reader knows it again.
func (e *Evaluation) carried(c Carry) []Setting {
	point := quantity.Style{Decimal: '.'}
	if r, ok := e.Result(c.From); ok && !r.IsText {
		text := quantity.FormatPlaces(r.Value, 4, e.Calculator.Output(c.From).Places, point)
		if r.Doubt > 0 {
			text = quantity.FormatPlaces(quantity.RoundTo(r.Value, Place(r.Doubt), quantity.Nearest), 12, e.Calculator.Output(c.From).Places, point)
		}
		return e.withUnitOf(c.Into, plain(text), r.Unit)
	}
	g := e.Given(c.From)
	switch {
	case g == nil || !e.Typed(c.From):
		return nil
	case len(g.AsTyped) == 0:
		return []Setting{{c.Into, g.Text}}
	}
	return e.withUnitOf(c.Into, number(g.AsTyped[0].Given), g.AsTyped[0].Unit)
}

// plain takes the spaces out of a printed number.
func plain(text string) string { return letters.ReplaceAll(text, "\u202f", "") }

// withUnitOf returns an input with its unit. A number with exactly three digits
// behind its point gets a fourth where the comma is decimal: "1.605" could also
// be 1605 there.
func (e *Evaluation) withUnitOf(name, text, unit string) []Setting {
	if _, after, found := letters.Cut(text, "."); found && len(after) == 3 && e.Settings.Style.Decimal == ',' {
		text += "0"
	}
	if unit == "1" {
		return []Setting{{name, text}}
	}
	return []Setting{{name, text}, {name + ".unit", unit}}
}
