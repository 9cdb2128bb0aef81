package formula

// Letter is a quantity's symbol: "D", "SG".
func Letter(name string) Part { return leaf{"mi", name} }

// Number is a number as it is to be shown: "100".
func Number(digits string) Part { return leaf{"mn", digits} }

// Words names a quantity in words: "dry content".
func Words(text string) Part { return leaf{"mtext", text} }

// Op is a sign between two parts, or before one: "=", "+", "−", "×", "·".
func Op(sign string) Part { return operator(sign) }

// Row sets parts side by side. A row inside a row is no more than its parts:
// where they belong together, use Bracket.
func Row(parts ...Part) Part { return row(parts) }

// Equal is a = b.
func Equal(a, b Part) Part { return Row(a, Op("="), b) }

// Bracket sets parts side by side between round brackets.
func Bracket(parts ...Part) Part { return bracket{row(parts)} }

// Fraction is one part over another.
func Fraction(above, below Part) Part { return fraction{above, below} }

// Power raises base to an exponent. A base of more than one piece wants a
// Bracket, in print as on paper.
func Power(base, exponent Part) Part { return power{base, exponent} }

// Root is the square root of a part.
func Root(inside Part) Part { return root{inside} }

// Sub is a letter with an index below it: u with m.
func Sub(base, index Part) Part { return sub{base, index} }

// Lines sets parts one under the other, for what is said in words and is longer
// than a sheet of paper is wide.
func Lines(parts ...Part) Part { return lines(parts) }

// The parts. The set is closed: Part has no exported methods.
type (
	leaf     struct{ element, words string }
	operator string
	row      []Part
	bracket  struct{ inside row }
	fraction struct{ above, below Part }
	power    struct{ base, exponent Part }
	root     struct{ inside Part }
	sub      struct{ base, index Part }
	lines    []Part
)
