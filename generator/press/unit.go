package press

import (
	"html/template"

	"slipbook/generator/press/imprint"
)

// unitPageView is a unit's opening page: its words, then its lessons in order.
type unitPageView struct {
	imprint.Framed
	Number, Of    int // unit 1 of 2
	Teaches       []string
	Body          template.HTML
	Lessons       []imprint.LessonEntry
	Before, After []imprint.Link
}

// unitSheets are the opening pages of the units.
func (i *impression) unitSheets() []imprint.Sheet {
	var sheets []imprint.Sheet
	for n, u := range i.course.Units {
		if u.Page == nil {
			continue
		}
		sheets = append(sheets, imprint.Sheet{Address: u.Page.Address, Title: u.Page.Head.Title, Description: u.Page.Head.Description, View: func(at imprint.Place) (imprint.PageView, error) {
			v := unitPageView{
				Framed:  imprint.Framed{Shell: i.Shell(at, i.aboutPage("unit", u.Page))},
				Number:  n + 1,
				Of:      len(i.course.Units),
				Teaches: u.Page.Head.Teaches,
				Lessons: imprint.LessonEntries(at, u, n+1),
				Before:  i.before(u.Page, at),
				After:   i.after(u.Page, at),
			}
			v.Body = v.Slot(i.setter.Body(i.documents[u.Page], at))
			return v, nil
		}})
	}
	return sheets
}
