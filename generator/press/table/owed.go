package table

import (
	"slipbook/calculators/catalog"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/proof"
)

// Owes lists how to find what each page of the table owes its reader, by address; it
// is found when the page is made. It asks the table and no view, so that a view or a
// piece of the theme that forgets somebody's hazards is noticed before anything is
// published.
func (r *Table) Owes() map[string]func() []care.Owed {
	all := map[string]func() []care.Owed{}
	for _, s := range r.Decoration.States {
		all[address.State(s.ID)] = func() []care.Owed { return r.owedByState(s) }
	}
	for _, m := range r.Decoration.Media {
		all[address.Medium(m.ID)] = func() []care.Owed { return r.owedByMedium(m) }
	}
	if len(r.Decoration.States) > 0 {
		all[address.Chart] = r.owedByChart
		all[address.Calculator(catalog.Plan)] = r.owedByPlanner
	}
	return all
}

// owedByState is the hazards of every medium and way of working, in a line under
// its name and with who may beside it, and again in short for all that is
// allowed.
func (r *Table) owedByState(s course.State) []care.Owed {
	at := imprint.Place{Page: address.State(s.ID)}
	var rows []course.Care
	var all []care.Owed
	entry := func(name string, p course.Pair, own course.Care) {
		c := r.Care(at, own, p.Care)
		all = append(all, care.Owe(name, care.Line, c), care.Owe(name, care.Who, c))
		if p.Verdict != course.Never {
			rows = append(rows, own, p.Care)
		}
	}
	for _, m := range r.Decoration.Media {
		entry(m.Name, m.On[s.ID], m.Care)
	}
	for _, t := range r.Decoration.Techniques {
		for _, m := range r.manners(t, s) {
			if m.on[s.ID].Verdict != "" {
				entry(m.name, m.on[s.ID], t.Care)
			}
		}
	}
	for _, t := range r.Decoration.Transitions {
		if t.From == s.ID {
			entry(t.Name, course.Pair{Verdict: course.Yes}, t.Care)
		}
	}
	all = append(all, r.owedByList(at, s)...)
	return append(all, care.Owe(s.Name, care.Short, r.Care(at, rows...)))
}

// owedByMedium is the hazards of the medium before all else, of each way of
// working it in a line, and of each state beside its verdict.
func (r *Table) owedByMedium(m course.Medium) []care.Owed {
	at := imprint.Place{Page: address.Medium(m.ID)}
	all := []care.Owed{care.Owe(m.Name, care.Whole, r.Care(at, m.Care)), r.owedByMixing(m)}
	for _, s := range r.Decoration.States {
		c := r.Besides(r.Care(at, m.Care, m.On[s.ID].Care), m.Care)
		name := m.Name + ", " + s.Name
		all = append(all, care.Owe(name, care.Line, c), care.Owe(name, care.Who, c))
	}
	for _, t := range r.Decoration.Techniques {
		if !GoesWith(t, m.ID) {
			continue
		}
		all = append(all, care.Owe(t.Name, care.Line, r.Besides(r.Care(at, t.Care), m.Care)))
		for _, s := range r.Decoration.States {
			both := worse(m.On[s.ID].Verdict, t.On[s.ID].For(m.ID).Verdict)
			if both != "" && both != course.Never {
				c := r.Care(at, m.Care, m.On[s.ID].Care, t.Care, t.On[s.ID].For(m.ID).Care)
				all = append(all, care.Owe(t.Name+", "+s.Name, care.Mark, r.Besides(c, m.Care, t.Care)))
			}
		}
	}
	for _, o := range r.Decoration.Overs {
		other, there := r.Decoration.FindMedium(o.Above)
		if o.Above == m.ID {
			other, there = r.Decoration.FindMedium(o.Under)
		}
		if there && (o.Above == m.ID || o.Under == m.ID) {
			c := r.Care(at, other.Care, o.Care)
			all = append(all, care.Owe(other.Name, care.Line, c), care.Owe(other.Name, care.Who, c))
		}
	}
	return all
}

