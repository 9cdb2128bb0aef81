package desk

import (
	"slices"
	"strings"

	"slipbook/calculators/form"
	"slipbook/calculators/stage"
)

// inWords reports whether an input is no quantity.
func inWords(in *form.Input) bool { return in.Words || in.Bodies || len(in.Choices) > 0 }

// offered reports whether an input has a box in this course: a choice among the
// studio's clays has none where the course names none.
func (d Desk) offered(in *form.Input) bool {
	return !in.Bodies || len(d.Settings.Bodies) > 0
}

// wordBox fills in the view of an input that is no quantity: one of several
// choices, words, or layers where the course has a table to choose them from.
func (d Desk) wordBox(b *Box, c *form.Calculator, in *form.Input, filled string) {
	text := filled
	if text == "" {
		text = b.Default
	}
	if len(in.Choices) > 0 || in.Bodies {
		b.Choices = d.options(in, b.Default, text)
		if t := d.Settings.Table; in.States && t != nil {
			b.Choices = slices.DeleteFunc(b.Choices, func(o Option) bool { return o.ID != "" && !knows(t, o.ID) })
		}
	} else {
		b.Words = true
	}
	if c.Steps && in.List && d.Settings.Table != nil {
		b.Rows, b.Most = rowsFrom(d.Settings.Table, !in.Needed), in.Most
		text = chosenRows(d.Settings.Table, text, b.Rows.Coats)
	}
	b.Values = []Value{{ID: b.ID, Box: b.ID, Name: in.Name, Mode: "text", Text: text}}
}

// options are the choices of an input. Where none of them stands until
// somebody chooses, a blank one leads.
func (d Desk) options(in *form.Input, standing, chosen string) []Option {
	var options []Option
	if standing == "" {
		options = append(options, Option{Label: d.Choose})
	}
	for _, c := range d.Settings.ChoicesFor(in) {
		same := strings.EqualFold(chosen, c.ID) || strings.EqualFold(chosen, c.Label)
		options = append(options, Option{c.ID, c.Label, same && chosen != ""})
	}
	return options
}

// rowsFrom lists the media of a table, and for layers the techniques to put
// them on by. Coats are what is on the pot already: none, until somebody says
// so.
func rowsFrom(t *stage.Table, coats bool) *Rows {
	v := &Rows{Coats: coats, Fixed: stage.SaidFixed, Loose: stage.SaidLoose}
	for _, m := range t.Media {
		v.Media = append(v.Media, Layer{Name: m.Name, Value: stage.Tellable(m.Name), Fits: m.Base})
	}
	if coats {
		return v
	}
	v.Least = 1
	for _, q := range t.Techniques {
		v.Techniques = append(v.Techniques, Layer{q.Name, stage.Tellable(q.Name), strings.Join(q.With, " "), q.Takes, q.Bare})
		if q.Bare {
			v.Bare = stage.BareClay
		}
	}
	return v
}

// chosenRows writes what a lesson filled in as the choosers of its rows would,
// so that they show it before the engine has come. What they cannot hold stays
// as it is.
func chosenRows(t *stage.Table, text string, coats bool) string {
	u, err := t.Layers(text)
	if coats {
		_, u, err = t.Coats(text, 0)
	}
	if err != nil || u.Chosen == "" {
		return text
	}
	return u.Chosen
}

// knows reports whether a table has a state, or a part of one: not each has
// parts of leather-hard.
func knows(t *stage.Table, id string) bool {
	state, _ := t.FindState(id)
	return state >= 0
}

// chosenLabel returns the label of the choice that a text names, or the text.
func chosenLabel(in *form.Input, text string) string {
	for _, c := range in.Choices {
		if strings.EqualFold(text, c.ID) {
			return c.Label
		}
	}
	return text
}
