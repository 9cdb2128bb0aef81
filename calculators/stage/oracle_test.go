package stage_test

import (
	"flag"
	"math/rand/v2"
	"strings"
	"testing"

	"slipbook/calculators/stage"
	"slipbook/calculators/stage/stagetest"
	"slipbook/calculators/stage/stagetest/oracle"
)

// wishes is how many random wishes the planner is held against the oracle with;
// -wishes 60000 tries more.
var wishes = flag.Uint64("wishes", 4000, "random wishes for the oracle")

// eachWish makes random wishes, each on a table of its own, and reports the
// first on which a check fails.
func eachWish(t *testing.T, seed, share uint64, check func(t *testing.T, table *stage.Table, w stage.Wish)) {
	t.Helper()
	for n := range *wishes / share {
		table, w := stagetest.Random(rand.New(rand.NewPCG(n, seed)), 3)
		check(t, table, w)
		if t.Failed() {
			t.Fatalf("wish %d: %s", n, oracle.Tell(table, w))
		}
	}
}

// costOf is what a plan says that it costs.
func costOf(p stage.Plan) oracle.Cost {
	return oracle.Cost{p.Undone, p.Risky, p.Questions, p.Firings, p.Away, len(p.Steps)}
}

// TestPlanIsTheOracles wants a plan where the oracle finds one, a conflict where
// it finds none, and of the same cost in every place.
func TestPlanIsTheOracles(t *testing.T) {
	plans := uint64(0)
	eachWish(t, 11, 1, func(t *testing.T, table *stage.Table, w stage.Wish) {
		a, p := oracle.Solve(table, w, oracle.Safest), table.Plan(w)
		if a.Possible != (p.Conflict == nil) {
			t.Errorf("the oracle finds a plan: %v %v, the planner a conflict %+v", a.Possible, a.Steps, p.Conflict)
		}
		if a.Possible && p.Conflict == nil {
			plans++
			if a.Cost != costOf(p) {
				t.Errorf("the oracle's plan costs %v %v, the planner's %v %s", a.Cost, a.Steps, costOf(p), told(p))
			}
		}
	})
	if plans < *wishes/4 {
		t.Errorf("only %d of %d wishes had a plan", plans, *wishes)
	}
}

// told is a plan's steps in a line.
func told(p stage.Plan) string {
	var all []string
	for _, step := range p.Steps {
		all = append(all, step.What)
	}
	return strings.Join(all, " | ")
}

// TestNearestIsTheOracles wants what stands in for an impossible wish to be of
// the first kind in which the oracle finds one that is not worse for health, and
// the cheapest of that kind.
func TestNearestIsTheOracles(t *testing.T) {
	seen := map[string]int{}
	eachWish(t, 12, 4, func(t *testing.T, table *stage.Table, w stage.Wish) {
		p := table.Plan(w)
		if p.Conflict == nil {
			return
		}
		kind, ok := nearestKind(table, w, p)
		if !ok {
			t.Errorf("the planner offers %q (%s) for %v, the oracle %+v", p.Conflict.Nearest, p.Conflict.Changed, costOf(p), oracle.Nearest(table, w))
		}
		seen[kind]++
	})
	for _, kind := range []string{"order", "one way open", "all ways open", "another medium", "on the fired glaze", "one layer less", "a new pot", ""} {
		if seen[kind] == 0 {
			t.Errorf("no wish was mended by %q", kind)
		}
	}
	t.Log(seen)
}

// nearestKind is the kind of which the nearest wish of a plan can be, and
// reports whether the oracle agrees that it is the one. Where only some of a
// wish's cheapest plans are worse for health, either answer is right.
func nearestKind(table *stage.Table, w stage.Wish, p stage.Plan) (string, bool) {
	found := p.Conflict.Nearest != ""
	for _, kind := range oracle.Nearest(table, w) {
		sure, best := false, oracle.Cost{}
		for _, c := range kind.Sure {
			if !sure || oracle.Safest.Compare(c, best) < 0 {
				sure, best = true, c
			}
		}
		if sure && costOf(p) == best {
			return kind.Kind, found
		}
		for _, c := range kind.Open {
			if c == costOf(p) && (!sure || oracle.Safest.Compare(c, best) < 0) {
				return kind.Kind, found
			}
		}
		if sure {
			return kind.Kind, false
		}
	}
	return "", !found
}
