package stage

import "slipbook/calculators/letters"

// word words one step.
func (s *search) word(now *pot, next *step) Step {
	told := Step{State: int(now.state), Verdict: worst(next.rules), Medium: s.handled(next)}
	if len(s.t.States[now.state].Parts) > 0 {
		told.Part = int(now.part) + 1
	}
	switch {
	case next.act >= 0:
		s.wordAct(&told, now, next)
	case next.move >= 0:
		tr := &s.t.Transitions[next.move]
		told.Action, told.What = s.t.fill(actions[tr.Move]), tr.Name
	case next.extra == addGlaze:
		told.Action = s.t.fill("action.put-on")
		told.Title = s.laying(Layer{Medium: s.glaze})
		told.What = s.careful(told.Title, now, Layer{Medium: s.glaze}, next)
	case next.extra == dryAgain:
		told.Action = s.t.fill(actions[Dry])
		told.What, told.Why = s.t.fill("dry-through"), s.t.fill("dry-through-why")
		if now.pending > 0 {
			told.What, told.Why = s.t.Drying, s.t.Fire.Reason
		} else if s.raw>>now.state&1 == 0 {
			told.What, told.Why = s.t.fill("dry-overnight"), s.t.fill("dry-overnight-why")
		}
	case next.extra == stiffen:
		part := s.t.States[now.state].Parts[next.to.part]
		name := s.t.lower(part.Name)
		told.Action, told.Title = s.t.fill("action.wait"), s.t.fill("wait-until", "part", name)
		told.What = join(s.t.fill("stiffen", "part", name), part.Tell)
		told.Why = s.t.fill("stiffen-why", "part", name)
	case next.extra == peelOff:
		names := s.peeled(now)
		told.Action, told.Title = s.t.fill("action.peel"), s.t.fill("peel", "media", names)
		told.What = s.t.fill("peel-slowly", "media", names)
		told.Why = s.t.fill("peel-why")
		if now.skin == wornOver {
			told.Wait = s.t.fill("peel-wait")
		}
	case next.extra == onGlazeFire:
		told.Action, told.What = s.t.fill("action.on-glaze-fire"), s.t.Firing
		told.Why = s.t.fill("on-glaze-why")
	}
	if told.Title == "" {
		told.Title = upper(told.Action)
	}
	if told.Why == "" {
		told.Why = why(next.rules)
	}
	told.Ask = s.questions(now, next)
	told.Trouble = s.trouble(next.rules)
	s.guard(&told, now, next)
	if told.Who == Instructor && !s.fires(next) && (next.extra != dryAgain || now.pending == 0) {
		told.What = join(s.t.fill("instructor-step"), told.What)
	}
	return told
}

// peeled names the resists on a pot that are peeled off.
func (s *search) peeled(now *pot) string {
	var names []string
	for i, medium := range s.layers {
		if now.loose&s.alike[i]&s.skins != 0 && s.wasLaid(now, i) && !has(names, s.t.lower(s.t.Media[medium].Name)) {
			names = append(names, s.t.lower(s.t.Media[medium].Name))
		}
	}
	return s.t.listed(names)
}

// actions are the ids of the moves in a word or two.
var actions = [...]string{Dry: "action.dry", Bisque: "action.bisque", Harden: "action.harden", Strip: "action.strip", Fire: "action.fire"}

// wordAct words an act of the wish.
func (s *search) wordAct(told *Step, now *pot, next *step) {
	a := s.acts[next.act]
	layer := s.w.Layers[a.layer]
	switch {
	case a.bare:
		told.Action, told.Title = s.t.fill("action.work"), s.t.fill("work-clay", "way", s.t.lower(s.t.Techniques[a.ways[0]].Name))
		told.What = told.Title + "."
	case a.takes:
		q := &s.t.Techniques[a.ways[0]]
		told.Action, told.Title, told.Wait = s.t.fill("action.work"), s.t.fill("work-coat", "medium", s.t.named(layer), "way", s.t.lower(q.Name)), next.rules[0].Wait
		told.What = told.Title + "."
	default:
		told.Action = s.t.fill("action.put-on")
		laid := Layer{Medium: layer.Medium, Ways: a.ways, Metal: layer.Metal}
		told.Title = s.laying(laid)
		told.What = s.careful(told.Title, now, laid, next)
		if now.open&now.loose != 0 && now.damp && !s.w.Apart {
			told.Wait = s.t.fill("coat-below")
		}
	}
}

// laying words that a layer goes on.
func (s *search) laying(layer Layer) string {
	var ways []string
	for _, q := range layer.Ways {
		ways = append(ways, s.t.lower(s.t.Techniques[q].Name))
	}
	if len(ways) == 0 {
		return s.t.fill("put-on", "medium", s.t.named(layer))
	}
	return s.t.fill("put-on-by", "medium", s.t.named(layer), "ways", s.t.listed(ways))
}

