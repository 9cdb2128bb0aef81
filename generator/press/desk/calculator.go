package desk

import (
	"fmt"
	"html/template"
	"slices"
	"strings"
	"sync"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/calculators/stage"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/theme"
)

// calculatorView is a calculator as its piece prints it: the form, and what
// stands on the page without scripts as well.
type calculatorView struct {
	ID       string // "calculator.1"; every id inside begins with it
	Own      bool   // on its own page, whose heading names it
	Folded   bool   // in a lesson, where it opens when it is wanted
	Given    bool   // the lesson filled in numbers of its own
	Name     string
	Title    string
	Purpose  string
	Settings string    // what the engine must know of the course, encoded
	Folder   string    // where the calculators' own pages are, from this page
	Care     care.Care // what is always to be minded
	Cautions []string  // besides
	Notes    []string
	Page     string // of book and e-book: where its own chapter is
	Online   string // of the e-book: its page on the handbook's site; empty where that is not known

	First, More []Choice // boxes in sight at once, and behind "more"
	Fixed       []Choice // boxes that the page fills in and nobody sees
	Main, Aside []Output // answers in sight, and behind "other scales"
	Columns     []Column
	Steps       bool   // its rows are the steps of a plan
	Home        string // where the handbook's root is, from this page; of a plan, as the two below
	You         string // what an answer calls the reader, who does most steps
	Blank       Step
	NoMix       Mixed  // blank
	Sheet       *Sheet // nil when nothing is weighed

	Standing template.HTML // what no lesson changes: example, formulas, table
}

// StandingPiece is the piece of the theme that prints what no lesson changes about a
// calculator.
const StandingPiece = "calculator-standing"

// standingView is the part of a calculator that is the same wherever it stands.
type standingView struct {
	Own      bool
	Example  Example
	Formulas []Formula
	Table    Table
}

// homeFrom is where the handbook's root is, from where the calculators' folder
// is.
func homeFrom(folder string) string {
	if folder == "" {
		return "../"
	}
	return strings.TrimSuffix(folder, address.CalculatorFolder)
}

// Calculators are those of a course, as its pages show them. What is the same on
// many pages is kept once it was printed, so goroutines may ask at once.
type Calculators struct {
	Desk
	language string
	List     form.List // in the course's language
	theme    *theme.Theme
	rules    *care.Rules
	kept     sync.Map
}

// New makes what shows the calculators of a course in a language, with what they
// must know of it.
func New(t *theme.Theme, rules *care.Rules, settings form.Settings, language string) *Calculators {
	return &Calculators{Desk: Desk{Settings: settings, Choose: t.Say("calculator-choose")}, language: language, List: catalog.In(language), theme: t, rules: rules}
}

// View makes the view of a calculator. fill is what a lesson filled
// in, which proof has seen to be understood; number tells apart the calculators of
// a page, from 1, and is 0 on the calculator's own page.
func (r *Calculators) View(c *form.Calculator, fill []markup.Setting, number int, at imprint.Place) (any, error) {
	standing, err := r.standing(c, number, at)
	if err != nil {
		return nil, err
	}
	folder := at.To(address.CalculatorFolder)
	v := calculatorView{
		ID:       at.ID(address.CalculatorID(number)),
		Own:      number == 0,
		Name:     c.Name,
		Title:    c.Title,
		Purpose:  markup.Bind(c.Purpose),
		Care:     r.rules.Care(at, course.Care{Hazards: c.Hazards}),
		Cautions: Bound(c.Cautions),
		Notes:    Bound(c.Notes),
		Standing: standing,
	}
	if at.Bound() { // where nothing can be filled in
		v.Page = at.To(address.Calculator(c.Name))
		if at.Ebook != nil && at.Ebook.Site != "" {
			v.Online = at.Ebook.Site + address.Calculator(c.Name)
		}
		return v, nil
	}
	v.Settings, v.Folder, v.Home = r.Settings.Sums(c).Encode(), folder, homeFrom(folder)
	v.Columns, v.Steps, v.Blank = Columns(c), c.Steps, Step{Blank: true}
	v.NoMix.Blank = true
	v.You, v.Sheet = catalog.Doer(r.language, stage.Student), SheetOf(c)
	v.First, v.More = r.Boxes(c, fill, v.ID, folder)
	v.Main, v.Aside = Outputs(c)
	return v, nil
}

