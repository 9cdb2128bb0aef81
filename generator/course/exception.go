package course

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// readExceptions reads what differs from the table for a product, a recipe
// card, a clay body or the whole house. It comes last: it checks against the
// table and then puts the rules of the house into it.
func (t *table) readExceptions(v source.Value) {
	ids, cells := unique{}, unique{}
	for _, item := range v.Entries() {
		f := item.Merged("id", "kind", "name", "body", "words", "medium", "technique", "hides", "fixed", "best", "hazards", "who", "states")
		id := f.Need("id", "id: gate-yellow")
		e := Exception{ID: id.ID(), Kind: f.Need("kind", "kind: recipe").Choice(productKind, recipeKind, bodyKind, houseKind)}
		if !ids.add(id, e.ID) || e.Kind == "" || t.takenByMedium(&e, id) {
			continue
		}
		e.refuseOthers(f)
		t.readWhose(f, &e)
		base := t.readAbout(f, &e)
		e.On = t.readChanges(f, &e, base, cells)
		e.Care = t.readCare(f, Care{})
		e.readBest(f, base)
		if e.Medium+e.Technique != "" && e.Name != "" {
			t.Exceptions = append(t.Exceptions, e)
		}
	}
	for _, e := range t.Exceptions {
		if e.Kind == houseKind {
			e.rule(t.Decoration)
		}
	}
}

// rule puts what a rule of the house says into the table.
func (e *Exception) rule(d *Decoration) {
	if m, there := d.FindMedium(e.Medium); there {
		maps.Copy(m.On, e.On)
	}
	if q, there := d.FindTechnique(e.Technique); there {
		for state, p := range e.On {
			q.On[state] = Cell{{Pair: p}}
		}
	}
}

// takenByMedium reports a product or recipe with the id of a medium: the
// planner knows both by their ids.
func (t *table) takenByMedium(e *Exception, id source.Value) bool {
	_, taken := t.media[e.ID]
	if taken = taken && (e.Kind == productKind || e.Kind == recipeKind); taken {
		id.Report(finding.RepeatedName, fmt.Sprintf("`%s` is the id of a medium", e.ID), "Give the "+e.Kind+" an id of its own.")
	}
	return taken
}

// belongs says for each key that not every exception has, which kinds do.
var belongs = []struct {
	key   string
	kinds []string
}{
	{"name", []string{productKind, recipeKind, houseKind}},
	{"words", []string{productKind, recipeKind}},
	{"body", []string{bodyKind}},
	{"technique", []string{houseKind}},
	{"hides", []string{productKind, recipeKind}},
	{"best", []string{productKind, recipeKind}},
	{"fixed", []string{productKind, recipeKind}},
	{"hazards", []string{productKind, recipeKind}},
	{"who", []string{productKind, recipeKind}},
}

// refuseOthers reports keys that mean nothing for this kind of exception.
func (e *Exception) refuseOthers(f source.Fields) {
	for _, b := range belongs {
		if v := f.Get(b.key); !v.Absent() && !slices.Contains(b.kinds, e.Kind) {
			v.Report(finding.UnknownKey, fmt.Sprintf("an exception of the kind `%s` has no `%s`", e.Kind, b.key), "Take the key out, or change `kind`.")
		}
	}
}

// readWhose reads for what the exception holds.
func (t *table) readWhose(f source.Fields, e *Exception) {
	switch e.Kind {
	case productKind, recipeKind:
		e.Name, e.Words = t.named(f, "name: Gate Yellow engobe")
	case houseKind:
		e.Name = f.Need("name", "name: No dry carving").Text()
	case bodyKind:
		v := f.Need("body", "body: white-stoneware")
		e.Body = v.Text()
		i := slices.IndexFunc(t.bodies, func(b Body) bool { return b.ID == e.Body })
		if i >= 0 {
			e.Name = t.bodies[i].Name
			return
		}
		if e.Body != "" && t.bodiesKnown {
			var ids []string
			for _, b := range t.bodies {
				ids = append(ids, b.ID)
			}
			v.Report(finding.UnknownName, fmt.Sprintf("`%s` is not a clay body of course.yaml", e.Body), source.Meant(e.Body, ids)+"Write the id of one of its `bodies`.")
		}
		e.Body = ""
	}
}

// subject is what the table says of the medium or technique that an exception
// is about.
type subject struct {
	on   map[string]Pair
	best string
}

