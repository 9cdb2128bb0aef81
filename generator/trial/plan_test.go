//go:build judges

package trial

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"slipbook/calculators/catalog"
	engine "slipbook/calculators/form"
	"slipbook/calculators/stage"
)

// plan opens a form of the planner in a tab, filled by a request.
func plan(b *tab, h *handbook, given ...engine.Setting) *form {
	b.t.Helper()
	f := &form{tab: b, calc: catalog.In("en-GB").Find("stage-plan")}
	query := ""
	if len(given) > 0 {
		query = "?" + engine.Request("stage-plan", given)
	}
	f.visit(h.home + "calculators/stage-plan.html" + query)
	f.ready()
	return f
}

// wire returns what stands for an input on the wire.
func (f *form) wire(input string) string {
	f.t.Helper()
	return ask[string](f.tab, f.boxes(input)+"[0].value")
}

// rowsOf returns what is chosen in each row of an input, choosers separated by
// strokes.
func (f *form) rowsOf(input string) []string {
	f.t.Helper()
	return ask[[]string](f.tab, `[...document.querySelectorAll("[data-input=`+input+`] li")].filter(r => r.checkVisibility())
		.map(r => [...r.querySelectorAll("select")].map(s => s.value).join("|"))`)
}

// offered lists what a chooser offers.
func (f *form) offered(chooser string) []string {
	f.t.Helper()
	return ask[[]string](f.tab, "[..."+chooser+".options].filter(o => o.value).map(o => o.text)")
}

// fitting lists the ways of working of the table that fit a medium, or the clay
// itself, by name; of those that take away, if so asked.
func fitting(table *stage.Table, medium int, taking bool, but ...string) []string {
	var names []string
	for i, q := range table.Techniques {
		if table.Fits(i, medium) && (q.Takes || !taking) && !slices.Contains(but, q.ID) {
			names = append(names, q.Name)
		}
	}
	return names
}

// mediumOf and wayOf find what a table has under an id.
func mediumOf(t *testing.T, table *stage.Table, id string) (int, string) {
	t.Helper()
	for i, m := range table.Media {
		if m.ID == id {
			return i, m.Name
		}
	}
	t.Fatalf("the table has no medium %q", id)
	return 0, ""
}

func wayOf(t *testing.T, table *stage.Table, id string) string {
	t.Helper()
	for _, q := range table.Techniques {
		if q.ID == id {
			return q.Name
		}
	}
	t.Fatalf("the table has no technique %q", id)
	return ""
}

// TestPlanByTouch chooses layers with a finger: several ways of working on one,
// and the clay itself, each offered only what fits it and may come next.
func TestPlanByTouch(t *testing.T) {
	t.Parallel()
	h, table := published(t), settings(t).Table
	f := plan(phone(t), h)
	slip, slipName := mediumOf(t, table, "coloured-slip")
	_, washName := mediumOf(t, table, "stain-wash")
	pouring, scratching, carving := wayOf(t, table, "pouring"), wayOf(t, table, "scratching-through"), wayOf(t, table, "carving")
	f.pick(f.boxes("state")+"[0]", "soft-leather-hard")
	way := func(row, n int) string { return fmt.Sprintf("%s[%d].querySelectorAll('[data-way]')[%d]", rows, row, n) }
	medium := func(row int) string { return fmt.Sprintf("%s[%d].querySelector('select')", rows, row) }
	if got := f.offered(way(0, 0)); len(got) > 0 {
		t.Errorf("before a medium is chosen there is offered: %q", got)
	}
	f.pick(medium(0), slipName)
	same(t, "beside slip", f.offered(way(0, 0)), fitting(table, slip, false))
	f.pick(way(0, 0), pouring)
	same(t, "after pouring", f.offered(way(0, 1)), fitting(table, slip, false, "pouring"))
	f.pick(way(0, 1), scratching)
	same(t, "after scratching through", f.offered(way(0, 2)), fitting(table, slip, true, "pouring", "scratching-through"))
	f.tap(key("Add a layer"))
	f.tap(key("Add a layer"))
	f.pick(medium(1), washName)
	f.pick(medium(2), stage.BareClay)
	same(t, "for the clay itself", f.offered(way(2, 0)), fitting(table, -1, false))
	if got, want := f.wire("layers"), slipName+" by "+pouring+" then "+scratching+", "+washName; got != want {
		t.Errorf("a row that is not whole is on the wire: %q, want %q", got, want)
	}
	f.pick(way(2, 0), carving)
	if got := f.wire("layers"); !strings.HasSuffix(got, ", "+stage.BareClay+" by "+carving) {
		t.Errorf("the clay itself on the wire: %q", got)
	}
	f.tap(key("Take the last away"))
	f.pick(way(0, 0), "") // what came after it moves up
	if got, want := f.wire("layers"), slipName+" by "+scratching+", "+washName; got != want {
		t.Errorf("the layers on the wire: %q, want %q", got, want)
	}
	f.shows(engine.Setting{Name: "state", Text: "soft-leather-hard"}, engine.Setting{Name: "layers", Text: f.wire("layers")})
	for _, fault := range append(append(ask[[]string](f.tab, small), ask[[]string](f.tab, crowded)...), ask[[]string](f.tab, widest)...) {
		t.Error(fault)
	}
	f.judged("with a plan")
}

