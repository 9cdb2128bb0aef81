package catalog

import (
	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/letters"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/stage"
)

// Plan is the name of the calculator that plans layers on a pot: the one whose
// answers need the decoration table.
const Plan = "stage-plan"

var stagePlan = &form.Calculator{
	Name:    Plan,
	Title:   "What may I do now, and in which order?",
	Purpose: "Plans the layers you want on a pot in the state it is in: the safest order the studio’s table allows, step by step.",
	Inputs: []form.Input{
		{Name: "state", Label: "Your pot is now", Help: "See the pages of the six states if you are not sure.", Kind: quantity.Number, Needed: true, First: true, Choices: []form.Choice{
			{ID: "wet", Label: "Wet"}, {ID: "leather-hard", Label: "Leather-hard"}, {ID: "soft-leather-hard", Label: "Soft leather-hard"}, {ID: "firm-leather-hard", Label: "Firm leather-hard"}, {ID: "stiff-leather-hard", Label: "Stiff leather-hard"},
			{ID: "bone-dry", Label: "Bone dry"}, {ID: "bisque", Label: "Bisque"}, {ID: "unfired-glaze", Label: "Unfired glaze"}, {ID: "glaze-fired", Label: "Glaze-fired"}}, Said: saidStates, States: true},
		{Name: "already", Label: "On the pot already, the lowest first", Help: "For example: slip fixed, wash loose. Leave it blank for a bare pot.", Kind: quantity.Number, First: true, Words: true, List: true, Most: stage.MostLayers},
		{Name: "layers", Label: "Layers you want, the lowest first", Help: "For example: slip by paper stencil then scratched, wash wiped back, clear glaze.", Kind: quantity.Number, Needed: true, First: true, Words: true, List: true, Most: stage.MostLayers},
		{Name: "places", Label: "Where they go", Help: "On the same place they lie on one another; on different places they do not touch.", Kind: quantity.Number, Default: "same", First: true, Choices: []form.Choice{{ID: "same", Label: "All on the same place"}, {ID: "different", Label: "Each on a place of its own"}}},
		{Name: "food", Label: "For food or drink", Help: "Say no only for a pot that nobody will eat or drink from.", Kind: quantity.Number, Default: "yes", Choices: []form.Choice{{ID: "yes", Label: "Yes"}, {ID: "no", Label: "No"}}},
		{Name: "finish", Label: "The pot ends", Help: "A bare pot is fired without glaze, like a sculpture.", Kind: quantity.Number, Default: "glazed", Choices: []form.Choice{{ID: "glazed", Label: "Glazed"}, {ID: "bare", Label: "Bare"}}},
		{Name: "body", Label: "Clay", Help: "Only if the studio’s table makes an exception for yours.", Kind: quantity.Number, Words: true},
	},
	Outputs: []form.Output{
		{Name: "conflict", Label: "It does not work", Unit: "1", Text: true, Headed: true},
		{Name: "rule", Label: "Because", Unit: "1", Text: true},
		{Name: "nearest", Label: "The nearest that works", Unit: "1", Text: true},
		{Name: "changed", Label: "What is changed", Unit: "1", Text: true, Headed: true},
		{Name: "today", Label: "What works today", Unit: "1", Text: true},
		{Name: "fewer-firings", Label: "To save a firing", Unit: "1", Text: true},
		{Name: "wish", Label: "You asked for", Unit: "1", Text: true},
		{Name: "steps", Label: "Steps", Unit: "1", Digits: 3},
		{Name: "firings", Label: "Firings", Unit: "1", Digits: 3},
		{Name: "risky", Label: "Risky steps", Unit: "1", Digits: 3},
		{Name: "questions", Label: "Questions to ask first", Unit: "1", Digits: 3},
	},
	Columns: []form.Column{
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
	NeedsTable: true,
	Steps:      true,

	Work: workPlan,
	Draw: drawPlan,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		stagePlan.Example = form.Example{
			Case:  "A leather-hard mug gets slip, scratched through, then a wash wiped back on the bisque, and a clear glaze.",
			Given: []form.Setting{{Name: "state", Text: "leather-hard"}, {Name: "layers", Text: "slip poured then scratched, wash wiped back, clear glaze"}},
		}
		stagePlan.Table = form.Table{
			Caption: "One layer and a clear glaze, from where the pot is",
			Cases: []form.Case{
				{Words: "Slip, leather-hard", Given: []form.Setting{{Name: "state", Text: "leather-hard"}, {Name: "layers", Text: "slip"}}},
				{Words: "Slip, bone dry", Given: []form.Setting{{Name: "state", Text: "bone-dry"}, {Name: "layers", Text: "slip"}}},
				{Words: "Underglaze, bone dry", Given: []form.Setting{{Name: "state", Text: "bone-dry"}, {Name: "layers", Text: "underglaze"}}},
				{Words: "Underglaze, bisque", Given: []form.Setting{{Name: "state", Text: "bisque"}, {Name: "layers", Text: "underglaze"}}},
				{Words: "Wash, bisque", Given: []form.Setting{{Name: "state", Text: "bisque"}, {Name: "layers", Text: "stain wash"}}},
				{Words: "Wash, unfired glaze", Given: []form.Setting{{Name: "state", Text: "unfired-glaze"}, {Name: "layers", Text: "stain wash"}}},
				{Words: "Enamel, glaze-fired", Given: []form.Setting{{Name: "state", Text: "glaze-fired"}, {Name: "layers", Text: "enamel"}}},
			},
			Show: []string{"firings", "risky", "questions", "changed"},
		}
		stagePlan.Formulas = planFormulas
	}
}

