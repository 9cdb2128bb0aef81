package imprint

// Kind declares a kind of page to the rooms: its template, and where in the book its
// pages are chapters.
type Kind struct {
	Template string // its name in the theme, and the kind's own
	Part     string // of the book that its pages are chapters of: UnitsPart, or the key of the part's title; empty = none

	// Of a kind with a part: the bytes that a chapter is thought to take beside its
	// own words and what it gathers, and for each lesson that the course has.
	Room, Each int
}

// UnitsPart is the part of the book that hand-written pages stand in, each unit
// by itself.
const UnitsPart = "units"

// Sheet is one page to print: where, with which template, from which view.
type Sheet struct {
	Address            string // from the handbook's root
	Kind               *Kind
	Title, Description string
	Size               int                              // bytes that what it gathers is thought to take
	View               func(at Place) (PageView, error) // made by the worker that prints the sheet
}
