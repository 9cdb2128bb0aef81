package press

import (
	"bytes"
	"slices"
	"strings"
	"testing"

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

func TestFaultsAreGathered(t *testing.T) {
	root := pageOf(t, printed(t, gatheredCourse(t)), "faults.html")
	rows := elements(root, called("tr"))
	first := text(rows[1])
	if want := "It peelsToo dry. See above. Mix a slip"; first != want {
		t.Errorf("%q, want %q", first, want)
	}
	if got, want := linksOf(rows[1]), []string{"glossary.html#bisque", "slip/mix.html#weigh-first", "slip/mix.html"}; !slices.Equal(got, want) {
		t.Errorf("links %q, want %q", got, want)
	}
	c := small(t)
	said := text(root)
	for _, m := range c.Decoration.Media {
		for _, pair := range m.On {
			if !strings.Contains(said, strings.TrimSuffix(pair.Fault, ".")) {
				t.Errorf("%s: the fault %q is missing", m.ID, pair.Fault)
			}
		}
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
