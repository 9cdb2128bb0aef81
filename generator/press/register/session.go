package register

import (
	"strconv"

	"slipbook/calculators/quantity"
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/proof"
)

// classesView is the list of the classes.
type classesView struct {
	imprint.Framed
	Sessions []classEntry
	Recipes  string // where they are; empty while there are none
	Stock    string
}

// classEntry is a class in the list.
type classEntry struct {
	*course.Session
	Of      imprint.Link
	Recipes []imprint.Link
	Safety  care.Care
}

// sheetView is the sheet of one class, for whoever prepares it the evening before.
type sheetView struct {
	imprint.Framed
	*course.Session
	Classes string
	Lesson  *imprint.Link // nil where it is not there
	Safety  care.Care
	InClass classView // how the sheets of all its materials class them
	Any     bool      // a material is used
	Many    bool      // so much is weighed and taken that the type is smaller on paper
	Shelf   []shelfRow
	Orders  []sheetOrder
	Kiln    care.Care // of firing; nothing where no firing is said
}

// sheetOrder is a weighing order with what is done beyond weighing.
type sheetOrder struct {
	orderView
	Mixing []string
}

// shelfRow is a tub that is taken from the shelf.
type shelfRow struct {
	Of     imprint.Link
	Take   string // "1840 g"; empty where it is put out as it is
	Class  classView
	Safety care.Care
}

// Classes is the list of the classes, or nothing while there are none.
func (r *Register) Classes() []imprint.Sheet {
	if len(r.reading.Course.Sessions) == 0 {
		return nil
	}
	title, description := r.Say("classes"), r.Say("classes-description")
	return []imprint.Sheet{{Address: address.Classes, Title: title, Description: description, View: func(at imprint.Place) (imprint.PageView, error) {
		v := classesView{Framed: imprint.Framed{Shell: r.frame.Shell(at, imprint.About{Kind: "classes", Title: title, Description: description, Gathered: true})},
			Recipes: r.frame.WhereThere(at, address.Recipes), Stock: r.frame.WhereThere(at, address.Stock)}
		for _, s := range r.reading.Course.Sessions {
			v.Sessions = append(v.Sessions, r.classEntry(s, at))
		}
		return v, nil
	}}}
}

func (r *Register) classEntry(s *course.Session, at imprint.Place) classEntry {
	e := classEntry{Session: s, Of: imprint.Link{Title: s.Title, Address: at.To(address.Class(s.ID))}, Safety: r.classSafety(s, at)}
	for _, recipe := range r.mixedFor(s) {
		e.Recipes = append(e.Recipes, recipeLink(at, recipe))
	}
	return e
}

// ClassSheets are the sheets of the classes.
func (r *Register) ClassSheets() []imprint.Sheet {
	var sheets []imprint.Sheet
	for _, s := range r.reading.Course.Sessions {
		sheets = append(sheets, imprint.Sheet{Address: address.Class(s.ID), Title: s.Title, Description: r.Say("session-description"),
			View: func(at imprint.Place) (imprint.PageView, error) { return r.classSheet(s, at), nil }})
	}
	return sheets
}

func (r *Register) classSheet(s *course.Session, at imprint.Place) sheetView {
	used := r.usedBy(s)
	v := sheetView{
		Framed:  imprint.Framed{Shell: r.frame.Shell(at, imprint.About{Kind: "class-sheet", Title: s.Title, Description: r.Say("session-description"), Gathered: true})},
		Session: s,
		Classes: at.To(address.Classes),
		Safety:  r.classSafety(s, at),
		InClass: r.classOf(used...),
		Any:     len(used) > 0,
		Shelf:   r.shelf(s, at),
		Kiln:    r.kilnSafety(s, at),
	}
	if page, there := r.reading.Course.FindPage(s.Lesson); there {
		link := imprint.LinkTo(at, page)
		v.Lesson = &link
	}
	for n, m := range s.Mix {
		if recipe, there := r.reading.Course.FindRecipe(m.Recipe); there {
			o := r.order(recipe, r.reading.SizeFor(s, m), at)
			o.ID, o.Page = at.ID("mix."+strconv.Itoa(n+1)), at.To(address.Recipe(recipe.ID))
			if m.Each == "" {
				o.Notes = append([]string{r.Say("session-litres", r.figure(m.Litres))}, o.Notes...)
			}
			v.Orders = append(v.Orders, sheetOrder{o, recipe.Mixing})
		}
	}
	v.Many = len(v.Orders) >= manyOrders || len(v.Shelf) >= manyTubs
	return v
}

