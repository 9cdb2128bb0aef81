package course

import (
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
	people := []Who{Student, WithInstructor, Instructor}
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
