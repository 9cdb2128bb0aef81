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

// peril is what a step can do to people.
func (s *search) peril(next *step) (p peril) {
	for _, r := range next.rules {
		p.join(r.Hazards, r.Who)
	}
	switch {
	case next.act >= 0:
		p.join(s.t.actPeril(s.w.Layers, s.acts[next.act]))
	case next.extra == addGlaze:
		m := &s.t.Media[s.glaze]
		p.join(m.Hazards, m.Who)
	case next.extra == dryAgain && next.to.pending > 0: // what was put on harms until it is dry
		for i, medium := range s.layers {
			if medium >= 0 && s.t.Media[medium].Kind == OnGlaze && next.to.loose.has(i) {
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
	for i := range steps {
		if move := steps[i].move; all || move < 0 || s.t.Transitions[move].Move == Strip {
			q := s.peril(&steps[i])
			p.join(q.hazards, q.who)
		}
	}
	return p
}

// wishPeril is what a wish can do to people, done now and as it is asked for:
// the measure for what is offered in its place.
func (s *search) wishPeril() (p peril) {
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
