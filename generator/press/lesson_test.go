package press

import (
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/generator/course"
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

// TestLessonOpensWithItsParts wants the parts of a lesson as links on it where it has
// three or more, and its button where it has steps.
func TestLessonOpensWithItsParts(t *testing.T) {
	for _, c := range []struct {
		name, source string
		kind         course.ResourceType
		parts        []string
		steps        bool
	}{
		{"three parts", "## A & b\n\n1. Stir.\n\n### no\n\n## C\n\n## D\n", course.ForBench, []string{"A & b #a-b", "C #c", "D #d"}, true},
		{"two parts", "## A\n\n1. Stir.\n\n## C\n", course.ForBench, nil, true},
		{"no steps", "## A\n\n## C\n\n## D\n", course.ForBench, []string{"A #a", "C #c", "D #d"}, false},
		{"a reading", "## A\n\n1. Read.\n\n## C\n\n## D\n", course.ForReading, []string{"A #a", "C #c", "D #d"}, false},
		{"a sheet", "## A\n\n1. Read.\n\n## C\n\n## D\n", course.ForPaper, nil, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			small := small(t)
			page, _ := small.FindPage("units/wash/wipe.md")
			page.Source, page.Head.Type = []byte(c.source), c.kind
			root := pageOf(t, printed(t, small), "wash/wipe.html")
			var parts []string
			for _, nav := range elements(root, classed("parts")) {
				for _, a := range elements(nav, called("a")) {
					parts = append(parts, text(a)+" "+attribute(a, "href"))
				}
			}
			if !slices.Equal(parts, c.parts) {
				t.Errorf("parts %q, want %q", parts, c.parts)
			}
			if got := len(elements(root, classed("step-in"))) == 1; got != c.steps {
				t.Errorf("the way to single steps stands there: %t, want %t", got, c.steps)
			}
		})
	}
}

// TestCalculatorsOfALessonAreFolded wants them closed by a heading, unlike those of
// other pages, with a sign for whose numbers they hold where the lesson filled some in.
func TestCalculatorsOfALessonAreFolded(t *testing.T) {
	small := small(t)
	page, _ := small.FindPage("units/wash/wipe.md")
	page.Source = []byte("## A\n\n```calculator slip-density\nmass: 212.4 g\n```\n\n```calculator slip-adjust\n```\n")
	unit, _ := small.FindPage("units/wash/unit.md")
	unit.Source = []byte("```calculator slip-density\nmass: 212.4 g\n```\n")
	e := printed(t, small)
	folds := elements(pageOf(t, e, "wash/wipe.html"), func(n *html.Node) bool { return n.Data == "details" && attribute(n, "id") != "" })
	if len(folds) != 2 {
		t.Fatalf("%d folds, want 2", len(folds))
	}
	for n, fold := range folds {
		head := elements(fold, called("h3"))
		if len(head) != 1 || head[0].Parent.Data != "summary" || attribute(head[0], "id") != attribute(fold, "aria-labelledby") {
			t.Errorf("fold %d has no heading of its own", n+1)
		}
		if got := len(elements(fold, classed("reckon-whose"))); got != 1-n {
			t.Errorf("fold %d says whose its numbers are %d times", n+1, got)
		}
	}
	if elsewhere := elements(pageOf(t, e, "wash/index.html"), classed("reckon")); len(elsewhere) != 1 || elsewhere[0].Data != "div" {
		t.Errorf("a calculator of a unit's page is folded")
	}
}

// TestScriptsOfALesson wants a lesson to load one script, which knows where those are
// that come when they are wanted, and a page without steps and calculators none.
func TestScriptsOfALesson(t *testing.T) {
	for _, c := range []struct{ name, source, script, desk string }{
		{"steps", "1. Stir.\n", "../assets/lesson-AAAA.js", ""},
		{"a calculator", "```calculator slip-density\n```\n", "../assets/lesson-AAAA.js", "../assets/desk-AAAA.js"},
		{"neither", "Stir.\n", "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			small := small(t)
			page, _ := small.FindPage("units/wash/wipe.md")
			page.Source = []byte(c.source)
			scripts := elements(pageOf(t, printed(t, small), "wash/wipe.html"), func(n *html.Node) bool {
				return n.Data == "script" && attribute(n, "src") != "../assets/page-AAAA.js"
			})
			if (len(scripts) == 1) != (c.script != "") {
				t.Fatalf("%d scripts", len(scripts))
			}
			if c.script == "" {
				return
			}
			s := scripts[0]
			if attribute(s, "src") != c.script || attribute(s, "data-step-view") != "../assets/stepview-AAAA.js" ||
				attribute(s, "data-step-style") != "../assets/stepview-AAAA.css" || attribute(s, "data-desk") != c.desk {
				t.Errorf("the script is %v", s.Attr)
			}
			if engine := attribute(s, "data-engine"); (engine != "") != (c.desk != "") {
				t.Errorf("the engine is %q", engine)
			}
		})
	}
}
