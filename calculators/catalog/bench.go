package catalog

import (
	"math"

	"slipbook/calculators/letters"
	"slipbook/calculators/quantity"
)

// bench is what a calculator's arithmetic works on: the inputs that were
// understood, and the answer being made.
type bench struct {
	calculator *Calculator
	settings   Settings
	answer     *Answer
	boxes      []box    // as they were filled in, in the order of the inputs
	stood      []string // inputs whose default stood in
}

// has says whether an input was given or has a default that stands in.
func (b *bench) has(name string) bool { return b.given(name) != nil }

// typed says whether an input was given by the person, not by its default.
func (b *bench) typed(name string) bool {
	if !b.has(name) {
		return false
	}
	for _, s := range b.stood {
		if s == name {
			return false
		}
	}
	return true
}

// value gives an input in its canonical unit, 0 when it is blank.
func (b *bench) value(name string) float64 {
	if g := b.given(name); g != nil && len(g.Values) > 0 {
		return g.Values[0]
	}
	return 0
}

// word gives an input that is words or a choice; empty when it is blank.
func (b *bench) word(name string) string {
	if g := b.given(name); g != nil {
		return g.Text
	}
	return ""
}

// list gives a list input in its canonical unit.
func (b *bench) list(name string) []float64 {
	if g := b.given(name); g != nil {
		return g.Values
	}
	return nil
}

func (b *bench) given(name string) *Given {
	for i := range b.answer.Inputs {
		if b.answer.Inputs[i].Name == name {
			return &b.answer.Inputs[i]
		}
	}
	return nil
}

// unused takes an input out of the answer that this request had no use for,
// and says so, once, when a person typed it.
func (b *bench) unused(name, sentence string) {
	if b.typed(name) && !contains(b.answer.Notes, sentence) {
		b.note(sentence)
	}
	for i := range b.answer.Inputs {
		if b.answer.Inputs[i].Name == name {
			b.answer.Inputs = append(b.answer.Inputs[:i], b.answer.Inputs[i+1:]...)
			return
		}
	}
}

// stand lets a value stand in for an input that was left blank, for what the
// arithmetic found fitting; the answer lists it as it lists a default.
func (b *bench) stand(name string, value float64) {
	place := len(b.answer.Inputs)
	for i := len(b.calculator.Inputs) - 1; b.calculator.Inputs[i].Name != name; i-- {
		for j := range b.answer.Inputs {
			if b.answer.Inputs[j].Name == b.calculator.Inputs[i].Name {
				place = j
			}
		}
	}
	inputs := append([]Given(nil), b.answer.Inputs[:place]...)
	inputs = append(inputs, Given{Name: name, Values: []float64{value}, Unit: quantity.Canonical(b.calculator.Input(name).Kind)})
	b.answer.Inputs = append(inputs, b.answer.Inputs[place:]...)
	b.stood = append(b.stood, name)
}

// doubtShare says so where a percentage looks like a part of one.
func (b *bench) doubtShare(name string) {
	if v := b.value(name); v > 0 && v < 1 {
		b.note("{} is read as a percentage, less than 1 in 100. If you mean a part of the whole, such as 0.2 for a fifth, write 20.", b.shown(name))
	}
}

// set gives an output its value. The name must be declared: a slip of the pen
// here is found by the tests, which run every calculator.
func (b *bench) set(name string, value float64) {
	o := b.calculator.Output(name)
	b.answer.Outputs = append(b.answer.Outputs, Result{
		Name: name, Value: value, Unit: o.Unit,
		Text:   b.amount(value, o.Unit, o.Digits, o.Places, o.As),
		Figure: quantity.FormatPlaces(value, o.Digits, o.Places, b.settings.Style),
	})
}

// setWithin gives an output a value with its standard uncertainty u, and lets
// its text show no more than that allows; where u is 0 it is set.
func (b *bench) setWithin(name string, value, u float64) {
	b.set(name, value)
	if u > 0 {
		r := &b.answer.Outputs[len(b.answer.Outputs)-1]
		r.Text, r.u = b.doubtful(value, u, r.Unit), u
	}
}

// show gives an output that was set other words for its text.
func (b *bench) show(name, text string) {
	for i := range b.answer.Outputs {
		if b.answer.Outputs[i].Name == name {
			b.answer.Outputs[i].Text = text
		}
	}
}

