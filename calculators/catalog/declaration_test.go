package catalog

import (
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"

	"slipbook/calculators/form"
	"slipbook/calculators/letters"
	"slipbook/calculators/quantity"
	"slipbook/calculators/stage/stagetest"
	"slipbook/calculators/words"
)

// What every declaration owes the pages, the command line and the reader.

var kebab = regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)

func TestDeclarations(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range All() {
		t.Run(c.Name, func(t *testing.T) {
			if !kebab.MatchString(c.Name) {
				t.Errorf("%s: write its name in small letters with hyphens between", c.Name)
			}
			if seen[c.Name] {
				t.Errorf("%s: another calculator has this name: give it one of its own", c.Name)
			}
			seen[c.Name] = true
			for _, what := range lacking(c) {
				t.Errorf("%s: %s", c.Name, what)
			}
			checkWording(t, c)
			for i := range c.Inputs {
				checkInput(t, c, &c.Inputs[i])
			}
			for _, o := range c.Outputs {
				checkOutput(t, c, o)
			}
		})
	}
}

// lacking says what a declaration has to have besides, and what it names that is
// not there. A page or a table of what lacks some of it cannot be made.
func lacking(c *Calculator) []string {
	var list []string
	want := func(has bool, what string) {
		if !has {
			list = append(list, what)
		}
	}
	want(c.Work != nil, "add Work to its declaration, the function that reckons, as workClay in clay.go")
	want(c.Draw != nil, "add Draw to its declaration, the function that draws the answer, as drawClay in clay.go")
	want(c.Formula != nil, "add its Formula under if form.Pages, the function that gives what its page shows, as clayFormulas in clay.go")
	want(len(c.Example.Given) > 0, "add its Example under if form.Pages, with what is typed")
	want(len(c.Says) > 0, "add Says to its declaration, the key of a note that holds whatever the numbers")
	want(len(c.Inputs) > 0, "add Inputs to its declaration")
	want(len(c.Outputs) > 0, "add Outputs to its declaration")
	return append(append(list, tableLacking(c)...), nextLacking(c)...)
}

// nextLacking says the same of the calculators to go on to.
func nextLacking(c *Calculator) []string {
	var list []string
	for _, n := range c.Next {
		next := all.Find(n.Calculator)
		if next == nil {
			list = append(list, "its Next leads to "+n.Calculator+", which is no calculator")
			continue
		}
		for _, carry := range n.Carry {
			if next.Input(carry.Into) == nil {
				list = append(list, "its Next carries into "+carry.Into+", which is no input of "+n.Calculator)
			}
			if c.Input(carry.From) == nil && c.Output(carry.From) == nil {
				list = append(list, "its Next carries "+carry.From+", which is no input or output of it")
			}
		}
	}
	return list
}

// tableLacking says the same of the printed table, and of the names in it and in
// the example.
func tableLacking(c *Calculator) []string {
	var list []string
	if c.Table.Down == "" && len(c.Table.Cases) == 0 || len(c.Table.Show) == 0 {
		list = append(list, "add its Table under if form.Pages, with Show and either Down or Cases")
	}
	for _, name := range []string{c.Table.Down, c.Table.Across} {
		if name != "" && c.Input(name) == nil {
			list = append(list, "its Table varies "+name+", which is no input of it")
		}
	}
	for _, name := range append(append([]string{}, c.Table.Show...), c.Weigh...) {
		if c.Output(name) == nil {
			list = append(list, "its Table shows, or its Weigh names, "+name+", which is no output of it")
		}
	}
	given := append(append([]Setting{}, c.Example.Given...), c.Table.Also...)
	for _, k := range c.Table.Cases {
		given = append(given, k.Given...)
	}
	for _, g := range given {
		if name := strings.TrimSuffix(g.Name, ".unit"); c.Input(name) == nil {
			list = append(list, "its Example or its Table gives "+name+", which is no input of it")
		}
	}
	return list
}

