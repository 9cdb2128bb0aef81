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

// linksOf lists where the links of an element lead.
func linksOf(n *html.Node) []string {
	var all []string
	for _, a := range elements(n, called("a")) {
		all = append(all, attribute(a, "href"))
	}
	return all
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
		t.Errorf("the card takes more than %d from a lesson", perLesson)
	}
	links := linksOf(root)
	for _, want := range []string{"../wash/thin.html", "../slip/mix.html#weigh-first", "../glossary.html#bisque", "../states/leather-hard.html"} {
		if !slices.Contains(links, want) {
			t.Errorf("no link to %s among %q", want, links)
		}
	}
}

// TestCardSize wants smaller type for more words, and a class for any number.
func TestCardSize(t *testing.T) {
	last := ""
	for n := 10; n < 3000; n *= 2 {
		pieces := make([]int, n)
		for k := range pieces {
			pieces[k] = 80
		}
		size := cardSize(studio(t).Print.Card, pieces)
		if size < last || size == "" {
			t.Errorf("%d pieces: %q after %q", n, size, last)
		}
		last = size
	}
	if last != "card-6" {
		t.Errorf("the most words get %q", last)
	}
}

// TestCardTakesNoMoreThanItsSheet fills a card with pieces of one line and of
// two: what two columns of US Letter hold of them in each type was reckoned by
// hand, as 1400 points parted by 1.3 times the type, and 0.2 of a line between
// two pieces. One piece more calls for the next smaller type.
func TestCardTakesNoMoreThanItsSheet(t *testing.T) {
	for _, c := range []struct {
		class    string
		one, two int // so many fit
	}{{"card-1", 94, 51}, {"card-2", 101, 55}, {"card-3", 112, 61}, {"card-4", 122, 67}, {"card-5", 135, 74}} {
		for letters, most := range map[int]int{40: c.one, 120: c.two} {
			pieces := slices.Repeat([]int{letters}, most)
			if got := cardSize(studio(t).Print.Card, pieces); got != c.class {
				t.Errorf("%d pieces of %d letters are set as %s, want %s", most, letters, got, c.class)
			}
			if got := cardSize(studio(t).Print.Card, append(pieces, letters)); got <= c.class {
				t.Errorf("%d pieces of %d letters are set as %s, and do not fit", most+1, letters, got)
			}
		}
	}
}

// TestFaultsSayWhyWhereItMayNot wants the table's reason beside the fault of what
// may not simply go on: of a yes the reason says why it holds, which is no cause.
func TestFaultsSayWhyWhereItMayNot(t *testing.T) {
	for _, c := range []struct {
		verdict course.Verdict
		want    string
	}{
		{course.Yes, "It blisters Thin it. Wet"},
		{course.Label, "It blisters Because. Thin it. Wet"},
		{course.Risky, "It blisters Because. Thin it. Wet"},
		{course.Never, "It blisters Because. Thin it. Wet"},
	} {
		i := newPress(t, small(t))
		m := course.Medium{ID: "m", On: map[string]course.Pair{"wet": {Verdict: c.verdict, Reason: "Because.", Fault: "It blisters.", Remedy: "Thin it."}}}
		faults := i.tableFaults(m, place{page: address.Faults})
		if len(faults) != 1 {
			t.Fatalf("%s: %d faults", c.verdict, len(faults))
		}
		f := faults[0]
		said := strings.Join(strings.Fields(string(f.Seen)+" "+string(f.Means)+" "+f.Where[0].Title), " ")
		if said != c.want {
			t.Errorf("%s: %q, want %q", c.verdict, said, c.want)
		}
	}
}

// TestFaultsAreWords wants signs in the table's sentences to stay signs: they come
// from a file that anybody may write, and are set as HTML.
func TestFaultsAreWords(t *testing.T) {
	i := newPress(t, small(t))
	pair := course.Pair{Verdict: course.Yes, Fault: "Cracks <b>under</b> 1 mm & more.", Remedy: "Coats < 2."}
	f := i.tableFaults(course.Medium{ID: "m", On: map[string]course.Pair{"wet": pair}}, place{page: address.Faults})[0]
	if f.Seen != "Cracks &lt;b&gt;under&lt;/b&gt; 1 mm &amp; more" || f.Means != "Coats &lt; 2." {
		t.Errorf("%q, %q", f.Seen, f.Means)
	}
}

// TestFaultOfTwoStatesStandsOnce wants what goes wrong in the same way in two
// states to be told once, with a link to each; what has another remedy is
// another fault.
func TestFaultOfTwoStatesStandsOnce(t *testing.T) {
	i := newPress(t, small(t))
	peels := course.Pair{Verdict: course.Risky, Reason: "Too dry.", Fault: "It peels.", Remedy: "Wait."}
	other := peels
	other.Remedy = "Damp it."
	m := course.Medium{ID: "m", On: map[string]course.Pair{"wet": peels, "leather-hard": peels, "bone-dry": other}}
	var said []string
	for _, f := range i.tableFaults(m, place{page: address.Faults}) {
		row := string(f.Seen) + ": " + string(f.Means)
		for _, where := range f.Where {
			row += " " + where.Title
		}
		said = append(said, row)
	}
	if want := []string{"It peels: Too dry. Wait. Wet Leather-hard", "It peels: Too dry. Damp it. Bone dry"}; !slices.Equal(said, want) {
		t.Errorf("%q, want %q", said, want)
	}
}
