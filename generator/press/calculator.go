package press

import (
	"fmt"
	"html/template"
	"strings"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/calculators/formula"
	"slipbook/calculators/stage"
	"slipbook/generator/address"
	"slipbook/generator/course"
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
	return strings.TrimSuffix(folder, address.CalculatorFolder)
}

// sheetView is the button to a mixing sheet, with what is weighed in the order
// in which it goes into the bucket, and what of it alone. An answer with rows
// has its own order.
type sheetView struct{ Order, Alone string }

func sheetOf(c *form.Calculator) *sheetView {
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
// in, which proof has seen to be understood; number tells apart the calculators of
// a page, from 1, and is 0 on the calculator's own page.
func (i *impression) calculatorView(c *form.Calculator, fill []markup.Setting, number int, at place) (any, error) {
	standing, err := i.standing(c, number, at)
	if err != nil {
		return nil, err
	}
	folder := at.to(address.CalculatorFolder)
	v := calculatorView{
		ID:       at.id(address.CalculatorID(number)),
		Own:      number == 0,
		Name:     c.Name,
		Title:    c.Title,
		Purpose:  markup.Bind(c.Purpose),
		Care:     i.care(at, course.Care{Hazards: c.Hazards}),
		Cautions: bound(c.Cautions),
		Notes:    bound(c.Notes),
		Standing: standing,
	}
	if at.book != nil { // where nothing can be filled in
		return v, nil
	}
	v.Settings, v.Folder, v.Home = i.settings.Sums(c).Encode(), folder, homeFrom(folder)
	v.Columns, v.Steps, v.Blank = columns(c), c.Steps, stepView{Blank: true}
	v.You, v.Sheet = catalog.Doer(i.course.Language, stage.Student), sheetOf(c)
	v.First, v.More = i.choices(c, fill, v.ID)
	leadOn(c, folder, v.First)
	leadOn(c, folder, v.More)
	v.Main, v.Aside = outputs(c)
	return v, nil
}

// calculatorHTML prints a calculator in a lesson. Many lessons fill in the same,
// so what was printed is kept.
func (i *impression) calculatorHTML(b *markup.Block, at place) (template.HTML, error) {
	if at.book != nil {
		return i.calculatorAnew(b, at)
	}
	var key strings.Builder
	fmt.Fprintf(&key, "%s %d %s", b.Words, b.Number, at.to(address.CalculatorFolder))
	for _, f := range b.Fill {
		fmt.Fprintf(&key, " %q=%q", f.Name, f.Value)
	}
	if html, ok := i.kept.Load(key.String()); ok {
		return html.(template.HTML), nil
	}
	html, err := i.calculatorAnew(b, at)
	if err == nil {
		i.kept.Store(key.String(), html)
	}
	return html, err
}

func (i *impression) calculatorAnew(b *markup.Block, at place) (template.HTML, error) {
	view, err := i.calculatorView(i.calculators.Find(b.Words), b.Fill, b.Number, at)
	if err != nil {
		return "", err
	}
	return execute(i.templatesAt(at), markup.CalculatorBlock, view)
}

// spot is a calculator at one of the places it can have on a page, and where the
// calculators' own pages are from there.
type spot struct {
	name   string
	number int
	folder string
}

// standing prints what no lesson changes about a calculator, once for each place
// on a page: it takes a dozen sums, and a large course has thousands of pages. In
// the book it stands in the calculator's own chapter alone.
func (i *impression) standing(c *form.Calculator, number int, at place) (template.HTML, error) {
	key := spot{c.Name, number, at.to(address.CalculatorFolder)}
	if at.book != nil && number != 0 {
		return "", nil
	}
	if html, ok := i.kept.Load(key); ok && at.book == nil {
		return html.(template.HTML), nil
	}
	v := standingView{
		Own:     number == 0,
		Example: i.example(c, at.id(address.CalculatorID(number)), at),
		Table:   printedTable(c, c.Printed(i.settings)),
	}
	for _, f := range c.Formulas() {
		v.Formulas = append(v.Formulas, shownFormula(f))
	}
	html, err := execute(i.templatesAt(at), "calculator-standing", v)
	if err == nil && at.book == nil {
		i.kept.Store(key, html)
	}
	return html, err
}

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

// outputs parts the places of the answers into those in sight and the others.
func outputs(c *form.Calculator) (inSight, aside []outputView) {
	for _, o := range c.Outputs {
		v := outputView{o.Name, markup.Bind(o.Label), shownUnit(o.Unit), o.Text, o.Headed}
		if o.Aside {
			aside = append(aside, v)
		} else {
			inSight = append(inSight, v)
		}
	}
	return inSight, aside
}

// bound are texts in which a number and its unit stay together.
func bound(texts []string) []string {
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

// columns are the headings of a calculator's rows, with their units.
func columns(c *form.Calculator) []columnView {
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
