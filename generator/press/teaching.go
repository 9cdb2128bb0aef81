package press

import (
	"html/template"

	"slipbook/generator/course"
)

// teachingView is the page of all notes for teaching, which only a copy for the
// instructor has.
type teachingView struct {
	Shell shell
	Parts []teachingPart
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
	if !i.teaching {
		return nil
	}
	return []sheet{{teachingAddress, "teaching-page", func() (any, error) {
		w, err := i.words.sayAll("teaching-page", "teaching-description")
		if err != nil {
			return nil, err
		}
		v := teachingView{Shell: i.shell(about{kind: "teaching", address: teachingAddress, title: w[0], description: w[1], gathered: true})}
		for _, u := range i.course.Units {
			if p := i.teachingPart(u); len(p.Notes) > 0 {
				v.Parts = append(v.Parts, p)
			}
		}
		return v, nil
	}}}
}

// teachingPart gathers the notes of a unit.
func (i *impression) teachingPart(u *course.Unit) teachingPart {
	part := teachingPart{}
	if u.Page != nil {
		part.Unit = linkTo(teachingAddress, u.Page)
	}
	for _, page := range u.Lessons {
		d := i.documents[page]
		if d == nil || len(d.Teaching) == 0 {
			continue
		}
		note := teachingNote{Lesson: linkTo(teachingAddress, page), Time: page.Head.TimeRequired, Needs: page.Head.Needs, Safety: i.care(teachingAddress, i.lessonCare(page)...)}
		for _, piece := range d.Teaching {
			note.Notes = append(note.Notes, moved(page.Address, teachingAddress, piece))
		}
		part.Notes = append(part.Notes, note)
	}
	return part
}

// lessonCare is what the table says of the safety of all that a lesson names: the
// medium and the way of working that it is about, and those that it shows from
// the table.
func (i *impression) lessonCare(page *course.Page) []course.Care {
	rows := i.workCare(page.Head.Medium, page.Head.Technique, "")
	if d := i.documents[page]; d != nil {
		for _, part := range d.Stages {
			rows = append(rows, i.workCare(part.Medium.ID, part.Technique.ID, part.State.ID)...)
		}
	}
	return rows
}
