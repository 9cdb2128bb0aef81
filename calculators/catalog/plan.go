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
	Name: Plan,
	Inputs: []form.Input{
		{Name: "state", Kind: quantity.Number, Needed: true, First: true, Choices: []form.Choice{
			{ID: "wet"}, {ID: "leather-hard"}, {ID: "soft-leather-hard"}, {ID: "firm-leather-hard"}, {ID: "stiff-leather-hard"},
			{ID: "bone-dry"}, {ID: "bisque"}, {ID: "unfired-glaze"}, {ID: "glaze-fired"}}, Asks: asksStates, States: true},
		{Name: "already", Kind: quantity.Number, First: true, Words: true, List: true, Most: stage.MostLayers},
		{Name: "layers", Kind: quantity.Number, Needed: true, First: true, Words: true, List: true, Most: stage.MostLayers},
		{Name: "places", Kind: quantity.Number, Default: "same", First: true, Choices: []form.Choice{{ID: "same"}, {ID: "different"}}},
		{Name: "food", Kind: quantity.Number, Default: "yes", Choices: []form.Choice{{ID: "yes"}, {ID: "no"}}},
		{Name: "finish", Kind: quantity.Number, Default: "glazed", Choices: []form.Choice{{ID: "glazed"}, {ID: "bare"}}},
		{Name: "body", Kind: quantity.Number, Words: true},
	},
	Outputs: []form.Output{
		{Name: "conflict", Unit: "1", Text: true, Headed: true},
		{Name: "rule", Unit: "1", Text: true},
		{Name: "nearest", Unit: "1", Text: true},
		{Name: "changed", Unit: "1", Text: true, Headed: true},
		{Name: "today", Unit: "1", Text: true},
		{Name: "fewer-firings", Unit: "1", Text: true},
		{Name: "wish", Unit: "1", Text: true},
		{Name: "steps", Unit: "1", Digits: 3},
		{Name: "firings", Unit: "1", Digits: 3},
		{Name: "risky", Unit: "1", Digits: 3},
		{Name: "questions", Unit: "1", Digits: 3},
	},
	Columns: []form.Column{
		{Name: "step", Unit: "1", Digits: 3},
		{Name: "state", Text: true},
		{Name: "action", Text: true},
		{Name: "title", Text: true},
		{Name: "wear", Text: true},
		{Name: "place", Text: true},
		{Name: "who", Text: true},
		{Name: "caution", Text: true},
		{Name: "lesson", Text: true},
		{Name: "ask", Text: true},
		{Name: "wait", Text: true},
		{Name: "what", Text: true},
		{Name: "risk", Text: true},
		{Name: "why", Text: true},
		{Name: "trouble", Text: true},
	},
	Says:       []string{"plan-rests-studio"},
	NeedsTable: true,
	Steps:      true,

	Work: workPlan,
	Draw: drawPlan,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		stagePlan.Example = form.Example{
			Given: []form.Setting{{Name: "state", Text: "leather-hard"}, {Name: "layers", Text: "slip poured then scratched, wash wiped back, clear glaze"}},
		}
		stagePlan.Table = form.Table{
			Cases: []form.Case{
				{ID: "slip-leather-hard", Given: []form.Setting{{Name: "state", Text: "leather-hard"}, {Name: "layers", Text: "slip"}}},
				{ID: "slip-bone-dry", Given: []form.Setting{{Name: "state", Text: "bone-dry"}, {Name: "layers", Text: "slip"}}},
				{ID: "underglaze-bone-dry", Given: []form.Setting{{Name: "state", Text: "bone-dry"}, {Name: "layers", Text: "underglaze"}}},
				{ID: "underglaze-bisque", Given: []form.Setting{{Name: "state", Text: "bisque"}, {Name: "layers", Text: "underglaze"}}},
				{ID: "wash-bisque", Given: []form.Setting{{Name: "state", Text: "bisque"}, {Name: "layers", Text: "stain wash"}}},
				{ID: "wash-unfired-glaze", Given: []form.Setting{{Name: "state", Text: "unfired-glaze"}, {Name: "layers", Text: "stain wash"}}},
				{ID: "enamel-glaze-fired", Given: []form.Setting{{Name: "state", Text: "glaze-fired"}, {Name: "layers", Text: "enamel"}}},
			},
			Show: []string{"firings", "risky", "questions", "changed"},
		}
		stagePlan.Formula = planFormulas
	}
}

// asksStates are words that may mean two states. What else people say for one
// stands in the table.
var asksStates = []string{"greenware", "glazed", "fired", "raw"}

// people says who may do a step.
var people = [...]string{stage.Student: "plan.who.student", stage.WithInstructor: "plan.who.with-instructor", stage.Instructor: "plan.who.instructor"}

// bases says what a rule rests on.
var bases = [...]string{
	stage.Physics: "plan.basis.physics",
	stage.Trade:   "plan.basis.trade",
	stage.House:   "plan.basis.house",
}

