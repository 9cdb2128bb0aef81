package press

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/generator/course"
)

// under gives the elements of a page that follow the heading with these words,
// up to the next heading of its level.
func under(t *testing.T, root *html.Node, heading string) []*html.Node {
	t.Helper()
	found := elements(root, func(n *html.Node) bool { return n.Data == "h2" && text(n) == heading })
	if len(found) == 0 {
		t.Fatalf("no heading %q", heading)
	}
	var all []*html.Node
	for n := found[0].NextSibling; n != nil && n.Data != "h2"; n = n.NextSibling {
		if n.Type == html.ElementNode {
			all = append(all, n)
		}
	}
	return all
}

// said joins the texts of elements.
func said(all []*html.Node) string {
	var texts []string
	for _, n := range all {
		texts = append(texts, text(n))
	}
	return strings.Join(texts, " | ")
}

func TestMediumPage(t *testing.T) {
	root := pageOf(t, printed(t, small(t)), "media/stain-wash.html")
	for heading, want := range map[string]string{
		"Ways of working with it": "Wiping backThe colour is wiped off the high places. Leather-hard: risky Bisque: yes, best",
		"What may lie on it, while it is not yet fired": "Coloured slip: no | Slip cannot grip powder. This is physics: there is no way round it. | Usual faultIt curls. What to doTurn the order round. | " +
			"Stain wash: yes | One holds on the other. | Only after a firingWiping back",
		"What it may lie on, while that is not yet fired": "Coloured slip: yes | One holds on the other.",
		"Lessons about it": "Thin a wash",
	} {
		if got := said(under(t, root, heading)); !strings.HasPrefix(got, want) {
			t.Errorf("%s: %q, want %q", heading, got, want)
		}
	}
	var states []string
	for _, n := range under(t, root, "State by state") {
		if n.Data == "h3" {
			states = append(states, text(n)+fmt.Sprint(pairsOf(n)))
		}
	}
	want := []string{"Wet: no[Wet -> ../states/wet.html#stain-wash]", "Leather-hard: risky[Leather-hard -> ../states/leather-hard.html#stain-wash]",
		"Bone dry: yes[Bone dry -> ../states/bone-dry.html#stain-wash]", "Bisque: yes, best[Bisque -> ../states/bisque.html#stain-wash]",
		"Unfired glaze: label[Unfired glaze -> ../states/unfired-glaze.html#stain-wash]", "Glaze-fired: no[Glaze-fired -> ../states/glaze-fired.html#stain-wash]"}
	if !slices.Equal(states, want) {
		t.Errorf("states %q", states)
	}
}

// TestCardsCanBePrintedAndShared wants keys for that near the top of a card and of a
// medium's page, which leads to its card before it tells state by state.
func TestCardsCanBePrintedAndShared(t *testing.T) {
	e := printed(t, small(t))
	for _, at := range []string{"media/coloured-slip.html", "cards/coloured-slip.html", "cards/index.html"} {
		all := elements(pageOf(t, e, at), func(n *html.Node) bool {
			return attribute(n, "class") == "page-keys" || n.Data == "h2" && text(n) != "Before you begin"
		})
		if len(all) < 2 || all[0].Data != "div" {
			t.Fatalf("%s does not begin with its keys", at)
		}
		if got := said(elements(all[0], called("button"))); got != "Print this page | Share it" {
			t.Errorf("%s: the keys are %q", at, got)
		}
	}
	way := elements(pageOf(t, e, "media/coloured-slip.html"), classed("card-way"))
	if len(way) != 1 || !slices.Equal(linksOf(way[0]), []string{"../cards/coloured-slip.html"}) {
		t.Error("the medium does not lead to its card")
	}
	if !slices.Contains(linksOf(pageOf(t, e, "index.html")), "cards/index.html") {
		t.Error("the first page does not lead to the course’s card")
	}
}

// TestWaysOfAMediumHoldForBoth shows that a way of working is no better on a
// medium's page than the medium itself is in that state.
func TestWaysOfAMediumHoldForBoth(t *testing.T) {
	c := small(t)
	wash := c.Decoration.Media[1]
	wash.On["bisque"] = course.Pair{Verdict: course.Label, Reason: "Some kinds hold here."}
	wash.On["leather-hard"] = course.Pair{Verdict: course.Never, Reason: "No."}
	root := pageOf(t, printed(t, c), "media/stain-wash.html")
	if got := said(under(t, root, "Ways of working with it")); !strings.HasSuffix(got, "places. Bisque: label") {
		t.Errorf("says %q", got)
	}
	slip := pageOf(t, printed(t, c), "media/coloured-slip.html")
	for _, h := range elements(slip, called("h2")) {
		if text(h) == "Ways of working with it" {
			t.Error("slip has a way of working that is for washes")
		}
	}
}

// TestExceptionsStandByTheirPair looks for what a recipe card, a clay body and
// a house rule change, named as such where the table is told in full.
func TestExceptionsStandByTheirPair(t *testing.T) {
	c := small(t)
	c.Decoration.Exceptions = append(c.Decoration.Exceptions,
		course.Exception{ID: "no-wet", Kind: "house", Name: "No wiping at the wheel", Technique: "wiping-back", On: map[string]course.Pair{"wet": c.Decoration.Techniques[0].On["wet"].For("stain-wash")}})
	e := printed(t, c)
	for page, want := range map[string][]string{
		"states/bone-dry.html":     {"Recipe card: Mill slip: risky. It has little clay. It may flake. Try a tile."},
		"states/leather-hard.html": {"This clay shrinks more. It may lift. Try a tile."},
		"states/wet.html":          {"House rule: No wiping at the wheel."},
		"states/bisque.html":       nil,
		"media/stain-wash.html":    nil,
	} {
		var got []string
		for _, n := range elements(pageOf(t, e, page), classed("except")) {
			got = append(got, text(n))
		}
		if len(got) != len(want) || len(want) > 0 && !strings.HasSuffix(got[0], want[0]) {
			t.Errorf("%s: %q, want %q", page, got, want)
		}
	}
	medium := elements(pageOf(t, e, "media/coloured-slip.html"), classed("except"))
	if len(medium) != 2 || !strings.HasPrefix(text(medium[0]), "Clay body: ") {
		t.Errorf("the medium's page says %q", said(medium))
	}
}
