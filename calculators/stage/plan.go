package stage

// Plan is the answer to a wish: the steps to a finished pot, or the first
// conflict and the nearest wish that works.
type Plan struct {
	Steps    []Step
	Risky    int // steps that may go wrong
	Label    int // questions to the label or the recipe card
	Firings  int
	Away     int // how many states the layers are away from their media's best, together
	Notes    []string
	Shorter  string    // a way with fewer actions and more risk, named as such; empty when there is none
	Conflict *Conflict // nil when there is a plan; then Steps are those of the nearest wish
}

// Step is one action at the bench.
type Step struct {
	State   int     // of the pot when the step begins
	Action  string  // what kind of step, in one or two words
	Verdict Verdict // the worst of the rules that it rests on
	What    string  // what to do
	Why     string
	Caution string // what goes wrong and what then, and what to keep off; may be empty
	Ask     string // of a label step: the question; empty otherwise
}

// Conflict says why a wish cannot be had, and what can.
type Conflict struct {
	Layer   int    // the first layer that finds no place, from 0
	What    string // which layer, on a pot in which state
	Rule    string // the rule of the table
	Physics bool
	Nearest string // the nearest wish that works, in words; empty when there is none
	Changed string // what was changed for it
}

// Plan finds the best plan for a wish: fewest risky steps, then fewest label
// questions, then fewest firings, then nearest to each medium's best state,
// then fewest actions; of equals the first in the table's order.
func (t *Table) Plan(w Wish) Plan {
	s := t.newSearch(w)
	at := s.run()
	if at < 0 {
		return t.around(w)
	}
	p := t.tell(s, at)
	p.Shorter = t.shorter(w, s.reached[at].cost)
	return p
}

// tell words the way to a node.
func (t *Table) tell(s *search, at int32) Plan {
	c := s.reached[at].cost
	p := Plan{Risky: c.risky(), Label: c.questions(), Firings: c.firings(), Away: c.away()}
	now := s.start()
	for _, w := range s.steps(at) {
		p.Steps = append(p.Steps, t.step(s, now, &w))
		now = w.to
	}
	p.Notes = t.notes(s, p)
	return p
}

// step words one step.
func (t *Table) step(s *search, now pot, w *way) Step {
	step := Step{State: int(now.state), Verdict: w.worst()}
	switch {
	case w.layer == added:
		step.Action = "put on"
		step.What = "Put on " + lower(t.Media[s.glaze].Name) + ". Dip, pour or spray it; do not brush it over loose colour."
		step.Why = w.why()
		step.Ask = t.question(w, Layer{Medium: s.glaze, Technique: -1}, int(now.state))
	case w.layer >= 0:
		layer := s.w.Layers[w.layer]
		step.Action = "put on"
		step.What = t.layingOn(s, now, layer)
		step.Why = w.why()
		step.Ask = t.question(w, layer, int(now.state))
	case w.move >= 0:
		step.Action = actions[t.Transitions[w.move].Move]
		step.What = t.Transitions[w.move].Name
		step.Why = w.why()
	case w.other == dryAgain:
		step.Action = actions[Dry]
		step.What = "Let it dry through again."
		step.Why = "Whatever was put on has wetted the clay, and only a pot that is bone dry goes into the kiln."
	case w.other == onGlaze:
		step.Action = "on-glaze fire"
		step.What = t.Firing
		step.Why = "On-glaze colours melt into the glaze at a heat of their own, each firing cooler than the last."
	}
	step.Caution = join(w.caution(), t.keepOff(s, now, w))
	return step
}

// actions names the moves in a word or two.
var actions = [...]string{Dry: "dry", Bisque: "bisque fire", Harden: "harden on", Strip: "wash off", Fire: "fire"}

