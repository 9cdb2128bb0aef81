package press

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/net/html"

	"slipbook/generator/course"
)

// harmful is the small course with hazards: the wash is for students with the
// instructor and makes dust, slip cuts on bone-dry clay, wiping on bisque is the
// instructor's and needs a mask of its own.
func harmful(t testing.TB) *course.Course {
	t.Helper()
	c := small(t)
	d := c.Decoration
	d.Hazards = append(d.Hazards, course.Hazard{ID: "mist", Title: "Mist & spray", Harm: "It goes deep.", Do: "Stay out of it. Wear the mask.", Short: "Mask on, fan on.", Mark: []string{"mask"}, Wear: []string{"a mask"}, Health: true})
	d.Media[1].Care = course.Care{Hazards: []string{"dust"}, Who: course.WithInstructor}
	set(d.Media[0].On, "wet", func(p *course.Pair) { p.Hazards = []string{"blade"} })
	set(d.Media[0].On, "bone-dry", func(p *course.Pair) { p.Hazards = []string{"blade"} })
	d.Techniques[0].Hazards = []string{"blade"}
	d.Techniques[0].On["bisque"][0].Care = course.Care{Hazards: []string{"mist"}, Who: course.Instructor}
	d.Transitions[2].Care = course.Care{Hazards: []string{"mist"}, Who: course.Instructor} // the bisque firing
	return c
}

// set changes a pair.
func set(on map[string]course.Pair, state string, change func(*course.Pair)) {
	p := on[state]
	change(&p)
	on[state] = p
}

// first gives the first element of a page with a class.
func first(t *testing.T, root *html.Node, class string) *html.Node {
	t.Helper()
	all := elements(root, classed(class))
	if len(all) == 0 {
		t.Fatalf("nothing of the class %q", class)
	}
	return all[0]
}

// TestStateSaysWhoMayAndWhatToWear reads what stands under and beside the names
// of media and ways of working.
func TestStateSaysWhoMayAndWhatToWear(t *testing.T) {
	e := printed(t, harmful(t))
	for _, c := range []struct{ page, entry, heading, line string }{
		{"states/bisque.html", "stain-wash", "Stain wash best now ◆ with the instructor", "▲ Dust. Wear: a fitted respirator. Where: at the wet table."},
		{"states/bisque.html", "way.wiping-back", "Wiping back: yes, best ◆ instructor only", "▲ Blades, Mist & spray. Wear: a mask."},
		{"states/leather-hard.html", "way.wiping-back", "Wiping back: risky", "▲ Blades."},
		{"states/bone-dry.html", "coloured-slip", "Coloured slip", "▲ Blades."},
		{"states/leather-hard.html", "coloured-slip", "Coloured slip best now", ""},
	} {
		root := pageOf(t, e, c.page)
		h := elements(root, func(n *html.Node) bool { return attribute(n, "id") == c.entry })[0]
		if got := text(h); got != c.heading {
			t.Errorf("%s: heading %q, want %q", c.page, got, c.heading)
		}
		next := h.NextSibling
		for next.Type != html.ElementNode {
			next = next.NextSibling
		}
		if got := text(next); slices.Contains(strings.Fields(attribute(next, "class")), "care-line") != (c.line != "") || c.line != "" && got != c.line {
			t.Errorf("%s, %s: %q, want %q", c.page, c.entry, got, c.line)
		}
	}
	if got, want := said(under(t, pageOf(t, e, "states/bone-dry.html"), "What to do next")), "Fire it. ◆ instructor only | ▲ Mist & spray. Wear: a mask. | Fired clay is hard."; !strings.HasPrefix(got, want) {
		t.Errorf("the firing: %q, want %q", got, want)
	}
}

