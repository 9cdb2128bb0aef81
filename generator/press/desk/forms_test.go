package desk

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/calculators/stage"
	"slipbook/calculators/stage/stagetest"
	"slipbook/generator/markup"
	"slipbook/generator/press/presstest"
)

// TestClaysAreOffered wants the course's clays to be offered where a number is
// asked that they fill in, and no empty chooser where it names none.
func TestClaysAreOffered(t *testing.T) {
	p := ofTheDemo(t, '.')
	html := printCalculator(t, p, "shrinkage-size", 1, markup.Setting{Name: "body", Value: "Lantern porcelain"})
	presstest.Holds(t, html, `<option value="heron-stoneware">Heron stoneware</option>`, `<option value="lantern-porcelain" selected>Lantern porcelain</option>`,
		`data-still="“The clay shrinks in all” / “Clay of the studio”"`)
	if len(p.Settings.Bodies) < 3 || !strings.Contains(html, "lantern-porcelain%2526") && !strings.Contains(html, "lantern-porcelain%26") {
		t.Error("the form does not carry the clays to the engine")
	}
	p.Settings.Bodies = nil
	p.kept.Clear()
	html = printCalculator(t, p, "shrinkage-size", 1)
	presstest.Holds(t, html, `data-still="“The clay shrinks in all”"`)
	if strings.Contains(html, `data-input="body"`) {
		t.Error("a course without clays offers them")
	}
}

func TestRowsComeFromTheTable(t *testing.T) {
	p := ofTheDemo(t, '.')
	p.Settings.Table = stagetest.Table()
	html := printCalculator(t, p, "stage-plan", 1, markup.Setting{Name: "layers", Value: "slip dipped then scratched, wash"}, markup.Setting{Name: "already", Value: "fired slip"})
	layers := html[strings.Index(html, `data-input="layers"`):strings.Index(html, `data-input="places"`)]
	already := html[strings.Index(html, `data-input="already"`):strings.Index(html, `data-input="layers"`)]
	for _, m := range p.Settings.Table.Media {
		presstest.Holds(t, layers, `<option data-fits="`+m.Base+`">`+m.Name+`</option>`)
		presstest.Holds(t, already, `<option data-fits="`+m.Base+`">`+m.Name+`</option>`)
	}
	for _, q := range p.Settings.Table.Techniques {
		flags := ""
		if q.Takes {
			flags += " data-takes"
		}
		if q.Bare {
			flags += " data-bare"
		}
		presstest.Holds(t, layers, `<option data-fits="`+strings.Join(q.With, " ")+`"`+flags+`>`+q.Name+`</option>`)
	}
	presstest.Holds(t, layers, `<option value="clay" data-bare>`, `data-rows-most="8" data-rows-least="1"`, `name="layers" value="Coloured slip by Dipping then Scratching, Stain wash"`)
	presstest.Holds(t, already, `<option value="fixed">`, `<option value="loose">`, `data-rows-most="8" data-rows-least="0"`, `name="already" value="Coloured slip fixed"`)
	if strings.Contains(already, "data-way") || strings.Contains(layers, "data-fixed") {
		t.Error("layers are asked for what is on the pot, or the other way round")
	}
}

// TestWordsThatNoChooserHolds stay as a lesson wrote them.
func TestWordsThatNoChooserHolds(t *testing.T) {
	html := printCalculator(t, ofTheDemo(t, '.'), "stage-plan", 1, markup.Setting{Name: "layers", Value: "blue slip"})
	presstest.Holds(t, html, `name="layers" value="blue slip"`)
}

