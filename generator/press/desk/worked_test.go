package desk

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/calculators/quantity"
	"slipbook/generator/course"
	"slipbook/generator/markup"
)

// demo is the desk of a course in British English with the table and the clays of
// the demo.
func demo(t *testing.T) Desk {
	t.Helper()
	read, _ := new(course.Reader).Load(os.DirFS("../../../content"))
	c := &course.Course{Language: "en-GB", Decimal: '.', Measures: "metric", Decoration: read.Decoration, Bodies: read.Bodies}
	s := c.PageAnswers()
	s.Table = c.Decoration.Table()
	s.Table.Words = s.Words
	return Desk{Settings: s, Choose: "choose"}
}

func TestGivenWithItsUnit(t *testing.T) {
	for _, tt := range []struct {
		text, unit string
		kind       quantity.Kind
		want       string
	}{
		{"62.4 g", "g", quantity.Mass, "62.4 g"},
		{"62.4", "", quantity.Mass, "62.4\u00a0g"},
		{"94 93.8", "", quantity.Length, "94 93.8\u00a0mm"},
		{"4", "", quantity.Number, "4"},
		{"2 lb 3 oz", "", quantity.Mass, "2 lb 3 oz"},
	} {
		if got := readAs(tt.text, tt.unit, tt.kind); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.text, got, tt.want)
		}
	}
}

func TestExampleIsTheCatalogsAnswer(t *testing.T) {
	p := demo(t)
	for _, c := range catalog.All() {
		answer := catalog.Solve(c.Name, c.Example.Given, p.Settings)
		v := p.Example(c, "calculator.1", "../calculators/", func(string) string { return "" })
		if v.Headline != markup.Bind(answer.Headline) || v.Headline == "" {
			t.Errorf("%s: headline %q, want %q", c.Name, v.Headline, answer.Headline)
		}
		if d := cmp.Diff(Bound(answer.Judged), v.Judged); d != "" {
			t.Errorf("%s: judgements (-want +got):\n%s", c.Name, d)
		}
		for n, next := range v.Next {
			to, request, _ := strings.Cut(next.Address, "?")
			name := strings.TrimSuffix(strings.TrimPrefix(to, "../calculators/"), ".html")
			if catalog.Find(name) == nil || request != answer.Next[n].Request+"#calculator.0" || next.Title != markup.Bind(answer.Next[n].Words) {
				t.Errorf("%s: “%s” leads to %s", c.Name, next.Title, next.Address)
			}
		}
		if len(v.Next) != len(answer.Next) {
			t.Errorf("%s: %d calculators come next, want %d", c.Name, len(v.Next), len(answer.Next))
		}
		shown, inSight := append(v.Told, v.Found...), 0
		for _, r := range answer.Outputs {
			if !c.Output(r.Name).Aside {
				if got := shown[inSight].Text; got != markup.Bind(r.Text) {
					t.Errorf("%s: %s shows %q, want %s", c.Name, r.Name, got, r.Text)
				}
				inSight++
			}
		}
		if len(shown) != inSight || (v.Rows != nil || v.Steps != nil) != (len(answer.Rows) > 0) {
			t.Errorf("%s: %d answers and rows %v, want %d and %d rows", c.Name, len(shown), v.Rows, inSight, len(answer.Rows))
		}
	}
}

func TestTableNamesWhatVaries(t *testing.T) {
	c := &form.Calculator{
		Inputs: []form.Input{{Name: "from", Label: "From"}, {Name: "to", Label: "To"}},
		Table:  form.Table{Down: "from", Across: "to"},
	}
	printed := form.Printed{Caption: "Water", Head: []string{"From", "5", "6"}, Rows: [][]string{{"8", "60", ""}}}
	got := printedTable(c, printed)
	want := Table{
		Caption: "Water", Across: "To", Head: []string{"From", "5", "6"},
		Rows: [][]Cell{{{true, "From", "8"}, {false, "To 5", "60"}, {false, "To 6", "–"}}},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("table (-want +got):\n%s", diff)
	}
	if got.Columns() != 2 {
		t.Errorf("%d columns, want 2", got.Columns())
	}
}
