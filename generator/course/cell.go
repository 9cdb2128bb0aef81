package course

import (
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"slipbook/generator/finding"
)

var cellKeys = append([]string{"only", "others", "wait"}, pairKeys...)

// readCells reads what a technique says of each state.
func (t *table) readCells(v value, q *Technique) map[string]Cell {
	on := map[string]Cell{}
	t.eachState(v, q.Name, func(id string, cell value) {
		if c := t.readCell(cell, q, id); len(c) > 0 {
			on[id] = c
			t.Origin.count(cell, q.Name)
		}
	})
	return on
}

// readCell reads what a technique says of one state: a pair, or pairs by
// medium.
func (t *table) readCell(v value, q *Technique, state string) Cell {
	var cell Cell
	care := t.careBelow(v)
	for said := []string(nil); ; {
		f := v.fields(cellKeys...)
		only, others := f.get("only"), f.get("others")
		one := Case{Pair: t.readPair(f, state, care), Only: t.readOnly(only, q, said), Wait: readWait(f.get("wait"), q)}
		said = append(said, one.Only...)
		if one.Verdict != "" && (only.absent() || len(one.Only) > 0) {
			cell = append(cell, one)
		}
		switch {
		case only.absent() && !others.absent():
			others.report(finding.TablePair, "`others` stands without `only`", "Write `only` with the media that the words before are about, or take `others` out.")
			return cell
		case !only.absent() && others.absent():
			f.of.report(finding.TablePair, "`only` says nothing of the other media", "Add `others: {verdict: never, rule: …, reason: …, fault: …, remedy: …}`.")
			return cell
		case others.absent():
			return cell
		}
		v = others
	}
}

// readOnly reads the media that a case is for; said are those of the cases
// before.
func (t *table) readOnly(v value, q *Technique, said []string) []string {
	var only []string
	for _, item := range v.list() {
		id := t.mediumNamed(item)
		switch {
		case id == "":
		case len(q.With) > 0 && !slices.Contains(q.With, id):
			item.report(finding.TablePair, fmt.Sprintf("`only` names `%s`, and `with` does not", id), "Add it to `with`, or take it out here.")
		case slices.Contains(said, id) || slices.Contains(only, id):
			item.report(finding.TablePair, fmt.Sprintf("`%s` is already spoken of in this state", id), "Keep it in one of the two.")
		default:
			only = append(only, id)
		}
	}
	return only
}

// careBelow is what the program's own table says of safety in the place of a
// pair or cell of the course, all its cases together.
func (t *table) careBelow(v value) Care {
	var care Care
	if v.base == nil {
		return care
	}
	for below := *v.base; below.isA(yaml.MappingNode); below = below.fieldNamed("others") {
		care = care.with(t.readCare(below.fields(cellKeys...), Care{}))
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
func (t *table) readPart(v value, state string) string {
	if v.absent() {
		return ""
	}
	s, there := t.FindState(state)
	if !there || len(s.Parts) == 0 {
		v.report(finding.UnknownName, fmt.Sprintf("the state `%s` has no parts", state), "Take `part` out.")
		return ""
	}
	var ids []string
	for _, p := range s.Parts {
		ids = append(ids, p.ID)
	}
	return v.choice(ids...)
}

// readMetals reads the words for what is harmful as a metal. Those of the
// program stay: no course can make one of them harmless.
func (t *table) readMetals(v value) {
	f := v.merged("words", "also", "unplanned", "never-food", "not-over", "reason", "hazards", "who", "ask")
	m := &t.Metals
	m.Words, m.Unplanned, m.NeverFood = metalWords(f.get("words")), metalWords(f.get("unplanned")), metalWords(f.get("never-food"))
	m.Also = metalWords(f.get("also"))
	for _, technique := range withBeneath(f.get("not-over")) {
		if id := t.techniqueNamed(technique); id != "" && !slices.Contains(m.NotOver, id) {
			m.NotOver = append(m.NotOver, id)
		}
	}
	if v.absent() {
		return
	}
	f.need("words", "words: [cobalt, copper]")
	m.Care = t.readCare(f, Care{})
	m.Ask, m.Reason = f.get("ask").text(), f.get("reason").text()
}

// withBeneath is a list with what the program's own table has in its place.
func withBeneath(v value) []value { return append(v.list(), v.beneath().list()...) }

// metalWords reads words for metals, each once.
func metalWords(v value) (words []string) {
	for _, item := range withBeneath(v) {
		if word := item.text(); plainWord(item, word) && !slices.Contains(words, word) {
			words = append(words, word)
		}
	}
	return words
}

// beneath is what the program's own table has in the place of a value; absent
// where it has nothing.
func (v value) beneath() value {
	if v.base == nil {
		return value{sheet: v.sheet, name: v.name}
	}
	return *v.base
}

// readPhrases reads the words that stand for a whole wish: the course's own,
// then those of the program that it does not use otherwise.
func (t *table) readPhrases(v value) {
	for _, v := range []value{v, v.beneath()} {
		for _, item := range v.list() {
			f := item.fields("words", "layers", "ask")
			p := Phrase{Layers: f.get("layers").text(), Ask: f.get("ask").text()}
			for _, word := range f.need("words", "words: [majolica]").list() {
				text := word.text()
				if _, taken := t.typed[strings.ToLower(text)]; taken && word.seat != nil {
					continue
				}
				if plainWord(word, text) && t.typed.addWord(word, text) {
					p.Words = append(p.Words, text)
				}
			}
			if (p.Layers == "") == (p.Ask == "") && item.isA(yaml.MappingNode) {
				item.report(finding.ValueForm, "a phrase says what it stands for, or asks", "Write either `layers: \"glaze, stain wash\"` or `ask: Which of the two do you mean?`.")
			}
			if len(p.Words) > 0 && t.meansSomething(p, f.get("layers")) {
				t.Phrases = append(t.Phrases, p)
			}
		}
	}
}

// meansSomething reports whether the planner understands what a phrase stands
// for. A phrase of the program's own table that names what the course leaves
// out goes with it.
func (t *table) meansSomething(p Phrase, layers value) bool {
	if p.Layers == "" || len(t.Media) == 0 {
		return true
	}
	got, err := t.Table().Layers(p.Layers)
	switch {
	case err == nil && len(got.Left)+len(got.Read) == 0:
		return true
	case layers.seat != nil:
		return false
	case err != nil:
		layers.report(finding.ValueForm, "`layers` is not understood: "+err.Error(), "Write media and ways of working of this table, with commas between the layers.")
	default:
		layers.report(finding.ValueForm, fmt.Sprintf("in `layers` these words are not those of the table: %s", strings.Join(append(got.Left, got.Read...), ", ")), "Write media and ways of working by their names or words.")
	}
	return false
}

// readFiring reads what is done in an on-glaze firing.
func (t *table) readFiring(v value) {
	f := v.merged("name", "drying", "because", "hazards", "who")
	t.Firing = Firing{Name: f.need("name", "name: Fire it to the cone on its label.").text(), Drying: f.get("drying").text(), Because: f.get("because").text(), Care: t.readCare(f, Care{})}
	if t.Firing.Drying == "" {
		t.Firing.Drying = "The instructor lets it dry as its label says."
	}
}
