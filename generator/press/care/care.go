// Package care is what pages say of safety: which hazards come with what a page
// names, who may do it, what to wear and where. It exists so that no page words
// these by itself, and so that a page which forgets one is noticed before anybody
// reads it: what a page owes its reader is worked out from the decoration table,
// and Settle counts it in the finished page.
package care

import (
	"slices"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
)

// Hazards stand once, in hazards.yaml. A page that names a medium or a way of
// working prints theirs, which are worked out here and nowhere else, in one of
// the forms below. The theme has a piece of each name.
const (
	Mark   = "care-mark"   // in a word or two beside a verdict: who may, and what to mind
	Who    = "care-who"    // beside a name: who may, where not everybody may
	Line   = "care-line"   // under what is told in full: hazards by name, what to wear, where to work
	Whole  = "care"        // before all else on a page: who may, wear, place, and of each hazard what to do
	Key    = "care-key"    // under the chart: a mark and what it stands for
	Mixing = "care-mixing" // beside what is mixed here: what weighing and mixing call for, in words
	Short  = "care-short"  // on what is printed on one sheet: of each hazard what to do
)

// Forms lists these forms.
var Forms = []string{Mark, Who, Line, Whole, Key, Mixing, Short}

// Care is the safety of something that a page names.
type Care struct {
	Who     string   // key of the words for the people who may; empty = any student
	Wear    []string // each once
	Places  []string // each once
	Hazards []Hazard
	Says    string // in the form Mixing: all of it in words
	About   string // what the hazards come with, where that is not plain; may be empty
}

// Hazard is a hazard with what to do in a few words.
type Hazard struct {
	ID, Title, Short string
	Marks            []string
	Address          string        // of the page of hazards, from this one
	Lesson           *imprint.Link // the lesson behind; nil while none teaches it
}

// WhoWords are the keys of the words for those who may.
var WhoWords = map[course.Who]string{
	course.WithInstructor: "who-with-instructor",
	course.Instructor:     "who-instructor",
}

// Keys of the words for those who may where the table asks for no more, or for less than
// is true of it everywhere.
const (
	FitTested = "who-fit-tested" // nobody handles powder without a respirator that was fitted
	Trained   = "who-trained"    // whom the instructor has trained may load and fire
)

// Rules are what a course says of safety: its decoration table, and where the
// lessons behind are.
type Rules struct {
	Decoration *course.Decoration // empty while the course has none
	Addresses  *address.Map
}

// Care gathers what some rows of the table say of safety together, for a
// place.
func (r *Rules) Care(at imprint.Place, rows ...course.Care) Care {
	hazards, who := r.Decoration.HazardsOf(rows...)
	c := Care{Who: WhoWords[who]}
	for _, h := range hazards {
		for _, w := range h.Wear {
			c.Wear = AppendNew(c.Wear, w)
		}
		if place, there := r.Decoration.FindPlace(h.Place); there {
			c.Places = AppendNew(c.Places, place.Name)
		}
		c.Hazards = append(c.Hazards, r.InShort(h, at))
	}
	return c
}

// InShort is a hazard for a place.
func (r *Rules) InShort(h course.Hazard, at imprint.Place) Hazard {
	short := Hazard{ID: h.ID, Title: h.Title, Short: h.Short, Marks: h.Mark, Address: at.To(address.Hazard(h.ID))}
	if len(short.Marks) == 0 {
		short.Marks = []string{strings.ToLower(h.Title[:1]) + h.Title[1:]}
	}
	if page, there := r.Addresses.Page(h.Lesson); there {
		lesson := imprint.LinkTo(at, page)
		short.Lesson = &lesson
	}
	return short
}

// AppendNew appends what is not there yet.
func AppendNew[T comparable](all []T, more ...T) []T {
	for _, one := range more {
		if !slices.Contains(all, one) {
			all = append(all, one)
		}
	}
	return all
}

// Marks returns the words for a verdict's side, each once.
func (c Care) Marks() []string {
	var marks []string
	for _, h := range c.Hazards {
		marks = AppendNew(marks, h.Marks...)
	}
	return marks
}

// Each returns the hazards one by one.
func (c Care) Each() []Care {
	var all []Care
	for _, h := range c.Hazards {
		all = append(all, Care{Hazards: []Hazard{h}})
	}
	return all
}

// Any reports whether there is anything to mind.
func (c Care) Any() bool { return c.Who != "" || c.Says != "" || len(c.Hazards) > 0 }

// Besides returns the care without the hazards that other rows have told of
// already. Who may stays: it is said beside every verdict.
func (r *Rules) Besides(c Care, told ...course.Care) Care {
	known, _ := r.Decoration.HazardsOf(told...)
	rest := Care{Who: c.Who}
	for _, h := range c.Hazards {
		if !slices.ContainsFunc(known, func(k course.Hazard) bool { return k.ID == h.ID }) {
			rest.Hazards = append(rest.Hazards, h)
		}
	}
	return rest
}

// WorseForHealth reports whether one way is worse for health than another: it
// has a hazard to health that the other lacks, or fewer people may do it. No
// page offers it instead of the other.
func (r *Rules) WorseForHealth(one, other []course.Care) bool {
	hazards, who := r.Decoration.HazardsOf(one...)
	known, whoOther := r.Decoration.HazardsOf(other...)
	for _, h := range hazards {
		if h.Health && !slices.ContainsFunc(known, func(k course.Hazard) bool { return k.ID == h.ID }) {
			return true
		}
	}
	people := []course.Who{course.Student, course.WithInstructor, course.Instructor}
	return slices.Index(people, who) > slices.Index(people, whoOther)
}

// Of is what the table says of the safety of a medium in a state.
func Of(m course.Medium, state string) []course.Care {
	return []course.Care{m.Care, m.On[state].Care}
}

// OfWay is what the table says of the safety of a way of working in a state,
// whatever it is done with; nothing where it may not be done at all.
func OfWay(t course.Technique, state string) []course.Care {
	var rows []course.Care
	for _, c := range t.On[state] {
		if c.Verdict != course.Never {
			rows = append(rows, t.Care, c.Care)
		}
	}
	return rows
}

// WorkCare is what the table says of the safety of a medium, a technique or both,
// by their ids, in a state; without one, in the state that the technique or else
// the medium likes best. What the table does not have says nothing.
func (r *Rules) WorkCare(medium, technique, state string) []course.Care {
	var rows []course.Care
	m, isMedium := r.Decoration.FindMedium(medium)
	t, isTechnique := r.Decoration.FindTechnique(technique)
	if isTechnique && state == "" {
		state = t.Best
	}
	if isMedium {
		if state == "" {
			state = m.Best
		}
		rows = append(rows, Of(*m, state)...)
	}
	if !isTechnique {
		return rows
	}
	if isMedium {
		return append(rows, t.Care, t.On[state].For(medium).Care)
	}
	return append(rows, OfWay(*t, state)...)
}
