package press

import (
	"html/template"

	"slipbook/generator/course"
)

// chartView is the whole decoration table on one page: as a table for wide
// screens and paper, and state by state for a phone.
type chartView struct {
	Shell  shell
	Keys   []chartKey
	States []chartState
	Parts  []chartPart
	Others []chartOther // what differs in this studio
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
	Name  link // without an address for a technique
	Cells []line
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
	return []sheet{{chartAddress, "chart", func() (any, error) {
		w, err := i.words.sayAll("chart", "chart-description")
		if err != nil {
			return nil, err
		}
		v := chartView{
			Shell:  i.shell(about{kind: "chart", address: chartAddress, title: w[0], description: w[1]}),
			Keys:   verdictMeanings,
			States: i.chartStates(),
			Parts:  i.chartParts(),
			Others: i.chartOthers(),
		}
		v.Size = sheetSize(v)
		return v, nil
	}}}
}

// chartStates is the table by state. A technique that the table does not judge
// in a state is left out of its list.
func (i *impression) chartStates() []chartState {
	var states []chartState
	for n, s := range i.table.States {
		c := chartState{State: i.stateLinks(chartAddress)[n], Drawing: i.icons["state-"+s.ID]}
		for _, m := range i.table.Media {
			c.Media = append(c.Media, mediumIn(m, s, chartAddress))
		}
		for _, t := range i.table.Techniques {
			for _, m := range i.manners(t, s) {
				if l := mannerIn(m, s, chartAddress); l.Verdict != "" {
					c.Ways = append(c.Ways, l)
				}
			}
		}
		states = append(states, c)
	}
	return states
}

// chartParts is the table by row.
func (i *impression) chartParts() []chartPart {
	var media, ways []chartRow
	for _, m := range i.table.Media {
		row := chartRow{Name: link{Title: m.Name, Address: mediumAddress(m.ID)}}
		for _, s := range i.table.States {
			row.Cells = append(row.Cells, mediumIn(m, s, chartAddress))
		}
		media = append(media, row)
	}
	for _, t := range i.table.Techniques {
		for _, m := range i.manners(t, i.table.States...) {
			row := chartRow{Name: link{Title: m.name}}
			for _, s := range i.table.States {
				row.Cells = append(row.Cells, mannerIn(m, s, chartAddress))
			}
			ways = append(ways, row)
		}
	}
	parts := []chartPart{{"chart-media", media}}
	if len(ways) > 0 {
		parts = append(parts, chartPart{"chart-ways", ways})
	}
	return parts
}

// chartOthers lists what products, recipe cards, clay bodies and house rules
// change.
func (i *impression) chartOthers() []chartOther {
	var others []chartOther
	for _, e := range i.table.Exceptions {
		o := chartOther{Kind: exceptionKinds[e.Kind], Name: e.Name}
		place := e.Medium
		if m, ok := i.table.FindMedium(e.Medium); ok {
			o.About = m.Name
		} else if t, ok := i.table.FindTechnique(e.Technique); ok {
			o.About, place = t.Name, wayID(t.ID)
		}
		for _, s := range i.table.States {
			if pair, ok := e.On[s.ID]; ok {
				o.States = append(o.States, line{s.Name, relative(chartAddress, stateAddress(s.ID)+"#"+place), pair.Verdict, shortReason(pair), false})
			}
		}
		if len(o.States) > 0 { // some only say that a glaze is opaque
			others = append(others, o)
		}
	}
	return others
}
