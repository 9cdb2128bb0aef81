// Package gathered makes the pages that are gathered from the others: what students
// ask, what goes wrong, the notes for teaching, the words of the trade, the recap
// cards. It exists so that nothing is written twice to stand in two places: all of it
// comes from the lessons and the decoration table.
package gathered

import (
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/setting"
	"slipbook/generator/press/table"
	"slipbook/generator/proof"
)

// Gathered makes these pages of a course that was read.
type Gathered struct {
	*table.Table
	reading     *proof.Reading
	frame       *imprint.Frame
	setter      *setting.Setter
	forTeaching bool // a copy for the instructor
	documents   map[*course.Page]*proof.Page
	terms       map[string]course.Term
	faultsAt    map[string][]faultsSource // what stands on each page of what goes wrong
	notesOn     map[*course.Unit]string   // the pages of the notes for teaching a unit
}

// New makes what gathers. The pages of its own that others lead to are noted in the
// frame when they are listed.
func New(r *proof.Reading, decoration *table.Table, frame *imprint.Frame, setter *setting.Setter, forTeaching bool) *Gathered {
	g := &Gathered{
		Table: decoration, reading: r, frame: frame, setter: setter, forTeaching: forTeaching,
		documents: make(map[*course.Page]*proof.Page, len(r.Pages)),
		terms:     make(map[string]course.Term),
		faultsAt:  make(map[string][]faultsSource),
		notesOn:   make(map[*course.Unit]string),
	}
	for _, page := range r.Pages {
		g.documents[page.Page] = page
	}
	for _, term := range r.Course.Glossary {
		g.terms[term.ID] = term
	}
	return g
}

// faultsSource is from where a part of what goes wrong is gathered: a fault of the
// course's list with all that lessons say of it, or what one lesson says beside the
// list.
type faultsSource struct {
	fault *course.Fault // nil where it is on no list
	said  []saidFault
	size  int // bytes that it is thought to take
}

// saidFault is something that goes wrong, in its lesson.
type saidFault struct {
	page *proof.Page
	proof.Fault
}
