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
	"slipbook/calculators/stage/stagetest"
)

// What every declaration owes the pages, the command line and the reader.

var kebab = regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)

func TestDeclarations(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range All() {
		t.Run(c.Name, func(t *testing.T) {
			if !kebab.MatchString(c.Name) || seen[c.Name] {
				t.Errorf("name %q", c.Name)
			}
			seen[c.Name] = true
			if c.Title == "" || !strings.HasSuffix(c.Purpose, ".") || len(c.Notes) == 0 || c.Example.Case == "" || c.Table.Caption == "" {
				t.Error("title, purpose, notes, example or table is missing")
			}
			if len(c.Formulas()) == 0 {
				t.Error("it shows no formula")
			}
			for _, in := range c.Inputs {
				checkInput(t, c, in)
			}
			for _, o := range c.Outputs {
				if !kebab.MatchString(o.Name) || o.Label == "" || o.Unit == "" || !o.Text && o.Digits < 2 {
					t.Errorf("output %+v", o)
				}
			}
		})
	}
}

func checkInput(t *testing.T, c *Calculator, in Input) {
	t.Helper()
	if !kebab.MatchString(in.Name) || in.Label == "" || !strings.HasSuffix(in.Help, ".") {
		t.Errorf("input %q: name, label or help", in.Name)
	}
	if in.Needed && in.Default != "" {
		t.Errorf("input %q is needed and has a default", in.Name)
	}
	if in.Needed && !in.First {
		t.Errorf("input %q is needed and stands behind “more”", in.Name)
	}
	if in.Words || in.Bodies || len(in.Choices) > 0 {
		checkWords(t, in)
	} else if in.Low.End == form.NoEnd && in.Name != "from" && in.Name != "to" {
		t.Errorf("input %q has no lower limit", in.Name)
	} else if in.Default != "" {
		for _, wrong := range c.Solve([]Setting{{Name: in.Name, Text: in.Default}}, british()).Errors {
			if wrong.Input == in.Name {
				t.Errorf("input %q: its default %q is refused", in.Name, in.Default)
			}
		}
	}
	if in.List && in.Most == 0 {
		t.Errorf("input %q is a list without an end", in.Name)
	}
	// Words that confuse a first-year student stay keys and never labels.
	for _, word := range []string{"plastic", "mass", "tare", "solids", "raw", "greenware", "overglaze"} {
		if strings.Contains(strings.ToLower(in.Label), word) {
			t.Errorf("input %q: its label says %q", in.Name, word)
		}
	}
}

// checkWords looks at an input that is words or a choice.
func checkWords(t *testing.T, in Input) {
	t.Helper()
	if in.Words && len(in.Choices) > 0 || in.Whole || in.Low.End != form.NoEnd || in.High.End != form.NoEnd {
		t.Errorf("input %q is words and something else", in.Name)
	}
	known := func(id string) bool {
		return slices.ContainsFunc(in.Choices, func(c form.Choice) bool { return c.ID == id })
	}
	if in.Default != "" && len(in.Choices) > 0 && !known(in.Default) {
		t.Errorf("input %q: its default %q is none of the choices", in.Name, in.Default)
	}
	for i, c := range in.Choices {
		same := func(other form.Choice) bool {
			return letters.SameWord(other.Label, c.Label) || letters.SameWord(other.ID, c.Label) && other.ID != c.ID
		}
		if !kebab.MatchString(c.ID) || c.Label == "" || slices.ContainsFunc(in.Choices[:i], same) {
			t.Errorf("input %q: choice %+v", in.Name, c)
		}
	}
	for _, id := range in.Said {
		if !known(id) {
			t.Errorf("input %q: other words for %q, which is no choice", in.Name, id)
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
