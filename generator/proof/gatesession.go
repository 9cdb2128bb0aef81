package proof

import (
	"fmt"

	"slipbook/generator/course"
	"slipbook/generator/finding"
)

// session checks that a class which works with what students do not handle alone
// says that the instructor is there.
func (g *gate) session(s *course.Session) {
	if s.With == course.WithTheInstructor {
		return
	}
	for _, m := range s.Mix {
		if r, there := g.course.FindRecipe(m.Recipe); there {
			g.person(m.Spots.Of("recipe"), m.Recipe, g.course.MixingCare(r)...)
		}
	}
	for n, id := range s.Tubs {
		if m, there := g.course.FindMaterial(id); there {
			g.person(s.TubSpots[n], id, m.Care)
		}
	}
}

// person reports what is not for every student.
func (g *gate) person(at finding.Spot, what string, rows ...course.Care) {
	_, who := g.course.Decoration.HazardsOf(rows...)
	whose, strict := map[course.Who]string{
		course.WithInstructor: "students work with `%s` beside the instructor only",
		course.Instructor:     "only the instructor works with `%s`",
	}[who]
	if strict {
		g.report(at, finding.ClassPerson, fmt.Sprintf(whose, what)+", and this class does not say who is there", "Write `with: instructor` where the instructor is in the room all the time, or take something else.")
	}
}
