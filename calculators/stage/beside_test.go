package stage_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"slipbook/calculators/stage"
	"slipbook/calculators/stage/stagetest/oracle"
)

// What a plan names beside itself is read back from its words here, and worked
// out again by the oracle: that it is so, and that it is not worse for health.
// Where cheapest plans of one wish differ in what they can do to people, either
// answer is right.

// TestFewerIsTheOracles wants the way with fewer firings where the oracle finds
// one, and none where it finds none.
func TestFewerIsTheOracles(t *testing.T) {
	named := 0
	eachWish(t, 13, 4, func(t *testing.T, table *stage.Table, w stage.Wish) {
		best := oracle.Solve(table, w, oracle.Safest)
		if !best.Possible {
			return
		}
		fewer := table.Plan(w).Fewer
		if fewer != "" {
			named++
		}
		for i := range w.Layers {
			ways, others := oracle.Cooler(table, w, i, best)
			sure, may := names(table, ways), names(table, others)
			if len(may) == 0 {
				continue
			}
			opening := table.Media[w.Layers[i].Medium].Name + " by "
			if is, ok := strings.CutPrefix(fewer, opening); ok {
				is, _, _ = strings.Cut(is, ":")
				if got := listOf(is); !within(sure, got) || !within(got, may) {
					t.Errorf("%q, the oracle: surely %v, perhaps %v", fewer, sure, may)
				}
				return
			}
			if len(sure) > 0 {
				t.Errorf("%q, the oracle: %s%v", fewer, opening, sure)
				return
			}
		}
		if fewer != "" {
			t.Errorf("%q, the oracle none", fewer)
		}
	})
	if named == 0 {
		t.Error("no way with fewer firings was ever named")
	}
}

// names are techniques in small letters.
func names(table *stage.Table, techniques []int) []string {
	var all []string
	for _, q := range techniques {
		all = append(all, strings.ToLower(table.Techniques[q].Name))
	}
	return all
}

// listOf parts "a, b or c".
func listOf(text string) []string {
	return strings.Split(strings.Replace(text, " or ", ", ", 1), ", ")
}

// within reports whether all of some names are among others.
func within(some, others []string) bool {
	for _, name := range some {
		if !slices.Contains(others, name) {
			return false
		}
	}
	return true
}

// TestShorterIsTheOracles wants a way with fewer steps, or firings, and more
// risk to be named where the oracle finds one that is not worse for health.
func TestShorterIsTheOracles(t *testing.T) {
	named := 0
	eachWish(t, 14, 4, func(t *testing.T, table *stage.Table, w stage.Wish) {
		best := oracle.Solve(table, w, oracle.Safest)
		if !best.Possible {
			return
		}
		text := table.Plan(w).Shorter
		if text != "" {
			named++
		}
		steps, share := riskier(table, w, best, oracle.Shortest, oracle.Actions, "step")
		firings, other := riskier(table, w, best, oracle.Coolest, oracle.Firings, "firing")
		if is := strings.Contains(text, steps); is && share == oracle.NoPair || !is && share == oracle.EveryPair {
			t.Errorf("%q, the oracle %q %v", text, steps, share)
		}
		if is := strings.Contains(text, firings); is && other == oracle.NoPair {
			t.Errorf("%q, the oracle %q %v", text, firings, other)
		}
		if text == "" && other == oracle.EveryPair {
			t.Errorf("nothing, the oracle %q", firings)
		}
	})
	if named == 0 {
		t.Error("no shorter way was ever named")
	}
}

// riskier is how the best plan in another order of preference would be named,
// and how surely it is not worse for health.
func riskier(table *stage.Table, w stage.Wish, best oracle.Answer, o oracle.Order, place int, word string) (string, oracle.Share) {
	a, share := oracle.Riskier(table, w, best, o, place)
	said := "With " + counted(best.Cost[place]-a.Cost[place], word) + " fewer, but "
	switch risks, asks := counted(a.Cost[oracle.Risky], "risky step"), counted(a.Cost[oracle.Questions], "question")+" to ask first"; {
	case a.Cost[oracle.Questions] == 0:
		said += risks + ":"
	case a.Cost[oracle.Risky] == 0:
		said += asks + ":"
	default:
		said += risks + " and " + asks + ":"
	}
	return said, share
}

func counted(n int, word string) string {
	if n != 1 {
		word += "s"
	}
	return fmt.Sprint(n, " ", word)
}

// TestTodayIsTheOracles wants each medium that is named for today to go on at
// once, without risk or question, to work with the whole wish, and not to be
// worse for health; and one to be named wherever the wish has no plan and the
// oracle finds one.
func TestTodayIsTheOracles(t *testing.T) {
	named := 0
	eachWish(t, 15, 4, func(t *testing.T, table *stage.Table, w stage.Wish) {
		layer := oracle.FirstDecor(table, w)
		p := table.Plan(w)
		if layer < 0 {
			if p.Today != "" {
				t.Errorf("%q for a wish that does not decorate", p.Today)
			}
			return
		}
		best := oracle.Solve(table, w, oracle.Safest)
		if !best.Possible && p.Today == "" {
			for m := range table.Media {
				if oracle.GoesNow(table, w, layer, m, best) == oracle.EveryPair {
					t.Errorf("nothing for today, the oracle %s", table.Media[m].Name)
				}
			}
		}
		if p.Today == "" {
			return
		}
		named++
		_, names, _ := strings.Cut(strings.TrimSuffix(p.Today, "."), ": ")
		for _, name := range listOf(names) {
			m := slices.IndexFunc(table.Media, func(m stage.Medium) bool { return strings.EqualFold(m.Name, name) })
			if m < 0 || oracle.GoesNow(table, w, layer, m, best) == oracle.NoPair {
				t.Errorf("%q, but not %s by the oracle", p.Today, name)
			}
		}
	})
	if named == 0 {
		t.Error("nothing was ever named for today")
	}
}