// same compares two lists.
func same(t *testing.T, what string, got, want []string) {
	t.Helper()
	if !slices.Equal(got, want) || len(want) == 0 {
		t.Errorf("%s there is offered %q, want %q", what, got, want)
	}
}

// shows checks that the plan of a request stands on the page: all titles first,
// each leading to its step, and in each step what protects before what to do.
func (f *form) shows(given ...engine.Setting) {
	f.t.Helper()
	f.agree(given, settings(f.t))
	want := catalog.Solve("stage-plan", given, settings(f.t))
	type shownStep struct {
		Title, Step string
		Care        []string
		First       bool // the care stands before what is to be done
		Lesson      string
	}
	got := ask[[]shownStep](f.tab, `[...document.querySelectorAll("[data-plan] .reckon-short a")].map(a => {
		const step = document.querySelector(a.hash.replaceAll(".", "\\."))
		const care = step.querySelector("[data-care]"), what = step.querySelector("[data-say=what]")
		return {title: a.textContent, step: what.textContent, care: [...care?.querySelectorAll("dd") ?? []].map(d => d.textContent),
			first: !care || !!(care.compareDocumentPosition(what) & Node.DOCUMENT_POSITION_FOLLOWING),
			lesson: care?.querySelector("a")?.href ?? ""}
	})`)
	if len(got) != len(want.Rows) || len(got) == 0 {
		f.t.Fatalf("%v: %d steps are shown, the plan has %d", given, len(got), len(want.Rows))
	}
	cared := 0
	for n, row := range want.Rows {
		at := map[string]string{}
		for _, cell := range row {
			at[cell.Column] = cell.Text
		}
		var care []string
		if at["wear"]+at["place"]+at["caution"] != "" || at["who"] != catalog.Doer("en-GB", stage.Student) {
			for _, column := range []string{"wear", "place", "who", "caution"} {
				if at[column] != "" {
					care = append(care, at[column])
				}
			}
			cared++
		}
		step := got[n]
		if step.Title != at["title"] || step.Step != at["what"] || !step.First || !slices.Equal(step.Care, care) {
			f.t.Errorf("step %d is shown as %+v, want %q with %q", n+1, step, at["what"], care)
		}
		if care != nil && !strings.HasSuffix(step.Lesson, "/"+at["lesson"]) {
			f.t.Errorf("step %d leads to %q, want %q", n+1, step.Lesson, at["lesson"])
		}
	}
	if cared == 0 {
		f.t.Errorf("%v: no step has anything to take care of", given)
	}
}

// whole is a wish with everything that the form can say.
var whole = []engine.Setting{
	{Name: "state", Text: "firm-leather-hard"},
	{Name: "already", Text: "slip fixed, underglaze"},
	{Name: "layers", Text: "clay carved then stamped, slip poured and scratched, wax, wash wiped back, clear glaze dipped"},
	{Name: "places", Text: "different"},
	{Name: "food", Text: "no"},
}

