package oracle

import (
	"fmt"
	"slices"
	"strings"

	"slipbook/calculators/stage"
)

// Tell writes a wish, and the rows of its table that can bear on it, in few
// words for a test that fails.
func Tell(t *stage.Table, w stage.Wish) string {
	var media, ways []int
	var b strings.Builder
	fmt.Fprintf(&b, "state %s, part %d, apart %v, bare %v, body %d; on it:", t.States[w.State].ID, w.Part, w.Apart, w.Bare, w.Body)
	for _, a := range w.Already {
		fmt.Fprintf(&b, " %s (loose %v)", t.Media[a.Medium].ID, a.Loose)
		media = append(media, a.Medium)
	}
	b.WriteString("; layers:")
	for _, l := range w.Layers {
		fmt.Fprintf(&b, " %s,", layerName(t, l))
		if l.Medium >= 0 {
			media = append(media, l.Medium)
		}
		ways = append(ways, l.Ways...)
	}
	if j := newJob(t, w); j.added >= 0 {
		media = append(media, j.added)
	}
	tellRows(&b, t, media, ways)
	return b.String()
}

// layerName is a layer in short: "underglaze+brushing (cobalt)".
func layerName(t *stage.Table, l stage.Layer) string {
	name := "the clay"
	if l.Medium >= 0 {
		name = t.Media[l.Medium].ID
	}
	for _, q := range l.Ways {
		name += "+" + t.Techniques[q].ID
	}
	if l.Metal != "" {
		name += " (" + l.Metal + ")"
	}
	return name
}

// tellRows writes the rows of some media and ways, and the transitions.
func tellRows(b *strings.Builder, t *stage.Table, media, ways []int) {
	for i, m := range t.Media {
		if slices.Contains(media, i) {
			fmt.Fprintf(b, "\n  %s kind %d fixed %d best %d heat %d:", m.ID, m.Kind, m.Fixed, m.Best, m.Heat)
			for k := range m.On {
				b.WriteString(" " + short(&m.On[k]))
			}
		}
	}
	for i, q := range t.Techniques {
		if slices.Contains(ways, i) {
			fmt.Fprintf(b, "\n  %s takes %v best %d:", q.ID, q.Takes, q.Best)
			for _, cell := range q.On {
				for k := range cell {
					fmt.Fprintf(b, " %v%s", cell[k].Only, short(&cell[k].Rule))
				}
				b.WriteString(" |")
			}
		}
	}
	for _, o := range t.Overs {
		if bears(t, media, o.Under) && bears(t, media, o.Above) {
			fmt.Fprintf(b, "\n  %s under %s: %s unless %v, fired %v", o.Under, o.Above, short(&o.Rule), o.Unless, o.Fired)
		}
	}
	b.WriteString("\n ")
	for _, tr := range t.Transitions {
		fmt.Fprintf(b, " %s %s", tr.ID, short(&tr.Rule))
	}
}

func bears(t *stage.Table, media []int, base string) bool {
	return slices.ContainsFunc(media, func(m int) bool { return t.Media[m].Base == base })
}

// short is a rule in two or three letters: its verdict, a question, its part.
func short(r *stage.Rule) string {
	text := "ylrn"[r.Verdict : r.Verdict+1]
	if r.Ask != "" {
		text += "?"
	}
	if r.Part > 0 {
		text += fmt.Sprint(r.Part)
	}
	return text
}
