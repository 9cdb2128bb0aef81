package press

import (
	"html/template"

	"slipbook/generator/address"
	"slipbook/generator/course"
)

// strip is the clay-state strip at the top of a page: the six states in the
// order a pot passes through them, each a link to what can be done with it.
type strip struct {
	Medium string // name of the page's medium; empty = no verdicts
	Safety care   // of the medium in every state: the strip says who may
	Chart  string // address of the whole table
	Marks  []mark
}

// mark is one state in a strip.
type mark struct {
	Name, Address, Short string
	Drawing              template.HTML
	Verdict              course.Verdict // of the page's medium; empty without one
	Safety               care           // of it here, where fewer may than elsewhere: who
	Here                 bool           // the page is this state's own
}

// strip makes the strip of a page, or nil when the course has no states and
// where the first box of a calculator should stand in the first screen.
func (i *impression) strip(a about, at place) *strip {
	if len(i.table.States) == 0 || a.kind == "calculator-page" {
		return nil
	}
	medium, named := i.table.FindMedium(a.medium)
	s := &strip{Chart: at.to(address.Chart)}
	if named {
		s.Medium, s.Safety = medium.Name, i.care(at, medium.Care)
	}
	for _, state := range i.table.States {
		m := mark{
			Name:    state.Name,
			Short:   state.Short,
			Address: at.to(address.State(state.ID)),
			Drawing: i.Icons["state-"+state.ID],
			Here:    state.ID == a.state,
		}
		if named {
			m.Verdict = medium.On[state.ID].Verdict
			if here := i.mediumIn(*medium, state, at).Safety; here.Who != s.Safety.Who {
				m.Safety.Who = here.Who
			}
		}
		s.Marks = append(s.Marks, m)
	}
	return s
}
