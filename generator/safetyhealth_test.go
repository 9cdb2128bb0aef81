package main

import (
	"slices"
	"strings"
	"testing"

	"slipbook/calculators/stage"
	"slipbook/calculators/stage/stagetest/oracle"
	"slipbook/generator/course"
)

// staged is a wish as the planner takes it.
func (b *bench) staged(t *testing.T, table *stage.Table, w wish) stage.Wish {
	understood, err := table.Layers(w.text(b.metalWord()))
	if err != nil {
		t.Fatal(err)
	}
	planned := stage.Wish{State: -1, Layers: understood.Layers, Apart: w.apart, Food: w.food, Bare: w.bare, Body: -1}
	for i, s := range table.States {
		if s.ID == w.state {
			planned.State = i
		}
		for k, p := range s.Parts {
			if p.ID+"-"+s.ID == w.state {
				planned.State, planned.Part = i, k+1
			}
		}
	}
	return planned
}

// TestNothingWorseForHealthIsNamed holds what plans of the demo course's table
// name beside themselves, and what they name in the place of what cannot be had,
// to the second planner: it is so, and it is not worse for health.
func TestNothingWorseForHealthIsNamed(t *testing.T) {
	b := newBench(demoTable(t))
	table := b.d.Table()
	nearest, today, fewer, shorter := 0, 0, 0, 0
	for _, w := range append(each(4, everywhere(b.single())), b.twoLayers(400)...) {
		wish := b.staged(t, table, w)
		p, best := table.Plan(wish), oracle.Solve(table, wish, oracle.Safest)
		if best.Possible != (p.Conflict == nil) {
			t.Fatalf("%s: the second planner finds a plan: %v, the first %+v", oracle.Tell(table, wish), best.Possible, p.Conflict)
		}
		if got := (oracle.Cost{p.Undone, p.Risky, p.Questions, p.Firings, p.Away, len(p.Steps)}); best.Possible && got != best.Cost {
			t.Fatalf("%s: the second planner's plan costs %v %v, the first's %v", oracle.Tell(table, wish), best.Cost, best.Steps, got)
		}
		if p.Conflict != nil && len(p.Steps) > 0 {
			nearest++
			if work(p).Worse(table, oracle.Asked(table, wish)) {
				t.Errorf("%s: worse for health: %s", oracle.Tell(table, wish), p.Conflict.Changed)
			}
		}
		today += heldToday(t, table, wish, p, best)
		fewer += heldFewer(t, table, wish, p, best)
		shorter += heldShorter(t, table, wish, p, best)
		if t.Failed() {
			return
		}
	}
	if nearest < 100 || today < 50 || fewer < 10 || shorter < 10 {
		t.Errorf("named: %d nearest, %d for today, %d with fewer firings, %d shorter", nearest, today, fewer, shorter)
	}
}

// work is what hands do in a plan can do to people.
func work(p stage.Plan) (all oracle.Peril) {
	for _, s := range p.Steps {
		if slices.Contains([]string{"put on", "work", "wash off", "on-glaze fire"}, s.Action) {
			all = all.Join(oracle.Peril{Hazards: s.Hazards, Who: s.Who})
		}
	}
	return all
}

// named returns which of n things some words name: "a, b or c".
func named(text string, name func(int) string, n int) []int {
	var all []int
	for i := range n {
		if strings.Contains(" "+strings.NewReplacer(",", " ", ".", " ", ":", " ").Replace(text)+" ", " "+strings.ToLower(name(i))+" ") {
			all = append(all, i)
		}
	}
	return all
}

// heldToday holds what is named for today to the second planner; it returns how
// many media those are.
func heldToday(t *testing.T, table *stage.Table, w stage.Wish, p stage.Plan, best oracle.Answer) int {
	_, list, ok := strings.Cut(p.Today, "”: ")
	if !ok {
		return 0
	}
	layer := oracle.FirstDecor(table, w)
	media := mediaNamed(table, strings.TrimSuffix(list, "."))
	if len(media) == 0 {
		t.Errorf("%s: %q names no media", oracle.Tell(table, w), p.Today)
	}
	for _, m := range media {
		if oracle.GoesNow(table, w, layer, m, best) == oracle.NoPair {
			t.Errorf("%s: %q names %q", oracle.Tell(table, w), p.Today, table.Media[m].Name)
		}
	}
	return len(media)
}

