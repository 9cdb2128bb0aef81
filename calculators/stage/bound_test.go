package stage_test

import (
	"testing"

	"slipbook/calculators/stage"
	"slipbook/calculators/stage/stagetest"
)

// TestPlanningEnds wants the work for a plan to be bounded whatever the table,
// and a wish that takes more to be answered so and with nothing else.
func TestPlanningEnds(t *testing.T) {
	table, wishes := stagetest.Wide(70, 40)
	tooMany := 0
	for i, w := range wishes {
		p, work := table.PlanWork(w)
		if work > stage.MostWork+1000 { // searches begun after the end stop at their first pot
			t.Errorf("wish %d: %d pots expanded", i, work)
		}
		switch {
		case p.TooMany && (len(p.Steps) > 0 || p.Conflict != nil || p.Today+p.Shorter+p.Fewer != ""):
			t.Errorf("wish %d: too many ways, and yet %+v", i, p)
		case p.TooMany:
			tooMany++
		case len(p.Steps) == 0 && p.Conflict == nil:
			t.Errorf("wish %d: neither plan nor conflict", i)
		}
	}
	if tooMany == 0 || tooMany > len(wishes)/2 {
		t.Errorf("%d of %d wishes have too many ways; the bound is not where it was", tooMany, len(wishes))
	}
}

// BenchmarkPlans says how long the planner takes at worst: for wishes that
// reach the bound on work.
func BenchmarkPlans(b *testing.B) {
	table, wishes := stagetest.Wide(70, 40)
	var hardest []stage.Wish
	for _, w := range wishes {
		if _, work := table.PlanWork(w); work >= stage.MostWork {
			hardest = append(hardest, w)
		}
	}
	for i := 0; b.Loop(); i++ {
		table.Plan(hardest[i%len(hardest)])
	}
}
