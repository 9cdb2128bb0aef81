// Package oracle is a second planner, for tests alone. It answers the same
// question as package stage from the same table, by the rules that
// DEVELOPERS.md puts in words, and shares no line with the first: conditions
// are plain structs, costs are arrays, and every condition that can be reached
// is relaxed until nothing gets cheaper. It is slow and has no cleverness in
// which a fault could hide. Where the two disagree, one of them breaks the
// rules.
package oracle

import (
	"slices"

	"slipbook/calculators/stage"
)

// Cost is what a plan costs, by the places below.
type Cost [6]int

// The places in a Cost, in the order of preference: coats undone, risky steps,
// questions, firings, states away from the best, actions.
const (
	Undone = iota
	Risky
	Questions
	Firings
	Away
	Actions
)

// Order is an order of preference: the places of a Cost, the first counts most.
type Order [6]int

// The orders: the studio's own, and those for what is named beside a plan.
var (
	Safest   = Order{Undone, Risky, Questions, Firings, Away, Actions}
	Shortest = Order{Undone, Actions, Risky, Questions, Firings, Away}
	Coolest  = Order{Undone, Firings, Risky, Questions, Away, Actions}
)

func (c Cost) plus(d Cost) Cost {
	for i := range c {
		c[i] += d[i]
	}
	return c
}

// Compare compares two costs in an order of preference, as [cmp.Compare] does.
func (o Order) Compare(c, d Cost) int {
	for _, place := range o {
		if c[place] != d[place] {
			return c[place] - d[place]
		}
	}
	return 0
}

// Peril is what a plan can do to people: the hazards it meets, and the
// strictest of the people who may do its steps.
type Peril struct {
	Hazards stage.Hazards
	Who     stage.Who
}

// Join adds another peril.
func (p Peril) Join(q Peril) Peril {
	return Peril{p.Hazards | q.Hazards, max(p.Who, q.Who)}
}

// Worse reports whether p is worse for health than q: a hazard to health that
// q lacks, or a stricter who.
func (p Peril) Worse(t *stage.Table, q Peril) bool {
	for i, h := range t.Hazards {
		bit := stage.Hazards(1) << i
		if h.Health && p.Hazards&bit != 0 && q.Hazards&bit == 0 {
			return true
		}
	}
	return p.Who > q.Who
}

// Both is the peril of a plan's work alone, and of all its steps.
type Both struct{ Work, All Peril }

// Answer is what the oracle says of a wish.
type Answer struct {
	Possible bool
	Cost     Cost     // of the cheapest plans
	Perils   []Both   // of the cheapest plans, each once
	Steps    []string // of one of the cheapest plans
	end      condition
}

// Solve answers a wish in an order of preference.
func Solve(t *stage.Table, w stage.Wish, o Order) Answer {
	j := newJob(t, w)
	j.order = o
	return j.solve()
}

// solve relaxes every step out of every condition until no condition is
// reached more cheaply.
func (j *job) solve() Answer {
	first := j.start()
	best := map[condition]Cost{first: {}}
	before := map[condition]trace{}
	for queue := []condition{first}; len(queue) > 0; queue = queue[1:] {
		from := queue[0]
		for _, s := range j.steps(from) {
			cost := best[from].plus(s.cost)
			if known, seen := best[s.to]; !seen || j.order.Compare(cost, known) < 0 {
				best[s.to], before[s.to] = cost, trace{from, s.what}
				queue = append(queue, s.to)
			}
		}
	}
	a := j.cheapest(first, best)
	for c := a.end; a.Possible && c != first; c = before[c].from {
		a.Steps = append([]string{before[c].what}, a.Steps...)
	}
	return a
}

// trace is how a condition was reached most cheaply.
type trace struct {
	from condition
	what string
}

// cheapest picks the finished conditions that cost least, and follows the
// cheapest ways from the first condition to them for what they can do to people.
func (j *job) cheapest(first condition, best map[condition]Cost) Answer {
	var a Answer
	var ordered []condition
	for c, cost := range best {
		ordered = append(ordered, c)
		if j.finished(c) && (!a.Possible || j.order.Compare(cost, a.Cost) < 0) {
			a.Possible, a.Cost, a.end = true, cost, c
		}
	}
	if !a.Possible {
		return a
	}
	slices.SortFunc(ordered, func(c, d condition) int { return j.order.Compare(best[c], best[d]) })
	j.follow(&a, first, ordered, best)
	return a
}

// follow walks every cheapest way, from the cheapest condition on, and notes
// what it can do to people.
func (j *job) follow(a *Answer, first condition, ordered []condition, best map[condition]Cost) {
	perils := map[condition]map[Both]bool{first: {{}: true}}
	for _, from := range ordered {
		for _, s := range j.steps(from) {
			if best[s.to] == best[from].plus(s.cost) {
				spread(perils, from, s)
			}
		}
	}
	for _, c := range ordered {
		if j.finished(c) && best[c] == a.Cost {
			for both := range perils[c] {
				a.Perils = append(a.Perils, both)
			}
		}
	}
}

// spread carries the perils of a condition over a step.
func spread(perils map[condition]map[Both]bool, from condition, s step) {
	if perils[s.to] == nil {
		perils[s.to] = map[Both]bool{}
	}
	for both := range perils[from] {
		after := Both{both.Work, both.All.Join(s.peril)}
		if s.work {
			after.Work = both.Work.Join(s.peril)
		}
		perils[s.to][after] = true
	}
}
