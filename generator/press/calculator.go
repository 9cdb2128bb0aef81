package press

import (
	"fmt"
	"html/template"
	"strings"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/calculators/stage"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/desk"
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

	First, More []desk.Choice // boxes in sight at once, and behind "more"
	Main, Aside []desk.Output // answers in sight, and behind "other scales"
	Columns     []desk.Column
	Steps       bool   // its rows are the steps of a plan
	Home        string // where the handbook's root is, from this page; of a plan, as the two below
	You         string // what an answer calls the reader, who does most steps
	Blank       desk.Step
	Sheet       *desk.Sheet // nil when nothing is weighed

	Standing template.HTML // what no lesson changes: example, formulas, table
}

// standingView is the part of a calculator that is the same wherever it stands.
type standingView struct {
	Own      bool
	Example  desk.Example
	Formulas []desk.Formula
	Table    desk.Table
}

// homeFrom is where the handbook's root is, from where the calculators' folder
// is.
func homeFrom(folder string) string {
	if folder == "" {
		return "../"
	}
	return strings.TrimSuffix(folder, address.CalculatorFolder)
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
		Cautions: desk.Bound(c.Cautions),
		Notes:    desk.Bound(c.Notes),
		Standing: standing,
	}
	if at.book != nil { // where nothing can be filled in
		return v, nil
	}
	v.Settings, v.Folder, v.Home = i.settings.Sums(c).Encode(), folder, homeFrom(folder)
	v.Columns, v.Steps, v.Blank = desk.Columns(c), c.Steps, desk.Step{Blank: true}
	v.You, v.Sheet = catalog.Doer(i.course.Language, stage.Student), desk.SheetOf(c)
	v.First, v.More = i.forms().Boxes(c, fill, v.ID, folder)
	v.Main, v.Aside = desk.Outputs(c)
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
		Own:      number == 0,
		Example:  i.forms().Example(c, at.id(address.CalculatorID(number)), key.folder, func(lesson string) string { return lessonFrom(at, lesson) }),
		Formulas: desk.Formulas(c),
		Table:    i.forms().Table(c),
	}
	html, err := execute(i.templatesAt(at), "calculator-standing", v)
	if err == nil && at.book == nil {
		i.kept.Store(key, html)
	}
	return html, err
}

// forms are what the calculators of the course are shown with.
func (i *impression) forms() desk.Desk {
	return desk.Desk{Settings: i.settings, Choose: i.Say("calculator-choose")}
}

// lessonFrom returns where a lesson is from a step: on a page the long way round
// by the handbook's root, which is the same from all pages of one depth, so that
// what was printed of a calculator can be kept.
func lessonFrom(at place, lesson string) string {
	if at.book != nil {
		return at.to(lesson)
	}
	return homeFrom(at.to(address.CalculatorFolder)) + lesson
}
