package form

import (
	"slipbook/calculators/decimal"
	"slipbook/calculators/letters"
	"slipbook/calculators/quantity"
)

// box is what was typed for one input.
type box struct {
	text, unit string
	times      int
	unused     bool // another side of its group was chosen
}

// sort puts each given text to its input and refuses what belongs to none.
// Blank texts count as not given.
func (e *Evaluation) sort(given []Setting) {
	e.boxes = make([]box, len(e.Calculator.Inputs))
	for _, g := range given {
		name, isUnit := letters.CutSuffix(g.Name, ".unit")
		in := e.Calculator.Input(name)
		if in == nil {
			e.Answer.Refuse(Clip(g.Name), e.noSuchInput(g.Name))
			continue
		}
		t := e.box(in)
		text := letters.Trim(g.Text)
		switch {
		case isUnit:
			t.unit = text
		case text == "" || in.List && !in.Words && len(split(text, in.Kind)) == 0:
			continue
		case in.List && t.times > 0:
			t.text += "; " + text
			t.times++
		default:
			t.text = text
			t.times++
		}
		if t.times > 1 && !in.List {
			e.Refuse(name, "form.given-twice")
		}
	}
}

// box is the box of an input of this calculator.
func (e *Evaluation) box(in *Input) *box {
	i := 0
	for &e.Calculator.Inputs[i] != in {
		i++
	}
	return &e.boxes[i]
}

func (e *Evaluation) noSuchInput(name string) string {
	var known []string
	for _, in := range e.Calculator.Inputs {
		known = append(known, in.Name)
	}
	return e.Say("form.no-input", "calculator", e.Calculator.Name, "typed", Clip(name), "inputs", e.Listing(known))
}

// read understands one input's text, or lets its default stand in, and
// refuses what is missing or out of range.
func (e *Evaluation) read(in *Input) {
	t, style := *e.box(in), e.Settings.Style
	if t.text == "" {
		if in.Default == "" || t.unused {
			if in.Needed && in.Group == "" {
				e.Missing(in.Name)
			}
			return
		}
		// The default is written in the declaration's own unit and style; a
		// unit chosen beside an empty box says nothing about it.
		t, style.Decimal = box{text: in.Default}, '.'
		e.stood = append(e.stood, in.Name)
	}
	if in.Words || in.Bodies || len(in.Choices) > 0 {
		e.readWords(in, t.text)
		return
	}
	read, err := e.readValues(in, t, style)
	if wrong, one := err.(wrongValue); one {
		e.Answer.RefuseValue(in.Name, wrong.i, wrong.text)
		return
	} else if err != nil {
		e.Answer.Refuse(in.Name, e.Settings.said(err))
		return
	}
	values := make([]float64, len(read))
	for i, q := range read {
		v := q.Value
		values[i] = v
		if why := e.outside(in, v); why != "" {
			if why = e.which(in, i, t.text) + why; in.List {
				e.Answer.RefuseValue(in.Name, i, why)
			} else {
				e.Answer.Refuse(in.Name, why)
			}
			return
		}
	}
	e.Answer.Inputs = append(e.Answer.Inputs, Given{Name: in.Name, Values: values, List: in.List, Unit: quantity.Canonical(in.Kind), AsTyped: read})
	e.understood(in, t.text, values)
}

// mostWords bounds the length of an input that is words.
const mostWords = 600

// readWords takes an input that is words, or one of several choices by its id
// or its label.
func (e *Evaluation) readWords(in *Input, text string) {
	if len(text) > mostWords {
		e.Refuse(in.Name, "form.too-much-text")
		return
	}
	if choices := e.choices(in); len(choices) > 0 {
		id, ask := e.choice(in, choices, text)
		if ask != "" {
			e.Answer.Refuse(in.Name, ask)
			return
		}
		if id == "" && in.States && e.Settings.Table != nil {
			id = e.Settings.Table.StateSaid(text)
		}
		if id == "" {
			e.Refuse(in.Name, "form.no-choice", "typed", Clip(text), "choices", e.ids(choices))
			return
		}
		text = id
	} else if in.Bodies {
		e.Refuse(in.Name, "form.no-clays")
		return
	}
	e.Answer.Inputs = append(e.Answer.Inputs, Given{Name: in.Name, Text: text, List: in.List})
}

// choices are what an input may be, each with its label.
func (e *Evaluation) choices(in *Input) []Choice {
	choices := e.Settings.ChoicesFor(in)
	if in.Bodies {
		return choices
	}
	labelled := make([]Choice, len(choices))
	for i, c := range choices {
		labelled[i] = Choice{c.ID, e.Settings.Words.Text(e.Calculator.choicesOf(in) + "." + c.ID)}
	}
	return labelled
}

// choice returns the id of the choice that a text names, or what to ask where
// it may mean several; both are empty where it names none.
func (e *Evaluation) choice(in *Input, choices []Choice, text string) (id, ask string) {
	for _, c := range choices {
		if letters.SameWord(text, c.ID) || letters.SameWord(text, c.Label) {
			return c.ID, ""
		}
	}
	of := e.Calculator.choicesOf(in)
	for _, id := range in.Said {
		if oneOf(e.Settings.Words.Text(of+".said."+id), text) {
			return id, ""
		}
	}
	for _, id := range in.Asks {
		if oneOf(e.Settings.Words.Text(of+".ask."+id+".said"), text) {
			return "", e.Settings.Words.Text(of + ".ask." + id + ".ask")
		}
	}
	return "", ""
}

// oneOf reports whether a text is one of the words of a list, which commas
// separate.
func oneOf(list, text string) bool {
	for _, w := range letters.Split(list, ", ") {
		if letters.SameWord(text, w) {
			return true
		}
	}
	return false
}

func (e *Evaluation) ids(choices []Choice) string {
	var list []string
	for _, c := range choices {
		list = append(list, c.ID)
	}
	return e.Listing(list)
}

// understood says how a text was read where that is not plain from the text
// itself: another unit, grouped digits, a fraction.
func (e *Evaluation) understood(in *Input, typed string, values []float64) {
	if in.List || !e.Typed(in.Name) {
		return
	}
	text := e.Text(values[0], 7)
	unit := quantity.Canonical(in.Kind)
	if typed == text || typed == WithUnit(text, unit) || typed == text+" "+unit || typed == text+unit {
		return
	}
	if e.Settings.Style.Decimal == '.' && Same(typed, values[0]) {
		return
	}
	e.Answer.Read = append(e.Answer.Read, Phrase{in.Name, e.Say("form.read", "value", WithUnit(text, unit))})
}

// Missing refuses an input that this request cannot do without.
func (e *Evaluation) Missing(name string) {
	e.Refuse(name, "form.missing", "label", e.label(e.Calculator.Input(name)))
}

// Same reports whether a plain number's text is the value it was read as.
func Same(typed string, value float64) bool {
	plain, ok := decimal.Parse(typed)
	return ok && plain == value
}

// Step is what one press of − or + changes an input by: a specific gravity
// lives in its hundredths, people in whole ones. "" where it follows what was
// typed.
func (in *Input) Step() string {
	switch {
	case in.Whole:
		return "1"
	case in.Kind == quantity.Gravity:
		return "0.01"
	}
	return ""
}