// checkWording names what the words of a calculator lack, each by its id.
func checkWording(t *testing.T, c *Calculator) {
	t.Helper()
	w, said := words.In(words.Default), map[string]bool{}
	for _, id := range declared(c) {
		if !w.Has(id) && !said[id] {
			t.Errorf("write %s in calculators/words/en-US.yaml", id)
		}
		said[id] = true
	}
	sentences := []string{c.Name + ".purpose", c.Name + ".example"}
	for i := range c.Inputs {
		sentences = append(sentences, inputIDs(c, &c.Inputs[i])[1])
	}
	for _, id := range sentences {
		if text := w.Text(id); w.Has(id) && !strings.HasSuffix(text, ".") {
			t.Errorf("end %s in calculators/words/en-US.yaml with a full stop: %q", id, text)
		}
	}
	if c.Formula != nil && len(c.Formulas()) == 0 {
		t.Errorf("%s: its Formula gives no formula", c.Name)
	}
}

// checkOutput looks at one output.
func checkOutput(t *testing.T, c *Calculator, o Output) {
	t.Helper()
	if !kebab.MatchString(o.Name) {
		t.Errorf("%s: write the name of its output %q in small letters with hyphens between", c.Name, o.Name)
	}
	if o.Unit == "" {
		t.Errorf("%s: give its output %q a Unit, \"1\" where it has none", c.Name, o.Name)
	}
	if !o.Text && o.Digits < 2 {
		t.Errorf("%s: give its output %q Digits, 2 or more, or Text where it holds words", c.Name, o.Name)
	}
}

// onlySaid are units of answers in which nobody types, each with the reason.
var onlySaid = map[string]string{
	"oz/pint": "how much a pint weighs is a way to say a specific gravity in older books",
	"°Bé":     "a degree of a hydrometer, as books on slip and glaze print it",
	"°Tw":     "a degree of a hydrometer, as books on slip and glaze print it",
}

// TestUnits wants answers to be in units that package quantity knows, so that
// what one calculator says can be typed into another.
func TestUnits(t *testing.T) {
	said := map[string]bool{}
	check := func(c *Calculator, what, unit string) {
		said[unit] = true
		if knownUnit(unit) == (onlySaid[unit] != "") {
			t.Errorf("%s: the unit %q of its %s has to be either a line of calculators/quantity/units.go, or one of onlySaid in declaration_test.go with the reason", c.Name, unit, what)
		}
	}
	for _, c := range all {
		for _, o := range c.Outputs {
			check(c, "output "+o.Name, o.Unit)
		}
		for _, column := range c.Columns {
			if !column.Text || column.Unit != "" {
				check(c, "column "+column.Name, column.Unit)
			}
		}
	}
	for unit := range onlySaid {
		if !said[unit] {
			t.Errorf("no answer is in %s: take it out of onlySaid", unit)
		}
	}
}

// knownUnit reports whether a unit of that very writing can be chosen for some
// kind of quantity.
func knownUnit(unit string) bool {
	return slices.ContainsFunc(quantity.Kinds(), func(kind quantity.Kind) bool {
		q, err := quantity.Read("1", kind, unit, quantity.Style{Decimal: '.'})
		return err == nil && q.Unit == unit
	})
}

func checkInput(t *testing.T, c *Calculator, in *Input) {
	t.Helper()
	wrong := func(what string, args ...any) {
		t.Errorf("%s: its input %q "+what, append([]any{c.Name, in.Name}, args...)...)
	}
	if !kebab.MatchString(in.Name) {
		wrong("needs a name in small letters with hyphens between")
	}
	if in.Needed && in.Default != "" {
		wrong("is Needed and has a Default: take one of them out")
	}
	if in.Needed && !in.First {
		wrong("is Needed and stands behind “more”: add First")
	}
	if in.Words || in.Bodies || len(in.Choices) > 0 {
		checkWords(t, *in)
	} else if in.Low.End == form.NoEnd && in.Name != "from" && in.Name != "to" {
		wrong("has no lower limit: add Low, for example form.Limit{End: form.Above}")
	} else if in.Default != "" {
		for _, refused := range c.Solve([]Setting{{Name: in.Name, Text: in.Default}}, british()).Errors {
			if refused.Input == in.Name {
				wrong("refuses its own Default %q: %s", in.Default, refused.Text)
			}
		}
	}
	if in.List && in.Most == 0 {
		wrong("is a list without an end: add Most")
	}
	for _, word := range confusing {
		if label := inputIDs(c, in)[0]; in.Label != label && strings.Contains(strings.ToLower(in.Label), word) {
			wrong("has a label that says %q, which a first-year student does not know: write another in %s", word, label)
		}
	}
}