// readAbout reads the medium or technique that the exception is about.
func (t *table) readAbout(f source.Fields, e *Exception) subject {
	medium, technique := f.Get("medium"), f.Get("technique")
	if e.Kind == houseKind && !technique.Absent() {
		if !medium.Absent() {
			medium.Report(finding.ValueForm, "a rule of the house is about a medium or about a technique, not both", "Make two rules of it.")
		}
		e.Technique = t.techniqueNamed(technique)
		q, there := t.FindTechnique(e.Technique)
		if !there {
			return subject{}
		}
		on := map[string]Pair{}
		for state, cell := range q.On {
			on[state] = cell.whole()
		}
		return subject{on, q.Best}
	}
	e.Medium = t.mediumNamed(f.Need("medium", "medium: engobe"))
	m, there := t.FindMedium(e.Medium)
	if !there {
		return subject{}
	}
	e.Hides = readHides(f, m.Kind) || m.Hides && f.Get("hides").Absent()
	if !f.Get("fixed").Absent() {
		e.Fixed = readFixed(f, m.Kind)
	}
	return subject{m.On, m.Best}
}

// readChanges reads the states that differ. A product or recipe may differ in
// nothing else than that it hides, or whether bisque heat fixes it. A change
// that says nothing of hazards and people leaves those of the table. cells
// knows what earlier exceptions changed.
func (t *table) readChanges(f source.Fields, e *Exception, about subject, cells unique) map[string]Pair {
	v := f.Get("states")
	differs := slices.ContainsFunc([]string{"hides", "fixed", "hazards", "who"}, func(key string) bool { return !f.Get(key).Absent() })
	if v.Absent() && !differs {
		v = f.Need("states", "states: {bisque: {verdict: yes, reason: …}}")
	}
	on := map[string]Pair{}
	states := v.Fields(stateIDs...)
	for _, id := range stateIDs {
		cell := states.Get(id)
		if cell.Absent() {
			continue
		}
		p := t.readPair(cell.Fields(pairKeys...), id, about.on[id].Care)
		if p.Part == "" {
			p.Part = about.on[id].Part
		}
		if p.Verdict != "" && e.mayChange(id, p, about, cell, cells) {
			on[id] = p
			t.Origin.count(cell, e.Name)
		}
	}
	return on
}

// mayChange reports whether an exception may say this of a state, and adds a
// finding for what it may not: to allow what physics forbids, to forbid the house what is
// liked best, or to say again what another has said.
func (e *Exception) mayChange(state string, p Pair, about subject, cell source.Value, cells unique) bool {
	old := about.on[state]
	switch {
	case old.Verdict == Never && old.Rule == physics && p.Verdict != Never:
		cell.Report(finding.TablePhysics, fmt.Sprintf("`%s` allows what is never by physics", e.ID), "Take the state `"+state+"` out. The table's reason is: "+old.Reason)
		return false
	case e.Kind == houseKind && p.Verdict == Never && state == about.best:
		cell.Report(finding.TablePair, fmt.Sprintf("`%s` forbids `%s`, which `best` names", e.ID, state), "Name another state as `best` above, or allow this one.")
		return false
	case e.Kind == houseKind || e.Kind == bodyKind:
		return cells.addCell(cell, e, state)
	}
	return true
}

// readBest reads the state that a product or recipe likes best, if that is not
// the one of its medium.
func (e *Exception) readBest(f source.Fields, about subject) {
	if e.Kind != productKind && e.Kind != recipeKind {
		return
	}
	on := map[string]Pair{}
	maps.Copy(on, about.on)
	maps.Copy(on, e.On)
	verdict := func(state string) Verdict { return on[state].Verdict }
	if e.Best = readBest(f.Get("best"), verdict); e.Best == "" && f.Get("best").Absent() && on[about.best].Verdict == Never {
		f.Of.Report(finding.TablePair, fmt.Sprintf("`%s` forbids `%s`, which its medium likes best", e.ID, about.best), "Write `best` with the state that this one likes best.")
	}
}

// addCell is add for what exceptions change: the same for the same body, or
// for the whole house, only once.
func (u unique) addCell(v source.Value, e *Exception, state string) bool {
	key := strings.Join([]string{e.Kind, e.Body, e.Medium, e.Technique, state}, "/")
	first, repeated := u[key]
	if repeated {
		v.Report(finding.RepeatedName, fmt.Sprintf("%s already says what holds for `%s` here", first.Line(), state), "Keep one of the two.")
		return false
	}
	u[key] = v
	return true
}
