package press

import (
	"html/template"

	"slipbook/generator/course"
)

// courseCardView is the card of the whole course: the six states and how to
// tell them, what goes on when, the hazards, the studio's numbers, the lessons.
type courseCardView struct {
	Shell  shell
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

// courseCard makes the card of the course.
func (i *impression) courseCard() (any, error) {
	w, err := i.words.sayAll("cards", "cards-description")
	if err != nil {
		return nil, err
	}
	v := courseCardView{
		Shell:  i.shell(about{kind: "course-card", address: cardsAddress, title: w[0], description: w[1], gathered: true}),
		Cones:  i.course.Cones,
		Bodies: i.course.Bodies,
		Units:  i.unitEntries(cardsAddress),
	}
	v.Shell.Strip = nil
	for n, s := range i.table.States {
		v.States = append(v.States, cardState{i.stateLinks(cardsAddress)[n], i.icons["state-"+s.ID], s.Tell})
	}
	for _, m := range i.table.Media {
		row := cardRow{
			Medium: link{Title: m.Name, Address: relative(cardsAddress, mediumAddress(m.ID))},
			Safety: i.care(cardsAddress, m.Care),
		}
		for _, s := range i.table.States {
			cell := i.cell(i.mediumIn(m, s, cardsAddress), m.Care)
			if cell.Safety.Who == row.Safety.Who {
				cell.Safety.Who = "" // said beside the name, and the cells are narrow
			}
			row.Cells = append(row.Cells, cell)
		}
		v.Rows = append(v.Rows, row)
		v.Cards = append(v.Cards, link{Title: m.Name, Address: relative(cardsAddress, cardAddress(m.ID))})
	}
	v.Safety = i.courseSafety()
	v.Size = cardSize(v.letters())
	return v, nil
}

// courseSafety is every hazard of the course: of media, ways of working, steps
// and firings.
func (i *impression) courseSafety() care {
	rows := append(i.tableCares(), i.table.Firing.Care)
	for _, t := range i.table.Transitions {
		rows = append(rows, t.Care)
	}
	return i.care(cardsAddress, rows...)
}
