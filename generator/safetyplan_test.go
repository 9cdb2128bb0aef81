package main

import (
	"strings"
	"testing"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
)

// TestPlansProtect holds single steps to what protects whoever does them, word
// by word: what the table must not lose.
func TestPlansProtect(t *testing.T) {
	s := settingsOf(demoTable(t))
	for _, c := range []struct{ state, layers, title, column, has, lacks string }{
		{"bisque", "stain wash, glaze dipped", "Put on glaze: dipping", "trouble", "Do not wipe the pot: clean only its foot, in gloves.", "off the dust|the dust off"},
		{"bisque", "underglaze, glaze dipped", "Put on glaze: dipping", "trouble", "Do not wipe the pot: clean only its foot, in gloves.", "off the dust|the dust off"},
		{"bisque", "oxide wash, glaze dipped", "Put on glaze: dipping", "trouble", "Do not wipe the pot", "off the dust|the dust off"},
		{"bisque", "oxide wash, glaze dipped", "Put on glaze: dipping", "wear", "nitrile gloves, a fitted respirator", ""},
		{"bisque", "oxide wash, glaze dipped", "Put on glaze: dipping", "who", "you, with the instructor beside you", ""},
		{"bisque", "glaze dipped", "Put on glaze: dipping", "trouble", "Wipe the dust off bare bisque", ""},
		{"bone-dry", "underglaze brushed then scratched", "Work the coat of underglaze: scratching through", "wait", "Put the respirator on, damp the coat,", "clean thread"},
		{"bisque", "underglaze brushed then scratched", "Work the coat of underglaze: scratching through", "wait", "Put the respirator on, and begin while the coat is still damp.", "clean thread"},
		{"bisque", "glaze dipped then scratched", "Work the coat of glaze: scratching through", "wait", "Put the respirator on, and begin while the glaze is still damp.", "clean thread"},
		{"leather-hard", "slip poured then scratched", "Work the coat of coloured slip: scratching through", "wait", "clean thread", "respirator"},
		{"glaze-fired", "enamel brushed", "Dry", "who", "the instructor; you watch", ""},
		{"glaze-fired", "enamel brushed", "Dry", "place", "under extraction", ""},
		{"glaze-fired", "lustre brushed", "Dry", "caution", "No flame", ""},
		{"glaze-fired", "lustre brushed", "Dry", "what", "The instructor lets it dry under extraction", "overnight"},
		{"glaze-fired", "lustre brushed", "Dry", "why", "solvent", "bisque"},
		{"bisque", "stain wash brushed", "Put on stain wash: brushing", "wear", "nitrile gloves", ""},
		{"bisque", "stain wash brushed then wiped back", "Work the coat of stain wash: wiping back", "wear", "nitrile gloves", ""},
		{"leather-hard", "latex, underglaze", "Peel off latex resist", "wear", "nitrile gloves", ""},
		{"leather-hard", "latex, underglaze", "Peel off latex resist", "wait", "the coat over it has lost its shine", ""},
		{"bisque", "latex, stain wash", "Peel off latex resist", "caution", "Ask about allergy first.", ""},
		{"bone-dry", "terra sigillata brushed then burnished", "Work the coat of terra sigillata: burnishing", "caution", "Wipe it up damp; never sand or blow.", ""},
		{"glaze-fired", "underglaze brushed", "Put on underglaze: brushing", "wear", "kiln gloves", ""},
		{"glaze-fired", "glaze dipped", "Put on glaze: dipping", "trouble", "Ask the instructor, who warms the pot, in kiln gloves.", "Warm the pot"},
		{"glaze-fired", "glaze sprayed", "Put on glaze: spraying", "caution", "The instructor warms and moves it, in kiln gloves.", ""},
	} {
		a := catalog.Solve("stage-plan", []form.Setting{{Name: "state", Text: c.state}, {Name: "layers", Text: c.layers}, {Name: "food", Text: "no"}}, s)
		found := false
		for _, row := range rowsOf(a) {
			if row["title"] != c.title {
				continue
			}
			found = true
			if !strings.Contains(row[c.column], c.has) {
				t.Errorf("%s, %s: %s of %q is %q, want %q", c.state, c.layers, c.column, c.title, row[c.column], c.has)
			}
			for word := range strings.SplitSeq(c.lacks, "|") {
				if word != "" && strings.Contains(row[c.column], word) {
					t.Errorf("%s, %s: %s of %q says %q: %s", c.state, c.layers, c.column, c.title, word, row[c.column])
				}
			}
		}
		if !found {
			t.Errorf("%s, %s: no step is called %q: %s %v", c.state, c.layers, c.title, a.Headline, a.Errors)
		}
	}
}

// TestNothingIsSprayedOverLooseOxide makes sure that neither a plan nor a list of
// ways sends anybody to the spray gun with a raw metal.
func TestNothingIsSprayedOverLooseOxide(t *testing.T) {
	s := settingsOf(demoTable(t))
	solve := func(layers string) *form.Answer {
		return catalog.Solve("stage-plan", []form.Setting{{Name: "state", Text: "bisque"}, {Name: "layers", Text: layers}}, s)
	}
	for _, way := range []string{"sprayed", "behind a card"} {
		a := solve("oxide wash, glaze " + way)
		if output(a, "conflict") == "" {
			t.Errorf("glaze %s over oxide wash: %s", way, a.Headline)
		}
		for _, row := range rowsOf(a) {
			if strings.Contains(row["title"], "spraying") || strings.Contains(row["title"], "held off") {
				t.Errorf("glaze %s over oxide wash: %s", way, row["title"])
			}
		}
	}
	a := solve("oxide wash marbled")
	if len(a.Errors) != 1 || !strings.Contains(a.Errors[0].Text, "brushing") || strings.Contains(a.Errors[0].Text, "spraying") {
		t.Errorf("ways of an oxide wash: %v", a.Errors)
	}
}

// TestLatexNeverMeetsAFire peels latex off before every firing, and fires
// nothing for its sake.
func TestLatexNeverMeetsAFire(t *testing.T) {
	s := settingsOf(demoTable(t))
	for _, layers := range []string{"latex, slip", "latex, underglaze, latex, stain wash", "latex, glaze dipped", "underglaze, latex"} {
		for _, state := range []string{"leather-hard", "bisque"} {
			on := false
			for _, row := range rowsOf(catalog.Solve("stage-plan", []form.Setting{{Name: "state", Text: state}, {Name: "layers", Text: layers}}, s)) {
				if strings.Contains(row["action"], "fire") && on {
					t.Errorf("%s, %s: latex goes into the kiln", state, layers)
				}
				on = on && row["action"] != "peel" || strings.HasPrefix(row["title"], "Put on latex")
			}
			if on {
				t.Errorf("%s, %s: the pot ends with latex on it", state, layers)
			}
		}
	}
}
