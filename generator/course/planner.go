package course

import (
	"cmp"
	"slices"

	"slipbook/calculators/catalog"
	"slipbook/calculators/stage"
)

// findingsIn is the English of findings: what the planner refuses while a course
// is read is one. Answers are in the course's own words.
const findingsIn = "en-GB"

// Table returns the decoration table as the planner takes it. Each product and recipe card becomes a
// medium of its own beside the one that it is one of, and each clay body with
// exceptions becomes a body. The same Decoration gives the same table.
func (d *Decoration) Table() *stage.Table {
	t := &stage.Table{Words: catalog.WordsIn(findingsIn), Firing: d.Firing.Name, Drying: d.Firing.Drying, Fire: d.planCare(d.Firing.Care), Hazards: d.planHazards()}
	t.Fire.Reason = d.Firing.Because
	for _, s := range d.States {
		state := stage.State{ID: s.ID, Name: s.Name, Words: s.Words}
		for _, p := range s.Parts {
			state.Parts = append(state.Parts, stage.Part(p))
		}
		t.States = append(t.States, state)
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
		t.Techniques = append(t.Techniques, d.planTechnique(q))
	}
	for _, o := range d.Overs {
		t.Overs = append(t.Overs, stage.Over{Under: o.Under, Above: o.Above, Unless: o.Unless, Fired: o.Fired, Rule: d.planRule(o.Pair, "")})
	}
	t.Transitions = d.planTransitions()
	t.Bodies = d.planBodies()
	m := d.Metals
	t.Metals = stage.Metals{Words: slices.Concat(m.Words, m.Also), Unplanned: m.Unplanned, NeverFood: m.NeverFood, NotOver: m.NotOver, Rule: d.planCare(m.Care)}
	t.Metals.Ask, t.Metals.Reason = m.Ask, m.Reason
	for _, p := range d.Phrases {
		t.Phrases = append(t.Phrases, stage.Phrase(p))
	}
	return t
}

// planHazards returns the hazards with the places in words and the lessons by
// their addresses.
func (d *Decoration) planHazards() []stage.Hazard {
	var all []stage.Hazard
	for _, h := range d.Hazards {
		planned := stage.Hazard{ID: h.ID, Title: h.Title, Short: h.Short, Wear: h.Wear, Lesson: lessonAddress(h.Lesson), Health: h.Health}
		if p, there := d.FindPlace(h.Place); there {
			planned.Place = p.Name
		}
		all = append(all, planned)
	}
	return all
}

// planCare returns what a row says of safety.
func (d *Decoration) planCare(c Care) stage.Rule {
	return stage.Rule{Hazards: d.bits(c.Hazards), Who: planWho(c)}
}

func planWho(c Care) stage.Who {
	return map[Who]stage.Who{Student: stage.Student, WithInstructor: stage.WithInstructor, Instructor: stage.Instructor}[strictest(c)]
}

// bits is a set of hazards.
func (d *Decoration) bits(ids []string) stage.Hazards {
	var set stage.Hazards
	for i, h := range d.Hazards {
		if slices.Contains(ids, h.ID) {
			set |= 1 << i
		}
	}
	return set
}

func (d *Decoration) planTechnique(q Technique) stage.Technique {
	planned := stage.Technique{ID: q.ID, Name: q.Name, Words: q.Words, With: q.With, Best: -1, Coats: q.Coats, Takes: q.Takes, Bare: q.Bare,
		Hazards: d.bits(q.Hazards), Who: planWho(q.Care), On: d.planCells(q)}
	if q.Best != "" {
		planned.Best = d.place(q.Best)
	}
	return planned
}

// planTransitions returns the transitions in their order, glaze firings first:
// from the first firing the planner learns where a glaze is fired.
func (d *Decoration) planTransitions() []stage.Transition {
	var glaze, others []stage.Transition
	for _, tr := range d.Transitions {
		planned := stage.Transition{ID: tr.ID, Move: planMoves[tr.Move], From: d.place(tr.From), To: d.place(tr.To), Name: tr.Name,
			Rule: d.planRule(Pair{Verdict: Yes, Reason: tr.Reason, Fault: tr.Fault, Remedy: tr.Remedy, Ask: tr.Ask, Care: tr.Care}, "")}
		if tr.firesGlaze() {
			glaze = append(glaze, planned)
		} else {
			others = append(others, planned)
		}
	}
	return append(glaze, others...)
}

