package stage

// bound is what a finished pot must still cost, at the least: the search looks
// first where cost so far and bound together are smallest, so that it passes by
// most of the orders in which layers on places of their own could go on. It
// never says too much, and falls by no more than each step costs; so the first
// finished pot is still the cheapest.
type bound struct {
	layers [MostLayers][]cost // by layer, by state: in the best state that can still be reached
	moves  []cost             // by state: the transitions to a finished pot
}

// never is a cost that no plan has. Seven of them are not too many to add.
const never = cost(1) << 44

func (s *search) newBound() (b bound) {
	states := len(s.t.States)
	b.moves = make([]cost, states)
	for i := range b.moves {
		b.moves[i] = never
	}
	if int(s.last) < states {
		b.moves[s.last] = 0
	}
	s.spread(b.moves, true)
	for i, layer := range s.w.Layers {
		m := &s.t.Media[layer.Medium]
		b.layers[i] = make([]cost, states)
		for state := range b.layers[i] {
			w := way{}
			w.rules[0] = s.mediumRule(m, state)
			if layer.Technique >= 0 {
				w.rules[1] = s.t.Techniques[layer.Technique].On[state].For(m.Base)
			}
			b.layers[i][state] = oneAction + s.far(uint8(state), m) + w.price()
			if w.worst() == Never {
				b.layers[i][state] = never
			}
		}
		s.spread(b.layers[i], false)
	}
	return b
}

// spread lowers the costs of states to those of the states that can be reached
// from them, by a transition, which may have its price, or by a coat of glaze.
func (s *search) spread(costs []cost, priced bool) {
	for changed := true; changed; {
		changed = false
		for i := range s.t.Transitions {
			tr := &s.t.Transitions[i]
			if tr.Verdict == Never {
				continue
			}
			c := costs[tr.To]
			if priced {
				c += tr.price()
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

// left is the bound for a pot.
func (s *search) left(p pot) cost {
	if s.blind {
		return 0
	}
	c := s.moves[p.state]
	for i := range s.w.Layers {
		if p.done>>i&1 == 0 {
			c += s.layers[i][p.state]
		}
	}
	return c
}
