package course

import (
	"maps"
	"slices"

	"slipbook/calculators/stage"
)

// Table gives the decoration table as the planner takes it. Rules of the house
// stand in the verdicts themselves; each product and recipe card becomes a
// medium of its own beside the one that it is one of, and each clay body with
// exceptions becomes a body. The same Decoration gives the same table.
func (d *Decoration) Table() *stage.Table {
	t := &stage.Table{Firing: d.Firing}
	for _, s := range d.States {
		t.States = append(t.States, stage.State{ID: s.ID, Name: s.Name})
	}
	for i := range d.Media {
		t.Media = append(t.Media, d.planMedium(&d.Media[i]))
	}
	for i := range d.Exceptions {
		if e := &d.Exceptions[i]; e.Kind == productKind || e.Kind == recipeKind {
			t.Media = append(t.Media, d.planProduct(e)...)
		}
	}
	for _, q := range d.Techniques {
		on := d.inHouse(q.On, func(e *Exception) bool { return e.Technique == q.ID })
		t.Techniques = append(t.Techniques, stage.Technique{ID: q.ID, Name: q.Name, Words: q.Words, With: q.With, Best: -1, On: d.planCells(on)})
	}
	for _, o := range d.Overs {
		t.Overs = append(t.Overs, stage.Over{Under: o.Under, Above: o.Above, Unless: o.Unless, Rule: planRule(o.Pair)})
	}
	t.Transitions = d.planTransitions()
	t.Bodies = d.planBodies()
	return t
}

// planTransitions gives the transitions in their order, glaze firings first:
// from the first firing the planner learns where a glaze is fired.
func (d *Decoration) planTransitions() []stage.Transition {
	var glaze, others []stage.Transition
	for _, tr := range d.Transitions {
		planned := stage.Transition{ID: tr.ID, Move: planMoves[tr.Move], From: d.place(tr.From), To: d.place(tr.To), Name: tr.Name,
			Rule: stage.Rule{Reason: tr.Reason, Fault: tr.Fault, Remedy: tr.Remedy}}
		if tr.firesGlaze() {
			glaze = append(glaze, planned)
		} else {
			others = append(others, planned)
		}
	}
	return append(glaze, others...)
}

var planKinds = map[string]stage.Kind{clayKind: stage.Clay, colourKind: stage.Colour, powderKind: stage.Powder, glazeKind: stage.Glaze, onGlazeKind: stage.OnGlaze}

var planMoves = map[string]stage.Move{"dry": stage.Dry, "bisque": stage.Bisque, "harden": stage.Harden, "strip": stage.Strip, "fire": stage.Fire}

var planVerdicts = map[Verdict]stage.Verdict{Yes: stage.Yes, Label: stage.Label, Risky: stage.Risky, Never: stage.Never}

func (d *Decoration) planMedium(m *Medium) stage.Medium {
	on := d.inHouse(m.On, func(e *Exception) bool { return e.Medium == m.ID })
	return stage.Medium{ID: m.ID, Base: m.ID, Name: m.Name, Words: m.Words, Kind: planKinds[m.Kind], Look: m.Look, Best: d.place(m.Best),
		Heat: m.Heat, Food: m.Food, Hides: m.Hides, On: d.planRules(on)}
}

// planProduct gives a product or recipe card as a medium: what it does not
// say is as with the medium that it is one of. It gives none when that medium
// is not there.
func (d *Decoration) planProduct(e *Exception) []stage.Medium {
	base, there := d.FindMedium(e.Medium)
	if !there {
		return nil
	}
	m := d.planMedium(base)
	m.ID, m.Name, m.Words, m.Hides = e.ID, e.Name, e.Words, e.Hides
	if e.Best != "" {
		m.Best = d.place(e.Best)
	}
	for i, s := range d.States {
		if p, differs := e.On[s.ID]; differs {
			m.On[i] = planRule(p)
		}
	}
	return []stage.Medium{m}
}

// inHouse gives verdicts with the rules of the house that are about them.
func (d *Decoration) inHouse(on map[string]Pair, about func(*Exception) bool) map[string]Pair {
	ruled := map[string]Pair{}
	maps.Copy(ruled, on)
	for i := range d.Exceptions {
		if e := &d.Exceptions[i]; e.Kind == houseKind && about(e) {
			maps.Copy(ruled, e.On)
		}
	}
	return ruled
}

// planBodies gathers the exceptions of each clay body, bodies and changes in
// the order in which they stand in the file, states in theirs.
func (d *Decoration) planBodies() []stage.Body {
	var bodies []stage.Body
	for _, e := range d.Exceptions {
		if e.Kind != bodyKind {
			continue
		}
		i := slices.IndexFunc(bodies, func(b stage.Body) bool { return b.ID == e.Body })
		if i < 0 {
			i = len(bodies)
			bodies = append(bodies, stage.Body{ID: e.Body, Name: e.Name})
		}
		for at, s := range d.States {
			if p, there := e.On[s.ID]; there {
				bodies[i].Changes = append(bodies[i].Changes, stage.Change{Medium: e.Medium, State: at, Rule: planRule(p)})
			}
		}
	}
	return bodies
}

// planRules gives one rule for each state, in order. A state of which nothing
// is said, which Load reports, is forbidden.
func (d *Decoration) planRules(on map[string]Pair) []stage.Rule {
	var rules []stage.Rule
	for _, s := range d.States {
		p, there := on[s.ID]
		if !there {
			p = Pair{Verdict: Never}
		}
		rules = append(rules, planRule(p))
	}
	return rules
}

// planCells gives what a technique says of each state, in order.
func (d *Decoration) planCells(on map[string]Pair) []stage.Cell {
	var cells []stage.Cell
	for _, r := range d.planRules(on) {
		cells = append(cells, stage.Cell{{Rule: r}})
	}
	return cells
}

var planBases = map[string]stage.Basis{"physics": stage.Physics, "house": stage.House}

func planRule(p Pair) stage.Rule {
	return stage.Rule{Verdict: planVerdicts[p.Verdict], Basis: planBases[p.Rule], Reason: p.Reason, Fault: p.Fault, Remedy: p.Remedy}
}

// place gives the place of a state among the states, the first for one that
// is not there.
func (d *Decoration) place(state string) int {
	return max(0, slices.IndexFunc(d.States, func(s State) bool { return s.ID == state }))
}
