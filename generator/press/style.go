package press

import (
	"html/template"

	"slipbook/generator/press/imprint"
)

// styleView is the page that shows every element of the handbook to those who
// write it.
type styleView struct {
	imprint.Framed
	Body template.HTML
}

// styleSheets is that page, or nothing while the course has no style.md.
func (i *impression) styleSheets() []imprint.Sheet {
	page := i.course.Style
	if page == nil {
		return nil
	}
	return []imprint.Sheet{{Address: page.Address, Title: page.Head.Title, Description: page.Head.Description, View: func(at imprint.Place) (imprint.PageView, error) {
		v := styleView{Framed: imprint.Framed{Shell: i.Shell(at, i.aboutPage("style", page))}}
		v.Body = v.Slot(i.setter.Body(i.documents[page], at))
		return v, nil
	}}}
}
