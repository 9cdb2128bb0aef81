package desk

import (
	"html/template"
	"slices"
	"strings"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/calculators/quantity"
	"slipbook/generator/address"
	"slipbook/generator/markup"
)

// Example is a worked example with its answer.
type Example struct {
	Case     string
	Given    []Pair
	Cautions []string // of this answer, beside those that are always said
	Headline string
	Told     []Pair // what a plan says in sentences
	Found    []Pair
	Rows     *Table // nil when the answer has none
	Steps    []Step // of a plan, instead of rows
	Mixed    []Mixed
	Judged   []string
	Next     []Way // into the calculators that come next
	Drawing  template.HTML
	Link     string // fills the form with the example
}

// Way is a link to another calculator.
type Way struct{ Title, Address string }

// Pair is a number with what it is.
type Pair struct{ Label, Text string }

// pairOf makes one of texts in which a number and its unit stay together.
func pairOf(label, text string) Pair { return Pair{markup.Bind(label), markup.Bind(text)} }

// Table is a table whose every cell knows its column, so that it can turn
// into a list on a narrow screen.
type Table struct {
	Caption string
	Across  string // what varies from column to column; empty when the columns are different things
	Head    []string
	Rows    [][]Cell
}

// Columns counts the columns beside the one that names the rows.
func (t Table) Columns() int { return len(t.Head) - 1 }

// Cell is one cell; Name marks the one that names its row.
type Cell struct {
	Name        bool
	Label, Text string
}

// Example works a calculator's example out, natively. id is where the form stands
// that the example's link leads to, folder where the calculators' own pages are;
// lesson returns the way to a lesson.
func (d Desk) Example(c *form.Calculator, id, folder string, lesson func(string) string) Example {
	answer := catalog.Solve(c.Name, c.Example.Given, d.Settings)
	v := Example{
		Case:     markup.Bind(c.Example.Case),
		Headline: markup.Bind(answer.Headline),
		Judged:   Bound(answer.Judged),
		Next:     onward(folder, answer.Next),
		Drawing:  template.HTML(answer.Drawing),
	}
	for _, caution := range answer.Cautions {
		if !slices.Contains(d.Settings.CautionsOf(c), caution) {
			v.Cautions = append(v.Cautions, caution)
		}
	}
	var filled []form.Setting
	for _, g := range c.Example.Given {
		in := c.Input(g.Name)
		if inWords(in) {
			v.Given = append(v.Given, pairOf(in.Label, chosenLabel(in, g.Text)))
			filled = append(filled, g)
			continue
		}
		texts := pieces(g.Text, in.List && !in.Words)
		unit := takeUnits(texts, in.Kind)
		v.Given = append(v.Given, pairOf(in.Label, readAs(g.Text, unit, in.Kind)))
		for _, text := range texts {
			filled = append(filled, form.Setting{Name: g.Name, Text: text})
		}
		if unit != "" {
			filled = append(filled, form.Setting{Name: g.Name + ".unit", Text: unit})
		}
	}
	for _, r := range answer.Outputs {
		switch o := c.Output(r.Name); {
		case o.Aside:
		case o.Text && c.Steps:
			v.Told = append(v.Told, pairOf(o.Label, r.Text))
		default:
			v.Found = append(v.Found, pairOf(o.Label, r.Text))
		}
	}
	if c.Steps {
		v.Steps, v.Mixed = Steps(answer, id+".example", lesson), MixedOf(answer.Mixed, lesson)
	} else if len(answer.Rows) > 0 {
		v.Rows = answerTable(c, answer)
	}
	v.Link = "?" + form.Request(c.Name, filled) + "#" + id
	return v
}

// onward links an answer to the calculators that come next, with its numbers.
func onward(folder string, next []form.Onward) []Way {
	var links []Way
	for _, n := range next {
		name, _, _ := strings.Cut(strings.TrimPrefix(n.Request, "calculator="), "&")
		links = append(links, Way{Title: n.Words, Address: folder + name + ".html?" + n.Request + "#" + address.CalculatorID(0)})
	}
	return links
}

// readAs returns an input as typed, with the unit it is read in when the text
// itself names none.
func readAs(text, unit string, kind quantity.Kind) string {
	if unit == "" && strings.Trim(text[len(text)-1:], "0123456789") == "" {
		return withUnit(text, quantity.Canonical(kind))
	}
	return text
}

// withUnit puts a unit behind its number, on the same line.
func withUnit(text, unit string) string {
	if unit = shownUnit(unit); unit == "" {
		return text
	}
	return text + "\u00a0" + unit
}

// answerTable is the rows of an answer, without the columns that it has no use
// for.
func answerTable(c *form.Calculator, answer *form.Answer) *Table {
	t := &Table{}
	for _, column := range Columns(c) {
		if slices.ContainsFunc(answer.Rows[0], func(cell form.Cell) bool { return cell.Column == column.Name }) {
			t.Head = append(t.Head, column.Label)
		}
	}
	for _, row := range answer.Rows {
		var texts []string
		for _, cell := range row {
			texts = append(texts, cell.Text)
		}
		t.Rows = append(t.Rows, cells(t.Head, texts))
	}
	return t
}

// Table returns a calculator's table for the wall.
func (d Desk) Table(c *form.Calculator) Table { return printedTable(c, c.Printed(d.Settings)) }

func printedTable(c *form.Calculator, printed form.Printed) Table {
	t := Table{Caption: markup.Bind(printed.Caption), Head: Bound(printed.Head)}
	labels := t.Head
	if across := c.Table.Across; across != "" {
		t.Across = c.Input(across).Label
		labels = append([]string(nil), t.Head...)
		for n := range labels[1:] {
			labels[n+1] = t.Across + " " + labels[n+1]
		}
	}
	for _, row := range printed.Rows {
		t.Rows = append(t.Rows, cells(labels, row))
	}
	return t
}

// cells joins the texts of a row with the labels of their columns. The first
// names the row; one without an answer holds a dash.
func cells(labels, texts []string) []Cell {
	row := make([]Cell, len(texts))
	for n, text := range texts {
		if text == "" {
			text = "–"
		}
		row[n] = Cell{n == 0, labels[n], markup.Bind(text)}
	}
	return row
}
