package quantity

// Unit is a unit that may be chosen or typed for a Kind.
type Unit struct {
	ID     string // as written in requests and shown: "g", "US fl oz"
	Kind   Kind
	Factor float64 // canonical units in one of it, exact by definition
}

// The definitions that the other factors follow from. They are constants, so
// the compiler works with exact fractions and rounds each factor only once.
const (
	pound          = 453.59237                // g; international pound of 1959
	inch           = 25.4                     // mm; international inch of 1959
	usGallon       = 231 * 2.54 * 2.54 * 2.54 // mL; 231 cubic inches
	imperialGallon = 4546.09                  // mL; Weights and Measures Act 1985
	one            = "1"                      // the unit of numbers that have none
	perHundred     = "g/100 mL"               // the unit of strength
	perOne         = "g/mL"                   // the unit of density; g/cm³ and kg/L are the same
)

// units lists every unit, kind by kind, the canonical unit of each kind first.
var units = []Unit{
	{"g", Mass, 1},
	{"kg", Mass, 1000},
	{"oz", Mass, pound / 16},
	{"lb", Mass, pound},

	{"mL", Volume, 1},
	{"cc", Volume, 1},
	{"L", Volume, 1000},
	{"US fl oz", Volume, usGallon / 128},
	{"US cup", Volume, usGallon / 16},
	{"US pint", Volume, usGallon / 8},
	{"US quart", Volume, usGallon / 4},
	{"US gallon", Volume, usGallon},
	{"imperial pint", Volume, imperialGallon / 8},
	{"imperial gallon", Volume, imperialGallon},

	{"mm", Length, 1},
	{"cm", Length, 10},
	{"in", Length, inch},

	{"%", Percent, 1},
	{"°C", Temperature, 1},
	{one, Number, 1},
	{one, Gravity, 1},
	{perHundred, Strength, 1},
	{perOne, Density, 1},
}

// Units lists the units of a kind that a chooser offers, canonical first. The
// list is the caller's own; it is empty for a kind that does not exist.
func Units(kind Kind) []Unit {
	var of []Unit
	for _, u := range units {
		if u.Kind == kind {
			of = append(of, u)
		}
	}
	return of
}

// Canonical gives the ID of the canonical unit of a kind, or "" for a kind
// that does not exist.
func Canonical(kind Kind) string {
	for i := range units {
		if units[i].Kind == kind {
			return units[i].ID
		}
	}
	return ""
}

// find gives the unit with exactly that ID among the units of a kind, or nil.
// It points into the table: nobody writes there.
func find(kind Kind, id string) *Unit {
	for i := range units {
		if u := &units[i]; u.Kind == kind && u.ID == id {
			return u
		}
	}
	return nil
}

// kindOf gives the kind of the first unit with that ID, or "".
func kindOf(id string) Kind {
	for i := range units {
		if units[i].ID == id {
			return units[i].Kind
		}
	}
	return ""
}
