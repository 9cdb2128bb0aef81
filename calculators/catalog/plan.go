package catalog

import (
	"strconv"

	"slipbook/calculators/letters"
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
			{"wet", "Wet"}, {"leather-hard", "Leather-hard"}, {"soft-leather-hard", "Soft leather-hard"}, {"firm-leather-hard", "Firm leather-hard"}, {"stiff-leather-hard", "Stiff leather-hard"},
			{"bone-dry", "Bone dry"}, {"bisque", "Bisque"}, {"unfired-glaze", "Unfired glaze"}, {"glaze-fired", "Glaze-fired"}}, Said: saidStates, States: true},
		{Name: "already", Label: "On the pot already, the lowest first", Help: "For example: slip fixed, wash loose. Leave it blank for a bare pot.", Kind: quantity.Number, First: true, Words: true, List: true, Most: stage.MostLayers},
		{Name: "layers", Label: "Layers you want, the lowest first", Help: "For example: slip by paper stencil then scratched, wash wiped back, clear glaze.", Kind: quantity.Number, Needed: true, First: true, Words: true, List: true, Most: stage.MostLayers},
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
		{Name: "today", Label: "What works today", Unit: "1", Text: true},
		{Name: "fewer-firings", Label: "To save a firing", Unit: "1", Text: true},
		{Name: "wish", Label: "You asked for", Unit: "1", Text: true},
		{Name: "steps", Label: "Steps", Unit: "1", Digits: 3},
		{Name: "firings", Label: "Firings", Unit: "1", Digits: 3},
		{Name: "risky", Label: "Risky steps", Unit: "1", Digits: 3},
		{Name: "questions", Label: "Questions to ask first", Unit: "1", Digits: 3},
	},
	Columns: []Column{
		{Name: "step", Label: "Step", Unit: "1", Digits: 3},
		{Name: "state", Label: "The pot is", Text: true},
		{Name: "action", Label: "Action", Text: true},
		{Name: "title", Label: "In short", Text: true},
		{Name: "wear", Label: "Wear", Text: true},
		{Name: "place", Label: "Place", Text: true},
		{Name: "who", Label: "Who", Text: true},
		{Name: "caution", Label: "Take care", Text: true},
		{Name: "lesson", Label: "Where to read about it", Text: true},
		{Name: "ask", Label: "Ask first", Text: true},
		{Name: "wait", Label: "Wait", Text: true},
		{Name: "what", Label: "Do this", Text: true},
		{Name: "why", Label: "Why", Text: true},
		{Name: "trouble", Label: "What goes wrong, and what then", Text: true},
	},
	Notes: []string{
		"The plan rests on the studio’s table, which is common practice of the trade. The product’s label, its safety data sheet and your own test tiles come first.",
	},
	Example: Example{
		Case:  "A leather-hard mug gets slip, scratched through, then a wash wiped back on the bisque, and a clear glaze.",
		Given: []Setting{{"state", "leather-hard"}, {"layers", "slip poured then scratched, wash wiped back, clear glaze"}},
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
		Show: []string{"firings", "risky", "questions", "changed"},
	},
	NeedsTable: true,

	work: workPlan,
	draw: drawPlan,
}

// saidStates are words that may mean two states. What else people say for one
// stands in the table.
var saidStates = []Said{
	{"greenware", "", "Greenware is any clay that was not fired. Say leather-hard if it is cool and dark, bone dry if it is pale all over."},
	{"glazed", "", "A glazed pot may be fired or not. Say unfired glaze if the coat rubs off as powder, glaze-fired if it is glassy."},
	{"fired", "", "Which firing has it had? Say bisque after the first, glaze-fired after the glaze firing."},
	{"raw", "", "Raw clay, or raw glaze? Say leather-hard or bone dry for clay, unfired glaze for a coat that rubs off."},
}

// people says who may do a step.
var people = [...]string{stage.Student: "you", stage.WithInstructor: "you, with the instructor beside you", stage.Instructor: "the instructor; you watch"}

// Doer says in words who does a step.
func Doer(who stage.Who) string { return people[who] }

// bases says what a rule rests on.
var bases = [...]string{
	stage.Physics: "That is physics: there is no way round it.",
	stage.Trade:   "That is the custom of the trade: whoever does it knows the exception and has tested it. Ask the instructor before you try it.",
	stage.House:   "That is a rule of the house: ask the instructor.",
	stage.Unsaid:  "",
}

func workPlan(b *bench) {
	t := b.settings.Table
	if t == nil {
		b.refuse("calculator", "Planning needs a course’s decoration table. On the command line name its folder with --content.")
		return
	}
	wish, odd, ok := b.wish(t)
	if !ok {
		return
	}
	p := t.Plan(wish)
	if p.Conflict != nil {
		b.conflict(p.Conflict, p.NotFood)
	}
	if p.Today != "" {
		b.tell("today", p.Today)
	}
	if p.Fewer != "" {
		b.tell("fewer-firings", p.Fewer)
	}
	b.tell("wish", t.Say(wish))
	if len(p.Steps) > 0 || p.Conflict == nil {
		b.set("steps", float64(len(p.Steps)))
		b.set("firings", float64(p.Firings))
		b.set("risky", float64(p.Risky))
		b.set("questions", float64(p.Questions))
	}
	for i, step := range p.Steps {
		state := t.States[step.State].Name
		if step.Part > 0 && wish.Part > 0 {
			state = upperFirst(t.States[step.State].Parts[step.Part-1].Name)
		}
		b.row(float64(i+1), state, step.Action, step.Title, step.Wear, step.Place, Doer(step.Who), step.Caution, step.Lesson, step.Ask, step.Wait, step.What, step.Why, step.Trouble)
	}
	if p.Conflict == nil {
		b.headline("{}", join(odd, works(p)))
	}
	b.answer.Notes = append(b.answer.Notes, p.Notes...)
	if p.Shorter != "" {
		b.answer.Notes = append(b.answer.Notes, p.Shorter)
	}
}

