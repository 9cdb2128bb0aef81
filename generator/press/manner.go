package press

import (
	"slices"
	"strings"

	"slipbook/generator/course"
)

// manner is a technique for those of its media of which the table says the
// same.
type manner struct {
	id   string // of the technique
	name string // with the media, but for the part with most of them
	best string // id of the state it is best in
	on   map[string]course.Pair
}

// manners parts a technique by its media, so that each part has one pair in
// each of some states, the part with most media first. Most techniques are one
// part.
func (p *Press) manners(t course.Technique, states ...course.State) []manner {
	type part struct {
		key   string
		names []string
		manner
	}
	var parts []part
	for _, m := range p.table.Media {
		if !goesWith(t, m.ID) {
			continue
		}
		key := ""
		for _, s := range states {
			key += string(rune('0' + slices.IndexFunc(t.On[s.ID], func(c course.Case) bool { return len(c.Only) == 0 || slices.Contains(c.Only, m.ID) })))
		}
		i := slices.IndexFunc(parts, func(o part) bool { return o.key == key })
		if i < 0 {
			on := map[string]course.Pair{}
			for _, s := range states {
				if pair := t.On[s.ID].For(m.ID); pair.Verdict != "" {
					on[s.ID] = pair
				}
			}
			i, parts = len(parts), append(parts, part{key, nil, manner{t.ID, t.Name, t.Best, on}})
		}
		parts[i].names = append(parts[i].names, strings.ToLower(m.Name))
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
