package catalog

import (
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/stage"
)

var stagePlan = &Calculator{
	Name:    "stage-plan",
	Title:   "What may I do now, and in which order?",
	Purpose: "Plans the layers you want on a pot in the state it is in: the safest order the studio’s table allows, step by step.",
	Inputs: []Input{
		{Name: "state", Label: "Your pot is now", Help: "See the pages of the six states if you are not sure.", Kind: quantity.Number, Needed: true, First: true, Choices: []Choice{
			{"wet", "Wet"}, {"leather-hard", "Leather-hard"}, {"bone-dry", "Bone dry"}, {"bisque", "Bisque"}, {"unfired-glaze", "Unfired glaze"}, {"glaze-fired", "Glaze-fired"}}},
		{Name: "layers", Label: "Layers you want, the lowest first", Help: "For example: slip by stencil, wash wiped back, clear glaze brushed.", Kind: quantity.Number, Needed: true, First: true, Words: true, List: true, Most: stage.MostLayers},
		{Name: "places", Label: "Where they go", Help: "On the same place they lie on one another; on different places they do not touch.", Kind: quantity.Number, Default: "same", First: true, Choices: []Choice{{"same", "All on the same place"}, {"different", "Each on a place of its own"}}},
		{Name: "food", Label: "For food or drink", Help: "Say no only for a pot that nobody will eat or drink from.", Kind: quantity.Number, Default: "yes", Choices: []Choice{{"yes", "Yes"}, {"no", "No"}}},
		{Name: "finish", Label: "The pot ends", Help: "A bare pot is fired without glaze, like a sculpture.", Kind: quantity.Number, Default: "glazed", Choices: []Choice{{"glazed", "Glazed"}, {"bare", "Bare"}}},
		{Name: "body", Label: "Clay", Help: "Only if the studio’s table makes an exception for yours.", Kind: quantity.Number, Words: true},
	},
	Outputs: []Output{
		{Name: "conflict", Label: "It does not work", Unit: "1", Text: true},
		{Name: "rule", Label: "Because", Unit: "1", Text: true},
		{Name: "nearest", Label: "The nearest that works", Unit: "1", Text: true},
		{Name: "changed", Label: "What is changed", Unit: "1", Text: true},
		{Name: "risky-steps", Label: "Risky steps", Unit: "1", Digits: 3},
		{Name: "label-questions", Label: "Questions to the label", Unit: "1", Digits: 3},
		{Name: "firings", Label: "Firings", Unit: "1", Digits: 3},
	},
	Columns: []Column{
		{Name: "step", Label: "Step", Unit: "1", Digits: 3},
		{Name: "state", Label: "The pot is", Text: true},
		{Name: "action", Label: "Action", Text: true},
		{Name: "what", Label: "Do this", Text: true},
		{Name: "why", Label: "Why", Text: true},
		{Name: "caution", Label: "Look out", Text: true},
	},
	Notes: []string{
		"The plan rests on the studio’s table, which is common practice of the trade. The product’s label, its safety data sheet and your own test tiles come first.",
	},
	Example: Example{
		Case:  "A leather-hard mug gets slip by stencil, a wash wiped back, and a brushed clear glaze.",
		Given: []Setting{{"state", "leather-hard"}, {"layers", "slip by stencil, wash wiped back, clear glaze brushed"}},
	},
	Table: Table{
		Caption: "One layer and a clear glaze, from where the pot is",
		Cases: []Case{
			{"Slip, leather-hard", []Setting{{"state", "leather-hard"}, {"layers", "slip"}}},
			{"Slip, bone dry", []Setting{{"state", "bone-dry"}, {"layers", "slip"}}},
			{"Underglaze, bone dry", []Setting{{"state", "bone-dry"}, {"layers", "underglaze"}}},
			{"Underglaze, bisque", []Setting{{"state", "bisque"}, {"layers", "underglaze"}}},
			{"Wash, bisque", []Setting{{"state", "bisque"}, {"layers", "stain wash"}}},
			{"Wash, unfired glaze", []Setting{{"state", "unfired-glaze"}, {"layers", "stain wash"}}},
			{"Enamel, glaze-fired", []Setting{{"state", "glaze-fired"}, {"layers", "enamel"}}},
		},
		Show: []string{"risky-steps", "label-questions", "firings", "changed"},
	},
	NeedsTable: true,

	work: workPlan,
	draw: drawPlan,
}

