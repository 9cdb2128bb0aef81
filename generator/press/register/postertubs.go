package register

import (
	"cmp"
	"slices"
	"strings"

	"slipbook/generator/course"
	"slipbook/generator/ghs"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// tubGroup is the tubs that the same people may open, or all of a poster, mixed.
type tubGroup struct {
	Mixed  bool // not of the same people: each name says who
	Barred bool // nobody uses them here
	Safety care.Care
	Class  classView
	Names  []string
	More   int // further ones, for which there was no room
}

// wasteGroup is the tubs of which what is left goes to the same place.
type wasteGroup struct {
	Where string // in the words of their entries; empty where these say nothing
	Names []string
	More  int
}

// badToWeigh reports whether a tub is to be minded where powder is weighed: not every
// student may open it, or its sheet calls for the graver signal word.
func badToWeigh(m *course.Material) bool {
	return m.Form == "powder" && (care.WhoWords[m.Who] != "" || ghs.Signal(m.Class.Statements) == ghs.Danger)
}

// badToBreathe reports whether a tub's sheet says what it does when it is breathed in,
// or leaves open what it does.
func badToBreathe(m *course.Material) bool {
	return m.Class.Says == course.ClassedOpen || slices.ContainsFunc(m.Class.Statements, ghs.Respiratory)
}

// rawMetal reports whether a tub holds a raw oxide or carbonate, which nobody sprays.
func rawMetal(m *course.Material) bool { return slices.Contains(m.Hazards, "raw-metal") }

// badToBurn reports whether what is in a tub gives off fumes in the kiln.
func badToBurn(m *course.Material) bool { return slices.Contains(m.Hazards, "kiln-fume") }

// badToPour reports whether a tub's sheet says that it harms water.
func badToPour(m *course.Material) bool {
	return slices.Contains(ghs.Pictograms(m.Class.Statements), "GHS09")
}

// tubGroups divides the tubs to mind by who may open them, the strictest first. Where
// tubs are emptied they stay together, each with who may.
func (r *Register) tubGroups(p poster, at imprint.Place) []tubGroup {
	var groups []tubGroup
	barred := func(m *course.Material) bool { return p.barred != nil && p.barred(m) }
	if none := r.tubsWhere(func(m *course.Material) bool { return p.tubs(m) && barred(m) }); len(none) > 0 {
		group := r.tubGroup(none, false, at)
		group.Barred, group.Safety = true, care.Care{}
		groups = append(groups, group)
	}
	for _, who := range []course.Who{course.Instructor, course.WithInstructor, course.Student} {
		tubs := r.tubsWhere(func(m *course.Material) bool {
			return p.tubs(m) && !barred(m) && (p.waste || cmp.Or(m.Who, course.Student) == who)
		})
		if len(tubs) > 0 {
			groups = append(groups, r.tubGroup(tubs, p.waste, at))
		}
		if p.waste {
			break
		}
	}
	return groups
}

// tubsWhere returns the tubs of which something is so, by their names.
func (r *Register) tubsWhere(is func(*course.Material) bool) []*course.Material {
	return slices.DeleteFunc(byName(r.reading.Course.Materials), func(m *course.Material) bool { return !is(m) })
}

// tubGroup puts together what is said of some tubs.
func (r *Register) tubGroup(tubs []*course.Material, mixed bool, at imprint.Place) tubGroup {
	g := tubGroup{Class: r.classOf(tubs...), Mixed: mixed}
	var rows []course.Care
	var wear []string
	for _, m := range tubs {
		name := m.Name
		if who := care.WhoWords[m.Who]; mixed && who != "" {
			name += " (" + r.Word(who) + ")"
		}
		rows, wear, g.Names = append(rows, m.Care), append(wear, m.Wear...), append(g.Names, name)
	}
	g.Safety = r.ofPowder(r.Care(at, rows...))
	g.Safety.Wear, g.Safety.Places = course.Worn(nil, append(g.Safety.Wear, wear...)...), nil
	if mixed {
		g.Safety.Who = ""
	}
	return g
}

// wasteGroups lists where what is left of each tub goes, the place of most tubs first.
func (r *Register) wasteGroups() []wasteGroup {
	var groups []wasteGroup
	for _, m := range byName(r.reading.Course.Materials) {
		n := slices.IndexFunc(groups, func(g wasteGroup) bool { return g.Where == m.Waste })
		if n < 0 {
			n, groups = len(groups), append(groups, wasteGroup{Where: m.Waste})
		}
		groups[n].Names = append(groups[n].Names, m.Name)
	}
	slices.SortStableFunc(groups, func(a, b wasteGroup) int {
		return cmp.Or(cmp.Compare(len(b.Names), len(a.Names)), strings.Compare(a.Where, b.Where))
	})
	return groups
}