// works is the headline of a plan: what must be known before anything else,
// then how long it takes and how it ends.
func works(p stage.Plan) string {
	if len(p.Steps) == 0 {
		return "Nothing is left to do."
	}
	text := "Works: " + counted(len(p.Steps), "step") + ", " + counted(p.Firings, "firing") + "."
	if p.Undone > 0 {
		text = "Works only if what is on the pot comes off again: " + counted(len(p.Steps), "step") + ", " + counted(p.Firings, "firing") + "."
	}
	if p.Risky > 0 {
		text = join(text, upperFirst(counted(p.Risky, "risky step"))+".")
	}
	if p.Questions > 0 {
		text = join(text, upperFirst(counted(p.Questions, "question"))+" to ask first.")
	}
	for _, end := range p.Ends {
		text = join(text, end)
	}
	return join(p.NotFood, text)
}

// counted words a number of things.
func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return strconv.Itoa(n) + " " + thing + "s"
}

// conflict says why a wish cannot be had and what can, and of that, whether it
// is not for food though that was asked for.
func (b *bench) conflict(c *stage.Conflict, notFood string) {
	b.tell("conflict", c.What)
	b.tell("rule", join(c.Rule, bases[c.Basis]))
	if c.Changed == "" {
		b.headline("That does not work: {}", c.What)
		return
	}
	b.tell("nearest", c.Nearest)
	b.tell("changed", c.Changed)
	b.headline("That does not work: {} The nearest that does: {}", c.What, join(c.Changed, notFood))
}

// wish reads what is asked for, and says which words of it the table does not
// know; false when it knows none of them.
func (b *bench) wish(t *stage.Table) (w stage.Wish, odd string, ok bool) {
	w = stage.Wish{Apart: b.word("places") == "different", Food: b.word("food") != "no", Bare: b.word("finish") == "bare", State: -1}
	b.state(t, &w)
	if w.State >= 0 {
		b.coats(t, &w)
	}
	understood, err := t.Layers(b.word("layers"))
	w.Layers = understood.Layers
	if err != nil {
		b.answer.refuse("layers", err.Error())
	} else if len(w.Layers) == 0 {
		b.answer.refuse("layers", missing(b.calculator.Input("layers")))
	}
	b.heard("layers", understood)
	w.Body = b.body(t)
	for _, layer := range w.Layers {
		if w.Bare && layer.Medium >= 0 && t.Media[layer.Medium].Kind == stage.Glaze {
			b.refuse("finish", "A pot with a glaze on it does not end bare. Say glazed, or leave the glaze out.")
		}
	}
	if len(understood.Odd) > 0 {
		odd = "The table does not know “" + letters.Join(understood.Odd, "”, “") + "”; this is the plan without it."
	}
	return w, odd, !b.refused()
}

// state finds the state of the pot, and of leather-hard the part that was said.
func (b *bench) state(t *stage.Table, w *stage.Wish) {
	w.State, w.Part = t.FindState(b.word("state"))
	if w.State < 0 {
		b.refuse("state", "The studio’s table has no such state.")
	}
}

// coats reads what is on the pot already.
func (b *bench) coats(t *stage.Table, w *stage.Wish) {
	coats, understood, err := t.Coats(b.word("already"), w.State)
	if err != nil {
		b.answer.refuse("already", err.Error())
		return
	}
	w.Already = coats
	b.heard("already", understood)
}

// heard tells how the words of an input were read, and which were left out.
func (b *bench) heard(input string, u stage.Understood) {
	if u.Chosen != "" {
		b.answer.Chosen = append(b.answer.Chosen, Phrase{input, u.Chosen})
	}
	for _, read := range u.Read {
		b.note("{}.", read)
	}
	if len(u.Left) > 0 {
		b.note("Left out: “{}”. The plan goes by the medium and by how it is worked.", letters.Join(u.Left, "”, “"))
	}
	for _, w := range u.Left {
		if w == "inside" || w == "outside" {
			b.note("If inside and outside get different layers, say under “Where they go” that each has a place of its own, or plan them one after the other.")
			return
		}
	}
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

// upperFirst makes a text fit the beginning of a sentence.
func upperFirst(text string) string {
	if text == "" || text[0] < 'a' || text[0] > 'z' {
		return text
	}
	return string(text[0]&^0x20) + text[1:]
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
		case "put on", "work":
			d.Dot("colour", x, 80, 14)
			d.Dot("ink", x, 80, 14)
		case "dry", "wait", "wash off":
			d.Dot("paper", x, 80, 8)
			d.Dot("ink", x, 80, 8)
		default:
			d.Path("clay", "M", x-14, 80.0, "Q", x-18, 56.0, x, 36.0, "Q", x+18, 56.0, x+14, 80.0, "Z")
			d.Path("ink", "M", x-14, 80.0, "Q", x-18, 56.0, x, 36.0, "Q", x+18, 56.0, x+14, 80.0, "Z")
		}
	}
	return d.String()
}
