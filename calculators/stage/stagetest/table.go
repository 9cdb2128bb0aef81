// Package stagetest makes decoration tables for tests: one like a studio's,
// small enough to work wishes out by hand, and random ones that no pottery
// ever had.
package stagetest

import (
	"math/rand/v2"
	"strings"

	"slipbook/calculators/stage"
)

// states are those of a studio, in order.
var states = []stage.State{{ID: "wet", Name: "Wet"}, {ID: "leather-hard", Name: "Leather-hard"}, {ID: "bone-dry", Name: "Bone dry"},
	{ID: "bisque", Name: "Bisque"}, {ID: "unfired-glaze", Name: "Unfired glaze"}, {ID: "glaze-fired", Name: "Glaze-fired"}}

// Table is the heart of a studio's table (common practice of the trade): one
// letter a state, y(es), l(abel), r(isky), n(ever).
func Table() *stage.Table {
	t := &stage.Table{States: states, Firing: "Fire it to the cone on its label."}
	addMedia(t)
	addTechniques(t)
	addOvers(t)
	addTransitions(t)
	t.Bodies = []stage.Body{{ID: "yard-paper", Name: "Yard paper clay", Changes: []stage.Change{{Medium: "coloured-slip", State: 2, Rule: rules("slip on paper clay", "l")[0]}}}}
	return t
}

func addMedia(t *stage.Table) {
	for _, m := range []struct {
		medium stage.Medium
		on     string
	}{
		{stage.Medium{ID: "coloured-slip", Name: "Coloured slip", Words: []string{"slip"}, Kind: stage.Clay, Look: "solid", Best: 1, Food: true}, "yynnnn"},
		{stage.Medium{ID: "engobe", Name: "Engobe", Kind: stage.Clay, Look: "solid", Best: 1, Food: true}, "ryllnn"},
		{stage.Medium{ID: "underglaze", Name: "Underglaze", Kind: stage.Colour, Look: "solid", Best: 1, Food: true}, "ryylln"},
		{stage.Medium{ID: "stain-wash", Name: "Stain wash", Words: []string{"wash"}, Kind: stage.Powder, Look: "line", Best: 3, Food: true}, "nryyyn"},
		{stage.Medium{ID: "oxide-wash", Name: "Oxide wash", Kind: stage.Powder, Look: "line", Best: 3, Food: true}, "nrryyn"},
		{stage.Medium{ID: "glaze", Name: "Glaze", Words: []string{"clear glaze"}, Kind: stage.Glaze, Look: "gloss", Best: 3, Food: true}, "nllyrr"},
		{stage.Medium{ID: "opaque-glaze", Base: "glaze", Name: "Opaque glaze", Words: []string{"white glaze"}, Kind: stage.Glaze, Look: "gloss", Best: 3, Food: true, Hides: true}, "nllyrr"},
		{stage.Medium{ID: "enamel", Name: "Enamel", Kind: stage.OnGlaze, Look: "solid", Best: 5, Heat: 3}, "nnnnny"},
		{stage.Medium{ID: "decal", Name: "Decal", Kind: stage.OnGlaze, Look: "on-glaze", Best: 5, Heat: 2}, "nnnnnl"},
		{stage.Medium{ID: "lustre", Name: "Lustre", Kind: stage.OnGlaze, Look: "on-glaze", Best: 5, Heat: 1}, "nnnnnl"},
	} {
		if m.medium.Base == "" {
			m.medium.Base = m.medium.ID
		}
		m.medium.On = rules(m.medium.Name, m.on)
		t.Media = append(t.Media, m.medium)
	}
}

func addTechniques(t *stage.Table) {
	for _, q := range []struct {
		technique stage.Technique
		on        string
	}{
		{stage.Technique{ID: "stencil", Name: "Stencil"}, "rynrnn"},
		{stage.Technique{ID: "trailing", Name: "Trailing", Words: []string{"trailed"}, With: []string{"coloured-slip", "engobe"}}, "yynnnn"},
		{stage.Technique{ID: "wiping-back", Name: "Wiping back", Words: []string{"wiped back", "wiped"}, With: []string{"stain-wash", "oxide-wash"}}, "nrrynn"},
		{stage.Technique{ID: "brushing", Name: "Brushing", Words: []string{"brushed", "brush"}}, "yyyyyy"},
		{stage.Technique{ID: "dipping", Name: "Dipping", Words: []string{"dipped"}}, "nyyyyy"},
		{stage.Technique{ID: "spraying", Name: "Spraying", Words: []string{"sprayed"}}, "ryyyyy"},
	} {
		for _, r := range rules(q.technique.Name, q.on) {
			q.technique.On = append(q.technique.On, stage.Cell{{Rule: r}})
			q.technique.Best = -1
		}
		t.Techniques = append(t.Techniques, q.technique)
	}
}

