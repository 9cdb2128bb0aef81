package table

import (
	"strconv"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
)

// verdictMeanings explain the verdicts, in the order of the chart's key.
var verdictMeanings = []chartKey{
	{course.Yes, "key-yes"},
	{course.Label, "key-label"},
	{course.Risky, "key-risky"},
	{course.Never, "key-never"},
}

// Chart is the chart, or nothing while the course has no table.
func (r *Table) Chart() []imprint.Sheet {
	if len(r.Decoration.States) == 0 {
		return nil
	}
	title, description := r.Say("chart"), r.Say("chart-description")
	return []imprint.Sheet{{Address: address.Chart, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		v := chartView{
			Framed: imprint.Framed{Shell: r.Shell(at, imprint.About{Kind: "chart", Title: title, Description: description, Gathered: true})},
			Keys:   verdictMeanings,
			States: r.chartStates(at),
			Parts:  r.chartParts(at),
			Others: r.chartOthers(at),
			Safety: r.Care(at, r.Cares()...),
		}
		v.Size = chartSize(r.Print.Chart, v)
		return v, nil
	}}}
}

// chartStates is the table by state. A technique that the table does not judge
// in a state is left out of its list.
func (r *Table) chartStates(at imprint.Place) []chartState {
	var states []chartState
	for n, s := range r.Decoration.States {
		c := chartState{State: *r.StateLink(n, at), Drawing: r.Icons["state-"+s.ID]}
		for _, m := range r.Decoration.Media {
			c.Media = append(c.Media, r.MediumIn(m, s, at))
		}
		for _, t := range r.Decoration.Techniques {
			c.Ways = append(c.Ways, r.waysIn(t, s, at)...)
		}
		states = append(states, c)
	}
	return states
}

// chartParts is the table by row.
func (r *Table) chartParts(at imprint.Place) []chartPart {
	var media, ways []chartRow
	for _, m := range r.Decoration.Media {
		row := chartRow{Name: imprint.Link{Title: m.Name, Address: at.To(address.Medium(m.ID))}, Safety: r.Care(at, m.Care)}
		for _, s := range r.Decoration.States {
			row.Cells = append(row.Cells, chartCell{Line: Named(r.Cell(r.MediumIn(m, s, at), m.Care), "")})
		}
		media = append(media, row)
	}
	for _, t := range r.Decoration.Techniques {
		row := chartRow{Name: imprint.Link{Title: t.Name}, Safety: r.Care(at, t.Care)}
		for _, s := range r.Decoration.States {
			row.Cells = append(row.Cells, r.cellOf(t, s, at))
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
func (r *Table) waysIn(t course.Technique, s course.State, at imprint.Place) []Line {
	var lines []Line
	for n, m := range r.manners(t, s) {
		l := r.mannerIn(m, s, at)
		if n > 0 {
			l.Address = at.To(address.State(s.ID) + "#" + wayID(m.id) + "." + strconv.Itoa(n+1))
		}
		if l.Verdict != "" {
			lines = append(lines, l)
		}
	}
	return lines
}

// cellOf is the same as a cell of the technique's row.
func (r *Table) cellOf(t course.Technique, s course.State, at imprint.Place) chartCell {
	var c chartCell
	for _, l := range r.waysIn(t, s, at) {
		l = r.Cell(l, t.Care)
		l.Name = strings.TrimPrefix(strings.TrimPrefix(l.Name, t.Name), ": ")
		if l.Name == "" {
			c.Line = l
		} else {
			c.Others = append(c.Others, l)
		}
	}
	return c
}

// Cell is a line in a row that has told of some hazards already.
func (r *Table) Cell(l Line, told course.Care) Line {
	l.Safety = r.Besides(l.Safety, told)
	return l
}

// Cares is what the table says of the safety of all media and ways of
// working.
func (r *Table) Cares() []course.Care {
	var rows []course.Care
	for _, m := range r.Decoration.Media {
		rows = append(rows, m.Care)
	}
	for _, t := range r.Decoration.Techniques {
		rows = append(rows, t.Care)
	}
	for _, s := range r.Decoration.States {
		rows = append(rows, r.allowedIn(s)...)
	}
	return rows
}

// chartOthers lists what products, recipe cards, clay bodies and house rules
// change.
func (r *Table) chartOthers(at imprint.Place) []chartOther {
	var others []chartOther
	for _, e := range r.Decoration.Exceptions {
		o := chartOther{Kind: exceptionKinds[e.Kind], Name: e.Name}
		on := e.Medium
		if m, ok := r.Decoration.FindMedium(e.Medium); ok {
			o.About = m.Name
		} else if t, ok := r.Decoration.FindTechnique(e.Technique); ok {
			o.About, on = t.Name, wayID(t.ID)
		}
		for _, s := range r.Decoration.States {
			if pair, ok := e.On[s.ID]; ok {
				o.States = append(o.States, r.otherIn(e, pair, s, on, at))
			}
		}
		if len(o.States) > 0 { // some only say that a glaze is opaque
			others = append(others, o)
		}
	}
	return others
}

// otherIn is what an exception says of a state, as a line.
func (r *Table) otherIn(e course.Exception, pair course.Pair, s course.State, on string, at imprint.Place) Line {
	l := r.lineOf(at, s.Name, pair, address.State(s.ID)+"#"+on)
	l.Safety = r.exceptionCare(at, e, pair)
	return l
}
