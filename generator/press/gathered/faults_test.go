package gathered

import (
	"slices"
	"strings"
	"testing"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
)

// listed is the small course with a list of faults, of which its lesson about slip
// names one twice, one beside another word, and two that are on no list.
func listed(t *testing.T) *course.Course {
	t.Helper()
	files := coursetest.Small()
	file := func(name, text string) {
		if old := files[name]; old != nil {
			text = string(old.Data) + text
		}
		copied := *files["home.md"]
		copied.Data = []byte(text)
		files[name] = &copied
	}
	file("faults.yaml", `faults:
  - {id: crawls, sees: It crawls & beads, when: glaze, picture: pictures/jar.svg, alt: A jar., looks: Thick rims., else: [curls]}
  - {id: curls, sees: It curls, when: wet, picture: pictures/jar.svg, alt: A jar., looks: Edges <up>., else: [crawls]}
`)
	file("units/slip/mix.md", `
## What goes wrong

[It curls](fault:curls)
: Too thick.

[Edges up](fault:curls), later [crawling](fault:crawls)
: Too dry.

It smells
: Old. See [above](#weigh-first).
`)
	c, found := new(course.Reader).Load(files)
	if found.Stop() {
		t.Fatalf("%v", found)
	}
	return c
}

// faultsPage prints the page of what goes wrong.
func faultsPage(t *testing.T, r *Gathered) string {
	t.Helper()
	sheets := r.Faults()
	if len(sheets) != 1 {
		t.Fatalf("%d pages", len(sheets))
	}
	view, err := sheets[0].View(imprint.Place{Page: address.Faults})
	if err != nil {
		t.Fatal(err)
	}
	page, err := imprint.Execute(r.Pages, "faults", view)
	if err != nil {
		t.Fatal(err)
	}
	return string(page)
}

// TestFaultsByWhatOneSees wants each fault of the list once, by the time at which one
// sees it, with what lessons say of it; what is on no list last, by the medium of its
// lesson. A lesson's own words stand before the cause only where they say more than the list.
func TestFaultsByWhatOneSees(t *testing.T) {
	root := presstest.Parse(t, faultsPage(t, opened(t, listed(t))))
	var said []string
	for _, n := range presstest.Elements(root, presstest.Classed("fault")) {
		said = append(said, presstest.Text(n))
	}
	want := []string{
		"It curls Edges <up>. It may also be: It crawls & beads Too thick. Mix a slip Edges up, later crawling. Too dry. Mix a slip Back to the list",
		"It crawls & beads Thick rims. It may also be: It curls Edges up, later crawling. Too dry. Mix a slip Back to the list",
		"Mix a slip It smellsOld. See above. Back to the list",
	}
	for n := range said {
		said[n] = strings.ReplaceAll(said[n], "100 mL & up ", "") // in the drawing
	}
	if !slices.Equal(said, want) {
		t.Errorf("%q\nwant %q", said, want)
	}
	var parts []string
	for _, n := range presstest.Elements(root, presstest.Called("h2")) {
		parts = append(parts, presstest.Attribute(n, "id"))
	}
	if want := []string{"when.wet", "when.glaze", "with.coloured-slip"}; !slices.Equal(parts, want) {
		t.Errorf("parts %q, want %q", parts, want)
	}
}

// TestFaultsBeginWithAListToJumpWith wants a way to each part at the top of the page, a
// way back behind each entry, and beside what lessons about a medium tell what they name
// of the list.
func TestFaultsBeginWithAListToJumpWith(t *testing.T) {
	c := listed(t)
	other := *c.Units[0].Lessons[0]
	other.Head.Medium, other.Address = "", "slip/other.html"
	c.Units[0].Lessons = slices.Insert(c.Units[0].Lessons, 0, &other)
	root := presstest.Parse(t, faultsPage(t, opened(t, c)))
	ways := func(of string) (all []string) {
		for _, n := range presstest.Elements(root, presstest.Classed(of)) {
			all = append(all, presstest.Links(n)...)
		}
		return all
	}
	if got, want := ways("ways-to"), []string{"#when.wet", "#when.glaze", "#with.coloured-slip", "#when.other"}; !slices.Equal(got, want) {
		t.Errorf("the list leads to %q, want %q", got, want)
	}
	if got, want := ways("also"), []string{"#crawls", "#curls"}; !slices.Equal(got, want) {
		t.Errorf("the part of the medium leads to %q, want %q", got, want)
	}
	if got := ways("to-list"); len(got) != 4 || slices.ContainsFunc(got, func(to string) bool { return to != "#list.top" }) {
		t.Errorf("the ways back are %q", got)
	}
}

// TestFaultsAreFoundByTheirDrawings wants each drawing once on the page, with its words,
// and once more by its id where the way to it is.
func TestFaultsAreFoundByTheirDrawings(t *testing.T) {
	page := faultsPage(t, opened(t, listed(t)))
	presstest.Once(t, page, `<svg id="drawing.curls" role="img" aria-label="A jar."`, `<use href="#drawing.curls"`,
		`<a href="#crawls"><svg`, `<h3 id="crawls" data-entry-name>`, `<h3 id="curls" data-entry-name>`)
}

// TestFaultsOweTheirLessonsCare wants the hazards of the lessons behind a fault in a line
// over what they say of it.
func TestFaultsOweTheirLessonsCare(t *testing.T) {
	c := listed(t)
	r := opened(t, c)
	c.Decoration.Media[0].Care.Hazards = []string{c.Decoration.Hazards[0].ID}
	r.Faults()
	owed := r.Owes()[address.Faults]()
	if len(owed) != 3 {
		t.Fatalf("%d owed: %+v", len(owed), owed)
	}
	for _, o := range owed {
		if len(o.Care.Hazards) == 0 {
			t.Errorf("%s owes no hazard", o.Name)
		}
	}
}

// TestFaultLeadsToItsPage wants the ways to a fault to name the page on which it stands.
func TestFaultLeadsToItsPage(t *testing.T) {
	r := opened(t, listed(t))
	r.Faults()
	if got := r.FaultAt("curls"); got != "faults.html#curls" {
		t.Errorf("%q", got)
	}
	r.frame.FaultsOn["curls"] = "faults-2.html"
	if got := r.FaultAt("curls"); got != "faults-2.html#curls" {
		t.Errorf("%q", got)
	}
}
