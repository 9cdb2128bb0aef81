package quantity

// Unit is a unit that may be chosen or typed for a Kind.
type Unit struct {
	ID     string // as written in requests and shown: "g", "US fl oz"
	Kind   Kind
	Factor float64 // canonical units in one of it, exact by definition

	aside bool // read where it is typed, and offered by no chooser
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
	perLitre       = "g/L"
)

// units lists every unit, kind by kind, the canonical unit of each kind first.
var units = []Unit{
	{ID: "g", Kind: Mass, Factor: 1},
	{ID: "kg", Kind: Mass, Factor: 1000},
	{ID: "oz", Kind: Mass, Factor: pound / 16},
	{ID: "lb", Kind: Mass, Factor: pound},

	{ID: "mL", Kind: Volume, Factor: 1},
	{ID: "cc", Kind: Volume, Factor: 1},
	{ID: "cl", Kind: Volume, Factor: 10, aside: true},
	{ID: "dl", Kind: Volume, Factor: 100, aside: true},
	{ID: "L", Kind: Volume, Factor: 1000},
	{ID: "US fl oz", Kind: Volume, Factor: usGallon / 128},
	{ID: "US cup", Kind: Volume, Factor: usGallon / 16},
	{ID: "US pint", Kind: Volume, Factor: usGallon / 8},
	{ID: "US quart", Kind: Volume, Factor: usGallon / 4},
	{ID: "US gallon", Kind: Volume, Factor: usGallon},
	{ID: "imperial pint", Kind: Volume, Factor: imperialGallon / 8},
	{ID: "imperial gallon", Kind: Volume, Factor: imperialGallon},

	{ID: "mm", Kind: Length, Factor: 1},
	{ID: "cm", Kind: Length, Factor: 10},
	{ID: "in", Kind: Length, Factor: inch},

	{ID: "cm²", Kind: Area, Factor: 1},
	{ID: "in²", Kind: Area, Factor: inch * inch / 100},

	{ID: "%", Kind: Percent, Factor: 1},
	{ID: "°C", Kind: Temperature, Factor: 1},
	{ID: one, Kind: Number, Factor: 1},
	{ID: one, Kind: Gravity, Factor: 1},
	{ID: perHundred, Kind: Strength, Factor: 1},
	{ID: perOne, Kind: Density, Factor: 1},
	{ID: perLitre, Kind: Density, Factor: 0.001, aside: true},
	{ID: perOne, Kind: Gravity, Factor: 1, aside: true}, // the number is the same
	{ID: perLitre, Kind: Gravity, Factor: 0.001, aside: true},
	{ID: "SG", Kind: Gravity, Factor: 1, aside: true},
}

// Units lists the units of a kind that a chooser offers, canonical first. The
// list is the caller's own; it is empty for a kind that does not exist.
func Units(kind Kind) []Unit {
	var of []Unit
	for _, u := range units {
		if u.Kind == kind && !u.aside {
			of = append(of, u)
		}
	}
	return of
}

// Canonical returns the ID of the canonical unit of a kind, or "" for a kind
// that does not exist.
func Canonical(kind Kind) string {
	for i := range units {
		if units[i].Kind == kind {
			return units[i].ID
		}
	}
	return ""
}

// find returns the unit with exactly that ID among the units of a kind, or nil.
// It points into the table: nobody writes there.
func find(kind Kind, id string) *Unit {
	for i := range units {
		if u := &units[i]; u.Kind == kind && u.ID == id {
			return u
		}
	}
	return nil
}

// kindOf returns the kind of the first unit with that ID, or "".
func kindOf(id string) Kind {
	for i := range units {
		if units[i].ID == id {
			return units[i].Kind
		}
	}
	return ""
}
