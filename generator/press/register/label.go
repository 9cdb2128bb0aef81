package register

import (
	"html/template"
	"slices"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/ghs"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// labelFormat is a way to cut a sheet of plain paper into labels.
type labelFormat struct {
	Class string // of the theme's style sheet, and of its words: "label-CLASS"
	A4    int    // how many are on a sheet of A4
	US    int    // likewise of US Letter

	Whole   bool // it says all there is to say
	Roomy   bool // it has room for more than what can hurt somebody
	letters int  // about how many of hazards fit, in the type that the style sheet sets
}

// LabelPiece is the theme's piece of one label.
const LabelPiece = "one-label"

// on is how many labels are on a sheet of a paper.
func (f labelFormat) on(paper string) int {
	if paper == usLetter {
		return f.US
	}
	return f.A4
}

// labelFormats lists them, the largest first.
var labelFormats = []labelFormat{
	{Class: "large", A4: 1, US: 1, Whole: true, Roomy: true, letters: 6000},
	{Class: "bucket", A4: 8, US: 8, Whole: true, Roomy: true, letters: 500},
	{Class: "tub", A4: 14, US: 14, Roomy: true, letters: 210},
	{Class: "cup", A4: 44, US: 40, letters: 68},
}

// usLetter is the paper of those who measure in ounces and gallons.
const usLetter = "us"

// labelView is the labels of one thing, on one paper.
type labelView struct {
	imprint.Framed
	Of       imprint.Link
	Labels   string       // the list of all labels
	Reports  string       // the reports of leach tests
	Paper    string       // "a4" or "us"
	Other    imprint.Link // the same on the other paper
	Sheets   []labelSheet
	Text     labelText // what a label says that has room for all
	Coded    bool      // they bear a QR code
	AsUS     bool      // by the law of the United States
	Invented bool      // a sheet behind them is made up
}

// labelSheet is a sheet of equal labels.
type labelSheet struct {
	labelFormat
	Number int             // of the sheet, from 1
	Each   []template.HTML // its labels
	labelText
}

// labelText is what a label says, as far as there is room.
type labelText struct {
	Name        string
	Version     *course.Version // of a recipe, the newest
	Batch       string          // of it, the one in use; may be empty
	Parts       string
	Gravity     string // the specific gravity that it should have; of a recipe
	Mixed       bool   // it was mixed here, so that date and name are filled in by hand
	On, Not     []string
	InClass     classView
	Statements  []string         // as many as fit
	Precautions []string         // likewise
	More        bool             // not all fitted
	AsUS        bool             // by the law of the United States: what did not fit is in the sheets
	Hazards     []care.Hazard    // likewise
	Marks       []string         // of the hazards, where there is room for no more
	Wear        []string         // of a tub: all that its hazards and its sheet say
	Who         string           // may open a tub, or put what was mixed on a pot
	Mixing      string           // may mix it, where fewer may than may put it on
	Tested      *course.Leach    // of a recipe: the report that lets it go where food does; nil: it does not
	Owner       string           // the studio
	Tub         *course.Material // of a tub; nil for what was mixed here
	QR          *qrView          // nil where nobody said where the handbook is published
}

// labelsView is the list of what there are labels of.
type labelsView struct {
	imprint.Framed
	Recipes, Materials []imprint.Link
	Coded, AsUS        bool
	Paper              string
}

// Labels is the list of all labels.
func (r *Register) Labels() []imprint.Sheet {
	c := r.reading.Course
	if len(c.Recipes)+len(c.Materials) == 0 {
		return nil
	}
	title, description := r.Say("labels"), r.Say("labels-description")
	return []imprint.Sheet{{Address: address.Labels, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		v := labelsView{Framed: imprint.Framed{Shell: r.frame.Shell(at, imprint.About{Kind: "labels", Title: title, Description: description, Gathered: true})}, Coded: c.PublishedAt != "", AsUS: c.Law == course.LawUS, Paper: r.frame.WhereThere(at, address.Paper)}
		for _, recipe := range c.Recipes {
			v.Recipes = append(v.Recipes, imprint.Link{Title: recipe.Title, Address: at.To(address.RecipeLabel(recipe.ID, r.paper()))})
		}
		for _, m := range byName(c.Materials) {
			v.Materials = append(v.Materials, imprint.Link{Title: m.Name, Address: at.To(address.MaterialLabel(m.ID, r.paper()))})
		}
		return v, nil
	}}}
}

// paper is that of the course's country.
func (r *Register) paper() string {
	if r.reading.Course.Measures == usLetter {
		return usLetter
	}
	return "a4"
}

