package press

import (
	"fmt"
	"strings"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// stagesView is a part of the decoration table in a lesson: rows of lines, or,
// of a single pair, all that the table says.
type stagesView struct {
	Number  int    // on the page, from 1
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

// asked is what a stages block names, looked up.
type asked struct {
	medium    *course.Medium
	technique *course.Technique
	states    []course.State // the one named, else all
	one       bool           // a state is named
}

// stages makes the view of a stages block.
func (p *Press) stages(page *course.Page, b markup.Block) (stagesView, []markup.Problem) {
	a, problems := p.asked(*b.Part)
	if len(problems) > 0 {
		return stagesView{}, problems
	}
	v := stagesView{Number: b.Number, Heading: "stages-states", Chart: relative(page.Address, chartAddress)}
	if a.one {
		v.Heading = "stages-pair"
	}
	if a.medium != nil && a.technique != nil && !a.one {
		v.Parts = append(v.Parts, p.together(a, page.Address))
		return v, nil
	}
	if a.medium != nil {
		v.Parts = append(v.Parts, p.mediumPart(a, page.Address))
	}
	if a.technique != nil {
		for _, m := range p.mannersAsked(a) {
			v.Parts = append(v.Parts, p.mannerPart(m, a, page.Address))
		}
	}
	if len(v.Parts) == 0 { // a block names something, so it is the state
		v.Heading = "stages-media"
		v.Parts = append(v.Parts, p.statePart(a.states[0], page.Address))
	}
	return v, nil
}

// mediumPart is a medium state by state, or in one.
func (p *Press) mediumPart(a asked, from string) stagesPart {
	m := *a.medium
	part := stagesPart{Of: link{Title: m.Name, Address: relative(from, mediumAddress(m.ID))}, Safety: p.care(from, m.Care)}
	for _, s := range a.states {
		l := named(p.mediumIn(m, s, from), s.Name)
		if a.one {
			part.tell(l, m.On[s.ID], p.care(from, careOf(m, s.ID)...), p.exceptions(from, m.ID, "", s.ID))
		} else {
			part.add(l, p.besides(l.Safety, m.Care))
		}
	}
	return part
}

// mannerPart is a technique, for some media, state by state, or in one.
func (p *Press) mannerPart(m manner, a asked, from string) stagesPart {
	part := stagesPart{Of: link{Title: m.name}, Safety: p.care(from, m.care)}
	for _, s := range a.states {
		l := named(p.mannerIn(m, s, from), s.Name)
		if a.one {
			part.tell(l, m.on[s.ID], p.care(from, m.care, m.on[s.ID].Care), p.exceptions(from, "", m.id, s.ID))
		} else {
			part.add(l, p.besides(l.Safety, m.care))
		}
	}
	return part
}

// statePart is all media in a state.
func (p *Press) statePart(s course.State, from string) stagesPart {
	part := stagesPart{Of: link{Title: s.Name, Address: relative(from, stateAddress(s.ID))}}
	for _, m := range p.table.Media {
		l := p.mediumIn(m, s, from)
		part.add(l, l.Safety)
	}
	return part
}

// mannersAsked is the technique that a block names, for the medium that it names
// beside it, else for each group of media.
func (p *Press) mannersAsked(a asked) []manner {
	if a.medium == nil {
		return p.manners(*a.technique, a.states...)
	}
	return []manner{mannerOf(*a.technique, a.medium.ID, a.states)}
}

// together is a medium worked in one way, state by state: of what the table says
// of the two, the worse, so that nobody takes one for the other.
func (p *Press) together(a asked, from string) stagesPart {
	name := a.medium.Name + ", " + strings.ToLower(a.technique.Name)
	part := stagesPart{
		Of:     link{Title: name, Address: relative(from, mediumAddress(a.medium.ID))},
		Safety: p.care(from, a.medium.Care, a.technique.Care),
	}
	for _, s := range a.states {
		l, way := p.mediumIn(*a.medium, s, from), p.techniqueIn(*a.technique, *a.medium, s, from)
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

// asked looks up what a stages block names. What the table lacks is a problem
// at its place in the lesson.
func (p *Press) asked(part markup.Part) (asked, []markup.Problem) {
	a := asked{states: p.table.States}
	var problems []markup.Problem
	miss := func(kind string, n markup.Name, known []string) {
		do := "There is none yet; add it to decoration.yaml."
		if len(known) > 0 {
			do = "Write one of: " + strings.Join(known, ", ") + "."
		}
		problems = append(problems, markup.Problem{
			Offset: n.Offset,
			Rule:   finding.UnknownName,
			Text:   fmt.Sprintf("the decoration table has no %s %q", kind, n.ID),
			Do:     do,
		})
	}
	ok := false
	if id := part.Medium.ID; id != "" {
		if a.medium, ok = p.table.FindMedium(id); !ok {
			miss("medium", part.Medium, idsOf(p.table.Media, func(m course.Medium) string { return m.ID }))
		}
	}
	if id := part.Technique.ID; id != "" {
		if a.technique, ok = p.table.FindTechnique(id); !ok {
			miss("technique", part.Technique, idsOf(p.table.Techniques, func(t course.Technique) string { return t.ID }))
		}
	}
	if id := part.State.ID; id != "" {
		s, ok := p.table.FindState(id)
		if !ok {
			miss("state", part.State, idsOf(p.table.States, func(s course.State) string { return s.ID }))
			return a, problems
		}
		a.states, a.one = []course.State{*s}, true
	}
	return a, problems
}

// idsOf lists the ids of things.
func idsOf[T any](all []T, id func(T) string) []string {
	ids := make([]string, len(all))
	for n, one := range all {
		ids[n] = id(one)
	}
	return ids
}
