package setting

import (
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/generator/markup"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
)

// block sets a block on a page and parses what came of it.
func block(t *testing.T, b *markup.Block) *html.Node {
	t.Helper()
	r := presstest.Read(t, presstest.Small(t))
	html, err := set(setting{Setter: setter(t, r), of: r.Pages[0], at: imprint.Place{Page: "slip/mix.html"}}, []markup.Piece{{Block: b}})
	if err != nil {
		t.Fatal(err)
	}
	return presstest.Parse(t, string(html))
}

// TestEveryBlockHasAView wants a view for each kind of block that is read, and no
// view of others; what is missing is named, with the place where it belongs.
func TestEveryBlockHasAView(t *testing.T) {
	if err := checkViews(markup.Kinds(), blockViews()); err != nil {
		t.Fatal(err)
	}
	err := checkViews(append(markup.Kinds(), "of-no-kind"), blockViews())
	if want := `block "of-no-kind" has no view: add it to blockViews in press/setting/blocks.go`; err == nil || err.Error() != want {
		t.Errorf("without a view: error %v, want %s", err, want)
	}
	views := blockViews()
	views["of-no-kind"] = (*setting).caution
	if err = checkViews(markup.Kinds(), views); err == nil || !strings.Contains(err.Error(), `a view of "of-no-kind", which is no block`) {
		t.Errorf("with a view too many: error %v", err)
	}
}

func TestCaution(t *testing.T) {
	for heading, want := range map[string]string{"Dust": "Caution: Dust", "": "Caution", "A < B": "Caution: A < B"} {
		root := block(t, &markup.Block{Kind: "caution", Words: heading, Number: 2, Pieces: []markup.Piece{{HTML: "<p>Wear a <b>mask</b>.</p>\n"}}})
		section := presstest.Elements(root, presstest.Classed("caution"))[0]
		if role := presstest.Attribute(section, "role"); role != "note" {
			t.Errorf("role %q", role)
		}
		label := presstest.Elements(root, func(n *html.Node) bool {
			return presstest.Attribute(n, "id") == presstest.Attribute(section, "aria-labelledby")
		})
		if len(label) != 1 || presstest.Text(label[0]) != want {
			t.Errorf("heading %q: named otherwise than %q", heading, want)
		}
		if len(presstest.Elements(section, presstest.Called("svg"))) != 1 || len(presstest.Elements(section, presstest.Called("b"))) != 1 {
			t.Error("no sign, or the body was escaped")
		}
	}
}

func TestQuestion(t *testing.T) {
	root := block(t, &markup.Block{Kind: "question", Number: 3, Ask: &markup.Question{
		Ask: "Why <not>?",
		Answers: []markup.Choice{
			{Text: "One", Right: true, Because: "It is so."},
			{Text: "Two", Because: "It is not."},
		},
	}})
	if ask := presstest.Elements(root, presstest.Classed("ask")); len(ask) != 1 || presstest.Text(ask[0]) != "Why <not>?" {
		t.Error("the question is not asked")
	}
	var said []string
	for _, d := range presstest.Elements(root, presstest.Called("details")) {
		said = append(said, presstest.Text(presstest.Elements(d, presstest.Called("summary"))[0])+" / "+presstest.Text(presstest.Elements(d, presstest.Called("p"))[0]))
	}
	if got := strings.Join(said, "; "); got != "One / Right. It is so.; Two / Not quite. It is not." {
		t.Errorf("answers: %s", got)
	}
}
