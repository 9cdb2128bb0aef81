package table

import (
	"slices"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// hazardsView is the page of all that can hurt somebody: each thing once, what
// to do about it, and with what it comes.
type hazardsView struct {
	imprint.Framed
	Hazards []hazardView
	Paper   string // posters and forms; empty while there are none
}

// hazardView is one hazard in full.
type hazardView struct {
	ID, Title, Harm, Do string
	Wear                []string
	Place               string
	Lesson              *imprint.Link // nil while none teaches it
	Media, Ways         []carrier
	Steps               []string // of work on a pot that puts nothing on it, sentences
	Jars                []string // words for what is harmful as a metal
}

// carrier is something that a hazard comes with.
type carrier struct {
	Of     imprint.Link // without an address where it has no page
	States []imprint.Link
}

// Hazards is that page, or nothing while the course has no hazards.
func (r *Table) Hazards() []imprint.Sheet {
	if len(r.Decoration.Hazards) == 0 {
		return nil
	}
	title, description := r.Say("hazards"), r.Say("hazards-description")
	return []imprint.Sheet{{Address: address.Hazards, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		v := hazardsView{Framed: imprint.Framed{Shell: r.Shell(at, imprint.About{Kind: "hazards", Title: title, Description: description})}, Paper: r.frame.WhereThere(at, address.Paper)}
		v.Shell.Strip = nil
		for _, h := range r.Decoration.Hazards {
			v.Hazards = append(v.Hazards, r.hazard(h, at))
		}
		return v, nil
	}}}
}

// hazard tells a hazard in full.
func (r *Table) hazard(h course.Hazard, at imprint.Place) hazardView {
	v := hazardView{
		ID: at.ID(h.ID), Title: h.Title, Harm: h.Harm, Do: h.Do, Wear: h.Wear,
		Lesson: r.InShort(h, at).Lesson,
		Media:  r.mediaWith(h.ID, at),
		Ways:   r.waysWith(h.ID, at),
		Steps:  r.stepsWith(h.ID),
	}
	if place, there := r.Decoration.FindPlace(h.Place); there {
		v.Place = place.Name
	}
	if carries(r.Decoration.Metals.Care, h.ID) {
		v.Jars = r.Decoration.Metals.Words
	}
	return v
}

// carries reports whether a row of the table names a hazard.
func carries(c course.Care, hazard string) bool { return slices.Contains(c.Hazards, hazard) }

// mediaWith lists the media, products and recipe cards that a hazard comes with.
func (r *Table) mediaWith(hazard string, at imprint.Place) []carrier {
	var all []carrier
	add := func(name, medium string, own course.Care, on map[string]course.Pair) {
		of := imprint.Link{Title: name, Address: at.To(address.Medium(medium))}
		states := r.statesWhere(at, medium, func(s string) bool { return carries(on[s].Care, hazard) })
		if carries(own, hazard) {
			all = append(all, carrier{Of: of})
		} else if len(states) > 0 {
			all = append(all, carrier{of, states})
		}
	}
	for _, m := range r.Decoration.Media {
		add(m.Name, m.ID, m.Care, m.On)
	}
	for _, e := range r.Decoration.Exceptions {
		if e.Kind == ofProduct || e.Kind == ofRecipe {
			add(e.Name, e.Medium, e.Care, e.On)
		}
	}
	return all
}

// waysWith lists the ways of working that a hazard comes with.
func (r *Table) waysWith(hazard string, at imprint.Place) []carrier {
	var all []carrier
	for _, t := range r.Decoration.Techniques {
		states := r.statesWhere(at, wayID(t.ID), func(s string) bool {
			return slices.ContainsFunc(t.On[s], func(c course.Case) bool { return carries(c.Care, hazard) })
		})
		if carries(t.Care, hazard) {
			all = append(all, carrier{Of: imprint.Link{Title: t.Name, Address: at.To(r.whereToldOf(t))}})
		} else if len(states) > 0 {
			all = append(all, carrier{imprint.Link{Title: t.Name}, states})
		}
	}
	return all
}

// whereToldOf is where a way of working is told in full: on the page of the
// state that it likes best, else of the first that says anything of it.
func (r *Table) whereToldOf(t course.Technique) string {
	if t.Best != "" {
		return address.State(t.Best) + "#" + wayID(t.ID)
	}
	for _, s := range r.Decoration.States {
		if len(t.On[s.ID]) > 0 {
			return address.State(s.ID) + "#" + wayID(t.ID)
		}
	}
	return ""
}

// statesWhere links the states that a question answers yes to, each to a place
// on its page.
func (r *Table) statesWhere(at imprint.Place, on string, yes func(state string) bool) []imprint.Link {
	var links []imprint.Link
	for _, s := range r.Decoration.States {
		if yes(s.ID) {
			links = append(links, imprint.Link{Title: s.Name, Address: at.To(address.State(s.ID) + "#" + on)})
		}
	}
	return links
}

// stepsWith lists what is done to a pot between two states, and in the last
// firings, that a hazard comes with.
func (r *Table) stepsWith(hazard string) []string {
	var steps []string
	for _, t := range r.Decoration.Transitions {
		if carries(t.Care, hazard) {
			steps = care.AppendNew(steps, t.Name)
		}
	}
	if carries(r.Decoration.Firing.Care, hazard) {
		steps = care.AppendNew(steps, r.Decoration.Firing.Name)
	}
	return steps
}
