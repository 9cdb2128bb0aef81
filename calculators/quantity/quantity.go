// Package quantity reads numbers with units the way people type them at a
// bench ("1 745 g", "3,5 L", "4 1/2 in", "2 lb 3 oz") and prints numbers for
// people to read. It exists because a wrong guess at a decimal comma or at
// whose pint is meant spoils a bucket: what has two readings is refused in
// words, with both readings, and never guessed.
//
// Read takes a text through these files in order: clean.go (one kind of space,
// one kind of dash), split.go (number and unit apart), number.go and
// fraction.go (the number), words.go, measures.go and spoons.go (the unit),
// pounds.go (pounds and ounces together). refuse.go holds the sentences that
// more than one of them needs.
//
// It is part of the WebAssembly reactor: no fmt, no reflection, no tables of
// Unicode. All arithmetic is + - * / so that every machine agrees to the last
// bit.
package quantity

import "slipbook/calculators/words"

// Kind is what a number measures.
type Kind string

// The kinds of quantity the calculators ask for.
const (
	Mass        Kind = "mass"        // canonical unit g
	Volume      Kind = "volume"      // canonical unit mL
	Length      Kind = "length"      // canonical unit mm
	Area        Kind = "area"        // canonical unit cm²
	Percent     Kind = "percent"     // canonical unit %
	Temperature Kind = "temperature" // canonical unit °C
	Number      Kind = "number"      // a bare number, canonical unit 1
	Gravity     Kind = "gravity"     // specific gravity, canonical unit 1; "145" is asked about
	Strength    Kind = "strength"    // g dry per 100 mL
	Density     Kind = "density"     // canonical unit g/mL
)

// Kinds lists every kind, in the order of the constants.
func Kinds() []Kind {
	return []Kind{Mass, Volume, Length, Area, Percent, Temperature, Number, Gravity, Strength, Density}
}

// Style is how the course writes numbers, whose measures it means, and in which
// words it refuses.
type Style struct {
	Decimal  byte         // '.' or ','; anything else is read as '.'
	Words    *words.Table // what a refusal says; nil = ids
	Measures string       // "metric", "us" or "imperial": what a bare pint, quart, gallon or cup is; metric = ask
}

// mark is the style's decimal mark.
func (s Style) mark() byte {
	if s.Decimal == ',' {
		return ','
	}
	return '.'
}

// Quantity is a number that was understood.
type Quantity struct {
	Value float64 // in the Kind's canonical unit; always finite
	Unit  string  // the ID of the unit it was given in
	Given float64 // in that unit
	Step  float64 // what the last figure typed stands for, in the canonical unit: 0.1 for 174.5 g, 28.3 for 3 lb 1 oz
}
