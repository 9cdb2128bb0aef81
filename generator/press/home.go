package press

import (
	"html/template"
	"slices"
	"strconv"

	"slipbook/calculators/catalog"
	"slipbook/generator/course"
)

// homeView is the home page: one question, the six states, the course's words
// and its units.
type homeView struct {
	framed
	Large   *strip // the states, large
	Heading string // over the course's words; empty when it is the title again
	Body    template.HTML
	Units   []unitEntry
}

// unitEntry is a unit in a list of units.
type unitEntry struct {
	Number  int
	Unit    link
	Lessons []lessonEntry
}

// lessonEntry is a lesson in a list of lessons.
type lessonEntry struct {
	Number  string // "2.3"
	Lesson  link
	Teaches []string
	Time    course.Duration
}

// homeSheets is the home page, or nothing while the course has no home.md.
func (i *impression) homeSheets() []sheet {
	page := i.course.Home
	if page == nil {
		return nil
	}
	return []sheet{{address: page.Address, title: i.course.Title, description: i.course.Description, view: func(at place) (pageView, error) {
		a := i.aboutPage("home", page)
		a.title, a.description = i.course.Title, i.course.Description
		v := homeView{framed: framed{Shell: i.shell(at, a)}, Units: i.unitEntries(at)}
		v.Large, v.Shell.Strip = v.Shell.Strip, nil
		if page.Head.Title != i.course.Title {
			v.Heading = page.Head.Title
		}
		v.Body = v.slot(i.body(page, at))
		return v, nil
	}}}
}

// hasCalculator reports whether a calculator stands in a hand-written page.
func (i *impression) hasCalculator(page *course.Page) bool {
	return len(i.documents[page].Document.Calculators()) > 0
}

// hasPlan reports whether the calculator that plans is one of them.
func (i *impression) hasPlan(page *course.Page) bool {
	return slices.Contains(i.documents[page].Document.Calculators(), catalog.Plan)
}

// unitEntries lists the units with their lessons, for a place.
func (i *impression) unitEntries(at place) []unitEntry {
	var entries []unitEntry
	for n, u := range i.course.Units {
		if u.Page != nil {
			entries = append(entries, unitEntry{n + 1, linkTo(at, u.Page), lessonEntries(at, u, n+1)})
		}
	}
	return entries
}

// lessonEntries lists a unit's lessons in order, for a place. number is
// the unit's, from 1.
func lessonEntries(at place, u *course.Unit, number int) []lessonEntry {
	entries := make([]lessonEntry, len(u.Lessons))
	for n, l := range u.Lessons {
		entries[n] = lessonEntry{lessonNumber(strconv.Itoa(number), n), linkTo(at, l), l.Head.Teaches, l.Head.TimeRequired}
	}
	return entries
}

// linkTo is a link from a place to a hand-written page.
func linkTo(at place, page *course.Page) link {
	return link{Title: page.Head.Title, Address: at.to(page.Address), About: page.Head.Description}
}
