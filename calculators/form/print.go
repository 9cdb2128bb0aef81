package form

// Printed is a calculator's printed table, filled in: what a page without
// JavaScript shows and what is pinned to the wall.
type Printed struct {
	Caption string
	Head    []string   // the first names the rows
	Rows    [][]string // the first cell of each is the row's name; an empty cell has no answer
}

// Printed fills in the calculator's table in a course's style.
func (c *Calculator) Printed(s Settings) Printed {
	t := c.Table
	p := Printed{Caption: t.Caption}
	switch {
	case t.Across != "":
		p.Head = []string{c.Input(t.Down).Label}
		p.Head = append(p.Head, t.AcrossValues...)
		for _, down := range t.Values {
			row := []string{down}
			for _, across := range t.AcrossValues {
				a := c.Solve(c.with(Setting{t.Down, down}, Setting{t.Across, across}), s)
				row = append(row, a.textOf(t.Show[0]))
			}
			p.Rows = append(p.Rows, row)
		}
	case len(t.Cases) > 0:
		p.Head = append([]string{s.inWords().Words.Text("form.table-for")}, c.heads(t.Show)...)
		for _, k := range t.Cases {
			p.Rows = append(p.Rows, c.printedRow(k.Words, s, k.Given...))
		}
	default:
		p.Head = append([]string{c.Input(t.Down).Label}, c.heads(t.Show)...)
		for _, down := range t.Values {
			p.Rows = append(p.Rows, c.printedRow(down, s, Setting{t.Down, down}))
		}
	}
	return p
}

func (c *Calculator) printedRow(name string, s Settings, given ...Setting) []string {
	a := c.Solve(c.with(given...), s)
	row := []string{name}
	for _, output := range c.Table.Show {
		row = append(row, a.textOf(output))
	}
	return row
}

func (c *Calculator) heads(outputs []string) []string {
	var heads []string
	for _, name := range outputs {
		o := c.Output(name)
		head := o.Label
		if o.Unit != "1" {
			head += ", " + o.Unit
		}
		heads = append(heads, head)
	}
	return heads
}

// with returns the example's inputs with the table's own and then others put in
// their place; an input whose text is blank counts as not given.
func (c *Calculator) with(other ...Setting) []Setting {
	given := append([]Setting(nil), c.Example.Given...)
	for _, o := range append(append([]Setting(nil), c.Table.Also...), other...) {
		given = put(given, o)
	}
	return given
}

func put(given []Setting, s Setting) []Setting {
	for i := range given {
		if given[i].Name == s.Name {
			given[i].Text = s.Text
			return given
		}
	}
	return append(given, s)
}

func (a *Answer) textOf(output string) string {
	for _, r := range a.Outputs {
		if r.Name == output {
			if r.IsText {
				return r.Text
			}
			return r.Figure
		}
	}
	return ""
}
