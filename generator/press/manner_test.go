package press

import (
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/generator/course"
)

// TestTechniqueByMedium makes sure that a verdict for some media is never said
// of all: in the chart, on the page of the state and in a lesson.
func TestTechniqueByMedium(t *testing.T) {
	c := parted(t)
	c.Decoration.Media[0].On["bisque"] = course.Pair{Verdict: course.Yes, Reason: "It holds."}
	e := printed(t, c)
	var rows []string
	for _, tr := range elements(elements(pageOf(t, e, "chart.html"), classed("chart"))[0], called("tr")) {
		if name := text(elements(tr, called("th"))[0]); strings.HasPrefix(name, "Wiping back") {
			rows = append(rows, name+": "+text(elements(tr, called("td"))[3]))
		}
	}
	if want := []string{"Wiping back: no, trade custom It flakes. The exception is an engobe.stain wash: yes, best It wipes clean."}; !slices.Equal(rows, want) {
		t.Errorf("rows %q", rows)
	}
	state := pageOf(t, e, "states/bisque.html")
	for id, want := range map[string]string{"way.wiping-back": "Wiping back: no", "way.wiping-back.2": "Wiping back: stain wash: yes, best"} {
		h := elements(state, func(n *html.Node) bool { return attribute(n, "id") == id })
		if len(h) != 1 || text(h[0]) != want {
			t.Errorf("%s: %v, want %q", id, h, want)
		}
	}
	if got := said(elements(state, classed("fates"))); !strings.Contains(got, "This is custom of the trade: ask the instructor before you try it.") {
		t.Errorf("the custom of the trade is not called one: %s", got)
	}
	for page, want := range map[string]string{"media/stain-wash.html": "Bisque: yes, best", "media/coloured-slip.html": ""} {
		got := said(elements(pageOf(t, e, page), classed("ways-of")))
		if want == "" && strings.Contains(got, "Bisque:") || !strings.Contains(got, want) {
			t.Errorf("%s: %q", page, got)
		}
	}
}