var planKinds = map[string]stage.Kind{clayKind: stage.Clay, colourKind: stage.Colour, powderKind: stage.Powder, glazeKind: stage.Glaze, onGlazeKind: stage.OnGlaze,
	resistKind: stage.Resist}

var planMoves = map[string]stage.Move{"dry": stage.Dry, "bisque": stage.Bisque, "harden": stage.Harden, "strip": stage.Strip, "fire": stage.Fire}

var planVerdicts = map[Verdict]stage.Verdict{Yes: stage.Yes, Label: stage.Label, Risky: stage.Risky, Never: stage.Never}

var planFixings = map[Fixing]stage.Fixing{FixedYes: stage.Fixed, FixedNo: stage.Loose, FixedRub: stage.RubTest, Peeled: stage.Peeled}

func (d *Decoration) planMedium(m *Medium) stage.Medium {
	return stage.Medium{ID: m.ID, Base: m.ID, Name: m.Name, Words: m.Words, Kind: planKinds[m.Kind], Look: m.Look, Best: d.place(m.Best),
		Heat: m.Heat, Food: m.Food, Hides: m.Hides, Fixed: planFixings[m.Fixed], Hazards: d.bits(m.Hazards), Who: planWho(m.Care), On: d.planRules(m.On)}
}

// planProduct returns a product or recipe card as a medium: what it does not
// say is as with the medium that it is one of. It returns none when that medium
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
	if e.Fixed != "" {
		m.Fixed = planFixings[e.Fixed]
	}
	care := base.Care.with(e.Care)
	m.Hazards, m.Who = d.bits(care.Hazards), planWho(care)
	for i, s := range d.States {
		if p, differs := e.On[s.ID]; differs {
			m.On[i] = d.planRule(p, s.ID)
		}
	}
	return []stage.Medium{m}
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
				bodies[i].Changes = append(bodies[i].Changes, stage.Change{Medium: e.Medium, State: at, Rule: d.planRule(p, s.ID)})
			}
		}
	}
	return bodies
}

// planRules returns one rule for each state, in order. A state of which nothing
// is said, which Load reports, is forbidden.
func (d *Decoration) planRules(on map[string]Pair) []stage.Rule {
	var rules []stage.Rule
	for _, s := range d.States {
		p, there := on[s.ID]
		if !there {
			p = Pair{Verdict: Never}
		}
		rules = append(rules, d.planRule(p, s.ID))
	}
	return rules
}

// planCells returns what a technique says of each state, in order.
func (d *Decoration) planCells(q Technique) []stage.Cell {
	var cells []stage.Cell
	for _, s := range d.States {
		var cell stage.Cell
		for _, c := range q.On[s.ID] {
			rule := d.planRule(c.Pair, s.ID)
			rule.Wait = cmp.Or(c.Wait, q.Wait)
			cell = append(cell, stage.Case{Only: c.Only, Rule: rule})
		}
		cells = append(cells, cell)
	}
	return cells
}

var planBases = map[string]stage.Basis{physics: stage.Physics, trade: stage.Trade, house: stage.House}

// planRule returns a pair in a state, or apart from states, as a rule.
func (d *Decoration) planRule(p Pair, state string) stage.Rule {
	r := d.planCare(p.Care)
	r.Verdict, r.Basis, r.Reason, r.Fault, r.Remedy, r.Ask = planVerdicts[p.Verdict], planBases[p.Rule], p.Reason, p.Fault, p.Remedy, p.Ask
	if s, there := d.FindState(state); there {
		r.Part = uint8(1 + slices.IndexFunc(s.Parts, func(part Part) bool { return part.ID == p.Part }))
	}
	return r
}

// place returns the place of a state among the states, the first for one that
// is not there.
func (d *Decoration) place(state string) int {
	return max(0, slices.IndexFunc(d.States, func(s State) bool { return s.ID == state }))
}

// Fires reports whether a transition is made in the kiln.
func (tr Transition) Fires() bool {
	return slices.Contains([]string{"bisque", "harden", "fire"}, tr.Move)
}

// firesGlaze reports whether a transition is a glaze firing.
func (tr Transition) firesGlaze() bool { return tr.Move == "fire" && tr.From == glazedState }