// paperName is what a paper is called.
func (r *Register) paperName(paper string) string {
	if paper == usLetter {
		return r.Say("paper-us")
	}
	return r.Say("paper-a4")
}

// papers are those on which labels are printed.
var papers = []string{"a4", usLetter}

// LabelPages are the sheets of labels: of each recipe and material, on each paper.
func (r *Register) LabelPages() []imprint.Sheet {
	var sheets []imprint.Sheet
	add := func(of func(at imprint.Place) imprint.Link, name string, where func(paper string) string, text func(at imprint.Place) labelText) {
		for _, paper := range papers {
			title := r.Say("label-title", name)
			sheets = append(sheets, imprint.Sheet{Address: where(paper), Title: title, Description: r.Say("labels-description"), View: func(at imprint.Place) (imprint.PageView, error) {
				return r.label(at, title, paper, of(at), where, text(at))
			}})
		}
	}
	for _, recipe := range r.reading.Course.Recipes {
		add(func(at imprint.Place) imprint.Link { return recipeLink(at, recipe) }, recipe.Title,
			func(paper string) string { return address.RecipeLabel(recipe.ID, paper) }, func(at imprint.Place) labelText { return r.recipeText(recipe, at) })
	}
	for _, m := range r.reading.Course.Materials {
		add(func(at imprint.Place) imprint.Link { return materialLink(at, m) }, m.Name,
			func(paper string) string { return address.MaterialLabel(m.ID, paper) }, func(at imprint.Place) labelText { return r.materialText(m, at) })
	}
	return sheets
}

// label makes the sheets of one thing on one paper.
func (r *Register) label(at imprint.Place, title, paper string, of imprint.Link, where func(paper string) string, text labelText) (imprint.PageView, error) {
	v := labelView{Framed: imprint.Framed{Shell: r.frame.Shell(at, imprint.About{Kind: "label", Title: title, Description: r.Say("labels-description"), Gathered: true})},
		Of: of, Paper: paper, Labels: at.To(address.Labels), Reports: at.To(address.Leach), Invented: text.InClass.Invented, Coded: r.reading.Course.PublishedAt != "", AsUS: text.AsUS}
	for _, other := range papers {
		if other != paper {
			v.Other = imprint.Link{Title: r.paperName(other), Address: at.To(where(other))}
		}
	}
	if v.Coded {
		var err error
		if text.QR, err = qrCode(r.reading.Course.PublishedAt + strings.ReplaceAll(of.Address, "../", "")); err != nil {
			return nil, err
		}
	}
	v.Text = text
	for n, f := range labelFormats {
		sheet := labelSheet{labelFormat: f, Number: n + 1, labelText: text.fitted(f)}
		one, err := imprint.Execute(at.Templates(r.Theme), LabelPiece, sheet)
		if err != nil {
			return nil, err
		}
		sheet.Each = slices.Repeat([]template.HTML{one}, f.on(paper))
		v.Sheets = append(v.Sheets, sheet)
	}
	return v, nil
}

// fitted returns a text with as much as a format has room for, in the order of what
// can hurt somebody: what the standard says of it, what to do about it here, then
// what is in it and the standard's advice. Name, signal word, pictograms, the line
// about food and the blanks always stand. What does not fit is on the larger label,
// which the small one then says.
func (t labelText) fitted(f labelFormat) labelText {
	room := t.room(f)
	if !f.Whole {
		t.On = nil
	}
	fits := func(text string) bool {
		if room < len(text)+2 {
			t.More = true
			return false
		}
		room -= len(text) + 2
		return true
	}
	for n, s := range t.InClass.Statements {
		if fits(s) || n == 0 { // the gravest always stands
			t.Statements = append(t.Statements, s)
		}
	}
	all := t.Hazards
	t.Hazards = nil
	for _, h := range all {
		switch {
		case !f.Roomy && fits(strings.Join(h.Marks, ", ")):
			t.Marks = care.AppendNew(t.Marks, h.Marks...)
		case f.Roomy && fits(h.Title+h.Short):
			t.Hazards = append(t.Hazards, h)
		}
	}
	if !f.Whole {
		t.Parts, t.More = "", true
		return t
	}
	if !fits(t.Parts) {
		t.Parts = ""
	}
	for _, p := range t.InClass.Precautions {
		if fits(p) {
			t.Precautions = append(t.Precautions, p)
		}
	}
	return t
}

// room is about how many letters are left on a label beside what always stands on it.
func (t labelText) room(f labelFormat) int {
	room := f.letters - blankLetters*len(t.InClass.Unclear)
	if t.Tub != nil && f.Whole {
		room -= blankLetters + len(t.Tub.Storage) + len(strings.Join(t.Wear, ", "))
	}
	if f.Roomy && t.Who+t.Mixing != "" {
		room -= whoLetters
	}
	if f.Roomy {
		return room
	}
	for _, line := range []bool{len(t.Name) > shortName, t.InClass.Invented, t.Tested != nil, t.AsUS} {
		if line {
			room -= cupLine
		}
	}
	return room
}

