package desk

import (
	"fmt"
	"strings"

	"slipbook/calculators/form"
	"slipbook/calculators/quantity"
	"slipbook/generator/markup"
)

// firstBoxes is how many boxes a list starts with: three test bars are what
// every instructor asks for.
const firstBoxes = 3

// Boxes returns the boxes of a form, groups of alternatives together, parted into
// those in sight and those behind "more". fill is what a lesson filled in, id the
// calculator's, folder where the calculators' own pages are from the page.
func (d Desk) Boxes(c *form.Calculator, fill []markup.Setting, id, folder string) (first, more []Choice) {
	filled := map[string]string{}
	for _, f := range fill {
		filled[f.Name] = strings.TrimSpace(f.Value)
	}
	var last *form.Input
	for n := range c.Inputs {
		in := &c.Inputs[n]
		if !d.offered(in) {
			continue
		}
		part := &more
		if in.First {
			part = &first
		}
		box := d.box(c, in, filled[in.Name], id)
		switch {
		case last == nil || in.Group == "" || in.Group != last.Group || in.First != last.First:
			*part = append(*part, Choice{[][]Box{{box}}})
		default:
			join(&(*part)[len(*part)-1], box)
		}
		last = in
	}
	leadOn(c, folder, first)
	leadOn(c, folder, more)
	pair(first)
	pair(more)
	return first, more
}

// leadOn sets in the boxes of a calculator the way to the calculators that find
// out what somebody may not know. folder is where those are from the page.
func leadOn(c *form.Calculator, folder string, choices []Choice) {
	for _, choice := range choices {
		for _, side := range choice.Sides {
			for i := range side {
				if finds := c.Input(side[i].Name).Finds; finds != "" {
					side[i].Finds = folder + finds + ".html"
				}
			}
		}
	}
}

// join adds a box to a group: to its last side, or as a new one.
func join(c *Choice, box Box) {
	last := len(c.Sides) - 1
	if c.Sides[last][0].Side == box.Side {
		c.Sides[last] = append(c.Sides[last], box)
		return
	}
	c.Sides = append(c.Sides, []Box{box})
}

// box makes the view of one input. A value that the lesson filled in stands in
// the box with its unit chosen; else a constant stands there, and what differs
// from pot to pot is blank. The default of an alternative is not written into
// its box, since the catalog lets it stand in when the whole group is blank.
func (d Desk) box(c *form.Calculator, in *form.Input, filled, id string) Box {
	b := Box{
		ID:    id + "." + in.Name,
		Name:  in.Name,
		Label: markup.Bind(in.Label),
		Help:  markup.Bind(in.Help),
		Still: quoted(in.Label),
		List:  in.List && !in.Words,
		Group: in.Group,
		Step:  in.Step(),
	}
	if in.Group == "" {
		b.Default = d.defaultOf(in)
	} else {
		b.Side = sideOf(in)
		b.Still = d.alternatives(c, in)
	}
	if inWords(in) {
		d.wordBox(&b, c, in, filled)
		return b
	}
	texts := []string{b.Default}
	if in.List {
		b.Most = in.Most
		texts = make([]string, min(firstBoxes, in.Most))
	}
	unit := ""
	if filled != "" {
		copyOver(&texts, pieces(filled, in.List))
		unit = takeUnits(texts, in.Kind)
	}
	b.Unit, b.Units = unitsFor(in.Kind, unit)
	for n, text := range texts {
		v := Value{ID: b.ID, Box: b.ID, Name: in.Name, Mode: keypad(in), Count: n + 1, Text: text}
		if n > 0 {
			v.ID = fmt.Sprintf("%s.%d", b.ID, n+1)
		}
		b.Values = append(b.Values, v)
	}
	return b
}

// copyOver puts texts into the first places of boxes, more boxes if need be.
func copyOver(boxes *[]string, texts []string) {
	n := copy(*boxes, texts)
	*boxes = append(*boxes, texts[n:]...)
}

// sideOf names the side of an alternative; one that stands alone is its own.
func sideOf(in *form.Input) string {
	if in.Side == "" {
		return in.Name
	}
	return in.Side
}

// alternatives words what of a group is still to fill: “Volume” or “People”.
func (d Desk) alternatives(c *form.Calculator, of *form.Input) string {
	var labels, sides []string
	for i := range c.Inputs {
		in := &c.Inputs[i]
		if in.Group != of.Group || !d.offered(in) {
			continue
		}
		if n := len(sides); n > 0 && sides[n-1] == sideOf(in) {
			labels[n-1] += " + " + quoted(in.Label)
			continue
		}
		sides = append(sides, sideOf(in))
		labels = append(labels, quoted(in.Label))
	}
	return strings.Join(labels, " / ")
}

// defaultOf returns an input's default as it stands in its box: a number in the
// course's style, words and choices as they are.
func (d Desk) defaultOf(in *form.Input) string {
	if inWords(in) {
		return in.Default
	}
	return d.written(in.Default)
}

func quoted(text string) string { return "“" + text + "”" }

// written returns a number of the catalog, which is declared with a point, as
// the course writes it.
func (d Desk) written(number string) string {
	if d.Settings.Style.Decimal == ',' {
		return strings.Replace(number, ".", ",", 1)
	}
	return number
}

// pieces parts the text of a list into one text a box, where it is plain how:
// at semicolons, else at spaces between bare numbers. What is not plain stays
// in one box, and the catalog reads it as it reads it anywhere.
func pieces(text string, list bool) []string {
	if !list {
		return []string{text}
	}
	if strings.Contains(text, ";") {
		var parts []string
		for part := range strings.SplitSeq(text, ";") {
			parts = append(parts, strings.TrimSpace(part))
		}
		return parts
	}
	if strings.Trim(text, "0123456789., ") == "" {
		return strings.Fields(text)
	}
	return []string{text}
}

// takeUnits takes the unit off the texts when all of them name the same one
// that a chooser offers, and returns it; "" leaves the texts as they are.
func takeUnits(texts []string, kind quantity.Kind) string {
	for _, u := range quantity.Units(kind) {
		if u.ID == "1" {
			continue
		}
		bare, named := make([]string, len(texts)), true
		for n, text := range texts {
			number, ok := strings.CutSuffix(text, u.ID)
			number = strings.TrimSpace(number)
			named = named && (text == "" || ok && number != "" && strings.Trim(number[len(number)-1:], "0123456789") == "")
			bare[n] = number
		}
		if named {
			copy(texts, bare)
			return u.ID
		}
	}
	return ""
}

// unitsFor returns the chooser of a kind, with one of its units chosen, or the
// only unit it has.
func unitsFor(kind quantity.Kind, chosen string) (only string, chooser []Unit) {
	units := quantity.Units(kind)
	if len(units) == 1 {
		return shownUnit(units[0].ID), nil
	}
	for n, u := range units {
		chooser = append(chooser, Unit{u.ID, u.ID == chosen || chosen == "" && n == 0})
	}
	return "", chooser
}

// keypad says which keys a phone should offer. Fractions and lists need the
// space and the stroke, which the keypad for decimals lacks.
func keypad(in *form.Input) string {
	switch {
	case in.Whole:
		return "numeric"
	case in.List, in.Kind == quantity.Length:
		return "text"
	}
	return "decimal"
}
