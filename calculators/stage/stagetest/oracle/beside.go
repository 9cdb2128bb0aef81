package oracle

import (
	"slices"

	"slipbook/calculators/stage"
)

// Share says of how many pairs of cheapest plans one is no worse for health
// than the other.
type Share uint8

// The shares.
const (
	NoPair Share = iota
	SomePairs
	EveryPair
)

// NoWorse compares everything in the cheapest plans of two answers.
func NoWorse(t *stage.Table, one, other Answer) Share {
	fine, all := 0, 0
	for _, p := range one.Perils {
		for _, q := range other.Perils {
			all++
			if !p.All.Worse(t, q.All) {
				fine++
			}
		}
	}
	return share(fine, all)
}

// WorkNoWorse compares the work in the cheapest plans of an answer with what
// was asked for.
func WorkNoWorse(t *stage.Table, one Answer, asked Peril) Share {
	return share(one.healthy(t, asked), len(one.Perils))
}

func share(fine, all int) Share {
	switch fine {
	case 0:
		return NoPair
	case all:
		return EveryPair
	}
	return SomePairs
}

// SolveNow answers a wish that has to be begun at once with a layer, without
// risk or question.
func SolveNow(t *stage.Table, w stage.Wish, layer int) Answer {
	j := newJob(t, w)
	j.order, j.begin = Safest, layer
	return j.solve()
}

// InPlace are the wishes with another medium in the place of a layer, in those
// of its ways that serve it, and in none.
func InPlace(t *stage.Table, w stage.Wish, layer, medium int) []stage.Wish {
	return []stage.Wish{
		with(w, layer, stage.Layer{Medium: medium, Ways: serving(t, medium, w.Layers[layer].Ways)}),
		with(w, layer, stage.Layer{Medium: medium}),
	}
}

// OtherLaying are the wishes in which a layer that is laid on in some way is
// laid on in another one that lays a whole coat, with that way.
func OtherLaying(t *stage.Table, w stage.Wish, layer int) map[int]stage.Wish {
	all := map[int]stage.Wish{}
	l := w.Layers[layer]
	if l.Medium < 0 || len(l.Ways) == 0 || t.Techniques[l.Ways[0]].Takes {
		return nil
	}
	for q, technique := range t.Techniques {
		if technique.Coats && !slices.Contains(l.Ways, q) && len(serving(t, l.Medium, []int{q})) > 0 {
			other := l
			other.Ways = slices.Clone(l.Ways)
			other.Ways[0] = q
			all[q] = with(w, layer, other)
		}
	}
	return all
}

// Cooler are the ways of laying a layer on that save a firing, at no more risk
// and no more questions than the best plan: those that are surely not worse for
// health, and those that perhaps are not.
func Cooler(t *stage.Table, w stage.Wish, layer int, best Answer) (sure, may []int) {
	others := OtherLaying(t, w, layer)
	for q := range t.Techniques {
		other, is := others[q]
		if !is {
			continue
		}
		a := Solve(t, other, Safest)
		more := slices.Compare(a.Cost[:Firings], best.Cost[:Firings]) > 0
		if !a.Possible || a.Cost[Firings] >= best.Cost[Firings] || more {
			continue
		}
		switch NoWorse(t, a, best) {
		case EveryPair:
			sure = append(sure, q)
			fallthrough
		case SomePairs:
			may = append(may, q)
		}
	}
	return sure, may
}

// Riskier is the best plan in another order of preference, which is better in
// one place of its cost and worse in risks and questions, and whose work is
// easy; NoPair when it is not.
func Riskier(t *stage.Table, w stage.Wish, best Answer, o Order, place int) (Answer, Share) {
	a := Solve(t, w, o)
	doubts := func(c Cost) int { return c[Risky] + c[Questions] }
	if a.Cost[place] >= best.Cost[place] || doubts(a.Cost) <= doubts(best.Cost) || a.Cost[Undone] > best.Cost[Undone] {
		return a, NoPair
	}
	free := a
	free.Perils = slices.DeleteFunc(slices.Clone(a.Perils), func(p Both) bool { return !easy(t, p.Work) })
	if share := NoWorse(t, free, best); len(free.Perils) == len(a.Perils) {
		return a, share
	} else {
		return a, min(share, SomePairs)
	}
}

// easy reports whether a student does some work alone and anywhere: nothing in
// it that harms health wants a place of its own (rule 13).
func easy(t *stage.Table, p Peril) bool {
	for i, h := range t.Hazards {
		if p.Hazards&(1<<i) != 0 && h.Health && h.Place != "" {
			return false
		}
	}
	return p.Who == stage.Student
}

// GoesNow says how surely a medium in the place of a layer goes on at once,
// without risk or question, leads to a finished pot, and is not worse for health
// than the best plan, or where there is none, than the wish.
func GoesNow(t *stage.Table, w stage.Wish, layer, medium int, best Answer) Share {
	found := NoPair
	m := t.Media[medium]
	beside := func(i int) bool { return i >= 0 && i < len(w.Layers) && w.Layers[i].Medium == medium }
	if m.Kind == stage.Glaze || m.Kind == stage.Resist || m.Who != stage.Student || beside(layer-1) || beside(layer) || beside(layer+1) {
		return NoPair
	}
	for _, other := range InPlace(t, w, layer, medium) {
		a := SolveNow(t, other, layer)
		switch {
		case !a.Possible:
		case best.Possible:
			found = max(found, NoWorse(t, a, best))
		default:
			found = max(found, WorkNoWorse(t, a, Asked(t, w)))
		}
	}
	return found
}

// FirstDecor is the first layer of a wish that is more than a glaze or a
// resist; -1 = none.
func FirstDecor(t *stage.Table, w stage.Wish) int {
	return slices.IndexFunc(w.Layers, func(l stage.Layer) bool { return l.Medium >= 0 && decorates(t, []stage.Layer{l}) })
}
