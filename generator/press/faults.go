package press

import (
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
	Parts   []faultsPart
	Further []link // other pages of it, where it does not fit one
}

// faultsPart is what goes wrong with one medium, or in the lessons of a unit
// that are about none.
type faultsPart struct {
	ID     string
	Name   string
	Of     link
	Safety care // of the medium, or of what the lessons of the unit are about
	Faults []faultView
}

// faultView is one thing that goes wrong.
type faultView struct {
	Seen, Means template.HTML
	Where       []link // the lesson, or the pages of the states
}

// faultsSource is from where a part of it is gathered: the table and the lessons
// about a medium, or the lessons of a unit that are about none.
type faultsSource struct {
	medium  *course.Medium
	unit    *course.Unit
	lessons []*course.Page
	size    int // bytes that what they say is thought to take
}

// faultsSheets is the page of what goes wrong, or nothing while nothing is
// said of it.
func (i *impression) faultsSheets() []sheet {
	return gathering[faultsSource]{
		address: address.Faults, title: i.Say("faults"), description: i.Say("faults-description"), parts: i.faultsSources(),
		size: func(s faultsSource) int { return s.size }, name: faultsSource.name, view: i.faults,
		found: func(s faultsSource, address string) {
			i.faultsAt[address] = append(i.faultsAt[address], s)
			if s.medium != nil {
				i.faultsOn[s.medium.ID] = address
			}
		},
	}.sheets()
}

// faultsSources lists the parts that say something: the media in the table's order,
// then the units.
func (i *impression) faultsSources() []faultsSource {
	var all []faultsSource
	for n := range i.table.Media {
		m := &i.table.Media[n]
		all = append(all, faultsSource{medium: m, lessons: i.lessonsOf(m.ID)})
	}
	for _, u := range i.course.Units {
		if u.Page == nil {
			continue
		}
		source := faultsSource{unit: u}
		for _, page := range u.Lessons {
			if page.Head.Medium == "" {
				source.lessons = append(source.lessons, page)
			}
		}
		all = append(all, source)
	}
	for n := range all {
		all[n].size = i.faultsSize(all[n])
	}
	return slices.DeleteFunc(all, func(s faultsSource) bool { return s.size == 0 })
}

// aroundFault is how many bytes a fault is thought to take beside its words.
const aroundFault = 300

// faultsSize is how many bytes a part is thought to take.
func (i *impression) faultsSize(s faultsSource) int {
	size := 0
	for _, lesson := range s.lessons {
		page := i.documents[lesson]
		for _, pair := range i.reading.Faults(page) {
			size += aroundFault + wordsSize(page, page.Document.In(pair.Term)) + wordsSize(page, page.Document.In(pair.Means))
		}
	}
	if s.medium != nil {
		for _, pair := range s.medium.On {
			if pair.Fault != "" {
				size += aroundFault + len(pair.Fault) + len(pair.Reason) + len(pair.Remedy)
			}
		}
	}
	return size
}

// name returns what a part is called.
func (s faultsSource) name() string {
	if s.medium != nil {
		return s.medium.Name
	}
	return unitName(s.unit)
}

// faultsCare is what the table says of the safety of what a part is about: who
// reads what then is to be done has not always come by the lesson.
func (i *impression) faultsCare(s faultsSource) []course.Care {
	if s.medium != nil {
		return []course.Care{s.medium.Care}
	}
	var rows []course.Care
	for _, lesson := range s.lessons {
		rows = append(rows, i.lessonCare(i.documents[lesson])...)
	}
	return rows
}

// faults makes the view of a page with some of the parts.
func (i *impression) faults(at place, g gatheredPage, sources []faultsSource) (pageView, error) {
	v := faultsView{
		framed:  framed{Shell: i.shell(at, about{kind: "faults", title: g.title, description: g.description, gathered: true})},
		Further: g.links(at),
	}
	for _, s := range sources {
		p := faultsPart{Name: s.name(), Safety: i.care(at, i.faultsCare(s)...)}
		told, err := i.lessonFaults(s.lessons, at)
		if err != nil {
			return nil, err
		}
		if p.Faults = told; s.medium != nil {
			p.ID, p.Of = at.id(s.medium.ID), link{Title: s.medium.Name, Address: at.to(address.Medium(s.medium.ID))}
			p.Faults = append(p.Faults, i.tableFaults(*s.medium, at)...)
		} else {
			p.ID, p.Of = at.id("unit."+s.unit.ID), linkTo(at, s.unit.Page)
		}
		v.Parts = append(v.Parts, p)
	}
	return v, nil
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
