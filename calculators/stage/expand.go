package stage

// expand gathers every step out of a pot: an act of the wish, the glaze that
// is added, a transition, drying, stiffening, and an on-glaze firing.
func (s *search) expand(p pot) {
	for i := range s.acts {
		if s.turn(&p, i) {
			s.do(&p, i)
		}
	}
	s.addGlaze(&p)
	for i := range s.t.Transitions {
		s.transit(&p, i)
	}
	s.stiffen(&p)
	s.peelOff(&p)
	if p.damp && s.mayDry(&p) && p.skin != wornOver {
		to := p
		to.damp = false
		s.add(step{to: to, cost: oneAction, act: -1, move: -1, extra: dryAgain})
	}
	if p.pending > 0 && !p.damp && p.skin == noSkin && p.pending != twoHeats && (p.heat == 0 || p.pending < p.heat) {
		to := p
		to.heat, to.pending = p.pending, 0
		to.loose &^= s.of(OnGlaze)
		s.add(step{to: to, cost: oneAction + oneFiring, act: -1, move: -1, extra: onGlazeFire, rules: []ground{{&s.t.Fire, ofMove, 0}}})
	}
	if p == s.from {
		for i := range s.steps {
			s.steps[i].rules = append(s.steps[i].rules, s.asks...)
			s.steps[i].cost += price(s.asks)
		}
	}
}

// asksFirst are the questions that come before the first step, whatever it is:
// about each metal that was named, and on-glaze colour that no firing has fixed
// is the instructor's.
func (s *search) asksFirst() (asks []ground) {
	for _, coat := range s.w.Already {
		if coat.Metal != "" && s.t.Metals.Ask != "" {
			asks = append(asks, ground{&Rule{Ask: join(s.t.fill("you-wrote-coat", "metal", coat.Metal), s.t.Metals.Ask)}, ofCoat, coat.Medium})
		}
		if m := &s.t.Media[coat.Medium]; m.Kind == OnGlaze && coat.Loose {
			asks = append(asks, ground{&Rule{Ask: s.t.fill("loose-on-glaze", "medium", m.Name)}, ofCoat, coat.Medium})
		}
	}
	return asks
}

func (s *search) add(next step) { s.steps = append(s.steps, next) }

// of are the layers of a kind.
func (s *search) of(kind Kind) set {
	found := set(0)
	for i, medium := range s.layers {
		if medium >= 0 && s.t.Media[medium].Kind == kind {
			found |= s.alike[i]
		}
	}
	return found
}

// turn reports whether an act may come next: those of one layer in their
// order, and where layers lie on one another, one layer after the other.
func (s *search) turn(p *pot, i int) bool {
	if p.done.has(i) || !s.acts[i].first && !p.done.has(i-1) {
		return false
	}
	switch {
	case s.w.Apart:
		return true
	case !s.free:
		return p.done == 1<<i-1
	case !s.acts[i].first:
		return true
	}
	for j := range s.acts {
		if j != i && p.done.has(j) && (!s.acts[j].last && !p.done.has(j+1) || s.covers(j, i)) {
			return false // another layer is not finished, or this one would come to lie on its glaze
		}
	}
	return true
}

// covers reports whether an act lays a glaze on that the wish has above the
// layer of another: what shall be seen through a glaze never ends on it.
func (s *search) covers(glaze, i int) bool {
	a, g := s.acts[i], s.acts[glaze]
	if a.layer >= g.layer || g.bare || g.takes || s.medium(g).Kind != Glaze {
		return false
	}
	return a.bare || s.medium(a).Kind != OnGlaze
}

// do does an act of the wish, if the table lets it.
func (s *search) do(p *pot, i int) {
	a := s.acts[i]
	if (a.takes || a.bare) && !s.there(p, a) || !a.takes && !a.bare && !s.inTime(p, s.medium(a)) {
		return
	}
	rules := s.rules(p, a)
	if worst(rules) == Never {
		return
	}
	rules, ready := s.inPart(p, rules)
	if !ready {
		return
	}
	next := step{to: *p, act: i, move: -1, rules: rules}
	if !a.takes && !a.bare {
		s.lay(&next.to, s.medium(a), a.layer+s.before)
	}
	next.to.done |= 1 << i
	next.cost = oneAction + s.far(p.state, a) + price(rules)
	s.add(next)
}