// wholeRows are its rows, by the names of the table.
func wholeRows(t *testing.T) (layers, coats []string) {
	table := settings(t).Table
	slip, wash, glaze := 0, 0, 0
	for id, at := range map[string]*int{"coloured-slip": &slip, "stain-wash": &wash, "glaze": &glaze} {
		*at, _ = mediumOf(t, table, id)
	}
	_, wax := mediumOf(t, table, "wax")
	_, underglaze := mediumOf(t, table, "underglaze")
	name := func(i int) string { return table.Media[i].Name }
	way := func(id string) string { return wayOf(t, table, id) }
	return []string{
		stage.BareClay + "|" + way("stamping") + "|" + way("carving") + "|", // what lays or presses comes before what takes away
		name(slip) + "|" + way("pouring") + "|" + way("scratching-through") + "|",
		wax + "|",
		name(wash) + "|" + way("wiping-back"), // nothing else takes a wash away
		name(glaze) + "|" + way("dipping") + "|",
	}, []string{name(slip) + "|" + stage.SaidFixed, underglaze + "|"}
}

// TestLinkFillsTheChoosers opens a link in a student's own words: every chooser
// says what it says, after a reload too, and the same link written by the form.
func TestLinkFillsTheChoosers(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	f := plan(open(t), h, whole...)
	layers, coats := wholeRows(t)
	filled := func(when string) {
		t.Helper()
		f.agree(whole, s)
		if got := f.rowsOf("layers"); !slices.Equal(got, layers) {
			t.Errorf("%s: rows of layers %q, want %q", when, got, layers)
		}
		if got := f.rowsOf("already"); !slices.Equal(got, coats) {
			t.Errorf("%s: rows of coats %q, want %q", when, got, coats)
		}
		if got := f.wire("state"); got != "firm-leather-hard" {
			t.Errorf("%s: the state is %q", when, got)
		}
	}
	filled("by a link")
	f.pick(f.boxes("food")+"[0]", "yes")
	f.pick(f.boxes("food")+"[0]", "no")
	f.until(`location.search.includes("food=no")`)
	f.do(chromedp.Reload())
	f.ready()
	filled("after a reload")
	f.layers(whole[2].Text) // by choosers
	f.coats(whole[1].Text)
	f.leave()
	f.until(`location.search.includes("then")`)
	_, asked := f.request()
	f = plan(open(t), h, asked...)
	filled("by a link that the form wrote")
}

func TestWordsThatNoChooserHoldsStay(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	f := plan(open(t), h)
	for _, tt := range []struct {
		text    string
		chosen  int // rows
		written bool
	}{
		{"slip by stencil, wash wiped back, clear glaze brushed", 3, false},
		{"Coloured slip", 1, false},
		{"underglase", 1, false},
		{"blue underglaze, clear glaze", 0, true},
		{"gold leaf, coloured slip", 0, true},
		{"cobalt slip", 0, true},
	} {
		t.Run(tt.text, func(t *testing.T) {
			f.t = t
			given := []engine.Setting{{Name: "state", Text: "leather-hard"}, {Name: "layers", Text: tt.text}}
			f = plan(f.tab, h, given...)
			f.agree(given, s)
			box := f.boxes("layers") + "[0]"
			if !f.until(box + fmt.Sprintf(".checkVisibility() === %t", tt.written)) {
				t.Errorf("the text box is in sight: %t", !tt.written)
			}
			if got := ask[string](f.tab, box+".value"); got != tt.text {
				t.Errorf("the text box holds %q", got)
			}
			if got := f.rowsOf("layers"); len(got) != tt.chosen {
				t.Errorf("%d rows are chosen, want %d: %q", len(got), tt.chosen, got)
			}
		})
	}
	f.t = t
	f.typeInto("layers", 0, "slip poured then scratched")
	f.leave()
	if !f.until("!" + f.boxes("layers") + "[0].checkVisibility()") {
		t.Error("words that choosers hold stay in the text box when it is left")
	}
	if got := f.rowsOf("layers"); len(got) != 1 || strings.Count(got[0], "|") != 3 {
		t.Errorf("words typed become the rows %q", got)
	}
}

