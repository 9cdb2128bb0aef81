package course

import "slices"

// leachLimit is the most of a metal that may come out of ware: the strictest of the
// limits that were read. testdata/published/leach-limits.csv has them all, with the
// sources: the FDA's guides CPG 545.450 and 545.400, and Directive 84/500/EEC.
type leachLimit struct {
	metal, ware string
	litre       float64 // mg/L
	surface     float64 // mg/dm²; 0: none was read
}

var leachLimits = []leachLimit{
	{"lead", "flatware", 3, 0.8},
	{"lead", "cup", 0.5, 0},
	{"lead", "small-hollowware", 2, 0},
	{"lead", "large-hollowware", 1, 0},
	{"lead", "jug", 0.5, 0},
	{"lead", "cooking-ware", 1, 0},
	{"lead", "storage", 1, 0},
	{"cadmium", "flatware", 0.5, 0.07},
	{"cadmium", "cup", 0.3, 0},
	{"cadmium", "small-hollowware", 0.3, 0},
	{"cadmium", "large-hollowware", 0.25, 0},
	{"cadmium", "jug", 0.25, 0},
	{"cadmium", "cooking-ware", 0.1, 0},
	{"cadmium", "storage", 0.1, 0},
}

// LeachLimit returns the most (in the unit of the figure) of a metal that may come out
// of ware; whether one was read.
func LeachLimit(ware string, found Leached) (most float64, known bool) {
	i := slices.IndexFunc(leachLimits, func(l leachLimit) bool { return l.metal == found.Metal && l.ware == ware })
	if i < 0 {
		return 0, false
	}
	switch l := leachLimits[i]; found.Unit {
	case "mg/L", "µg/mL":
		return l.litre, true
	case "µg/L":
		return l.litre * 1000, true
	case "mg/dm²":
		return l.surface, l.surface > 0
	case "µg/dm²":
		return l.surface * 1000, l.surface > 0
	}
	return 0, false
}

// limited are the metals that have limits.
var limited = []string{"lead", "cadmium"}

// overLimit reports whether more of a limited metal came out than the strictest limit
// read, or so much that nobody can say in its unit whether it did.
func (l *Leach) overLimit() bool {
	return slices.ContainsFunc(l.Found, func(f Leached) bool {
		most, known := LeachLimit(l.Ware, f)
		return slices.Contains(limited, f.Metal) && (!known || f.Amount > most)
	})
}

// failedSince reports whether a real pot of the same colour, clear and fire failed on
// the day of a report or later, whatever its batch: what failed once is not trusted on
// an older paper.
func (c *Course) failedSince(l *Leach) bool {
	return slices.ContainsFunc(c.Leach, func(o *Leach) bool {
		return !o.Passed && !o.Invented && o.Date >= l.Date && o.Recipe == l.Recipe && o.Colour == l.Colour && o.Clear == l.Clear && o.Cone == l.Cone
	})
}

// heavy reports whether the clear over a combination holds lead or cadmium, as its
// entry says.
func (c *Course) heavy(l *Leach) bool {
	m, there := c.FindMaterial(l.Clear)
	return there && slices.ContainsFunc(slices.Concat(m.Metals, m.Holds), func(metal string) bool { return slices.Contains(limited, metal) })
}
