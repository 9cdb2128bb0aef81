package gathered

import (
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/table"
	"slipbook/generator/proof"
)

// Owes lists how to find what each gathered page owes its reader, by address. It is
// known when the pages are listed.
func (r *Gathered) Owes() map[string]func() []care.Owed {
	all := map[string]func() []care.Owed{}
	for _, m := range r.Decoration.Media {
		if !r.hasCard(m) {
			continue
		}
		all[address.Card(m.ID)] = func() []care.Owed { return r.owedByCard(m) }
	}
	if len(r.Decoration.States) > 0 {
		all[address.Cards] = r.owedByCourseCard
	}
	for at, sources := range r.faultsAt {
		all[at] = func() []care.Owed { return r.owedByFaults(at, sources) }
	}
	for _, at := range r.notesOn {
		all[at] = func() []care.Owed { return r.owedByNotes(at) }
	}
	return all
}

// owedByCard is the hazards of the medium before all else, the foremost of those of
// single states and ways of working in short, and who may beside each verdict.
func (r *Gathered) owedByCard(m course.Medium) []care.Owed {
	at := imprint.Place{Page: address.Card(m.ID)}
	all := []care.Owed{care.Owe(m.Name, care.Whole, r.Care(at, m.Care)), care.Owe(m.Name, care.Mixing, r.MixingCare(m.ID))}
	mark := func(name string, verdict course.Verdict, cares ...course.Care) {
		if verdict != "" && verdict != course.Never {
			all = append(all, care.Owe(m.Name+", "+name, care.Mark, r.Besides(r.Care(at, append(cares, m.Care)...), m.Care)))
		}
	}
	for _, s := range r.Decoration.States {
		mark(s.Name, m.On[s.ID].Verdict, m.On[s.ID].Care)
	}
	for _, t := range r.Decoration.Techniques {
		if pair := t.On[m.Best].For(m.ID); table.GoesWith(t, m.ID) {
			mark(t.Name, pair.Verdict, t.Care, pair.Care, m.On[m.Best].Care)
		}
	}
	some, _ := r.cardSome(m, at)
	return append(all, care.Owe(m.Name, care.Short, some))
}

// owedByCourseCard is the foremost hazards in short, and who may beside each medium.
func (r *Gathered) owedByCourseCard() []care.Owed {
	rows := append(r.OwedRows(), r.Decoration.Firing.Care)
	for _, t := range r.Decoration.Transitions {
		rows = append(rows, t.Care)
	}
	first, _ := foremost(r.Care(imprint.Place{Page: address.Cards}, rows...), r.courseRows(), mostCautions)
	all := []care.Owed{care.Owe(r.reading.Course.Title, care.Short, first)}
	for _, m := range r.Decoration.Media {
		all = append(all, care.Owe(m.Name, care.Mark, r.Care(imprint.Place{Page: address.Cards}, m.Care)))
	}
	return all
}

// owedByFaults is the hazards of what the lessons behind each fault are about, in a line
// over what they say of it.
func (r *Gathered) owedByFaults(at string, sources []faultsSource) []care.Owed {
	var all []care.Owed
	for _, s := range sources {
		all = append(all, care.Owe(s.name(), care.Line, r.Care(imprint.Place{Page: at}, r.faultsCare(s)...)))
	}
	return all
}

// owedByNotes is what the notes of all lessons on one page of them owe.
func (r *Gathered) owedByNotes(at string) []care.Owed {
	var all []care.Owed
	for _, page := range r.reading.Pages {
		if r.notesOn[page.Unit] == at {
			all = append(all, r.owedByNote(page)...)
		}
	}
	return all
}

// owedByNote is the hazards of what a lesson names, before its notes for
// teaching.
func (r *Gathered) owedByNote(page *proof.Page) []care.Owed {
	c := r.Care(imprint.Place{Page: address.Teaching}, r.lessonCare(page)...)
	if page.Kind != course.LessonPage || len(page.Document.Named(markup.TeachingBlock)) == 0 || !c.Any() {
		return nil
	}
	return []care.Owed{care.Owe(page.Head.Title, care.Whole, c)}
}
