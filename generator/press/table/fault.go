package table

import (
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
)

// FaultAt returns where a fault of the course's list is told, from the root. Which page
// that is, is known once the pages are listed.
func (r *Table) FaultAt(id string) string {
	if page := r.frame.FaultsOn[id]; page != "" {
		return address.FaultOn(page, id)
	}
	return address.FaultOn(address.Faults, id)
}

// FaultsWith lists the faults that lessons about a medium name, in the list's order,
// for a place.
func (r *Table) FaultsWith(medium string, at imprint.Place) []imprint.Link {
	named := map[*course.Fault]bool{}
	for _, page := range r.reading.Pages {
		if page.Kind != course.LessonPage || page.Head.Medium != medium {
			continue
		}
		for _, f := range r.reading.Faults(page) {
			for _, is := range f.Is {
				named[is] = true
			}
		}
	}
	var links []imprint.Link
	for _, f := range r.reading.Course.Faults {
		if named[f] {
			links = append(links, imprint.Link{Title: f.Sees, Address: at.To(r.FaultAt(f.ID))})
		}
	}
	return links
}
