package gathered

import (
	"html/template"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/setting"
	"slipbook/generator/proof"
)

// teachingView is the page of all notes for teaching, which only a copy for the
// instructor has.
type teachingView struct {
	imprint.Framed
	Parts   []teachingPart
	Further []imprint.Link // other pages of it, where it does not fit one
}

// teachingPart is the notes of one unit.
type teachingPart struct {
	Unit  imprint.Link
	Notes []teachingNote
}

// teachingNote is the notes of one lesson, with what it asks for.
type teachingNote struct {
	Lesson imprint.Link
	Time   course.Duration
	Needs  []string
	Sheets []imprint.Link // of the classes that go with it
	Safety care.Care      // of what the lesson is about
	Notes  []template.HTML
}

// Teaching is that page in a copy for the instructor, nothing in others.
func (r *Gathered) Teaching() []imprint.Sheet {
	if !r.forTeaching {
		return nil
	}
	g := gathering[*course.Unit]{
		address: address.Teaching, title: r.Say("teaching-page"), description: r.Say("teaching-description"), size: r.teachingSize, name: unitName,
		view: func(at imprint.Place, g gatheredPage, units []*course.Unit) (imprint.PageView, error) {
			v := teachingView{
				Framed:  imprint.Framed{Shell: r.Shell(at, imprint.About{Kind: "teaching", Title: g.title, Description: g.description, Gathered: true})},
				Further: g.links(at),
			}
			for _, u := range units {
				p, err := r.teachingPart(u, at)
				if err != nil {
					return nil, err
				}
				v.Parts = append(v.Parts, p)
			}
			return v, nil
		},
		found: func(u *course.Unit, address string) { r.notesOn[u] = address },
	}
	for _, u := range r.reading.Course.Units {
		if r.teachingSize(u) > 0 {
			g.parts = append(g.parts, u)
		}
	}
	return g.sheets()
}

// aroundNotes is how many bytes the notes of a lesson are thought to take beside
// their words: its hazards stand with them.
const aroundNotes = 1_500

// teachingSize is how many bytes the notes of a unit are thought to take.
func (r *Gathered) teachingSize(u *course.Unit) int {
	size := 0
	for _, lesson := range u.Lessons {
		page := r.documents[lesson]
		for n, b := range page.Document.Named(markup.TeachingBlock) {
			if n == 0 {
				size += aroundNotes
			}
			size += setting.Size(page, b.Pieces)
		}
	}
	return size
}

// teachingPart gathers the notes of a unit.
func (r *Gathered) teachingPart(u *course.Unit, at imprint.Place) (teachingPart, error) {
	part := teachingPart{}
	if u.Page != nil {
		part.Unit = imprint.LinkTo(at, u.Page)
	}
	for _, lesson := range u.Lessons {
		page := r.documents[lesson]
		blocks := page.Document.Named(markup.TeachingBlock)
		if len(blocks) == 0 {
			continue
		}
		note := teachingNote{Lesson: imprint.LinkTo(at, lesson), Time: lesson.Head.TimeRequired, Needs: lesson.Head.Needs, Sheets: r.classesOn(lesson, at), Safety: r.Care(at, r.lessonCare(page)...)}
		for _, b := range blocks {
			piece, err := r.setter.Apart(page, b.Pieces, at)
			if err != nil {
				return part, err
			}
			note.Notes = append(note.Notes, piece)
		}
		part.Notes = append(part.Notes, note)
	}
	return part, nil
}

// classesOn links the sheets of the classes that go with a lesson.
func (r *Gathered) classesOn(lesson *course.Page, at imprint.Place) (links []imprint.Link) {
	for _, s := range r.reading.Course.Sessions {
		if s.Lesson == lesson.File {
			links = append(links, imprint.Link{Title: s.Title, Address: at.To(address.Class(s.ID))})
		}
	}
	return links
}

// lessonCare is what the table says of the safety of all that a lesson names: the
// medium and the way of working that it is about, and those that it shows from
// the table.
func (r *Gathered) lessonCare(page *proof.Page) []course.Care {
	rows := r.WorkCare(page.Head.Medium, page.Head.Technique, "")
	for _, b := range page.Document.Named(markup.StagesBlock) {
		rows = append(rows, r.WorkCare(b.Part.Medium.ID, b.Part.Technique.ID, b.Part.State.ID)...)
	}
	return rows
}
