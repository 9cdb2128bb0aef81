package oracle

import (
	"slices"

	"slipbook/calculators/stage"
)

// step is one way on from a condition.
type step struct {
	to    condition
	cost  Cost
	peril Peril
	fire  bool // it is a firing
	work  bool // it does not come with every pot, as drying and the other firings do
	what  string
	deed  int // the act that it does, from 1; 0 = none
}

// steps are all ways on from a condition.
func (j *job) steps(c condition) []step {
	var all []step
	for i, d := range j.deeds {
		if c.done>>i&1 == 1 || !j.turn(c, i) {
			continue
		}
		before := len(all)
		switch {
		case d.bare:
			all = j.workClay(all, c, i)
		case d.takes:
			all = j.take(all, c, i)
		default:
			all = j.lay(all, c, i)
		}
		for k := range all[before:] {
			all[before+k].deed = i + 1
		}
	}
	all = j.addGlaze(all, c)
	all = j.wait(all, c)
	all = j.peel(all, c)
	for i := range j.t.Transitions {
		all = j.move(all, c, &j.t.Transitions[i])
	}
	all = j.fireOnGlaze(all, c)
	for k := range all {
		if !all[k].fire {
			all[k].peril = all[k].peril.Join(j.handled(c))
		}
		if c == j.start() {
			all[k].cost[Questions] += j.askedFirst()
		}
	}
	if j.begin >= 0 && c == j.start() {
		all = slices.DeleteFunc(all, func(s step) bool { return !j.begins(s) })
	}
	return all
}

// begins reports whether a step lays on the layer that the plan has to begin
// with, without risk or question.
func (j *job) begins(s step) bool {
	return s.deed > 0 && j.deeds[s.deed-1].layer == j.begin && s.cost[Risky] == 0 && s.cost[Questions] == 0
}

// handled is what somebody meets who handles a pot: of each loose coat that is
// on-glaze colour or powder, or that a student does not lay on alone, its
// hazards and its person, and those of a metal that was named (rule 5).
func (j *job) handled(c condition) (p Peril) {
	for i, k := range c.coats {
		if k.comesOff() {
			p = p.Join(j.harm(i))
		}
	}
	return p
}

// comesOff reports whether a coat is loose, or an open coat of unfired glaze.
func (k coat) comesOff() bool { return k.how == loose || k.how == unfired && !k.covered }

// blown reports whether some ways blow about a loose coat that harms, which no
// glaze covers, wherever it is (rule 2).
func (j *job) blown(c condition, own int, ways []int) bool {
	blows := peels(j.medium(own)) || j.sprays(ways)
	for i, k := range c.coats {
		if blows && i != own && k.comesOff() && !k.covered && j.harm(i).Who != stage.Student {
			return true
		}
	}
	return false
}

// sprays reports whether one of some ways blows powder about.
func (j *job) sprays(ways []int) bool {
	return slices.ContainsFunc(ways, func(q int) bool { return slices.Contains(j.t.Metals.NotOver, j.t.Techniques[q].ID) })
}

// harm is what one coat can do while it is loose.
func (j *job) harm(i int) (p Peril) {
	if m := j.medium(i); m.Who != stage.Student || m.Kind == stage.OnGlaze || m.Kind == stage.Powder {
		p = p.Join(Peril{m.Hazards, m.Who})
	}
	switch on := len(j.w.Already); {
	case i < on && j.w.Already[i].Metal != "":
		p = p.Join(Peril{j.t.Metals.Hazards, j.t.Metals.Who})
	case i >= on && i < on+len(j.w.Layers):
		p = p.Join(j.metal(i - on))
	}
	return p
}

// askedFirst is how many questions come before the first step: about each metal
// that was named of the pot (rule 2), and whether the instructor agrees, for
// each coat of on-glaze colour that is loose (rule 7).
func (j *job) askedFirst() (n int) {
	for _, a := range j.w.Already {
		if a.Loose && j.t.Media[a.Medium].Kind == stage.OnGlaze {
			n++
		}
		if a.Metal != "" && j.t.Metals.Ask != "" {
			n++
		}
	}
	return n
}

