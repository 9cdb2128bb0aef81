package press

import (
	"bytes"
	"fmt"
	"html"
	"slices"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/proof"
)

// owed is the safety of something that a page names, in the form in which the
// page must hold it.
type owed struct {
	name string // "Oxide wash, Bisque"
	form string // one of the theme's pieces
	care care
}

// debts lists how to find what each page owes its reader, by address; it is found
// when the page is made. It asks the table and no view, so that a view or a piece
// of the theme that forgets somebody's hazards is noticed before anything is
// published.
func (i *impression) debts() map[string]func() []owed {
	all := map[string]func() []owed{}
	for _, s := range i.table.States {
		all[address.State(s.ID)] = func() []owed { return i.owedByState(s) }
	}
	for _, m := range i.table.Media {
		all[address.Medium(m.ID)] = func() []owed { return i.owedByMedium(m) }
		all[address.Card(m.ID)] = func() []owed { return i.owedByCard(m) }
	}
	if len(i.table.States) > 0 {
		all[address.Chart] = i.owedByChart
		all[address.Cards] = i.owedByCourseCard
	}
	for _, page := range i.order {
		all[page.Address] = func() []owed { return i.owedByLesson(page) }
	}
	for at, sources := range i.faultsAt {
		all[at] = func() []owed { return i.owedByFaults(at, sources) }
	}
	for _, at := range i.notesOn {
		all[at] = func() []owed { return i.owedByNotes(at) }
	}
	return all
}

// owedByState is the hazards of every medium and way of working, in a line under
// its name and with who may beside it, and again in short for all that is
// allowed.
func (i *impression) owedByState(s course.State) []owed {
	at := place{page: address.State(s.ID)}
	var rows []course.Care
	var all []owed
	entry := func(name string, p course.Pair, own course.Care) {
		c := i.care(at, own, p.Care)
		all = append(all, owed{name, careLine, c}, owed{name, careWho, c})
		if p.Verdict != course.Never {
			rows = append(rows, own, p.Care)
		}
	}
	for _, m := range i.table.Media {
		entry(m.Name, m.On[s.ID], m.Care)
	}
	for _, t := range i.table.Techniques {
		for _, m := range i.manners(t, s) {
			if m.on[s.ID].Verdict != "" {
				entry(m.name, m.on[s.ID], t.Care)
			}
		}
	}
	for _, t := range i.table.Transitions {
		if t.From == s.ID {
			entry(t.Name, course.Pair{Verdict: course.Yes}, t.Care)
		}
	}
	all = append(all, i.owedByList(at, s)...)
	return append(all, owed{s.Name, careShort, i.care(at, rows...)})
}

// owedByMedium is the hazards of the medium before all else, of each way of
// working it in a line, and of each state beside its verdict.
func (i *impression) owedByMedium(m course.Medium) []owed {
	at := place{page: address.Medium(m.ID)}
	all := []owed{{m.Name, careWhole, i.care(at, m.Care)}}
	for _, s := range i.table.States {
		c := i.besides(i.care(at, m.Care, m.On[s.ID].Care), m.Care)
		name := m.Name + ", " + s.Name
		all = append(all, owed{name, careLine, c}, owed{name, careWho, c})
	}
	for _, t := range i.table.Techniques {
		if !goesWith(t, m.ID) {
			continue
		}
		all = append(all, owed{t.Name, careLine, i.besides(i.care(at, t.Care), m.Care)})
		for _, s := range i.table.States {
			both := worse(m.On[s.ID].Verdict, t.On[s.ID].For(m.ID).Verdict)
			if both != "" && both != course.Never {
				c := i.care(at, m.Care, m.On[s.ID].Care, t.Care, t.On[s.ID].For(m.ID).Care)
				all = append(all, owed{t.Name + ", " + s.Name, careMark, i.besides(c, m.Care, t.Care)})
			}
		}
	}
	for _, o := range i.table.Overs {
		other, there := i.table.FindMedium(o.Above)
		if o.Above == m.ID {
			other, there = i.table.FindMedium(o.Under)
		}
		if there && (o.Above == m.ID || o.Under == m.ID) {
			c := i.care(at, other.Care, o.Care)
			all = append(all, owed{other.Name, careLine, c}, owed{other.Name, careWho, c})
		}
	}
	return all
}

