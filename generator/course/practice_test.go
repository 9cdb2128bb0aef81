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
// before decoration.yaml was written out.
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

// told is what decoration.yaml says of one pair, as the table of verdicts
// writes it.
func told(what, state, best string, p course.Pair) verdict {
	v := verdict{what: what, state: state, verdict: string(p.Verdict), rule: p.Rule}
	if best == state {
		v.best = "best"
	}
	return v
}

// TestContentIsCommonPractice compares every row of common practice with
// decoration.yaml, and makes sure that no medium is without its row.
func TestContentIsCommonPractice(t *testing.T) {
	d := demo(t).Decoration
	rows := practice(t)
	for _, row := range rows {
		var got verdict
		under, layer := strings.CutPrefix(row.state, "unfired ")
		if m, there := d.FindMedium(row.what); there {
			got = told(row.what, row.state, m.Best, m.On[row.state])
		} else if q, there := d.FindTechnique(row.what); there {
			got = told(row.what, row.state, q.Best, q.On[row.state][0].Pair)
		}
		if _, medium := d.FindMedium(under); layer && medium {
			got = over(d, row, under)
		}
		if got != row {
			t.Errorf("decoration.yaml has %+v, common practice %+v", got, row)
		}
	}
	for _, m := range d.Media {
		for _, s := range d.States {
			if !slices.ContainsFunc(rows, func(v verdict) bool { return v.what == m.ID && v.state == s.ID }) {
				t.Errorf("common practice has no row for %s, %s", m.ID, s.ID)
			}
		}
	}
}

// over is what decoration.yaml says of the row of a layer on an unfired one.
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
