package oracle

import "slipbook/calculators/stage"

// move takes the pot over a transition of the table, if it may go there.
func (j *job) move(all []step, c condition, tr *stage.Transition) []step {
	if tr.From != c.state || !j.mayMove(c, tr) {
		return all
	}
	var v verdicts
	v.add(&tr.Rule)
	s, ok := j.close(v, c)
	if !ok {
		return all
	}
	s.what = tr.ID
	s.to.state, s.to.part = tr.To, 0
	if len(j.t.States[tr.To].Parts) > 0 {
		s.to.part = 1
	}
	s.fire = tr.Move == stage.Bisque || tr.Move == stage.Harden || tr.Move == stage.Fire
	switch tr.Move {
	case stage.Dry:
		s.to.damp = false
	case stage.Strip:
		s.work = true
		s.cost[Undone]++
		j.washOff(&s.to)
	case stage.Bisque, stage.Harden:
		s.cost[Firings]++
		s.to.raw = false
		j.bake(&s.to)
	case stage.Fire:
		s.cost[Firings]++
		s.to.raw = false
		j.melt(&s.to)
	}
	return append(all, s)
}

// mayMove reports whether the rules let a pot go over a transition (rules 6, 7
// and 8).
func (j *job) mayMove(c condition, tr *stage.Transition) bool {
	if tr.Move == stage.Dry {
		return c.rubber != under
	}
	if tr.Move == stage.Strip {
		return !c.raw && !j.begun(c)
	}
	if c.damp || c.rubber != none || c.heat > 0 || j.any(c, func(m *stage.Medium) bool { return m.Kind == stage.OnGlaze }) {
		return false
	}
	switch {
	case tr.Move == stage.Harden:
		return j.any(c, j.baked)
	case tr.Move == stage.Fire && j.is(c.state, bisque):
		return j.w.Bare
	case tr.Move == stage.Fire && j.is(c.state, glazeFired):
		return j.any(c, func(m *stage.Medium) bool { return m.Kind != stage.OnGlaze && m.Kind != stage.Resist })
	}
	return true
}

// begun reports whether anything of the wish is on the pot.
func (j *job) begun(c condition) bool {
	return c.done != 0 || c.coats[j.place(len(j.w.Layers))].how != absent
}

// any reports whether some loose coat is of a kind.
func (j *job) any(c condition, kind func(*stage.Medium) bool) bool {
	for i, k := range c.coats {
		if k.how == loose && kind(j.medium(i)) {
			return true
		}
	}
	return false
}

// baked reports whether bisque heat does something to a loose coat: fixes it or
// burns it off (rule 5).
func (j *job) baked(m *stage.Medium) bool {
	switch m.Kind {
	case stage.Clay, stage.Colour, stage.Powder:
		return m.Fixed == stage.Fixed
	}
	return m.Kind == stage.Resist
}

// bake is what bisque heat does.
func (j *job) bake(c *condition) {
	for i, k := range c.coats {
		if k.how == loose && j.baked(j.medium(i)) {
			c.coats[i].how = fixed
			if j.medium(i).Kind == stage.Resist {
				c.coats[i] = coat{}
			}
		}
	}
}

// melt is what the glaze firing does: it fixes everything.
func (j *job) melt(c *condition) {
	for i, k := range c.coats {
		if k.how == absent {
			continue
		}
		c.coats[i].how = fixed
		if k.how == loose && j.medium(i).Kind == stage.Resist {
			c.coats[i] = coat{}
		}
	}
}

// washOff takes the unfired glaze off, and with it all that is loose.
func (j *job) washOff(c *condition) {
	c.glazed, c.rubber = false, none
	for i, k := range c.coats {
		if k.how == unfired || k.how == loose {
			c.coats[i] = coat{}
		}
		c.coats[i].covered = false
	}
}

// turnOfHeat reports whether an on-glaze medium may go on: nothing is loose but
// what is fired with it, and no firing was as cool (rule 7).
func (j *job) turnOfHeat(c condition, m *stage.Medium) bool {
	other := j.any(c, func(o *stage.Medium) bool { return o.Kind != stage.OnGlaze || o.Heat != m.Heat })
	return !other && (c.heat == 0 || m.Heat < c.heat)
}

// fireOnGlaze fires loose on-glaze work of one heat, after which only cooler
// on-glaze firings may follow (rule 7).
func (j *job) fireOnGlaze(all []step, c condition) []step {
	if !j.is(c.state, glazeFired) || c.damp || c.rubber != none {
		return all
	}
	heat := 0
	for i, k := range c.coats {
		if k.how != loose {
			continue
		}
		m := j.medium(i)
		if m.Kind != stage.OnGlaze || heat > 0 && m.Heat != heat {
			return all
		}
		heat = m.Heat
	}
	if heat == 0 || c.heat > 0 && heat >= c.heat {
		return all
	}
	s := step{to: c, cost: Cost{Firings: 1, Actions: 1}, what: "on-glaze firing", peril: Peril{j.t.Fire.Hazards, j.t.Fire.Who}, work: true, fire: true}
	s.to.heat = heat
	for i, k := range c.coats {
		if k.how == loose {
			s.to.coats[i].how = fixed
		}
	}
	return append(all, s)
}
