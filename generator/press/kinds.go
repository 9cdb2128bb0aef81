package press

// pageKind declares a kind of page: one line here, a file with its view, and a
// template of the theme.
type pageKind struct {
	template string // its name in the theme, and the kind's own
	sheets   func(*impression) []sheet
	part     string // of the book that its pages are chapters of: unitsPart, or the key of the part's title; empty = none
}

// unitsPart is the part of the book that hand-written pages stand in, each unit
// by itself.
const unitsPart = "units"

// pageKinds lists the kinds of page in the order in which the book has them;
// the book itself is made of the others.
var pageKinds = makeKinds()

func makeKinds() []pageKind {
	return []pageKind{
		{"home", (*impression).homeSheets, unitsPart},
		{"unit", (*impression).unitSheets, unitsPart},
		{"lesson", (*impression).lessonSheets, unitsPart},
		{"chart", (*impression).chartSheets, ""},
		{"state", (*impression).stateSheets, "strip"},
		{"medium", (*impression).mediumSheets, "chart-media"},
		{"calculators", (*impression).calculatorsSheets, ""},
		{"calculator-page", (*impression).calculatorSheets, "calculators"},
		{"answers", (*impression).answersSheets, "extra"},
		{"faults", (*impression).faultsSheets, "extra"},
		{"hazards", (*impression).hazardsSheets, "extra"},
		{"course-card", (*impression).courseCardSheets, ""},
		{"card", (*impression).cardSheets, ""},
		{"teaching-page", (*impression).teachingSheets, ""},
		{"style", (*impression).styleSheets, ""},
		{"glossary", (*impression).glossarySheets, "extra"},
		{"contents", (*impression).contentsSheets, ""},
		{"notices", (*impression).noticesSheets, ""},
		{"notfound", (*impression).notFoundSheets, ""},
	}
}

// bookKind and volumeKind are the book, and a page with chapters of one that is
// too large to be a single page.
var (
	bookKind   = pageKind{template: "book"}
	volumeKind = pageKind{template: "book-volume"}
)