// saidStates are words that may mean two states. What else people say for one
// stands in the table.
var saidStates = []form.Said{
	{Words: "greenware", Ask: "Greenware is any clay that was not fired. Say leather-hard if it is cool and dark, bone dry if it is pale all over."},
	{Words: "glazed", Ask: "A glazed pot may be fired or not. Say unfired glaze if the coat rubs off as powder, glaze-fired if it is glassy."},
	{Words: "fired", Ask: "Which firing has it had? Say bisque after the first, glaze-fired after the glaze firing."},
	{Words: "raw", Ask: "Raw clay, or raw glaze? Say leather-hard or bone dry for clay, unfired glaze for a coat that rubs off."},
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

func workPlan(e *form.Evaluation) {
	t := e.Settings.Table
	if t == nil {
		e.Refuse("calculator", "Planning needs a course’s decoration table. On the command line name its folder with --content.")
		return
	}
	wish, odd, ok := wish(e, t)
	if !ok {
		return
	}
	p := t.Plan(wish)
	if p.TooMany {
		e.Refuse("layers", "These layers can be laid on in too many ways to try them all here. Plan fewer at once: those on one place of the pot, or the first few, and then the rest with what is on the pot already.")
		return
	}
	if p.Conflict != nil {
		conflict(e, p.Conflict, p.NotFood)
	}
	if p.Today != "" {
		e.Tell("today", p.Today)
	}
	if p.Fewer != "" {
		e.Tell("fewer-firings", p.Fewer)
	}
	e.Tell("wish", t.Say(wish))
	if len(p.Steps) > 0 || p.Conflict == nil {
		e.Set("steps", float64(len(p.Steps)))
		e.Set("firings", float64(p.Firings))
		e.Set("risky", float64(p.Risky))
		e.Set("questions", float64(p.Questions))
	}
	for i, step := range p.Steps {
		state := t.States[step.State].Name
		if step.Part > 0 && wish.Part > 0 {
			state = letters.UpperFirst(t.States[step.State].Parts[step.Part-1].Name)
		}
		e.Row(float64(i+1), state, step.Action, step.Title, step.Wear, step.Place, Doer(step.Who), step.Caution, step.Lesson, step.Ask, step.Wait, step.What, step.Why, step.Trouble)
	}
	if p.Conflict == nil {
		e.Headline("{}", form.Join(odd, works(p)))
	}
	e.Answer.Notes = append(e.Answer.Notes, p.Notes...)
	if p.Shorter != "" {
		e.Answer.Notes = append(e.Answer.Notes, p.Shorter)
	}
}

// works is the headline of a plan: what must be known before anything else,
// then how long it takes and how it ends.
func works(p stage.Plan) string {
	if len(p.Steps) == 0 {
		return "Nothing is left to do."
	}
	text := "Works: " + form.Plural(len(p.Steps), "step") + ", " + form.Plural(p.Firings, "firing") + "."
	if p.Undone > 0 {
		text = "Works only if what is on the pot comes off again: " + form.Plural(len(p.Steps), "step") + ", " + form.Plural(p.Firings, "firing") + "."
	}
	if p.Risky > 0 {
		text = form.Join(text, letters.UpperFirst(form.Plural(p.Risky, "risky step"))+".")
	}
	if p.Questions > 0 {
		text = form.Join(text, letters.UpperFirst(form.Plural(p.Questions, "question"))+" to ask first.")
	}
	for _, end := range p.Ends {
		text = form.Join(text, end)
	}
	return form.Join(p.NotFood, text)
}

// conflict says why a wish cannot be had and what can, and of that, whether it
// is not for food though that was asked for.
func conflict(e *form.Evaluation, c *stage.Conflict, notFood string) {
	e.Tell("conflict", c.What)
	e.Tell("rule", form.Join(c.Rule, bases[c.Basis]))
	if c.Changed == "" {
		e.Headline("That does not work: {}", c.What)
		return
	}
	e.Tell("nearest", c.Nearest)
	e.Tell("changed", c.Changed)
	e.Headline("That does not work: {} The nearest that does: {}", c.What, form.Join(c.Changed, notFood))
}

// wish reads what is asked for, and says which words of it the table does not
// know; false when it knows none of them.
func wish(e *form.Evaluation, t *stage.Table) (w stage.Wish, odd string, ok bool) {
	w = stage.Wish{Apart: e.Word("places") == "different", Food: e.Word("food") != "no", Bare: e.Word("finish") == "bare", State: -1}
	state(e, t, &w)
	if w.State >= 0 {
		coats(e, t, &w)
	}
	understood, err := t.Layers(e.Word("layers"))
	w.Layers = understood.Layers
	if err != nil {
		e.Answer.Refuse("layers", err.Error())
	} else if len(w.Layers) == 0 {
		e.Missing("layers")
	}
	heard(e, "layers", understood)
	w.Body = body(e, t)
	for _, layer := range w.Layers {
		if w.Bare && layer.Medium >= 0 && t.Media[layer.Medium].Kind == stage.Glaze {
			e.Refuse("finish", "A pot with a glaze on it does not end bare. Say glazed, or leave the glaze out.")
		}
	}
	if len(understood.Odd) > 0 {
		odd = "The table does not know “" + letters.Join(understood.Odd, "”, “") + "”; this is the plan without it."
	}
	return w, odd, !e.Refused()
}

// state finds the state of the pot, and of leather-hard the part that was said.
func state(e *form.Evaluation, t *stage.Table, w *stage.Wish) {
	w.State, w.Part = t.FindState(e.Word("state"))
	if w.State < 0 {
		e.Refuse("state", "The studio’s table has no such state.")
	}
}

// coats reads what is on the pot already.
func coats(e *form.Evaluation, t *stage.Table, w *stage.Wish) {
	coats, understood, err := t.Coats(e.Word("already"), w.State)
	if err != nil {
		e.Answer.Refuse("already", err.Error())
		return
	}
	w.Already = coats
	heard(e, "already", understood)
}

// heard tells how the words of an input were read, and which were left out.
func heard(e *form.Evaluation, input string, u stage.Understood) {
	if u.Chosen != "" {
		e.Answer.Chosen = append(e.Answer.Chosen, form.Phrase{Input: input, Text: u.Chosen})
	}
	for _, read := range u.Read {
		e.Note("{}.", read)
	}
	if len(u.Left) > 0 {
		e.Note("Left out: “{}”. The plan goes by the medium and by how it is worked.", letters.Join(u.Left, "”, “"))
	}
	for _, w := range u.Left {
		if w == "inside" || w == "outside" {
			e.Note("If inside and outside get different layers, say under “Where they go” that each has a place of its own, or plan them one after the other.")
			return
		}
	}
}

// body finds the clay that a person named, -1 when none was.
func body(e *form.Evaluation, t *stage.Table) int {
	typed := e.Word("body")
	var names []string
	for i, body := range t.Bodies {
		if letters.SameWord(body.Name, typed) || body.ID == typed {
			return i
		}
		names = append(names, body.Name)
	}
	if typed != "" && len(names) == 0 {
		e.Refuse("body", "The studio’s table makes no exception for any clay. Leave this blank.")
	} else if typed != "" {
		e.Refuse("body", "The studio’s table makes no exception for “{}”. Leave this blank, or give one of: {}.", form.Clip(typed), form.Listing(names))
	}
	return -1
}

// drawPlan shows the way through the states: a stroke for each step, a flame
// for each fire.
func drawPlan(e *form.Evaluation) string {
	rows := e.Answer.Rows
	words := "The steps in order:"
	for i, row := range rows {
		if i > 0 {
			words += ","
		}
		words += " " + row[2].Text
	}
	d := sketch.New(sketch.Width, 120, words+".")
	if len(rows) == 0 {
		d.Words("no plan", sketch.Width/2, 70, sketch.TextSize, "middle")
		return d.String()
	}
	room := (sketch.Width - 40) / float64(len(rows))
	d.Line("ink", 20, 80, sketch.Width-20, 80)
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

func planFormulas() []Formula {
	return []Formula{
		{
			Math: Equal(Words("best plan"), Lines(
				Words("least undone of what is on the pot,"), Words("then fewest risky steps,"), Words("then fewest questions to the label,"),
				Words("then fewest firings,"), Words("then nearest to each medium’s best state,"), Words("then fewest steps"))),
		},
	}
}