// owedByChart is the marks of every row and cell, and what they stand for.
func (r *Table) owedByChart() []care.Owed {
	at := imprint.Place{Page: address.Chart}
	var all []care.Owed
	row := func(name string, own course.Care, on map[string]course.Pair) {
		all = append(all, care.Owe(name, care.Mark, r.Care(at, own)))
		for _, s := range r.Decoration.States {
			if p := on[s.ID]; p.Verdict != "" && p.Verdict != course.Never {
				all = append(all, care.Owe(name+", "+s.Name, care.Mark, r.Besides(r.Care(at, own, p.Care), own)))
			}
		}
	}
	for _, m := range r.Decoration.Media {
		row(m.Name, m.Care, m.On)
	}
	for _, t := range r.Decoration.Techniques {
		all = append(all, care.Owe(t.Name, care.Mark, r.Care(at, t.Care)))
	}
	for _, s := range r.Decoration.States {
		all = append(all, r.owedByList(at, s)...)
		for _, t := range r.Decoration.Techniques {
			for _, m := range r.manners(t, s) {
				if p := m.on[s.ID]; p.Verdict != "" && p.Verdict != course.Never {
					c := r.Care(at, t.Care, p.Care)
					all = append(all, care.Owe(m.name+", "+s.Name, care.Mark, c), care.Owe(m.name+", "+s.Name, care.Mark, r.Besides(c, t.Care)))
				}
			}
		}
	}
	for _, c := range r.Care(at, r.OwedRows()...).Each() {
		all = append(all, care.Owe(c.Hazards[0].Title, care.Key, c))
	}
	return all
}

// OwedByLesson is the hazards of what a lesson is about, in a line at its top,
// and of the media and ways that it shows from the table.
func (r *Table) OwedByLesson(page *proof.Page) []care.Owed {
	var all []care.Owed
	at := imprint.Place{Page: page.Address}
	about := page.Head.Medium + page.Head.Technique
	if page.Kind == course.LessonPage && about != "" {
		c := r.Care(at, r.WorkCare(page.Head.Medium, page.Head.Technique, "")...)
		all = append(all, care.Owe(about, care.Line, c), care.Owe(about, care.Who, c))
	}
	for _, b := range page.Document.Named(markup.StagesBlock) {
		all = append(all, r.owedByBlock(at, *b.Part)...)
	}
	return all
}

// owedByBlock is the hazards of what a block shows from the table: in a line for
// each medium and way of working that it names, or beside each medium of a state.
func (r *Table) owedByBlock(at imprint.Place, part markup.Part) []care.Owed {
	a := r.selected(part)
	var all []care.Owed
	line := func(name string, rows ...course.Care) {
		c := r.Care(at, rows...)
		all = append(all, care.Owe(name, care.Line, c), care.Owe(name, care.Who, c))
	}
	switch {
	case a.medium == nil && a.technique == nil:
		return r.owedByList(at, a.states[0])
	case a.medium != nil && a.technique != nil && !a.one:
		line(a.medium.Name, a.medium.Care, a.technique.Care)
		return all
	}
	if m := a.medium; m != nil {
		line(m.Name, m.Care, m.On[part.State.ID].Care)
	}
	if t := a.technique; t != nil {
		for _, m := range r.mannersAsked(a) {
			if pair := m.on[part.State.ID]; !a.one || pair.Verdict != "" {
				line(m.name, t.Care, pair.Care)
			}
		}
	}
	return all
}

// owedByList is the marks of all media that may go on in a state.
func (r *Table) owedByList(at imprint.Place, s course.State) []care.Owed {
	var all []care.Owed
	for _, m := range r.Decoration.Media {
		if p := m.On[s.ID]; p.Verdict != "" && p.Verdict != course.Never {
			all = append(all, care.Owe(m.Name, care.Mark, r.Care(at, m.Care, p.Care)))
		}
	}
	return all
}

// OwedRows is the rows of all media and ways of working, but for what nobody
// does.
func (r *Table) OwedRows() []course.Care {
	var rows []course.Care
	for _, m := range r.Decoration.Media {
		rows = append(rows, m.Care)
		for _, p := range m.On {
			if p.Verdict != course.Never {
				rows = append(rows, p.Care)
			}
		}
	}
	for _, t := range r.Decoration.Techniques {
		rows = append(rows, t.Care)
		for _, cell := range t.On {
			for _, c := range cell {
				if c.Verdict != course.Never {
					rows = append(rows, c.Care)
				}
			}
		}
	}
	return rows
}
