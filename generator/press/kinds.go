package press

// pageKind declares a kind of page: one line here, a file with its view, and a
// template of the theme.
type pageKind struct {
	template string // its name in the theme, and the kind's own
	sheets   func(*impression) []sheet
	part     string // of the book that its pages are chapters of: unitsPart, or the key of the part's title; empty = none

	// Of a kind with a part: the bytes that a chapter is thought to take beside its
	// own words and what it gathers, and for each lesson that the course has.
	room, each int
}

// unitsPart is the part of the book that hand-written pages stand in, each unit
// by itself.
const unitsPart = "units"

// pageKinds lists the kinds of page in the order in which the book has them;
// the book itself is made of the others.
var pageKinds = makeKinds()

func makeKinds() []pageKind {
	return []pageKind{
		{"home", (*impression).homeSheets, unitsPart, 4_600, 0},
		{"unit", (*impression).unitSheets, unitsPart, 4_600, 0},
		{"lesson", (*impression).lessonSheets, unitsPart, 3_000, 0},
		{"chart", (*impression).chartSheets, "", 0, 0},
		{"state", (*impression).stateSheets, "strip", 31_000, 85},
		{"medium", (*impression).mediumSheets, "chart-media", 26_000, 10},
		{"calculators", (*impression).calculatorsSheets, "", 0, 0},
		{"calculator-page", (*impression).calculatorSheets, "calculators", 9_000, 0},
		{"answers", (*impression).answersSheets, "extra", 3_000, 0},
		{"faults", (*impression).faultsSheets, "extra", 3_000, 0},
		{"hazards", (*impression).hazardsSheets, "extra", 20_000, 0},
		{"course-card", (*impression).courseCardSheets, "", 0, 0},
		{"card", (*impression).cardSheets, "", 0, 0},
		{"teaching-page", (*impression).teachingSheets, "", 0, 0},
		{"style", (*impression).styleSheets, "", 0, 0},
		{"glossary", (*impression).glossarySheets, "extra", 33_000, 0},
		{"contents", (*impression).contentsSheets, "", 0, 0},
		{"notices", (*impression).noticesSheets, "", 0, 0},
		{"notfound", (*impression).notFoundSheets, "", 0, 0},
	}
}

// bookKind and volumeKind are the book, and a page with chapters of one that is
// too large to be a single page.
var (
	bookKind   = pageKind{template: "book"}
	volumeKind = pageKind{template: "book-volume"}
)
