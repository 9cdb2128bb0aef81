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
		if exists && [5]int{p.Risky, p.Label, p.Firings, p.Away, len(p.Steps)} != best {
			t.Errorf("planned %v, best %v", [5]int{p.Risky, p.Label, p.Firings, p.Away, len(p.Steps)}, best)
		}
	})
}

// TestAllowed walks every plan with rules of its own and wants each step
// allowed and the pot finished.
func TestAllowed(t *testing.T) {
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
		if wrong := table.Walk(w); wrong != "" {
			t.Errorf("%s\n%+v", wrong, p.Steps)
		}
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

// TestMoreAllowed loosens one rule of a table: no plan may get worse by it. One
// exception is wanted: a coat of glaze that every layer may now simply go on is
// no longer washed off, though the layers would then be nearer to their best.
func TestMoreAllowed(t *testing.T) {
	each(t, 4, func(t *testing.T, seed uint64, table *stage.Table, w stage.Wish) {
		before, had := table.Cost(w)
		stood := table.InTheWay(w)
		random := rand.New(rand.NewPCG(seed, 9))
		rule := &table.Media[random.IntN(len(table.Media))].On[random.IntN(len(table.States))]
		if rule.Verdict == stage.Yes {
			return
		}
		rule.Verdict--
		after, has := table.Cost(w)
		if stood && !table.InTheWay(w) {
			before, after = before>>20, after>>20 // risk, questions and firings only
		}
		if had && (!has || after > before) {
			t.Errorf("cost %x became %x (%v)", before, after, has)
		}
	})
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
