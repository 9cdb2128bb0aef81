package press

import (
	"bytes"
	"fmt"
	"html/template"
	"strings"

	"slipbook/calculators/catalog"
	"slipbook/calculators/formula"
	"slipbook/calculators/stage"
	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// calculatorView is a calculator as its piece prints it: the form, and what
// stands on the page without scripts as well.
type calculatorView struct {
	ID       string // "calculator.1"; every id inside begins with it
	Own      bool   // on its own page, whose heading names it
	Name     string
	Title    string
	Purpose  string
	Settings string   // what the engine must know of the course, encoded
	Folder   string   // where the calculators' own pages are, from this page
	Care     care     // what is always to be minded
	Cautions []string // besides
	Notes    []string

	First, More []choiceView // boxes in sight at once, and behind "more"
	Main, Aside []outputView // answers in sight, and behind "other scales"
	Columns     []columnView
	Steps       bool   // its rows are the steps of a plan
	Home        string // where the handbook's root is, from this page; of a plan, as the two below
	You         string // what an answer calls the reader, who does most steps
	Blank       stepView
	Sheet       *sheetView // nil when nothing is weighed

	Standing template.HTML // what no lesson changes: example, formulas, table
}

// standingView is the part of a calculator that is the same wherever it stands.
type standingView struct {
	Own      bool
	Example  exampleView
	Formulas []formulaView
	Table    tableView
}

// place is a calculator at one of the places it can have on a page, and where
// the calculators' own pages are from there.
type place struct {
	name   string
	number int
	folder string
}

// outputView is the place of one answer.
type outputView struct {
	Name, Label, Unit string
	Words             bool // holds words, not a number
	Headed            bool // the headline says it, too
}

// columnView is the heading of one column of rows.
type columnView struct {
	Name, Label, Unit string
	Words             bool // holds words, not numbers
}

// homeFrom is where the handbook's root is, from where the calculators' folder
// is.
func homeFrom(folder string) string {
	if folder == "" {
		return "../"
	}
	return strings.TrimSuffix(folder, calculatorFolder)
}

// sheetView is the button to a mixing sheet, with what is weighed in the order
// in which it goes into the bucket, and what of it alone. An answer with rows
// has its own order.
type sheetView struct{ Order, Alone string }

func sheetOf(c *catalog.Calculator) *sheetView {
	if len(c.Weigh) == 0 && !c.WeighRows {
		return nil
	}
	v := &sheetView{Order: strings.Join(c.Weigh, " ")}
	for _, name := range c.Weigh {
		if c.Output(name).Alone {
			v.Alone = name
		}
	}
	return v
}

// formulaView is one formula with its letters explained.
type formulaView struct {
	Math  template.HTML
	Where []symbolView
}

// symbolView is a letter of a formula, or several, with what is meant.
type symbolView struct {
	Letter template.HTML
	Means  string
}

// calculatorView makes the view of a calculator. fill is what a lesson filled
// in; number tells apart the calculators of a page, from 1, and is 0 on the
// calculator's own page. An input that the calculator does not have, and a
// value that it refuses, are problems at their place in the lesson.
func (p *Press) calculatorView(c *catalog.Calculator, fill []markup.Setting, number int, from string) (any, []markup.Problem) {
	if problems := p.checkFill(c, fill); len(problems) > 0 {
		return nil, problems
	}
	folder := relative(from, calculatorFolder)
	standing, err := p.standing(c, number, folder)
	if err != nil {
		return nil, []markup.Problem{themeFault("calculator", err)}
	}
	v := calculatorView{
		ID:       calculatorID(number),
		Own:      number == 0,
		Name:     c.Name,
		Title:    c.Title,
		Purpose:  c.Purpose,
		Settings: p.settings.Sums(c).Encode(),
		Folder:   folder,
		Care:     p.care(from, course.Care{Hazards: c.Hazards}),
		Cautions: c.Cautions,
		Notes:    c.Notes,
		Columns:  columns(c),
		Steps:    c.Steps,
		Home:     homeFrom(folder),
		You:      catalog.Doer(p.course.Language, stage.Student),
		Blank:    stepView{Blank: true},
		Sheet:    sheetOf(c),
		Standing: standing,
	}
	v.First, v.More = p.choices(c, fill, v.ID)
	leadOn(c, folder, v.First)
	leadOn(c, folder, v.More)
	v.Main, v.Aside = outputs(c)
	return v, nil
}

// standing prints what no lesson changes about a calculator, once for each
// place on a page: it takes a dozen sums, and a large course has thousands of
// pages.
func (p *Press) standing(c *catalog.Calculator, number int, folder string) (template.HTML, error) {
	at := place{c.Name, number, folder}
	if html, ok := p.printed.Load(at); ok {
		return html.(template.HTML), nil
	}
	v := standingView{
		Own:     number == 0,
		Example: p.example(c, calculatorID(number), folder),
		Table:   printedTable(c, c.Printed(p.settings)),
	}
	for _, f := range c.Formulas() {
		v.Formulas = append(v.Formulas, shownFormula(f))
	}
	var out bytes.Buffer
	if err := p.templates.ExecuteTemplate(&out, "calculator-standing", v); err != nil {
		return "", err
	}
	html := template.HTML(out.String())
	p.printed.Store(at, html)
	return html, nil
}

// calculatorID is where a calculator stands on its page.
func calculatorID(number int) string { return fmt.Sprintf("calculator.%d", number) }

// shownFormula makes the view of a formula.
func shownFormula(f formula.Formula) formulaView {
	v := formulaView{Math: template.HTML(f.MathML())}
	for _, s := range f.Where {
		v.Where = append(v.Where, symbolView{letters(s.Letter), s.Means})
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

// checkFill asks the calculator itself about what a lesson filled in. Boxes
// that the lesson leaves to the student are no problem.
func (p *Press) checkFill(c *catalog.Calculator, fill []markup.Setting) []markup.Problem {
	var problems []markup.Problem
	var given []catalog.Setting
	for _, f := range fill {
		if c.Input(f.Name) == nil {
			problems = append(problems, unknownInput(c, f))
			continue
		}
		given = append(given, catalog.Setting{Name: f.Name, Text: f.Value})
	}
	answer := catalog.Solve(c.Name, given, p.settings)
	for _, f := range fill {
		for _, e := range answer.Errors {
			if e.Input == f.Name && strings.TrimSpace(f.Value) != "" && c.Input(f.Name) != nil {
				problems = append(problems, markup.Problem{
					Offset: f.ValueOffset,
					Rule:   finding.CalculatorInput,
					Text:   fmt.Sprintf("the calculator %s refuses %q for %s", c.Name, f.Value, f.Name),
					Do:     e.Text,
				})
			}
		}
	}
	return problems
}

// unknownInput says that a calculator has no input of a name, and which it has.
func unknownInput(c *catalog.Calculator, f markup.Setting) markup.Problem {
	names := make([]string, len(c.Inputs))
	for i, in := range c.Inputs {
		names[i] = in.Name
	}
	return markup.Problem{
		Offset: f.NameOffset,
		Rule:   finding.CalculatorInput,
		Text:   fmt.Sprintf("the calculator %s has no input %q", c.Name, f.Name),
		Do:     "Write one of its inputs: " + strings.Join(names, ", ") + ".",
	}
}

// outputs parts the places of the answers into those in sight and the others.
func outputs(c *catalog.Calculator) (inSight, aside []outputView) {
	for _, o := range c.Outputs {
		v := outputView{o.Name, o.Label, shownUnit(o.Unit), o.Text, o.Headed}
		if o.Aside {
			aside = append(aside, v)
		} else {
			inSight = append(inSight, v)
		}
	}
	return inSight, aside
}

// shownUnit is a unit as it stands beside a number; "1" is none.
func shownUnit(unit string) string {
	if unit == "1" {
		return ""
	}
	return unit
}

// columns are the headings of a calculator's rows, with their units.
func columns(c *catalog.Calculator) []columnView {
	headed := make([]columnView, len(c.Columns))
	for i, column := range c.Columns {
		v := columnView{Name: column.Name, Label: column.Label, Unit: shownUnit(column.Unit), Words: column.Text}
		if v.Unit != "" {
			v.Label += ", " + v.Unit
		}
		headed[i] = v
	}
	return headed
}
