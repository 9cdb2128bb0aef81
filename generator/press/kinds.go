package press

import (
	"slipbook/generator/address"
	"slipbook/generator/press/book"
	"slipbook/generator/press/ebook"
	"slipbook/generator/press/gathered"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/register"
	"slipbook/generator/press/table"
)

// pageKind declares a kind of page: one line here, a file with its view in the room
// of its kind, and a template of the theme.
type pageKind struct {
	imprint.Kind
	sheets func(*impression) []imprint.Sheet
}

// pageKinds lists the kinds of page in the order in which the book has them;
// the book itself is made of the others.
var pageKinds = []pageKind{
	{kind("home", imprint.UnitsPart, 4_600, 0), (*impression).homeSheets},
	{kind("unit", imprint.UnitsPart, 4_600, 0), (*impression).unitSheets},
	{kind("lesson", imprint.UnitsPart, 3_000, 0), (*impression).lessonSheets},
	{kind("chart", "", 0, 0), ofTable((*table.Table).Chart)},
	{kind("state", "strip", 31_000, 85), ofTable((*table.Table).States)},
	{kind("medium", "chart-media", 26_000, 10), ofTable((*table.Table).Media)},
	{kind("calculators", "", 0, 0), (*impression).calculatorsSheets},
	{kind("calculator-page", "calculators", 9_000, 0), (*impression).calculatorSheets},
	{kind("answers", "extra", 3_000, 0), ofGathered((*gathered.Gathered).Answers)},
	{kind("faults", "extra", 3_000, 0), ofGathered((*gathered.Gathered).Faults)},
	{kind("hazards", "extra", 20_000, 0), ofTable((*table.Table).Hazards)},
	{kind("course-card", "", 0, 0), ofGathered((*gathered.Gathered).CourseCard)},
	{kind("card", "", 0, 0), ofGathered((*gathered.Gathered).Cards)},
	{kind("materials", "", 0, 0), ofRegister((*register.Register).Materials)},
	{kind("material", "", 0, 0), ofRegister((*register.Register).MaterialPages)},
	{kind("recipes", "", 0, 0), ofRegister((*register.Register).Recipes)},
	{kind("recipe-page", "", 0, 0), ofRegister((*register.Register).RecipePages)},
	{kind("wall", "", 0, 0), ofRegister((*register.Register).Wall)},
	{kind("leach", "", 0, 0), ofRegister((*register.Register).LeachReports)},
	{kind("eat", "", 0, 0), ofRegister((*register.Register).Eat)},
	{kind("labels", "", 0, 0), ofRegister((*register.Register).Labels)},
	{kind("label", "", 0, 0), ofRegister((*register.Register).LabelPages)},
	{kind("classes", "", 0, 0), ofRegister((*register.Register).Classes)},
	{kind("class-sheet", "", 0, 0), ofRegister((*register.Register).ClassSheets)},
	{kind("stock", "", 0, 0), ofRegister((*register.Register).Stock)},
	{kind("paper", "", 0, 0), ofRegister((*register.Register).Paper)},
	{kind("poster", "", 0, 0), ofRegister((*register.Register).Posters)},
	{kind("form", "", 0, 0), ofRegister((*register.Register).Forms)},
	{kind("teaching-page", "", 0, 0), ofGathered((*gathered.Gathered).Teaching)},
	{kind("style", "", 0, 0), (*impression).styleSheets},
	{kind("glossary", "extra", 33_000, 0), ofGathered((*gathered.Gathered).Glossary)},
	{kind("search", "", 0, 0), (*impression).searchSheets},
	{kind("contents", "", 0, 0), (*impression).contentsSheets},
	{kind("notices", "", 0, 0), (*impression).noticesSheets},
	{kind("tried", "", 0, 0), (*impression).triedSheets},
	{kind("phone", "", 0, 0), (*impression).phoneSheets},
	{kind("notfound", "", 0, 0), (*impression).notFoundSheets},
}

// kind is a kind of page as its line above has it: part, room and each are those of
// imprint.Kind.
func kind(template, part string, room, each int) imprint.Kind {
	return imprint.Kind{Template: template, Part: part, Room: room, Each: each}
}

// ofTable and ofGathered ask a room for the pages of a kind.
func ofTable(sheets func(*table.Table) []imprint.Sheet) func(*impression) []imprint.Sheet {
	return func(i *impression) []imprint.Sheet { return sheets(i.Table) }
}

func ofGathered(sheets func(*gathered.Gathered) []imprint.Sheet) func(*impression) []imprint.Sheet {
	return func(i *impression) []imprint.Sheet { return sheets(i.gathered) }
}

func ofRegister(sheets func(*register.Register) []imprint.Sheet) func(*impression) []imprint.Sheet {
	return func(i *impression) []imprint.Sheet { return sheets(i.register) }
}

func (i *impression) list() {
	var kinds []*imprint.Kind
	for n := range pageKinds {
		kind := &pageKinds[n]
		kinds = append(kinds, &kind.Kind)
		for _, s := range kind.sheets(i) {
			s.Kind = &kind.Kind
			i.add(s)
		}
	}
	i.ebook = ebook.New(i.Theme, i.reading, i.sheets, i.forTeaching)
	i.frame.There[address.Ebook] = true
	if i.frame.Bundle.Book != "" {
		i.book = book.New(i.Theme, i.course, i.frame, kinds, i.reading.Pages, i.sheets, i.ebook.Size)
		for _, s := range i.book.Sheets() {
			i.add(s)
		}
	}
}

// add lists a page.
func (i *impression) add(s imprint.Sheet) {
	i.sheets = append(i.sheets, &s)
	i.frame.There[s.Address] = true
}