// inPart adds what follows from the parts of the state that the rules want. The
// pot is not ready for them while one of those is still to come; that one is
// past is a risk; and where the student did not say how far the clay is, clay
// softer than firm is a question.
func (s *search) inPart(p *pot, rules []ground) (with []ground, ready bool) {
	parts, past, soft := len(s.t.States[p.state].Parts), 0, 0
	for _, r := range rules {
		switch wanted := int(r.Part); {
		case parts == 0 || wanted == 0:
		case wanted > int(p.part)+1:
			return rules, false
		case wanted <= int(p.part):
			past = wanted
		case s.w.Part == 0 && int(p.state) == s.w.State && wanted <= parts/2:
			soft = wanted
		}
	}
	if past > 0 {
		rules = append(rules, ground{&s.tooStiff, ofPart, past})
	}
	if soft > 0 {
		rules = append(rules, ground{&s.stillSoft, ofPart, soft})
	}
	return rules, true
}

// there reports whether what an act works is there: the clay itself until
// on-glaze work begins, the coat of its layer, not covered and not fixed by a
// firing.
func (s *search) there(p *pot, a act) bool {
	if a.bare {
		return p.pending == 0 && p.heat == 0
	}
	if s.medium(a).Kind == Glaze {
		return p.state == s.coat
	}
	return p.open&p.loose&s.alike[a.layer+s.before] != 0
}

// medium is what an act lays on or works.
func (s *search) medium(a act) *Medium { return &s.t.Media[s.w.Layers[a.layer].Medium] }

// inTime keeps a coat of glaze off what is still damp, and on-glaze work in its
// order: on a finished, glazed pot, each firing cooler than the one before.
func (s *search) inTime(p *pot, m *Medium) bool {
	switch {
	case m.Kind == OnGlaze:
		return (p.pending == 0 || int(p.pending) == m.Heat) && (p.heat == 0 || m.Heat < int(p.heat)) && p.loose&^s.of(OnGlaze) == 0
	case p.pending > 0 || p.heat > 0:
		return false
	case m.Kind == Glaze && int(s.coat) == len(s.t.States): // the table has no pot in unfired glaze
		return false
	}
	return m.Kind != Glaze || !p.damp || !s.mayDry(p)
}

// lay puts a layer on a pot; layer -1 is the glaze that is added.
func (s *search) lay(p *pot, m *Medium, layer int) {
	p.damp = true
	p.skin = p.skin.under(m, true)
	switch m.Kind {
	case Glaze:
		p.green = p.green || s.raw>>p.state&1 == 1
		p.state, p.part, p.glazed = s.coat, 0, true
		p.open &= s.coveredNot(layer)
		if layer >= 0 {
			p.open |= s.alike[layer]
		}
		return
	case OnGlaze:
		p.pending = uint8(m.Heat)
	}
	p.loose |= s.alike[layer]
	p.open |= s.alike[layer]
}

// coveredNot are the layers that a coat of glaze leaves open: resists, and those
// on places of their own beside it.
func (s *search) coveredNot(glaze int) set {
	if s.w.Apart && glaze >= 0 {
		return s.resist | (1<<len(s.layers) - 1<<s.before)
	}
	return s.resist
}

// far is how many states away from the best one a layer goes on: that of its
// way of working, or else of its medium. A pot that wore a coat of glaze from
// the start is as near as a layer gets: the states before are past.
func (s *search) far(state uint8, a act) cost {
	best := s.best(a)
	if best < 0 || state == s.coat && s.w.State == int(s.coat) {
		return 0
	}
	away := int(state) - best
	return cost(max(away, -away)) * oneAway
}

// best is the state in which an act is done best; -1 where none is named. What
// takes away from a coat goes by the coat.
func (s *search) best(a act) int {
	if a.takes {
		return -1
	}
	for _, q := range a.ways {
		if best := s.t.Techniques[q].Best; best >= 0 {
			return best
		}
	}
	if a.bare {
		return -1
	}
	return s.medium(a).Best
}

// addGlaze puts on the glaze that nobody wished for but the pot needs: over
// all colour, under all on-glaze work, and dipped or poured, so that it never
// disturbs what lies under it.
func (s *search) addGlaze(p *pot) {
	if p.glazed || s.w.Bare || s.glaze < 0 || !s.under(p) {
		return
	}
	m := &s.t.Media[s.glaze]
	rules := append([]ground{{s.mediumRule(m, int(p.state)), ofMedium, s.glaze}}, s.overRules(p, m, -1, nil)...)
	rules, ready := s.inPart(p, rules)
	if worst(rules) == Never || !ready || !s.inTime(p, m) {
		return
	}
	next := step{to: *p, act: -1, move: -1, extra: addGlaze, rules: rules}
	s.lay(&next.to, m, -1)
	away := int(p.state) - m.Best
	next.cost = oneAction + cost(max(away, -away))*oneAway + price(rules)
	s.add(next)
}

