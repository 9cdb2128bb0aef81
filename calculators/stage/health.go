package stage

// peril is what a way of doing something can do to people, and who may do it.
type peril struct {
	hazards Hazards
	who     Who
}

// join adds another peril.
func (p *peril) join(hazards Hazards, who Who) {
	p.hazards |= hazards
	p.who = max(p.who, who)
}

// worse reports whether one way is worse for health than another: it has a
// hazard to health that the other lacks, or fewer people may do it. Such a way
// is never offered instead of the other.
func (t *Table) worse(one, other peril) bool {
	for i := range t.Hazards {
		if t.Hazards[i].Health && one.hazards&^other.hazards>>i&1 == 1 {
			return true
		}
	}
	return one.who > other.who
}

// care is what a layer can do to whoever handles the pot while no firing has
// fixed it: of on-glaze colour, of powder and of a medium that students do not
// lay on alone, what that can do, and what a metal can do that was named.
func (s *search) care(layer int) (p peril) {
	if m := &s.t.Media[s.layers[layer]]; m.Who > Student || m.Kind == OnGlaze || m.Kind == Powder {
		p.join(m.Hazards, m.Who)
	}
	if s.metal(layer) != "" {
		p.join(s.t.Metals.Hazards, s.t.Metals.Who)
	}
	return p
}

// metal is the metal that was named of a layer, those on the pot first.
func (s *search) metal(layer int) string {
	if layer < s.before {
		return s.w.Already[layer].Metal
	}
	return s.w.Layers[layer-s.before].Metal
}

// poison words what some layers, or else the pot, hold of a metal that is never
// for food: "glaze with lead". It is empty where they hold none.
func (s *search) poison(layers []Layer) string {
	for _, layer := range layers {
		if s.t.neverFood(layer.Metal) {
			return s.t.named(layer)
		}
	}
	for _, coat := range s.w.Already {
		if s.t.neverFood(coat.Metal) {
			return s.t.named(Layer{Medium: coat.Medium, Metal: coat.Metal})
		}
	}
	return ""
}

// neverFood reports whether a metal that was named is never for food or drink.
func (t *Table) neverFood(metal string) bool {
	for _, word := range plain(metal) {
		if has(t.Metals.NeverFood, word) {
			return true
		}
	}
	return false
}

// powdery reports whether a layer lies on a pot as something that comes off: it is
// loose, or it is a coat of glaze that is not fired and lies open.
func (s *search) powdery(now *pot, layer int) bool {
	if now.loose&s.alike[layer] != 0 {
		return true
	}
	medium := s.layers[layer]
	return medium >= 0 && s.t.Media[medium].Kind == Glaze && now.state == s.coat && now.open&s.alike[layer] != 0
}

// carried is what the layers that come off a pot can do.
func (s *search) carried(now *pot) (p peril) {
	for i, care := range s.cares {
		if s.powdery(now, i) {
			p.join(care.hazards, care.who)
		}
	}
	return p
}

// guarded reports whether some work is not for a student alone, or wants a place
// of its own for the sake of health.
func (t *Table) guarded(p peril) bool {
	for i := range t.Hazards {
		if h := &t.Hazards[i]; h.Health && h.Place != "" && p.hazards>>i&1 == 1 {
			return true
		}
	}
	return p.who > Student
}

// peril is what a step can do to people: what it rests on, and what is loose on
// the pot, but for a firing, which is not done with hands.
func (s *search) peril(now *pot, next *step) (p peril) {
	if !s.fires(next) {
		p = s.carried(now)
	}
	for _, r := range next.rules {
		p.join(r.Hazards, r.Who)
	}
	switch {
	case next.act >= 0:
		p.join(s.t.actPeril(s.w.Layers, s.acts[next.act]))
	case next.extra == addGlaze:
		m := &s.t.Media[s.glaze]
		p.join(m.Hazards, m.Who)
	case next.extra == peelOff:
		for i, medium := range s.layers {
			if now.loose&s.alike[i]&s.skins != 0 && s.wasLaid(now, i) {
				p.join(s.t.Media[medium].Hazards, s.t.Media[medium].Who)
			}
		}
	}
	return p
}

// actPeril is what medium, ways and named metal of an act can do to people in
// any state, laid on or worked.
func (t *Table) actPeril(layers []Layer, a act) (Hazards, Who) {
	var p peril
	layer := layers[a.layer]
	if layer.Medium >= 0 {
		p.join(t.Media[layer.Medium].Hazards, t.Media[layer.Medium].Who)
	}
	if layer.Metal != "" {
		p.join(t.Metals.Hazards, t.Metals.Who)
	}
	for _, q := range a.ways {
		p.join(t.Techniques[q].Hazards, t.Techniques[q].Who)
	}
	return p.hazards, p.who
}

// pathPeril is what the work of a plan can do to people. Firings and drying
// come with every pot and count for nothing here, unless all is asked for; an
// on-glaze firing does not, and washing a glaze off is work.
func (s *search) pathPeril(steps []step, all bool) (p peril) {
	now := &s.from
	for i := range steps {
		if move := steps[i].move; all || move < 0 || s.t.Transitions[move].Move == Strip {
			q := s.peril(now, &steps[i])
			p.join(q.hazards, q.who)
		}
		now = &steps[i].to
	}
	return p
}

// wishPeril is what a wish can do to people, done now and as it is asked for:
// the measure for what is offered in its place.
func (s *search) wishPeril() (p peril) {
	p = s.carried(&s.from)
	for _, a := range s.acts {
		p.join(s.t.actPeril(s.w.Layers, a))
		for _, r := range s.rulesIn(a, s.w.State) {
			p.join(r.Hazards, r.Who)
		}
		if !a.bare && s.medium(a).Kind == OnGlaze {
			p.join(s.t.Fire.Hazards, s.t.Fire.Who)
		}
	}
	return p
}
