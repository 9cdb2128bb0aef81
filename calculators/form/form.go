// Package form is the engine of the calculators: what a calculator, an input,
// an output and an answer are, how a request is read, answered, worded and
// printed, and how both travel. It knows no calculator: package catalog
// declares them.
//
// A request is a list of input texts as a person typed them; an answer is
// numbers, the same numbers in words, notes, cautions, and a drawing. Both
// travel as application/x-www-form-urlencoded (WHATWG URL), which is also a
// page's address after "?".
//
// It is part of the WebAssembly reactor: no fmt, no encoding/json, no reflect,
// no sort, no net/url. Arithmetic is + - * / and math.Sqrt, each product in
// float64(a*b), so that amd64, arm64 and wasm agree to the last bit.
package form

import (
	"slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/stage"
)

// Calculator is one calculator's whole declaration.
type Calculator struct {
	Name    string // "slip-density": in requests, addresses and on the command line
	Inputs  []Input
	Outputs []Output
	Columns []Column // of its rows; empty when it has none
	Says    []string // notes whatever the numbers: ids after its name and ".note."
	Hazards []string // what can hurt whatever the numbers: ids of hazard.go; their words stand before the form
	MayHurt []string // hazards of some of its answers only
	Cares   []string // safety beside those, shown before the form: ids after its name and ".caution."
	Example Example
	Table   Table

	Next       []Next   // where to go from its answer
	Weigh      []string // its mixing sheet: the outputs to weigh, in the order in which they go into the bucket
	WeighRows  bool     // its mixing sheet is its rows: the columns "what", "weigh" and "total"
	Steps      bool     // its rows are steps to do one after the other
	NeedsTable bool     // it answers from the course's decoration table: Settings.Table

	Work    func(*Evaluation)                                   // reads inputs, sets outputs
	Draw    func(*Evaluation) string                            // the answer as an SVG drawing
	Formula func(say func(key string) string) []formula.Formula // what its page shows; nil inside the reactor

	// In words: filled in for a language by Words, empty in a declaration.
	Title    string // the heading of its page
	Purpose  string // one sentence: what it answers
	Notes    []string
	Cautions []string
	Formulas func() []formula.Formula
}

// Input is one box of the form.
type Input struct {
	Name          string
	Label         string // for a first-year student; in words
	Help          string // one sentence; in words
	Shared        string // its words are shared under this name; empty = they are its own
	Kind          quantity.Kind
	Default       string   // as typed; empty = starts empty
	Needed        bool     // must be given; in a group: one side of it must be given
	Group         string   // inputs of one group are alternatives: only one side of it may be given. A default in a group is not filled into its box: it stands in when the whole group is blank
	Side          string   // inputs of a group with the same side belong together, and all are needed when one is given; empty = stands alone
	List          bool     // several values, separated by spaces or semicolons
	Most          int      // of a list: the largest number of values
	Whole         bool     // a whole number
	Choices       []Choice // instead of a quantity: one of these
	SharedChoices string   // the words of its choices are shared under this name; empty = they are its own
	Said          []string // choices for which people also say something else: the ids
	Asks          []string // what people say that may mean several choices, by ids of its own, each with what to ask
	States        bool     // the choices are states of the course’s table: what it calls them is understood too
	Words         bool     // instead of a quantity: words, as they are typed
	Bodies        bool     // instead of a quantity: one of the studio's clays, Settings.Bodies
	Finds         string   // the calculator that tells whoever does not know it
	First         bool     // in sight at once; the others stand behind "more"
	Low           Limit    // values below are refused
	High          Limit    // values above are refused
}

// Choice is one of the things that an input may be.
type Choice struct {
	ID    string
	Label string // in words
}

// Limit is one end of the range of an input, in canonical units.
// It is written as plain values, so that declarations need no code to be made.
type Limit struct {
	End   End
	Value float64
	Why   string // what to say, an id after the input's or a whole one; empty = made from Value
}

// End says on which side of its value a limit lets pass.
type End uint8

// The kinds of end.
const (
	NoEnd End = iota
	From      // the value and more
	Above     // more than the value
	UpTo      // the value and less
)

// Output is one answer.
type Output struct {
	Name   string
	Label  string  // in words
	Unit   string  // "g", "mL", "%", "1" for none
	Digits int     // significant digits in its text, unless As says otherwise
	Places int     // digits after the mark that its text has at least: 1.50, not 1.5
	As     Measure // how it is measured out
	Aside  bool    // stands behind "more" on the page
	Text   bool    // holds words, not a number
	Alone  bool    // weighed by itself, on the fine scale
	Headed bool    // the headline says it too
}

