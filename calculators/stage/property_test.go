package stage_test

import (
	"math/rand/v2"
	"testing"

	"slipbook/calculators/stage"
	"slipbook/calculators/stage/stagetest"
)

// seeds is how many random tables and wishes each property is tried on.
const seeds = 4000

func each(t *testing.T, most int, check func(t *testing.T, seed uint64, table *stage.Table, w stage.Wish)) {
	t.Helper()
	for seed := range uint64(seeds) {
		table, w := stagetest.Random(rand.New(rand.NewPCG(seed, 3)), most)
		check(t, seed, table, w)
		if t.Failed() {
			t.Fatalf("seed %d: %+v", seed, w)
		}
	}
}

// TestBest compares every plan with the cheapest one that relaxation over all
// conditions of the pot finds, cost by cost in the stated order.
func TestBest(t *testing.T) {
	each(t, 3, func(t *testing.T, seed uint64, table *stage.Table, w stage.Wish) {
		best, exists := table.Relax(w)
		p := table.Plan(w)
		if exists != (p.Conflict == nil) {
			t.Errorf("a plan exists: %v, conflict %+v", exists, p.Conflict)
			return
		}
		if planned := [6]int{p.Undone, p.Risky, p.Questions, p.Firings, p.Away, len(p.Steps)}; exists && planned != best {
			t.Errorf("planned %v, best %v", planned, best)
		}
	})
}

// TestWorded wants every plan to say all that a step needs, and a conflict why.
func TestWorded(t *testing.T) {
	planned := 0
	each(t, 6, func(t *testing.T, seed uint64, table *stage.Table, w stage.Wish) {
		p := table.Plan(w)
		if p.Conflict != nil {
			if p.Conflict.What == "" || p.Conflict.Rule == "" {
				t.Errorf("a conflict without words: %+v", p.Conflict)
			}
			return
		}
		planned++
		for _, step := range p.Steps {
			if step.What == "" || step.Why == "" || step.Verdict == stage.Label && step.Ask == "" || step.Verdict == stage.Never {
				t.Errorf("step %+v", step)
			}
		}
	})
	if planned < seeds/10 {
		t.Errorf("only %d of %d wishes had a plan", planned, seeds)
	}
}

// TestRepair wants the nearest wish that a conflict names to work.
func TestRepair(t *testing.T) {
	repaired := 0
	each(t, 4, func(t *testing.T, seed uint64, table *stage.Table, w stage.Wish) {
		p := table.Plan(w)
		if p.Conflict == nil || p.Conflict.Changed == "" {
			return
		}
		repaired++
		if near, ok := table.Nearest(w); !ok || table.Plan(near).Conflict != nil || len(p.Steps) == 0 && len(near.Layers) > 0 && near.State < 5 {
			t.Errorf("%+v does not work either", near)
		}
	})
	if repaired < seeds/20 {
		t.Errorf("only %d wishes were repaired", repaired)
	}
}

// TestMoreAllowed loosens one rule of a table, of a medium, a technique or a
// medium over another: no plan may get worse by it in the order of preference.
func TestMoreAllowed(t *testing.T) {
	loosened := 0
	each(t, 4, func(t *testing.T, seed uint64, table *stage.Table, w stage.Wish) {
		before, had := table.Cost(w)
		rule := anyRule(rand.New(rand.NewPCG(seed, 9)), table, w)
		if rule.Verdict == stage.Yes {
			return
		}
		rule.Verdict--
		after, has := table.Cost(w)
		if had && !has {
			t.Errorf("cost %v became none", before)
		}
		// A risk loosened to a question leaves the risk of a step with another
		// one, and adds the question: that alone may count as more.
		if had && has && stage.Less(before, after) && rule.Verdict != stage.Label {
			t.Errorf("cost %v became %v", before, after)
		}
		if had && stage.Less(after, before) {
			loosened++
		}
	})
	if loosened < seeds/100 {
		t.Errorf("only %d plans got better: the property is hardly tried", loosened)
	}
}

// anyRule picks a rule that bears on a wish.
func anyRule(random *rand.Rand, table *stage.Table, w stage.Wish) *stage.Rule {
	state := random.IntN(len(table.States))
	layer := w.Layers[random.IntN(len(w.Layers))]
	if layer.Medium < 0 {
		return table.Techniques[layer.Ways[0]].On[state].For("")
	}
	switch random.IntN(4) {
	case 0:
		if len(layer.Ways) > 0 {
			return table.Techniques[layer.Ways[0]].On[state].For(table.Media[layer.Medium].Base)
		}
	case 1:
		if n := len(table.Overs); n > 0 {
			return &table.Overs[random.IntN(n)].Rule
		}
	}
	return &table.Media[layer.Medium].On[state]
}

// TestEncoding sends random tables through their text and back.
func TestEncoding(t *testing.T) {
	each(t, 2, func(t *testing.T, seed uint64, table *stage.Table, w stage.Wish) {
		text := table.Encode()
		back, err := stage.Decode(text)
		if err != nil || back.Encode() != text {
			t.Errorf("%v", err)
		}
	})
}
