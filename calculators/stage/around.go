package stage

// around answers a wish that cannot be had: the first layer that finds no
// place, the rule that keeps it out, and the nearest wish that works, tried in
// this order: the same media in another order, another medium of the same
// look, one layer left out, a new pot.
func (t *Table) around(w Wish) Plan {
	c := t.conflict(w)
	for _, try := range t.repairs() {
		near, changed := try(w, c.Layer)
		if changed == "" {
			continue
		}
		s := t.newSearch(near)
		p := t.tell(s, s.run())
		c.Changed, c.Nearest = changed, t.say(near)
		p.Conflict = c
		return p
	}
	return Plan{Conflict: c}
}

// repairs are the ways round a conflict, the nearest first. Another way of
// working changes least of all after another order, so it comes before another
// medium.
func (t *Table) repairs() []func(Wish, int) (Wish, string) {
	return []func(Wish, int) (Wish, string){t.reordered, t.reworked, t.replaced, t.shortened, t.afresh}
}

// conflict finds the first layer that cannot be added to those before it, and
// the rule that says so on the pot that would otherwise be the cheapest.
func (t *Table) conflict(w Wish) *Conflict {
	k := 0
	for ; k+1 < len(w.Layers); k++ {
		if first := w.upTo(k + 1); !t.possible(first) {
			break
		}
	}
	s := t.newSearch(w.upTo(k + 1))
	s.blind = true
	s.run()
	c := &Conflict{Layer: k}
	t.blame(s, s.soonest(k), w.Layers[k], c)
	return c
}

// soonest is the pot with the first k layers on that takes the fewest steps
// from now: where the student would stand and ask. Where they cannot be put on
// before another one, it is the pot as it is now.
func (s *search) soonest(k int) pot {
	best, fewest := s.start(), -1
	for _, n := range s.reached {
		if n.pot.done != 1<<k-1 {
			continue
		}
		if steps := n.cost.actions(); fewest < 0 || steps < fewest {
			best, fewest = n.pot, steps
		}
	}
	return best
}

// blame words why a layer does not go on a pot: what lies loose below it first,
// since that holds in every state, then the technique, then the state.
func (t *Table) blame(s *search, p pot, layer Layer, c *Conflict) {
	m := &t.Media[layer.Medium]
	on := " on a pot that is “" + lower(t.States[p.state].Name) + "”."
	rules, _ := s.rules(p, layer)
	for _, i := range []int{2, 0, 1} {
		r := rules[i]
		if r == nil || r.Verdict != Never {
			continue
		}
		switch i {
		case 0:
			c.What = m.Name + on
		case 1:
			c.What = t.Techniques[layer.Technique].Name + on
		case 2:
			c.What = m.Name + " over " + lower(t.Media[s.w.Layers[p.top-1].Medium].Name) + " that no firing has fixed."
		}
		c.Rule, c.Physics, c.House = r.Reason, r.Basis == Physics, i < 2 && r.Basis != Physics
		return
	}
	switch {
	case !s.inTime(p, m) && p.top > 0:
		c.What = m.Name + " after " + lower(t.Media[s.w.Layers[p.top-1].Medium].Name) + "."
		c.Rule, c.Physics = "After the glaze firing each firing is cooler than the last: this one would melt what is there.", true
	case s.glaze < 0 && !s.w.Bare:
		c.What = m.Name + on
		c.Rule = "The table has no clear glaze to finish the pot with."
	default:
		c.What = m.Name + on
		c.Rule = "It can be put on, but what has to follow cannot: no way leads from there to a finished pot."
	}
}

// possible says whether a wish has a plan.
func (t *Table) possible(w Wish) bool { return t.newSearch(w).run() >= 0 }

// upTo is a wish with its first n layers only.
func (w Wish) upTo(n int) Wish {
	w.Layers = w.Layers[:n]
	return w
}

// with is a wish with layers of its own.
func (w Wish) with(layers []Layer) Wish {
	w.Layers = layers
	return w
}

// reordered looks for a plan with the same layers in any order.
func (t *Table) reordered(w Wish, _ int) (Wish, string) {
	if w.Apart || len(w.Layers) < 2 {
		return w, ""
	}
	s := t.newSearch(w)
	s.free = true
	at := s.run()
	if at < 0 {
		return w, ""
	}
	var layers []Layer
	for _, step := range s.steps(at) {
		if step.layer >= 0 && step.layer != added {
			layers = append(layers, w.Layers[step.layer])
		}
	}
	return w.with(layers), "The same in another order."
}

