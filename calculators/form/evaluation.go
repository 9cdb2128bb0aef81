package form

import (
	"math"

	"slipbook/calculators/letters"
	"slipbook/calculators/quantity"
)

// Evaluation is the evaluation of one request, on which a calculator's
// arithmetic works: the inputs that were understood, and the answer being made.
type Evaluation struct {
	Calculator *Calculator
	Settings   Settings
	Answer     *Answer
	boxes      []box    // as they were filled in, in the order of the inputs
	stood      []string // inputs whose default stood in
}

// Has reports whether an input was given or has a default that stands in.
func (e *Evaluation) Has(name string) bool { return e.Given(name) != nil }

// Typed reports whether an input was given by the person, not by its default.
func (e *Evaluation) Typed(name string) bool {
	if !e.Has(name) {
		return false
	}
	for _, s := range e.stood {
		if s == name {
			return false
		}
	}
	return true
}

// Value returns an input in its canonical unit, 0 when it is blank.
func (e *Evaluation) Value(name string) float64 {
	if g := e.Given(name); g != nil && len(g.Values) > 0 {
		return g.Values[0]
	}
	return 0
}

// Word returns an input that is words or a choice; empty when it is blank.
func (e *Evaluation) Word(name string) string {
	if g := e.Given(name); g != nil {
		return g.Text
	}
	return ""
}

// List returns a list input in its canonical unit.
func (e *Evaluation) List(name string) []float64 {
	if g := e.Given(name); g != nil {
		return g.Values
	}
	return nil
}

// Given returns an input that was understood, or nil.
func (e *Evaluation) Given(name string) *Given {
	for i := range e.Answer.Inputs {
		if e.Answer.Inputs[i].Name == name {
			return &e.Answer.Inputs[i]
		}
	}
	return nil
}

// Unused takes an input out of the answer that this request had no use for,
// and says so, once, when a person typed it.
func (e *Evaluation) Unused(name, key string) {
	if e.Typed(name) && !letters.In(e.Answer.Notes, e.Say(key)) {
		e.Note(key)
	}
	for i := range e.Answer.Inputs {
		if e.Answer.Inputs[i].Name == name {
			e.Answer.Inputs = append(e.Answer.Inputs[:i], e.Answer.Inputs[i+1:]...)
			return
		}
	}
}

// Stand lets a value stand in for an input that was left blank, for what the
// arithmetic found fitting; the answer lists it as it lists a default.
func (e *Evaluation) Stand(name string, value float64) {
	place := len(e.Answer.Inputs)
	for i := len(e.Calculator.Inputs) - 1; e.Calculator.Inputs[i].Name != name; i-- {
		for j := range e.Answer.Inputs {
			if e.Answer.Inputs[j].Name == e.Calculator.Inputs[i].Name {
				place = j
			}
		}
	}
	inputs := append([]Given(nil), e.Answer.Inputs[:place]...)
	inputs = append(inputs, Given{Name: name, Values: []float64{value}, Unit: quantity.Canonical(e.Calculator.Input(name).Kind)})
	e.Answer.Inputs = append(inputs, e.Answer.Inputs[place:]...)
	e.stood = append(e.stood, name)
}

// Set sets an output to its value. The name must be declared: a slip of the pen
// here is found by the tests, which run every calculator.
func (e *Evaluation) Set(name string, value float64) {
	o := e.Calculator.Output(name)
	e.Answer.Outputs = append(e.Answer.Outputs, Result{
		Name: name, Value: value, Unit: o.Unit,
		Text:   e.Amount(value, o.Unit, o.Digits, o.Places, o.As),
		Figure: quantity.FormatPlaces(value, o.Digits, o.Places, e.Settings.Style),
	})
}

// SetWithin sets an output to a value with its standard uncertainty u, and lets
// its text show no more than that allows; where u is 0 it is set.
func (e *Evaluation) SetWithin(name string, value, u float64) {
	e.Set(name, value)
	if u > 0 {
		r := &e.Answer.Outputs[len(e.Answer.Outputs)-1]
		r.Text, r.Doubt = e.doubtful(value, u, r.Unit), u
	}
}