// TestPlanByKeyboard fills everything in with keys alone: Tab from chooser to
// chooser, the first letters of a name, Enter on the buttons.
func TestPlanByKeyboard(t *testing.T) {
	t.Parallel()
	h := published(t)
	f := plan(open(t), h)
	press := func(keys string) { f.do(chromedp.KeyEvent(keys)) }
	to := func(element string) {
		t.Helper()
		if !f.tabTo(element, 30) {
			t.Fatalf("the key Tab never comes to %s", element)
		}
	}
	choose := func(name string) {
		t.Helper()
		press(name)
		if !f.until("document.activeElement.selectedOptions[0].text.startsWith(" + quoted(name) + ")") {
			t.Fatalf("%q cannot be chosen by its letters", name)
		}
		ask[bool](f.tab, "new Promise(later => setTimeout(() => later(true), 1100))") // the browser forgets the letters
	}
	to(f.boxes("state") + "[0]")
	choose("Firm")
	to(key("Add what is on the pot"))
	press(kb.Enter)
	choose("Underglaze")
	to(coats + "[0].querySelector('[data-fixed]')")
	choose("It is")
	to(rows + "[0].querySelector('select')")
	choose("Coloured")
	for n, name := range []string{"Pouring", "Scratching"} {
		to(fmt.Sprintf("%s[0].querySelectorAll('[data-way]')[%d]", rows, n))
		choose(name)
	}
	to(key("Add a layer"))
	press(kb.Enter)
	choose("Glaze")
	for range 24 { // on to the last box, and from there to the answer
		press(kb.Enter)
	}
	f.unfold()
	table := settings(t).Table
	_, slip := mediumOf(t, table, "coloured-slip")
	_, glaze := mediumOf(t, table, "glaze")
	_, underglaze := mediumOf(t, table, "underglaze")
	layers := slip + " by " + wayOf(t, table, "pouring") + " then " + wayOf(t, table, "scratching-through") + ", " + glaze
	f.shows(engine.Setting{Name: "state", Text: "firm-leather-hard"}, engine.Setting{Name: "already", Text: underglaze + " " + stage.SaidLoose}, engine.Setting{Name: "layers", Text: layers})
	if !ask[bool](f.tab, `document.activeElement.matches("[data-result]")`) {
		t.Errorf("after the last box Enter leads to %s", ask[string](f.tab, "document.activeElement.outerHTML.slice(0, 80)"))
	}
}

// TestPlanPrintsAlone prints an answered plan: the plan and nothing that it was
// chosen with; a page without an answer prints its example and its table.
func TestPlanPrintsAlone(t *testing.T) {
	t.Parallel()
	h, s := published(t), settings(t)
	given := catalog.In("en-GB").Find("stage-plan").Example.Given
	f := plan(open(t), h, given...)
	f.agree(given, s)
	example := []string{"A worked example", "A table for the wall", "One layer and a clear glaze"}
	choosers := []string{"Add a layer", "Where they go", "any way of working", "Work it out", "More boxes"}
	sheet := f.print(papers[0])
	said := letters(strings.Join(sheet.words(t, asDrawn), " "))
	for _, words := range append(example, choosers...) {
		if strings.Contains(said, letters(words)) {
			t.Errorf("beside the plan there is printed %q", words)
		}
	}
	answer := catalog.Solve("stage-plan", given, s)
	wanted := []string{answer.Headline}
	for _, row := range answer.Rows {
		for _, cell := range row {
			if slices.Contains([]string{"title", "what", "wear", "place", "caution", "risk", "ask", "wait", "why", "trouble"}, cell.Column) {
				wanted = append(wanted, cell.Text)
			}
		}
	}
	for _, words := range wanted {
		if !strings.Contains(said, letters(words)) {
			t.Errorf("the printed plan lacks %q", words)
		}
	}
	if sheet.pages > 3 { // the first has what mixing calls for
		t.Errorf("a plan of %d steps takes %d pages", len(answer.Rows), sheet.pages)
	}
	f = plan(open(t), h)
	said = letters(strings.Join(f.print(papers[0]).words(t, asDrawn), " "))
	for _, words := range example {
		if !strings.Contains(said, letters(words)) {
			t.Errorf("without an answer the printed page lacks %q", words)
		}
	}
	for _, words := range choosers {
		if strings.Contains(said, letters(words)) {
			t.Errorf("without an answer there is printed %q", words)
		}
	}
}
