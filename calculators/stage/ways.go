package stage

// look gathers every way from a pot: putting a layer on, moving on by a
// transition, and the two steps that no row of the table is for.
func (s *search) look(p pot) {
	for i := range s.w.Layers {
		if p.done>>i&1 == 0 && (s.free || s.w.Apart || s.next(p) == i) {
			s.lay(p, i)
		}
	}
	s.addGlaze(p)
	for i := range s.t.Transitions {
		s.transit(p, i)
	}
	if p.damp && (s.ready>>p.state&1 == 1 || p.green && p.state == s.coat) {
		p2 := p
		p2.damp = false
		s.ways = append(s.ways, way{to: p2, cost: oneAction, layer: -1, move: -1, other: dryAgain})
	}
	if p.pending > 0 {
		p2 := p
		p2.heat, p2.pending = p.pending, 0
		p2.loose &^= s.kinds[OnGlaze]
		s.ways = append(s.ways, way{to: p2, cost: oneAction + oneFiring, layer: -1, move: -1, other: onGlaze})
	}
}

// next is the layer whose turn it is where they lie on one another in order.
func (s *search) next(p pot) int {
	n := 0
	for p.done>>n&1 == 1 {
		n++
	}
	return n
}

// lay puts a layer of the wish on, if the table lets it.
func (s *search) lay(p pot, i int) {
	layer := s.w.Layers[i]
	m := &s.t.Media[layer.Medium]
	rules, allowed := s.rules(p, layer)
	if !allowed || !s.inTime(p, m) {
		return
	}
	to := s.after(p, m)
	to.done |= 1 << i
	to.wished = to.wished || m.Kind == Glaze
	s.remember(&to, i, m)
	s.put(way{to: to, layer: i, move: -1, rules: rules}, s.far(p.state, m))
}

// remember notes what the layer just put on means for those to come. On places
// of their own layers do not meet: only whether something of a kind is loose
// counts there, so that pots which differ in nothing else are one to the search.
func (s *search) remember(to *pot, i int, m *Medium) {
	loose := uint8(1) << i
	if s.w.Apart {
		loose = s.kinds[m.Kind] & -s.kinds[m.Kind]
	} else {
		to.top = uint8(i) + 1
	}
	if m.Kind != Glaze {
		to.loose |= loose
	}
}

// inTime keeps on-glaze work in its order: on a finished, glazed pot, each
// firing cooler than the one before.
func (s *search) inTime(p pot, m *Medium) bool {
	if m.Kind != OnGlaze {
		return p.pending == 0 && (p.heat == 0 || m.Kind != Glaze)
	}
	return (p.pending == 0 || int(p.pending) == m.Heat) && (p.heat == 0 || m.Heat < int(p.heat))
}

// after is the pot once a medium is on it.
func (s *search) after(p pot, m *Medium) pot {
	if s.raw>>p.state&1 == 1 {
		p.damp = true
	}
	p.painted = p.painted || p.state == s.coat && m.Kind != Glaze
	switch m.Kind {
	case Glaze:
		p.green = p.green || s.raw>>p.state&1 == 1
		p.state, p.glazed = s.coat, true
	case OnGlaze:
		p.pending = uint8(m.Heat)
	}
	return p
}

// addGlaze puts on the glaze that nobody wished for but the pot needs: over
// all colour, under all on-glaze work, and dipped or poured, so that it never
// disturbs what lies under it.
func (s *search) addGlaze(p pot) {
	if p.glazed || s.w.Bare || s.glaze < 0 || !s.under(p) {
		return
	}
	m := &s.t.Media[s.glaze]
	rules, allowed := s.rules(p, Layer{Medium: s.glaze, Technique: -1})
	if allowed && s.inTime(p, m) {
		to := s.after(p, m)
		to.top = 0
		s.put(way{to: to, layer: added, move: -1, rules: rules}, s.far(p.state, m))
	}
}

// under says whether everything that belongs under a glaze is on: where the
// layers lie on one another, all that come before the first on-glaze one.
func (s *search) under(p pot) bool {
	if p.done|s.kinds[OnGlaze] == s.all() {
		return true
	}
	next := s.next(p)
	return !s.free && !s.w.Apart && s.t.Media[s.w.Layers[next].Medium].Kind == OnGlaze
}

// far is how many states away from its best a medium goes on. Of a pot that
// wears an unfired coat which is not in the way, the states before are past:
// the coat is then as near as a medium gets to its best.
func (s *search) far(state uint8, m *Medium) cost {
	if state == s.coat && s.worn {
		return 0
	}
	away := int(state) - m.Best
	if away < 0 {
		away = -away
	}
	return cost(away) * oneAway
}

// put adds a way that puts something on, at the cost of its worst rule.
func (s *search) put(w way, away cost) {
	w.cost = oneAction + away + w.price()
	s.ways = append(s.ways, w)
}

// price is what the rules of a step add to its cost: it is risky, or each label
// is a question of its own. A risky step asks its questions too, but they do not
// count: a risk that is loosened to a question must never make a plan worse.
func (w *way) price() cost {
	if w.worst() == Risky {
		return oneRisk
	}
	return cost(w.asks()) * oneLabel
}

