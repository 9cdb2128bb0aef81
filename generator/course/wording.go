package course

import (
	"fmt"
	"slices"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// readMetals reads the words for what is harmful as a metal. Those of the
// program stay: no course can make one of them harmless.
func (t *table) readMetals(v source.Value) {
	f := v.Merged("words", "also", "unplanned", "rinse-apart", "never-food", "not-over", "reason", "hazards", "who", "ask")
	m := &t.Metals
	m.RinseApart = metalWords(f.Get("rinse-apart"))
	m.Words, m.Unplanned, m.NeverFood = metalWords(f.Get("words")), metalWords(f.Get("unplanned")), metalWords(f.Get("never-food"))
	m.Also = metalWords(f.Get("also"))
	for _, technique := range withBeneath(f.Get("not-over")) {
		if id := t.techniqueNamed(technique); id != "" && !slices.Contains(m.NotOver, id) {
			m.NotOver = append(m.NotOver, id)
		}
	}
	if v.Absent() {
		return
	}
	f.Need("words", "words: [cobalt, copper]")
	m.Care = t.readCare(f, Care{})
	m.Ask, m.Reason = f.Get("ask").Text(), f.Get("reason").Text()
}

// withBeneath is a list with what the program's own table has in its place.
func withBeneath(v source.Value) []source.Value { return append(v.List(), v.Below().List()...) }

// metalWords reads words for metals, each once.
func metalWords(v source.Value) (words []string) {
	for _, item := range withBeneath(v) {
		if word := item.Text(); plainWord(item, word) && !slices.Contains(words, word) {
			words = append(words, word)
		}
	}
	return words
}

// readPhrases reads the words that stand for a whole wish: the course's own,
// then those of the program that it does not use otherwise.
func (t *table) readPhrases(v source.Value) {
	for _, v := range []source.Value{v, v.Below()} {
		for _, item := range v.List() {
			f := item.Fields("words", "layers", "ask")
			p := Phrase{Layers: f.Get("layers").Text(), Ask: f.Get("ask").Text()}
			for _, word := range f.Need("words", "words: [majolica]").List() {
				text := word.Text()
				if _, taken := t.typed[strings.ToLower(text)]; taken && word.Inherited() {
					continue
				}
				if plainWord(word, text) && t.typed.addWord(word, text) {
					p.Words = append(p.Words, text)
				}
			}
			if (p.Layers == "") == (p.Ask == "") && item.IsMapping() {
				item.Report(finding.ValueForm, "a phrase says what it stands for, or asks", "Write either `layers: \"glaze, stain wash\"` or `ask: Which of the two do you mean?`.")
			}
			if len(p.Words) > 0 && t.meansSomething(p, f.Get("layers")) {
				t.Phrases = append(t.Phrases, p)
			}
		}
	}
}

// meansSomething reports whether the planner understands what a phrase stands
// for. A phrase of the program's own table that names what the course leaves
// out goes with it.
func (t *table) meansSomething(p Phrase, layers source.Value) bool {
	if p.Layers == "" || len(t.Media) == 0 {
		return true
	}
	got, err := t.Table().Layers(p.Layers)
	switch {
	case err == nil && len(got.Left)+len(got.Read) == 0:
		return true
	case layers.Inherited():
		return false
	case err != nil:
		layers.Report(finding.ValueForm, "`layers` is not understood: "+err.Error(), "Write media and ways of working of this table, with commas between the layers.")
	default:
		layers.Report(finding.ValueForm, fmt.Sprintf("in `layers` these words are not those of the table: %s", strings.Join(append(got.Left, got.Read...), ", ")), "Write media and ways of working by their names or words.")
	}
	return false
}

// readFiring reads what is done in an on-glaze firing.
func (t *table) readFiring(v source.Value) {
	f := v.Merged("name", "drying", "because", "hazards", "who")
	t.Firing = Firing{Name: f.Need("name", "name: Fire it to the cone on its label.").Text(), Drying: f.Get("drying").Text(), Because: f.Get("because").Text(), Care: t.readCare(f, Care{})}
	if t.Firing.Drying == "" {
		t.Firing.Drying = "The instructor lets it dry as its label says."
	}
}