// confusing are words that confuse a first-year student. They stay keys and
// never labels.
var confusing = []string{"plastic", "mass", "tare", "solids", "raw", "greenware", "overglaze"}

// checkWords looks at an input that is words or a choice.
func checkWords(t *testing.T, in Input) {
	t.Helper()
	if in.Words && len(in.Choices) > 0 || in.Whole || in.Low.End != form.NoEnd || in.High.End != form.NoEnd {
		t.Errorf("input %q is words or a choice: take Whole, Low and High out, and Words where it has Choices", in.Name)
	}
	known := func(id string) bool {
		return slices.ContainsFunc(in.Choices, func(c form.Choice) bool { return c.ID == id })
	}
	if in.Default != "" && len(in.Choices) > 0 && !known(in.Default) {
		t.Errorf("input %q: its Default %q is none of its Choices", in.Name, in.Default)
	}
	for i, c := range in.Choices {
		same := func(other form.Choice) bool {
			return letters.SameWord(other.Label, c.Label) || letters.SameWord(other.ID, c.Label) && other.ID != c.ID
		}
		if !kebab.MatchString(c.ID) || c.Label == "" || slices.ContainsFunc(in.Choices[:i], same) {
			t.Errorf("input %q: its choice %q (%q) needs an ID in small letters with hyphens, and a label that no other choice has", in.Name, c.ID, c.Label)
		}
	}
	for _, id := range in.Said {
		if !known(id) {
			t.Errorf("input %q: its Said names %q, which is none of its Choices", in.Name, id)
		}
	}
}

// studio is the settings of a course with a decoration table.
func studio() Settings {
	s := british()
	s.Table = stagetest.Table()
	return s
}

func TestExamples(t *testing.T) {
	for _, c := range All() {
		for _, encoded := range []string{"decimal=.&measures=metric", "decimal=%2C&measures=us"} {
			s, err := Configure([]byte(encoded))
			if err != nil {
				t.Fatal(err)
			}
			if s.Encode() != encoded {
				t.Errorf("settings %q came back as %q", encoded, s.Encode())
			}
			s.Table = stagetest.Table()
			a := Solve(c.Name, c.Example.Given, s)
			if len(a.Errors) > 0 || a.Headline == "" || len(a.Outputs) == 0 {
				t.Errorf("%s in %s: %v, headline %q", c.Name, encoded, a.Errors, a.Headline)
			}
		}
	}
}

func TestPrinted(t *testing.T) {
	for _, c := range All() {
		if len(lacking(c)) > 0 {
			continue // TestDeclarations says what, and what lacks it cannot be printed
		}
		p := c.Printed(studio())
		if len(p.Rows) < 3 {
			t.Errorf("%s: a table of %d rows", c.Name, len(p.Rows))
		}
		for _, row := range p.Rows {
			if len(row) != len(p.Head) {
				t.Errorf("%s: row %v under head %v", c.Name, row, p.Head)
			}
			if strings.Join(row[1:], "") == "" {
				t.Errorf("%s: row %v is empty", c.Name, row)
			}
		}
	}
}

