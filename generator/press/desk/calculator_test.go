package desk

import (
	"os"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/calculators/catalog"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
)

// calculators are those of a course in the studio theme.
func calculators(t *testing.T, c *course.Course) *Calculators {
	t.Helper()
	r := presstest.Read(t, c)
	return New(presstest.Studio(t), &care.Rules{Decoration: c.Decoration, Addresses: r.Addresses}, r.Settings, c.Language)
}

// ofTheDemo are those of a course that has nothing but the demo course's decoration
// table and clays.
func ofTheDemo(t *testing.T, decimal byte) *Calculators {
	t.Helper()
	demo, _ := new(course.Reader).Load(os.DirFS("../../../content"))
	return calculators(t, &course.Course{Language: "en-GB", Decimal: decimal, Measures: "metric", Decoration: demo.Decoration, Bodies: demo.Bodies})
}

// inLesson is the page on which printCalculator prints.
var inLesson = imprint.Place{Page: "slip/make-slip.html"}

// printCalculator returns the HTML of a calculator block.
func printCalculator(t *testing.T, p *Calculators, name string, number int, fill ...markup.Setting) string {
	t.Helper()
	view, err := p.View(catalog.Find(name), fill, number, inLesson)
	if err != nil {
		t.Fatal(err)
	}
	html, err := imprint.Execute(p.theme.Pages, "calculator", view)
	if err != nil {
		t.Fatal(err)
	}
	return string(html)
}

func TestEveryCalculatorPrints(t *testing.T) {
	p := ofTheDemo(t, '.')
	for _, c := range catalog.All() {
		t.Run(c.Name, func(t *testing.T) {
			html := printCalculator(t, p, c.Name, 1)
			for _, in := range c.Inputs {
				presstest.Holds(t, html, `name="`+in.Name+`"`, `data-input="`+in.Name+`"`)
			}
			for _, o := range c.Outputs {
				presstest.Holds(t, html, `<output name="`+o.Name+`"`)
			}
			answer := catalog.Solve(c.Name, c.Example.Given, p.Settings)
			presstest.Holds(t, html, answer.Drawing, `data-calculator="`+c.Name+`"`, "<caption>", "<math")
			for _, bad := range []string{" style=", "<script", "onclick", "ZgotmplZ", `href="/`} {
				if strings.Contains(html, bad) {
					t.Errorf("holds %s", bad)
				}
			}
		})
	}
}

func TestIDsAreUniqueOnAPage(t *testing.T) {
	p := ofTheDemo(t, '.')
	seen := map[string]bool{}
	for number := range 3 {
		for piece := range strings.SplitSeq(printCalculator(t, p, "shrinkage-test", number), ` id="`) {
			id, _, _ := strings.Cut(piece, `"`)
			if strings.HasPrefix(id, "<") {
				continue // before the first id
			}
			if seen[id] {
				t.Errorf("id %q stands twice", id)
			}
			seen[id] = true
		}
	}
	if len(seen) < 30 {
		t.Errorf("only %d ids seen", len(seen))
	}
}

func TestFilledInByALesson(t *testing.T) {
	p := ofTheDemo(t, '.')
	html := printCalculator(t, p, "slip-density", 2, markup.Setting{Name: "tare", Value: "62.4 g"}, markup.Setting{Name: "volume", Value: "1 L"})
	presstest.Holds(t, html,
		`id="calculator.2.tare" name="tare" value="62.4"`,
		`id="calculator.2.volume" name="volume" value="1"`,
		`<option selected>L</option>`,
		`data-input="tare" data-still="“Empty jar”" data-default="0"`,
	)
}

func TestListFilledInByALesson(t *testing.T) {
	p := ofTheDemo(t, '.')
	html := printCalculator(t, p, "shrinkage-test", 1, markup.Setting{Name: "plastic", Value: "10 cm; 10.1 cm"}, markup.Setting{Name: "dry", Value: "94 95 96 97"})
	presstest.Holds(t, html,
		`id="calculator.1.plastic" name="plastic" value="10"`, `id="calculator.1.plastic.2" name="plastic" value="10.1"`,
		`id="calculator.1.plastic.3" name="plastic" value=""`, `<option selected>cm</option>`,
		`id="calculator.1.dry.4" name="dry" value="97"`,
	)
}

func TestConstantsFollowTheCourse(t *testing.T) {
	html := printCalculator(t, ofTheDemo(t, ','), "slip-density", 1)
	presstest.Holds(t, html, `name="mass-resolution" value=""`, `name="solids-density" value="2,6"`, `name="volume" value=""`, `data-settings="decimal=%2C&amp;measures=metric`)
}

func TestWorkedExampleFillsTheForm(t *testing.T) {
	p := ofTheDemo(t, '.')
	presstest.Holds(t, printCalculator(t, p, "slip-density", 1),
		`href="?calculator=slip-density&amp;mass=212.4&amp;mass.unit=g&amp;tare=62.4&amp;tare.unit=g&amp;volume=100&amp;volume.unit=mL#calculator.1"`)
	for _, c := range catalog.All() {
		link := p.Example(c, "calculator.1", "../calculators/", func(string) string { return "" }).Link
		request, _, _ := strings.Cut(strings.TrimPrefix(link, "?"), "#")
		answer := string(catalog.Respond([]byte(request), p.Settings))
		if strings.Contains(answer, "error.") || !strings.Contains(answer, "headline=") {
			t.Errorf("%s: the example's link %s is answered %s", c.Name, link, answer)
		}
	}
}

func TestOwnPageHasHeadings(t *testing.T) {
	p := ofTheDemo(t, '.')
	own, among := printCalculator(t, p, "wash-mix", 0), printCalculator(t, p, "wash-mix", 1)
	presstest.Holds(t, own, "<h2>A worked example</h2>", `aria-label="`)
	presstest.Holds(t, among, `aria-labelledby="calculator.1.name"`, "<details")
	if strings.Contains(among, "<h2") {
		t.Error("a calculator in a lesson has headings, which may skip a level there")
	}
}

// TestCautionsOfACalculatorAreInSight wants what is always to be minded before
// the answer of a calculator in sight, and no empty box where there is nothing.
func TestCautionsOfACalculatorAreInSight(t *testing.T) {
	p := ofTheDemo(t, '.')
	for _, c := range catalog.All() {
		root, err := html.Parse(strings.NewReader(printCalculator(t, p, c.Name, 1)))
		if err != nil {
			t.Fatal(err)
		}
		box := presstest.First(t, root, "caution")
		always := presstest.Elements(box, func(n *html.Node) bool { return has(n, "data-always-caution") })
		if want := len(c.Hazards) + len(c.Cautions); len(always) != want || has(box, "hidden") != (want == 0) {
			t.Errorf("%s: %d cautions, want %d; hidden: %v", c.Name, len(always), want, has(box, "hidden"))
		}
		for _, n := range always {
			if has(n, "hidden") {
				t.Errorf("%s: %q is hidden", c.Name, presstest.Text(n))
			}
		}
	}
}

// has reports whether an element has an attribute, with a value or without.
func has(n *html.Node, key string) bool {
	return slices.ContainsFunc(n.Attr, func(a html.Attribute) bool { return a.Key == key })
}
