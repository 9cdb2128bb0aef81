package gathered

import (
	"html/template"
	"slices"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/setting"
	"slipbook/generator/proof"
)

// faultsView is the page of all that goes wrong: medium by medium what a
// student sees, why, and what then. It is gathered from the lessons and from
// the decoration table, so that nothing is written twice.
type faultsView struct {
	imprint.Framed
	Parts   []faultsPart
	Further []imprint.Link // other pages of it, where it does not fit one
}

// faultsPart is what goes wrong with one medium, or in the lessons of a unit
// that are about none.
type faultsPart struct {
	ID     string
	Name   string
	Of     imprint.Link
	Safety care.Care // of the medium, or of what the lessons of the unit are about
	Faults []faultView
}

// faultView is one thing that goes wrong.
type faultView struct {
	Seen, Means template.HTML
	Where       []imprint.Link // the lesson, or the pages of the states
}

// Faults is the page of what goes wrong, or nothing while nothing is
// said of it.
func (r *Gathered) Faults() []imprint.Sheet {
	return gathering[faultsSource]{
		address: address.Faults, title: r.Say("faults"), description: r.Say("faults-description"), parts: r.faultsSources(),
		size: func(s faultsSource) int { return s.size }, name: faultsSource.name, view: r.faults,
		found: func(s faultsSource, address string) {
			r.faultsAt[address] = append(r.faultsAt[address], s)
			if s.medium != nil {
				r.frame.FaultsOn[s.medium.ID] = address
			}
		},
	}.sheets()
}

// faultsSources lists the parts that say something: the media in the table's order,
// then the units.
func (r *Gathered) faultsSources() []faultsSource {
	var all []faultsSource
	for n := range r.Decoration.Media {
		m := &r.Decoration.Media[n]
		all = append(all, faultsSource{medium: m, lessons: r.lessonsOf(m.ID)})
	}
	for _, u := range r.reading.Course.Units {
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
		all[n].size = r.faultsSize(all[n])
	}
	return slices.DeleteFunc(all, func(s faultsSource) bool { return s.size == 0 })
}

// aroundFault is how many bytes a fault is thought to take beside its words.
const aroundFault = 300

// faultsSize is how many bytes a part is thought to take.
func (r *Gathered) faultsSize(s faultsSource) int {
	size := 0
	for _, lesson := range s.lessons {
		page := r.documents[lesson]
		for _, pair := range r.reading.Faults(page) {
			size += aroundFault + setting.Size(page, page.Document.In(pair.Term)) + setting.Size(page, page.Document.In(pair.Means))
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
func (r *Gathered) faultsCare(s faultsSource) []course.Care {
	if s.medium != nil {
		return []course.Care{s.medium.Care}
	}
	var rows []course.Care
	for _, lesson := range s.lessons {
		rows = append(rows, r.lessonCare(r.documents[lesson])...)
	}
	return rows
}

// faults makes the view of a page with some of the parts.
func (r *Gathered) faults(at imprint.Place, g gatheredPage, sources []faultsSource) (imprint.PageView, error) {
	v := faultsView{
		Framed:  imprint.Framed{Shell: r.Shell(at, imprint.About{Kind: "faults", Title: g.title, Description: g.description, Gathered: true})},
		Further: g.links(at),
	}
	for _, s := range sources {
		p := faultsPart{Name: s.name(), Safety: r.Care(at, r.faultsCare(s)...)}
		told, err := r.lessonFaults(s.lessons, at)
		if err != nil {
			return nil, err
		}
		if p.Faults = told; s.medium != nil {
			p.ID, p.Of = at.ID(s.medium.ID), imprint.Link{Title: s.medium.Name, Address: at.To(address.Medium(s.medium.ID))}
			p.Faults = append(p.Faults, r.tableFaults(*s.medium, at)...)
		} else {
			p.ID, p.Of = at.ID("unit."+s.unit.ID), imprint.LinkTo(at, s.unit.Page)
		}
		v.Parts = append(v.Parts, p)
	}
	return v, nil
}

// lessonsOf lists the lessons about a medium, in reading order.
func (r *Gathered) lessonsOf(medium string) []*course.Page {
	var lessons []*course.Page
	for _, page := range r.reading.Pages {
		if page.Kind == course.LessonPage && page.Head.Medium == medium {
			lessons = append(lessons, page.Page)
		}
	}
	return lessons
}

// lessonFaults is what some lessons say goes wrong.
func (r *Gathered) lessonFaults(lessons []*course.Page, at imprint.Place) ([]faultView, error) {
	var all []faultView
	for _, lesson := range lessons {
		faults, err := r.faultsOf(r.documents[lesson], at)
		if err != nil {
			return nil, err
		}
		for _, f := range faults {
			f.Where = []imprint.Link{imprint.LinkTo(at, lesson)}
			all = append(all, f)
		}
	}
	return all, nil
}

// faultsOf is what a lesson says goes wrong, without where.
func (r *Gathered) faultsOf(page *proof.Page, at imprint.Place) ([]faultView, error) {
	var all []faultView
	for _, pair := range r.reading.Faults(page) {
		seen, err := r.setter.Apart(page, page.Document.In(pair.Term), at)
		if err != nil {
			return nil, err
		}
		means, err := r.setter.Apart(page, page.Document.In(pair.Means), at)
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
func (r *Gathered) tableFaults(m course.Medium, at imprint.Place) []faultView {
	var faults []faultView
	for _, s := range r.Decoration.States {
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
			Where: []imprint.Link{{Title: s.Name, Address: at.To(address.State(s.ID) + "#" + m.ID)}},
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
