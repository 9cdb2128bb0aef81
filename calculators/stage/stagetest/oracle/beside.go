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
