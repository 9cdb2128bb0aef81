package press

import (
	"html/template"
	"strconv"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
)

// chartView is the whole decoration table on one page: as a table for wide
// screens and paper, and state by state for a phone.
type chartView struct {
	framed
	Keys   []chartKey
	States []chartState
	Parts  []chartPart
	Others []chartOther // what differs in this studio
	Safety care         // every hazard that a row or a cell names
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
	State       link
	Drawing     template.HTML
	Media, Ways []line
}

// chartPart is the rows of the media, or of the techniques.
type chartPart struct {
	Heading string // key of its words
	Rows    []chartRow
}

// chartRow is one row of the table.
type chartRow struct {
	Name   link // without an address for a technique
	Safety care // in every state; the cells tell what comes to it
	Cells  []chartCell
}

// chartCell is the verdicts of one state: one, or of a technique that treats some
// media unlike the others, one for each group of them. It is empty where the
// table says nothing.
type chartCell struct {
	line
	Others []line // named by their media
}

// chartOther is one exception with what it changes.
type chartOther struct {
	Kind   string // key of its words
	Name   string
	About  string // the medium or technique
	States []line
}

// verdictMeanings explain the verdicts, in the order of the chart's key.
var verdictMeanings = []chartKey{
	{course.Yes, "key-yes"},
	{course.Label, "key-label"},
	{course.Risky, "key-risky"},
	{course.Never, "key-never"},
}

// chartSheets is the chart, or nothing while the course has no table.
func (i *impression) chartSheets() []sheet {
	if len(i.table.States) == 0 {
		return nil
	}
	title, description := i.Say("chart"), i.Say("chart-description")
	return []sheet{{address: address.Chart, title: title, description: description, view: func(at place) (pageView, error) {
		v := chartView{
			framed: framed{Shell: i.shell(at, about{kind: "chart", title: title, description: description, gathered: true})},
			Keys:   verdictMeanings,
			States: i.chartStates(at),
			Parts:  i.chartParts(at),
			Others: i.chartOthers(at),
			Safety: i.care(at, i.tableCares()...),
		}
		v.Size = chartSize(i.Print.Chart, v)
		return v, nil
	}}}
}

// chartStates is the table by state. A technique that the table does not judge
// in a state is left out of its list.
func (i *impression) chartStates(at place) []chartState {
	var states []chartState
	for n, s := range i.table.States {
		c := chartState{State: *i.stateLink(n, at), Drawing: i.Icons["state-"+s.ID]}
		for _, m := range i.table.Media {
			c.Media = append(c.Media, i.mediumIn(m, s, at))
		}
		for _, t := range i.table.Techniques {
			c.Ways = append(c.Ways, i.waysIn(t, s, at)...)
		}
		states = append(states, c)
	}
	return states
}

// chartParts is the table by row.
func (i *impression) chartParts(at place) []chartPart {
	var media, ways []chartRow
	for _, m := range i.table.Media {
		row := chartRow{Name: link{Title: m.Name, Address: at.to(address.Medium(m.ID))}, Safety: i.care(at, m.Care)}
		for _, s := range i.table.States {
			row.Cells = append(row.Cells, chartCell{line: named(i.cell(i.mediumIn(m, s, at), m.Care), "")})
		}
		media = append(media, row)
	}
	for _, t := range i.table.Techniques {
		row := chartRow{Name: link{Title: t.Name}, Safety: i.care(at, t.Care)}
		for _, s := range i.table.States {
			row.Cells = append(row.Cells, i.cellOf(t, s, at))
		}
		ways = append(ways, row)
	}
	parts := []chartPart{{"chart-media", media}}
	if len(ways) > 0 {
		parts = append(parts, chartPart{"chart-ways", ways})
	}
	return parts
}

// waysIn is what a technique says of a state, in a line for each group of media
// of which it says the same. What the table does not say is left out.
func (i *impression) waysIn(t course.Technique, s course.State, at place) []line {
	var lines []line
	for n, m := range i.manners(t, s) {
		l := i.mannerIn(m, s, at)
		if n > 0 {
			l.Address = at.to(address.State(s.ID) + "#" + wayID(m.id) + "." + strconv.Itoa(n+1))
		}
		if l.Verdict != "" {
			lines = append(lines, l)
		}
	}
	return lines
}

// cellOf is the same as a cell of the technique's row.
func (i *impression) cellOf(t course.Technique, s course.State, at place) chartCell {
	var c chartCell
	for _, l := range i.waysIn(t, s, at) {
		l = i.cell(l, t.Care)
		l.Name = strings.TrimPrefix(strings.TrimPrefix(l.Name, t.Name), ": ")
		if l.Name == "" {
			c.line = l
		} else {
			c.Others = append(c.Others, l)
		}
	}
	return c
}

// cell is a line in a row that has told of some hazards already.
func (i *impression) cell(l line, told course.Care) line {
	l.Safety = i.besides(l.Safety, told)
	return l
}

// tableCares is what the table says of the safety of all media and ways of
// working.
func (i *impression) tableCares() []course.Care {
	var rows []course.Care
	for _, m := range i.table.Media {
		rows = append(rows, m.Care)
	}
	for _, t := range i.table.Techniques {
		rows = append(rows, t.Care)
	}
	for _, s := range i.table.States {
		rows = append(rows, i.allowedIn(s)...)
	}
	return rows
}

// chartOthers lists what products, recipe cards, clay bodies and house rules
// change.
func (i *impression) chartOthers(at place) []chartOther {
	var others []chartOther
	for _, e := range i.table.Exceptions {
		o := chartOther{Kind: exceptionKinds[e.Kind], Name: e.Name}
		on := e.Medium
		if m, ok := i.table.FindMedium(e.Medium); ok {
			o.About = m.Name
		} else if t, ok := i.table.FindTechnique(e.Technique); ok {
			o.About, on = t.Name, wayID(t.ID)
		}
		for _, s := range i.table.States {
			if pair, ok := e.On[s.ID]; ok {
				o.States = append(o.States, i.otherIn(e, pair, s, on, at))
			}
		}
		if len(o.States) > 0 { // some only say that a glaze is opaque
			others = append(others, o)
		}
	}
	return others
}

// otherIn is what an exception says of a state, as a line.
func (i *impression) otherIn(e course.Exception, pair course.Pair, s course.State, on string, at place) line {
	l := i.lineOf(at, s.Name, pair, address.State(s.ID)+"#"+on)
	l.Safety = i.exceptionCare(at, e, pair)
	return l
}
