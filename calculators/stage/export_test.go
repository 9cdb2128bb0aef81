package stage

// What the property tests need to see.

// Cost returns the cost of the best plan, in the order of preference.
func (t *Table) Cost(w Wish) (costs [6]int, exists bool) {
	s := t.newSearch(w, safest)
	at := s.run()
	if at < 0 {
		return costs, false
	}
	return s.reached[at].cost.parts(), true
}

// parts unpacks a cost.
func (c cost) parts() [6]int {
	return [6]int{c.undone(), c.risky(), c.questions(), c.firings(), c.away(), c.actions()}
}

// Nearest returns the wish that a conflict offers instead.
func (t *Table) Nearest(w Wish) (Wish, bool) {
	s := t.newSearch(w, safest)
	near, best := s.nearest(s.conflict().Layer)
	return near.wish, best != nil
}

// Relax finds the cheapest finish by relaxation: the costs of all conditions
// are lowered until none falls any more, compared cost by cost, never packed.
// It takes the planner's own steps: it proves the search, not the rules.
func (t *Table) Relax(w Wish) (best [6]int, exists bool) {
	s := t.newSearch(w, safest)
	costs := map[pot][6]int{s.start(): {}}
	for changed := true; changed; {
		changed = false
		for p, c := range costs {
			s.steps = s.steps[:0]
			s.expand(p)
			for _, next := range s.steps {
				sum := next.cost.parts()
				for i := range sum {
					sum[i] += c[i]
				}
				if old, known := costs[next.to]; !known || Less(sum, old) {
					costs[next.to] = sum
					changed = true
				}
			}
		}
	}
	for p, c := range costs {
		if s.finished(&p) && (!exists || Less(c, best)) {
			best, exists = c, true
		}
	}
	return best, exists
}

// Less compares costs in the order of preference.
func Less(a, b [6]int) bool {
	for i := range a {
		if a[i] != b[i] {
			return a[i] < b[i]
		}
	}
	return false
}

// Worse reports whether one plan is worse for health than another.
func (t *Table) Worse(one, other Hazards, who, otherWho Who) bool {
	return t.worse(peril{one, who}, peril{other, otherWho})
}

// MostWork is the bound on the work for a plan.
const MostWork = mostWork

// PlanWork is Plan with the number of pots that were expanded for it.
func (t *Table) PlanWork(w Wish) (Plan, int) {
	s := t.newSearch(w, safest)
	return s.plan(), *s.work
}
