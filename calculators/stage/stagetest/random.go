package stagetest

import (
	"math/rand/v2"

	"slipbook/calculators/stage"
)

// Random returns a table with the states and transitions of a studio and random
// verdicts, hazards and people everywhere, and a wish of up to most layers for
// it.
func Random(random *rand.Rand, most int) (*stage.Table, stage.Wish) {
	t := Table()
	randomMedia(random, t)
	randomTechniques(random, t)
	for i := range t.Overs {
		t.Overs[i].Rule = randomRule(random, t.Overs[i].Rule, 0)
		t.Overs[i].Fired = random.IntN(5) == 0
	}
	for i := range t.Transitions {
		if random.IntN(8) == 0 {
			t.Transitions[i].Verdict = stage.Risky
		}
	}
	return t, randomWish(random, t, most)
}

// randomRule keeps the words of a rule and changes all else. Only a rule of a
// state with parts may want one.
func randomRule(random *rand.Rand, r stage.Rule, parts int) stage.Rule {
	r.Verdict = []stage.Verdict{0, 0, 0, 1, 2, 3, 3}[random.IntN(7)]
	r.Basis = stage.Basis(random.IntN(3))
	if random.IntN(6) == 0 {
		r.Hazards = 1 << random.IntN(4)
	}
	if random.IntN(10) == 0 {
		r.Who = stage.Who(random.IntN(3))
	}
	if parts > 0 && random.IntN(2) == 0 {
		r.Part = uint8(1 + random.IntN(parts))
	}
	return r
}

func randomMedia(random *rand.Rand, t *stage.Table) {
	for i := range t.Media {
		m := &t.Media[i]
		for j := range m.On {
			m.On[j] = randomRule(random, m.On[j], len(t.States[j].Parts))
		}
		m.Best = random.IntN(len(t.States))
		switch m.Kind {
		case stage.OnGlaze:
			m.Heat = 1 + random.IntN(3)
		case stage.Clay, stage.Colour, stage.Powder:
			m.Fixed = stage.Fixing(random.IntN(3))
		}
		if random.IntN(4) == 0 {
			m.Hazards |= 1 << random.IntN(4)
		}
	}
}

func randomTechniques(random *rand.Rand, t *stage.Table) {
	for i := range t.Techniques {
		q := &t.Techniques[i]
		q.With = nil
		q.Best = random.IntN(len(t.States)+6) - 6
		q.Best = max(q.Best, -1)
		for j := range q.On {
			last := len(q.On[j]) - 1
			q.On[j] = stage.Cell{{Rule: randomRule(random, q.On[j][last].Rule, len(t.States[j].Parts))}}
			if random.IntN(4) == 0 {
				only := stage.Case{Only: []string{t.Media[random.IntN(len(t.Media))].Base}, Rule: randomRule(random, q.On[j][0].Rule, len(t.States[j].Parts))}
				q.On[j] = stage.Cell{only, q.On[j][0]}
			}
		}
	}
}

func randomWish(random *rand.Rand, t *stage.Table, most int) stage.Wish {
	w := stage.Wish{State: random.IntN(len(t.States)), Apart: random.IntN(3) == 0, Food: random.IntN(2) == 0, Bare: random.IntN(4) == 0, Body: random.IntN(2) - 1}
	if parts := len(t.States[w.State].Parts); parts > 0 {
		w.Part = random.IntN(parts + 1)
	}
	for range random.IntN(6) - 3 {
		m := random.IntN(len(t.Media))
		if kind := t.Media[m].Kind; kind != stage.OnGlaze && kind != stage.Glaze && w.State < len(t.States)-1 {
			w.Already = append(w.Already, stage.Coat{Medium: m, Loose: random.IntN(2) == 0})
		}
	}
	for range 1 + random.IntN(most) {
		layer := stage.Layer{Medium: random.IntN(len(t.Media))}
		for range random.IntN(3) {
			q := random.IntN(len(t.Techniques))
			if takes := t.Techniques[q].Takes; takes || len(layer.Ways) == 0 {
				layer.Ways = append(layer.Ways, q)
			}
		}
		w.Layers = append(w.Layers, layer)
	}
	return w
}
