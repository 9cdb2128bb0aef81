package table

import (
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/generator/markup"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
)

// stagesBlock makes a stages block of three ids; their offsets are 1, 2, 3.
func stagesBlock(medium, state, technique string) *markup.Block {
	return &markup.Block{Kind: "stages", Number: 1, Part: &markup.Part{
		Medium:    markup.Name{ID: medium, Offset: 1},
		State:     markup.Name{ID: state, Offset: 2},
		Technique: markup.Name{ID: technique, Offset: 3},
	}}
}

// shown is what a lesson shows of such a block.
func shown(t *testing.T, r *Table, b *markup.Block) *html.Node {
	t.Helper()
	html, err := imprint.Execute(r.Pages, markup.StagesBlock, r.Stages(b, "stages.1", imprint.Place{Page: "slip/mix.html"}))
	if err != nil {
		t.Fatal(err)
	}
	return presstest.Parse(t, string(html))
}

func TestStagesBlock(t *testing.T) {
	const wiping = "Wet: no, physics It cannot be done here. | Leather-hard: risky It smears. | Bone dry: no, house rule It wears the clay away. | Bisque: yes, best It wipes clean. | " +
		"Unfired glaze: no, physics It cannot be done here. | Glaze-fired: no, physics It cannot be done here."
	const wash = "Wet: no, house rule It cannot hold here. | Leather-hard: risky It may not hold here. | Bone dry: yes It holds here. | Bisque: yes, best It holds here. | " +
		"Unfired glaze: label Some kinds hold here. | Glaze-fired: no, physics It cannot hold here."
	for _, c := range []struct{ name, medium, state, technique, words, lines string }{
		{"a medium", "stain-wash", "", "", "Stain wash: state by state", wash},
		{"a technique", "", "", "wiping-back", "Wiping back: state by state", wiping},
		{"both, the worse of the two", "stain-wash", "", "wiping-back", "Stain wash, wiping back: state by state",
			"Wet: no, house rule It cannot hold here. | Leather-hard: risky It may not hold here. | Bone dry: no, house rule It wears the clay away. | Bisque: yes, best It wipes clean. | " +
				"Unfired glaze: no, physics It cannot be done here. | Glaze-fired: no, physics It cannot hold here."},
		{"a state", "", "bisque", "", "Bisque: what may go on", "Coloured slip: no, physics It cannot hold here. | Stain wash: yes, best It holds here."},
		{"a medium in a state", "coloured-slip", "bone-dry", "", "Coloured slip: in this state",
			"Bone dry: no It cannot hold here. This is a rule of the house: ask the instructor. Recipe card: Mill slip: risky. It has little clay. It may flake. Try a tile. " +
				"Usual faultIt flakes off. What to doTry another medium."},
		{"all three", "stain-wash", "leather-hard", "wiping-back", "Stain wash, Wiping back: in this state",
			"Leather-hard: risky It may not hold here. Usual faultIt flakes off. What to doTry another medium. | Leather-hard: risky It smears. Usual faultThe ground stays grey. What to doWait."},
	} {
		t.Run(c.name, func(t *testing.T) {
			root := shown(t, newTable(t, presstest.Small(t)), stagesBlock(c.medium, c.state, c.technique))
			if got := presstest.Text(presstest.Elements(root, presstest.Classed("stages-words"))[0]); got != c.words {
				t.Errorf("heading %q, want %q", got, c.words)
			}
			var lines []string
			for _, n := range presstest.Elements(root, presstest.Classed("bar")) {
				lines = append(lines, presstest.Text(n))
			}
			if got := strings.Join(lines, " | "); got != c.lines {
				t.Errorf("lines\n%s\nwant\n%s", got, c.lines)
			}
			links := presstest.Links(root)
			if last := links[len(links)-1]; last != "../chart.html" {
				t.Errorf("the last link is %q", last)
			}
		})
	}
}

// TestStagesBlockOfATechniqueByMedium shows a technique in a lesson, once for
// each group of media.
func TestStagesBlockOfATechniqueByMedium(t *testing.T) {
	p := newTable(t, presstest.Parted(t))
	for of, want := range map[string][]string{"": {"Wiping back", "Wiping back: stain wash"}, "stain-wash": {"Stain wash", "Wiping back"}} {
		v := p.Stages(stagesBlock(of, "bisque", "wiping-back"), "stages.1", imprint.Place{Page: "a/b.html"})
		var names []string
		for _, part := range v.Parts {
			names = append(names, part.Of.Title)
		}
		if !slices.Equal(names, want) {
			t.Errorf("%s: %q", of, names)
		}
	}
}

// TestBlockInALessonHasHazards shows the line over the states of a medium or
// technique, and what a single state adds.
func TestBlockInALessonHasHazards(t *testing.T) {
	p := newTable(t, presstest.Harmful(t))
	for _, c := range []struct{ medium, state, technique, want string }{
		{"stain-wash", "", "", "state by state ◆ with the instructor ▲ Dust. Wear: a fitted respirator. Where: at the wet table. Wet: no, house rule It cannot hold here. Leather-hard: risky ◆ with the instructor It may"},
		{"", "", "wiping-back", "state by state ▲ Blades. Wet: no, physics It cannot be done here. Leather-hard: risky It smears."},
		{"stain-wash", "", "wiping-back", "state by state ◆ with the instructor ▲ Dust, Blades. Wear: a fitted respirator. Where: at the wet table. Wet: no, house rule It cannot hold here."},
		{"stain-wash", "", "wiping-back", "Bisque: yes, best ◆ instructor only ▲ mask It wipes clean."},
		{"", "bisque", "wiping-back", "in this state Bisque: yes, best ◆ instructor only ▲ Blades, Mist & spray. Wear: a mask. It wipes clean."},
		{"coloured-slip", "wet", "", "in this state Wet: yes ▲ Blades. It holds here."},
		{"", "bone-dry", "", "Stain wash: yes ◆ with the instructor ▲ dust It holds here."},
	} {
		if got := presstest.Text(shown(t, p, stagesBlock(c.medium, c.state, c.technique))); !strings.Contains(got, c.want) {
			t.Errorf("%s %s %s: %q, want %q in it", c.medium, c.state, c.technique, got, c.want)
		}
	}
}
