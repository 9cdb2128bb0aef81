package gathered

import (
	"slices"

	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/setting"
)

// faultsSources lists what goes wrong: the list by the time at which one sees it, then
// what lessons tell beside it, by the medium that they are about and in reading order.
func (r *Gathered) faultsSources() []faultsSource {
	said, beside := r.saidFaults()
	var all []faultsSource
	for _, when := range course.FaultTimes {
		for _, f := range r.reading.Course.Faults {
			if f.When == when {
				all = append(all, faultsSource{fault: f, said: said[f]})
			}
		}
	}
	slices.SortStableFunc(beside, func(a, b faultsSource) int { return r.mediumOrder(a.medium()) - r.mediumOrder(b.medium()) })
	all = append(all, beside...)
	for n := range all {
		all[n].size = r.faultsSize(all[n])
	}
	return all
}

// saidFaults sorts what lessons say goes wrong by the faults that it names, and lists
// what names none.
func (r *Gathered) saidFaults() (named map[*course.Fault][]saidFault, beside []faultsSource) {
	named = map[*course.Fault][]saidFault{}
	for _, page := range r.reading.Pages {
		if page.Kind != course.LessonPage {
			continue
		}
		var own []saidFault
		for _, f := range r.reading.Faults(page) {
			one := saidFault{page, f}
			if len(f.Is) == 0 {
				own = append(own, one)
			}
			for _, is := range f.Is {
				named[is] = append(named[is], one)
			}
		}
		if own != nil {
			beside = append(beside, faultsSource{said: own})
		}
	}
	return named, beside
}

// How many bytes a fault of the list, and what a lesson says of it, are thought to take
// beside their words and drawings.
const (
	aroundFault = 350
	aroundCause = 90
)

// faultsSize is how many bytes a source is thought to take.
func (r *Gathered) faultsSize(s faultsSource) int {
	size := aroundFault
	if s.fault != nil {
		size += len(s.fault.Sees) + len(s.fault.Looks) + len(s.fault.Alt)
		if picture := r.reading.Course.Pictures[s.fault.Picture]; picture != nil {
			size += len(picture.SVG)
		}
	}
	for _, said := range s.said {
		words := func(span *markup.Span) int { return setting.Size(said.page, said.page.Document.In(span)) }
		size += aroundCause + words(said.Term) + words(said.Means)
	}
	return size
}

// group returns the id of the part in which a source stands: of the time at which one
// sees it or, of what is on no list, of the medium that its lesson is about.
func (s faultsSource) group() string {
	switch {
	case s.fault != nil:
		return "when." + s.fault.When
	case s.medium() != "":
		return "with." + s.medium()
	}
	return "when.other"
}

// medium returns the medium that the lesson of a source on no list is about; empty where
// it is about none.
func (s faultsSource) medium() string {
	if s.fault != nil {
		return ""
	}
	return s.said[0].page.Head.Medium
}

// mediumOrder is the place of a medium in the decoration table; what is none stands last.
func (r *Gathered) mediumOrder(medium string) int {
	if n := slices.IndexFunc(r.Decoration.Media, func(m course.Medium) bool { return m.ID == medium }); n >= 0 {
		return n
	}
	return len(r.Decoration.Media)
}

// name returns what a source is called.
func (s faultsSource) name() string {
	if s.fault == nil {
		return s.said[0].page.Head.Title
	}
	return s.fault.Sees
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
