package stage

// most is how many media are named for today.
const most = 3

// shorter names a way with fewer actions, or with fewer firings, and more risk
// than the best one. Its few words have no room for a mask: none is named whose
// work wants a person beside the student, or a place of its own for health.
func (s *search) shorter(best []step) string {
	text := ""
	for _, o := range []order{shortest, coolest} {
		other := s.another(s.w, o)
		at := other.run()
		if at < 0 {
			continue
		}
		steps := other.path(at)
		was, is := sum(best), sum(steps)
		saved := s.t.count("steps", was.actions()-is.actions())
		if o == coolest {
			saved = s.t.count("firings", was.firings()-is.firings())
		}
		gain := o == shortest && is.actions() < was.actions() || o == coolest && is.firings() < was.firings()
		if !gain || is.risky()+is.questions() <= was.risky()+was.questions() || is.undone() > was.undone() || s.t.guarded(other.pathPeril(steps, false)) || s.t.worse(other.pathPeril(steps, true), s.pathPeril(best, true)) {
			continue
		}
		said := s.t.fill("shorter", "saved", saved, "more", s.t.dearer(is), "way", other.sketch(steps))
		if !holds(text, said) {
			text = join(text, said)
		}
		if is.firings() < was.firings() {
			break
		}
	}
	return text
}

// dearer words what a shorter way has of what one would rather not have.
func (t *Table) dearer(c cost) string {
	switch {
	case c.questions() == 0:
		return t.count("risky", c.risky())
	case c.risky() == 0:
		return t.count("questions", c.questions())
	}
	return t.fill("both", "risky", t.count("risky", c.risky()), "questions", t.count("questions", c.questions()))
}

// sketch tells the acts of a way in short, with what makes them risky.
func (s *search) sketch(steps []step) string {
	text := ""
	now := s.start()
	for i := range steps {
		if next := &steps[i]; next.act >= 0 || next.extra == addGlaze {
			told := s.word(&now, next)
			text = join(text, s.t.fill("while", "what", told.What, "state", s.t.lower(s.t.States[told.State].Name)))
			if told.Verdict == Risky {
				text = join(text, told.Why)
			}
		}
		now = steps[i].to
	}
	return text
}

// fewer names other ways of laying one layer on that save a firing, with no
// more risk and no more questions: dipping a glaze instead of brushing it.
func (s *search) fewer(best []step) string {
	was, peril := sum(best), s.pathPeril(best, true)
	for i, layer := range s.w.Layers {
		var names []string
		var is cost
		var steps int
		for _, ways := range s.t.otherLaying(layer) {
			w := s.w.with(swapped(s.w.Layers, i, Layer{Medium: layer.Medium, Ways: ways, Metal: layer.Metal}))
			other := s.another(w, safest)
			at := other.run()
			if at < 0 {
				continue
			}
			path := other.path(at)
			c := sum(path)
			if c.firings() >= was.firings() || c>>28 > was>>28 || s.t.worse(other.pathPeril(path, true), peril) {
				continue
			}
			names = append(names, s.t.lower(s.t.Techniques[ways[0]].Name))
			is, steps = c, len(path)
		}
		if len(names) > 0 {
			return s.t.fill("fewer", "medium", s.t.Media[layer.Medium].Name, "ways", s.t.either(names),
				"saved", s.t.count("firings", was.firings()-is.firings()), "steps", s.t.count("steps", steps), "firings", s.t.count("firings", is.firings()))
		}
	}
	return ""
}

// otherLaying returns, for a layer that is laid on in one way, each other way in
// its place.
func (t *Table) otherLaying(layer Layer) [][]int {
	if layer.Medium < 0 || len(layer.Ways) == 0 || t.Techniques[layer.Ways[0]].Takes {
		return nil
	}
	var others [][]int
	for q := range t.Techniques {
		if !among(layer.Ways, q) && t.Techniques[q].Coats && t.Techniques[q].serves(t.Media[layer.Medium].Base) {
			others = append(others, append([]int{q}, layer.Ways[1:]...))
		}
	}
	return others
}

func among(ways []int, q int) bool {
	for _, other := range ways {
		if other == q {
			return true
		}
	}
	return false
}

// today names media that go on the pot as it is, where the first layer of the
// wish has to wait or finds no place: those of the same look, and where there
// are none, any that decorate; each only if the whole wish works with it, and
// never one that is worse for health than the plan, or where there is none, than
// the wish.
func (s *search) today(best []step) string {
	i := s.firstDecor()
	if i < 0 || s.begunNow(best, i) {
		return ""
	}
	var same, any []string
	for j := range s.t.Media {
		m := &s.t.Media[j]
		if m.Kind == Glaze || m.Kind == Resist || m.Who > Student || j == s.w.Layers[i].Medium || s.beside(i, j) || !s.worksNow(best, i, j) {
			continue
		}
		any = append(any, s.t.lower(m.Name))
		if m.Look != "" && m.Look == s.t.Media[s.w.Layers[i].Medium].Look {
			same = append(same, s.t.lower(m.Name))
		}
	}
	if len(same) == 0 {
		same = any
	}
	if len(same) == 0 {
		return ""
	}
	return s.t.fill("today", "state", s.t.lower(s.t.States[s.w.State].Name), "media", s.t.either(same[:min(most, len(same))]))
}

// begunNow reports whether a plan puts a layer on before the pot has moved on
// to another state.
func (s *search) begunNow(steps []step, layer int) bool {
	for i := range steps {
		switch {
		case steps[i].move >= 0:
			return false
		case steps[i].act >= 0 && s.acts[steps[i].act].layer == layer:
			return true
		}
	}
	return false
}

// firstDecor is the first layer of the wish that decorates; -1 for none.
func (s *search) firstDecor() int {
	for i, layer := range s.w.Layers {
		if layer.Medium >= 0 && s.t.decorates(s.w.Layers[i:i+1]) {
			return i
		}
	}
	return -1
}

// worksNow reports whether another medium in the place of a layer goes on the
// pot as it is without risk or question, in the same way or any, and the whole
// wish works with it.
func (s *search) worksNow(best []step, layer, medium int) bool {
	return s.worksNowAs(best, layer, s.t.inPlace(s.w.Layers[layer], medium)) || s.worksNowAs(best, layer, Layer{Medium: medium})
}

func (s *search) worksNowAs(best []step, layer int, as Layer) bool {
	other := s.another(s.w.with(swapped(s.w.Layers, layer, as)), safest)
	other.begin = layer
	at := other.run()
	if at < 0 {
		return false
	}
	if best == nil {
		return !s.t.worse(other.pathPeril(other.path(at), false), s.wishPeril())
	}
	return !s.t.worse(other.pathPeril(other.path(at), true), s.pathPeril(best, true))
}

// begins reports whether a step lays on the layer that the search has to begin
// with, without risk or question.
func (s *search) begins(next *step) bool {
	return next.act >= 0 && s.acts[next.act].layer == s.begin && worst(next.rules) == Yes && price(next.rules) == 0
}