// TestStateInShort wants every medium in a line at the top of a state's page,
// with its marks, and what there is instead.
func TestStateInShort(t *testing.T) {
	c := harmful(t)
	set(c.Decoration.Media[0].On, "bisque", func(p *course.Pair) { p.Rule = "trade" })
	root := pageOf(t, printed(t, c), "states/bisque.html")
	var lines []string
	for _, li := range elements(first(t, root, "in-short"), called("li")) {
		lines = append(lines, text(li))
	}
	want := []string{"Stain wash: yes, best ◆ with the instructor ▲ dust It holds here.", "Coloured slip: no, trade custom It cannot hold here."}
	if !slices.Equal(lines, want) {
		t.Errorf("lines %q, want %q", lines, want)
	}
	if to := attribute(elements(first(t, root, "in-short"), called("a"))[0], "href"); to != "#stain-wash" {
		t.Errorf("the first line leads to %s", to)
	}
	want = []string{"Dust: Keep it wet. Lesson: Wipe a wash back", "Blades: Cut away from you. Lesson: Thin a wash", "Mist & spray: Mask on, fan on."}
	var hazards []string
	for _, li := range elements(first(t, root, "minding"), called("li")) {
		hazards = append(hazards, text(li))
	}
	if !slices.Equal(hazards, want) {
		t.Errorf("hazards %q, want %q", hazards, want)
	}
}

// TestMediumBeginsWithItsHazards reads the top of a medium's page.
func TestMediumBeginsWithItsHazards(t *testing.T) {
	root := pageOf(t, printed(t, harmful(t)), "media/stain-wash.html")
	want := "Before you begin Who may◆ with the instructor Weara fitted respirator Whereat the wet table Dust: Keep it wet. Lesson: Wipe a wash back"
	if got := text(first(t, root, "minding")); got != want {
		t.Errorf("%q, want %q", got, want)
	}
	order := elements(root, func(n *html.Node) bool { return classed("minding")(n) || classed("strip")(n) })
	if len(order) != 2 || !classed("minding")(order[0]) {
		t.Error("the strip does not follow the hazards")
	}
	if got, want := said(under(t, root, "Ways of working with it")), "Wiping backThe colour is wiped off the high places. ▲ Blades. Leather-hard: risky ◆ with the instructor Bisque: yes, best ◆ instructor only ▲ mask"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := text(first(t, root, "strip")); !strings.HasPrefix(got, "Stain wash: may it go on? ◆ with the instructor") {
		t.Errorf("the strip says %q", got)
	}
}

// TestStripSaysWhereFewerMay shows a state in which the instructor alone may.
func TestStripSaysWhereFewerMay(t *testing.T) {
	c := harmful(t)
	set(c.Decoration.Media[0].On, "wet", func(p *course.Pair) { p.Who = course.Instructor })
	strip := first(t, pageOf(t, printed(t, c), "slip/mix.html"), "strip")
	if got, want := text(elements(strip, called("li"))[0]), "Wet: yes ◆ instructor only"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := text(elements(strip, called("li"))[1]); got != "Leather-hard: yes" {
		t.Errorf("%q", got)
	}
}

