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
	Of    link // the medium, technique or state
	Lines []line
	Told  *fate // instead of lines
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
		of := link{Title: a.medium.Name, Address: relative(page.Address, mediumAddress(a.medium.ID))}
		part := stagesPart{Of: of}
		for _, s := range a.states {
			l := mediumIn(*a.medium, s, page.Address)
			part.add(named(l, s.Name), a, a.medium.On[s.ID], p.exceptions(a.medium.ID, "", s.ID))
		}
		v.Parts = append(v.Parts, part)
	}
	if a.technique != nil {
		for _, m := range p.mannersAsked(a) {
			part := stagesPart{Of: link{Title: m.name}}
			for _, s := range a.states {
				part.add(named(mannerIn(m, s, page.Address), s.Name), a, m.on[s.ID], p.exceptions("", m.id, s.ID))
			}
			v.Parts = append(v.Parts, part)
		}
	}
	if len(v.Parts) == 0 {
		s := a.states[0] // a block names something, so it is the state
		v.Heading = "stages-media"
		part := stagesPart{Of: link{Title: s.Name, Address: relative(page.Address, stateAddress(s.ID))}}
		for _, m := range p.table.Media {
			part.Lines = append(part.Lines, mediumIn(m, s, page.Address))
		}
		v.Parts = append(v.Parts, part)
	}
	return v, nil
}

// mannersAsked is the technique that a block names, for the medium that it names
// beside it, else for each group of media.
func (p *Press) mannersAsked(a asked) []manner {
	if a.medium == nil {
		return p.manners(*a.technique, a.states...)
	}
	m := manner{a.technique.ID, a.technique.Name, a.technique.Best, map[string]course.Pair{}}
	for _, s := range a.states {
		m.on[s.ID] = a.technique.On[s.ID].For(a.medium.ID)
	}
	return []manner{m}
}

// together is a medium worked in one way, state by state: of what the table says
// of the two, the worse, so that nobody takes one for the other.
func (p *Press) together(a asked, from string) stagesPart {
	name := a.medium.Name + ", " + strings.ToLower(a.technique.Name)
	part := stagesPart{Of: link{Title: name, Address: relative(from, mediumAddress(a.medium.ID))}}
	for _, s := range a.states {
		l, way := mediumIn(*a.medium, s, from), techniqueIn(*a.technique, *a.medium, s, from)
		if l.Verdict == "" || way.Verdict == "" {
			continue
		}
		best := l.Best && way.Verdict == course.Yes || way.Best && l.Verdict == course.Yes
		if l.Verdict != way.Verdict && worse(l.Verdict, way.Verdict) == way.Verdict || l.Verdict == course.Yes && way.Best {
			l = way
		}
		l.Best = best
		part.Lines = append(part.Lines, named(l, s.Name))
	}
	return part
}

// add puts a pair into a part. A pair that the table does not have is left out.
func (s *stagesPart) add(l line, a asked, pair course.Pair, others []exception) {
	switch {
	case l.Verdict == "":
	case a.one:
		s.Told = &fate{Name: l.Name, Address: l.Address, Word: l.Verdict, Best: l.Best, Pair: pair, Exceptions: others}
	default:
		s.Lines = append(s.Lines, l)
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