// From how many mixes or tubs on a sheet is set in smaller type, so that two pages
// hold it; the trial prints the fullest.
const (
	manyOrders = 4
	manyTubs   = 13
)

// mixedFor lists the recipes that are mixed for a class.
func (r *Register) mixedFor(s *course.Session) (all []*course.Recipe) {
	for _, m := range s.Mix {
		if recipe, there := r.reading.Course.FindRecipe(m.Recipe); there {
			all = append(all, recipe)
		}
	}
	return all
}

// usedBy lists the materials that a class uses, mixed or as they are, each once.
func (r *Register) usedBy(s *course.Session) (all []*course.Material) {
	for _, recipe := range r.mixedFor(s) {
		all = care.AppendNew(all, r.reading.Course.MaterialsOf(recipe)...)
	}
	for _, id := range s.Tubs {
		if m, there := r.reading.Course.FindMaterial(id); there {
			all = care.AppendNew(all, m)
		}
	}
	return all
}

// classSafety is the safety of all that is mixed and put out for a class, and of what
// its lesson is about.
func (r *Register) classSafety(s *course.Session, at imprint.Place) care.Care {
	var rows []course.Care
	for _, recipe := range r.mixedFor(s) {
		rows = append(rows, r.reading.Course.MixingCare(recipe)...)
	}
	used := r.usedBy(s)
	for _, m := range used {
		rows = append(rows, m.Care)
	}
	if page, there := r.reading.Course.FindPage(s.Lesson); there {
		rows = append(rows, r.WorkCare(page.Head.Medium, page.Head.Technique, "")...)
	}
	return r.workSafety(at, rows, used)
}

// kilnSafety is that of the firings, where a class speaks of one.
func (r *Register) kilnSafety(s *course.Session, at imprint.Place) care.Care {
	var rows []course.Care
	for _, t := range r.Decoration.Transitions {
		if s.Firing != "" && t.Fires() {
			rows = append(rows, t.Care)
		}
	}
	return r.Care(at, rows...)
}

// shelf lists the tubs that a class takes from the shelf, by name, each with what all
// that is mixed takes together.
func (r *Register) shelf(s *course.Session, at imprint.Place) (rows []shelfRow) {
	take := map[string]string{}
	for _, p := range r.reading.Shelf(s) {
		take[p.Material] = r.grams(p.Grams)
	}
	for _, m := range byName(r.usedBy(s)) {
		rows = append(rows, shelfRow{Of: materialLink(at, m), Take: take[m.ID], Class: r.classOf(m), Safety: r.materialSafety(m, at)})
	}
	return rows
}

// grams writes a weight as the calculators do.
func (r *Register) grams(g float64) string {
	return quantity.Format(g, 12, r.reading.Settings.Style) + " g"
}

// owedByClasses is the hazards of each class, beside its name.
func (r *Register) owedByClasses() []care.Owed {
	at := imprint.Place{Page: address.Classes}
	var all []care.Owed
	for _, s := range r.reading.Course.Sessions {
		c := r.classSafety(s, at)
		all = append(all, care.Owe(s.Title, care.Line, c), care.Owe(s.Title, care.Who, c))
	}
	return all
}

// owedByClass is all that can hurt somebody who prepares a class, before all else; who
// may open each tub; and the hazards of each mix and of the kiln beside them.
func (r *Register) owedByClass(s *course.Session) []care.Owed {
	at := imprint.Place{Page: address.Class(s.ID)}
	all := []care.Owed{care.Owe(s.Title, care.Whole, r.classSafety(s, at))}
	for _, m := range r.usedBy(s) {
		all = append(all, care.Owe(m.Name, care.Who, r.materialSafety(m, at)))
	}
	for _, recipe := range r.mixedFor(s) {
		all = append(all, care.Owe(recipe.Title, care.Line, r.recipeSafety(recipe, at)))
	}
	kiln := r.kilnSafety(s, at)
	return append(all, care.Owe(s.Title, care.Line, kiln), care.Owe(s.Title, care.Who, kiln))
}

// needs adds up what all classes together take of each material, by its id.
func (r *Register) needs() map[string]float64 {
	var all []proof.Portion
	for _, s := range r.reading.Course.Sessions {
		all = append(all, r.reading.Shelf(s)...)
	}
	sums := map[string]float64{}
	for _, p := range proof.Together(all) {
		sums[p.Material] = p.Grams
	}
	return sums
}
