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
	Shell   shell
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
	return []sheet{{page.Address, "home", func() (any, error) {
		a := about{
			kind:        "home",
			address:     page.Address,
			title:       i.course.Title,
			description: i.course.Description,
			head:        page.Head,
			desk:        i.hasCalculator(page),
			plan:        i.hasPlan(page),
		}
		v := homeView{Shell: i.shell(a), Body: i.body(page), Units: i.unitEntries(page.Address)}
		v.Large, v.Shell.Strip = v.Shell.Strip, nil
		if page.Head.Title != i.course.Title {
			v.Heading = page.Head.Title
		}
		return v, nil
	}}}
}

// body is a hand-written page's own words, rendered.
func (i *impression) body(page *course.Page) template.HTML {
	if d := i.documents[page]; d != nil {
		return template.HTML(d.HTML)
	}
	return ""
}

// hasCalculator says whether a calculator stands in a hand-written page.
func (i *impression) hasCalculator(page *course.Page) bool {
	d := i.documents[page]
	return d != nil && len(d.Calculators) > 0
}

// hasPlan says whether the calculator that plans is one of them.
func (i *impression) hasPlan(page *course.Page) bool {
	d := i.documents[page]
	return d != nil && slices.Contains(d.Calculators, catalog.Plan)
}

// unitEntries lists the units with their lessons, for the page at from.
func (i *impression) unitEntries(from string) []unitEntry {
	var entries []unitEntry
	for n, u := range i.course.Units {
		if u.Page != nil {
			entries = append(entries, unitEntry{n + 1, linkTo(from, u.Page), lessonEntries(from, u, n+1)})
		}
	}
	return entries
}

// lessonEntries lists a unit's lessons in order, for the page at from. number is
// the unit's, from 1.
func lessonEntries(from string, u *course.Unit, number int) []lessonEntry {
	entries := make([]lessonEntry, len(u.Lessons))
	for n, l := range u.Lessons {
		entries[n] = lessonEntry{lessonNumber(strconv.Itoa(number), n), linkTo(from, l), l.Head.Teaches, l.Head.TimeRequired}
	}
	return entries
}

// linkTo is a link from the page at from to a hand-written page.
func linkTo(from string, page *course.Page) link {
	return link{page.Head.Title, relative(from, page.Address), page.Head.Description}
}
