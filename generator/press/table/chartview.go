package table

import (
	"html/template"

	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// chartView is the whole decoration table on one page: as a table for wide
// screens and paper, and state by state for a phone.
type chartView struct {
	imprint.Framed
	Keys   []chartKey
	States []chartState
	Parts  []chartPart
	Others []chartOther // what differs in this studio
	Safety care.Care    // every hazard that a row or a cell names
	Size   string       // the class of the printed type
}

// Columns counts the columns of the table, with the one of its names.
func (v chartView) Columns() int { return 1 + len(v.States) }

// chartKey explains one verdict.
type chartKey struct {
	Verdict course.Verdict
	Means   string // key of its words
}

// chartState is a column of the table, and its list on a phone.
type chartState struct {
	State       imprint.Link
	Drawing     template.HTML
	Media, Ways []Line
}

// chartPart is the rows of the media, or of the techniques.
type chartPart struct {
	Heading string // key of its words
	Rows    []chartRow
}

// chartRow is one row of the table.
type chartRow struct {
	Name   imprint.Link // without an address for a technique
	Safety care.Care    // in every state; the cells tell what comes to it
	Cells  []chartCell
}

// chartCell is the verdicts of one state: one, or of a technique that treats some
// media unlike the others, one for each group of them. It is empty where the
// table says nothing.
type chartCell struct {
	Line
	Others []Line // named by their media
}

// chartOther is one exception with what it changes.
type chartOther struct {
	Kind   string // key of its words
	Name   string
	About  string // the medium or technique
	States []Line
}
