package stage

// word words one step.
func (s *search) word(now *pot, next *step) Step {
	told := Step{State: int(now.state), Verdict: worst(next.rules)}
	if len(s.t.States[now.state].Parts) > 0 {
		told.Part = int(now.part) + 1
	}
	switch {
	case next.act >= 0:
		s.wordAct(&told, now, next)
	case next.move >= 0:
		tr := &s.t.Transitions[next.move]
		told.Action, told.What = actions[tr.Move], tr.Name
	case next.extra == addGlaze:
		told.Action = "put on"
		told.Title = s.laying(Layer{Medium: s.glaze})
		told.What = told.Title + s.careful(now, Layer{Medium: s.glaze}, next) + "."
	case next.extra == dryAgain:
		told.Action = actions[Dry]
		told.What, told.Why = "Let it dry through again, until no part is cool or dark.", "What was put on has wetted the clay, and only a pot that is bone dry goes into the kiln."
		if now.pending > 0 {
			told.What, told.Why = s.t.Drying, s.t.Fire.Reason
		} else if s.raw>>now.state&1 == 0 {
			told.What, told.Why = "Let it dry overnight.", "What was put on has wetted the pot. Damp bisque takes a glaze unevenly, and only a dry pot goes into the kiln."
		}
	case next.extra == stiffen:
		part := s.t.States[now.state].Parts[next.to.part]
		told.Action, told.Title = "wait", "Wait until it is "+lower(part.Name)
		told.What = "Let it stiffen until it is " + lower(part.Name) + ". " + part.Tell
		told.Why = "The next step wants clay that is " + lower(part.Name) + "."
	case next.extra == peelOff:
		names := s.peeled(now)
		told.Action, told.Title = "peel", "Peel off "+names
		told.What = "Peel off " + names + ", slowly and flat, every scrap of it."
		told.Why = "Nothing of it goes into the kiln: it stinks as it burns."
		if now.skin == wornOver {
			told.Wait = "Wait until the coat over it has lost its shine, and no longer: from a dry coat it tears the edge."
		}
	case next.extra == onGlazeFire:
		told.Action, told.What = "on-glaze fire", s.t.Firing
		told.Why = "On-glaze colours melt into the glaze at a heat of their own, each firing cooler than the last."
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
		told.What = "The instructor does this step, and you watch. " + told.What
	}
	return told
}

// peeled names the resists on a pot that are peeled off.
func (s *search) peeled(now *pot) string {
	var names []string
	for i, medium := range s.layers {
		if now.loose&s.alike[i]&s.skins != 0 && s.wasLaid(now, i) && !has(names, lower(s.t.Media[medium].Name)) {
			names = append(names, lower(s.t.Media[medium].Name))
		}
	}
	return listed(names, ", ")
}

// actions names the moves in a word or two.
var actions = [...]string{Dry: "dry", Bisque: "bisque fire", Harden: "harden on", Strip: "wash off", Fire: "fire"}

// wordAct words an act of the wish.
func (s *search) wordAct(told *Step, now *pot, next *step) {
	a := s.acts[next.act]
	layer := s.w.Layers[a.layer]
	switch {
	case a.bare:
		told.Action, told.Title = "work", "Work the clay: "+lower(s.t.Techniques[a.ways[0]].Name)
		told.What = told.Title + "."
	case a.takes:
		q := &s.t.Techniques[a.ways[0]]
		told.Action, told.Title, told.Wait = "work", "Work the coat of "+s.t.named(layer)+": "+lower(q.Name), next.rules[0].Wait
		told.What = told.Title + "."
	default:
		told.Action = "put on"
		laid := Layer{Medium: layer.Medium, Ways: a.ways, Metal: layer.Metal}
		told.Title = s.laying(laid)
		told.What = told.Title + s.careful(now, laid, next) + "."
		if now.open&now.loose != 0 && now.damp && !s.w.Apart {
			told.Wait = "Wait until the coat below has lost its shine."
		}
	}
}

// laying words that a layer goes on.
func (s *search) laying(layer Layer) string {
	text := "Put on " + s.t.named(layer)
	for i, q := range layer.Ways {
		if i == 0 {
			text += ": "
		} else {
			text += ", "
		}
		text += lower(s.t.Techniques[q].Name)
	}
	return text
}

// careful words how a layer must go on over what is loose below it.
func (s *search) careful(now *pot, layer Layer, next *step) string {
	how := s.howOver(now, &s.t.Media[layer.Medium], layer.Ways, next)
	switch {
	case how == "":
		return ""
	case how[0] == 'n': // "not by brushing"
		how = ", " + how
	default:
		how = " " + how
	}
	return how + ": what lies under it is still loose"
}

// why gives the reasons of the worst rules of a step, or where nothing is
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

// trouble gives the faults of the rules of a step, each with its remedy, those
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
			ask = "Does the label, or the studio’s recipe card, say that " + s.asked(now, next, r) + "? If it does not say so, do not."
		}
		if r.of == ofMetal {
			ask = "You wrote “" + s.w.Layers[s.acts[next.act].layer].Metal + "”. " + ask
		}
		text = join(text, ask)
	}
	return text
}

// asked words what the label has to say for a rule.
func (s *search) asked(now *pot, next *step, r ground) string {
	state := "in the state “" + lower(s.t.States[now.state].Name) + "”"
	switch r.of {
	case ofWay:
		return lower(s.t.Techniques[r.which].Name) + " may be done " + state
	case ofUnder:
		m, _ := s.laid(next)
		return lower(m.Name) + " may go on " + lower(s.t.Media[r.which].Name) + " that no glaze covers"
	case ofMove:
		return "this may be done " + state
	}
	return lower(s.t.Media[r.which].Name) + " may be used " + state
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
	told.Wear, told.Place = listed(wear, ", "), listed(place, "; ")
	told.Caution = join(told.Caution, s.keepOff(now, next))
}

// keepOff warns of what is for no food surface, and of colour that ends without
// a glaze over it on the pot of somebody who wants to eat from it.
func (s *search) keepOff(now *pot, next *step) string {
	m, _ := s.laid(next)
	if !s.w.Food || m == nil || m.Kind == Resist {
		return ""
	}
	if !m.Food || m.Kind != Glaze && s.endsOpen(now, s.acts[next.act].layer) {
		return "Keep it off every surface that food, drink or lips touch."
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
