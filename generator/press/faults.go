package press

import (
	"html/template"
	"slices"
	"strings"

	"slipbook/generator/course"
)

// faultsView is the page of all that goes wrong: medium by medium what a
// student sees, why, and what then. It is gathered from the lessons and from
// the decoration table, so that nothing is written twice.
type faultsView struct {
	Shell shell
	Parts []faultsPart
}

// faultsPart is what goes wrong with one medium, or in the lessons of a unit
// that are about none.
type faultsPart struct {
	ID     string
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
	parts := i.faultsParts()
	if len(parts) == 0 {
		return nil
	}
	return []sheet{{faultsAddress, "faults", func() (any, error) {
		w, err := i.words.sayAll("faults", "faults-description")
		if err != nil {
			return nil, err
		}
		return faultsView{
			Shell: i.shell(about{kind: "faults", address: faultsAddress, title: w[0], description: w[1], gathered: true}),
			Parts: parts,
		}, nil
	}}}
}

// faultsParts gathers the faults: of the media in the table's order, then of
// the lessons that are about no medium.
func (i *impression) faultsParts() []faultsPart {
	var parts []faultsPart
	add := func(p faultsPart) {
		if len(p.Faults) > 0 {
			parts = append(parts, p)
		}
	}
	for _, m := range i.table.Media {
		p := faultsPart{ID: m.ID, Of: link{Title: m.Name, Address: mediumAddress(m.ID)}}
		p.Faults = append(i.lessonFaults(i.lessonsOf(m.ID)), i.tableFaults(m)...)
		add(p)
	}
	for _, u := range i.course.Units {
		if u.Page == nil {
			continue
		}
		p := faultsPart{ID: "unit." + u.ID, Of: linkTo(faultsAddress, u.Page)}
		for _, page := range u.Lessons {
			if page.Head.Medium == "" {
				p.Faults = append(p.Faults, i.lessonFaults([]*course.Page{page})...)
			}
		}
		add(p)
	}
	return parts
}

// lessonsOf lists the lessons about a medium, in reading order.
func (i *impression) lessonsOf(medium string) []*course.Page {
	var lessons []*course.Page
	for _, page := range i.order {
		if page.Kind == course.LessonPage && page.Head.Medium == medium {
			lessons = append(lessons, page)
		}
	}
	return lessons
}

// lessonFaults is what some lessons say goes wrong.
func (i *impression) lessonFaults(lessons []*course.Page) []faultView {
	var faults []faultView
	for _, page := range lessons {
		d := i.documents[page]
		if d == nil {
			continue
		}
		for _, f := range d.Faults {
			faults = append(faults, faultView{
				Seen:  moved(page.Address, faultsAddress, f.Seen),
				Means: moved(page.Address, faultsAddress, f.Means),
				Where: []link{linkTo(faultsAddress, page)},
			})
		}
	}
	return faults
}

// tableFaults is what the decoration table says goes wrong with a medium, state
// by state; where two states say the same, once. Where a medium may go on, the
// table's reason is why it may, and no cause of the fault.
func (i *impression) tableFaults(m course.Medium) []faultView {
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
			Where: []link{{Title: s.Name, Address: stateAddress(s.ID) + "#" + m.ID}},
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
