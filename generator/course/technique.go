package course

// readTechniques reads the ways of putting on and working. A course may do
// without.
func (t *table) readTechniques(v value) {
	for _, item := range v.list() {
		f := item.fields("id", "name", "about", "words", "with", "best", "states")
		id := f.need("id", "id: wiping-back")
		q := Technique{ID: id.id()}
		q.Name, q.Words = t.named(f, "name: Wiping back")
		q.About = f.need("about", "about: Colour is wiped off again, so that it stays in the lines.").text()
		for _, medium := range f.get("with").list() {
			if m := t.media.known(medium, "medium"); m != "" {
				q.With = append(q.With, m)
			}
		}
		q.On = readPairs(f.need("states", "states: {wet: {verdict: yes, reason: …}, …}"), q.Name, true)
		q.Best = readBest(f.get("best"), q.On)
		if t.techniques.add(id, q.ID) {
			t.Techniques = append(t.Techniques, q)
		}
	}
}
