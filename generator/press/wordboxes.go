package press

import (
	"strings"

	"slipbook/calculators/catalog"
	"slipbook/calculators/stage"
)

// optionView is one choice of an input.
type optionView struct {
	ID, Label string
	Chosen    bool
}

// layersView is what the layers of a pot are chosen from.
type layersView struct {
	Media      []layerOption
	Techniques []layerOption
}

// layerOption is a medium or a technique, as the script of the form needs it.
type layerOption struct {
	Name  string
	Words string // what else a student may type for it, parted by strokes
	Fits  string // of a medium: its id; of a technique: the ids it is for, parted by spaces; empty = all
}

// inWords says whether an input is no quantity.
func inWords(in *catalog.Input) bool { return in.Words || in.Bodies || len(in.Choices) > 0 }

// offered says whether an input has a box in this course: a choice among the
// studio's clays has none where the course names none.
func (p *Press) offered(in *catalog.Input) bool {
	return !in.Bodies || len(p.settings.Bodies) > 0
}

// wordBox fills in the view of an input that is no quantity: one of several
// choices, words, or layers where the course has a table to choose them from.
func (p *Press) wordBox(b *boxView, c *catalog.Calculator, in *catalog.Input, filled string) {
	text := filled
	if text == "" {
		text = b.Default
	}
	if len(in.Choices) > 0 || in.Bodies {
		b.Choices = p.options(in, b.Default, text)
	} else {
		b.Words = true
	}
	if c.Name == planName && in.List && p.settings.Table != nil {
		b.Layers, b.Most = layersFrom(p.settings.Table), in.Most
	}
	b.Values = []valueView{{ID: b.ID, Box: b.ID, Name: in.Name, Mode: "text", Text: text}}
}

// options are the choices of an input. Where none of them stands until
// somebody chooses, a blank one leads.
func (p *Press) options(in *catalog.Input, standing, chosen string) []optionView {
	var options []optionView
	if standing == "" {
		options = append(options, optionView{Label: p.words["calculator-choose"]})
	}
	for _, c := range p.settings.ChoicesFor(in) {
		same := strings.EqualFold(chosen, c.ID) || strings.EqualFold(chosen, c.Label)
		options = append(options, optionView{c.ID, c.Label, same && chosen != ""})
	}
	return options
}

// layersFrom lists the media of a table and the techniques to put them on by.
func layersFrom(t *stage.Table) *layersView {
	v := &layersView{}
	for _, m := range t.Media {
		v.Media = append(v.Media, layerOption{m.Name, strings.Join(m.Words, "|"), m.Base})
	}
	for _, q := range t.Techniques {
		v.Techniques = append(v.Techniques, layerOption{q.Name, strings.Join(q.Words, "|"), strings.Join(q.With, " ")})
	}
	return v
}

// chosenLabel gives the label of the choice that a text names, or the text.
func chosenLabel(in *catalog.Input, text string) string {
	for _, c := range in.Choices {
		if strings.EqualFold(text, c.ID) {
			return c.Label
		}
	}
	return text
}
