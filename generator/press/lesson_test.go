package press

import (
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// bench gives the titles of the links under a heading at a page's foot.
func bench(root *html.Node, heading string) []string {
	var titles []string
	for _, h := range elements(root, func(n *html.Node) bool { return n.Data == "h2" && text(n) == heading }) {
		for _, a := range elements(h.Parent, called("a")) {
			titles = append(titles, text(a)+" "+attribute(a, "href"))
		}
	}
	return titles
}

func TestBeforeAndAfter(t *testing.T) {
	e := printed(t, small(t))
	for _, c := range []struct {
		name, page    string
		before, after []string
	}{
		{"as the opening block says", "slip/measure.html", []string{"Mix a slip mix.html"}, []string{"Wash ../wash/index.html"}},
		{"the page before when it does not say", "slip/mix.html", []string{"Slip index.html"}, []string{"Measure a slip measure.html"}},
		{"the first unit has nothing before it", "slip/index.html", nil, []string{"Mix a slip mix.html"}},
		{"the last lesson has nothing after it", "wash/wipe.html", []string{"Thin a wash thin.html"}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			root := pageOf(t, e, c.page)
			if got := bench(root, "Before this at the bench"); !slices.Equal(got, c.before) {
				t.Errorf("before: %q, want %q", got, c.before)
			}
			if got := bench(root, "After this"); !slices.Equal(got, c.after) {
				t.Errorf("after: %q, want %q", got, c.after)
			}
		})
	}
}

func TestLessonSaysWhatItIsFor(t *testing.T) {
	root := pageOf(t, printed(t, small(t)), "slip/mix.html")
	for class, want := range map[string]string{
		"place":   "Slip Lesson 1.1, 1 of 2",
		"aims":    "You will be able to: weigh the powder and the water",
		"written": "Written by The Test Bench, 1 September 2026",
	} {
		found := elements(root, classed(class))
		if len(found) != 1 || !strings.Contains(text(found[0]), want) {
			t.Errorf("%s: want %q, page has %d of the class", class, want, len(found))
		}
	}
	var facts []string
	for _, row := range elements(elements(root, classed("facts"))[0], called("div")) {
		facts = append(facts, text(elements(row, called("dt"))[0])+": "+text(elements(row, called("dd"))[0]))
	}
	if want := []string{"Time: about 1 hour 30 minutes", "Medium: Coloured slip best on: Leather-hard", "Way of working: mixing", "On the bench: a bucket a scale"}; !slices.Equal(facts, want) {
		t.Errorf("facts %q, want %q", facts, want)
	}
	medium := elements(elements(root, classed("facts"))[0], called("a"))
	if len(medium) != 1 || attribute(medium[0], "href") != "../media/coloured-slip.html" {
		t.Error("the medium does not lead to its page")
	}
}
