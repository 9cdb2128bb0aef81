package press

import (
	"html/template"
	"slices"

	"slipbook/generator/course"
)

// courseCardView is the card of the whole course: the six states and how to
// tell them, what goes on when, the cautions, the studio's numbers, the lessons.
type courseCardView struct {
	Shell    shell
	States   []cardState
	Rows     []cardRow
	Warnings []link
	Cones    course.HouseCones
	Bodies   []course.Body
	Units    []unitEntry
	Cards    []link // of the media
	Size     string // the class of the printed type
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
		row := cardRow{Medium: link{Title: m.Name, Address: relative(cardsAddress, mediumAddress(m.ID))}}
		for _, s := range i.table.States {
			row.Cells = append(row.Cells, mediumIn(m, s, cardsAddress))
		}
		v.Rows = append(v.Rows, row)
		v.Cards = append(v.Cards, link{Title: m.Name, Address: relative(cardsAddress, cardAddress(m.ID))})
	}
	v.Warnings = i.warnings(cardsAddress)
	v.Size = cardSize(v.letters())
	return v, nil
}

// warnings lists what the cautions of all lessons warn of, each once, with the
// first lesson that does.
func (i *impression) warnings(from string) []link {
	var all []link
	for _, page := range i.order {
		d := i.documents[page]
		if d == nil || page.Kind != course.LessonPage {
			continue
		}
		for _, words := range d.Warnings {
			if words != "" && !slices.ContainsFunc(all, func(l link) bool { return l.Title == words }) {
				all = append(all, link{Title: words, Address: relative(from, page.Address)})
			}
		}
	}
	return all
}
