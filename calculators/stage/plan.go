package stage

// Plan is the answer to a wish: the steps to a finished pot, or the first
// conflict and the nearest wish that works.
type Plan struct {
	Steps    []Step
	Risky    int // steps that may go wrong
	Label    int // questions to the label or the recipe card, those of risky steps too
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
	Physics bool   // no instructor can loosen it
	House   bool   // an instructor can
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
	p := Plan{Risky: c.risky(), Firings: c.firings(), Away: c.away()}
	now := s.start()
	for _, w := range s.steps(at) {
		p.Label += w.asks()
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
		step.What = t.layingOn(s, now, Layer{Medium: s.glaze, Technique: -1})
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
	text := "Put on " + lower(t.Media[layer.Medium].Name)
	if layer.Technique >= 0 {
		return text + ": " + lower(t.Techniques[layer.Technique].Name) + "."
	}
	if o := s.lyingUnder(now, layer); o != nil && len(o.Unless) > 0 {
		text += ", but not by " + t.named(o.Unless) + ": what lies under it is still loose"
	}
	return text + "."
}

// named lists techniques by their names.
func (t *Table) named(ids []string) string {
	text := ""
	for _, id := range ids {
		for i := range t.Techniques {
			if t.Techniques[i].ID != id {
				continue
			}
			if text != "" {
				text += " or "
			}
			text += lower(t.Techniques[i].Name)
		}
	}
	return text
}

// why gives the reason of the rule that decides a step, and the technique's
// own, which says how it is done.
func (w *way) why() string {
	r := w.deciding()
	if r == nil {
		return ""
	}
	if q := w.rules[1]; q != nil && q != r {
		return join(r.Reason, q.Reason)
	}
	return r.Reason
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

// caution gives the faults of the rules of a step, each with its remedy, that
// of the rule that decides first.
func (w *way) caution() string {
	first := w.deciding()
	if first == nil {
		return ""
	}
	text := first.trouble()
	for _, r := range w.rules {
		if r != nil && r != first {
			text = join(text, r.trouble())
		}
	}
	if text != "" {
		text = "What goes wrong: " + text
	}
	return text
}

// trouble is a rule's fault and what then.
func (r *Rule) trouble() string {
	if r.Fault == "" {
		return ""
	}
	return join(r.Fault, r.Remedy)
}

// question is what a step asks: one question a label.
func (t *Table) question(w *way, layer Layer, state int) string {
	text := ""
	for i, r := range w.rules {
		if r == nil || r.Verdict != Label {
			continue
		}
		name := lower(t.Media[layer.Medium].Name)
		if i == 1 {
			name = lower(t.Techniques[layer.Technique].Name)
		}
		text = join(text, "Does the label, or the studio’s recipe card, say that "+name+" may be used in the state “"+lower(t.States[state].Name)+"”? If it does not say so, do not.")
	}
	return text
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
	s.hurry, s.enough = true, best.actions()
	at := s.run()
	if at < 0 {
		return ""
	}
	var quick cost
	asks, danger := 0, ""
	now := s.start()
	for _, way := range s.steps(at) {
		quick += way.cost
		asks += way.asks()
		if r := way.deciding(); r != nil && way.worst() == Risky {
			danger = join(danger, t.step(s, now, &way).What+" "+r.Reason)
		}
		now = way.to
	}
	if quick.actions() >= best.actions() || quick.risky() <= best.risky() {
		return ""
	}
	text := "A shorter way is riskier: " + count(best.actions()-quick.actions(), "step") + " fewer, but " + count(quick.risky(), "risky step")
	if asks > 0 {
		text += " and " + count(asks, "question") + " to the label"
	}
	return text + ". " + danger
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
