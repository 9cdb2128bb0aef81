package main

import (
	"strings"
	"testing"

	"slipbook/generator/course"
)

// newHazard is a hazard that no table has.
var newHazard = course.Hazard{ID: "test", Title: "A test", Short: "Mind the test.", Wear: []string{"a paper hat"}, Place: "booth", Health: true}

// withHazard is the demo course's table with a new hazard in it.
func withHazard(t *testing.T) *course.Decoration {
	d := demoTable(t)
	d.Hazards = append(d.Hazards, newHazard)
	return d
}

// TestHazardsOfAnEditedTable adds a hazard to one row of the table of each
// sort, and a stricter person, and wants both in every step that rests on that
// row.
func TestHazardsOfAnEditedTable(t *testing.T) {
	add := func(c *course.Care) {
		c.Hazards, c.Who = append(c.Hazards, newHazard.ID), course.Instructor
	}
	for _, c := range []struct {
		row  string
		edit func(d *course.Decoration)
	}{
		{"a medium", func(d *course.Decoration) { m, _ := d.FindMedium("coloured-slip"); add(&m.Care) }},
		{"a medium in a state", func(d *course.Decoration) {
			m, _ := d.FindMedium("underglaze")
			p := m.On["bone-dry"]
			add(&p.Care)
			m.On["bone-dry"] = p
		}},
		{"a technique", func(d *course.Decoration) { q, _ := d.FindTechnique("dipping"); add(&q.Care) }},
		{"a technique in a state", func(d *course.Decoration) { q, _ := d.FindTechnique("brushing"); add(&q.On["bisque"][0].Care) }},
		{"a medium over another", func(d *course.Decoration) {
			for i := range d.Overs {
				if d.Overs[i].Under == "stain-wash" && d.Overs[i].Above == "glaze" {
					add(&d.Overs[i].Care)
				}
			}
		}},
		{"a transition", func(d *course.Decoration) { add(&d.Transitions[0].Care) }},
		{"the on-glaze firing", func(d *course.Decoration) { add(&d.Firing.Care) }},
		{"the metals", func(d *course.Decoration) { add(&d.Metals.Care) }},
		{"a recipe card", func(d *course.Decoration) {
			for i := range d.Exceptions {
				if d.Exceptions[i].Kind == "recipe" {
					add(&d.Exceptions[i].Care)
				}
			}
		}},
	} {
		d := withHazard(t)
		c.edit(d)
		b := newBench(d)
		if met := b.sweep(t, append(each(11, everywhere(b.single())), b.twoLayers(150)...)); met.cautions[newHazard.Short] == 0 {
			t.Errorf("%s: no step warns of it", c.row)
		}
	}
}

// TestEveryPlanOfAMediumWarns adds a hazard to a medium and wants its sentence,
// what to wear, the place and the person in every step that lays it on.
func TestEveryPlanOfAMediumWarns(t *testing.T) {
	d := withHazard(t)
	m, _ := d.FindMedium("stain-wash")
	m.Hazards, m.Who = append(m.Hazards, newHazard.ID), course.Instructor
	b := newBench(d)
	s, laid := settingsOf(d), 0
	for _, w := range everywhere(b.single()) {
		if w.layers[0].id() != m.ID {
			continue
		}
		for _, row := range rowsOf(b.plan(s, w)) {
			if title := row["title"]; title != "Put on stain wash" && !strings.HasPrefix(title, "Put on stain wash: ") {
				continue
			}
			laid++
			if !strings.Contains(row["caution"], newHazard.Short) || !strings.Contains(row["wear"], "a paper hat") || row["place"] == "" || row["who"] != people[2].words {
				t.Fatalf("%v: %v", w, row)
			}
		}
	}
	if laid < 50 {
		t.Errorf("stain wash was laid on in %d steps", laid)
	}
}

// TestBasisOfAnEditedTable turns all rules of one sort into those of another,
// and wants every conflict to say so.
func TestBasisOfAnEditedTable(t *testing.T) {
	for _, c := range [][2]string{{"physics", "house"}, {"trade", "physics"}, {"house", "trade"}} {
		d := demoTable(t)
		everyPair(d, func(p *course.Pair) {
			if p.Rule == c[0] {
				p.Rule = c[1]
			}
		})
		b := newBench(d)
		if met := b.sweep(t, each(3, everywhere(b.single()))); met.rests[c[0]] > 0 || met.rests[c[1]] == 0 {
			t.Errorf("%s became %s: %v", c[0], c[1], met.rests)
		}
	}
}

// everyPair changes every pair of a table.
func everyPair(d *course.Decoration, change func(*course.Pair)) {
	on := func(pairs map[string]course.Pair) {
		for state, p := range pairs {
			change(&p)
			pairs[state] = p
		}
	}
	for i := range d.Media {
		on(d.Media[i].On)
	}
	for i := range d.Exceptions {
		on(d.Exceptions[i].On)
	}
	for i := range d.Techniques {
		for _, cell := range d.Techniques[i].On {
			for k := range cell {
				change(&cell[k].Pair)
			}
		}
	}
	for i := range d.Overs {
		change(&d.Overs[i].Pair)
	}
}