// owedByCard is the hazards of the medium before all else, those of single states
// and ways of working in short, and who may beside each verdict.
func (i *impression) owedByCard(m course.Medium) []owed {
	at := place{page: address.Card(m.ID)}
	all := []owed{{m.Name, careWhole, i.care(at, m.Care)}}
	var rows []course.Care
	mark := func(name string, verdict course.Verdict, cares ...course.Care) {
		if verdict != "" && verdict != course.Never {
			rows = append(rows, cares...)
			all = append(all, owed{m.Name + ", " + name, careMark, i.besides(i.care(at, append(cares, m.Care)...), m.Care)})
		}
	}
	for _, s := range i.table.States {
		mark(s.Name, m.On[s.ID].Verdict, m.On[s.ID].Care)
	}
	for _, t := range i.table.Techniques {
		if pair := t.On[m.Best].For(m.ID); goesWith(t, m.ID) {
			mark(t.Name, pair.Verdict, t.Care, pair.Care, m.On[m.Best].Care)
		}
	}
	return append(all, owed{m.Name, careShort, i.besides(i.care(at, rows...), m.Care)})
}

// owedByChart is the marks of every row and cell, and what they stand for.
func (i *impression) owedByChart() []owed {
	at := place{page: address.Chart}
	var all []owed
	row := func(name string, own course.Care, on map[string]course.Pair) {
		all = append(all, owed{name, careMark, i.care(at, own)})
		for _, s := range i.table.States {
			if p := on[s.ID]; p.Verdict != "" && p.Verdict != course.Never {
				all = append(all, owed{name + ", " + s.Name, careMark, i.besides(i.care(at, own, p.Care), own)})
			}
		}
	}
	for _, m := range i.table.Media {
		row(m.Name, m.Care, m.On)
	}
	for _, t := range i.table.Techniques {
		all = append(all, owed{t.Name, careMark, i.care(at, t.Care)})
	}
	for _, s := range i.table.States {
		all = append(all, i.owedByList(at, s)...)
		for _, t := range i.table.Techniques {
			for _, m := range i.manners(t, s) {
				if p := m.on[s.ID]; p.Verdict != "" && p.Verdict != course.Never {
					c := i.care(at, t.Care, p.Care)
					all = append(all, owed{m.name + ", " + s.Name, careMark, c}, owed{m.name + ", " + s.Name, careMark, i.besides(c, t.Care)})
				}
			}
		}
	}
	for _, c := range i.care(at, i.owedByTable()...).Each() {
		all = append(all, owed{c.Hazards[0].Title, careKey, c})
	}
	return all
}

// owedByCourseCard is every hazard in short, and who may beside each medium.
func (i *impression) owedByCourseCard() []owed {
	rows := append(i.owedByTable(), i.table.Firing.Care)
	for _, t := range i.table.Transitions {
		rows = append(rows, t.Care)
	}
	all := []owed{{i.course.Title, careShort, i.care(place{page: address.Cards}, rows...)}}
	for _, m := range i.table.Media {
		all = append(all, owed{m.Name, careMark, i.care(place{page: address.Cards}, m.Care)})
	}
	return all
}

