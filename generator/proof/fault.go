package proof

import (
	"fmt"
	"slices"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// Fault is something that a lesson says goes wrong.
type Fault struct {
	markup.Pair
	Is []*course.Fault // of the course's list, what the links in its term name, each once
}

// Faults returns what a page says goes wrong.
func (r *Reading) Faults(p *Page) []Fault { return p.faults }

// faultsOf finds it, once the references of the page are resolved.
func faultsOf(p *Page, named course.Sections) []Fault {
	var all []Fault
	for _, pair := range faults(p.Document, named) {
		f := Fault{Pair: pair}
		for _, piece := range p.Document.In(pair.Term) {
			if is := p.FaultOf(piece); is != nil && !slices.Contains(f.Is, is) {
				f.Is = append(f.Is, is)
			}
		}
		all = append(all, f)
	}
	return all
}

// FaultOf returns the fault that a piece of a page leads to, begin or end of its link;
// nil where it leads to none.
func (p *Page) FaultOf(piece markup.Piece) *course.Fault {
	if piece.Ref == nil {
		return nil
	}
	return p.Targets[piece.Ref.Number].Fault
}

// checkFaults warns of faults of the list that no lesson says goes wrong: the reader
// would see what it is, and neither why nor what then.
func checkFaults(r *Reading) finding.List {
	named := map[*course.Fault]bool{}
	for _, p := range r.Pages {
		if p.Kind != course.LessonPage {
			continue
		}
		for _, f := range r.Faults(p) {
			for _, is := range f.Is {
				named[is] = true
			}
		}
	}
	var all finding.List
	for _, f := range r.Course.Faults {
		if !named[f] {
			all = append(all, f.Spot.Find(finding.FaultUnused, fmt.Sprintf("no lesson says why one sees “%s”", f.Sees),
				fmt.Sprintf("Name it in a lesson, under “%s”: [%s](fault:%s), and on the line under it why, and what then; or take it out.", r.Course.Sections.Wrong, f.Sees, f.ID)))
		}
	}
	return all
}
