package press

import (
	"bytes"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

var _ markup.Surroundings = (*Press)(nil)

func TestMade(t *testing.T) {
	p := newPress(t, small(t))
	for _, c := range []struct {
		scheme, id, want string
		ok               bool
	}{
		{"glossary", "bisque", "glossary.html#bisque", true},
		{"glossary", "bisk", "", false},
		{"state", "bone-dry", "states/bone-dry.html", true},
		{"state", "bone", "", false},
		{"calculator", "slip-density", "calculators/slip-density.html", true},
		{"calculator", "slip-destiny", "", false},
		{"lesson", "mix", "", false},
	} {
		t.Run(c.scheme+":"+c.id, func(t *testing.T) {
			got, ok := p.Made(c.scheme, c.id)
			if ok != c.ok || ok && got != c.want {
				t.Errorf("%q, %v", got, ok)
			}
		})
	}
}

func TestPageAndPicture(t *testing.T) {
	p := newPress(t, small(t))
	if page, ok := p.Page("units/slip/mix.md"); !ok || page.Address != "slip/mix.html" {
		t.Errorf("page: %v, %v", page, ok)
	}
	if _, ok := p.Page("units/slip/mixed.md"); ok {
		t.Error("found a page that is not there")
	}
	if picture, ok := p.Picture("pictures/jar.svg"); !ok || picture.SVG == nil {
		t.Errorf("picture: %v, %v", picture, ok)
	}
	if _, ok := p.Picture("pictures/jug.svg"); ok {
		t.Error("found a picture that is not there")
	}
}

// block renders a block and parses what came of it.
func block(t *testing.T, b markup.Block) *html.Node {
	t.Helper()
	p := newPress(t, small(t))
	page, _ := p.Page("units/slip/mix.md")
	out, problems := p.Block(page, b)
	if len(problems) > 0 {
		t.Fatalf("problems: %v", problems)
	}
	root, err := html.Parse(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	return root
}

func TestCaution(t *testing.T) {
	for heading, want := range map[string]string{"Dust": "Caution: Dust", "": "Caution", "A < B": "Caution: A < B"} {
		root := block(t, markup.Block{Kind: "caution", Words: heading, Number: 2, HTML: []byte("<p>Wear a <b>mask</b>.</p>\n")})
		section := elements(root, classed("caution"))[0]
		if role := attribute(section, "role"); role != "note" {
			t.Errorf("role %q", role)
		}
		label := elements(root, func(n *html.Node) bool { return attribute(n, "id") == attribute(section, "aria-labelledby") })
		if len(label) != 1 || text(label[0]) != want {
			t.Errorf("heading %q: named otherwise than %q", heading, want)
		}
		if len(elements(section, called("svg"))) != 1 || len(elements(section, called("b"))) != 1 {
			t.Error("no sign, or the body was escaped")
		}
	}
}

func TestQuestion(t *testing.T) {
	root := block(t, markup.Block{Kind: "question", Number: 3, Ask: &markup.Question{
		Ask: "Why <not>?",
		Answers: []markup.Choice{
			{Text: "One", Right: true, Because: "It is so."},
			{Text: "Two", Because: "It is not."},
		},
	}})
	if ask := elements(root, classed("ask")); len(ask) != 1 || text(ask[0]) != "Why <not>?" {
		t.Error("the question is not asked")
	}
	var said []string
	for _, d := range elements(root, called("details")) {
		said = append(said, text(elements(d, called("summary"))[0])+" / "+text(elements(d, called("p"))[0]))
	}
	if got := strings.Join(said, "; "); got != "One / Right. It is so.; Two / Not quite. It is not." {
		t.Errorf("answers: %s", got)
	}
}

func TestBlockReportsUnknownCalculator(t *testing.T) {
	p := newPress(t, small(t))
	page, _ := p.Page("units/slip/mix.md")
	out, problems := p.Block(page, markup.Block{Kind: "calculator", Words: "slip-destiny", Offset: 41, Number: 1})
	if out != nil || len(problems) != 1 {
		t.Fatalf("%q, %v", out, problems)
	}
	got := problems[0]
	if got.Offset != 41 || got.Rule != finding.CalculatorName || got.Text != `no calculator is named "slip-destiny"` || !strings.Contains(got.Do, "slip-density") {
		t.Errorf("%+v", got)
	}
}

func TestBlockReportsAFaultOfTheTheme(t *testing.T) {
	theme := copyTheme(t)
	theme["pieces/caution.html"].Data = []byte(`{{define "caution"}}{{.Colour}}{{end}}`)
	p, err := New(small(t), theme)
	if err != nil {
		t.Fatal(err)
	}
	page, _ := p.Page("units/slip/mix.md")
	_, problems := p.Block(page, markup.Block{Kind: "caution", Offset: 7, Number: 1})
	if len(problems) != 1 || problems[0].Rule != finding.ThemeFault || problems[0].Offset != 7 {
		t.Errorf("%+v", problems)
	}
}

func TestBackSaysWhere(t *testing.T) {
	p := newPress(t, small(t))
	for _, c := range []struct {
		note, place, places int
		words, name         string
	}{
		{3, 1, 1, "to the text", "to the text, note 3"},
		{3, 2, 4, "to place 2 in the text", "to place 2 in the text, note 3"},
	} {
		words, name, err := p.Back(c.note, c.place, c.places)
		if err != nil || words != c.words || name != c.name {
			t.Errorf("note %d, place %d of %d: %q, %q, %v", c.note, c.place, c.places, words, name, err)
		}
	}
	delete(p.words, "note-back-place")
	if _, _, err := p.Back(1, 2, 2); err == nil {
		t.Error("a word that is missing is no error")
	}
}
