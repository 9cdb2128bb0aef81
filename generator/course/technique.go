package course

import "slipbook/generator/finding"

// How a technique works: it lays colour on, lays a whole even coat on, or takes
// away from the coat that is there.
const (
	laysOn    = "lays"
	laysCoats = "coats"
	takesAway = "takes"
)

// readTechniques reads the ways of putting on and working. A course may do
// without.
func (t *table) readTechniques(v value) {
	for _, item := range v.entries() {
		f := item.merged("id", "name", "about", "words", "with", "best", "works", "bare", "wait", "hazards", "who", "states")
		id := f.need("id", "id: wiping-back")
		q := Technique{ID: id.id()}
		if t.without(item, q.ID) || !t.readWith(f.get("with"), &q) {
			continue
		}
		q.Name, q.Words = t.named(f, "name: Wiping back")
		t.namesMedium(f.get("name"), q.Name)
		q.About = f.need("about", "about: Colour is wiped off again, so that it stays in the lines.").text()
		works := f.get("works").choice(laysOn, laysCoats, takesAway)
		q.Coats, q.Takes = works == laysCoats, works == takesAway
		q.Bare = f.get("bare").yes()
		q.Wait = readWait(f.get("wait"), &q)
		q.Care = t.readCare(f, Care{})
		q.On = t.readCells(f.need("states", "states: {wet: {verdict: yes, reason: …}, …}"), &q)
		q.Best = readBest(f.get("best"), func(state string) Verdict { return q.On[state].mildest() })
		if t.techniques.add(id, q.ID) {
			t.Techniques = append(t.Techniques, q)
		}
	}
}

// readWait reads when to begin with what takes away.
func readWait(v value, q *Technique) string {
	if !q.Takes && !v.absent() {
		v.report(finding.ValueForm, "`wait` belongs to techniques that take away", "Add `works: takes`, or take `wait` out.")
	}
	return v.text()
}

// readWith reads the media that a technique is for. It reports whether any of
// them is left: a technique of the program's own table for media that a course
// does without goes with them.
func (t *table) readWith(v value, q *Technique) bool {
	items := v.list()
	for _, item := range items {
		if id := t.mediumNamed(item); id != "" {
			q.With = append(q.With, id)
		}
	}
	return len(items) == 0 || len(q.With) > 0 || v.seat == nil
}

// mediumNamed returns the id of a medium that is there, and reports another.
// Of the program's own words about a medium that the course leaves out it
// returns nothing in silence.
func (t *table) mediumNamed(v value) string {
	if v.seat != nil && t.without(v, v.text()) {
		return ""
	}
	return t.media.known(v, "medium")
}

// techniqueNamed is mediumNamed of a technique.
func (t *table) techniqueNamed(v value) string {
	if v.seat != nil && t.without(v, v.text()) {
		return ""
	}
	return t.techniques.known(v, "technique")
}
