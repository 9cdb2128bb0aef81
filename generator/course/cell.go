package course

import (
	"fmt"
	"slices"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

var cellKeys = append([]string{"only", "others", "wait"}, pairKeys...)

// readCells reads what a technique says of each state.
func (t *table) readCells(v source.Value, q *Technique) map[string]Cell {
	on := map[string]Cell{}
	t.eachState(v, q.Name, func(id string, cell source.Value) {
		if c := t.readCell(cell, q, id); len(c) > 0 {
			on[id] = c
			t.Origin.count(cell, q.Name)
		}
	})
	return on
}

// readCell reads what a technique says of one state: a pair, or pairs by
// medium.
func (t *table) readCell(v source.Value, q *Technique, state string) Cell {
	var cell Cell
	care := t.careBelow(v)
	for said := []string(nil); ; {
		f := v.Fields(cellKeys...)
		only, others := f.Get("only"), f.Get("others")
		one := Case{Pair: t.readPair(f, state, care), Only: t.readOnly(only, q, said), Wait: readWait(f.Get("wait"), q)}
		said = append(said, one.Only...)
		if one.Verdict != "" && (only.Absent() || len(one.Only) > 0) {
			cell = append(cell, one)
		}
		switch {
		case only.Absent() && !others.Absent():
			others.Report(finding.TablePair, "`others` stands without `only`", "Write `only` with the media that the words before are about, or take `others` out.")
			return cell
		case !only.Absent() && others.Absent():
			f.Of.Report(finding.TablePair, "`only` says nothing of the other media", "Add `others: {verdict: never, rule: …, reason: …, fault: …, remedy: …}`.")
			return cell
		case others.Absent():
			return cell
		}
		v = others
	}
}

// readOnly reads the media that a case is for; said are those of the cases
// before.
func (t *table) readOnly(v source.Value, q *Technique, said []string) []string {
	var only []string
	for _, item := range v.List() {
		id := t.mediumNamed(item)
		switch {
		case id == "":
		case len(q.With) > 0 && !slices.Contains(q.With, id):
			item.Report(finding.TablePair, fmt.Sprintf("`only` names `%s`, and `with` does not", id), "Add it to `with`, or take it out here.")
		case slices.Contains(said, id) || slices.Contains(only, id):
			item.Report(finding.TablePair, fmt.Sprintf("`%s` is already spoken of in this state", id), "Keep it in one of the two.")
		default:
			only = append(only, id)
		}
	}
	return only
}

// careBelow is what the program's own table says of safety in the place of a
// pair or cell of the course, all its cases together.
func (t *table) careBelow(v source.Value) Care {
	var care Care
	for below := v.Below(); below.IsMapping(); below = below.Key("others") {
		care = care.with(t.readCare(below.Fields(cellKeys...), Care{}))
	}
	return care
}

// mildest is the verdict of the case of a cell that allows most; empty of one
// without any.
func (c Cell) mildest() Verdict {
	verdicts := []Verdict{Yes, Label, Risky, Never, ""}
	best := len(verdicts) - 1
	for _, one := range c {
		best = min(best, slices.Index(verdicts, one.Verdict))
	}
	return verdicts[best]
}

// whole is a cell as one pair, for what is said of all media: the case that
// forbids most, with the care of all.
func (c Cell) whole() Pair {
	var p Pair
	var care Care
	for _, one := range c {
		worse := one.Verdict == Never && p.Verdict != Never || one.Verdict == Never && one.Rule == physics
		if p.Verdict == "" || worse {
			p = one.Pair
		}
		care = care.with(one.Care)
	}
	p.Care = care
	return p
}

// readPart reads the part of a state that a medium or technique wants there.
func (t *table) readPart(v source.Value, state string) string {
	if v.Absent() {
		return ""
	}
	s, there := t.FindState(state)
	if !there || len(s.Parts) == 0 {
		v.Report(finding.UnknownName, fmt.Sprintf("the state `%s` has no parts", state), "Take `part` out.")
		return ""
	}
	var ids []string
	for _, p := range s.Parts {
		ids = append(ids, p.ID)
	}
	return v.Choice(ids...)
}

// readMetals reads the words for what is harmful as a metal. Those of the
// program stay: no course can make one of them harmless.
func (t *table) readMetals(v source.Value) {
	f := v.Merged("words", "also", "unplanned", "never-food", "not-over", "reason", "hazards", "who", "ask")
	m := &t.Metals
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
