package press

import (
	"html/template"
	"strconv"

	"slipbook/generator/address"
	"slipbook/generator/course"
)

// lessonView is a lesson: what it is for, what it needs, its words, and where
// to go from it.
type lessonView struct {
	framed
	Unit          link
	Number        string // "2.3"
	Place, Of     int    // lesson 3 of 4 in its unit
	Teaches       []string
	Time          course.Duration
	Needs         []string
	Medium        link // to the medium's own page
	BestState     string
	Technique     string
	Safety        care // of medium and technique, where both are best
	Body          template.HTML
	Before, After []link
}

// lessonSheets are the lessons, in the order of their units.
func (i *impression) lessonSheets() []sheet {
	var sheets []sheet
	for number, u := range i.course.Units {
		for n, page := range u.Lessons {
			sheets = append(sheets, sheet{address: page.Address, title: page.Head.Title, description: page.Head.Description,
				view: func(at place) (pageView, error) { return i.lesson(u, number+1, n, at) }})
		}
	}
	return sheets
}

// lesson makes the view of the n-th lesson, from 0, of the unit with a number.
func (i *impression) lesson(u *course.Unit, number, n int, at place) (pageView, error) {
	page := u.Lessons[n]
	v := lessonView{
		framed:    framed{Shell: i.shell(at, i.aboutPage("lesson", page))},
		Number:    lessonNumber(strconv.Itoa(number), n),
		Place:     n + 1,
		Of:        len(u.Lessons),
		Teaches:   page.Head.Teaches,
		Time:      page.Head.TimeRequired,
		Needs:     page.Head.Needs,
		Technique: page.Head.Technique,
		Safety:    i.care(at, i.workCare(page.Head.Medium, page.Head.Technique, "")...),
		Before:    i.before(page, at),
		After:     i.after(page, at),
	}
	if t, ok := i.table.FindTechnique(page.Head.Technique); ok {
		v.Technique = t.Name
	}
	if u.Page != nil {
		v.Unit = linkTo(at, u.Page)
	}
	if m, ok := i.table.FindMedium(page.Head.Medium); ok {
		if best, ok := i.table.FindState(m.Best); ok {
			v.BestState = best.Name
		}
		v.Medium = link{Title: m.Name, Address: at.to(address.Medium(m.ID))}
	}
	v.Body = v.slot(i.body(page, at))
	return v, nil
}

// before lists what a page's opening block asks for before it at the bench; in
// want of that, the page before in reading order.
func (i *impression) before(page *course.Page, at place) []link {
	if len(page.Head.Before) > 0 {
		return i.links(page.Head.Before, at)
	}
	return i.neighbour(page, -1, at)
}

// after lists what comes after a page, likewise.
func (i *impression) after(page *course.Page, at place) []link {
	if len(page.Head.After) > 0 {
		return i.links(page.Head.After, at)
	}
	return i.neighbour(page, +1, at)
}

// links turns the pages that an opening block names into links.
func (i *impression) links(to []course.Link, at place) []link {
	var links []link
	for _, l := range to {
		if page, ok := i.addresses.Page(l.File); ok {
			links = append(links, linkTo(at, page))
		}
	}
	return links
}

// neighbour is the unit or lesson that many steps on in reading order, if
// there is one. The pages that belong to no unit are no work at the bench.
func (i *impression) neighbour(page *course.Page, step int, at place) []link {
	n := i.place[page] + step
	if n < 0 || n >= len(i.order) || i.order[n].Unit == nil {
		return nil
	}
	return []link{linkTo(at, i.order[n].Page)}
}
