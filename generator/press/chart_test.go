package press

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/generator/course"
)

// pairsOf reads the links of an element as "words -> address".
func pairsOf(n *html.Node) []string {
	var all []string
	for _, a := range elements(n, called("a")) {
		all = append(all, text(a)+" -> "+attribute(a, "href"))
	}
	return all
}

func TestChartHasEveryPairInBothForms(t *testing.T) {
	c := small(t)
	slip := c.Decoration.Media[0].On["wet"]
	slip.Short = "Both shrink together."
	c.Decoration.Media[0].On["wet"] = slip
	root := pageOf(t, printed(t, c), "chart.html")
	table := elements(root, classed("chart"))
	if len(table) != 1 || table[0].Data != "table" {
		t.Fatalf("%d tables", len(table))
	}
	var columns []string
	for _, th := range elements(elements(table[0], called("thead"))[0], called("th")) {
		columns = append(columns, text(th))
	}
	if want := []string{"Wet", "Leather-hard", "Bone dry", "Bisque", "Unfired glaze", "Glaze-fired"}; !slices.Equal(columns, want) {
		t.Errorf("columns %q", columns)
	}
	var cells, lines []string
	for _, td := range elements(table[0], classed("bar")) {
		cells = append(cells, attribute(td, "href")+" "+attribute(td, "class")+" "+text(td))
	}
	for _, state := range elements(root, classed("chart-state")) {
		for _, li := range elements(state, classed("bar")) {
			name, said, _ := strings.Cut(text(li), ": ")
			if name == "" {
				t.Errorf("a line without a name: %s", text(li))
			}
			lines = append(lines, attribute(elements(li, called("a"))[0], "href")+" "+attribute(li, "class")+" "+said)
		}
	}
	if len(cells) != 18 || cells[0] != "states/wet.html#coloured-slip bar yes yes Both shrink together." {
		t.Errorf("%d cells, the first %q", len(cells), cells)
	}
	if !slices.Contains(cells, "states/bisque.html#way.wiping-back bar yes yes, best It wipes clean.") {
		t.Errorf("no cell of the technique in its best state: %q", cells)
	}
	slices.Sort(cells)
	slices.Sort(lines)
	if !slices.Equal(cells, lines) {
		t.Errorf("table and list differ:\n%q\n%q", cells, lines)
	}
}

func TestChartNamesRowsAndLeadsToTheMedia(t *testing.T) {
	root := pageOf(t, printed(t, small(t)), "chart.html")
	var rows []string
	for _, th := range elements(root, func(n *html.Node) bool { return attribute(n, "scope") == "row" }) {
		rows = append(rows, text(th)+fmt.Sprint(pairsOf(th)))
	}
	want := []string{"Coloured slip[Coloured slip -> media/coloured-slip.html]", "Stain wash[Stain wash -> media/stain-wash.html]", "Wiping back[]"}
	if !slices.Equal(rows, want) {
		t.Errorf("rows %q, want %q", rows, want)
	}
}

// TestChartLeavesOutWhatTheTableDoesNotSay shows that a technique that no row
// judges in a state has an empty cell there and no line.
func TestChartLeavesOutWhatTheTableDoesNotSay(t *testing.T) {
	c := small(t)
	delete(c.Decoration.Techniques[0].On, "glaze-fired")
	root := pageOf(t, printed(t, c), "chart.html")
	if n := len(elements(elements(root, classed("chart"))[0], classed("bar"))); n != 17 {
		t.Errorf("%d cells with a verdict, want 17", n)
	}
	states := elements(root, classed("chart-state"))
	if last := text(states[len(states)-1]); strings.Contains(last, "Wiping back") {
		t.Errorf("the list of the last state says %q", last)
	}
}

func TestChartTellsWhatDiffersHere(t *testing.T) {
	c := small(t)
	c.Decoration.Exceptions = append(c.Decoration.Exceptions, course.Exception{ID: "white", Kind: "product", Name: "White", Medium: "stain-wash", Hides: true})
	others := elements(pageOf(t, printed(t, c), "chart.html"), classed("chart-others"))
	if len(others) != 1 {
		t.Fatalf("%d sections", len(others))
	}
	want := "Otherwise in this studio Mill slip (Recipe card, Coloured slip): Bone dry: risky"
	if got := text(others[0]); !strings.HasPrefix(got, want) || strings.Contains(got, "White (") {
		t.Errorf("says %q", got)
	}
}

func TestEveryKindOfPageLeadsToTheChart(t *testing.T) {
	e := printed(t, small(t))
	for page, want := range map[string]int{"index.html": 3, "contents.html": 4, "404.html": 1, "states/wet.html": 3, "slip/mix.html": 3, "calculators/index.html": 3} {
		n := 0
		for _, a := range elements(pageOf(t, e, page), called("a")) {
			if to := attribute(a, "href"); to == "chart.html" || to == "../chart.html" {
				n++
			}
		}
		if n != want {
			t.Errorf("%s: %d links to the chart, want %d", page, n, want)
		}
	}
}

// TestNoTableNoChart shows that a course that is not finished prints without.
func TestNoTableNoChart(t *testing.T) {
	c := small(t)
	c.Decoration = &course.Decoration{}
	mix, _ := c.FindPage("units/slip/mix.md")
	mix.Source = bytes.Replace(mix.Source, []byte("(state:leather-hard)"), []byte("(measure.md)"), 1)
	e := printed(t, c)
	if _, there := e["chart.html"]; there {
		t.Error("an empty chart was printed")
	}
	for _, a := range elements(pageOf(t, e, "index.html"), called("a")) {
		if strings.Contains(attribute(a, "href"), "chart") {
			t.Errorf("the first page links to %s", attribute(a, "href"))
		}
	}
}