// mediaNamed reads "a, b or c", where a name may itself hold an "or"; it returns
// none when some name is no medium's.
func mediaNamed(table *stage.Table, list string) []int {
	var all []int
	for list != "" {
		found, after := -1, ""
		for i, m := range table.Media {
			rest, is := strings.CutPrefix(list, strings.ToLower(m.Name[:1])+m.Name[1:])
			parted := strings.TrimPrefix(strings.TrimPrefix(rest, ", "), " or ")
			if is && (rest == "" || parted != rest) && (found < 0 || len(m.Name) > len(table.Media[found].Name)) {
				found, after = i, parted
			}
		}
		if found < 0 {
			return nil
		}
		all, list = append(all, found), after
	}
	return all
}

// heldFewer holds a way with fewer firings to the second planner.
func heldFewer(t *testing.T, table *stage.Table, w stage.Wish, p stage.Plan, best oracle.Answer) int {
	list, _, ok := strings.Cut(p.Fewer, ":")
	if !ok {
		return 0
	}
	for i, l := range w.Layers {
		ways, found := strings.CutPrefix(list, table.Media[max(0, l.Medium)].Name+" by ")
		if !found || l.Medium < 0 {
			continue
		}
		_, may := oracle.Cooler(table, w, i, best)
		for _, q := range named(ways, func(q int) string { return table.Techniques[q].Name }, len(table.Techniques)) {
			if !slices.Contains(may, q) {
				t.Errorf("%s: %q", oracle.Tell(table, w), p.Fewer)
			}
		}
	}
	return 1
}

// heldShorter holds a shorter way to the second planner.
func heldShorter(t *testing.T, table *stage.Table, w stage.Wish, p stage.Plan, best oracle.Answer) int {
	if p.Shorter == "" {
		return 0
	}
	_, steps := oracle.Riskier(table, w, best, oracle.Shortest, oracle.Actions)
	_, firings := oracle.Riskier(table, w, best, oracle.Coolest, oracle.Firings)
	if steps == oracle.NoPair && firings == oracle.NoPair {
		t.Errorf("%s: %q", oracle.Tell(table, w), p.Shorter)
	}
	return 1
}

// TestNobodySpraysOxideOrEnamel makes sure that no plan sprays them, asked for
// or not, and that no way is named that does.
func TestNobodySpraysOxideOrEnamel(t *testing.T) {
	b := newBench(demoTable(t))
	s, asked := settingsOf(b.d), 0
	for _, w := range everywhere(append(b.single(), b.worked()...)) {
		base := b.base[w.layers[0].id()]
		if base != "oxide-wash" && base != "enamel" {
			continue
		}
		a := b.plan(s, w)
		sprays := slices.ContainsFunc(w.layers[0].ways, func(q *course.Technique) bool { return q.ID == "spraying" })
		if sprays {
			asked++
			if output(a, "conflict") == "" {
				t.Errorf("a %s pot: %s is planned", w.state, w.said(""))
			}
		}
		for _, row := range rowsOf(a) {
			for _, name := range []string{"oxide wash", "enamel"} {
				if strings.Contains(strings.ToLower(row["title"]), name) && strings.Contains(row["title"], "spraying") {
					t.Errorf("a %s pot, %s: %s", w.state, w.said(""), row["title"])
				}
			}
		}
		for _, text := range []string{output(a, "today"), output(a, "fewer-firings"), output(a, "nearest"), strings.Join(a.Notes, " ")} {
			if strings.Contains(strings.ToLower(text), "spraying") && !strings.Contains(text, "glaze by") {
				t.Errorf("a %s pot, %s: %s", w.state, w.said(""), text)
			}
		}
	}
	if asked < 50 {
		t.Errorf("it was asked for %d times", asked)
	}
}
