package stage

// heuristic is what a finished pot must still cost, at the least, in the order
// of the search. It never says too much, and falls by no more than each step
// costs; so the first finished pot that is closed is the cheapest.
type heuristic struct {
	doing  [][]cost // by act, by state: in the best state that can still be reached
	moving []cost   // by state: the transitions to a finished pot
}

func (s *search) newHeuristic() (h heuristic) {
	states := len(s.t.States)
	h.moving = make([]cost, states)
	for i := range h.moving {
		h.moving[i] = unreachable
	}
	if int(s.last) < states {
		h.moving[s.last] = 0
	}
	s.relax(h.moving, true)
	for _, a := range s.acts {
		costs := make([]cost, states)
		for state := range costs {
			costs[state] = unreachable
			if rules := s.rulesIn(a, state); worst(rules) != Never {
				costs[state] = (oneAction + s.far(uint8(state), a) + price(rules)).in(s.order)
			}
		}
		s.relax(costs, false)
		h.doing = append(h.doing, costs)
	}
	return h
}

// relax lowers the costs of states to those of the states that can be reached
// from them, by a transition, which may have its price, or by a coat of glaze.
func (s *search) relax(costs []cost, priced bool) {
	for changed := true; changed; {
		changed = false
		for i := range s.t.Transitions {
			tr := &s.t.Transitions[i]
			if tr.Verdict == Never {
				continue
			}
			c := costs[tr.To]
			if priced {
				c += tr.price().in(s.order)
			}
			if c < costs[tr.From] {
				costs[tr.From], changed = c, true
			}
		}
		for state := range costs {
			if int(s.coat) < len(costs) && costs[s.coat] < costs[state] {
				costs[state], changed = costs[s.coat], true
			}
		}
	}
}

// estimate is the heuristic for a pot: the least that it still costs.
func (s *search) estimate(p *pot) cost {
	if s.uninformed {
		return 0
	}
	if s.poisoned {
		return unreachable
	}
	c := s.moving[p.state]
	for i := range s.acts {
		if !p.done.has(i) {
			c += s.doing[i][p.state]
		}
	}
	return c
}
