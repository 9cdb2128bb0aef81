package press

import (
	"bytes"
	"slices"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
)

// Hazards stand once, in hazards.yaml. A page that names a medium or a way of
// working prints theirs, which are worked out here and nowhere else, in one of
// the forms below. The theme has a piece of each name.
const (
	careMark  = "care-mark"  // in a word or two beside a verdict: who may, and what to mind
	careWho   = "care-who"   // beside a name: who may, where not everybody may
	careLine  = "care-line"  // under what is told in full: hazards by name, what to wear, where to work
	careWhole = "care"       // before all else on a page: who may, wear, place, and of each hazard what to do
	careKey   = "care-key"   // under the chart: a mark and what it stands for
	careShort = "care-short" // on what is printed on one sheet: of each hazard what to do
)

// care is the safety of something that a page names.
type care struct {
	Who     string   // key of the words for the people who may; empty = any student
	Wear    []string // each once
	Places  []string // each once
	Hazards []hazardShort
	About   string // what the hazards come with, where that is not plain; may be empty
}

// hazardShort is a hazard with what to do in a few words.
type hazardShort struct {
	ID, Title, Short string
	Marks            []string
	Address          string // of the page of hazards, from this one
	Lesson           *link  // the lesson behind; nil while none teaches it
}

// whoWords are the keys of the words for those who may.
var whoWords = map[course.Who]string{
	course.WithInstructor: "who-with-instructor",
	course.Instructor:     "who-instructor",
}

// care gathers what some rows of the table say of safety together, for a
// place.
func (p *impression) care(at place, rows ...course.Care) care {
	hazards, who := p.table.HazardsOf(rows...)
	c := care{Who: whoWords[who]}
	for _, h := range hazards {
		for _, w := range h.Wear {
			c.Wear = appendNew(c.Wear, w)
		}
		if place, there := p.table.FindPlace(h.Place); there {
			c.Places = appendNew(c.Places, place.Name)
		}
		c.Hazards = append(c.Hazards, p.inShort(h, at))
	}
	return c
}

// inShort is a hazard for a place.
func (p *impression) inShort(h course.Hazard, at place) hazardShort {
	short := hazardShort{ID: h.ID, Title: h.Title, Short: h.Short, Marks: h.Mark, Address: at.to(address.Hazard(h.ID))}
	if len(short.Marks) == 0 {
		short.Marks = []string{strings.ToLower(h.Title[:1]) + h.Title[1:]}
	}
	if page, there := p.addresses.Page(h.Lesson); there {
		lesson := linkTo(at, page)
		short.Lesson = &lesson
	}
	return short
}

// appendNew appends what is not there yet.
func appendNew[T comparable](all []T, more ...T) []T {
	for _, one := range more {
		if !slices.Contains(all, one) {
			all = append(all, one)
		}
	}
	return all
}

// Marks returns the words for a verdict's side, each once.
func (c care) Marks() []string {
	var marks []string
	for _, h := range c.Hazards {
		marks = appendNew(marks, h.Marks...)
	}
	return marks
}

// Each returns the hazards one by one.
func (c care) Each() []care {
	var all []care
	for _, h := range c.Hazards {
		all = append(all, care{Hazards: []hazardShort{h}})
	}
	return all
}

// Any reports whether there is anything to mind.
func (c care) Any() bool { return c.Who != "" || len(c.Hazards) > 0 }

// besides returns the care without the hazards that other rows have told of
// already. Who may stays: it is said beside every verdict.
func (p *impression) besides(c care, told ...course.Care) care {
	known, _ := p.table.HazardsOf(told...)
	rest := care{Who: c.Who}
	for _, h := range c.Hazards {
		if !slices.ContainsFunc(known, func(k course.Hazard) bool { return k.ID == h.ID }) {
			rest.Hazards = append(rest.Hazards, h)
		}
	}
	return rest
}

// worseForHealth reports whether one way is worse for health than another: it
// has a hazard to health that the other lacks, or fewer people may do it. No
// page offers it instead of the other.
func (p *impression) worseForHealth(one, other []course.Care) bool {
	hazards, who := p.table.HazardsOf(one...)
	known, whoOther := p.table.HazardsOf(other...)
	for _, h := range hazards {
		if h.Health && !slices.ContainsFunc(known, func(k course.Hazard) bool { return k.ID == h.ID }) {
			return true
		}
	}
	people := []course.Who{course.Student, course.WithInstructor, course.Instructor}
	return slices.Index(people, who) > slices.Index(people, whoOther)
}

// careOf is what the table says of the safety of a medium in a state.
func careOf(m course.Medium, state string) []course.Care {
	return []course.Care{m.Care, m.On[state].Care}
}

// wayCare is what the table says of the safety of a way of working in a state,
// whatever it is done with; nothing where it may not be done at all.
func wayCare(t course.Technique, state string) []course.Care {
	var rows []course.Care
	for _, c := range t.On[state] {
		if c.Verdict != course.Never {
			rows = append(rows, t.Care, c.Care)
		}
	}
	return rows
}

// workCare is what the table says of the safety of a medium, a technique or both,
// by their ids, in a state; without one, in the state that the technique or else
// the medium likes best. What the table does not have says nothing.
func (p *impression) workCare(medium, technique, state string) []course.Care {
	var rows []course.Care
	m, isMedium := p.table.FindMedium(medium)
	t, isTechnique := p.table.FindTechnique(technique)
	if isTechnique && state == "" {
		state = t.Best
	}
	if isMedium {
		if state == "" {
			state = m.Best
		}
		rows = append(rows, careOf(*m, state)...)
	}
	if !isTechnique {
		return rows
	}
	if isMedium {
		return append(rows, t.Care, t.On[state].For(medium).Care)
	}
	return append(rows, wayCare(*t, state)...)
}

// writtenCare prints the care in a form, as the theme's pieces do it on a page.
func (p *impression) writtenCare(form string, c care) ([]byte, error) {
	var out bytes.Buffer
	err := p.Pages.ExecuteTemplate(&out, form, c)
	return bytes.TrimSpace(out.Bytes()), err
}