// Show puts other words in place of the text of an output that was set.
func (e *Evaluation) Show(name, text string) {
	for i := range e.Answer.Outputs {
		if e.Answer.Outputs[i].Name == name {
			e.Answer.Outputs[i].Text = text
		}
	}
}

// Tell sets an output to its words.
func (e *Evaluation) Tell(name, text string) {
	e.Answer.Outputs = append(e.Answer.Outputs, Result{Name: name, Unit: e.Calculator.Output(name).Unit, Text: text, IsText: true})
}

// Result returns an output set before, for the drawing and the headline.
func (e *Evaluation) Result(name string) (Result, bool) {
	for _, r := range e.Answer.Outputs {
		if r.Name == name {
			return r, true
		}
	}
	return Result{}, false
}

// Shown returns an output's text with its unit, "670 mL", or an input's as it
// was understood, in the unit it was typed in.
func (e *Evaluation) Shown(name string) string {
	if r, ok := e.Result(name); ok {
		return r.Text
	}
	g := e.Given(name)
	switch {
	case g == nil:
		return ""
	case len(g.Values) == 0:
		return g.Text
	case e.Calculator.Input(name).Kind == quantity.Gravity:
		return quantity.FormatPlaces(g.Values[0], 6, 2, e.Settings.Style)
	case len(g.AsTyped) > 0 && e.Typed(name):
		return WithUnit(e.Text(g.AsTyped[0].Given, 6), g.AsTyped[0].Unit)
	}
	return WithUnit(e.Text(g.Values[0], 6), g.Unit)
}

// Row adds a row: one value a column, numbers or strings; nil leaves a column
// out that this answer has no use for.
func (e *Evaluation) Row(values ...any) {
	row := make([]Cell, 0, len(values))
	for i, v := range values {
		column := e.Calculator.Columns[i]
		switch v := v.(type) {
		case string:
			row = append(row, Cell{Column: column.Name, Text: v, IsText: true})
		case float64:
			text := e.Text(v, column.Digits)
			if step := e.stepOf(column.As, v); step > 0 && v >= step/2 {
				text = e.Text(quantity.RoundTo(v, step, quantity.Nearest), 12)
			}
			row = append(row, Cell{Column: column.Name, Value: v, Text: text})
		}
	}
	e.Answer.Rows = append(e.Answer.Rows, row)
}

// Headline words the first answer, filled as Say does.
func (e *Evaluation) Headline(key string, fills ...string) {
	e.Answer.Headline = e.Say(key, fills...)
}

// Note adds a note, filled as Say does.
func (e *Evaluation) Note(key string, fills ...string) {
	e.Answer.Notes = append(e.Answer.Notes, e.Say(key, fills...))
}

// Judged adds a sentence about whether the numbers are any good.
func (e *Evaluation) Judged(key string, fills ...string) {
	e.Answer.Judged = append(e.Answer.Judged, e.Say(key, fills...))
}

// Refuse refuses an input, its sentence filled as Say does.
func (e *Evaluation) Refuse(input, key string, fills ...string) {
	e.Answer.Refuse(input, e.Say(key, fills...))
}

// Refused reports whether something was refused.
func (e *Evaluation) Refused() bool { return len(e.Answer.Errors) > 0 }

// Text prints a value in the course's style.
func (e *Evaluation) Text(value float64, digits int) string {
	return quantity.Format(value, digits, e.Settings.Style)
}

// Gravity prints a specific gravity: 1.50, not 1.5.
func (e *Evaluation) Gravity(value float64) string {
	return quantity.FormatPlaces(value, 4, 2, e.Settings.Style)
}

// Refuse adds an error, one for an input: the first said is the one to mend.
func (a *Answer) Refuse(input, text string) {
	for _, e := range a.Errors {
		if e.Input == input {
			return
		}
	}
	a.Errors = append(a.Errors, Phrase{input, text})
}

// RefuseValue adds an error about one value of a list, counted from 0.
func (a *Answer) RefuseValue(input string, i int, text string) {
	errors := len(a.Errors)
	a.Refuse(input, text)
	if len(a.Errors) > errors {
		a.Wrong = append(a.Wrong, Which{input, i + 1})
	}
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