// layingOn words how a layer goes on.
func (t *Table) layingOn(s *search, now pot, layer Layer) string {
	m := &t.Media[layer.Medium]
	text := "Put on " + lower(m.Name)
	if layer.Technique >= 0 {
		text += ": " + lower(t.Techniques[layer.Technique].Name)
	}
	if m.Kind == Glaze && layer.Technique < 0 && now.loose != 0 && !s.w.Apart {
		text += ". Dip, pour or spray it; do not brush it over loose colour"
	}
	return text + "."
}

// why gives the reason of the rule that decides a step.
func (w *way) why() string {
	if r := w.deciding(); r != nil {
		return r.Reason
	}
	return ""
}

// deciding is the first of the worst rules.
func (w *way) deciding() *Rule {
	worst := w.worst()
	for _, r := range w.rules {
		if r != nil && r.Verdict == worst {
			return r
		}
	}
	return nil
}

// caution gives fault and remedy of the rule that decides a step.
func (w *way) caution() string {
	r := w.deciding()
	if r == nil || r.Fault == "" {
		return ""
	}
	return join("What goes wrong: "+r.Fault, r.Remedy)
}

// question is what a label step asks.
func (t *Table) question(w *way, layer Layer, state int) string {
	if w.worst() != Label {
		return ""
	}
	name := lower(t.Media[layer.Medium].Name)
	if r := w.rules[1]; r != nil && r.Verdict == Label && w.rules[0].Verdict != Label {
		name = lower(t.Techniques[layer.Technique].Name)
	}
	return "Does the label, or the studio’s recipe card, say that " + name + " may be used in the state “" + lower(t.States[state].Name) + "”? If it does not say so, do not."
}

// keepOff warns where colour ends on top of the glaze of a pot for food.
func (t *Table) keepOff(s *search, now pot, w *way) string {
	if !s.w.Food || w.layer < 0 || w.layer == added {
		return ""
	}
	if m := &t.Media[s.w.Layers[w.layer].Medium]; !m.Food || now.state == s.coat && m.Kind != Glaze {
		return "Keep it off every surface that food, drink or lips touch."
	}
	return ""
}

// notes says what is true of a plan as a whole.
func (t *Table) notes(s *search, p Plan) []string {
	var notes []string
	colour := false
	for _, layer := range s.w.Layers {
		m := &t.Media[layer.Medium]
		if m.Kind == Glaze && m.Hides && colour && !s.w.Apart {
			notes = append(notes, "You will not see it: "+lower(m.Name)+" hides the colour under it.")
		}
		colour = colour || m.Kind != Glaze && m.Kind != OnGlaze
	}
	if s.w.Food && s.w.Bare {
		notes = append(notes, "A pot that ends bare is not for food or drink.")
	} else if s.w.Food {
		notes = append(notes, "For food the colour has to end under a glaze that a laboratory has tested on your ware; planning it here is no test.")
	}
	if p.Label > 0 {
		notes = append(notes, "Where a step asks, the answer stands on the label or on the studio’s recipe card. Without it, the answer is no.")
	}
	return notes
}

// shorter names a way with fewer actions and more risk than the best one.
func (t *Table) shorter(w Wish, best cost) string {
	s := t.newSearch(w)
	s.hurry = true
	at := s.run()
	if at < 0 {
		return ""
	}
	var quick cost
	danger := ""
	now := s.start()
	for _, way := range s.steps(at) {
		quick += way.cost
		if r := way.deciding(); r != nil && way.worst() == Risky && danger == "" {
			danger = t.step(s, now, &way).What + " " + r.Reason
		}
		now = way.to
	}
	if quick.actions() >= best.actions() || quick.risky() <= best.risky() {
		return ""
	}
	return "A shorter way is riskier: " + count(best.actions()-quick.actions(), "step") + " fewer, but " + count(quick.risky(), "risky step") + ". " + danger
}

// count words a number of things.
func count(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return digit(n) + " " + word + "s"
}

// join puts two sentences one after the other, where there are two.
func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + " " + b
}
