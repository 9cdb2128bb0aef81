package gathered

import (
	"cmp"
	"slices"

	"slipbook/generator/course"
	"slipbook/generator/press/care"
)

// mostCautions is how many hazards a card tells, each with what to do: whoever holds one
// reads no more. Those of a medium in every state are never cut; the rest is a link away.
const mostCautions = 5

// foremost keeps of a care the hazards that most of some rows name, in the table's order,
// and says whether any was left out.
func foremost(c care.Care, rows []course.Care, most int) (care.Care, bool) {
	most = max(most, 0)
	if len(c.Hazards) <= most {
		return c, false
	}
	named := map[string]int{}
	for _, row := range rows {
		for _, id := range row.Hazards {
			named[id]++
		}
	}
	first := slices.Clone(c.Hazards)
	slices.SortStableFunc(first, func(a, b care.Hazard) int { return cmp.Compare(named[b.ID], named[a.ID]) })
	kept := map[string]bool{}
	for _, h := range first[:most] {
		kept[h.ID] = true
	}
	c.Hazards = slices.DeleteFunc(slices.Clone(c.Hazards), func(h care.Hazard) bool { return !kept[h.ID] })
	return c, true
}