func workPlan(b *bench) {
	t := b.settings.Table
	if t == nil {
		b.refuse("calculator", "Planning needs a course’s decoration table. On the command line name its folder with --content.")
		return
	}
	wish, ok := b.wish(t)
	if !ok {
		return
	}
	p := t.Plan(wish)
	if c := p.Conflict; c != nil {
		b.conflict(c)
	}
	if p.Conflict == nil || p.Conflict.Changed != "" {
		b.set("risky-steps", float64(p.Risky))
		b.set("label-questions", float64(p.Label))
		b.set("firings", float64(p.Firings))
	}
	for i, step := range p.Steps {
		b.row(float64(i+1), t.States[step.State].Name, step.Action, step.What, step.Why, join(step.Ask, step.Caution))
	}
	if p.Conflict == nil {
		b.headline("{} steps, {firings} firings: {}", b.text(float64(len(p.Steps)), 3), p.Steps[0].What)
	}
	for _, note := range p.Notes {
		b.answer.Notes = append(b.answer.Notes, note)
	}
	if p.Shorter != "" {
		b.answer.Notes = append(b.answer.Notes, p.Shorter)
	}
}

// conflict says why a wish cannot be had and what can.
func (b *bench) conflict(c *stage.Conflict) {
	rule := c.Rule
	if c.Physics {
		rule = join(rule, "That is physics: there is no way round it.")
	} else if c.House {
		rule = join(rule, "That is a rule of the house: ask the instructor.")
	}
	b.tell("conflict", c.What)
	b.tell("rule", rule)
	if c.Changed == "" {
		b.headline("That does not work: {}", c.What)
		return
	}
	b.tell("nearest", c.Nearest)
	b.tell("changed", c.Changed)
	b.headline("That does not work: {} The nearest that does: {}", c.What, c.Changed)
}

// wish reads what is asked for; false when the table does not know it.
func (b *bench) wish(t *stage.Table) (stage.Wish, bool) {
	w := stage.Wish{Apart: b.word("places") == "different", Food: b.word("food") != "no", Bare: b.word("finish") == "bare", State: -1, Body: -1}
	for i, s := range t.States {
		if s.ID == b.word("state") {
			w.State = i
		}
	}
	if w.State < 0 {
		b.refuse("state", "The studio’s table has no such state.")
	}
	var err error
	if w.Layers, err = t.Layers(b.word("layers")); err != nil {
		b.answer.refuse("layers", err.Error())
	} else if len(w.Layers) == 0 {
		b.answer.refuse("layers", missing(b.calculator.Input("layers")))
	}
	w.Body = b.body(t)
	for _, layer := range w.Layers {
		if w.Bare && t.Media[layer.Medium].Kind == stage.Glaze {
			b.refuse("finish", "A pot with a glaze on it does not end bare. Say glazed, or leave the glaze out.")
		}
	}
	return w, !b.refused()
}

// body finds the clay that a person named, -1 when none was.
func (b *bench) body(t *stage.Table) int {
	typed := b.word("body")
	var names []string
	for i, body := range t.Bodies {
		if sameWord(body.Name, typed) || body.ID == typed {
			return i
		}
		names = append(names, body.Name)
	}
	if typed != "" && len(names) == 0 {
		b.refuse("body", "The studio’s table makes no exception for any clay. Leave this blank.")
	} else if typed != "" {
		b.refuse("body", "The studio’s table makes no exception for “{}”. Leave this blank, or give one of: {}.", clip(typed), listing(names))
	}
	return -1
}

// join puts two sentences one after the other, where there are two.
func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + " " + b
}

// drawPlan shows the way through the states: a stroke for each step, a flame
// for each fire.
func drawPlan(b *bench) string {
	rows := b.answer.Rows
	words := "The steps in order:"
	for i, row := range rows {
		if i > 0 {
			words += ","
		}
		words += " " + row[2].Text
	}
	d := sketch.New(sheetWidth, 120, words+".")
	if len(rows) == 0 {
		d.Words("no plan", sheetWidth/2, 70, textSize, "middle")
		return d.String()
	}
	room := (sheetWidth - 40) / float64(len(rows))
	d.Line("ink", 20, 80, sheetWidth-20, 80)
	for i, row := range rows {
		x := 20 + float64((float64(i)+0.5)*room)
		switch row[2].Text {
		case "put on":
			d.Dot("colour", x, 80, 14)
			d.Dot("ink", x, 80, 14)
		case "dry", "wash off":
			d.Dot("paper", x, 80, 8)
			d.Dot("ink", x, 80, 8)
		default:
			d.Path("clay", "M", x-14, 80.0, "Q", x-18, 56.0, x, 36.0, "Q", x+18, 56.0, x+14, 80.0, "Z")
			d.Path("ink", "M", x-14, 80.0, "Q", x-18, 56.0, x, 36.0, "Q", x+18, 56.0, x+14, 80.0, "Z")
		}
	}
	return d.String()
}