// Fixed makes the view of a calculator of which the page fills in some inputs for
// good, as a recipe does its parts: their boxes are out of sight, and so is the
// worked example, which is of something else.
func (r *Calculators) Fixed(c *form.Calculator, fill []markup.Setting, fixed []string, number int, at imprint.Place) (any, error) {
	view, err := r.View(c, fill, number, at)
	v, ok := view.(calculatorView)
	if err != nil || !ok {
		return view, err
	}
	v.Standing = ""
	for _, list := range []*[]Choice{&v.First, &v.More} {
		*list = slices.DeleteFunc(*list, func(choice Choice) bool {
			away := !choice.Several() && slices.Contains(fixed, choice.Sides[0][0].Name)
			if away {
				v.Fixed = append(v.Fixed, choice)
			}
			return away
		})
	}
	return v, nil
}

// Plan makes the view of the planner, filled in by a page, likewise.
func (r *Calculators) Plan(fill []markup.Setting, number int, at imprint.Place) (any, error) {
	return r.View(r.List.Find(catalog.Plan), fill, number, at)
}

// HTML prints a calculator in a hand-written page, folded or not. Many lessons fill
// in the same, so what was printed is kept.
func (r *Calculators) HTML(b *markup.Block, at imprint.Place, folded bool) (template.HTML, error) {
	if at.Bound() {
		return r.anew(b, at, false)
	}
	var key strings.Builder
	fmt.Fprintf(&key, "%s %d %t %s", b.Words, b.Number, folded, at.To(address.CalculatorFolder))
	for _, f := range b.Fill {
		fmt.Fprintf(&key, " %q=%q", f.Name, f.Value)
	}
	if html, ok := r.kept.Load(key.String()); ok {
		return html.(template.HTML), nil
	}
	html, err := r.anew(b, at, folded)
	if err == nil {
		r.kept.Store(key.String(), html)
	}
	return html, err
}

func (r *Calculators) anew(b *markup.Block, at imprint.Place, folded bool) (template.HTML, error) {
	view, err := r.View(r.List.Find(b.Words), b.Fill, b.Number, at)
	if err != nil {
		return "", err
	}
	if v, ok := view.(calculatorView); ok && folded {
		v.Folded, v.Given = true, len(b.Fill) > 0
		view = v
	}
	return imprint.Execute(at.Templates(r.theme), markup.CalculatorBlock, view)
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
// book and e-book it stands in the calculator's own chapter alone.
func (r *Calculators) standing(c *form.Calculator, number int, at imprint.Place) (template.HTML, error) {
	key := spot{c.Name, number, at.To(address.CalculatorFolder)}
	if at.Bound() && number != 0 {
		return "", nil
	}
	if html, ok := r.kept.Load(key); ok && !at.Bound() {
		return html.(template.HTML), nil
	}
	v := standingView{
		Own:      number == 0,
		Example:  r.Example(c, at.ID(address.CalculatorID(number)), key.folder, func(lesson string) string { return lessonFrom(at, lesson) }),
		Formulas: Formulas(c),
		Table:    r.Table(c),
	}
	html, err := imprint.Execute(at.Templates(r.theme), StandingPiece, v)
	if err == nil && !at.Bound() {
		r.kept.Store(key, html)
	}
	return html, err
}

// lessonFrom returns where a lesson is from a step: on a page the long way round
// by the handbook's root, which is the same from all pages of one depth, so that
// what was printed of a calculator can be kept.
func lessonFrom(at imprint.Place, lesson string) string {
	if at.Bound() {
		return at.To(lesson)
	}
	return homeFrom(at.To(address.CalculatorFolder)) + lesson
}
