package press

import (
	"slices"
	"testing"

	"golang.org/x/net/html"
)

// TestStrip reads the links of the strip as a screen reader says them.
func TestStrip(t *testing.T) {
	e := printed(t, small(t))
	for _, c := range []struct {
		page, label string
		want        []string
	}{
		{"wash/thin.html", "Stain wash: may it go on?",
			[]string{"Wet: no", "Leather-hard: risky", "Bone dry: yes", "Bisque: yes", "Unfired glaze: label", "Glaze-fired: no"}},
		{"slip/index.html", "Clay states",
			[]string{"Wet", "Leather-hard", "Bone dry", "Bisque", "Unfired glaze", "Glaze-fired"}},
	} {
		t.Run(c.page, func(t *testing.T) {
			strips := elements(pageOf(t, e, c.page), classed("strip"))
			if len(strips) != 1 {
				t.Fatalf("%d strips", len(strips))
			}
			if got := attribute(strips[0], "aria-label"); got != c.label {
				t.Errorf("label %q, want %q", got, c.label)
			}
			var said []string
			for _, a := range elements(elements(strips[0], called("ol"))[0], called("a")) {
				said = append(said, text(a))
			}
			if !slices.Equal(said, c.want) {
				t.Errorf("links %q, want %q", said, c.want)
			}
		})
	}
}

func TestStripMarksTheStateOfItsPage(t *testing.T) {
	e := printed(t, small(t))
	strip := elements(pageOf(t, e, "states/bone-dry.html"), classed("strip"))[0]
	here := elements(strip, func(n *html.Node) bool { return attribute(n, "aria-current") == "page" })
	if len(here) != 1 || text(here[0]) != "Bone dry" {
		t.Errorf("%d states marked as the page's own", len(here))
	}
}
