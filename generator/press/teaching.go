package press

import (
	"html/template"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/proof"
)

// teachingView is the page of all notes for teaching, which only a copy for the
// instructor has.
type teachingView struct {
	framed
	Parts   []teachingPart
	Further []link // other pages of it, where it does not fit one
}

// teachingPart is the notes of one unit.
type teachingPart struct {
	Unit  link
	Notes []teachingNote
}

// teachingNote is the notes of one lesson, with what it asks for.
type teachingNote struct {
	Lesson link
	Time   course.Duration
	Needs  []string
	Safety care // of what the lesson is about
	Notes  []template.HTML
}

// teachingSheets is that page in a copy for the instructor, nothing in others.
func (i *impression) teachingSheets() []sheet {
	if !i.forTeaching {
		return nil
	}
	g := gathering[*course.Unit]{
		address: address.Teaching, title: i.Say("teaching-page"), description: i.Say("teaching-description"), size: i.teachingSize, name: unitName,
		view: func(at place, g gatheredPage, units []*course.Unit) (pageView, error) {
			v := teachingView{
				framed:  framed{Shell: i.shell(at, about{kind: "teaching", title: g.title, description: g.description, gathered: true})},
				Further: g.links(at),
			}
			for _, u := range units {
				p, err := i.teachingPart(u, at)
				if err != nil {
					return nil, err
				}
				v.Parts = append(v.Parts, p)
			}
			return v, nil
		},
		found: func(u *course.Unit, address string) { i.notesOn[u] = address },
	}
	for _, u := range i.course.Units {
		if i.teachingSize(u) > 0 {
			g.parts = append(g.parts, u)
		}
	}
	return g.sheets()
}

// aroundNotes is how many bytes the notes of a lesson are thought to take beside
// their words: its hazards stand with them.
const aroundNotes = 1_500

// teachingSize is how many bytes the notes of a unit are thought to take.
func (i *impression) teachingSize(u *course.Unit) int {
	size := 0
	for _, lesson := range u.Lessons {
		page := i.documents[lesson]
		for n, b := range page.Document.Named(markup.TeachingBlock) {
			if n == 0 {
				size += aroundNotes
			}
			size += wordsSize(page, b.Pieces)
		}
	}
	return size
}

// teachingPart gathers the notes of a unit.
func (i *impression) teachingPart(u *course.Unit, at place) (teachingPart, error) {
	part := teachingPart{}
	if u.Page != nil {
		part.Unit = linkTo(at, u.Page)
	}
	for _, lesson := range u.Lessons {
		page := i.documents[lesson]
		blocks := page.Document.Named(markup.TeachingBlock)
		if len(blocks) == 0 {
			continue
		}
		note := teachingNote{Lesson: linkTo(at, lesson), Time: lesson.Head.TimeRequired, Needs: lesson.Head.Needs, Safety: i.care(at, i.lessonCare(page)...)}
		for _, b := range blocks {
			piece, err := i.gathered(page, b.Pieces, at)
			if err != nil {
				return part, err
			}
			note.Notes = append(note.Notes, piece)
		}
		part.Notes = append(part.Notes, note)
	}
	return part, nil
}

// lessonCare is what the table says of the safety of all that a lesson names: the
// medium and the way of working that it is about, and those that it shows from
// the table.
func (i *impression) lessonCare(page *proof.Page) []course.Care {
	rows := i.workCare(page.Head.Medium, page.Head.Technique, "")
	for _, b := range page.Document.Named(markup.StagesBlock) {
		rows = append(rows, i.workCare(b.Part.Medium.ID, b.Part.Technique.ID, b.Part.State.ID)...)
	}
	return rows
}
