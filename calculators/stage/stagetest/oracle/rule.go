package oracle

import (
	"slices"

	"slipbook/calculators/stage"
)

// verdicts gathers the rules that a step rests on.
type verdicts struct {
	never bool
	cost  Cost
	risky bool
	peril Peril
	wants []int // parts of the state
	seen  map[*stage.Rule]bool
}

// add joins a rule. The same rule counts once.
func (v *verdicts) add(r *stage.Rule) {
	if v.seen[r] {
		return
	}
	if v.seen == nil {
		v.seen = map[*stage.Rule]bool{}
	}
	v.seen[r] = true
	v.never = v.never || r.Verdict == stage.Never
	v.risky = v.risky || r.Verdict == stage.Risky
	if r.Verdict == stage.Label || r.Ask != "" {
		v.cost[Questions]++
	}
	if r.Part > 0 {
		v.wants = append(v.wants, int(r.Part))
	}
	v.peril = v.peril.Join(Peril{r.Hazards, r.Who})
}

// close sums the rules up into a step from a condition. It reports false where
// they forbid it, or want a part of the state that is still to come. That a
// part is past is a risk; that the student did not say which, a question.
func (j *job) close(v verdicts, c condition) (step, bool) {
	soft := false
	for _, p := range v.wants {
		if c.part > 0 && p > c.part {
			return step{}, false
		}
		v.risky = v.risky || c.part > p
		soft = soft || p == 1 && c.part == 1
	}
	if soft && j.w.Part == 0 && c.state == j.w.State {
		v.cost[Questions]++
	}
	if v.risky {
		v.cost[Risky]++
	}
	v.cost[Actions]++
	return step{to: c, cost: v.cost, peril: v.peril}, !v.never
}

// mediumRule is what the table says of a medium in a state, or the body's own
// exception from it.
func (j *job) mediumRule(medium, state int) *stage.Rule {
	m := &j.t.Media[medium]
	if j.w.Body >= 0 {
		changes := j.t.Bodies[j.w.Body].Changes
		for i := range changes {
			if changes[i].Medium == m.Base && changes[i].State == state {
				return &changes[i].Rule
			}
		}
	}
	return &m.On[state]
}

// way is what the table says of a way of working in a state for the medium of
// an act: the first case that names it, or that names none.
func (j *job) way(q int, d deed, state int) *stage.Rule {
	base := ""
	if !d.bare {
		base = j.t.Media[j.w.Layers[d.layer].Medium].Base
	}
	cell := j.t.Techniques[q].On[state]
	for i := range cell {
		if len(cell[i].Only) == 0 {
			return &cell[i].Rule
		}
		for _, name := range cell[i].Only {
			if name == base {
				return &cell[i].Rule
			}
		}
	}
	return &stage.Rule{Verdict: stage.Never}
}

// overs adds what the table says of a medium over every layer below that no
// glaze covers, laid on with some ways: loose ones, and in rows that hold after
// a firing, fired ones.
func (j *job) overs(v *verdicts, c condition, above *stage.Medium, ways []int, below int) {
	for i := range below {
		how := c.coats[i].how
		if c.coats[i].covered || how != loose && how != fixed {
			continue
		}
		for o := range j.t.Overs {
			over := &j.t.Overs[o]
			if over.Under != j.medium(i).Base || over.Above != above.Base || how == fixed && !over.Fired {
				continue
			}
			v.add(&over.Rule)
			for _, q := range ways {
				v.never = v.never || how == loose && slices.Contains(over.Unless, j.t.Techniques[q].ID)
			}
		}
	}
}