// TestWhatChoosersWriteIsUnderstood reads back, from the program's own table and
// the demo course's, each medium in each way of working that a row offers, alone
// and after another.
func TestWhatChoosersWriteIsUnderstood(t *testing.T) {
	table := ofTheDemo(t, '.').Settings.Table
	tried := 0
	read := func(layer stage.Layer) {
		tried++
		text := table.Choice(layer)
		if u, err := table.Layers(text); err != nil || u.Chosen != text {
			t.Errorf("%q is read as %q (%v)", text, u.Chosen, err)
		}
	}
	for medium := -1; medium < len(table.Media); medium++ {
		for q := range table.Techniques {
			if !table.Fits(q, medium) {
				continue
			}
			read(stage.Layer{Medium: medium, Ways: []int{q}})
			for then := range table.Techniques {
				if then != q && table.Fits(then, medium) && (table.Techniques[then].Takes || !table.Techniques[q].Takes) {
					read(stage.Layer{Medium: medium, Ways: []int{q, then}})
				}
			}
		}
	}
	if tried < 500 {
		t.Errorf("only %d layers were tried", tried)
	}
}

// TestStatesOfTheTable are offered, with the parts that it knows and no others.
func TestStatesOfTheTable(t *testing.T) {
	p := ofTheDemo(t, '.')
	p.Settings.Table = stagetest.Table()
	html := printCalculator(t, p, "stage-plan", 1)
	presstest.Holds(t, html, `<option value="soft-leather-hard">Soft leather-hard</option>`)
	p.Settings.Table.States = slices.Clone(p.Settings.Table.States)
	p.Settings.Table.States[1].Parts = nil
	p.kept.Clear()
	html = printCalculator(t, p, "stage-plan", 1)
	presstest.Holds(t, html, `<option value="leather-hard">Leather-hard</option>`)
	if strings.Contains(html, "soft-leather-hard") {
		t.Error("parts are offered that the table has not")
	}
}

func TestOtherWordsAreTyped(t *testing.T) {
	html := printCalculator(t, ofTheDemo(t, ','), "tile-plan", 1, markup.Setting{Name: "cones", Value: "06, 6"})
	presstest.Holds(t, html, `name="cones" value="06, 6"`, `inputmode="text"`)
	if strings.Contains(html, "data-rows") || strings.Contains(html, "data-fits") {
		t.Error("words that are no layers are offered as layers")
	}
}

func TestTableStaysOutOfPages(t *testing.T) {
	p := ofTheDemo(t, '.')
	for name, clays := range map[string]bool{"slip-density": false, "stage-plan": false, "slip-fit": true} {
		html := printCalculator(t, p, name, 0)
		if !strings.Contains(html, `data-settings="decimal=.&amp;measures=metric`) || strings.Contains(html, "&amp;table=") || strings.Contains(html, "&amp;body=") != clays {
			t.Errorf("%s: the settings in the page are more than it can need, or less", name)
		}
	}
}

