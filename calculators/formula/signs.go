package formula

// The signs and numbers that most formulas use.
var (
	Plus    Part = operator("+")
	Minus   Part = operator("−")
	Times   Part = operator("×")
	One     Part = leaf{"mn", "1"}
	Hundred Part = leaf{"mn", "100"}
)