// turn reports whether all that must come before an act is done (rule 1), and
// nothing is on the pot that must come after it (rule 7).
func (j *job) turn(c condition, i int) bool {
	for k, on := range c.coats {
		if on.how != absent && j.medium(k).Kind == stage.OnGlaze && !j.onGlaze(j.deeds[i]) {
			return false
		}
	}
	for k := range i {
		if c.done>>k&1 == 0 && (!j.w.Apart || j.deeds[k].layer == j.deeds[i].layer) {
			return false
		}
	}
	return true
}

// onGlaze reports whether an act is on-glaze work.
func (j *job) onGlaze(d deed) bool {
	return !d.bare && j.medium(j.place(d.layer)).Kind == stage.OnGlaze
}

// workClay works the clay itself: only the way's own rule counts.
func (j *job) workClay(all []step, c condition, i int) []step {
	d := j.deeds[i]
	q := &j.t.Techniques[d.ways[0]]
	var v verdicts
	v.add(j.way(d.ways[0], d, c.state))
	v.peril = v.peril.Join(Peril{q.Hazards, q.Who})
	s, ok := j.close(v, c)
	if !ok {
		return all
	}
	s.work, s.what = true, q.ID
	s.cost[Away] += j.away(c, q.Best)
	s.to.done |= 1 << i
	return append(all, s)
}

// take takes away from the coat of the act's own layer (rule 3).
func (j *job) take(all []step, c condition, i int) []step {
	d := j.deeds[i]
	own := c.coats[j.place(d.layer)]
	if own.covered || own.how != loose && own.how != unfired {
		return all
	}
	q := &j.t.Techniques[d.ways[0]]
	m := j.medium(j.place(d.layer))
	var v verdicts
	v.add(j.way(d.ways[0], d, c.state))
	v.peril = v.peril.Join(Peril{q.Hazards | m.Hazards, max(q.Who, m.Who)}).Join(j.metal(d.layer))
	s, ok := j.close(v, c)
	if !ok {
		return all
	}
	s.work, s.what = true, q.ID+" "+m.ID
	s.to.done |= 1 << i
	return append(all, s)
}

// lay lays the coat of a layer on (rule 2).
func (j *job) lay(all []step, c condition, i int) []step {
	d := j.deeds[i]
	layer := j.w.Layers[d.layer]
	m := &j.t.Media[layer.Medium]
	if m.Kind == stage.Glaze && !j.dryEnough(c) || m.Kind == stage.OnGlaze && !j.turnOfHeat(c, m) {
		return all
	}
	v := j.laid(c, layer.Medium, d.ways, d)
	below := j.place(d.layer)
	if j.w.Apart {
		below = len(j.w.Already)
	}
	j.overs(&v, c, m, d.ways, below)
	v.never = v.never || j.blown(c, j.place(d.layer), d.ways) || layer.Metal != "" && j.sprays(d.ways)
	v.peril = v.peril.Join(j.metal(d.layer))
	if layer.Metal != "" && j.t.Metals.Ask != "" {
		v.cost[Questions]++
	}
	s, ok := j.close(v, c)
	if !ok {
		return all
	}
	s.work, s.what = true, m.ID
	s.cost[Away] += j.away(c, j.best(layer.Medium, d.ways))
	s.to = j.on(c, j.place(d.layer), below)
	s.to.done |= 1 << i
	return append(all, s)
}

// metal is what the metal that was named beside a layer can do.
func (j *job) metal(layer int) Peril {
	if j.w.Layers[layer].Metal == "" {
		return Peril{}
	}
	return Peril{j.t.Metals.Hazards, j.t.Metals.Who}
}

// laid gathers what counts for putting a medium on, whatever lies below.
func (j *job) laid(c condition, medium int, ways []int, d deed) verdicts {
	var v verdicts
	m := &j.t.Media[medium]
	v.add(j.mediumRule(medium, c.state))
	v.peril = v.peril.Join(Peril{m.Hazards, m.Who})
	for _, q := range ways {
		v.add(j.way(q, d, c.state))
		v.peril = v.peril.Join(Peril{j.t.Techniques[q].Hazards, j.t.Techniques[q].Who})
	}
	return v
}

