package course_test

import (
	"encoding/csv"
	"os"
	"slices"
	"strings"
	"testing"

	"slipbook/generator/course"
)

// verdict is a row of the table of verdicts as the trade has them, gathered
// before the table was written out.
type verdict struct{ what, state, verdict, best, rule string }

func practice(t *testing.T) []verdict {
	t.Helper()
	file, err := os.Open("../../testdata/published/decoration-verdicts.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var verdicts []verdict
	for _, row := range rows[1:] {
		if !strings.HasPrefix(row[5], "common practice") {
			t.Errorf("%s %s does not say that it is common practice", row[0], row[1])
		}
		verdicts = append(verdicts, verdict{row[0], row[1], row[2], row[3], row[4]})
	}
	return verdicts
}

// told is what the table says of one pair, as the table of verdicts
// writes it.
func told(what, state, best string, p course.Pair) verdict {
	v := verdict{what: what, state: state, verdict: string(p.Verdict), rule: p.Rule}
	if best == state {
		v.best = "best"
	}
	return v
}

// pairIn finds what a row is about: a medium, a technique, a medium by a
// technique, or a medium on an unfired one.
func pairIn(d *course.Decoration, row verdict) verdict {
	if under, layer := strings.CutPrefix(row.state, "unfired "); layer {
		if _, medium := d.FindMedium(under); medium {
			return over(d, row, under)
		}
	}
	if m, there := d.FindMedium(row.what); there {
		return told(row.what, row.state, m.Best, m.On[row.state])
	}
	medium, technique, one := strings.Cut(row.what, " by ")
	if !one {
		technique = row.what
	}
	q, there := d.FindTechnique(technique)
	if !there || (len(q.On[row.state]) > 1) != one {
		return verdict{}
	}
	return told(row.what, row.state, q.Best, q.On[row.state].For(medium))
}

// TestContentIsCommonPractice compares every row of common practice with
// the table, and makes sure that nothing in the table is without its row.
func TestContentIsCommonPractice(t *testing.T) {
	d := demo(t).Decoration
	seen := map[[2]string]bool{}
	for _, row := range practice(t) {
		if got := pairIn(d, row); got != row {
			t.Errorf("the table has %+v, common practice %+v", got, row)
		}
		if seen[[2]string{row.what, row.state}] {
			t.Errorf("common practice has two rows for %s, %s", row.what, row.state)
		}
		seen[[2]string{row.what, row.state}] = true
	}
	want := func(what, state string) {
		if !seen[[2]string{what, state}] {
			t.Errorf("common practice has no row for %s, %s", what, state)
		}
	}
	for _, s := range d.States {
		for _, m := range d.Media {
			want(m.ID, s.ID)
		}
		for _, q := range d.Techniques {
			if len(q.On[s.ID]) == 1 {
				want(q.ID, s.ID)
				continue
			}
			for _, id := range q.With {
				want(id+" by "+q.ID, s.ID)
			}
		}
	}
	for _, o := range d.Overs {
		want(o.Above, "unfired "+o.Under)
	}
}

// over is what the table says of the row of a layer on an unfired one.
func over(d *course.Decoration, row verdict, under string) verdict {
	above, brushed := strings.CutSuffix(row.what, " brushed")
	i := slices.IndexFunc(d.Overs, func(o course.Over) bool { return o.Under == under && o.Above == above })
	if i < 0 {
		return verdict{}
	}
	got := told(row.what, row.state, "", d.Overs[i].Pair)
	if brushed && slices.Contains(d.Overs[i].Unless, "brushing") {
		got.verdict, got.rule = "never", "until fired on"
	}
	return got
}