func TestChartHasMarks(t *testing.T) {
	root := pageOf(t, printed(t, harmful(t)), "chart.html")
	table := elements(first(t, root, "chart"), called("tr"))
	var rows []string
	for _, tr := range table {
		rows = append(rows, text(tr))
	}
	for _, want := range []string{
		"Coloured slipyes ▲ blades It holds here.", // in the cell: the row has none
		"Stain wash ◆ with the instructor ▲ dustno, house rule It cannot hold here.risky ◆ with the instructor It may not hold here.",
		"Wiping back ▲ bladesno, physics It cannot be done here.risky It smears.",
		"yes, best ◆ instructor only ▲ mask It wipes clean.",
	} {
		if !slices.ContainsFunc(rows, func(row string) bool { return strings.Contains(row, want) }) {
			t.Errorf("no row says %q among %q", want, rows)
		}
	}
	if got, want := text(elements(first(t, root, "chart-minding"), called("ul"))[0]), "▲ dust: Dust. Keep it wet. ▲ blades: Blades. Cut away from you. ▲ mask: Mist & spray. Mask on, fan on."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestCardsBeginWithHazards reads the first section of each card.
func TestCardsBeginWithHazards(t *testing.T) {
	e := printed(t, harmful(t))
	for page, want := range map[string]string{
		"cards/stain-wash.html": "Before you begin Who may◆ with the instructor Weara fitted respirator Whereat the wet table Dust: Keep it wet. Lesson: Wipe a wash back " +
			"With some ways of working, or on some pots Blades: Cut away from you. Lesson: Thin a wash Mist & spray: Mask on, fan on.",
		"cards/coloured-slip.html": "Before you begin Who mayany student With some ways of working, or on some pots Blades: Cut away from you. Lesson: Thin a wash",
		"cards/index.html":         "What can hurt you Dust: Keep it wet. Lesson: Wipe a wash back Blades: Cut away from you. Lesson: Thin a wash Mist & spray: Mask on, fan on.",
	} {
		section := elements(first(t, pageOf(t, e, page), "card"), called("section"))[0]
		if got := text(section); got != want {
			t.Errorf("%s: %q, want %q", page, got, want)
		}
	}
	ways := said(elements(pageOf(t, e, "cards/stain-wash.html"), classed("bar")))
	if want := "Wiping back: yes, best ◆ instructor only ▲ blades, mask It wipes clean."; !strings.Contains(ways, want) {
		t.Errorf("%q lacks %q", ways, want)
	}
}

// TestLessonAndItsNotesSayWhoMay reads the facts of a lesson and the head of its
// notes for teaching.
func TestLessonAndItsNotesSayWhoMay(t *testing.T) {
	c := harmful(t)
	wipe, _ := c.FindPage("units/wash/wipe.md")
	wipe.Head.Medium, wipe.Head.Technique = "stain-wash", "wiping-back"
	wipe.Source = append(wipe.Source, "\n```teaching\nPrepare\n: Ten tiles.\n```\n"...)
	thin, _ := c.FindPage("units/wash/thin.md")
	thin.Source = append(thin.Source, "\n```teaching\nPrepare\n: Ten tiles.\n```\n\n```stages\nmedium: coloured-slip\nstate: wet\n```\n"...)
	e := forTeaching(t, c)
	if got, want := text(first(t, pageOf(t, e, "wash/wipe.html"), "facts")), "Who may◆ instructor only Take care▲ Dust, Blades, Mist & spray. Wear: a fitted respirator, a mask. Where: at the wet table."; !strings.Contains(got, want) {
		t.Errorf("the lesson says %q, want %q in it", got, want)
	}
	notes := elements(pageOf(t, e, "teaching.html"), classed("note"))
	for n, want := range []string{
		"Thin a wash Who may◆ with the instructor Weara fitted respirator Whereat the wet table Dust: Keep it wet. Lesson: Wipe a wash back Blades: Cut away from you. Lesson: Thin a wash",
		"Wipe a wash back Who may◆ instructor only Weara fitted respirator, a mask Whereat the wet table Dust: Keep it wet. Lesson: Wipe a wash back Blades: Cut away from you. Lesson: Thin a wash Mist & spray: Mask on, fan on.",
	} {
		if got := text(notes[n]); !strings.HasPrefix(got, want) {
			t.Errorf("the notes say %q, want first %q", got, want)
		}
	}
}

// TestBlockInALessonHasHazards shows the line over the states of a medium or
// technique, and what a single state adds.
func TestBlockInALessonHasHazards(t *testing.T) {
	p := newPress(t, harmful(t))
	for _, c := range []struct{ medium, state, technique, want string }{
		{"stain-wash", "", "", "state by state ◆ with the instructor ▲ Dust. Wear: a fitted respirator. Where: at the wet table. Wet: no, house rule It cannot hold here. Leather-hard: risky ◆ with the instructor It may"},
		{"", "", "wiping-back", "state by state ▲ Blades. Wet: no, physics It cannot be done here. Leather-hard: risky It smears."},
		{"stain-wash", "", "wiping-back", "state by state ◆ with the instructor ▲ Dust, Blades. Wear: a fitted respirator. Where: at the wet table. Wet: no, house rule It cannot hold here."},
		{"stain-wash", "", "wiping-back", "Bisque: yes, best ◆ instructor only ▲ mask It wipes clean."},
		{"", "bisque", "wiping-back", "in this state Bisque: yes, best ◆ instructor only ▲ Blades, Mist & spray. Wear: a mask. It wipes clean."},
		{"coloured-slip", "wet", "", "in this state Wet: yes ▲ Blades. It holds here."},
		{"", "bone-dry", "", "Stain wash: yes ◆ with the instructor ▲ dust It holds here."},
	} {
		if got := text(block(t, p, stagesBlock(c.medium, c.state, c.technique))); !strings.Contains(got, c.want) {
			t.Errorf("%s %s %s: %q, want %q in it", c.medium, c.state, c.technique, got, c.want)
		}
	}
}

// TestPageOfHazards wants each hazard once, with what it comes with, and a way to
// it from every place that names it.
func TestPageOfHazards(t *testing.T) {
	c := harmful(t)
	c.Decoration.Metals = course.Metals{Words: []string{"cobalt", "lead"}, Care: course.Care{Hazards: []string{"dust"}}}
	c.Decoration.Exceptions[0].Care = course.Care{Hazards: []string{"mist"}}
	e := printed(t, c)
	sections := elements(pageOf(t, e, "hazards.html"), classed("hazard"))
	want := []string{
		"Dust It harms the lungs. Keep it wet. Wipe it up. Weara fitted respirator Whereat the wet table Comes with Stain wash With a jar that namescobalt, lead LessonWipe a wash back",
		"Blades They cut. Cut away from your hand. Look. Comes with Coloured slip: Wet, Bone dry With these ways of working Wiping back LessonThin a wash",
		"Mist & spray It goes deep. Stay out of it. Wear the mask. Weara mask Comes with Mill slip With these ways of working Wiping back: Bisque With these stepsFire it.",
	}
	if len(sections) != len(want) {
		t.Fatalf("%d hazards, want %d", len(sections), len(want))
	}
	for n := range want {
		if got := text(sections[n]); got != want[n] {
			t.Errorf("%q, want %q", got, want[n])
		}
	}
	for _, page := range []string{"contents.html", "states/bisque.html", "media/stain-wash.html", "chart.html", "cards/stain-wash.html", "cards/index.html", "wash/thin.html"} {
		if n := slices.IndexFunc(linksOf(elements(pageOf(t, e, page), called("main"))[0]), func(to string) bool { return strings.HasSuffix(strings.TrimSuffix(to, "#dust"), "hazards.html") }); n < 0 {
			t.Errorf("nothing on %s leads to the hazards", page)
		}
	}
	if !slices.Contains(linksOf(pageOf(t, e, "book.html")), "#page.hazards") {
		t.Error("the book’s contents do not lead to the hazards")
	}
}

// TestCareOfSeveralRows wants what to wear and every place of all rows, each once.
func TestCareOfSeveralRows(t *testing.T) {
	c := harmful(t)
	d := c.Decoration
	d.Places = append(d.Places, course.Place{ID: "booth", Name: "in the booth"})
	d.Hazards[len(d.Hazards)-1].Place = "booth"
	got := newPress(t, c).care(place{page: "index.html"}, course.Care{Hazards: []string{"dust"}}, course.Care{Hazards: []string{"mist", "dust"}}, course.Care{Hazards: []string{"blade"}})
	if want := []string{"at the wet table", "in the booth"}; !slices.Equal(got.Places, want) {
		t.Errorf("places %q, want %q", got.Places, want)
	}
	if want := []string{"a fitted respirator", "a mask"}; !slices.Equal(got.Wear, want) {
		t.Errorf("to wear %q, want %q", got.Wear, want)
	}
}

// TestCareOfAnException wants what an exception allows to carry the care of its
// medium or its way of working beside its own, and what it forbids to carry none.
func TestCareOfAnException(t *testing.T) {
	c := harmful(t)
	d := c.Decoration
	medium, way := &d.Media[0], &d.Techniques[0]
	medium.Care, way.Care = course.Care{Hazards: []string{"dust"}}, course.Care{Hazards: []string{"mist"}, Who: course.Instructor}
	p := newPress(t, c)
	for _, tt := range []struct {
		what    string
		e       course.Exception
		verdict course.Verdict
		hazards []string
		who     string
	}{
		{"a product", course.Exception{Medium: medium.ID, Care: course.Care{Hazards: []string{"blade"}}}, course.Yes, []string{"blade", "dust"}, ""},
		{"a rule about a way", course.Exception{Technique: way.ID}, course.Risky, []string{"mist"}, "who-instructor"},
		{"what is never", course.Exception{Medium: medium.ID}, course.Never, nil, ""},
	} {
		got := p.exceptionCare(place{page: "index.html"}, tt.e, course.Pair{Verdict: tt.verdict})
		var hazards []string
		for _, h := range got.Hazards {
			hazards = append(hazards, h.ID)
		}
		slices.Sort(hazards)
		if !slices.Equal(hazards, tt.hazards) || got.Who != tt.who {
			t.Errorf("%s: %q by %q, want %q by %q", tt.what, hazards, got.Who, tt.hazards, tt.who)
		}
	}
}

// TestNoHazardsNoPage shows that a course without hazards has no page of them
// and no link to it.
func TestNoHazardsNoPage(t *testing.T) {
	c := small(t)
	c.Decoration.Hazards = nil
	e := printed(t, c)
	for address, page := range e {
		if address == "hazards.html" || bytes.Contains(page, []byte(`hazards.html"`)) {
			t.Errorf("%s is, or leads to, an empty page", address)
		}
	}
}

func TestWorseForHealth(t *testing.T) {
	p := newPress(t, harmful(t))
	one := func(who course.Who, hazards ...string) []course.Care {
		return []course.Care{{Hazards: hazards, Who: who}}
	}
	for _, c := range []struct {
		one, other []course.Care
		want       bool
	}{
		{one(""), one(""), false},
		{one("", "dust"), one(""), true},
		{one("", "dust"), one("", "dust", "mist"), false},
		{one("", "dust", "mist"), one("", "dust"), true},
		{one("", "blade"), one(""), false}, // a cut is no matter of health
		{one(course.WithInstructor), one(""), true},
		{one(course.WithInstructor), one(course.Student), true},
		{one(course.Instructor), one(course.WithInstructor, "mist"), true},
		{one(""), one(course.Instructor), false},
		{append(one("", "dust"), one("", "mist")...), one("", "dust"), true},
	} {
		if got := p.worseForHealth(c.one, c.other); got != c.want {
			t.Errorf("%v against %v: %v", c.one, c.other, got)
		}
	}
}

// TestNothingWorseIsOffered shows which media stand in for another, and that a
// state is not named as better where the work is worse for health there.
func TestNothingWorseIsOffered(t *testing.T) {
	risky := course.Pair{Verdict: course.Risky, Reason: "It may.", Fault: "It lifts.", Remedy: "Wait."}
	for _, c := range []struct {
		name   string
		change func(d *course.Decoration)
		page   string
		want   string // after the remedy
	}{
		{"another look, none worse", func(d *course.Decoration) {}, "states/leather-hard.html", "Wait. Today ratherColoured slip Best laterBisque"},
		{"worse for health", func(d *course.Decoration) { d.Media[0].Hazards = []string{"mist"} }, "states/leather-hard.html", "Wait. Best laterBisque"},
		{"a cut is not", func(d *course.Decoration) { d.Media[0].Hazards = []string{"blade"} }, "states/leather-hard.html", "Wait. Today ratherColoured slip Best laterBisque"},
		{"worse in this state", func(d *course.Decoration) {
			set(d.Media[0].On, "leather-hard", func(p *course.Pair) { p.Hazards = []string{"mist"} })
		}, "states/leather-hard.html", "Wait. Best laterBisque"},
		{"needs the instructor", func(d *course.Decoration) { d.Media[0].Who = course.WithInstructor }, "states/leather-hard.html", "Wait. Best laterBisque"},
		{"both have it", func(d *course.Decoration) {
			d.Media[0].Hazards, d.Media[1].Hazards = []string{"mist"}, []string{"mist"}
		}, "states/leather-hard.html", "Wait. Today ratherColoured slip Best laterBisque"},
		{"a glaze is no colour", func(d *course.Decoration) { d.Media[0].Kind = "glaze" }, "states/leather-hard.html", "Wait. Best laterBisque"},
		{"unless it looks the same", func(d *course.Decoration) {
			d.Media[0].Kind, d.Media[0].Look, d.Media[1].Look = "glaze", "colour", "colour"
		}, "states/leather-hard.html", "Wait. Today ratherColoured slip Best laterBisque"},
		{"only what is a plain yes", func(d *course.Decoration) {
			set(d.Media[0].On, "leather-hard", func(p *course.Pair) { p.Verdict = course.Label })
		}, "states/leather-hard.html", "Wait. Best laterBisque"},
		{"a worse best state", func(d *course.Decoration) {
			set(d.Media[1].On, "bisque", func(p *course.Pair) { p.Hazards = []string{"mist"} })
		}, "states/leather-hard.html", "Wait. Today ratherColoured slip"},
	} {
		t.Run(c.name, func(t *testing.T) {
			course := small(t)
			course.Decoration.Hazards = harmful(t).Decoration.Hazards
			course.Decoration.Media[1].On["leather-hard"] = risky
			c.change(course.Decoration)
			if got := said(under(t, pageOf(t, printed(t, course), c.page), "Risky")); !strings.HasSuffix(got, c.want) {
				t.Errorf("%q, want %q at its end", got, c.want)
			}
		})
	}
}

// TestWayIsNotSentWhereItIsWorse does the same for a way of working.
func TestWayIsNotSentWhereItIsWorse(t *testing.T) {
	for _, c := range []struct {
		hazards []string
		want    string
	}{{nil, "What thenWait. Best laterBisque"}, {[]string{"mist"}, "What thenWait."}} {
		course := small(t)
		course.Decoration.Hazards = harmful(t).Decoration.Hazards
		course.Decoration.Techniques[0].On["bisque"][0].Hazards = c.hazards
		if got := said(under(t, pageOf(t, printed(t, course), "states/leather-hard.html"), "How you may work it now")); !strings.HasSuffix(got, c.want) {
			t.Errorf("%q, want %q at its end", got, c.want)
		}
	}
}

// forgetful are changes to the theme after which a page says less than it owes,
// with what is said of it.
var forgetful = []struct{ name, file, old, new, want string }{
	{"a medium’s page", "pages/medium.html", `{{template "care" .Safety}}`, "", `page media/stain-wash.html: it names "Stain wash" without its hazards: Dust, with the instructor`},
	{"a way on a medium’s page", "pages/medium.html", `{{template "care-line" .Safety}}`, "", `page media/stain-wash.html: it names "Wiping back" without its hazards: Blades`},
	{"an entry", "pieces/stages.html", `{{template "care-line" .Safety}}`, "", `page states/`},
	{"who may beside a name", "pieces/stages.html", `{{if .Safety.Who}} {{template "care-who" .Safety}}{{end}}{{end}}</h3>`, `{{end}}</h3>`, `without its hazards: Dust, with the instructor`},
	{"a list", "pieces/stages.html", `{{if .Safety.Any}} {{template "care-mark" .Safety}}{{end}} <small>`, `<small>`, `page chart.html: it names "Coloured slip" without its hazards: Blades`},
	{"a row of the chart", "pages/chart.html", `{{end}}{{if .Safety.Any}} {{template "care-mark" .Safety}}{{end}}</th>`, `{{end}}</th>`, `page chart.html: it names`},
	{"a cell of the chart", "pages/chart.html", `{{if .Safety.Any}} {{template "care-mark" .Safety}}{{end}} <small>`, `<small>`, `page chart.html: it names`},
	{"what the marks mean", "pages/chart.html", `{{template "care-key" .}}`, ``, `page chart.html: it names "Dust" without its hazards: Dust`},
	{"a card", "pages/card.html", `{{template "care" .Safety}}`, "", `page cards/stain-wash.html: it names "Stain wash" without its hazards: Dust, with the instructor`},
	{"a card’s ways", "pages/card.html", `{{template "care-short" .}}`, "", `page cards/coloured-slip.html: it names "Coloured slip" without its hazards: Blades`},
	{"the card of the course", "pages/card.html", `{{template "care-short" .Safety -}}`, "", `page cards/index.html: it names "Colour at the bench" without its hazards: Dust, Blades, Mist & spray`},
	{"who may on that card", "pages/card.html", `{{if .Safety.Any}} {{template "care-mark" .Safety}}{{end}}</th>`, `</th>`, `page cards/index.html: it names "Stain wash" without its hazards`},
	{"a lesson", "pages/lesson.html", `{{template "care-line" .Safety}}`, "", `page wash/thin.html: it names "stain-wash" without its hazards: Dust, with the instructor. The theme’s page "lesson"`},
	{"notes for teaching", "pages/teaching.html", `{{template "care" .Safety}}`, "", `page teaching.html: it names "Thin a wash" without its hazards: Dust, with the instructor`},
	{"a piece that says nothing", "pieces/care.html", `: {{.Short}}`, ``, `the theme’s piece "care`},
	{"a piece without the mask", "pieces/care.html", `{{- with .Wear}} {{word "care-wear"}}: {{template "listed" .}}.{{end}}`, ``, `the theme’s piece "care-line" does not say "a`},
	{"a piece without who", "pieces/care.html", `{{with .Who}}{{template "who" .}}{{else}}`, `{{with .Who}}-{{else}}`, `the theme’s piece "care" does not say "with the instructor" of "Stain wash"`},
}

// TestNothingIsPublishedWithoutItsHazards takes the hazards of one thing out of
// one place after the other and wants an error that names page and thing.
func TestNothingIsPublishedWithoutItsHazards(t *testing.T) {
	c := harmful(t)
	thin, _ := c.FindPage("units/wash/thin.md")
	thin.Source = append(thin.Source, "\n```teaching\nPrepare\n: Ten tiles.\n```\n"...)
	for _, f := range forgetful {
		t.Run(f.name, func(t *testing.T) {
			theme := copyTheme(t)
			old := string(theme[f.file].Data)
			if !strings.Contains(old, f.old) {
				t.Fatalf("%s does not hold %s", f.file, f.old)
			}
			theme[f.file] = &fstest.MapFile{Data: []byte(strings.Replace(old, f.old, f.new, 1))}
			e, err := Print(opened(t, theme), read(t, c), shared(), Copy{Teaching: true})
			if err != nil {
				t.Fatal(err)
			}
			if all, err := everything(e); all != nil || err == nil {
				t.Fatal("the handbook was printed")
			}
			if said := faultsOf(e); !strings.Contains(said, f.want) {
				t.Errorf("errors\n%swant one with %q", said, f.want)
			}
		})
	}
}

// faultsOf prints every page of an edition, and returns what goes wrong, a line
// for each page.
func faultsOf(e *Edition) string {
	var said strings.Builder
	for _, at := range e.Addresses() {
		if _, _, err := e.File(at); err != nil {
			fmt.Fprintln(&said, err)
		}
	}
	return said.String()
}

// TestCardOfTheCourseHasEveryHazard wants a hazard that nothing but drying has on
// the card of the course, beside all others.
func TestCardOfTheCourseHasEveryHazard(t *testing.T) {
	c := harmful(t)
	d := c.Decoration
	d.Hazards = append(d.Hazards, course.Hazard{ID: "fume", Title: "Fume", Harm: "It harms.", Do: "Keep out.", Short: "Vent on."})
	d.Transitions[1].Care = course.Care{Hazards: []string{"fume"}}
	card := pageOf(t, printed(t, c), "cards/index.html")
	if got, want := text(first(t, card, "care-short")), "Mist & spray: Mask on, fan on. Fume: Vent on."; !strings.HasSuffix(got, want) {
		t.Errorf("%q, want at its end %q", got, want)
	}
}

// shownHazards finds the hazards that a piece of a page leads to.
var shownHazards = regexp.MustCompile(`hazards\.html#([a-z-]+)"`)

// TestEveryEntryOfTheDemoHasItsHazards goes through the program's own table as
// the demo course has it: every medium and way of working on every page of a
// state, every medium's page and every card, against the table alone.
func TestEveryEntryOfTheDemoHasItsHazards(t *testing.T) {
	content := os.DirFS("../../content")
	if _, err := fs.Stat(content, "course.yaml"); err != nil {
		t.Fatal(err)
	}
	c, found := new(course.Reader).Load(content)
	if found.Stop() {
		t.Fatal(found)
	}
	i := newPress(t, c)
	entries := 0
	print := func(s sheet) string {
		n := slices.IndexFunc(i.sheets, func(one sheet) bool { return one.address == s.address })
		page, err := i.printOne(i.sheets[n])
		if err != nil {
			t.Fatal(err)
		}
		return string(page)
	}
	want := func(where, piece string, rows ...course.Care) {
		entries++
		hazards, who := c.Decoration.HazardsOf(rows...)
		var ids, shown []string
		for _, h := range hazards {
			ids = append(ids, h.ID)
		}
		for _, m := range shownHazards.FindAllStringSubmatch(piece, -1) {
			shown = append(shown, m[1])
		}
		if !slices.Equal(ids, shown) {
			t.Errorf("%s shows the hazards %q, want %q", where, shown, ids)
		}
		if words := i.Word(whoWords[who]); words != "" && !strings.Contains(piece, words) {
			t.Errorf("%s does not say %q", where, words)
		}
	}
	for n, s := range i.stateSheets() {
		state := c.Decoration.States[n]
		page := print(s)
		for _, m := range c.Decoration.Media {
			want(s.address+", "+m.Name, entryOf(t, page, m.ID), m.Care, m.On[state.ID].Care)
		}
		for _, q := range c.Decoration.Techniques {
			for k, m := range i.manners(q, state) {
				id := wayID(q.ID)
				if k > 0 {
					id += fmt.Sprint(".", k+1)
				}
				want(s.address+", "+m.name, entryOf(t, page, id), q.Care, m.on[state.ID].Care)
			}
		}
	}
	for n, s := range append(i.mediumSheets(), i.cardSheets()...) {
		m := c.Decoration.Media[n%len(c.Decoration.Media)]
		_, piece, _ := strings.Cut(print(s), `<div class="care">`)
		if path.Dir(s.address) == "cards" {
			piece, _, _ = strings.Cut(piece, "<h3>")
		}
		piece, _, _ = strings.Cut(piece, "</section>")
		want(s.address, piece, m.Care)
	}
	if entries < 150 {
		t.Errorf("only %d entries were read", entries)
	}
}

// entryOf is an entry of a state's page: its heading and what follows up to the
// table's own words for it.
func entryOf(t *testing.T, page, id string) string {
	t.Helper()
	_, entry, ok := strings.Cut(page, `<h3 id="`+id+`">`)
	if !ok {
		t.Errorf("no entry %s", id)
	}
	entry, _, _ = strings.Cut(entry, "<h3")
	entry, _, _ = strings.Cut(entry, "</section>")
	return entry
}
