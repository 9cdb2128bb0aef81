package press

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
)

// wholeEnd is a lesson's end with everything that is gathered elsewhere.
const wholeEnd = `
## What to look for

- It runs in a [smooth](../wash/thin.md) sheet.
- No lumps.
- A third that no card has room for.

## What goes wrong

It [peels](glossary:bisque)
: Too dry. See [above](#weigh-first).

` + "```asked Can I mix *two*?\nYes, as [here](#weigh-first) and in [another](measure.md).[^n]\n```\n\n" +

	"```teaching\nPrepare\n: Ten secret tiles, see [the next](measure.md).\n```\n\n[^n]: Common practice.\n"

// gatheredCourse is the small course with one lesson that has it all, and a
// page for those who write.
func gatheredCourse(t *testing.T) *course.Course {
	t.Helper()
	files := coursetest.Small()
	mix := files["units/slip/mix.md"]
	mix.Data = append(bytes.Clone(mix.Data), wholeEnd...)
	home := files["home.md"]
	style := *home
	style.Data = []byte("---\ntitle: For those who write\n---\n\nWords.\n")
	files["style.md"] = &style
	c, found := new(course.Reader).Load(files)
	if found.Stop() {
		t.Fatalf("%v", found)
	}
	return c
}

func TestQuickAnswers(t *testing.T) {
	root := pageOf(t, printed(t, gatheredCourse(t)), "answers.html")
	all := elements(root, classed("quick"))
	if len(all) != 1 {
		t.Fatalf("%d answers", len(all))
	}
	if want := "Can I mix *two*? Yes, as here and in another. More in: Mix a slip"; text(all[0]) != want {
		t.Errorf("%q, want %q", text(all[0]), want)
	}
	if got, want := linksOf(all[0]), []string{"slip/mix.html#weigh-first", "slip/measure.html", "slip/mix.html#asked.1"}; !slices.Equal(got, want) {
		t.Errorf("links %q, want %q", got, want)
	}
}

// TestWhatIsAskedMostComesFirst wants the questions that the course puts first under a
// heading of their own, and once.
func TestWhatIsAskedMostComesFirst(t *testing.T) {
	c := gatheredCourse(t)
	last := c.Units[len(c.Units)-1].Lessons[0]
	last.Source = append(bytes.Clone(last.Source), "\n```asked Which one?\nThe *blue* one.\n```\n"...)
	c.AskedFirst = []course.Asked{{Words: "Which one?"}, {Words: "Nobody asks this"}}
	root := pageOf(t, printed(t, c), "answers.html")
	var said []string
	for _, n := range elements(elements(root, called("main"))[0], func(n *html.Node) bool { return n.Data == "h2" || n.Data == "summary" }) {
		said = append(said, text(n))
	}
	if want := []string{"What is asked most", "Which one?", "Slip", "Can I mix *two*?"}; !slices.Equal(said, want) {
		t.Errorf("%q, want %q", said, want)
	}
	var ways []string
	for _, n := range elements(root, classed("ways-to")) {
		ways = append(ways, linksOf(n)...)
	}
	if want := []string{"#asked.most", "#asked.in.slip"}; !slices.Equal(ways, want) {
		t.Errorf("the list at the top leads to %q, want %q", ways, want)
	}
}

// TestFaultsAreGathered wants what a lesson says beside any list to be told under its
// name, and no row of the decoration table: those stand on the pages of states and
// media.
func TestFaultsAreGathered(t *testing.T) {
	root := pageOf(t, printed(t, gatheredCourse(t)), "faults.html")
	all := elements(root, classed("fault"))
	if len(all) != 1 {
		t.Fatalf("%d faults", len(all))
	}
	if want := "Mix a slip It peelsToo dry. See above. Back to the list"; text(all[0]) != want {
		t.Errorf("%q, want %q", text(all[0]), want)
	}
	if got, want := linksOf(all[0]), []string{"slip/mix.html", "glossary.html#bisque", "slip/mix.html#weigh-first", "#list.top"}; !slices.Equal(got, want) {
		t.Errorf("links %q, want %q", got, want)
	}
	said := text(root)
	for _, m := range small(t).Decoration.Media {
		for _, pair := range m.On {
			if pair.Fault != "" && strings.Contains(said, strings.TrimSuffix(pair.Fault, ".")) {
				t.Errorf("%s: the table's row %q stands here", m.ID, pair.Fault)
			}
		}
	}
}

