package press

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/net/html"

	"slipbook/generator/course"
	"slipbook/generator/press/presstest"
)

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
	presstest.Change(c.Decoration.Media[0].On, "bisque", func(p *course.Pair) { p.Rule = "trade" })
	root := pageOf(t, printed(t, c), "states/bisque.html")
	var lines []string
	for _, li := range elements(first(t, root, "in-short"), called("li")) {
		lines = append(lines, text(li))
	}
	want := []string{"Stain wash: yes, best ◆ with the instructor ▲ dust", "Coloured slip: no, trade custom"}
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
	presstest.Change(c.Decoration.Media[0].On, "wet", func(p *course.Pair) { p.Who = course.Instructor })
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
		{"another look, none worse", func(d *course.Decoration) {}, "states/leather-hard.html", "Wait. Instead, todayColoured slip (not on White porcelain) Best laterBisque"},
		{"worse for health", func(d *course.Decoration) { d.Media[0].Hazards = []string{"mist"} }, "states/leather-hard.html", "Wait. Best laterBisque"},
		{"a cut is not", func(d *course.Decoration) { d.Media[0].Hazards = []string{"blade"} }, "states/leather-hard.html", "Wait. Instead, todayColoured slip (not on White porcelain) Best laterBisque"},
		{"worse in this state", func(d *course.Decoration) {
			presstest.Change(d.Media[0].On, "leather-hard", func(p *course.Pair) { p.Hazards = []string{"mist"} })
		}, "states/leather-hard.html", "Wait. Best laterBisque"},
		{"needs the instructor", func(d *course.Decoration) { d.Media[0].Who = course.WithInstructor }, "states/leather-hard.html", "Wait. Best laterBisque"},
		{"both have it", func(d *course.Decoration) {
			d.Media[0].Hazards, d.Media[1].Hazards = []string{"mist"}, []string{"mist"}
		}, "states/leather-hard.html", "Wait. Instead, todayColoured slip (not on White porcelain) Best laterBisque"},
		{"a glaze is no colour", func(d *course.Decoration) { d.Media[0].Kind = "glaze" }, "states/leather-hard.html", "Wait. Best laterBisque"},
		{"unless it looks the same", func(d *course.Decoration) {
			d.Media[0].Kind, d.Media[0].Look, d.Media[1].Look = "glaze", "colour", "colour"
		}, "states/leather-hard.html", "Wait. Instead, todayColoured slip (not on White porcelain) Best laterBisque"},
		{"only what is a plain yes", func(d *course.Decoration) {
			presstest.Change(d.Media[0].On, "leather-hard", func(p *course.Pair) { p.Verdict = course.Label })
		}, "states/leather-hard.html", "Wait. Best laterBisque"},
		{"a worse best state", func(d *course.Decoration) {
			presstest.Change(d.Media[1].On, "bisque", func(p *course.Pair) { p.Hazards = []string{"mist"} })
		}, "states/leather-hard.html", "Wait. Instead, todayColoured slip (not on White porcelain)"},
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
	}{{nil, "What to doWait. Best laterBisque"}, {[]string{"mist"}, "What to doWait."}} {
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
	{"a recipe", "pages/recipe.html", `{{template "care" .Safety}}`, ``, `page recipes/blue-slip.html: it names "Blue slip" without its hazards: Dust`},
	{"the recipes", "pages/recipes.html", `{{template "care-line" .Safety}}`, ``, `page recipes/index.html: it names "Blue slip" without its hazards: Dust`},
	{"a material", "pages/material.html", `{{template "care" .Safety}}`, ``, `page materials/yard-clay.html: it names "Yard clay" without its hazards: Dust`},
	{"the register", "pages/materials.html", `{{template "care-line" .Safety}}`, ``, `page materials/index.html: it names "Yard clay" without its hazards: Dust`},
	{"what mixing asks for, of a medium", "pages/medium.html", `{{template "care-mixing" .Care}}`, ``, `page media/coloured-slip.html: it names "Coloured slip" without its hazards: Wear a fitted respirator.`},
	{"the same on a card", "pages/card.html", `{{template "care-mixing" .Mixing}}`, ``, `page cards/coloured-slip.html: it names "Coloured slip" without its hazards: Wear a fitted respirator.`},
	{"a piece without it", "pieces/care.html", `<span data-mixing>{{.Says}}</span>`, `<span data-mixing></span>`, `the theme’s piece "care-mixing" does not say "Wear a fitted respirator.`},
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
	stock(c)
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
			if said := faultsOf(t, e); !strings.Contains(said, f.want) {
				t.Errorf("errors\n%swant one with %q", said, f.want)
			}
		})
	}
}

// stock gives a course a clay that makes dust, and a slip of it.
func stock(c *course.Course) {
	sheet := course.Sheet{Supplier: "Supplier A (invented)", Date: "2026-01-10", ReadBy: "Nobody", Read: "2026-02-01", Review: "2028-02-01", Spots: course.Spots{}}
	c.Materials = append(c.Materials, &course.Material{ID: "yard-clay", Own: true, Name: "Yard clay", What: "A clay.", Sheet: sheet,
		Class: course.Class{Says: course.NotClassed}, Care: course.Care{Hazards: []string{"dust"}}})
	c.Recipes = append(c.Recipes, &course.Recipe{ID: "blue-slip", Title: "Blue slip", About: "A slip.", Medium: "coloured-slip", States: []string{"wet"}, Cone: "6",
		Base: []course.Share{{Material: "yard-clay", Amount: 100}}, Water: 75, Clear: course.NoClear, Food: "no"})
}

// faultsOf prints every page of an edition, and returns what goes wrong, a line
// for each page.
func faultsOf(t *testing.T, e *Edition) string {
	t.Helper()
	var said strings.Builder
	for _, at := range addressesOf(t, e) {
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
