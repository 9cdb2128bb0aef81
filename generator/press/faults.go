package press

import (
	"errors"
	"html/template"
	"slices"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/proof"
)

// faultsView is the page of all that goes wrong: medium by medium what a
// student sees, why, and what then. It is gathered from the lessons and from
// the decoration table, so that nothing is written twice.
type faultsView struct {
	framed
	Parts []faultsPart
}

// faultsPart is what goes wrong with one medium, or in the lessons of a unit
// that are about none.
type faultsPart struct {
	ID     string
	Name   string
	Of     link
	Faults []faultView
}

// faultView is one thing that goes wrong.
type faultView struct {
	Seen, Means template.HTML
	Where       []link // the lesson, or the pages of the states
}

// faultsSheets is the page of what goes wrong, or nothing while nothing is
// said of it.
func (i *impression) faultsSheets() []sheet {
	if !i.tellsFaults() {
		return nil
	}
	return []sheet{{address: address.Faults, title: i.say("faults"), description: i.say("faults-description"), view: i.faults}}
}

// tellsFaults reports whether a lesson or the table says that anything goes wrong.
func (i *impression) tellsFaults() bool {
	for _, m := range i.table.Media {
		for _, pair := range m.On {
			if pair.Fault != "" {
				return true
			}
		}
	}
	return slices.ContainsFunc(i.order, func(p *proof.Page) bool {
		return p.Kind == course.LessonPage && len(i.reading.Faults(p)) > 0
	})
}

// faults makes the view of that page.
func (i *impression) faults(at place) (pageView, error) {
	parts, err := i.faultsParts(at)
	return faultsView{
		framed: framed{Shell: i.shell(at, about{kind: "faults", title: i.say("faults"), description: i.say("faults-description"), gathered: true})},
		Parts:  parts,
	}, err
}

// faultsParts gathers the faults: of the media in the table's order, then of
// the lessons that are about no medium.
func (i *impression) faultsParts(at place) ([]faultsPart, error) {
	var parts []faultsPart
	var faults []error
	add := func(p faultsPart, lessons []*course.Page, more []faultView) {
		told, err := i.lessonFaults(lessons, at)
		faults = append(faults, err)
		if p.Faults = append(told, more...); len(p.Faults) > 0 {
			parts = append(parts, p)
		}
	}
	for _, m := range i.table.Media {
		p := faultsPart{ID: at.id(m.ID), Name: m.Name, Of: link{Title: m.Name, Address: at.to(address.Medium(m.ID))}}
		add(p, i.lessonsOf(m.ID), i.tableFaults(m, at))
	}
	for _, u := range i.course.Units {
		if u.Page == nil {
			continue
		}
		var lessons []*course.Page
		for _, page := range u.Lessons {
			if page.Head.Medium == "" {
				lessons = append(lessons, page)
			}
		}
		add(faultsPart{ID: at.id("unit." + u.ID), Name: u.Page.Head.Title, Of: linkTo(at, u.Page)}, lessons, nil)
	}
	return parts, errors.Join(faults...)
}

// lessonsOf lists the lessons about a medium, in reading order.
func (i *impression) lessonsOf(medium string) []*course.Page {
	var lessons []*course.Page
	for _, page := range i.order {
		if page.Kind == course.LessonPage && page.Head.Medium == medium {
			lessons = append(lessons, page.Page)
		}
	}
	return lessons
}

// lessonFaults is what some lessons say goes wrong.
func (i *impression) lessonFaults(lessons []*course.Page, at place) ([]faultView, error) {
	var all []faultView
	for _, lesson := range lessons {
		faults, err := i.faultsOf(i.documents[lesson], at)
		if err != nil {
			return nil, err
		}
		for _, f := range faults {
			f.Where = []link{linkTo(at, lesson)}
			all = append(all, f)
		}
	}
	return all, nil
}

// faultsOf is what a lesson says goes wrong, without where.
func (i *impression) faultsOf(page *proof.Page, at place) ([]faultView, error) {
	var all []faultView
	for _, pair := range i.reading.Faults(page) {
		seen, err := i.gathered(page, page.Document.In(pair.Term), at)
		if err != nil {
			return nil, err
		}
		means, err := i.gathered(page, page.Document.In(pair.Means), at)
		if err != nil {
			return nil, err
		}
		all = append(all, faultView{Seen: seen, Means: means})
	}
	return all, nil
}

// plainHTML is a text as HTML.
func plainHTML(text string) template.HTML { return template.HTML(template.HTMLEscapeString(text)) }

// tableFaults is what the decoration table says goes wrong with a medium, state
// by state; where two states say the same, once. Where a medium may go on, the
// table's reason is why it may, and no cause of the fault.
func (i *impression) tableFaults(m course.Medium, at place) []faultView {
	var faults []faultView
	for _, s := range i.table.States {
		pair := m.On[s.ID]
		if pair.Fault == "" {
			continue
		}
		means := pair.Remedy
		if pair.Verdict != course.Yes {
			means = pair.Reason + " " + means
		}
		f := faultView{
			Seen:  plainHTML(strings.TrimSuffix(pair.Fault, ".")),
			Means: plainHTML(means),
			Where: []link{{Title: s.Name, Address: at.to(address.State(s.ID) + "#" + m.ID)}},
		}
		same := slices.IndexFunc(faults, func(o faultView) bool { return o.Seen == f.Seen && o.Means == f.Means })
		if same >= 0 {
			faults[same].Where = append(faults[same].Where, f.Where...)
			continue
		}
		faults = append(faults, f)
	}
	return faults
}
