package press

import (
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
)

// stagesView is a part of the decoration table in a lesson: rows of lines, or,
// of a single pair, all that the table says.
type stagesView struct {
	ID      string // empty where it has none
	Heading string // key of the words after the names
	Parts   []stagesPart
	Chart   string // address of the whole table
}

// stagesPart is what a block shows of one medium, technique or state.
type stagesPart struct {
	Of     link // the medium, technique or state
	Safety care // of medium and technique in every state
	Lines  []line
	Told   *fate // instead of lines
}

// selection is what a stages block names, looked up.
type selection struct {
	medium    *course.Medium
	technique *course.Technique
	states    []course.State // the one named, else all
	one       bool           // a state is named
}

// stages makes the view of a stages block.
func (i *impression) stages(b *markup.Block, id string, at place) stagesView {
	a := i.selected(*b.Part)
	v := stagesView{ID: id, Heading: "stages-states", Chart: i.whereThere(at, address.Chart)}
	if a.one {
		v.Heading = "stages-pair"
	}
	switch {
	case a.medium == nil && a.technique == nil: // a block names something, so it is the state
		v.Heading = "stages-media"
		v.Parts = []stagesPart{i.statePart(a.states[0], at)}
		return v
	case a.medium != nil && a.technique != nil && !a.one:
		v.Parts = []stagesPart{i.together(a, at)}
		return v
	}
	if a.medium != nil {
		v.Parts = append(v.Parts, i.mediumPart(a, at))
	}
	if a.technique != nil {
		for _, m := range i.mannersAsked(a) {
			v.Parts = append(v.Parts, i.mannerPart(m, a, at))
		}
	}
	return v
}

// mediumPart is a medium state by state, or in one.
func (p *impression) mediumPart(a selection, at place) stagesPart {
	m := *a.medium
	part := stagesPart{Of: link{Title: m.Name, Address: at.to(address.Medium(m.ID))}, Safety: p.care(at, m.Care)}
	for _, s := range a.states {
		l := named(p.mediumIn(m, s, at), s.Name)
		if a.one {
			part.tell(l, m.On[s.ID], p.care(at, careOf(m, s.ID)...), p.exceptions(at, m.ID, "", s.ID))
		} else {
			part.add(l, p.besides(l.Safety, m.Care))
		}
	}
	return part
}

// mannerPart is a technique, for some media, state by state, or in one.
func (p *impression) mannerPart(m manner, a selection, at place) stagesPart {
	part := stagesPart{Of: link{Title: m.name}, Safety: p.care(at, m.care)}
	for _, s := range a.states {
		l := named(p.mannerIn(m, s, at), s.Name)
		if a.one {
			part.tell(l, m.on[s.ID], p.care(at, m.care, m.on[s.ID].Care), p.exceptions(at, "", m.id, s.ID))
		} else {
			part.add(l, p.besides(l.Safety, m.care))
		}
	}
	return part
}

// statePart is all media in a state.
func (p *impression) statePart(s course.State, at place) stagesPart {
	part := stagesPart{Of: link{Title: s.Name, Address: at.to(address.State(s.ID))}}
	for _, m := range p.table.Media {
		l := p.mediumIn(m, s, at)
		part.add(l, l.Safety)
	}
	return part
}

// mannersAsked is the technique that a block names, for the medium that it names
// beside it, else for each group of media.
func (p *impression) mannersAsked(a selection) []manner {
	if a.medium == nil {
		return p.manners(*a.technique, a.states...)
	}
	return []manner{mannerOf(*a.technique, a.medium.ID, a.states)}
}

// together is a medium worked in one way, state by state: of what the table says
// of the two, the worse, so that nobody takes one for the other.
func (p *impression) together(a selection, at place) stagesPart {
	name := a.medium.Name + ", " + strings.ToLower(a.technique.Name)
	part := stagesPart{
		Of:     link{Title: name, Address: at.to(address.Medium(a.medium.ID))},
		Safety: p.care(at, a.medium.Care, a.technique.Care),
	}
	for _, s := range a.states {
		l, way := p.mediumIn(*a.medium, s, at), p.techniqueIn(*a.technique, *a.medium, s, at)
		if l.Verdict == "" || way.Verdict == "" {
			continue
		}
		best := l.Best && way.Verdict == course.Yes || way.Best && l.Verdict == course.Yes
		if l.Verdict != way.Verdict && worse(l.Verdict, way.Verdict) == way.Verdict || l.Verdict == course.Yes && way.Best {
			l = way
		}
		if l.Best = best; l.Verdict != course.Never {
			l.Safety = way.Safety
		}
		part.add(named(l, s.Name), p.besides(l.Safety, a.medium.Care, a.technique.Care))
	}
	return part
}

// add puts a pair into a part as a line, with what its safety has beside that
// of the part. A pair that the table does not have is left out.
func (s *stagesPart) add(l line, beside care) {
	if l.Verdict != "" {
		l.Safety = beside
		s.Lines = append(s.Lines, l)
	}
}

// tell puts the only pair into a part, told in full.
func (s *stagesPart) tell(l line, pair course.Pair, safety care, others []exception) {
	if l.Verdict != "" {
		s.Told = &fate{Name: l.Name, Address: l.Address, Word: l.Verdict, Best: l.Best, Pair: pair, Safety: safety, Exceptions: others}
	}
}

// selected looks up what a stages block names, all of which is there: proof has
// seen to it.
func (i *impression) selected(part markup.Part) selection {
	a := selection{states: i.table.States}
	a.medium, _ = i.table.FindMedium(part.Medium.ID)
	a.technique, _ = i.table.FindTechnique(part.Technique.ID)
	if s, ok := i.table.FindState(part.State.ID); ok {
		a.states, a.one = []course.State{*s}, true
	}
	return a
}
