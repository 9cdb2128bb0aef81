package course_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"slipbook/generator/course"
)

// TestLimits wants of every law an answer about everything, and no figure without a
// source and the day on which it was read.
func TestLimits(t *testing.T) {
	unit := regexp.MustCompile(`^[0-9.]+( (mg/m³|ppm|mg/L|mg/dm²)( \([0-9.]+ (µg/m³|mg/m³)\))?)?$`)
	for _, about := range course.Topics {
		for _, law := range course.Laws {
			own := (&course.Course{Law: law}).LimitsOf(about, false)
			if len(own) != 1 {
				t.Errorf("%s, %s: %d answers, want one", about, law, len(own))
				continue
			}
			l := own[0]
			if l.Ask == "" || (len(l.Rows) > 0) != (l.Source != "") || (l.Source != "") != (l.Read != "") {
				t.Errorf("%s, %s: figures without source and day, or nobody to ask: %+v", about, law, l)
			}
			for _, row := range l.Rows {
				if row.Of == "" || about != "labels" && !unit.MatchString(row.Most) {
					t.Errorf("%s, %s: %+v", about, law, row)
				}
			}
		}
		if all := (&course.Course{}).LimitsOf(about, false); len(all) < 3 || !slices.Equal(all, (&course.Course{Law: "GB"}).LimitsOf(about, true)) {
			t.Errorf("%s: a course without a law, and one that compares, show %d and others", about, len(all))
		}
	}
}

// TestFoodLimitsAsPublished compares the figures of food laws with the list of limits
// that was put together from the sources by itself.
func TestFoodLimitsAsPublished(t *testing.T) {
	published := publishedLimits(t)
	rowOf := map[string]string{
		"US lead flatware": "Lead: plates", "US lead cup": "Lead: cups", "US lead jug": "Lead: cups", "US lead small-hollowware": "Lead: bowls under",
		"US lead large-hollowware": "Lead: bowls of", "US cadmium flatware": "Cadmium: plates", "US cadmium cup": "Cadmium: plates",
		"US cadmium small-hollowware": "Cadmium: plates", "US cadmium large-hollowware": "Cadmium: bowls and jugs", "US cadmium jug": "Cadmium: bowls and jugs",
		"EU lead flatware": "Lead: what cannot", "EU cadmium flatware": "Cadmium: what cannot", "EU lead cooking-ware": "Lead: for cooking", "EU cadmium cooking-ware": "Cadmium: for cooking",
		"EU lead storage": "Lead: for cooking", "EU cadmium storage": "Cadmium: for cooking",
	}
	compared := 0
	for _, p := range published {
		metal, ware, limit, unit, law := p[0], p[1], p[2], strings.Replace(p[3], "dm2", "dm²", 1), p[5]
		begins, there := rowOf[law+" "+metal+" "+ware]
		if !there && law == "EU" {
			begins, there = strings.ToUpper(metal[:1])+metal[1:]+": all else", true
		}
		if !there {
			continue // the cooking ware and the jars of the United States are bowls there
		}
		rows := (&course.Course{Law: law}).LimitsOf("food-leach", false)[0].Rows
		i := slices.IndexFunc(rows, func(l course.Limit) bool { return strings.HasPrefix(l.Of, begins) })
		if i < 0 || rows[i].Most != limit+" "+unit {
			t.Errorf("%s, %s of %s: %s %s is published, the list has %v", law, metal, ware, limit, unit, rows)
		}
		compared++
	}
	if compared < 20 {
		t.Errorf("only %d compared", compared)
	}
}