// TestDrawings wants each drawing to be sound XML with a text alternative and
// no style of its own.
func TestDrawings(t *testing.T) {
	requests := map[string][]Setting{
		"slip-adjust":    {{Name: "slip-mass", Text: "3 kg"}, {Name: "from", Text: "1.3"}, {Name: "to", Text: "1.5"}, {Name: "stain", Text: "8"}},
		"wash-dilute":    {{Name: "volume", Text: "100"}, {Name: "from", Text: "20"}, {Name: "to", Text: "5"}},
		"shrinkage-size": {{Name: "shrinkage", Text: "12"}, {Name: "capacity-fired", Text: "350"}},
		"wash-mix":       {{Name: "volume", Text: "100"}, {Name: "flux-parts", Text: "0"}},
		"slip-density":   {{Name: "mass", Text: "100"}, {Name: "volume", Text: "100"}},
		"shrinkage-test": {{Name: "plastic", Text: "100"}, {Name: "dry", Text: "100"}, {Name: "fired", Text: "100"}},
		"slip-batch":     {{Name: "volume", Text: "1 L"}, {Name: "specific-gravity", Text: "2.5"}},
		"slip-colour":    {{Name: "slip-mass", Text: "1 kg"}, {Name: "specific-gravity", Text: "1.5"}, {Name: "stain", Text: "5"}, {Name: "stain-now", Text: "5"}},
		"clay-colour":    {{Name: "clay", Text: "1 kg"}, {Name: "clay-water", Text: "0"}, {Name: "stain", Text: "0"}},
		"slip-fit":       {{Name: "body", Text: "12"}, {Name: "body-so-far", Text: "0"}, {Name: "slip", Text: "0"}},
		"stage-plan":     {{Name: "state", Text: "glaze-fired"}, {Name: "layers", Text: "slip, wash"}, {Name: "places", Text: "different"}},
		"recipe-scale":   {{Name: "parts", Text: "1 1 98"}, {Name: "additions", Text: "0 0.1"}, {Name: "dry-mass", Text: "100"}},
		"bucket-mix":     {{Name: "first-gravity", Text: "1.5"}, {Name: "first-volume", Text: "1 L"}, {Name: "second-gravity", Text: "1"}, {Name: "to", Text: "1.5"}},
		"bucket-top-up":  {{Name: "volume", Text: "2 L"}, {Name: "specific-gravity", Text: "1.3"}, {Name: "to", Text: "1.45"}},
		"wet-blend":      {{Name: "kind", Text: "triaxial"}, {Name: "points", Text: "13"}, {Name: "first-gravity", Text: "1.5"}, {Name: "second-gravity", Text: "1.4"}, {Name: "third-gravity", Text: "1.45"}, {Name: "each", Text: "100"}},
		"coverage":       {{Name: "area", Text: "250"}, {Name: "before", Text: "300"}, {Name: "after", Text: "310"}, {Name: "specific-gravity", Text: "1.5"}},
		"flow-log":       {{Name: "slip-seconds", Text: "30"}, {Name: "water-seconds", Text: "26"}},
		"clay-water":     {{Name: "earlier", Text: "500"}, {Name: "later", Text: "480"}},
		"absorption":     {{Name: "dry", Text: "100"}, {Name: "soaked", Text: "100"}},
		"tile-plan":      {{Name: "kind", Text: "triaxial"}, {Name: "points", Text: "13"}, {Name: "base", Text: "20"}},
	}
	for _, c := range All() {
		for _, given := range [][]Setting{c.Example.Given, requests[c.Name]} {
			a := Solve(c.Name, given, studio())
			if given == nil {
				continue // drawn for its example only
			}
			if len(a.Errors) > 0 {
				t.Fatalf("%s: %v", c.Name, a.Errors)
			}
			checkDrawing(t, c.Name, a.Drawing)
		}
	}
}

func checkDrawing(t *testing.T, name, svg string) {
	t.Helper()
	decoder := xml.NewDecoder(strings.NewReader(svg))
	for {
		token, err := decoder.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%s: %v in %s", name, err, svg)
		}
		if start, ok := token.(xml.StartElement); ok {
			for _, a := range start.Attr {
				if a.Name.Local == "style" || a.Value == "" || strings.Contains(a.Value, "NaN") || strings.Contains(a.Value, "Inf") {
					t.Errorf("%s: <%s %s=%q>", name, start.Name.Local, a.Name.Local, a.Value)
				}
			}
		}
	}
	if !strings.Contains(svg, `role="img" aria-label="`) {
		t.Errorf("%s: no text alternative", name)
	}
}

// TestPlaceholders wants no sentence to reach a reader with a name left in
// braces or a hole where a number should be.
func TestPlaceholders(t *testing.T) {
	for _, c := range All() {
		for _, given := range [][]Setting{c.Example.Given} {
			wire := unescape(string(Respond([]byte(Request(c.Name, given)), studio())))
			if strings.ContainsAny(wire, "{}") || strings.Contains(wire, "  ") {
				t.Errorf("%s: %s", c.Name, wire)
			}
		}
	}
}
