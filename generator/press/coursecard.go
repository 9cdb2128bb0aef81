package press

import (
	"html/template"

	"slipbook/generator/address"
	"slipbook/generator/course"
)

// courseCardView is the card of the whole course: the six states and how to
// tell them, what goes on when, the hazards, the studio's numbers, the lessons.
type courseCardView struct {
	framed
	States []cardState
	Rows   []cardRow
	Safety care // all hazards of media and ways of working
	Cones  course.HouseCones
	Bodies []course.Body
	Units  []unitEntry
	Cards  []link // of the media
	Size   string // the class of the printed type
}

// cardState is a state on the course's card.
type cardState struct {
	Name    link
	Drawing template.HTML
	Tell    string
}

// cardRow is the verdicts of one medium.
type cardRow struct {
	Medium link
	Safety care // in every state
	Cells  []line
}

// courseCardSheets is the card of the course, or nothing while it has no table.
func (i *impression) courseCardSheets() []sheet {
	if len(i.table.States) == 0 {
		return nil
	}
	return []sheet{{address: address.Cards, title: i.Say("cards"), description: i.Say("cards-description"), view: i.courseCard}}
}

// courseCard makes the view of that card.
func (i *impression) courseCard(at place) (pageView, error) {
	v := courseCardView{
		framed: framed{Shell: i.shell(at, about{kind: "course-card", title: i.Say("cards"), description: i.Say("cards-description"), gathered: true})},
		Cones:  i.course.Cones,
		Bodies: i.course.Bodies,
		Units:  i.unitEntries(at),
	}
	v.Shell.Strip = nil
	for n, s := range i.table.States {
		v.States = append(v.States, cardState{*i.stateLink(n, at), i.Icons["state-"+s.ID], s.Tell})
	}
	for _, m := range i.table.Media {
		row := cardRow{
			Medium: link{Title: m.Name, Address: at.to(address.Medium(m.ID))},
			Safety: i.care(at, m.Care),
		}
		for _, s := range i.table.States {
			cell := i.cell(i.mediumIn(m, s, at), m.Care)
			if cell.Safety.Who == row.Safety.Who {
				cell.Safety.Who = "" // said beside the name, and the cells are narrow
			}
			row.Cells = append(row.Cells, cell)
		}
		v.Rows = append(v.Rows, row)
		v.Cards = append(v.Cards, link{Title: m.Name, Address: at.to(address.Card(m.ID))})
	}
	v.Safety = i.courseSafety(at)
	v.Size = cardSize(i.Print.Card, v.letters())
	return v, nil
}

// courseSafety is every hazard of the course: of media, ways of working, steps
// and firings.
func (i *impression) courseSafety(at place) care {
	rows := append(i.tableCares(), i.table.Firing.Care)
	for _, t := range i.table.Transitions {
		rows = append(rows, t.Care)
	}
	return i.care(at, rows...)
}