// Column is one column of the rows of an answer.
type Column struct {
	Name, Label, Unit string
	Digits            int
	As                Measure // how it is measured out
	Either            string  // it stands in one of two units: the id of what its head says, after "form.unit."
	Text              bool    // holds words, not numbers
}

// Example is a worked example: what is typed, and a sentence about the case.
type Example struct {
	Case  string // in words: "A jar of white slip from the bench."
	Given []Setting
}

// Setting is an input with a text as typed.
type Setting struct{ Name, Text string }

// Table is the printed table of a calculator's page: one input varied (rows)
// or two (rows and columns), or named cases, the others at the example's
// values. Printed fills it in.
type Table struct {
	Caption      string   // in words
	Down         string   // input varied from row to row
	Values       []string // as typed
	Across       string   // input varied from column to column; empty = none
	AcrossValues []string
	Cases        []Case    // instead of Down: rows with a name and inputs of their own
	Show         []string  // outputs in the columns (one only when Across is set)
	Also         []Setting // inputs that differ from the example for the whole table; blank = not given
}

// Case is a named row of a printed table.
type Case struct {
	ID    string // after the calculator's name and ".table."
	Words string // in words
	Given []Setting
}

// Answer is what a request leads to. When Errors is not empty nothing else is
// set but Calculator, Read and Chosen.
type Answer struct {
	Calculator string
	Language   string   // of its words
	Inputs     []Given  // what was understood, defaults included, in order of declaration
	Read       []Phrase // "read as 1745 g" beside an input, only where it helps
	Chosen     []Phrase // what an input of words comes to in the table's own words, for the choosers of a form
	Headline   string   // the first answer, in words
	Judged     []string // whether the numbers are any good, a sentence each
	Outputs    []Result
	Rows       [][]Cell // in the order of Columns
	Mixed      []Mixed  // what the studio mixes itself of what the answer is about
	Notes      []string // the declaration's and those of this answer
	Cautions   []string
	Next       []Onward // the calculators to go on to, with the numbers carried over
	Errors     []Phrase // by input, in order of declaration
	Wrong      []Which  // of lists that are refused for one of their values: which
	Drawing    string   // SVG with a text alternative
}

// Given is one understood input in canonical units.
type Given struct {
	Name   string
	Values []float64 // one, or several for a list
	List   bool
	Text   string // for inputs that are a choice (its id) or words; Values is empty then
	Unit   string

	AsTyped []quantity.Quantity // the values as they were typed; empty where none were
}

// Said is an input as the reader typed it, each number in the unit that it was
// given in: "2 US cup"; in its own unit where nobody typed it.
func (g Given) Said(style quantity.Style) string {
	if len(g.Values) == 0 {
		return g.Text
	}
	text := ""
	for i, v := range g.Values {
		unit := g.Unit
		if i < len(g.AsTyped) {
			v, unit = g.AsTyped[i].Given, g.AsTyped[i].Unit
		}
		if i > 0 {
			text += "; "
		}
		text += quantity.Format(v, 7, style)
		if last := i+1 == len(g.Values); last || i+1 < len(g.AsTyped) && g.AsTyped[i+1].Unit != unit {
			text = WithUnit(text, unit)
		}
	}
	return text
}

// Result is one output: its full value in its own unit, and its text, which
// may be in another unit and always names it.
type Result struct {
	Name   string
	Value  float64
	Unit   string
	Text   string // for people: rounded, in their measures, with its unit and its doubt
	Figure string // for tables, whose heads name the unit: the value to its digits
	IsText bool   // Text is the only content

	Doubt float64 // its standard uncertainty; 0 where it is not known
}

// Cell is one place in a row.
type Cell struct {
	Column string
	Value  float64
	Text   string // what is shown; the only content when IsText
	IsText bool
}

// Mixed is what the studio mixes itself: the recipes, and what weighing and mixing
// them call for, beside what an answer says of putting it on.
type Mixed struct {
	Of   string // its name
	By   []stage.Recipe
	Says string // sentences; may be empty
}

// Phrase is a sentence about one input.
type Phrase struct{ Input, Text string }

// Which names one value of a list, from 1.
type Which struct {
	Input string
	Value int
}

// Input returns the input of that name, or nil.
func (c *Calculator) Input(name string) *Input {
	for i := range c.Inputs {
		if c.Inputs[i].Name == name {
			return &c.Inputs[i]
		}
	}
	return nil
}

// Output returns the output of that name, or nil.
func (c *Calculator) Output(name string) *Output {
	for i := range c.Outputs {
		if c.Outputs[i].Name == name {
			return &c.Outputs[i]
		}
	}
	return nil
}

// Column returns the column of that name, or nil.
func (c *Calculator) Column(name string) *Column {
	for i := range c.Columns {
		if c.Columns[i].Name == name {
			return &c.Columns[i]
		}
	}
	return nil
}
