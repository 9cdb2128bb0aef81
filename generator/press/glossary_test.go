package press

import (
	"slices"
	"testing"

	"golang.org/x/net/html"

	"slipbook/generator/course"
)

func TestGlossaryFollowsTheAlphabet(t *testing.T) {
	c := small(t)
	c.Glossary = append(c.Glossary,
		course.Term{ID: "body", Word: "Body", Means: "The clay."},
		course.Term{ID: "öl", Word: "öl", Means: "Oil.", See: []string{"body"}},
	)
	root := pageOf(t, printed(t, c), "glossary.html")
	var words, letters []string
	for _, dt := range elements(root, called("dt")) {
		words = append(words, attribute(dt, "id"))
	}
	for _, h := range elements(root, classed("letter")) {
		letters = append(letters, text(h))
	}
	if want := []string{"bisque", "body", "specific-gravity", "öl"}; !slices.Equal(words, want) {
		t.Errorf("terms %q, want %q", words, want)
	}
	if want := []string{"B", "S", "Ö"}; !slices.Equal(letters, want) {
		t.Errorf("letters %q, want %q", letters, want)
	}
	see := elements(root, func(n *html.Node) bool { return n.Data == "a" && attribute(n, "href") == "#body" })
	if len(see) != 1 || text(see[0]) != "Body" {
		t.Error("the last term does not lead to Body")
	}
}
