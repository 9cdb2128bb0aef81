// Package formula builds the few formulas that the calculators show, once, and
// prints them as MathML Core for the page and as a line of text for terminals
// and readers without it. It exists so that no formula is written twice.
//
// A formula is put together from the parts in parts.go. MathML shows a
// fraction, a root or a raised exponent by where it stands; a line of text
// cannot, so Text adds the brackets that the places stood for, and no others.
// Brackets that both need are a part of the formula: Bracket.
//
// It is part of the WebAssembly reactor: no fmt, no html.
package formula

// Formula is one shown formula.
type Formula struct {
	Math  Part
	Where []Symbol // what its letters mean, in order
}

// Symbol explains one letter of a formula.
type Symbol struct{ Letter, Means string }

// Part is a piece of a formula.
type Part interface {
	mathML(b []byte) []byte
	text(b []byte) []byte
	tie() tie
}

// MathML prints the formula as a <math> element on a line of its own, without
// style or line breaks; "" when it has no Math. Where is not in it: the page
// lists it in words.
func (f Formula) MathML() string {
	if f.Math == nil {
		return ""
	}
	b := append([]byte(nil), `<math xmlns="http://www.w3.org/1998/Math/MathML" display="block">`...)
	b = f.Math.mathML(b)
	return string(append(b, "</math>"...))
}

// Text prints the formula as a line of plain text: "D = (M − V) × s / (s − 1)";
// "" when it has no Math.
func (f Formula) Text() string {
	if f.Math == nil {
		return ""
	}
	return string(f.Math.text(nil))
}