// careful words that a layer goes on, and how it must where something is loose
// below it.
func (s *search) careful(title string, now *pot, layer Layer, next *step) string {
	by, not := s.howOver(now, &s.t.Media[layer.Medium], layer.Ways, next)
	switch {
	case not == "":
		return title + "."
	case by == "":
		return s.t.fill("careful-not", "title", title, "not", not)
	}
	return s.t.fill("careful", "title", title, "ways", by, "not", not)
}

// why returns the reasons of the worst rules of a step, or where nothing is
// wrong, those of its medium and its way of working.
func why(rules []ground) string {
	text, worst := "", worst(rules)
	for _, r := range rules {
		if r.Verdict == worst && (worst > Yes || r.of != ofUnder) && !holds(text, r.Reason) {
			text = join(text, r.Reason)
		}
	}
	return text
}

// trouble returns the faults of the rules of a step, each with its remedy, those
// of the worst first. What helps a medium on bare ground, such as wiping it
// first, is left out where another medium lies below: it may be loose.
func (s *search) trouble(rules []ground) string {
	text, worst, bare := "", worst(rules), true
	for _, r := range rules {
		bare = bare && (r.of != ofUnder || s.t.Media[r.which].Kind == Resist)
	}
	for _, first := range []bool{true, false} {
		for _, r := range rules {
			if (r.Verdict == worst) == first && (bare || r.of != ofMedium || r.Verdict > Yes) && r.Fault != "" && !holds(text, r.Fault) {
				text = join(text, join(r.Fault, r.Remedy))
			}
		}
	}
	return text
}

// questions are what a step asks, one after the other.
func (s *search) questions(now *pot, next *step) string {
	text := ""
	for _, r := range next.rules {
		ask := r.Ask
		if ask == "" && r.Verdict == Label {
			ask = s.asked(now, next, r)
		}
		if r.of == ofMetal {
			ask = join(s.t.fill("you-wrote", "metal", s.w.Layers[s.acts[next.act].layer].Metal), ask)
		}
		text = join(text, ask)
	}
	return text
}

// asked asks what the label has to say for a rule.
func (s *search) asked(now *pot, next *step, r ground) string {
	state := s.t.lower(s.t.States[now.state].Name)
	switch r.of {
	case ofWay:
		return s.t.fill("label-way", "way", s.t.lower(s.t.Techniques[r.which].Name), "state", state)
	case ofUnder:
		m, _ := s.laid(next)
		return s.t.fill("label-over", "medium", s.t.lower(m.Name), "under", s.t.lower(s.t.Media[r.which].Name))
	case ofMove:
		return s.t.fill("label-move", "state", state)
	}
	return s.t.fill("label-medium", "medium", s.t.lower(s.t.Media[r.which].Name), "state", state)
}

// guard puts the hazards of a step into words: what to wear, where, who, and
// how not to come to harm; and what must not touch food.
func (s *search) guard(told *Step, now *pot, next *step) {
	p := s.peril(now, next)
	told.Hazards, told.Who = p.hazards, p.who
	var wear, place []string
	for i := range s.t.Hazards {
		h := &s.t.Hazards[i]
		if p.hazards>>i&1 == 0 {
			continue
		}
		told.Caution = join(told.Caution, h.Short)
		wear = union(wear, h.Wear...)
		if h.Place != "" {
			place = union(place, h.Place)
		}
		if told.Lesson == "" {
			told.Lesson = h.Lesson
		}
	}
	told.Wear, told.Place = s.t.listed(wear), letters.Join(place, "; ")
	if told.Medium >= 0 {
		for _, wet := range s.t.Media[told.Medium].Wet {
			told.Caution = join(told.Caution, wet)
		}
	}
	told.Caution = join(told.Caution, s.keepOff(now, next))
}

// handled is the medium that a step lays on or works; -1 for any other step.
func (s *search) handled(next *step) int {
	switch {
	case next.extra == addGlaze:
		return s.glaze
	case next.act >= 0:
		return s.w.Layers[s.acts[next.act].layer].Medium
	}
	return -1
}

// keepOff warns of what is for no food surface, and of colour that ends without
// a glaze over it on the pot of somebody who wants to eat from it.
func (s *search) keepOff(now *pot, next *step) string {
	m, _ := s.laid(next)
	if !s.w.Food || m == nil || m.Kind == Resist {
		return ""
	}
	if !m.Food || m.Kind != Glaze && s.endsOpen(now, s.acts[next.act].layer) {
		return s.t.fill("keep-off")
	}
	return ""
}

// endsOpen reports whether a layer that goes on now ends without a glaze over
// it, on a pot that has one elsewhere, or under it.
func (s *search) endsOpen(now *pot, layer int) bool {
	for _, above := range s.w.Layers[layer+1:] {
		if !s.w.Apart && above.Medium >= 0 && s.t.Media[above.Medium].Kind == Glaze {
			return false
		}
	}
	return now.glazed || !s.w.Bare && !s.mayAddGlaze()
}
