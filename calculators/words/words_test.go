package words

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var fillIn = regexp.MustCompile(`\{[^}]*\}`)

// categories are the ends of ids that are forms of one phrase.
var categories = []string{".one", ".few", ".many", ".other"}

// phrase is an id without its category.
func phrase(id string) string {
	for _, c := range categories {
		if of, ok := strings.CutSuffix(id, c); ok {
			return of
		}
	}
	return id
}

// fillIns are the fill-ins of a sentence, each once, in order of the alphabet.
func fillIns(text string) []string {
	found := fillIn.FindAllString(text, -1)
	slices.Sort(found)
	return slices.Compact(found)
}

// TestLanguagesAgree wants every language to have words for the same ids, with
// the same fill-ins: a form for one thing may leave its number out.
func TestLanguagesAgree(t *testing.T) {
	whole := In(Default)
	phrases := map[string]bool{}
	for _, id := range whole.IDs() {
		phrases[phrase(id)] = true
	}
	if len(phrases) < 700 {
		t.Errorf("only %d phrases", len(phrases))
	}
	for _, language := range Languages() {
		w := In(language)
		own := map[string]bool{}
		for _, id := range w.IDs() {
			own[phrase(id)] = true
			of := id
			if !whole.Has(of) {
				of = phrase(id) + ".other"
			}
			want, got := fillIns(whole.Text(of)), fillIns(w.Text(id))
			if !slices.Equal(got, want) && !(phrase(id) != id && slices.Equal(append(got, "{count}"), want)) {
				t.Errorf("%s: %s fills in %v, in %s %v", language, id, got, Default, want)
			}
			if text := w.Text(id); text == "" || text != strings.TrimSpace(text) && !strings.HasPrefix(id, "language.list.") && id != "quantity.or" && id != "plan.or" || strings.Contains(text, "  ") {
				t.Errorf("%s: %s is %q", language, id, text)
			}
		}
		if !maps.Equal(own, phrases) {
			t.Errorf("%s has other ids than %s", language, Default)
		}
	}
}

// TestOverlaysHoldOnlyWhatDiffers wants a file that lies over another to repeat
// nothing of it.
func TestOverlaysHoldOnlyWhatDiffers(t *testing.T) {
	for over, below := range lies {
		own := map[string]string{}
		if err := readFile(over, own); err != nil {
			t.Fatal(err)
		}
		base := In(below)
		for id, text := range own {
			if !base.Has(id) {
				t.Errorf("%s: %s is not in %s", over, id, below)
			}
			if base.Text(id) == text {
				t.Errorf("%s: %s is the same in %s", over, id, below)
			}
		}
	}
}

// british and american are words spelt otherwise on the other side of the sea.
// Litres and metres stand with what may lie before them: a parameter and a
// thermometer are spelt alike on both.
var (
	british  = regexp.MustCompile(`(?i)\b(colour|(milli|centi|deci|kilo)?(litre|metre)|grey|mould|labelled|callipers|centre)[a-z]*`)
	american = regexp.MustCompile(`(?i)\b(color(s|ed|ing|less|ful)?|(milli|centi|deci|kilo)?(liter|meter)s?|gray(s|ish|er)?|molds?|molded|labeled|calipers|center(s|ed)?)\b`)
)

// TestSpellings wants each kind of English to keep to its own spelling.
func TestSpellings(t *testing.T) {
	for _, id := range In("en-US").IDs() {
		if found := british.FindString(In("en-US").Text(id)); found != "" {
			t.Errorf("%s says %q in calculators/words/en-US.yaml: spell it there as Americans do, and write it as it is now in calculators/words/en-GB.yaml", id, found)
		}
		if found := american.FindString(In("en-GB").Text(id)); found != "" {
			t.Errorf("%s says %q in British English: write %s with its British spelling in calculators/words/en-GB.yaml", id, found, id)
		}
	}
}

// TestSpellingsAreTold wants a spelling to be seen in every form of its word,
// and in no other word.
func TestSpellingsAreTold(t *testing.T) {
	for word, want := range map[string]string{
		"millimetre": "British", "metres": "British", "Colourless": "British", "litres": "British", "grey": "British",
		"millimeter": "American", "Centimeters": "American", "meter": "American", "colored": "American", "milliliters": "American", "grayish": "American",
		"parameter": "", "thermometer": "", "diameter": "", "perimeter": "", "literal": "", "metered": "", "symmetrical": "", "central": "",
	} {
		got := ""
		if british.MatchString(word) {
			got += "British"
		}
		if american.MatchString(word) {
			got += "American"
		}
		if got != want {
			t.Errorf("%q is %q, want %q", word, got, want)
		}
	}
}

