package table

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
)

// filled is a chart of so many rows, each with one cell of so many letters.
func filled(rows, letters int) chartView {
	row := chartRow{Name: imprint.Link{Title: "Slip"}, Cells: []chartCell{{Line: Line{Verdict: "never", Short: strings.Repeat("a", letters)}}}}
	return chartView{Parts: []chartPart{{Rows: slices.Repeat([]chartRow{row}, rows)}}}
}

// TestSheetSize shows that a table which grows is set in smaller type, step by
// step and never larger again.
func TestSheetSize(t *testing.T) {
	var order []string
	chart := presstest.Studio(t).Print.Chart
	for _, size := range chart.Sizes {
		order = append(order, size.Class)
	}
	met := map[string]bool{}
	last := 0
	for rows := range 90 {
		now := slices.Index(order, chartSize(chart, filled(rows, 30)))
		if now < last {
			t.Errorf("%d rows are set in larger type than fewer", rows)
		}
		last = now
		met[order[now]] = true
	}
	if len(met) != len(order) {
		t.Errorf("sizes met: %q", slices.Sorted(maps.Keys(met)))
	}
}

func TestHeightCountsWhatWraps(t *testing.T) {
	chart := presstest.Studio(t).Print.Chart
	size := chart.Sizes[0].Points
	one, two := chartHeight(chart, filled(1, 18), size), chartHeight(chart, filled(1, 38), size)
	if got := two - one; got < size*chart.Leading-0.01 || got > size*chart.Leading+0.01 {
		t.Errorf("a second line takes %.2f points, want %.2f", got, size*chart.Leading)
	}
	v := filled(1, 18)
	v.Others = make([]chartOther, 4)
	if got, want := chartHeight(chart, v, size)-one, 3*size*chart.NoteLeading; math.Abs(got-want) > 0.01 {
		t.Errorf("four notes in threes with their heading take %.2f points, want %.2f", got, want)
	}
}

// TestRowOfAMediumHoldsItsSign shows that a row of a medium is as high as its sign in
// small type, but for the smallest, and that the sign takes room from its words.
func TestRowOfAMediumHoldsItsSign(t *testing.T) {
	chart := presstest.Studio(t).Print.Chart
	smallest, small := chart.Sizes[len(chart.Sizes)-1].Points, chart.Sizes[len(chart.Sizes)-2].Points
	way := filled(1, 18).Parts[0].Rows[0]
	medium := way
	medium.Name.Address = "media/slip.html"
	if got := rowHeight(chart, medium, small); got != chart.Sign {
		t.Errorf("a row of one line is %.2f points high, want %.2f", got, chart.Sign)
	}
	if got, want := rowHeight(chart, way, small), small*chart.Leading; math.Abs(got-want) > 0.01 {
		t.Errorf("a way of working of one line is %.2f points high, want %.2f", got, want)
	}
	if got, want := rowHeight(chart, medium, smallest), smallest*chart.Leading; math.Abs(got-want) > 0.01 {
		t.Errorf("a row of one line is %.2f points high in the smallest type, want %.2f", got, want)
	}
	largest := chart.Sizes[0].Points
	if got := rowHeight(chart, medium, largest); got <= rowHeight(chart, way, largest) {
		t.Errorf("the sign takes no room from the words: %.2f points", got)
	}
}

func TestLinesOf(t *testing.T) {
	for _, c := range []struct {
		text   string
		before int
		want   int
	}{{"", 0, 1}, {"ten letter", 0, 1}, {"ten letter", 1, 2}, {"zehn Bücher", 0, 2}, {strings.Repeat("a", 25), 5, 3}, {strings.Repeat("a", 25), 6, 4}} {
		if got := linesOf(c.text, c.before, 10); got != c.want {
			t.Errorf("%q after %d letters: %d lines, want %d", c.text, c.before, got, c.want)
		}
	}
}
