package press

import (
	"slices"

	"slipbook/generator/address"
	"slipbook/generator/course"
)

// hazardsView is the page of all that can hurt somebody: each thing once, what
// to do about it, and with what it comes.
type hazardsView struct {
	framed
	Hazards []hazardView
}

// hazardView is one hazard in full.
type hazardView struct {
	ID, Title, Harm, Do string
	Wear                []string
	Place               string
	Lesson              *link // nil while none teaches it
	Media, Ways         []carrier
	Steps               []string // of work on a pot that puts nothing on it, sentences
	Jars                []string // words for what is harmful as a metal
}

// carrier is something that a hazard comes with.
type carrier struct {
	Of     link // without an address where it has no page
	States []link
}

// hazardsSheets is that page, or nothing while the course has no hazards.
func (i *impression) hazardsSheets() []sheet {
	if len(i.table.Hazards) == 0 {
		return nil
	}
	title, description := i.Say("hazards"), i.Say("hazards-description")
	return []sheet{{address: address.Hazards, title: title, description: description, view: func(at place) (pageView, error) {
		v := hazardsView{framed: framed{Shell: i.shell(at, about{kind: "hazards", title: title, description: description})}}
		v.Shell.Strip = nil
		for _, h := range i.table.Hazards {
			v.Hazards = append(v.Hazards, i.hazard(h, at))
		}
		return v, nil
	}}}
}

// hazard tells a hazard in full.
func (i *impression) hazard(h course.Hazard, at place) hazardView {
	v := hazardView{
		ID: at.id(h.ID), Title: h.Title, Harm: h.Harm, Do: h.Do, Wear: h.Wear,
		Lesson: i.inShort(h, at).Lesson,
		Media:  i.mediaWith(h.ID, at),
		Ways:   i.waysWith(h.ID, at),
		Steps:  i.stepsWith(h.ID),
	}
	if place, there := i.table.FindPlace(h.Place); there {
		v.Place = place.Name
	}
	if carries(i.table.Metals.Care, h.ID) {
		v.Jars = i.table.Metals.Words
	}
	return v
}

// carries reports whether a row of the table names a hazard.
func carries(c course.Care, hazard string) bool { return slices.Contains(c.Hazards, hazard) }

// mediaWith lists the media, products and recipe cards that a hazard comes with.
func (i *impression) mediaWith(hazard string, at place) []carrier {
	var all []carrier
	add := func(name, medium string, own course.Care, on map[string]course.Pair) {
		of := link{Title: name, Address: at.to(address.Medium(medium))}
		states := i.statesWhere(at, medium, func(s string) bool { return carries(on[s].Care, hazard) })
		if carries(own, hazard) {
			all = append(all, carrier{Of: of})
		} else if len(states) > 0 {
			all = append(all, carrier{of, states})
		}
	}
	for _, m := range i.table.Media {
		add(m.Name, m.ID, m.Care, m.On)
	}
	for _, e := range i.table.Exceptions {
		if e.Kind == ofProduct || e.Kind == ofRecipe {
			add(e.Name, e.Medium, e.Care, e.On)
		}
	}
	return all
}

// waysWith lists the ways of working that a hazard comes with.
func (i *impression) waysWith(hazard string, at place) []carrier {
	var all []carrier
	for _, t := range i.table.Techniques {
		states := i.statesWhere(at, wayID(t.ID), func(s string) bool {
			return slices.ContainsFunc(t.On[s], func(c course.Case) bool { return carries(c.Care, hazard) })
		})
		if carries(t.Care, hazard) {
			all = append(all, carrier{Of: link{Title: t.Name, Address: at.to(i.whereToldOf(t))}})
		} else if len(states) > 0 {
			all = append(all, carrier{link{Title: t.Name}, states})
		}
	}
	return all
}

// whereToldOf is where a way of working is told in full: on the page of the
// state that it likes best, else of the first that says anything of it.
func (i *impression) whereToldOf(t course.Technique) string {
	if t.Best != "" {
		return address.State(t.Best) + "#" + wayID(t.ID)
	}
	for _, s := range i.table.States {
		if len(t.On[s.ID]) > 0 {
			return address.State(s.ID) + "#" + wayID(t.ID)
		}
	}
	return ""
}

// statesWhere links the states that a question answers yes to, each to a place
// on its page.
func (i *impression) statesWhere(at place, on string, yes func(state string) bool) []link {
	var links []link
	for _, s := range i.table.States {
		if yes(s.ID) {
			links = append(links, link{Title: s.Name, Address: at.to(address.State(s.ID) + "#" + on)})
		}
	}
	return links
}

// stepsWith lists what is done to a pot between two states, and in the last
// firings, that a hazard comes with.
func (i *impression) stepsWith(hazard string) []string {
	var steps []string
	for _, t := range i.table.Transitions {
		if carries(t.Care, hazard) {
			steps = appendNew(steps, t.Name)
		}
	}
	if carries(i.table.Firing.Care, hazard) {
		steps = appendNew(steps, i.table.Firing.Name)
	}
	return steps
}
