package gathered

import (
	"html/template"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/table"
	"slipbook/generator/press/theme"
)

// courseCardView is the card of the whole course: the six states and how to
// tell them, what goes on when, the hazards, the studio's numbers, the lessons.
type courseCardView struct {
	imprint.Framed
	States []cardState
	Rows   []cardRow
	Safety care.Care // the foremost hazards of media and ways of working
	More   bool      // whether there are others
	Cones  course.HouseCones
	Bodies []course.Body
	Units  []imprint.UnitEntry
	Brief  bool           // without the lessons, for which there is no room
	Cards  []imprint.Link // of the media
	Size   string         // the class of the printed type
}

// cardState is a state on the course's card.
type cardState struct {
	Name    imprint.Link
	Drawing template.HTML
	Tell    string
}

// cardRow is the verdicts of one medium.
type cardRow struct {
	Medium imprint.Link
	Safety care.Care // in every state
	Cells  []table.Line
}

// CourseCard is the card of the course, or nothing while it has no table.
func (r *Gathered) CourseCard() []imprint.Sheet {
	if len(r.Decoration.States) == 0 {
		return nil
	}
	return []imprint.Sheet{{Address: address.Cards, Title: r.Say("cards"), Description: r.Say("cards-description"), View: r.courseCard}}
}

// courseCard makes the view of that card.
func (r *Gathered) courseCard(at imprint.Place) (imprint.PageView, error) {
	v := courseCardView{
		Framed: imprint.Framed{Shell: r.Shell(at, imprint.About{Kind: "course-card", Title: r.Say("cards"), Description: r.Say("cards-description"), Gathered: true, Share: true})},
		Cones:  r.reading.Course.Cones,
		Bodies: r.reading.Course.Bodies,
		Units:  imprint.UnitEntries(at, r.reading.Course.Units),
	}
	v.Shell.Strip = nil
	for n, s := range r.Decoration.States {
		v.States = append(v.States, cardState{*r.StateLink(n, at), r.Icons["state-"+s.ID], s.Tell})
	}
	for _, m := range r.Decoration.Media {
		row := cardRow{
			Medium: imprint.Link{Title: m.Name, Address: at.To(address.Medium(m.ID))},
			Safety: r.Care(at, m.Care),
		}
		for _, s := range r.Decoration.States {
			cell := r.Cell(r.MediumIn(m, s, at), m.Care)
			if cell.Safety.Who == row.Safety.Who {
				cell.Safety.Who = "" // said beside the name, and the cells are narrow
			}
			row.Cells = append(row.Cells, cell)
		}
		v.Rows = append(v.Rows, row)
		if card := r.frame.WhereThere(at, address.Card(m.ID)); card != "" {
			v.Cards = append(v.Cards, imprint.Link{Title: m.Name, Address: card})
		}
	}
	v.Safety, v.More = r.courseSafety(at)
	v.Brief = !cardFits(r.Print.Card, v.letters())
	v.Size = cardSize(r.Print.Card, v.letters())
	return v, nil
}

// courseSafety is the foremost hazards of the course, and whether there are others.
func (r *Gathered) courseSafety(at imprint.Place) (care.Care, bool) {
	rows := r.courseRows()
	return foremost(r.Care(at, rows...), rows, mostCautions)
}

// courseRows is what the table says of the safety of media, ways of working, steps and
// firings.
func (r *Gathered) courseRows() []course.Care {
	rows := append(r.Cares(), r.Decoration.Firing.Care)
	for _, t := range r.Decoration.Transitions {
		rows = append(rows, t.Care)
	}
	return rows
}

// letters counts what stands on the course's card, piece by piece.
func (v courseCardView) letters() []int {
	all := headings(6)
	for _, s := range v.States {
		all = append(all, theme.Letters(s.Name.Title+s.Tell)+12)
	}
	for _, r := range v.Rows {
		all = append(all, 125+4*r.Safety.MarkLetters(), 1)
	}
	all = append(append(all, 40), v.Safety.Letters()...)
	for _, b := range v.Bodies {
		all = append(all, bodyLetters(b))
	}
	for _, u := range v.Units {
		if v.Brief {
			all = append(all, theme.Letters(u.Unit.Title))
			continue
		}
		letters := 0
		for _, l := range u.Lessons {
			letters += theme.Letters(l.Lesson.Title) + 3
		}
		all = append(all, theme.Letters(u.Unit.Title), letters)
	}
	return all
}