// TestStepsSayWhatProtectsFirst prints steps to take care in, and one with
// nothing to take care of, which says nothing of who does it either.
func TestStepsSayWhatProtectsFirst(t *testing.T) {
	p := ofTheDemo(t, '.')
	p.Settings.Table = stagetest.Table()
	answer := catalog.Solve("stage-plan", []form.Setting{{Name: "state", Text: "glaze-fired"}, {Name: "layers", Text: "enamel sprayed, decal"}}, p.Settings)
	var out bytes.Buffer
	if err := p.theme.Pages.ExecuteTemplate(&out, "plan", Example{Steps: Steps(answer, "calculator.1", func(lesson string) string { return lessonFrom(inLesson, lesson) })}); err != nil {
		t.Fatal(err)
	}
	root, err := html.Parse(&out)
	if err != nil {
		t.Fatal(err)
	}
	all := presstest.Elements(root, presstest.Called("li"))
	if len(all) != 12 {
		t.Fatalf("%d items, want six titles and six steps", len(all))
	}
	for n, want := range []string{
		"Put on enamel: spraying Glaze-fired", "Dry Glaze-fired", "On-glaze fire Glaze-fired",
		"Put on decal Glaze-fired", "Dry Glaze-fired", "On-glaze fire Glaze-fired",
		"The pot is now: Glaze-fired Wear: a fitted respirator, safety glasses, gloves Place: in the booth Who: the instructor; you watch " +
			"Take care: Spray in the booth only. Gloves on, and wash your hands. Keep it off every surface that food, drink or lips touch. Why, in its lesson " +
			"The instructor does this step, and you watch. Put on enamel: spraying. Why: ",
		"The pot is now: Glaze-fired Wear: gloves Who: the instructor; you watch Take care: Gloves on, and wash your hands. Why, in its lesson Let it dry apart. Why: ",
		"The pot is now: Glaze-fired Place: in the kiln room Who: the instructor; you watch Take care: Keep away from the hot kiln. Fire it to the cone on its label. Why: ",
		"The pot is now: Glaze-fired Who: you Take care: Keep it off",
		"The pot is now: Glaze-fired Let it dry apart. Why: ",
	} {
		if got := strings.Join(strings.Fields(presstest.Text(all[n])), " "); !strings.HasPrefix(strings.ReplaceAll(got, " ", ""), strings.ReplaceAll(want, " ", "")) {
			t.Errorf("item %d says %q, want it to begin %q", n+1, got, want)
		}
	}
	if got, want := presstest.Links(root), []string{"#calculator.1.step.1", "#calculator.1.step.2", "#calculator.1.step.3", "#calculator.1.step.4", "#calculator.1.step.5", "#calculator.1.step.6", "../safety/spray.html", "../safety/metal.html"}; !slices.Equal(got, want) {
		t.Errorf("links %q, want %q", got, want)
	}
	for n, step := range all[6:] {
		if id := presstest.Attribute(step, "id"); id != fmt.Sprintf("calculator.1.step.%d", n+1) {
			t.Errorf("step %d stands at %q", n+1, id)
		}
	}
}

// TestBoxesLeadOn wants a box that asks for a shrinkage to lead to the test
// bars, from wherever the form stands, and to a calculator that exists.
func TestBoxesLeadOn(t *testing.T) {
	p := ofTheDemo(t, '.')
	presstest.Holds(t, printCalculator(t, p, "shrinkage-size", 1), `<a href="../calculators/shrinkage-test.html">`)
	leads := 0
	for _, c := range catalog.All() {
		for _, in := range c.Inputs {
			if in.Finds == "" {
				continue
			}
			if leads++; catalog.Find(in.Finds) == nil || in.Finds == c.Name {
				t.Errorf("%s of %s leads to %q", in.Name, c.Name, in.Finds)
			}
		}
	}
	if leads < 3 {
		t.Errorf("only %d boxes lead on", leads)
	}
}

// TestPlanTellsOfMixing wants what mixing calls for to stand beside a plan, with the
// way to each recipe, before the steps are told whole.
func TestPlanTellsOfMixing(t *testing.T) {
	p := ofTheDemo(t, '.')
	p.Settings.Table = stagetest.Table()
	answer := catalog.Solve("stage-plan", []form.Setting{{Name: "state", Text: "leather-hard"}, {Name: "layers", Text: "slip, glaze"}}, p.Settings)
	way := func(page string) string { return "../" + page }
	var out bytes.Buffer
	if err := p.theme.Pages.ExecuteTemplate(&out, "plan", Example{Steps: Steps(answer, "calculator.1", way), Mixed: MixedOf(answer.Mixed, way)}); err != nil {
		t.Fatal(err)
	}
	printed := out.String()
	steps := strings.Index(printed, "reckon-steps")
	for _, want := range []string{`<a href="../recipes/blue.html">Blue slip</a>`, "Wear a mask and gloves to weigh it. Contains cobalt: “Blue slip”.", `<a href="../recipes/clear.html">Clear</a>`, "Wear a mask to weigh it."} {
		if at := strings.Index(printed, want); at < 0 || at > steps {
			t.Errorf("%q stands at %d, the steps at %d: %s", want, at, steps, printed)
		}
	}
	if !strings.Contains(printed[steps:], "“Blue slip”: it makes skin itch.") {
		t.Error("the step does not say what stays in the wet bucket")
	}
}
