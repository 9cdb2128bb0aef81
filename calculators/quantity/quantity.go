// Package quantity reads numbers with units the way people type them at a
// bench ("1 745 g", "3,5 L", "4 1/2 in", "2 lb 3 oz") and prints numbers for
// people to read. It exists because a wrong guess at a decimal comma or at
// whose pint is meant spoils a bucket: what has two readings is refused in
// words, with both readings, and never guessed.
//
// It is part of the WebAssembly reactor: no fmt, no reflection, no tables of
// Unicode. All arithmetic is + - * / so that every machine agrees to the last
// bit.
package quantity

// Kind is what a number measures.
type Kind string

// The kinds of quantity the calculators ask for.
const (
	Mass        Kind = "mass"        // canonical unit g
	Volume      Kind = "volume"      // canonical unit mL
	Length      Kind = "length"      // canonical unit mm
	Percent     Kind = "percent"     // canonical unit %
	Temperature Kind = "temperature" // canonical unit °C
	Number      Kind = "number"      // a bare number, canonical unit 1
	Gravity     Kind = "gravity"     // specific gravity, canonical unit 1; "145" is asked about
	Strength    Kind = "strength"    // g dry per 100 mL
)

// Style is how the course writes numbers and whose measures it means.
type Style struct {
	Decimal  byte   // '.' or ','
	Measures string // "metric", "us" or "imperial": what a bare pint, quart, gallon or cup is; metric = ask
}

// Unit is a unit that may be chosen or typed for a Kind.
type Unit struct {
	ID     string // as written in requests and shown: "g", "US fl oz"
	Kind   Kind
	Factor float64 // canonical units in one of it, exact by definition
}

// Quantity is a number that was understood.
type Quantity struct {
	Value float64 // in the Kind's canonical unit
	Unit  string  // the ID of the unit it was given in
	Given float64 // in that unit
}

// Units lists the units of a kind that a chooser offers, canonical first.
//
//	func Units(kind Kind) []Unit
//
// Canonical gives the ID of the canonical unit of a kind.
//
//	func Canonical(kind Kind) string
//
// Read understands text as one quantity of the kind. unit is the ID of the
// chosen unit, used when the text names none ("" = canonical). An error is a
// sentence or two for a student: what was typed, what is allowed, an example.
//
//	func Read(text string, kind Kind, unit string, style Style) (Quantity, error)
//
// Format prints a number with the given count of significant digits in the
// style, without exponent, groups of three parted by thin spaces from 10 000
// on, trailing zeros after the mark dropped.
//
//	func Format(value float64, digits int, style Style) string
