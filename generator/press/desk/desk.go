// Package desk makes what a page shows of a calculator: the boxes of its form, a
// worked example, a table for the wall, the steps of a plan. It exists so that all
// that a template prints of a calculator is worked out in one place, from its
// declaration and what the course sets.
package desk

import "slipbook/calculators/form"

// Desk is what all calculators of a course are shown with.
type Desk struct {
	Settings form.Settings // what they must know of the course
	Choose   string        // the words of a chooser while nothing is chosen
}

// Choice is one input, or a group of alternatives with "or" between them.
type Choice struct{ Sides [][]Box }

// Several reports whether there is a choice at all.
func (c Choice) Several() bool { return len(c.Sides) > 1 }

// Box is one input of a form.
type Box struct {
	ID      string
	Name    string
	Label   string
	Help    string
	Finds   string // where whoever does not know it finds it out; empty = nowhere
	Still   string // what is called still to fill when it is blank
	Default string // as typed, in the course's style
	Group   string
	Side    string
	List    bool   // of numbers: a box each
	Most    int    // of a list, and of rows: how many it may have
	Step    string // what − and + change it by, where that is no matter of how it was typed
	Unit    string // the only unit; empty for none and for several
	Units   []Unit // to choose from; empty unless several
	Values  []Value
	Choices []Option // instead of numbers: one of these
	Words   bool     // instead of numbers: words
	Paired  bool     // on a phone it stands side by side with the box before or after it
	Rows    *Rows    // of words that name layers: what to choose them at
}

// Unit is one unit of a chooser.
type Unit struct {
	ID     string
	Chosen bool
}

// Value is one box to type in.
type Value struct {
	ID, Box, Name, Mode string
	Count               int // in a list, from 1
	Text                string
}

// Option is one choice of an input.
type Option struct {
	ID, Label string
	Chosen    bool
}

// Rows is what the rows of an input are chosen from: layers, or what is on
// the pot already.
type Rows struct {
	Least        int    // how many rows stand there while nothing is chosen
	Coats        bool   // what is on the pot already: each with whether it is fixed
	Fixed, Loose string // what the form writes for that
	Bare         string // what it writes for work on the clay itself; empty = there is none
	Media        []Layer
	Techniques   []Layer // of layers
}

// Layer is a medium or a technique, as the script of the form needs it.
type Layer struct {
	Name  string
	Value string // what the form writes for it
	Fits  string // of a medium: its id; of a technique: the ids it is for, parted by spaces; empty = all
	Takes bool   // it takes away at the coat that is there
	Bare  bool   // it may be done to the clay itself
}
