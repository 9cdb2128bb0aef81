package course

import "slipbook/generator/source"

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
		q.Care = t.readWholeCare(f)
		q.On = t.readCells(f.Need("states", "states: {wet: {verdict: yes, reason: …}, …}"), &q)
		q.Best = readBest(f.Get("best"), func(state string) Verdict { return q.On[state].mildest() })
		if t.techniques.add(id, q.ID) {
			t.Techniques = append(t.Techniques, q)
		}
	}
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