// owedByTable is the rows of all media and ways of working, but for what nobody
// does.
func (i *impression) owedByTable() []course.Care {
	var rows []course.Care
	for _, m := range i.table.Media {
		rows = append(rows, m.Care)
		for _, p := range m.On {
			if p.Verdict != course.Never {
				rows = append(rows, p.Care)
			}
		}
	}
	for _, t := range i.table.Techniques {
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

// owedByLesson is the hazards of what a lesson is about, in a line at its top,
// and of the media and ways that it shows from the table.
func (i *impression) owedByLesson(page *proof.Page) []owed {
	var all []owed
	at := place{page: page.Address}
	about := page.Head.Medium + page.Head.Technique
	if page.Kind == course.LessonPage && about != "" {
		c := i.care(at, i.workCare(page.Head.Medium, page.Head.Technique, "")...)
		all = append(all, owed{about, careLine, c}, owed{about, careWho, c})
	}
	for _, b := range page.Document.Named(markup.StagesBlock) {
		all = append(all, i.owedByBlock(at, *b.Part)...)
	}
	return all
}

// owedByBlock is the hazards of what a block shows from the table: in a line for
// each medium and way of working that it names, or beside each medium of a state.
func (i *impression) owedByBlock(at place, part markup.Part) []owed {
	a := i.selected(part)
	var all []owed
	line := func(name string, rows ...course.Care) {
		c := i.care(at, rows...)
		all = append(all, owed{name, careLine, c}, owed{name, careWho, c})
	}
	switch {
	case a.medium == nil && a.technique == nil:
		return i.owedByList(at, a.states[0])
	case a.medium != nil && a.technique != nil && !a.one:
		line(a.medium.Name, a.medium.Care, a.technique.Care)
		return all
	}
	if m := a.medium; m != nil {
		line(m.Name, m.Care, m.On[part.State.ID].Care)
	}
	if t := a.technique; t != nil {
		for _, m := range i.mannersAsked(a) {
			if pair := m.on[part.State.ID]; !a.one || pair.Verdict != "" {
				line(m.name, t.Care, pair.Care)
			}
		}
	}
	return all
}

// owedByList is the marks of all media that may go on in a state.
func (i *impression) owedByList(at place, s course.State) []owed {
	var all []owed
	for _, m := range i.table.Media {
		if p := m.On[s.ID]; p.Verdict != "" && p.Verdict != course.Never {
			all = append(all, owed{m.Name, careMark, i.care(at, m.Care, p.Care)})
		}
	}
	return all
}

// owedByFaults is the hazards of each medium, and of what lessons about none name, in
// a line over what goes wrong with it.
func (i *impression) owedByFaults(at string, sources []faultsSource) []owed {
	var all []owed
	for _, s := range sources {
		all = append(all, owed{s.name(), careLine, i.care(place{page: at}, i.faultsCare(s)...)})
	}
	return all
}

// owedByNotes is what the notes of all lessons on one page of them owe.
func (i *impression) owedByNotes(at string) []owed {
	var all []owed
	for _, page := range i.order {
		if i.notesOn[page.Unit] == at {
			all = append(all, i.owedByNote(page)...)
		}
	}
	return all
}

// owedByNote is the hazards of what a lesson names, before its notes for
// teaching.
func (i *impression) owedByNote(page *proof.Page) []owed {
	c := i.care(place{page: address.Teaching}, i.lessonCare(page)...)
	if page.Kind != course.LessonPage || len(page.Document.Named(markup.TeachingBlock)) == 0 || !c.Any() {
		return nil
	}
	return []owed{{page.Head.Title, careWhole, c}}
}

// settle makes sure that a finished page holds what it owes: each piece as often
// as it is owed. The first that it lacks is an error.
func (i *impression) settle(s sheet, page []byte) error {
	owes := i.owed[s.address]
	if owes == nil {
		return nil
	}
	times := map[string]int{}
	for _, o := range owes() {
		if !o.care.Any() {
			continue
		}
		piece, err := i.writtenCare(o.form, o.care)
		if err == nil {
			err = i.whole(o, piece)
		}
		if err != nil {
			return err
		}
		if times[string(piece)]++; len(piece) > 0 && bytes.Count(page, piece) < times[string(piece)] {
			return fmt.Errorf("it names %q without its hazards: %s. The theme’s page %q must hold the piece %q wherever it names one",
				o.name, strings.Join(i.said(o.care), ", "), s.kind.template, o.form)
		}
	}
	return nil
}

// said is what a care says in words: the hazards by name, and who may.
func (i *impression) said(c care) []string {
	var all []string
	for _, h := range c.Hazards {
		all = append(all, h.Title)
	}
	if c.Who != "" {
		all = append(all, i.Word(c.Who))
	}
	return all
}

// whole makes sure that a piece of the theme says what it is for: an empty one
// would be found on every page.
func (i *impression) whole(o owed, piece []byte) error {
	var wanted []string
	for _, h := range o.care.Hazards {
		switch o.form {
		case careWhole, careShort:
			wanted = append(wanted, h.Title, h.Short)
		case careLine:
			wanted = append(wanted, h.Title)
		case careMark:
			wanted = append(wanted, h.Marks...)
		case careKey:
			wanted = append(append(wanted, h.Title, h.Short), h.Marks...)
		}
	}
	if o.form == careWhole || o.form == careLine {
		wanted = slices.Concat(wanted, o.care.Wear, o.care.Places)
	}
	if o.care.Who != "" && (o.form == careWhole || o.form == careWho || o.form == careMark) {
		wanted = append(wanted, i.Word(o.care.Who))
	}
	text := html.UnescapeString(string(piece))
	for _, words := range wanted {
		if !strings.Contains(text, words) {
			return fmt.Errorf("the theme’s piece %q does not say %q of %q", o.form, words, o.name)
		}
	}
	return nil
}
