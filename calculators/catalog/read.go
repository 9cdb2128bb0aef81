package catalog

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
func (b *bench) sort(given []Setting) {
	b.boxes = make([]box, len(b.calculator.Inputs))
	for _, g := range given {
		name, isUnit := letters.CutSuffix(g.Name, ".unit")
		in := b.calculator.Input(name)
		if in == nil {
			b.answer.refuse(clip(g.Name), b.noSuchInput(g.Name))
			continue
		}
		t := b.box(in)
		text := trim(g.Text)
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
			b.refuse(name, "This was given twice. Give it once.")
		}
	}
}

// box is the box of an input of this calculator.
func (b *bench) box(in *Input) *box {
	i := 0
	for &b.calculator.Inputs[i] != in {
		i++
	}
	return &b.boxes[i]
}

func (b *bench) noSuchInput(name string) string {
	var known []string
	for _, in := range b.calculator.Inputs {
		known = append(known, in.Name)
	}
	return "“" + b.calculator.Name + "” has no input called “" + clip(name) + "”. Its inputs are: " + listing(known) + "."
}

// read understands one input's text, or lets its default stand in, and
// refuses what is missing or out of range.
func (b *bench) read(in *Input) {
	t, style := *b.box(in), b.settings.Style
	if t.text == "" {
		if in.Default == "" || t.unused {
			if in.Needed && in.Group == "" {
				b.answer.refuse(in.Name, missing(in))
			}
			return
		}
		// The default is written in the declaration's own unit and style; a
		// unit chosen beside an empty box says nothing about it.
		t, style.Decimal = box{text: in.Default}, '.'
		b.stood = append(b.stood, in.Name)
	}
	if in.Words || in.Bodies || len(in.Choices) > 0 {
		b.readWords(in, t.text)
		return
	}
	read, err := readValues(in, t, style)
	if wrong, one := err.(wrongValue); one {
		b.answer.refuseValue(in.Name, wrong.i, wrong.text)
		return
	} else if err != nil {
		b.answer.refuse(in.Name, err.Error())
		return
	}
	values := make([]float64, len(read))
	for i, q := range read {
		v := q.Value
		values[i] = v
		if why := in.outside(v, b.settings.Style); why != "" {
			if why = in.which(i, t.text) + why; in.List {
				b.answer.refuseValue(in.Name, i, why)
			} else {
				b.answer.refuse(in.Name, why)
			}
			return
		}
	}
	b.answer.Inputs = append(b.answer.Inputs, Given{Name: in.Name, Values: values, List: in.List, Unit: quantity.Canonical(in.Kind), typed: read})
	b.understood(in, t.text, values)
}

// mostWords bounds the length of an input that is words.
const mostWords = 600

// readWords takes an input that is words, or one of several choices by its id
// or its label.
func (b *bench) readWords(in *Input, text string) {
	if len(text) > mostWords {
		b.answer.refuse(in.Name, "That is too much text for this box.")
		return
	}
	if choices := b.settings.ChoicesFor(in); len(choices) > 0 {
		id, ask := in.choice(choices, text)
		if ask != "" {
			b.answer.refuse(in.Name, ask)
			return
		}
		if id == "" && in.States && b.settings.Table != nil {
			id = b.settings.Table.StateSaid(text)
		}
		if id == "" {
			b.answer.refuse(in.Name, "“"+clip(text)+"” is none of the choices. They are: "+ids(choices)+".")
			return
		}
		text = id
	} else if in.Bodies {
		b.answer.refuse(in.Name, "No clay is known here by its name. Give the number instead; on the command line, --content names the course whose clays are meant.")
		return
	}
	b.answer.Inputs = append(b.answer.Inputs, Given{Name: in.Name, Text: text, List: in.List})
}

// choice returns the id of the choice that a text names, or what to ask where
// it may mean several; both are empty where it names none.
func (in *Input) choice(choices []Choice, text string) (id, ask string) {
	for _, c := range choices {
		if sameWord(text, c.ID) || sameWord(text, c.Label) {
			return c.ID, ""
		}
	}
	for _, s := range in.Said {
		if sameWord(text, s.Words) {
			return s.ID, s.Ask
		}
	}
	return "", ""
}

func ids(choices []Choice) string {
	var list []string
	for _, c := range choices {
		list = append(list, c.ID)
	}
	return listing(list)
}

func missing(in *Input) string { return "This is still missing: “" + in.Label + "”." }

// understood says how a text was read where that is not plain from the text
// itself: another unit, grouped digits, a fraction.
func (b *bench) understood(in *Input, typed string, values []float64) {
	if in.List || !b.typed(in.Name) {
		return
	}
	text := b.text(values[0], 7)
	unit := quantity.Canonical(in.Kind)
	if typed == text || typed == withUnit(text, unit) || typed == text+" "+unit || typed == text+unit {
		return
	}
	if b.settings.Style.Decimal == '.' && same(typed, values[0]) {
		return
	}
	b.answer.Read = append(b.answer.Read, Phrase{in.Name, "read as " + withUnit(text, unit)})
}

// same says whether a plain number's text is the value it was read as.
func same(typed string, value float64) bool {
	plain, ok := decimal.Parse(typed)
	return ok && plain == value
}
