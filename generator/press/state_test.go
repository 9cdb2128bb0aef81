package press

import (
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/calculators/catalog"
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
		{"states/leather-hard.html", []string{"h2 In a word", "h2 How to tell", "h3 Wet: more like it?", "h3 Bone dry: more like it?",
			"h2 May go on now", "h3 Coloured slip best now", "h2 Risky", "h3 Stain wash",
			"h2 How you may work it now", "h3 Wiping back: risky", "h2 What to do next", "h3 Let it dry.",
			"h2 Plan your work from here", "h3 What may I do now, and in which order?", "h2 Lessons about it", "h2 Before this it was", "h2 Next it becomes"}},
		{"states/unfired-glaze.html", []string{"h2 In a word", "h2 How to tell", "h3 Bisque: more like it?", "h3 Glaze-fired: more like it?",
			"h2 Ask the label or the studio’s recipe card", "h3 Stain wash", "h2 Cannot go on now", "h3 Coloured slip",
			"h2 How you may work it now", "h3 Wiping back: no", "h2 What to do next", "h3 Wash the glaze off.", "h3 Fire the glaze.",
			"h2 Plan your work from here", "h3 What may I do now, and in which order?", "h2 Before this it was", "h2 Next it becomes"}},
		{"states/wet.html", []string{"h2 In a word", "h2 How to tell", "h3 Leather-hard: more like it?",
			"h2 May go on now", "h3 Coloured slip", "h2 Cannot go on now", "h3 Stain wash",
			"h2 How you may work it now", "h3 Wiping back: no", "h2 What to do next", "h3 Let it stiffen.",
			"h2 Plan your work from here", "h3 What may I do now, and in which order?", "h2 Next it becomes"}},
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
	want := []string{"h2 May go on now", "h3 Stain wash best now", "h3 Coloured slip"}
	at := max(0, slices.Index(got, want[0]))
	if !slices.Equal(got[at:at+len(want)], want) {
		t.Errorf("headings %q, want %q among them", got, want)
	}
}

// TestNeverSaysWhoseRuleItIs tells a house rule, which an instructor may
// loosen, from physics.
func TestNeverSaysWhoseRuleItIs(t *testing.T) {
	e := printed(t, small(t))
	for page, want := range map[string]string{
		"states/bone-dry.html": "This is a rule of the house",
		"states/bisque.html":   "This is physics: there is no way round it.",
	} {
		group := elements(pageOf(t, e, page), func(n *html.Node) bool { return n.Data == "section" && classed("never")(n) })
		if len(group) != 1 || !strings.Contains(text(group[0]), want) {
			t.Errorf("%s does not say %q", page, want)
		}
	}
}

// TestStatePageTellsItsNeighbours shows the signs of the states before and
// after, each with what to do in between.
func TestStatePageTellsItsNeighbours(t *testing.T) {
	e := printed(t, small(t))
	for page, want := range map[string]string{
		"states/leather-hard.html": "Wet: more like it? It shines and sags when lifted. In between? Wait for the shine to go. Go to: Wet | " +
			"Bone dry: more like it? It is pale all over. Go to: Bone dry",
		"states/glaze-fired.html": "Unfired glaze: more like it? The coat rubs off. Go to: Unfired glaze",
	} {
		doubt := elements(pageOf(t, e, page), classed("doubt"))[0]
		if got := said(elements(doubt, called("section"))); got != want {
			t.Errorf("%s: %q, want %q", page, got, want)
		}
	}
}

// TestStatePageSaysWhatNext lists the ways on from a state.
func TestStatePageSaysWhatNext(t *testing.T) {
	root := pageOf(t, printed(t, small(t)), "states/bisque.html")
	want := "Fire it again. | Loose colour smudges. | Usual faultToo hot closes the clay. What to doFire to the bisque cone. Then it isBisque | " +
		"Fire it bare. | The clay needs its full strength. | Usual faultColour may rub off. What to doUse little wash. Then it isGlaze-fired"
	if got := said(under(t, root, "What to do next")); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	for _, h := range elements(pageOf(t, printed(t, small(t)), "states/glaze-fired.html"), called("h2")) {
		if text(h) == "What to do next" {
			t.Error("something is to be done next with a finished pot")
		}
	}
}

// TestStatePageNamesItsLessons lists lessons whose medium is best in the state,
// and those that link to the state or show it from the table.
func TestStatePageNamesItsLessons(t *testing.T) {
	c := small(t)
	wipe, _ := c.FindPage("units/wash/wipe.md")
	wipe.Source = append(wipe.Source, "\n```stages\nstate: glaze-fired\n```\n"...)
	e := printed(t, c)
	for page, want := range map[string][]string{
		"states/leather-hard.html": {"Mix a slip", "Measure a slip"}, // where slip is best
		"states/bisque.html":       {"Thin a wash", "Wipe a wash back"},
		"states/glaze-fired.html":  {"Wipe a wash back"},
	} {
		var got []string
		for _, n := range under(t, pageOf(t, e, page), "Lessons about it") {
			for _, a := range elements(n, called("a")) {
				if n.Data == "ul" {
					got = append(got, text(a))
				}
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: lessons %q, want %q", page, got, want)
		}
	}
}

// TestInstead tells a state that is past from one that is still to come, and
// names what looks alike and may go on now.
func TestInstead(t *testing.T) {
	c := small(t)
	c.Decoration.Media[0].Look, c.Decoration.Media[1].Look = "colour", "colour"
	e := printed(t, c)
	for _, f := range []struct{ page, group, want string }{
		{"states/bone-dry.html", "Cannot go on now", "Instead, todayStain wash Was best onLeather-hard"},
		{"states/wet.html", "Cannot go on now", "Instead, todayColoured slip Best laterBisque"},
		{"states/leather-hard.html", "Risky", "What to doTry another medium. Instead, todayColoured slip (not on White porcelain) Best laterBisque"},
	} {
		if got := said(under(t, pageOf(t, e, f.page), f.group)); !strings.HasSuffix(got, f.want) {
			t.Errorf("%s: %q, want %q at its end", f.page, got, f.want)
		}
	}
}

// TestPlannerStandsOnEveryState shows that the planner stands on the page of
// each state, that state chosen.
func TestPlannerStandsOnEveryState(t *testing.T) {
	e := printed(t, small(t))
	for _, s := range small(t).Decoration.States {
		forms := elements(pageOf(t, e, "states/"+s.ID+".html"), func(n *html.Node) bool { return attribute(n, "data-calculator") == catalog.Plan })
		if len(forms) != 1 {
			t.Errorf("%s: %d planners", s.ID, len(forms))
			continue
		}
		chosen := elements(forms[0], func(n *html.Node) bool {
			return n.Data == "option" && attribute(n.Parent, "name") == "state" && slices.ContainsFunc(n.Attr, func(a html.Attribute) bool { return a.Key == "selected" })
		})
		if len(chosen) != 1 || attribute(chosen[0], "value") != s.ID {
			t.Errorf("%s: the planner starts from %q", s.ID, said(chosen))
		}
	}
}
