package press

import (
	"strings"
	"testing"

	"slipbook/generator/markup"
)

// stagesBlock makes a stages block of three ids; their offsets are 1, 2, 3.
func stagesBlock(medium, state, technique string) *markup.Block {
	return &markup.Block{Kind: "stages", Number: 1, Part: &markup.Part{
		Medium:    markup.Name{ID: medium, Offset: 1},
		State:     markup.Name{ID: state, Offset: 2},
		Technique: markup.Name{ID: technique, Offset: 3},
	}}
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
				"Usual faultIt flakes off. What thenTry another medium."},
		{"all three", "stain-wash", "leather-hard", "wiping-back", "Stain wash, Wiping back: in this state",
			"Leather-hard: risky It may not hold here. Usual faultIt flakes off. What thenTry another medium. | Leather-hard: risky It smears. Usual faultThe ground stays grey. What thenWait."},
	} {
		t.Run(c.name, func(t *testing.T) {
			root := block(t, newPress(t, small(t)), stagesBlock(c.medium, c.state, c.technique))
			if got := text(elements(root, classed("stages-words"))[0]); got != c.words {
				t.Errorf("heading %q, want %q", got, c.words)
			}
			var lines []string
			for _, n := range elements(root, classed("bar")) {
				lines = append(lines, text(n))
			}
			if got := strings.Join(lines, " | "); got != c.lines {
				t.Errorf("lines\n%s\nwant\n%s", got, c.lines)
			}
			links := pairsOf(root)
			if last := links[len(links)-1]; last != "The whole chart -> ../chart.html" {
				t.Errorf("the last link is %q", last)
			}
		})
	}
}