// TestLessonsLeadToTheListOfFaults wants the link in a lesson's term to lead to where the
// fault is told, the page of the medium to name it, and its picture to be published.
func TestLessonsLeadToTheListOfFaults(t *testing.T) {
	c := gatheredCourse(t)
	c.Faults = []*course.Fault{{ID: "peels", Sees: "It peels", When: "wet", Picture: "pictures/peel.jpg", Alt: "A coat.", Looks: "Flakes."}}
	c.Pictures["pictures/peel.jpg"] = course.Whole("pictures/peel.jpg", 1, 1, []byte("photo"))
	for _, u := range c.Units {
		for _, l := range u.Lessons {
			l.Source = bytes.Replace(l.Source, []byte("It [peels](glossary:bisque)"), []byte("[It peels](fault:peels)"), 1)
		}
	}
	e := printed(t, c)
	if links := linksOf(pageOf(t, e, "slip/mix.html")); !slices.Contains(links, "../faults.html#peels") {
		t.Errorf("the lesson leads to %q", links)
	}
	if links := linksOf(pageOf(t, e, "media/coloured-slip.html")); !slices.Contains(links, "../faults.html#peels") {
		t.Errorf("the medium leads to %q", links)
	}
	if all := elements(pageOf(t, e, "faults.html"), called("img")); len(all) != 1 || e[attribute(all[0], "src")] == nil {
		t.Error("the picture of the fault is not published")
	}
	if all := elements(pageOf(t, e, address.Book), func(n *html.Node) bool { return attribute(n, "id") == "page.faults.peels" }); len(all) != 1 {
		t.Errorf("the book has the fault %d times", len(all))
	}
}

// TestTeachingIsForTheInstructor wants no word of the notes in a student's copy,
// and all of them twice in the other.
func TestTeachingIsForTheInstructor(t *testing.T) {
	for at, data := range printed(t, gatheredCourse(t)) {
		if bytes.Contains(data, []byte("secret")) || at == address.Teaching {
			t.Errorf("%s shows a note for teaching", at)
		}
	}
	e := forTeaching(t, gatheredCourse(t))
	for _, address := range []string{"slip/mix.html", "teaching.html", "book.html"} {
		if !bytes.Contains(e[address], []byte("secret")) {
			t.Errorf("%s does not show the note for teaching", address)
		}
	}
	if !slices.Contains(linksOf(pageOf(t, e, "teaching.html")), "slip/measure.html") {
		t.Error("the link of the note leads nowhere")
	}
	if !slices.Contains(linksOf(pageOf(t, e, "contents.html")), "teaching.html") {
		t.Error("the contents do not lead to the notes")
	}
}

func TestCardOfAMedium(t *testing.T) {
	root := pageOf(t, printed(t, gatheredCourse(t)), "cards/coloured-slip.html")
	said := text(root)
	for _, want := range []string{"It runs in a smooth sheet.", "No lumps.", "It peels", "Too dry. See above.", "Mix a slip"} {
		if !strings.Contains(said, want) {
			t.Errorf("the card does not say %q", want)
		}
	}
	if strings.Contains(said, "no card has room for") {
		t.Error("the card takes more from a lesson than it has room for")
	}
	links := linksOf(root)
	for _, want := range []string{"../wash/thin.html", "../slip/mix.html#weigh-first", "../glossary.html#bisque", "../states/leather-hard.html"} {
		if !slices.Contains(links, want) {
			t.Errorf("no link to %s among %q", want, links)
		}
	}
}