// reworked looks for a plan with the technique of one layer left open, the
// layer in the way first.
func (t *Table) reworked(w Wish, blocked int) (Wish, string) {
	for _, i := range w.from(blocked) {
		layer := w.Layers[i]
		if layer.Technique < 0 {
			continue
		}
		near := w.with(swapped(w.Layers, i, Layer{Medium: layer.Medium, Technique: -1}))
		if t.possible(near) {
			return near, t.Media[layer.Medium].Name + " in another way than " + lower(t.Techniques[layer.Technique].Name) + "."
		}
	}
	return w, ""
}

// replaced looks for the best plan with one layer of another medium of the
// same look, the layer in the way first; work on the fired glaze stands in only
// where nothing else does.
func (t *Table) replaced(w Wish, blocked int) (Wish, string) {
	for _, i := range w.from(blocked) {
		for _, late := range []bool{false, true} {
			if near, changed := t.standIn(w, i, late); changed != "" {
				return near, changed
			}
		}
	}
	return w, ""
}

// standIn looks for the best plan with another medium of the same look for one
// layer, among those that go on the fired glaze or among the others.
func (t *Table) standIn(w Wish, i int, late bool) (Wish, string) {
	var best Wish
	bestCost, changed := cost(0), ""
	old := &t.Media[w.Layers[i].Medium]
	for j := range t.Media {
		m := &t.Media[j]
		if m.Look == "" || m.Look != old.Look || j == w.Layers[i].Medium || (m.Kind == OnGlaze) != late {
			continue
		}
		if i > 0 && w.Layers[i-1].Medium == j || i+1 < len(w.Layers) && w.Layers[i+1].Medium == j {
			continue // the same twice is no wish
		}
		layer, words := Layer{Medium: j, Technique: -1}, m.Name+" instead of "+lower(old.Name)
		if q := w.Layers[i].Technique; q >= 0 && t.Techniques[q].serves(m.Base) && t.possible(w.with(swapped(w.Layers, i, Layer{Medium: j, Technique: q}))) {
			layer.Technique = q
		} else if q >= 0 {
			words += ", in another way than " + lower(t.Techniques[q].Name)
		}
		near := w.with(swapped(w.Layers, i, layer))
		s := t.newSearch(near)
		if at := s.run(); at >= 0 && (changed == "" || s.reached[at].cost < bestCost) {
			best, bestCost = near, s.reached[at].cost
			changed = words + "."
		}
	}
	return best, changed
}

// from lists the layers, one of them first.
func (w Wish) from(first int) []int {
	order := []int{first}
	for i := range w.Layers {
		if i != first {
			order = append(order, i)
		}
	}
	return order
}

func swapped(layers []Layer, i int, with Layer) []Layer {
	changed := append([]Layer(nil), layers...)
	changed[i] = with
	return changed
}

// shortened looks for a plan with one layer left out, the one in the way
// first.
func (t *Table) shortened(w Wish, blocked int) (Wish, string) {
	if len(w.Layers) < 2 {
		return w, ""
	}
	for _, i := range w.from(blocked) {
		layers := append(append([]Layer(nil), w.Layers[:i]...), w.Layers[i+1:]...)
		if near := w.with(layers); t.possible(near) {
			return near, "Without " + lower(t.Media[w.Layers[i].Medium].Name) + "."
		}
	}
	return w, ""
}

// afresh looks for a plan on a new pot.
func (t *Table) afresh(w Wish, _ int) (Wish, string) {
	if w.State == 0 {
		return w, ""
	}
	w.State = 0
	if !t.possible(w) {
		return w, ""
	}
	return w, "On a new pot, begun while it is “" + lower(t.States[0].Name) + "”."
}

// say words a wish.
func (t *Table) say(w Wish) string {
	text := ""
	for i, layer := range w.Layers {
		if i > 0 {
			text += ", "
		}
		text += lower(t.Media[layer.Medium].Name)
		if layer.Technique >= 0 {
			text += " (" + lower(t.Techniques[layer.Technique].Name) + ")"
		}
	}
	return text
}