// Of the smallest label: how long a name is that takes one line, and how many letters
// a line has.
const (
	shortName = 22
	cupLine   = 34
)

// whoLetters is about how many letters it takes to say who may.
const whoLetters = 25

// blankLetters is about how many letters go where a class is to be filled in.
const blankLetters = 60

// recipeText is what the label of a recipe's bucket says.
func (r *Register) recipeText(recipe *course.Recipe, at imprint.Place) labelText {
	safety := r.Care(at, r.wetCare(recipe)...)
	t := labelText{Mixing: safety.Who, Name: recipe.Title, Mixed: true, Batch: recipe.Batch, Gravity: r.gravity(recipe), InClass: r.wetClass(recipe),
		Hazards: safety.Hazards, Tested: r.reading.Course.Tested(recipe, r.reading.Today), Owner: r.reading.Course.Studio.Name, Version: recipe.Newest(), AsUS: r.reading.Course.Law == course.LawUS}
	var parts []string
	for _, p := range r.parts(recipe, at) {
		parts = append(parts, p.Of.Title+" "+p.Amount)
	}
	t.Parts = strings.Join(parts, ", ")
	if m, there := r.Decoration.FindMedium(recipe.Medium); there {
		if t.Who = care.WhoWords[m.Who]; t.Who == t.Mixing {
			t.Mixing = ""
		}
		on, not, _ := r.whereOn(recipe, *m, at)
		for _, s := range on {
			t.On = append(t.On, s.Title)
		}
		for _, s := range not {
			t.Not = append(t.Not, s.Title)
		}
	}
	return t
}

// wetCare is the safety of a bucket that is mixed: nobody weighs powder from it any
// more, and what dries on its rim is dust. A course without that hazard keeps those of
// the powders.
func (r *Register) wetCare(recipe *course.Recipe) []course.Care {
	if !slices.ContainsFunc(r.Decoration.Hazards, func(h course.Hazard) bool { return h.ID == "dust" }) {
		return r.reading.Course.MixingCare(recipe)
	}
	var rows []course.Care
	for _, row := range r.reading.Course.MixingCare(recipe) {
		wet := course.Care{Who: row.Who}
		for _, id := range row.Hazards {
			if r.isOfPowder(id) {
				id = "dust"
			}
			wet.Hazards = append(wet.Hazards, id)
		}
		rows = append(rows, wet)
	}
	return rows
}

// wetClass is the class of what was mixed from a recipe. For "wear respiratory protection"
// and "wear protective gloves/…" it says what the wet bucket asks for and what it asks for
// once it is dry: nobody brushes a wet slip in a mask, and a label that asks for one is soon
// believed in nothing.
func (r *Register) wetClass(recipe *course.Recipe) classView {
	materials := r.reading.Course.MaterialsOf(recipe)
	v := r.classOf(materials...)
	var worn []string
	for _, code := range []string{"P280", "P284"} {
		words, _ := ghs.Statement(code)
		worn = append(worn, words)
	}
	v.Precautions = slices.DeleteFunc(v.Precautions, func(p string) bool { return slices.Contains(worn, p) })
	v.Precautions = slices.Insert(v.Precautions, 0, r.wetWear(recipe, materials))
	return v
}

// wetWear says what a wet bucket asks one to wear.
func (r *Register) wetWear(recipe *course.Recipe, materials []*course.Material) string {
	gloves := false
	if m, there := r.Decoration.FindMedium(recipe.Medium); there {
		gloves = slices.Contains(m.Hazards, "wash-colour") || slices.Contains(m.Hazards, "raw-metal")
	}
	for _, m := range materials {
		for _, code := range m.Class.Statements {
			switch code {
			case "H314", "H318", "H319":
				return r.Say("label-wet-eyes")
			case "H315", "H317", "H310", "H311", "H312":
				gloves = true
			}
		}
	}
	if gloves {
		return r.Say("label-wet-gloves")
	}
	return r.Say("label-wet")
}

// materialText is what the label of a material's tub says.
func (r *Register) materialText(m *course.Material, at imprint.Place) labelText {
	safety := r.materialSafety(m, at)
	return labelText{Name: m.Name, Parts: m.What, Tub: m, InClass: r.classOf(m), Hazards: safety.Hazards, Wear: safety.Wear, Who: safety.Who, Owner: r.reading.Course.Studio.Name, AsUS: r.reading.Course.Law == course.LawUS}
}
