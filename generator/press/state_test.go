package press

import (
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/generator/course"
)

// outline gives the headings of a page below its title, level by level.
func outline(root *html.Node) []string {
	var all []string
	for _, h := range elements(elements(root, called("main"))[0], func(n *html.Node) bool { return n.Data == "h2" || n.Data == "h3" }) {
		all = append(all, h.Data+" "+text(h))
	}
	return all
}

func TestStatePageGroupsByVerdict(t *testing.T) {
	e := printed(t, small(t))
	for _, c := range []struct {
		page string
		want []string
	}{
		{"states/leather-hard.html", []string{"h2 How to tell", "h2 May go on now", "h3 Coloured slip best now", "h2 Risky", "h3 Stain wash",
			"h2 Before this it was", "h2 Next it becomes"}},
		{"states/unfired-glaze.html", []string{"h2 How to tell", "h2 Ask the label or the studio’s recipe card", "h3 Stain wash",
			"h2 Cannot go on now", "h3 Coloured slip", "h2 Before this it was", "h2 Next it becomes"}},
		{"states/wet.html", []string{"h2 How to tell", "h2 May go on now", "h3 Coloured slip", "h2 Cannot go on now", "h3 Stain wash",
			"h2 Next it becomes"}},
	} {
		t.Run(c.page, func(t *testing.T) {
			if got := outline(pageOf(t, e, c.page)); !slices.Equal(got, c.want) {
				t.Errorf("headings\n%q, want\n%q", got, c.want)
			}
		})
	}
}

func TestBestComesFirst(t *testing.T) {
	c := small(t)
	m := c.Decoration.Media
	m[0].On["bisque"] = course.Pair{Verdict: course.Yes, Reason: "It holds."} // the table names it before stain wash
	e := printed(t, c)
	got := outline(pageOf(t, e, "states/bisque.html"))
	want := []string{"h2 How to tell", "h2 May go on now", "h3 Stain wash best now", "h3 Coloured slip"}
	if !slices.Equal(got[:len(want)], want) {
		t.Errorf("headings %q, want %q first", got, want)
	}
}

// TestNeverSaysWhoseRuleItIs tells a house rule, which an instructor may
// loosen, from physics.
func TestNeverSaysWhoseRuleItIs(t *testing.T) {
	e := printed(t, small(t))
	for page, want := range map[string]string{
		"states/bone-dry.html": "This is a house rule",
		"states/bisque.html":   "This is physics",
	} {
		group := elements(pageOf(t, e, page), classed("never"))
		if len(group) != 1 || !strings.Contains(text(group[0]), want) {
			t.Errorf("%s does not say %q", page, want)
		}
	}
}
