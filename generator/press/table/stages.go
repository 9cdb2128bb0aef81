package table

import (
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
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
	Of     imprint.Link // the medium, technique or state
	Safety care.Care    // of medium and technique in every state
	Lines  []Line
	Told   *fate // instead of lines
}

// selection is what a stages block names, looked up.
type selection struct {
	medium    *course.Medium
	technique *course.Technique
	states    []course.State // the one named, else all
	one       bool           // a state is named
}

// Stages makes the view of a stages block.
func (r *Table) Stages(b *markup.Block, id string, at imprint.Place) stagesView {
	a := r.selected(*b.Part)
	v := stagesView{ID: id, Heading: "stages-states", Chart: r.frame.WhereThere(at, address.Chart)}
	if a.one {
		v.Heading = "stages-pair"
	}
	switch {
	case a.medium == nil && a.technique == nil: // a block names something, so it is the state
		v.Heading = "stages-media"
		v.Parts = []stagesPart{r.statePart(a.states[0], at)}
		return v
	case a.medium != nil && a.technique != nil && !a.one:
		v.Parts = []stagesPart{r.together(a, at)}
		return v
	}
	if a.medium != nil {
		v.Parts = append(v.Parts, r.mediumPart(a, at))
	}
	if a.technique != nil {
		for _, m := range r.mannersAsked(a) {
			v.Parts = append(v.Parts, r.mannerPart(m, a, at))
		}
	}
	return v
}

// mediumPart is a medium state by state, or in one.
func (r *Table) mediumPart(a selection, at imprint.Place) stagesPart {
	m := *a.medium
	part := stagesPart{Of: imprint.Link{Title: m.Name, Address: at.To(address.Medium(m.ID))}, Safety: r.Care(at, m.Care)}
	for _, s := range a.states {
		l := Named(r.MediumIn(m, s, at), s.Name)
		if a.one {
			part.tell(l, m.On[s.ID], r.Care(at, care.Of(m, s.ID)...), r.exceptions(at, m.ID, "", s.ID))
		} else {
			part.add(l, r.Besides(l.Safety, m.Care))
		}
	}
	return part
}

// mannerPart is a technique, for some media, state by state, or in one.
func (r *Table) mannerPart(m manner, a selection, at imprint.Place) stagesPart {
	part := stagesPart{Of: imprint.Link{Title: m.name}, Safety: r.Care(at, m.care)}
	for _, s := range a.states {
		l := Named(r.mannerIn(m, s, at), s.Name)
		if a.one {
			part.tell(l, m.on[s.ID], r.Care(at, m.care, m.on[s.ID].Care), r.exceptions(at, "", m.id, s.ID))
		} else {
			part.add(l, r.Besides(l.Safety, m.care))
		}
	}
	return part
}

// statePart is all media in a state.
func (r *Table) statePart(s course.State, at imprint.Place) stagesPart {
	part := stagesPart{Of: imprint.Link{Title: s.Name, Address: at.To(address.State(s.ID))}}
	for _, m := range r.Decoration.Media {
		l := r.MediumIn(m, s, at)
		part.add(l, l.Safety)
	}
	return part
}

// mannersAsked is the technique that a block names, for the medium that it names
// beside it, else for each group of media.
func (r *Table) mannersAsked(a selection) []manner {
	if a.medium == nil {
		return r.manners(*a.technique, a.states...)
	}
	return []manner{mannerOf(*a.technique, a.medium.ID, a.states)}
}

// together is a medium worked in one way, state by state: of what the table says
// of the two, the worse, so that nobody takes one for the other.
func (r *Table) together(a selection, at imprint.Place) stagesPart {
	name := a.medium.Name + ", " + strings.ToLower(a.technique.Name)
	part := stagesPart{
		Of:     imprint.Link{Title: name, Address: at.To(address.Medium(a.medium.ID))},
		Safety: r.Care(at, a.medium.Care, a.technique.Care),
	}
	for _, s := range a.states {
		l, way := r.MediumIn(*a.medium, s, at), r.TechniqueIn(*a.technique, *a.medium, s, at)
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
		part.add(Named(l, s.Name), r.Besides(l.Safety, a.medium.Care, a.technique.Care))
	}
	return part
}

// add puts a pair into a part as a line, with what its safety has beside that
// of the part. A pair that the table does not have is left out.
func (s *stagesPart) add(l Line, beside care.Care) {
	if l.Verdict != "" {
		l.Safety = beside
		s.Lines = append(s.Lines, l)
	}
}

// tell puts the only pair into a part, told in full.
func (s *stagesPart) tell(l Line, pair course.Pair, safety care.Care, others []exception) {
	if l.Verdict != "" {
		s.Told = &fate{Name: l.Name, Address: l.Address, Word: l.Verdict, Best: l.Best, Pair: pair, Safety: safety, Exceptions: others}
	}
}

// selected looks up what a stages block names, all of which is there: proof has
// seen to it.
func (r *Table) selected(part markup.Part) selection {
	a := selection{states: r.Decoration.States}
	a.medium, _ = r.Decoration.FindMedium(part.Medium.ID)
	a.technique, _ = r.Decoration.FindTechnique(part.Technique.ID)
	if s, ok := r.Decoration.FindState(part.State.ID); ok {
		a.states, a.one = []course.State{*s}, true
	}
	return a
}
