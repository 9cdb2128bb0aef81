package main

import (
	"slices"
	"strings"
	"testing"

	"slipbook/calculators/form"
	"slipbook/generator/course"
)

// bases are the sentences that say what a rule rests on.
var bases = map[string]string{
	"physics": "That is physics: there is no way round it.",
	"trade":   "That is the custom of the trade: whoever does it knows the exception and has tested it. Ask the instructor before you try it.",
	"house":   "That is a rule of the house: ask the instructor.",
}

// blamed holds the rule that an answer blames to the row of the table that it
// is: the same reason, and what it rests on exactly as the row says. What is no
// row of the table rests on nothing. It returns what the row rests on.
func (b *bench) blamed(t *testing.T, w wish, a *form.Answer) string {
	what, rule := output(a, "conflict"), output(a, "rule")
	p, found := b.row(w, what)
	for _, base := range []string{"physics", "trade", "house"} {
		said := strings.Contains(rule, bases[base])
		if want := found && p.Rule == base; said != want {
			t.Errorf("%s %s: says %s: %v, the table %q (%v)", what, rule, base, said, p.Rule, found)
		}
	}
	if found && (p.Verdict != course.Never || strings.TrimSpace(strings.TrimSuffix(rule, bases[p.Rule])) != p.Reason) {
		t.Errorf("%s %s: the table says %s, %s", what, rule, p.Verdict, p.Reason)
	}
	if !found && strings.Contains(strings.ToLower(rule), "physics") {
		t.Errorf("%s %s: no row of the table", what, rule)
	}
	return p.Rule
}

// row finds the row of the table that an answer blames: "Engobe on a pot that
// is “wet”." or "Glaze by brushing over stain wash that no firing has fixed."
func (b *bench) row(w wish, what string) (course.Pair, bool) {
	if name, at, ok := strings.Cut(what, " on a pot that is “"); ok {
		state := b.state(strings.TrimSuffix(at, "”."))
		if m := b.medium(name); m != nil && m.On[state].Verdict == course.Never {
			return m.On[state], true
		}
		for _, q := range b.techniques(strings.ToLower(name)) {
			for _, l := range w.layers {
				if p := q.On[state].For(b.base[l.id()]); slices.Contains(l.ways, q) && p.Verdict == course.Never {
					return p, true
				}
			}
		}
		return course.Pair{}, false
	}
	above, under, ok := strings.Cut(strings.TrimSuffix(what, " that no firing has fixed."), " over ")
	if !ok {
		return course.Pair{}, false
	}
	above, _, _ = strings.Cut(above, " by ")
	m, below := b.medium(above), b.medium(strings.TrimSuffix(under, "."))
	if m == nil || below == nil {
		return course.Pair{}, false
	}
	return b.rowOver(w, m, below)
}

// blown reports whether a medium goes on in a way that blows another about which
// harms while it is loose, or is peeled off it again.
func (b *bench) blown(w wish, above, below *course.Medium) bool {
	harms := below.Kind == "on-glaze" || below.Who != "" && below.Who != course.Student || w.metal == below.ID
	return harms && (above.Fixed == course.Peeled || slices.ContainsFunc(w.layers, func(l layer) bool {
		return l.id() == above.ID && slices.ContainsFunc(l.ways, func(q *course.Technique) bool { return slices.Contains(b.d.Metals.NotOver, q.ID) })
	}))
}

// rowOver finds the row of one medium over another. A way of working that has to
// wait until the lower one is fixed makes a never of it that rests on no rule.
func (b *bench) rowOver(w wish, above, below *course.Medium) (course.Pair, bool) {
	for _, o := range b.d.Overs {
		if o.Under != b.base[below.ID] || o.Above != b.base[above.ID] {
			continue
		}
		p := o.Pair
		if b.blown(w, above, below) {
			return course.Pair{Verdict: course.Never, Reason: b.d.Metals.Reason}, true
		}
		for _, l := range w.layers {
			for _, q := range l.ways {
				if p.Verdict != course.Never && l.id() == above.ID && slices.Contains(o.Unless, q.ID) {
					p.Verdict, p.Rule = course.Never, ""
				}
			}
		}
		return p, true
	}
	return course.Pair{}, false
}
