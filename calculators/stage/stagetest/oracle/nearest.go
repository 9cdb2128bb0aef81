package oracle

import (
	"slices"

	"slipbook/calculators/stage"
)

// Standing says what stands in for a wish that cannot be had, of one kind.
type Standing struct {
	Kind string
	Sure []Cost // of those that work and are not worse for health on any cheapest way
	Open []Cost // of those of which only some cheapest ways are not worse
}

// Nearest returns what may stand in for an impossible wish, kind by kind in
// the order of nearness (rule 12).
func Nearest(t *stage.Table, w stage.Wish) []Standing {
	var all []Standing
	asked := Asked(t, w)
	for _, k := range kinds {
		var answers []Answer
		for _, other := range k.wishes(t, w) {
			if a := Solve(t, other, Safest); a.Possible {
				answers = append(answers, a)
			}
		}
		if k.name == inOrder {
			answers = cheapestOf(answers)
		}
		s := Standing{Kind: k.name}
		for _, a := range answers {
			switch a.healthy(t, asked) {
			case 0:
			case len(a.Perils):
				s.Sure = append(s.Sure, a.Cost)
			default:
				s.Open = append(s.Open, a.Cost)
			}
		}
		all = append(all, s)
	}
	return all
}

// cheapestOf joins the cheapest of some answers into one: of all orders only
// that which costs least stands in for a wish.
func cheapestOf(answers []Answer) []Answer {
	var best []Answer
	for _, a := range answers {
		switch {
		case len(best) == 0 || Safest.Compare(a.Cost, best[0].Cost) < 0:
			best = []Answer{a}
		case a.Cost == best[0].Cost:
			best[0].Perils = append(best[0].Perils, a.Perils...)
		}
	}
	return best
}

// healthy is how many of the cheapest ways are not worse for health in their
// work than what was asked for.
func (a Answer) healthy(t *stage.Table, asked Peril) (n int) {
	for _, p := range a.Perils {
		if !p.Work.Worse(t, asked) {
			n++
		}
	}
	return n
}

// Asked is what a wish itself can do to people, done now (rule 11).
func Asked(t *stage.Table, w stage.Wish) (p Peril) {
	j := newJob(t, w)
	p = j.handled(j.start())
	for _, d := range j.deeds {
		p = p.Join(j.metal(d.layer))
		if !d.bare {
			medium := w.Layers[d.layer].Medium
			p = p.Join(Peril{t.Media[medium].Hazards, t.Media[medium].Who})
			if r := j.mediumRule(medium, w.State); !d.takes {
				p = p.Join(Peril{r.Hazards, r.Who})
			}
			if t.Media[medium].Kind == stage.OnGlaze {
				p = p.Join(Peril{t.Fire.Hazards, t.Fire.Who})
			}
		}
		for _, q := range d.ways {
			r := j.way(q, d, w.State)
			p = p.Join(Peril{t.Techniques[q].Hazards | r.Hazards, max(t.Techniques[q].Who, r.Who)})
		}
	}
	return p
}

const inOrder = "order"

// kinds of wishes that stand in for another, the nearest first.
var kinds = []struct {
	name   string
	wishes func(*stage.Table, stage.Wish) []stage.Wish
}{
	{inOrder, orders},
	{"one way open", oneWayOpen},
	{"all ways open", allWaysOpen},
	{"another medium", func(t *stage.Table, w stage.Wish) []stage.Wish { return stoodIn(t, w, false) }},
	{"on the fired glaze", func(t *stage.Table, w stage.Wish) []stage.Wish { return stoodIn(t, w, true) }},
	{"one layer less", oneLess},
	{"a new pot", newPots},
}

// with is a wish with a layer put in the place of another.
func with(w stage.Wish, i int, layer stage.Layer) stage.Wish {
	w.Layers = slices.Clone(w.Layers)
	w.Layers[i] = layer
	return w
}

