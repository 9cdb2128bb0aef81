package stage

// What the property tests need to see.

// Cost gives the cost of the best plan.
func (t *Table) Cost(w Wish) (uint64, bool) {
	s := t.newSearch(w)
	at := s.run()
	if at < 0 {
		return 0, false
	}
	return uint64(s.reached[at].cost), true
}

// Nearest gives the wish that a conflict offers instead.
func (t *Table) Nearest(w Wish) (Wish, bool) {
	c := t.conflict(w)
	for _, try := range t.repairs() {
		if near, changed := try(w, c.Layer); changed != "" {
			return near, true
		}
	}
	return w, false
}

// Relax finds the cheapest finish by relaxation: the costs of all conditions
// are lowered until none falls any more, compared cost by cost, never packed.
func (t *Table) Relax(w Wish) (best [5]int, exists bool) {
	s := t.newSearch(w)
	costs := map[pot][5]int{s.start(): {}}
	for changed := true; changed; {
		changed = false
		for p, c := range costs {
			s.ways = s.ways[:0]
			s.look(p)
			for _, way := range s.ways {
				sum := [5]int{c[0] + way.cost.risky(), c[1] + way.cost.questions(), c[2] + way.cost.firings(), c[3] + way.cost.away(), c[4] + way.cost.actions()}
				if old, known := costs[way.to]; !known || less(sum, old) {
					costs[way.to] = sum
					changed = true
				}
			}
		}
	}
	for p, c := range costs {
		if s.finished(p) && (!exists || less(c, best)) {
			best, exists = c, true
		}
	}
	return best, exists
}

func less(a, b [5]int) bool {
	for i := range a {
		if a[i] != b[i] {
			return a[i] < b[i]
		}
	}
	return false
}

// Walk follows the best plan with rules written anew, from what the house says
// about pots and kilns, and says the first thing that is wrong.
func (t *Table) Walk(w Wish) string {
	s := t.newSearch(w)
	at := s.run()
	state, damp, glazed := w.State, false, w.State >= 4
	loose := map[int]bool{}
	var order []int
	heat := 99
	for _, way := range s.steps(at) {
		switch {
		case way.layer >= 0:
			layer := Layer{Medium: s.glaze, Technique: -1}
			if way.layer != added {
				layer = w.Layers[way.layer]
				order = append(order, way.layer)
			}
			m := &t.Media[layer.Medium]
			rule := m.On[state]
			if w.Body >= 0 {
				for _, c := range t.Bodies[w.Body].Changes {
					if c.Medium == m.Base && c.State == state {
						rule = c.Rule
					}
				}
			}
			if rule.Verdict == Never {
				return m.Name + " is put on in a state that never takes it"
			}
			if layer.Technique >= 0 && t.Techniques[layer.Technique].On[state].For(m.Base).Verdict == Never {
				return t.Techniques[layer.Technique].Name + " in a state that never allows it"
			}
			if m.Kind == Glaze && layer.Technique >= 0 && t.Techniques[layer.Technique].ID == "brushing" && !w.Apart && len(order) > 1 {
				under := order[len(order)-2]
				if kind := t.Media[w.Layers[under].Medium].Kind; loose[under] && (kind == Powder || kind == Colour) {
					return "a glaze is brushed over loose colour"
				}
			}
			damp = damp || state < 3
			switch m.Kind {
			case Glaze:
				if state == 5 && heat != 99 {
					return "glaze after an on-glaze firing"
				}
				state, glazed = 4, true
			case OnGlaze:
				if m.Heat >= heat {
					return "an on-glaze firing is not cooler than the last"
				}
				loose[way.layer] = true
			default:
				loose[way.layer] = true
			}
		case way.other == dryAgain:
			damp = false
		case way.other == onGlaze:
			for i := range loose {
				if m := t.Media[w.Layers[i].Medium]; m.Kind == OnGlaze {
					heat = min(heat, m.Heat)
					delete(loose, i)
				}
			}
		default:
			tr := t.Transitions[way.move]
			if tr.From != state {
				return tr.ID + " from the wrong state"
			}
			switch tr.Move {
			case Dry:
				damp = false
			case Bisque:
				if damp || state != 2 {
					return "a damp pot goes into the kiln"
				}
				for i := range loose {
					if t.Media[w.Layers[i].Medium].Kind != Powder {
						delete(loose, i)
					}
				}
			case Harden:
				loose = map[int]bool{}
			case Strip:
				glazed = false
			case Fire:
				if damp && state < 3 || heat != 99 {
					return "the glaze firing comes too early or too late"
				}
				loose = map[int]bool{}
			}
			state = tr.To
		}
	}
	if !w.Apart {
		for i, layer := range order {
			if i != layer {
				return "the layers lie in another order"
			}
		}
	}
	if len(order) != len(w.Layers) || state != 5 || len(loose) > 0 || !glazed && !w.Bare {
		return "the pot is not finished"
	}
	return ""
}