// tell gives an output its words.
func (b *bench) tell(name, text string) {
	b.answer.Outputs = append(b.answer.Outputs, Result{Name: name, Unit: b.calculator.Output(name).Unit, Text: text, IsText: true})
}

// result gives an output set before, for the drawing and the headline.
func (b *bench) result(name string) (Result, bool) {
	for _, r := range b.answer.Outputs {
		if r.Name == name {
			return r, true
		}
	}
	return Result{}, false
}

// shown gives an output's text with its unit, "670 mL", or an input's as it
// was understood, in the unit it was typed in.
func (b *bench) shown(name string) string {
	if r, ok := b.result(name); ok {
		return r.Text
	}
	g := b.given(name)
	switch {
	case g == nil:
		return ""
	case len(g.Values) == 0:
		return g.Text
	case b.calculator.Input(name).Kind == quantity.Gravity:
		return quantity.FormatPlaces(g.Values[0], 6, 2, b.settings.Style)
	case len(g.typed) > 0 && b.typed(name):
		return withUnit(b.text(g.typed[0].Given, 6), g.typed[0].Unit)
	}
	return withUnit(b.text(g.Values[0], 6), g.Unit)
}

// words fills a sentence: "{water}" becomes the output or input of that name
// with its unit, and "{}" the next of the texts given. Sentences stay whole
// this way, for the reader of the code and for the size of the wasm.
func (b *bench) words(sentence string, texts ...string) string {
	filled, rest := "", sentence
	for {
		before, after, found := letters.Cut(rest, "{")
		filled += before
		if !found {
			return filled
		}
		name, after, _ := letters.Cut(after, "}")
		if name == "" {
			filled += texts[0]
			texts = texts[1:]
		} else {
			filled += b.shown(name)
		}
		rest = after
	}
}

// row adds a row: one value a column, numbers or strings; nil leaves a column
// out that this answer has no use for.
func (b *bench) row(values ...any) {
	row := make([]Cell, 0, len(values))
	for i, v := range values {
		column := b.calculator.Columns[i]
		switch v := v.(type) {
		case string:
			row = append(row, Cell{Column: column.Name, Text: v, IsText: true})
		case float64:
			text := b.text(v, column.Digits)
			if step := b.stepOf(column.As, v); step > 0 && v >= step/2 {
				text = b.text(quantity.RoundTo(v, step, quantity.Nearest), 12)
			}
			row = append(row, Cell{Column: column.Name, Value: v, Text: text})
		}
	}
	b.answer.Rows = append(b.answer.Rows, row)
}

func (b *bench) headline(sentence string, texts ...string) {
	b.answer.Headline = b.words(sentence, texts...)
}

func (b *bench) note(sentence string, texts ...string) {
	b.answer.Notes = append(b.answer.Notes, b.words(sentence, texts...))
}

func (b *bench) refuse(input, sentence string, texts ...string) {
	b.answer.refuse(input, b.words(sentence, texts...))
}

func (b *bench) refused() bool { return len(b.answer.Errors) > 0 }

// text prints a value in the course's style.
func (b *bench) text(value float64, digits int) string {
	return quantity.Format(value, digits, b.settings.Style)
}

// gravity prints a specific gravity: 1.50, not 1.5.
func (b *bench) gravity(value float64) string {
	return quantity.FormatPlaces(value, 4, 2, b.settings.Style)
}

// refuse adds an error, one for an input: the first said is the one to mend.
func (a *Answer) refuse(input, text string) {
	for _, e := range a.Errors {
		if e.Input == input {
			return
		}
	}
	a.Errors = append(a.Errors, Phrase{input, text})
}

// refuseValue adds an error about one value of a list, counted from 0.
func (a *Answer) refuseValue(input string, i int, text string) {
	errors := len(a.Errors)
	a.refuse(input, text)
	if len(a.Errors) > errors {
		a.Wrong = append(a.Wrong, Which{input, i + 1})
	}
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// withUnit joins a number's text and its unit; "1" is no unit.
func withUnit(text, unit string) string {
	if unit == "1" || unit == "" {
		return text
	}
	return text + "\u00a0" + unit
}