// orders are all other orders of the layers in which what was to lie under a
// glaze stays under it, on-glaze work apart.
func orders(t *stage.Table, w stage.Wish) []stage.Wish {
	var all []stage.Wish
	var place func(order []int)
	place = func(order []int) {
		if len(order) == len(w.Layers) {
			other := w
			other.Layers = nil
			for _, i := range order {
				other.Layers = append(other.Layers, w.Layers[i])
			}
			all = append(all, other)
		}
		for i := range w.Layers {
			if !slices.Contains(order, i) && !sinks(t, w, order, i) {
				place(append(slices.Clone(order), i))
			}
		}
	}
	if !w.Apart {
		place(nil)
	}
	return all
}

// sinks reports whether a layer would come to lie on a glaze, among those laid
// before it, that it was to lie under.
func sinks(t *stage.Table, w stage.Wish, laid []int, i int) bool {
	if m := w.Layers[i].Medium; m >= 0 && t.Media[m].Kind == stage.OnGlaze {
		return false
	}
	for _, g := range laid {
		if m := w.Layers[g].Medium; g > i && m >= 0 && t.Media[m].Kind == stage.Glaze {
			return true
		}
	}
	return false
}

// oneWayOpen leaves one way of working one layer out.
func oneWayOpen(_ *stage.Table, w stage.Wish) []stage.Wish {
	var all []stage.Wish
	for i, layer := range w.Layers {
		for q := range layer.Ways {
			if layer.Medium >= 0 {
				less := layer
				less.Ways = slices.Delete(slices.Clone(layer.Ways), q, q+1)
				all = append(all, with(w, i, less))
			}
		}
	}
	return all
}

// allWaysOpen leaves all ways of working the layers out.
func allWaysOpen(_ *stage.Table, w stage.Wish) []stage.Wish {
	for i, layer := range w.Layers {
		if layer.Medium >= 0 {
			layer.Ways = nil
			w = with(w, i, layer)
		}
	}
	return []stage.Wish{w}
}

// stoodIn puts another medium of the same look in the place of one layer, in
// its ways or in any, but never beside the same medium and never for a named
// metal: one on the fired glaze, or one that is not.
func stoodIn(t *stage.Table, w stage.Wish, late bool) []stage.Wish {
	var all []stage.Wish
	for i, layer := range w.Layers {
		for m := range t.Media {
			if layer.Medium < 0 || layer.Metal != "" || m == layer.Medium {
				continue
			}
			look, old := t.Media[m].Look, t.Media[layer.Medium].Look
			beside := i > 0 && w.Layers[i-1].Medium == m || i+1 < len(w.Layers) && w.Layers[i+1].Medium == m
			if look != "" && look == old && !beside && late == (t.Media[m].Kind == stage.OnGlaze) {
				all = append(all, InPlace(t, w, i, m)...)
			}
		}
	}
	return all
}

// serving are those of some ways that are for a medium at all.
func serving(t *stage.Table, medium int, ways []int) []int {
	var all []int
	for _, q := range ways {
		if served := t.Techniques[q].With; len(served) == 0 || slices.Contains(served, t.Media[medium].Base) {
			all = append(all, q)
		}
	}
	return all
}

// oneLess leaves one layer out, never the last that decorates.
func oneLess(t *stage.Table, w stage.Wish) []stage.Wish {
	var all []stage.Wish
	for i := range w.Layers {
		less := w
		less.Layers = slices.Delete(slices.Clone(w.Layers), i, i+1)
		if len(less.Layers) > 0 && (decorates(t, less.Layers) || !decorates(t, w.Layers)) {
			all = append(all, less)
		}
	}
	return all
}

// decorates reports whether some layer is more than a glaze or a resist.
func decorates(t *stage.Table, layers []stage.Layer) bool {
	return slices.ContainsFunc(layers, func(l stage.Layer) bool {
		return l.Medium < 0 || t.Media[l.Medium].Kind != stage.Glaze && t.Media[l.Medium].Kind != stage.Resist
	})
}

// newPots begin anew on clay that was never fired: in another state than now,
// or without what is on the pot.
func newPots(t *stage.Table, w stage.Wish) []stage.Wish {
	var all []stage.Wish
	for state, s := range t.States {
		other := w
		other.State, other.Part, other.Already = state, 0, nil
		if slices.Contains([]string{wet, leatherHard, boneDry}, s.ID) && (state != w.State || len(w.Already) > 0) {
			all = append(all, other)
		}
	}
	return all
}
