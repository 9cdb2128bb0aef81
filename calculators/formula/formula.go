// Package formula builds the few formulas that the calculators show, once, and
// prints them as MathML Core for the page and as a line of text for terminals
// and readers without it. It exists so that no formula is written twice.
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
}

// MathML prints the formula as a <math> element.
//
//	func (f Formula) MathML() string
//
// Text prints it as a line of plain text.
//
//	func (f Formula) Text() string