// asks is how many questions to the label a step puts.
func (w *way) asks() int {
	n := 0
	for _, r := range w.rules {
		if r != nil && r.Verdict == Label {
			n++
		}
	}
	return n
}

// worst is the worst verdict of the rules of a step.
func (w *way) worst() Verdict {
	worst := Yes
	for _, r := range w.rules {
		if r != nil && r.Verdict > worst {
			worst = r.Verdict
		}
	}
	return worst
}

// transit moves a pot on by a transition of the table.
func (s *search) transit(p pot, i int) {
	tr := &s.t.Transitions[i]
	if tr.From != int(p.state) || tr.Verdict == Never || !s.mayMove(p, tr) {
		return
	}
	to := p
	to.state = uint8(tr.To)
	switch tr.Move {
	case Dry:
		to.damp = false
	case Bisque:
		to.loose &= s.kinds[Powder] | s.kinds[Resist]
	case Harden:
		to.loose = 0
	case Strip:
		to.glazed, to.top = false, 0
	case Fire:
		to.loose, to.green, to.painted = 0, false, false
	}
	w := way{to: to, cost: tr.price(), layer: -1, move: i}
	w.rules[0] = &tr.Rule
	s.ways = append(s.ways, w)
}

// price is what a transition costs.
func (tr *Transition) price() cost {
	w := way{}
	w.rules[0] = &tr.Rule
	c := oneAction + w.price()
	if tr.Move == Bisque || tr.Move == Harden || tr.Move == Fire {
		c += oneFiring
	}
	return c
}

// mayMove says whether a pot is ready for a transition.
func (s *search) mayMove(p pot, tr *Transition) bool {
	switch tr.Move {
	case Bisque:
		return !p.damp
	case Harden:
		return p.loose != 0
	case Strip: // never from unfired clay, never with anything on the coat, never a glaze of the wish
		return s.block && p.glazed && !p.green && !p.painted && !p.wished && p.loose == 0 && p.heat == 0
	case Fire:
		return p.pending == 0 && p.heat == 0 && (!p.green || !p.damp) && (p.state == s.coat || s.w.Bare)
	}
	return true
}

// inTheWay says whether a coat of unfired glaze stands in the way of the wish:
// some layer, a glaze included, may not simply go on it, or not on the layer
// before it while that is loose. A wash that the table lets onto the glaze is no
// reason to wash the glaze off.
func (s *search) inTheWay() bool {
	on := pot{state: s.coat}
	for i, layer := range s.w.Layers {
		m := &s.t.Media[layer.Medium]
		if m.Kind == OnGlaze {
			continue
		}
		w := way{}
		w.rules, _ = s.rules(on, layer)
		if w.worst() != Yes {
			return true
		}
		s.remember(&on, i, m)
	}
	return false
}

// rules gathers what the table says of a layer on a pot: of the medium in this
// state, of the technique in this state, and of the medium on what lies there
// loose. The answer is false where one of them says never.
func (s *search) rules(p pot, layer Layer) (rules [3]*Rule, allowed bool) {
	m := &s.t.Media[layer.Medium]
	rules[0] = s.mediumRule(m, int(p.state))
	if layer.Technique >= 0 {
		rules[1] = s.t.Techniques[layer.Technique].On[p.state].For(m.Base)
	}
	rules[2] = s.overRule(p, layer)
	for _, r := range rules {
		if r != nil && r.Verdict == Never {
			return rules, false
		}
	}
	return rules, true
}

// mediumRule is the rule of a medium in a state, for the clay in hand.
func (s *search) mediumRule(m *Medium, state int) *Rule {
	if s.w.Body >= 0 {
		for i := range s.t.Bodies[s.w.Body].Changes {
			c := &s.t.Bodies[s.w.Body].Changes[i]
			if c.Medium == m.Base && c.State == state {
				return &c.Rule
			}
		}
	}
	return &m.On[state]
}

// overRule is the rule of a layer on the one below, while that is not fixed;
// nil where nothing loose lies below or the table has no such row.
func (s *search) overRule(p pot, layer Layer) *Rule {
	o := s.lyingUnder(p, layer)
	if o == nil {
		return nil
	}
	if layer.Technique >= 0 && has(o.Unless, s.t.Techniques[layer.Technique].ID) {
		wait := o.Rule
		wait.Verdict = Never
		return &wait
	}
	return &o.Rule
}

// lyingUnder is the row of the table about a layer on the loose one below it.
func (s *search) lyingUnder(p pot, layer Layer) *Over {
	if p.top == 0 || s.w.Apart || p.loose>>(p.top-1)&1 == 0 {
		return nil
	}
	under := s.t.Media[s.w.Layers[p.top-1].Medium].Base
	above := s.t.Media[layer.Medium].Base
	for i := range s.t.Overs {
		if o := &s.t.Overs[i]; o.Under == under && o.Above == above {
			return o
		}
	}
	return nil
}
