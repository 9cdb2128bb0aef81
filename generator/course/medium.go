package course

import (
	"fmt"
	"math"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// readMedia reads what is put on.
func (t *table) readMedia(v source.Value) {
	for _, item := range v.Entries() {
		f := item.Merged("id", "name", "about", "words", "kind", "look", "heat", "food", "hides", "fixed", "best", "hazards", "who", "states")
		id := f.Need("id", "id: coloured-slip")
		m := Medium{ID: id.ID()}
		if t.without(item, m.ID) {
			continue
		}
		m.Name, m.Words = t.named(f, "name: Coloured slip")
		m.About = f.Need("about", "about: White clay coloured with stain, thin enough to paint.").Text()
		m.Kind = f.Need("kind", "kind: clay").Choice(clayKind, colourKind, powderKind, glazeKind, onGlazeKind, resistKind)
		m.Look = f.Get("look").Text()
		m.Heat = readHeat(f, m.Kind)
		m.Food = yes(f.Need("food", "food: yes"))
		m.Hides = readHides(f, m.Kind)
		m.Fixed = readFixed(f, m.Kind)
		m.Care = t.readWholeCare(f)
		m.On = t.readPairs(f.Need("states", "states: {wet: {verdict: yes, reason: …}, …}"), m.Name)
		m.Best = readBest(f.Need("best", "best: leather-hard"), func(state string) Verdict { return m.On[state].Verdict })
		if t.media.add(id, m.ID) {
			t.Media = append(t.Media, m)
		}
	}
}

// readFixed reads whether a firing at bisque heat fixes a medium.
func readFixed(f source.Fields, kind string) Fixing {
	v := f.Get("fixed")
	switch {
	case loose(kind) && v.Absent():
		f.Of.Report(finding.MissingKey, fmt.Sprintf("`fixed` is missing, which a medium of the kind `%s` needs", kind), "Write a line such as `fixed: yes`: whether bisque heat fixes it. `rub` if that depends on its flux and a rub must tell.")
	case kind == resistKind:
		return Fixing(v.Choice(string(Peeled)))
	case !loose(kind) && kind != "" && !v.Absent():
		v.Report(finding.ValueForm, fmt.Sprintf("`fixed` belongs to what a firing must fix, and this is `%s`", kind), "Take `fixed` out, or change `kind`.")
		return ""
	}
	return Fixing(v.Choice(string(FixedYes), string(FixedNo), string(FixedRub)))
}

// mostHeat is the largest number that says in which order on-glaze media are
// fired.
const mostHeat = 99

// readHeat reads where an on-glaze medium stands in the order of firings.
func readHeat(f source.Fields, kind string) int {
	v := f.Get("heat")
	switch {
	case kind == onGlazeKind && v.Absent():
		f.Of.Report(finding.MissingKey, "`heat` is missing, which an on-glaze medium needs", "Write a line such as `heat: 2`: of two on-glaze media the one with the larger number is fired first, hotter.")
		return 0
	case kind != onGlazeKind && kind != "" && !v.Absent():
		v.Report(finding.ValueForm, fmt.Sprintf("`heat` belongs to on-glaze media alone, and this is `%s`", kind), "Take `heat` out, or change `kind`.")
		return 0
	}
	n := v.Number(1, mostHeat, "the place in the order of firings")
	if n != math.Trunc(n) {
		v.Report(finding.ValueForm, "`heat` is not a whole number", "Write 1 for what is fired last and coolest, and a larger number for what comes before.")
		return 0
	}
	return int(n)
}

// readHides reads whether a glaze is opaque.
func readHides(f source.Fields, kind string) bool {
	v := f.Get("hides")
	if !v.Absent() && kind != glazeKind && kind != "" {
		v.Report(finding.ValueForm, fmt.Sprintf("`hides` belongs to glazes alone, and this is `%s`", kind), "Take `hides` out, or change `kind`.")
		return false
	}
	return yes(v)
}