// on is the pot with a coat on it: wet, and glazed if it is a glaze, which
// covers the coats below.
func (j *job) on(c condition, place, below int) condition {
	c.damp = true
	c.rubber = c.rubber.more(j.medium(place))
	c.coats[place] = coat{how: loose}
	if j.medium(place).Kind == stage.Glaze {
		c.coats[place].how, c.glazed = unfired, true
		c = j.into(c, unfiredGlaze)
		j.cover(&c, below)
	}
	return c
}

// into is the pot in the state of a name.
func (j *job) into(c condition, name string) condition {
	for i := range j.t.States {
		if j.is(i, name) {
			c.state, c.part = i, 0
		}
	}
	return c
}

// best is the state in which a layer goes on best: of the first way that has
// one, else of the medium.
func (j *job) best(medium int, ways []int) int {
	for _, q := range ways {
		if j.t.Techniques[q].Best >= 0 {
			return j.t.Techniques[q].Best
		}
	}
	return j.t.Media[medium].Best
}

// away is how far the state is from the best one. What goes on the coat that a
// pot wore at the start is as near as it gets.
func (j *job) away(c condition, best int) int {
	if best < 0 || j.is(c.state, unfiredGlaze) && j.is(j.w.State, unfiredGlaze) {
		return 0
	}
	return max(c.state-best, best-c.state)
}

// addGlaze adds a clear glaze where neither the pot nor the wish has one, over
// all that is not on-glaze work (rule 9).
func (j *job) addGlaze(all []step, c condition) []step {
	place := j.place(len(j.w.Layers))
	if j.added < 0 || c.glazed || !j.dryEnough(c) {
		return all
	}
	for i, d := range j.deeds {
		if done := c.done>>i&1 == 1; done == j.onGlaze(d) {
			return all
		}
	}
	v := j.laid(c, j.added, nil, deed{})
	j.overs(&v, c, &j.t.Media[j.added], nil, place)
	s, ok := j.close(v, c)
	if !ok {
		return all
	}
	s.work, s.what = true, "added "+j.t.Media[j.added].ID
	s.cost[Away] += j.away(c, j.t.Media[j.added].Best)
	s.to = j.on(c, place, place)
	return append(all, s)
}

// wait lets the pot dry where that is a step of its own (rule 6), or stiffen to
// a later part of its state, if something wants that (rule 4).
func (j *job) wait(all []step, c condition) []step {
	if c.rubber == under {
		return all
	}
	if !j.dryEnough(c) {
		s := step{to: c, cost: Cost{Actions: 1}, what: "dry"}
		s.to.damp = false
		all = append(all, s)
	}
	wanted := j.wanted(c.state)
	if j.added >= 0 {
		wanted[int(j.mediumRule(j.added, c.state).Part)] = true
	}
	for part := c.part + 1; part <= len(j.t.States[c.state].Parts); part++ {
		if !wanted[part] {
			continue
		}
		s := step{to: c, cost: Cost{Actions: 1}, what: j.t.States[c.state].Parts[part-1].ID}
		s.to.part = part
		all = append(all, s)
	}
	return all
}

// peel takes a resist off by hand, with something over it or with nothing left
// to go on (rule 5).
func (j *job) peel(all []step, c condition) []step {
	left := c.rubber == none
	for i, d := range j.deeds {
		left = left || c.rubber == open && !d.takes && !d.bare && c.done>>i&1 == 0
	}
	if left {
		return all
	}
	s := step{to: c, cost: Cost{Actions: 1}, what: "peel", work: true}
	s.to.rubber = none
	for i, k := range c.coats {
		if k.how != absent && peels(j.medium(i)) {
			s.peril = s.peril.Join(Peril{j.medium(i).Hazards, j.medium(i).Who})
			s.to.coats[i] = coat{}
		}
	}
	return append(all, s)
}

// dryEnough reports whether a coat of glaze can go on: on soft clay always, on
// all else when it has dried (rule 6).
func (j *job) dryEnough(c condition) bool {
	return !c.damp || j.is(c.state, wet, leatherHard)
}
