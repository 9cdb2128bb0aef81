package proof

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"slipbook/generator/course"
	"slipbook/generator/finding"
)

// floor checks that an entry says no less than what the program knows of all of its
// kind: its hazards, as long as it comes in the same form, and that what is raw metal,
// or never goes where food does, is not for students alone.
func (g *gate) floor(m *course.Material) {
	if kind, there := g.course.FindGeneric(m.Is); there && kind.Form == m.Form {
		gone := slices.DeleteFunc(slices.Clone(kind.Hazards), func(id string) bool { return slices.Contains(m.Hazards, id) })
		if len(gone) > 0 {
			g.report(m.Spots.Of("hazards"), finding.MaterialFloor, fmt.Sprintf("%s lacks what every `%s` has: %s", m.Name, m.Is, strings.Join(gone, ", ")),
				"Add it to `hazards`, or take `hazards` away so that those of its kind hold.")
		}
	}
	if cmp.Or(m.Who, course.Student) != course.Student {
		return
	}
	if slices.Contains(m.Hazards, "raw-metal") {
		g.report(m.Spots.Of("who"), finding.MaterialFloor, m.Name+" is a raw metal, and nothing says that the instructor is there", "Write `who: with-instructor` or `who: instructor`.")
		return
	}
	for _, metal := range m.Metals {
		if slices.Contains(g.course.Decoration.Metals.NeverFood, metal) {
			g.report(m.Spots.Of("who"), finding.MaterialFloor, fmt.Sprintf("%s holds %s, and nothing says that the instructor is there", m.Name, metal), "Write `who: with-instructor` or `who: instructor`.")
			return
		}
	}
}
