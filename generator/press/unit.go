package press

import (
	"html/template"

	"slipbook/generator/course"
)

// unitPageView is a unit's opening page: its words, then its lessons in order.
type unitPageView struct {
	framed
	Number, Of    int // unit 1 of 2
	Teaches       []string
	Body          template.HTML
	Lessons       []lessonEntry
	Before, After []link
}

// unitSheets are the opening pages of the units.
func (i *impression) unitSheets() []sheet {
	var sheets []sheet
	for n, u := range i.course.Units {
		if u.Page == nil {
			continue
		}
		sheets = append(sheets, sheet{address: u.Page.Address, title: u.Page.Head.Title, description: u.Page.Head.Description, view: func(at place) (pageView, error) {
			v := unitPageView{
				framed:  framed{Shell: i.shell(at, i.aboutPage("unit", u.Page))},
				Number:  n + 1,
				Of:      len(i.course.Units),
				Teaches: u.Page.Head.Teaches,
				Lessons: lessonEntries(at, u, n+1),
				Before:  i.before(u.Page, at),
				After:   i.after(u.Page, at),
			}
			v.Body = v.slot(i.body(u.Page, at))
			return v, nil
		}})
	}
	return sheets
}

// aboutPage is what a unit's or lesson's page says of itself.
func (i *impression) aboutPage(kind string, page *course.Page) about {
	return about{
		kind:        kind,
		title:       page.Head.Title,
		description: page.Head.Description,
		head:        page.Head,
		medium:      page.Head.Medium,
		desk:        i.hasCalculator(page),
		plan:        i.hasPlan(page),
	}
}
