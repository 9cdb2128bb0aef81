package press

import (
	"bytes"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/generator/markup"
)

// settingOn is a setting on a page of the small course, which prints into out.
func settingOn(t *testing.T, i *impression, file string, out *bytes.Buffer) *setting {
	t.Helper()
	page, ok := i.addresses.Page(file)
	if !ok {
		t.Fatalf("no page %s", file)
	}
	return &setting{impression: i, of: i.documents[page], at: place{page: page.Address}, out: out}
}

// block sets a block in a lesson and parses what came of it.
func block(t *testing.T, i *impression, b *markup.Block) *html.Node {
	t.Helper()
	var out bytes.Buffer
	if err := settingOn(t, i, "units/slip/mix.md", &out).block(b); err != nil {
		t.Fatal(err)
	}
	root, err := html.Parse(&out)
	if err != nil {
		t.Fatal(err)
	}
	return root
}

// TestEveryBlockHasAView wants a view for each kind of block that is read, and no
// view of others; what is missing is named, with the place where it belongs.
func TestEveryBlockHasAView(t *testing.T) {
	if err := checkViews(markup.Kinds(), blockViews()); err != nil {
		t.Fatal(err)
	}
	err := checkViews(append(markup.Kinds(), "of-no-kind"), blockViews())
	if want := `block "of-no-kind" has no view: add it to blockViews in press/blocks.go`; err == nil || err.Error() != want {
		t.Errorf("without a view: error %v, want %s", err, want)
	}
	views := blockViews()
	views["of-no-kind"] = (*setting).caution
	if err = checkViews(markup.Kinds(), views); !matches(err, `a view of "of-no-kind", which is no block`) {
		t.Errorf("with a view too many: error %v", err)
	}
}

func TestCaution(t *testing.T) {
	for heading, want := range map[string]string{"Dust": "Caution: Dust", "": "Caution", "A < B": "Caution: A < B"} {
		root := block(t, newPress(t, small(t)), &markup.Block{Kind: "caution", Words: heading, Number: 2, Pieces: []markup.Piece{{HTML: "<p>Wear a <b>mask</b>.</p>\n"}}})
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
	root := block(t, newPress(t, small(t)), &markup.Block{Kind: "question", Number: 3, Ask: &markup.Question{
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

// TestFaultOfTheThemeNamesThePage wants a piece that asks for what its block does
// not have to stop the printing, and the page to be named.
func TestFaultOfTheThemeNamesThePage(t *testing.T) {
	theme := copyTheme(t)
	theme["pieces/caution.html"].Data = []byte(`{{define "caution"}}{{.Colour}}{{end}}`)
	e, err := tryPrint(t, opened(t, theme), small(t), Copy{})
	if e != nil || !matches(err, "page book.html: ") || !matches(err, "Colour") {
		t.Errorf("error %v", err)
	}
}
