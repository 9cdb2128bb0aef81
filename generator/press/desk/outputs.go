package desk

import (
	"html/template"
	"strings"

	"slipbook/calculators/form"
	"slipbook/calculators/formula"
	"slipbook/generator/markup"
)

// Output is the place of one answer.
type Output struct {
	Name, Label, Unit string
	Words             bool // holds words, not a number
	Headed            bool // the headline says it, too
}

// Column is the heading of one column of rows.
type Column struct {
	Name, Label, Unit string
	Words             bool // holds words, not numbers
}

// Sheet is the button to a mixing sheet, with what is weighed in the order
// in which it goes into the bucket, and what of it alone. An answer with rows
// has its own order.
type Sheet struct{ Order, Alone string }

// SheetOf returns that of a calculator; nil where nothing is weighed.
func SheetOf(c *form.Calculator) *Sheet {
	if len(c.Weigh) == 0 && !c.WeighRows {
		return nil
	}
	v := &Sheet{Order: strings.Join(c.Weigh, " ")}
	for _, name := range c.Weigh {
		if c.Output(name).Alone {
			v.Alone = name
		}
	}
	return v
}

// Formula is one formula with its letters explained.
type Formula struct {
	Math  template.HTML
	Where []Symbol
}

// Symbol is a letter of a formula, or several, with what is meant.
type Symbol struct {
	Letter template.HTML
	Means  string
}

// Formulas returns the formulas of a calculator.
func Formulas(c *form.Calculator) []Formula {
	var all []Formula
	for _, f := range c.Formulas() {
		all = append(all, shownFormula(f))
	}
	return all
}

func shownFormula(f formula.Formula) Formula {
	v := Formula{Math: template.HTML(f.MathML())}
	for _, s := range f.Where {
		v.Where = append(v.Where, Symbol{letters(s.Letter), s.Means})
	}
	return v
}

// letters sets what follows an underline below the line: "V_1, V_2".
func letters(text string) template.HTML {
	var b strings.Builder
	for n, piece := range strings.Split(template.HTMLEscapeString(text), "_") {
		if n == 0 {
			b.WriteString(piece)
			continue
		}
		end := strings.IndexAny(piece+" ", " ,;")
		b.WriteString("<sub>" + piece[:end] + "</sub>" + piece[end:])
	}
	return template.HTML(b.String())
}

// Outputs parts the places of the answers into those in sight and the others.
func Outputs(c *form.Calculator) (inSight, aside []Output) {
	for _, o := range c.Outputs {
		v := Output{o.Name, markup.Bind(o.Label), shownUnit(o.Unit), o.Text, o.Headed}
		if o.Aside {
			aside = append(aside, v)
		} else {
			inSight = append(inSight, v)
		}
	}
	return inSight, aside
}

// Bound returns texts in which a number and its unit stay together.
func Bound(texts []string) []string {
	all := make([]string, len(texts))
	for n, text := range texts {
		all[n] = markup.Bind(text)
	}
	return all
}

// shownUnit is a unit as it stands beside a number; "1" is none.
func shownUnit(unit string) string {
	if unit == "1" {
		return ""
	}
	return unit
}

// Columns returns the headings of a calculator's rows, with their units.
func Columns(c *form.Calculator) []Column {
	headed := make([]Column, len(c.Columns))
	for i, column := range c.Columns {
		v := Column{Name: column.Name, Label: column.Label, Unit: shownUnit(column.Unit), Words: column.Text}
		if v.Unit != "" {
			v.Label += ", " + v.Unit
		}
		headed[i] = v
	}
	return headed
}
