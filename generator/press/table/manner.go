package table

import (
	"slices"
	"strings"

	"slipbook/generator/course"
)

// manner is a technique for those of its media of which the table says the
// same.
type manner struct {
	id    string   // of the technique
	name  string   // with the media, but for the part with most of them
	media []string // ids
	best  string   // id of the state it is best in
	care  course.Care
	on    map[string]course.Pair
}

// manners parts a technique by its media, so that each part has one pair in
// each of some states, the part with most media first. Most techniques are one
// part.
func (r *Table) manners(t course.Technique, states ...course.State) []manner {
	type part struct {
		key   string
		names []string
		manner
	}
	var parts []part
	for _, m := range r.Decoration.Media {
		if !GoesWith(t, m.ID) {
			continue
		}
		key := casesOf(t, m.ID, states)
		i := slices.IndexFunc(parts, func(o part) bool { return o.key == key })
		if i < 0 {
			i, parts = len(parts), append(parts, part{key: key, manner: mannerOf(t, m.ID, states)})
		}
		parts[i].names = append(parts[i].names, strings.ToLower(m.Name))
		parts[i].media = append(parts[i].media, m.ID)
	}
	slices.SortStableFunc(parts, func(a, b part) int { return len(b.names) - len(a.names) })
	manners := make([]manner, len(parts))
	for n, part := range parts {
		manners[n] = part.manner
		if n > 0 {
			manners[n].name += ": " + strings.Join(part.names, ", ")
		}
	}
	return manners
}

// casesOf tells which case of a technique's cells is for a medium, state by
// state: media with the same are one manner.
func casesOf(t course.Technique, medium string, states []course.State) string {
	var key strings.Builder
	for _, s := range states {
		n := slices.IndexFunc(t.On[s.ID], func(c course.Case) bool { return len(c.Only) == 0 || slices.Contains(c.Only, medium) })
		key.WriteRune(rune('0' + n))
	}
	return key.String()
}

// mannerOf is a technique for one medium in some states.
func mannerOf(t course.Technique, medium string, states []course.State) manner {
	m := manner{id: t.ID, name: t.Name, best: t.Best, care: t.Care, on: map[string]course.Pair{}}
	for _, s := range states {
		if pair := t.On[s.ID].For(medium); pair.Verdict != "" {
			m.on[s.ID] = pair
		}
	}
	return m
}
