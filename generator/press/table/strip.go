package table

import (
	"html/template"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// strip is the clay-state strip at the top of a page: the six states in the
// order a pot passes through them, each a link to what can be done with it.
type strip struct {
	Medium string    // name of the page's medium; empty = no verdicts
	Safety care.Care // of the medium in every state: the strip says who may
	Chart  string    // address of the whole table
	Marks  []mark
}

// mark is one state in a strip.
type mark struct {
	Name, Address, Short string
	Drawing              template.HTML
	Verdict              course.Verdict // of the page's medium; empty without one
	Safety               care.Care      // of it here, where fewer may than elsewhere: who
	Here                 bool           // the page is this state's own
}

// Shell makes the shell of a page with its strip. In book and e-book only the home page and
// the media have one, among whose words it stands.
func (r *Table) Shell(at imprint.Place, a imprint.About) imprint.Shell {
	s := r.frame.Shell(at, a)
	if !at.Bound() || a.Kind == "medium" || a.Kind == "home" {
		if strip := r.strip(a, at); strip != nil {
			s.Strip = strip
		}
	}
	return s
}

// strip makes the strip of a page, or nil when the course has no states, where the
// first box of a calculator should stand in the first screen, and on the chart, whose
// columns are the states.
func (r *Table) strip(a imprint.About, at imprint.Place) *strip {
	if len(r.Decoration.States) == 0 || a.Kind == "calculator-page" || a.Kind == "chart" {
		return nil
	}
	medium, named := r.Decoration.FindMedium(a.Medium)
	s := &strip{Chart: at.To(address.Chart)}
	if named {
		s.Medium, s.Safety = medium.Name, r.Care(at, medium.Care)
	}
	for _, state := range r.Decoration.States {
		m := mark{
			Name:    state.Name,
			Short:   state.Short,
			Address: at.To(address.State(state.ID)),
			Drawing: r.Icons["state-"+state.ID],
			Here:    state.ID == a.State,
		}
		if named {
			m.Verdict = medium.On[state.ID].Verdict
			if a.Kind == "medium" { // where its own page tells why
				m.Address = at.To(address.Medium(medium.ID) + "#" + state.ID)
			}
			if here := r.MediumIn(*medium, state, at).Safety; here.Who != s.Safety.Who {
				m.Safety.Who = here.Who
			}
		}
		s.Marks = append(s.Marks, m)
	}
	return s
}
