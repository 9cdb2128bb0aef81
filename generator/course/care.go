package course

import (
	"fmt"
	"slices"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// hazard returns the id of a hazard. While hazards.yaml could not be read, any
// will do.
func (t *table) hazard(v source.Value) string {
	if !t.hazardsRead {
		return v.Text()
	}
	if len(t.hazards) == 0 {
		v.Report(finding.UnknownName, "there are no hazards", "Write them in hazards.yaml, or take the key out.")
		return ""
	}
	return t.hazards.known(v, "hazard")
}

// readCare reads what a row says of safety. Of a row of the course that is silent,
// what the program's own table says there stays.
func (t *table) readCare(f source.Fields, below Care) Care {
	c := Care{Who: Who(f.Get("who").Choice(string(Student), string(WithInstructor), string(Instructor)))}
	for _, item := range f.Get("hazards").List() {
		if id := t.hazard(item); id != "" && !slices.Contains(c.Hazards, id) {
			c.Hazards = append(c.Hazards, id)
		}
	}
	if f.Get("hazards").Absent() {
		c.Hazards = below.Hazards
	}
	if c.Who == "" {
		c.Who = below.Who
	}
	return c
}

// readWholeCare reads what a medium or a way of working says of safety, which is never
// less than what the program says of it. What is said of one state, or of a firing, may
// be: there a studio knows its people.
func (t *table) readWholeCare(f source.Fields) Care {
	c := t.readCare(f, Care{})
	noneLess(f.Get("hazards"), "hazards")
	if v := f.Get("who"); stricter(Who(v.Below().Text()), c.Who) {
		v.Report(finding.CareLess, fmt.Sprintf("`who: %s` is laxer than the program's own table, which says %s", c.Who, v.Below().Text()), "Take `who` away, or give what is harmless here an id of its own.")
	}
	return c
}

// noneLess reports what a list of the course leaves out of the one that it lies over
// in the program's own table.
func noneLess(v source.Value, what string) {
	own, gone := v.Texts(), []string(nil)
	for _, text := range v.Below().Texts() {
		if !slices.Contains(own, text) {
			gone = append(gone, text)
		}
	}
	if len(gone) > 0 {
		v.Report(finding.CareLess, fmt.Sprintf("`%s` leaves out what the program's own table has here: %s", what, strings.Join(gone, ", ")),
			fmt.Sprintf("Add it, or take `%s` away; what is harmless here gets an id of its own.", what))
	}
}

// stricter reports whether one says more about who may than another.
func stricter(a, b Who) bool { return slices.Index(people, a) > max(0, slices.Index(people, b)) }

// people are those who may, from free to forbidden to students.
var people = []Who{Student, WithInstructor, Instructor}

// HazardsOf returns the hazards that some rows of the table name together, in
// the table's order and each once, and the strictest of the people whom they
// allow.
func (d *Decoration) HazardsOf(rows ...Care) ([]Hazard, Who) {
	var all []Hazard
	for _, h := range d.Hazards {
		if slices.ContainsFunc(rows, func(c Care) bool { return slices.Contains(c.Hazards, h.ID) }) {
			all = append(all, h)
		}
	}
	return all, strictest(rows...)
}

// strictest returns the strictest of the people whom some rows allow; a
// student where none says anything.
func strictest(rows ...Care) Who {
	n := 0
	for _, c := range rows {
		n = max(n, slices.Index(people, c.Who))
	}
	return people[n]
}

// Worn appends what to wear, each once: nitrile gloves are gloves.
func Worn(all []string, more ...string) []string {
	for _, w := range more {
		told := false
		for i, there := range all {
			switch {
			case there == w || strings.HasSuffix(there, " "+w):
				told = true
			case strings.HasSuffix(w, " "+there):
				all[i], told = w, true
			}
		}
		if !told {
			all = append(all, w)
		}
	}
	return all
}

// with returns what two rows say of safety together.
func (c Care) with(other Care) Care {
	both := Care{Hazards: slices.Clone(c.Hazards)}
	for _, id := range other.Hazards {
		if !slices.Contains(both.Hazards, id) {
			both.Hazards = append(both.Hazards, id)
		}
	}
	if c.Who+other.Who != "" {
		both.Who = strictest(c, other)
	}
	return both
}
