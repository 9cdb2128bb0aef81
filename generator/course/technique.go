package course

import (
	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// How a technique works: it lays colour on, lays a whole even coat on, or takes
// away from the coat that is there.
const (
	laysOn    = "lays"
	laysCoats = "coats"
	takesAway = "takes"
)

// readTechniques reads the ways of putting on and working. A course may do
// without.
func (t *table) readTechniques(v source.Value) {
	for _, item := range v.Entries() {
		f := item.Merged("id", "name", "about", "words", "with", "best", "works", "bare", "wait", "hazards", "who", "states")
		id := f.Need("id", "id: wiping-back")
		q := Technique{ID: id.ID()}
		if t.without(item, q.ID) || !t.readWith(f.Get("with"), &q) {
			continue
		}
		q.Name, q.Words = t.named(f, "name: Wiping back")
		t.namesMedium(f.Get("name"), q.Name)
		q.About = f.Need("about", "about: Colour is wiped off again, so that it stays in the lines.").Text()
		works := f.Get("works").Choice(laysOn, laysCoats, takesAway)
		q.Coats, q.Takes = works == laysCoats, works == takesAway
		q.Bare = yes(f.Get("bare"))
		q.Wait = readWait(f.Get("wait"), &q)
		q.Care = t.readCare(f, Care{})
		q.On = t.readCells(f.Need("states", "states: {wet: {verdict: yes, reason: …}, …}"), &q)
		q.Best = readBest(f.Get("best"), func(state string) Verdict { return q.On[state].mildest() })
		if t.techniques.add(id, q.ID) {
			t.Techniques = append(t.Techniques, q)
		}
	}
}

// readWait reads when to begin with what takes away.
func readWait(v source.Value, q *Technique) string {
	if !q.Takes && !v.Absent() {
		v.Report(finding.ValueForm, "`wait` belongs to techniques that take away", "Add `works: takes`, or take `wait` out.")
	}
	return v.Text()
}

// readWith reads the media that a technique is for. It reports whether any of
// them is left: a technique of the program's own table for media that a course
// does without goes with them.
func (t *table) readWith(v source.Value, q *Technique) bool {
	items := v.List()
	for _, item := range items {
		if id := t.mediumNamed(item); id != "" {
			q.With = append(q.With, id)
		}
	}
	return len(items) == 0 || len(q.With) > 0 || !v.Inherited()
}

// mediumNamed returns the id of a medium that is there, and reports another.
// Of the program's own words about a medium that the course leaves out it
// returns nothing in silence.
func (t *table) mediumNamed(v source.Value) string {
	if v.Inherited() && t.without(v, v.Text()) {
		return ""
	}
	return t.media.known(v, "medium")
}

// techniqueNamed is mediumNamed of a technique.
func (t *table) techniqueNamed(v source.Value) string {
	if v.Inherited() && t.without(v, v.Text()) {
		return ""
	}
	return t.techniques.known(v, "technique")
}