func TestKnown(t *testing.T) {
	for asked, want := range map[string]struct {
		tag   string
		known bool
	}{
		"en-GB": {"en-GB", true}, "en-gb": {"en-GB", true}, "en-US": {"en-US", true}, "en": {"en-US", true}, "en-AU": {"en-US", true},
		"de": {"en-US", false}, "": {"en-US", false},
	} {
		if tag, known := Known(asked); tag != want.tag || known != want.known {
			t.Errorf("%q is answered in %s, %v, want %s, %v", asked, tag, known, want.tag, want.known)
		}
	}
}

// TestCategories holds the rules of a language of each kind against the samples
// of the Unicode CLDR.
func TestCategories(t *testing.T) {
	for _, c := range []struct{ language, category, samples string }{
		{"en-GB", "one", "1"}, {"en-GB", "other", "0 2 11 21"},
		{"fr", "one", "0 1"}, {"fr", "other", "2 17"},
		{"ru", "one", "1 21 101"}, {"ru", "few", "2 4 22 104"}, {"ru", "many", "0 5 11 12 14 112"},
		{"pl", "one", "1"}, {"pl", "few", "2 4 22"}, {"pl", "many", "0 5 12 21 101"},
		{"cs", "one", "1"}, {"cs", "few", "2 4"}, {"cs", "other", "0 5 22"},
		{"ja", "other", "0 1 2"},
	} {
		for _, sample := range strings.Fields(c.samples) {
			n := 0
			for _, digit := range sample {
				n = 10*n + int(digit-'0')
			}
			w := &Table{choose: ruleOf(c.language), entries: []entry{{"x.few", "few"}, {"x.many", "many"}, {"x.one", "one"}, {"x.other", "other"}}}
			if got := w.Count("x", n); got != c.category {
				t.Errorf("%s: %d is %q, want %q", c.language, n, got, c.category)
			}
		}
	}
}

func TestLookUp(t *testing.T) {
	w := &Table{Language: "en-US", entries: []entry{{"a", "one {b} two {c}"}, {"language.labels", "small"}, {"language.list.between", ", "}, {"language.list.last", " and "}, {"language.quoted", "“{text}”"}, {"n.other", "{count} cups"}}}
	for got, want := range map[string]string{
		w.Text("a"): "one {b} two {c}", w.Text("b"): "b", w.Text(""): "", (*Table)(nil).Text("a"): "a",
		w.Fill("a", "c", "C", "b", "B"): "one B two C", w.Fill("a", "b"): "one  two ",
		w.Count("n", 1): "1 cups", w.List(nil) + w.List([]string{"x"}): "x", w.List([]string{"x", "y", "z"}): "x, y and z",
		w.Quoted([]string{"x", "y"}): "“x”, “y”", w.Label("Volume"): "volume", (&Table{}).Label("Volume"): "Volume",
		Filled("{a}{b}", []string{"a", "1"}, func(name string) string { return "<" + name + ">" }): "1<b>",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// TestParcel wants words to come back from their way as they went.
func TestParcel(t *testing.T) {
	for _, language := range Languages() {
		w := In(language)
		again, err := Decode(w.Encode())
		if err != nil || again.Language != w.Language || !slices.Equal(again.entries, w.entries) || again.Count("shared.people", 1) != w.Count("shared.people", 1) {
			t.Errorf("%s came back otherwise: %v", language, err)
		}
		few := w.Reactor()
		if len(few.entries) >= len(w.entries) || few.Has("slip-density.title") || few.Has("slip-density.mass.help") || !few.Has("slip-density.mass.label") {
			t.Errorf("%s: the reactor gets %d of %d", language, len(few.entries), len(w.entries))
		}
	}
	for _, bad := range []string{"en\nno tab", "en\nb\tx\na\ty", "en\na\tx\na\ty", "en\n"} {
		if _, err := Decode(bad); err == nil {
			t.Errorf("%q was taken", bad)
		}
	}
}

func TestFlatten(t *testing.T) {
	for _, bad := range []map[string]any{{"a": 1}, {"a": map[string]any{"b": true}}, {"a": "x\ty"}, {"a": nil}} {
		if err := flatten("", bad, map[string]string{}); err == nil {
			t.Errorf("%v was taken", bad)
		}
	}
}
