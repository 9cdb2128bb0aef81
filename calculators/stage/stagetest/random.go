package stagetest

import (
	"math/rand/v2"
	"slices"
	"strconv"

	"slipbook/calculators/stage"
)

// Random returns a table with the states and transitions of a studio and random
// verdicts, hazards and people everywhere, and a wish of up to most layers for
// it.
func Random(random *rand.Rand, most int) (*stage.Table, stage.Wish) {
	t := Table()
	randomMedia(random, t)
	randomTechniques(random, t)
	randomOvers(random, t)
	for i := range t.Transitions {
		tr := &t.Transitions[i]
		switch random.IntN(24) {
		case 0, 1, 2:
			tr.Verdict = stage.Risky
		case 3:
			tr.Verdict = stage.Never
		case 4:
			tr.Verdict = stage.Label
		case 5:
			tr.Ask = "Shall " + tr.ID + " be?"
		}
	}
	for i := range t.Bodies[0].Changes {
		c := &t.Bodies[0].Changes[i]
		c.Medium, c.State = t.Media[random.IntN(len(t.Media))].Base, random.IntN(len(t.States))
		c.Rule = randomRule(random, c.Rule, len(t.States[c.State].Parts))
	}
	return t, randomWish(random, t, most)
}

// randomOvers changes the rows of one medium over another, with the ways in
// which they are never, and adds some that no studio has.
func randomOvers(random *rand.Rand, t *stage.Table) {
	there := map[[2]string]bool{}
	for _, o := range t.Overs {
		there[[2]string{o.Under, o.Above}] = true
	}
	for range 8 {
		pair := [2]string{t.Media[random.IntN(len(t.Media))].Base, t.Media[random.IntN(len(t.Media))].Base}
		if !there[pair] {
			there[pair] = true
			t.Overs = append(t.Overs, stage.Over{Under: pair[0], Above: pair[1], Rule: rules(pair[0]+" under "+pair[1], "n")[0]})
		}
	}
	for i := range t.Overs {
		o := &t.Overs[i]
		o.Rule = randomRule(random, o.Rule, 0)
		o.Fired = random.IntN(5) == 0
		if random.IntN(4) == 0 {
			o.Unless = append([]string{t.Techniques[random.IntN(len(t.Techniques))].ID}, o.Unless...)
		}
	}
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
	if random.IntN(16) == 0 {
		r.Ask = "Is it so that " + r.Reason + "?"
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

// randomWish wishes for up to most layers: some of a named metal, some work on
// the clay itself, on a pot that may wear something already.
func randomWish(random *rand.Rand, t *stage.Table, most int) stage.Wish {
	w := stage.Wish{State: random.IntN(len(t.States)), Apart: random.IntN(3) == 0, Food: random.IntN(2) == 0, Bare: random.IntN(4) == 0, Body: random.IntN(2) - 1}
	if parts := len(t.States[w.State].Parts); parts > 0 {
		w.Part = random.IntN(parts + 1)
	}
	for range random.IntN(6) - 3 {
		m := random.IntN(len(t.Media))
		kind := t.Media[m].Kind
		finished := w.State == len(t.States)-1
		if (kind != stage.OnGlaze || finished) && (kind != stage.Glaze || finished || t.States[w.State].ID == "unfired-glaze") {
			w.Already = append(w.Already, stage.Coat{Medium: m, Loose: kind != stage.Glaze && random.IntN(2) == 0, Metal: randomMetal(random)})
		}
	}
	for range 1 + random.IntN(most) {
		w.Layers = append(w.Layers, randomLayer(random, t))
	}
	return w
}

// randomMetal names a metal of one coat in eight.
func randomMetal(random *rand.Rand) string {
	switch random.IntN(24) {
	case 0, 1:
		return "cobalt"
	case 2:
		return "cobalt and lead"
	}
	return ""
}

func randomLayer(random *rand.Rand, t *stage.Table) stage.Layer {
	if random.IntN(8) == 0 {
		layer := stage.Layer{Medium: -1}
		for q := range t.Techniques {
			if t.Techniques[q].Bare {
				layer.Ways = append(layer.Ways, q)
			}
		}
		return layer
	}
	layer := stage.Layer{Medium: random.IntN(len(t.Media))}
	layer.Metal = randomMetal(random)
	for range random.IntN(4) {
		q, n := random.IntN(len(t.Techniques)), len(layer.Ways)
		if t.Techniques[q].Takes || n == 0 || !t.Techniques[layer.Ways[n-1]].Takes && !slices.Contains(layer.Ways, q) {
			layer.Ways = append(layer.Ways, q)
		}
	}
	return layer
}

// Wide returns a random table of so many media, more than any studio has, and
// wishes for eight layers of it, each on a place of its own. It answers the same
// each time.
func Wide(media, wishes int) (*stage.Table, []stage.Wish) {
	random := rand.New(rand.NewPCG(70, 2))
	t, _ := Random(random, stage.MostLayers)
	for len(t.Media) < media {
		more, _ := Random(random, stage.MostLayers)
		for _, m := range more.Media {
			m.ID += strconv.Itoa(len(t.Media))
			m.Base, m.Kind = m.ID, stage.Kind(random.IntN(4))
			m.Name, m.Words = "Medium "+strconv.Itoa(len(t.Media)), nil
			t.Media = append(t.Media, m)
		}
	}
	var all []stage.Wish
	for range wishes {
		w := stage.Wish{State: random.IntN(len(t.States)), Apart: true, Body: -1}
		for range stage.MostLayers {
			w.Layers = append(w.Layers, stage.Layer{Medium: random.IntN(len(t.Media))})
		}
		all = append(all, w)
	}
	return t, all
}
