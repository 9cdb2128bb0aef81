package press

import (
	"html/template"

	"slipbook/generator/address"
	"slipbook/generator/press/imprint"
)

// homeView is the home page: one question, the six states, the course's words
// and its units.
type homeView struct {
	imprint.Framed
	Large   any    // the states, large
	Heading string // over the course's words; empty when it is the title again
	Body    template.HTML
	Units   []imprint.UnitEntry
	Cards   string // address of the course's card; empty while it has none
}

// homeSheets is the home page, or nothing while the course has no home.md.
func (i *impression) homeSheets() []imprint.Sheet {
	page := i.course.Home
	if page == nil {
		return nil
	}
	return []imprint.Sheet{{Address: page.Address, Title: i.course.Title, Description: i.course.Description, View: func(at imprint.Place) (imprint.PageView, error) {
		a := i.aboutPage("home", page)
		a.Title, a.Description, a.Resume = i.course.Title, i.course.Description, true
		v := homeView{Framed: imprint.Framed{Shell: i.Shell(at, a)}, Units: imprint.UnitEntries(at, i.course.Units), Cards: i.frame.WhereThere(at, address.Cards)}
		v.Large, v.Shell.Strip = v.Shell.Strip, nil
		if page.Head.Title != i.course.Title {
			v.Heading = page.Head.Title
		}
		v.Body = v.Slot(i.setter.Body(i.documents[page], at))
		return v, nil
	}}}
}