// under reports whether everything that belongs under a glaze is on: all that
// is not on-glaze work, and where layers lie on one another in their order, all
// that comes before the first of it.
func (s *search) under(p *pot) bool {
	if p.done|s.onGlaze == s.all() {
		return true
	}
	for i := range s.acts {
		if !p.done.has(i) {
			return !s.free && !s.w.Apart && s.onGlaze.has(i)
		}
	}
	return true
}

// peelOff takes the resists off that are peeled: while what lies over them is
// damp, or when nothing more is to be laid on.
func (s *search) peelOff(p *pot) {
	if p.skin == noSkin || p.skin == openSkin && !s.laidAll(p) {
		return
	}
	to := *p
	to.skin = noSkin
	to.loose &^= s.skins
	to.open &^= s.skins
	s.add(step{to: to, cost: oneAction, act: -1, move: -1, extra: peelOff})
}

// laidAll reports whether every layer of the wish is on the pot.
func (s *search) laidAll(p *pot) bool {
	for i, a := range s.acts {
		if !a.takes && !a.bare && !p.done.has(i) {
			return false
		}
	}
	return true
}

// stiffen lets the clay pass into a later part of its state, where an act of
// the wish, or the glaze that is added, wants that.
func (s *search) stiffen(p *pot) {
	for part := int(p.part) + 1; part < len(s.t.States[p.state].Parts) && p.skin != wornOver; part++ {
		if s.waits>>(part+1)&1 == 1 {
			to := *p
			to.part = uint8(part)
			s.add(step{to: to, cost: oneAction, act: -1, move: -1, extra: stiffen})
		}
	}
}

// mayDry reports whether drying is a step of its own: fired clay, and clay that
// is bone dry, dry as they stand; clay that is softer moves on instead.
func (s *search) mayDry(p *pot) bool {
	return s.raw>>p.state&1 == 0 || s.ready>>p.state&1 == 1
}

// transit moves a pot on by a transition of the table.
func (s *search) transit(p *pot, i int) {
	tr := &s.t.Transitions[i]
	if tr.From != int(p.state) || tr.Verdict == Never || !s.mayMove(p, tr.Move) {
		return
	}
	to := *p
	to.state, to.part = uint8(tr.To), 0
	switch tr.Move {
	case Dry:
		to.damp = false
	case Bisque, Harden:
		to.loose &= s.kept
	case Strip:
		to.glazed, to.damp, to.loose, to.open, to.skin = false, false, 0, s.firm, noSkin
	case Fire:
		to.loose, to.green = 0, false
	}
	to.open &^= s.resist &^ to.loose
	s.add(step{to: to, cost: tr.price(), act: -1, move: i, rules: []ground{{&tr.Rule, ofMove, i}}})
}

// price is what a transition costs.
func (tr *Transition) price() cost {
	c := oneAction + price([]ground{{&tr.Rule, ofMove, 0}})
	switch tr.Move {
	case Bisque, Harden, Fire:
		c += oneFiring
	case Strip:
		c += oneUndone
	}
	return c
}

// mayMove reports whether a pot is ready for a move.
func (s *search) mayMove(p *pot, move Move) bool {
	if p.skin != noSkin && move.fires() || p.skin == wornOver && move == Dry {
		return false
	}
	switch move {
	case Bisque:
		return !p.damp
	case Harden:
		return !p.damp && p.loose&^s.kept != 0
	case Strip: // never from unfired clay, and never once anything of the wish is on
		return p.glazed && !p.green && p.done == 0 && p.heat == 0
	case Fire:
		return s.mayFire(p)
	}
	return true
}

// mayFire reports whether a pot may go into the glaze firing: dry, before any
// on-glaze firing, and with a coat of glaze, with colour for a second firing on
// a finished pot, or bare on purpose.
func (s *search) mayFire(p *pot) bool {
	if p.damp || p.pending > 0 || p.heat > 0 {
		return false
	}
	if p.state == s.last {
		return p.loose&^s.resist != 0
	}
	return p.state == s.coat || s.w.Bare
}