func workPlan(e *form.Evaluation) {
	t := e.Settings.Table
	if t == nil {
		e.Refuse("calculator", "needs-table")
		return
	}
	wish, odd, ok := wish(e, t)
	if !ok {
		return
	}
	p := t.Plan(wish)
	if p.TooMany {
		e.Refuse("layers", "too-many-ways")
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
		risk := ""
		if step.Verdict == stage.Risky {
			risk = e.Say("plan.is-risky")
		}
		e.Row(float64(i+1), state, step.Action, step.Title, step.Wear, step.Place, e.Say(people[step.Who]), step.Caution, step.Lesson, step.Ask, step.Wait, step.What, risk, step.Why, step.Trouble)
	}
	mixed(e, t, p.Steps)
	if p.Conflict == nil {
		e.Answer.Headline = form.Join(odd, works(e, p))
	}
	e.Answer.Notes = append(e.Answer.Notes, p.Notes...)
	if p.Shorter != "" {
		e.Answer.Notes = append(e.Answer.Notes, p.Shorter)
	}
}

// works is the headline of a plan: what must be known before anything else,
// then how long it takes and how it ends.
func works(e *form.Evaluation, p stage.Plan) string {
	if len(p.Steps) == 0 {
		return e.Say("nothing-left")
	}
	steps, firings := e.Count("steps", len(p.Steps)), e.Count("firings", p.Firings)
	text := e.Say("works", "steps", steps, "firings", firings)
	if p.Undone > 0 {
		text = e.Say("works-only-if", "steps", steps, "firings", firings)
	}
	if p.Risky > 0 {
		text = form.Join(text, e.Count("risky", p.Risky))
	}
	if p.Questions > 0 {
		text = form.Join(text, e.Count("questions", p.Questions))
	}
	for _, end := range p.Ends {
		text = form.Join(text, end)
	}
	return form.Join(p.NotFood, text)
}

// conflict says why a wish cannot be had and what can, and of that, whether it
// is not for food though that was asked for.
func conflict(e *form.Evaluation, c *stage.Conflict, notFood string) {
	basis := ""
	if c.Basis != stage.Unsaid {
		basis = e.Say(bases[c.Basis])
	}
	e.Tell("conflict", c.What)
	e.Tell("rule", form.Join(c.Rule, basis))
	if c.Changed == "" {
		e.Headline("does-not-work", "what", c.What)
		return
	}
	e.Tell("nearest", c.Nearest)
	e.Tell("changed", c.Changed)
	e.Headline("nearest", "what", c.What, "nearest", form.Join(c.Changed, notFood))
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
			e.Refuse("finish", "glazed-not-bare")
		}
	}
	if len(understood.Odd) > 0 {
		odd = e.Say("unknown-left-out", "words", e.Settings.Words.Quoted(understood.Odd))
	}
	return w, odd, !e.Refused()
}

// state finds the state of the pot, and of leather-hard the part that was said.
func state(e *form.Evaluation, t *stage.Table, w *stage.Wish) {
	w.State, w.Part = t.FindState(e.Word("state"))
	if w.State < 0 {
		e.Refuse("state", "no-such-state")
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
		e.Answer.Notes = append(e.Answer.Notes, read+".")
	}
	if len(u.Left) > 0 {
		e.Note("left-out", "words", e.Settings.Words.Quoted(u.Left))
	}
	for _, w := range u.Left {
		if w == "inside" || w == "outside" {
			e.Note("inside-outside")
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
		e.Refuse("body", "no-exceptions")
	} else if typed != "" {
		e.Refuse("body", "no-exception", "typed", form.Clip(typed), "clays", e.Listing(names))
	}
	return -1
}

// drawPlan shows the way through the states: a stroke for each step, a flame
// for each fire.
func drawPlan(e *form.Evaluation) string {
	rows := e.Answer.Rows
	steps := ""
	for i, row := range rows {
		if i > 0 {
			steps += e.Say("language.list.between")
		}
		steps += row[2].Text
	}
	d := sketch.New(sketch.Width, 120, e.Say("steps-in-order", "steps", steps))
	if len(rows) == 0 {
		d.Words(e.Say("no-plan"), sketch.Width/2, 70, "middle")
		return d.String()
	}
	room := (sketch.Width - 40) / float64(len(rows))
	d.Line("ink", 20, 80, sketch.Width-20, 80)
	for i, row := range rows {
		x := 20 + float64((float64(i)+0.5)*room)
		switch row[2].Text {
		case e.Say("plan.action.put-on"), e.Say("plan.action.work"):
			d.Dot("colour", x, 80, 14)
			d.Dot("ink", x, 80, 14)
		case e.Say("plan.action.dry"), e.Say("plan.action.wait"), e.Say("plan.action.strip"):
			d.Dot("paper", x, 80, 8)
			d.Dot("ink", x, 80, 8)
		default:
			d.Path("clay", "M", x-14, 80.0, "Q", x-18, 56.0, x, 36.0, "Q", x+18, 56.0, x+14, 80.0, "Z")
			d.Path("ink", "M", x-14, 80.0, "Q", x-18, 56.0, x, 36.0, "Q", x+18, 56.0, x+14, 80.0, "Z")
		}
	}
	return d.String()
}

func planFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Words(say("best-plan")), Lines(
				Words(say("least-undone-what-pot")), Words(say("then-fewest-risky-steps")), Words(say("then-fewest-questions-label")),
				Words(say("then-fewest-firings")), Words(say("then-nearest-each-medium")), Words(say("then-fewest-steps")))),
		},
	}
}