func addOvers(t *stage.Table) {
	over := func(under, above, verdict string, unless ...string) {
		t.Overs = append(t.Overs, stage.Over{Under: under, Above: above, Unless: unless, Rule: rules(under+" under "+above, verdict)[0]})
	}
	for _, under := range []string{"coloured-slip", "engobe"} {
		over(under, "coloured-slip", "y")
		over(under, "underglaze", "y")
		over(under, "stain-wash", "y")
	}
	over("underglaze", "coloured-slip", "r")
	over("underglaze", "underglaze", "y")
	over("underglaze", "glaze", "y", "brushing")
	over("stain-wash", "coloured-slip", "n")
	over("stain-wash", "underglaze", "r")
	over("stain-wash", "glaze", "y", "brushing")
	over("oxide-wash", "coloured-slip", "n")
	over("oxide-wash", "glaze", "y", "brushing")
}

func addTransitions(t *stage.Table) {
	for _, m := range []stage.Transition{
		{ID: "stiffen", Move: stage.Dry, From: 0, To: 1, Name: "Let it stiffen."},
		{ID: "dry", Move: stage.Dry, From: 1, To: 2, Name: "Let it dry."},
		{ID: "bisque", Move: stage.Bisque, From: 2, To: 3, Name: "Bisque fire it."},
		{ID: "harden", Move: stage.Harden, From: 3, To: 3, Name: "Fire it again to bisque heat."},
		{ID: "wash-off", Move: stage.Strip, From: 4, To: 3, Name: "Wash the glaze off."},
		{ID: "glaze-fire", Move: stage.Fire, From: 4, To: 5, Name: "Glaze fire it."},
		{ID: "last-fire", Move: stage.Fire, From: 3, To: 5, Name: "Fire it bare."},
	} {
		m.Reason = "The reason of " + m.ID + "."
		t.Transitions = append(t.Transitions, m)
	}
}

// rules spells verdicts into rules whose sentences name what they are about.
func rules(name, verdicts string) []stage.Rule {
	var list []stage.Rule
	for i, c := range verdicts {
		r := stage.Rule{Verdict: stage.Verdict(strings.IndexRune("ylrn", c))}
		at := ""
		if len(verdicts) > 1 {
			at = " when " + strings.ToLower(states[i].Name)
		}
		r.Reason = "The reason of " + strings.ToLower(name) + at + "."
		if r.Verdict != stage.Yes {
			r.Fault, r.Remedy = "Its fault.", "Its remedy."
		}
		list = append(list, r)
	}
	return list
}

// Random gives a table with the states and transitions of a studio and random
// verdicts everywhere, and a wish of up to most layers for it.
func Random(random *rand.Rand, most int) (*stage.Table, stage.Wish) {
	t := Table()
	verdict := func() stage.Verdict { return []stage.Verdict{0, 0, 0, 1, 2, 3, 3}[random.IntN(7)] }
	for i := range t.Media {
		for j := range t.Media[i].On {
			t.Media[i].On[j].Verdict = verdict()
		}
		t.Media[i].Best = random.IntN(len(t.States))
		if t.Media[i].Kind == stage.OnGlaze {
			t.Media[i].Heat = 1 + random.IntN(3)
		}
	}
	for i := range t.Techniques {
		t.Techniques[i].With = nil
		for j := range t.Techniques[i].On {
			t.Techniques[i].On[j][0].Verdict = verdict()
		}
	}
	for i := range t.Overs {
		t.Overs[i].Verdict = verdict()
	}
	for i := range t.Transitions {
		if random.IntN(8) == 0 {
			t.Transitions[i].Verdict = stage.Risky
		}
	}
	w := stage.Wish{State: random.IntN(len(t.States)), Apart: random.IntN(3) == 0, Food: random.IntN(2) == 0, Bare: random.IntN(4) == 0, Body: random.IntN(2) - 1}
	for range 1 + random.IntN(most) {
		w.Layers = append(w.Layers, stage.Layer{Medium: random.IntN(len(t.Media)), Technique: random.IntN(len(t.Techniques)+3) - 3})
		if l := &w.Layers[len(w.Layers)-1]; l.Technique < 0 {
			l.Technique = -1
		}
	}
	return t, w
}
