package press

import "html/template"

// styleView is the page that shows every element of the handbook to those who
// write it.
type styleView struct {
	framed
	Body template.HTML
}

// styleSheets is that page, or nothing while the course has no style.md.
func (i *impression) styleSheets() []sheet {
	page := i.course.Style
	if page == nil {
		return nil
	}
	return []sheet{{address: page.Address, title: page.Head.Title, description: page.Head.Description, view: func(at place) (pageView, error) {
		v := styleView{framed: framed{Shell: i.shell(at, i.aboutPage("style", page))}}
		v.Body = v.slot(i.body(page, at))
		return v, nil
	}}}
}
