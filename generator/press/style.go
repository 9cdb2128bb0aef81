package press

import "html/template"

// styleView is the page that shows every element of the handbook to those who
// write it.
type styleView struct {
	Shell shell
	Body  template.HTML
}

// styleSheets is that page, or nothing while the course has no style.md.
func (i *impression) styleSheets() []sheet {
	page := i.course.Style
	if page == nil {
		return nil
	}
	return []sheet{{page.Address, "style", func() (any, error) {
		return styleView{i.shell(i.aboutPage("style", page)), i.body(page)}, nil
	}}}
}
