package course

import (
	"fmt"
	"math"
	"slices"

	"slipbook/generator/finding"
)

// The kinds of medium, as decoration.yaml writes them.
const (
	clayKind    = "clay"
	colourKind  = "colour"
	powderKind  = "powder"
	glazeKind   = "glaze"
	onGlazeKind = "on-glaze"
	resistKind  = "resist"
)

// readMedia reads what is put on.
func (t *table) readMedia(v value) {
	for _, item := range v.entries() {
		f := item.merged("id", "name", "about", "words", "kind", "look", "heat", "food", "hides", "fixed", "best", "hazards", "who", "states")
		id := f.need("id", "id: coloured-slip")
		m := Medium{ID: id.id()}
		if t.without(item, m.ID) {
			continue
		}
		m.Name, m.Words = t.named(f, "name: Coloured slip")
		m.About = f.need("about", "about: White clay coloured with stain, thin enough to paint.").text()
		m.Kind = f.need("kind", "kind: clay").choice(clayKind, colourKind, powderKind, glazeKind, onGlazeKind, resistKind)
		m.Look = f.get("look").text()
		m.Heat = readHeat(f, m.Kind)
		m.Food = f.need("food", "food: yes").yes()
		m.Hides = readHides(f, m.Kind)
		m.Fixed = readFixed(f, m.Kind)
		m.Care = t.readCare(f, Care{})
		m.On = t.readPairs(f.need("states", "states: {wet: {verdict: yes, reason: …}, …}"), m.Name)
		m.Best = readBest(f.need("best", "best: leather-hard"), func(state string) Verdict { return m.On[state].Verdict })
		if t.media.add(id, m.ID) {
			t.Media = append(t.Media, m)
		}
	}
}

// loose reports whether a medium of a kind lies as clay or powder that a firing
// must fix.
func loose(kind string) bool { return kind == clayKind || kind == colourKind || kind == powderKind }

// readFixed reads whether a firing at bisque heat fixes a medium.
func readFixed(f fields, kind string) Fixing {
	v := f.get("fixed")
	switch {
	case loose(kind) && v.absent():
		f.of.report(finding.MissingKey, fmt.Sprintf("`fixed` is missing, which a medium of the kind `%s` needs", kind), "Write a line such as `fixed: yes`: whether bisque heat fixes it. `rub` if that depends on its flux and a rub must tell.")
	case kind == resistKind:
		return Fixing(v.choice(string(Peeled)))
	case !loose(kind) && kind != "" && !v.absent():
		v.report(finding.ValueForm, fmt.Sprintf("`fixed` belongs to what a firing must fix, and this is `%s`", kind), "Take `fixed` out, or change `kind`.")
		return ""
	}
	return Fixing(v.choice(string(FixedYes), string(FixedNo), string(FixedRub)))
}

// yes reads a value that is yes or no.
func (v value) yes() bool { return v.choice("yes", "no") == "yes" }

// mostHeat is the largest number that says in which order on-glaze media are
// fired.
const mostHeat = 99

// readHeat reads where an on-glaze medium stands in the order of firings.
func readHeat(f fields, kind string) int {
	v := f.get("heat")
	switch {
	case kind == onGlazeKind && v.absent():
		f.of.report(finding.MissingKey, "`heat` is missing, which an on-glaze medium needs", "Write a line such as `heat: 2`: of two on-glaze media the one with the larger number is fired first, hotter.")
		return 0
	case kind != onGlazeKind && kind != "" && !v.absent():
		v.report(finding.ValueForm, fmt.Sprintf("`heat` belongs to on-glaze media alone, and this is `%s`", kind), "Take `heat` out, or change `kind`.")
		return 0
	}
	n := v.number(1, mostHeat, "the place in the order of firings")
	if n != math.Trunc(n) {
		v.report(finding.ValueForm, "`heat` is not a whole number", "Write 1 for what is fired last and coolest, and a larger number for what comes before.")
		return 0
	}
	return int(n)
}

// readHides reads whether a glaze is opaque.
func readHides(f fields, kind string) bool {
	v := f.get("hides")
	if !v.absent() && kind != glazeKind && kind != "" {
		v.report(finding.ValueForm, fmt.Sprintf("`hides` belongs to glazes alone, and this is `%s`", kind), "Take `hides` out, or change `kind`.")
		return false
	}
	return v.yes()
}

// onGlaze says whether there are media that have a firing of their own on the
// fired glaze.
func (t *table) onGlaze() bool {
	return slices.ContainsFunc(t.Media, func(m Medium) bool { return m.Kind == onGlazeKind })
}
