package stage

// around answers a wish that cannot be had: the first layer that finds no
// place, the rule that keeps it out, and the nearest wish that works. Ways
// round are tried in this order: the same in another order, in another way of
// working, another medium of the same look, one layer left out, a new pot; of
// one kind the best by the order of preference counts. None that is worse for
// health than what was asked for is named.
func (s *search) around() Plan {
	c := s.conflict()
	p := Plan{Conflict: c}
	if near, best := s.nearest(c.Layer); best != nil {
		at := best.run()
		if at < 0 {
			return p // the bound on work was reached, and the answer says so
		}
		p = best.tell(best.path(at))
		c.Changed, c.Nearest = near.changed, s.t.say(near.wish)
		p.Conflict = c
	}
	p.Today = s.today(nil)
	return p
}

// change is a wish that may stand in for another, and what was changed.
type change struct {
	wish    Wish
	changed string
	free    bool // the layers may lie in any order
}

// nearest is the nearest wish that works, with the search that finds it; nil
// where there is none.
func (s *search) nearest(blocked int) (change, *search) {
	asked := s.wishPeril()
	for _, kind := range s.repairs(blocked) {
		var near change
		var best *search
		node, least := int32(-1), unreachable
		for _, try := range kind {
			found := s.another(try.wish, safest)
			found.free, found.limit = try.free, least
			at := found.run()
			if at < 0 || s.t.worse(found.pathPeril(found.path(at), false), asked) {
				continue
			}
			near, best, node, least = try, found, at, found.reached[at].cost
		}
		if best == nil {
			continue
		}
		if near.free {
			near.wish = best.reordered(node)
		}
		return near, s.another(near.wish, safest)
	}
	return change{}, nil
}

// repairs are the ways round a conflict, kind by kind, the nearest first.
func (s *search) repairs(blocked int) [][]change {
	one, all := s.otherWays()
	return [][]change{s.anyOrder(), one, all, s.standIns(false), s.standIns(true), s.without(blocked), s.newPots()}
}

// anyOrder is the same wish with its layers in any order.
func (s *search) anyOrder() []change {
	if s.w.Apart || len(s.w.Layers) < 2 {
		return nil
	}
	return []change{{s.w, s.t.fill("change.order"), true}}
}

// reordered is the wish with its layers in the order of a plan found.
func (s *search) reordered(at int32) Wish {
	var layers []Layer
	for _, next := range s.path(at) {
		if next.act >= 0 && s.acts[next.act].first {
			layers = append(layers, s.w.Layers[s.acts[next.act].layer])
		}
	}
	return s.w.with(layers)
}

// otherWays leaves one way of working open, and where that is not enough all of
// them.
func (s *search) otherWays() (one, all []change) {
	var none []Layer
	var names []string
	for i, layer := range s.w.Layers {
		open := Layer{Medium: layer.Medium, Metal: layer.Metal}
		if layer.Medium < 0 || len(layer.Ways) == 0 {
			none = append(none, layer)
			continue
		}
		for j, q := range layer.Ways {
			name := s.t.lower(s.t.Techniques[q].Name)
			names = union(names, name)
			less := open
			less.Ways = append(append([]int(nil), layer.Ways[:j]...), layer.Ways[j+1:]...)
			one = append(one, change{wish: s.w.with(swapped(s.w.Layers, i, less)), changed: s.t.fill("change.way", "medium", s.t.Media[layer.Medium].Name, "way", name)})
		}
		none = append(none, open)
	}
	if len(one) > 1 {
		all = append(all, change{wish: s.w.with(none), changed: s.t.fill("change.ways", "ways", s.t.either(names))})
	}
	return one, all
}

// standIns puts another medium of the same look in the place of one layer; on
// the fired glaze only where nothing else does.
func (s *search) standIns(late bool) []change {
	var changes []change
	for i, layer := range s.w.Layers {
		if layer.Medium < 0 || layer.Metal != "" {
			continue
		}
		old := &s.t.Media[layer.Medium]
		for j := range s.t.Media {
			m := &s.t.Media[j]
			if m.Look == "" || m.Look != old.Look || j == layer.Medium || (m.Kind == OnGlaze) != late || s.beside(i, j) {
				continue
			}
			with, key := s.t.inPlace(layer, j), "change.medium"
			if len(with.Ways) < len(layer.Ways) {
				key = "change.medium-way"
			}
			changes = append(changes, change{wish: s.w.with(swapped(s.w.Layers, i, with)), changed: s.t.fill(key, "medium", m.Name, "old", s.t.lower(old.Name))})
			if len(with.Ways) > 0 {
				changes = append(changes, change{wish: s.w.with(swapped(s.w.Layers, i, Layer{Medium: j})), changed: s.t.fill("change.medium-way", "medium", m.Name, "old", s.t.lower(old.Name))})
			}
		}
	}
	return changes
}

// inPlace is a layer of another medium, in those of the ways that are for it.
func (t *Table) inPlace(layer Layer, medium int) Layer {
	with := Layer{Medium: medium}
	for _, q := range layer.Ways {
		if t.Techniques[q].serves(t.Media[medium].Base) {
			with.Ways = append(with.Ways, q)
		}
	}
	return with
}

// beside reports whether a layer lies next to one of a medium: the same medium
// twice, one on the other, is not what somebody wants.
func (s *search) beside(layer, medium int) bool {
	return layer > 0 && s.w.Layers[layer-1].Medium == medium || layer+1 < len(s.w.Layers) && s.w.Layers[layer+1].Medium == medium
}

func swapped(layers []Layer, i int, with Layer) []Layer {
	changed := append([]Layer(nil), layers...)
	changed[i] = with
	return changed
}

// without leaves one layer out, the one in the way first, but never the last
// one that decorates.
func (s *search) without(blocked int) []change {
	var changes []change
	for k := range s.w.Layers {
		i := (blocked + k) % len(s.w.Layers)
		layers := append(append([]Layer(nil), s.w.Layers[:i]...), s.w.Layers[i+1:]...)
		if len(layers) > 0 && (s.t.decorates(layers) || !s.t.decorates(s.w.Layers)) {
			changes = append(changes, change{wish: s.w.with(layers), changed: s.t.fill("change.without", "layer", s.t.say(Wish{Layers: s.w.Layers[i : i+1]}))})
		}
	}
	return changes
}

// newPots begins anew, in any state before the glaze.
func (s *search) newPots() []change {
	var changes []change
	for state := range s.t.States {
		if state == s.w.State && len(s.w.Already) == 0 || s.raw>>state&1 == 0 {
			continue
		}
		w := s.w
		w.State, w.Part, w.Already = state, 0, nil
		changes = append(changes, change{wish: w, changed: s.t.fill("change.new-pot", "state", s.t.lower(s.t.States[state].Name))})
	}
	return changes
}

// conflict finds the first layer that cannot be added to those before it, and
// the rule that says so on the pot where the student would stand and ask.
func (s *search) conflict() *Conflict {
	k := 0
	for ; k+1 < len(s.w.Layers); k++ {
		if s.another(s.w.upTo(k+1), safest).run() < 0 {
			break
		}
	}
	all := s.another(s.w.upTo(k+1), safest)
	all.uninformed = true
	all.run()
	c := &Conflict{Layer: k}
	p, act := all.soonest(k)
	all.blame(&p, all.acts[act], c)
	return c
}

// soonest is the pot with the acts before a layer done, and as many of its own
// as can be, that takes the fewest steps from now, and the act that comes next.
// Where they cannot be done before another one, it is the pot as it is now.
func (s *search) soonest(layer int) (pot, int) {
	from := len(s.acts) - 1
	for i, a := range s.acts {
		if a.layer == layer && a.first {
			from = i
		}
	}
	for next := len(s.acts) - 1; next >= from; next-- {
		best, fewest := pot{}, -1
		for _, n := range s.reached {
			if steps := n.cost.actions(); n.pot.done == 1<<next-1 && (fewest < 0 || steps < fewest) {
				best, fewest = n.pot, steps
			}
		}
		if fewest >= 0 {
			return best, next
		}
	}
	return s.start(), from
}

// blame words why an act cannot be done on a pot: what lies loose below it
// first, since that holds in every state, then the medium, then the way of
// working.
func (s *search) blame(p *pot, a act, c *Conflict) {
	on := func(what string) string {
		return s.t.fill("blame.state", "what", what, "state", s.t.lower(s.t.States[p.state].Name))
	}
	name := s.t.fill("blame.this")
	if layer := s.w.Layers[a.layer]; layer.Medium >= 0 {
		name = upper(s.t.named(layer))
	}
	if s.poisoned {
		c.What, c.Basis = s.t.fill("blame.poison", "metals", upper(s.poison(s.w.Layers))), Unsaid
		c.Rule = s.t.fill("blame.poison-why")
		return
	}
	rules := s.rules(p, a)
	for _, of := range []origin{ofUnder, ofMetal, ofMedium, ofWay} {
		for _, r := range rules {
			if r.of != of || r.Verdict != Never {
				continue
			}
			switch of {
			case ofUnder:
				key := "blame.over"
				if s.looseBelow(p, r.which) {
					key = "blame.over-loose"
				}
				c.What = s.t.fill(key, "what", s.by(name, a), "under", s.t.lower(s.t.Media[r.which].Name))
			case ofMetal:
				c.What = s.by(name, a) + "."
			case ofMedium:
				c.What = on(name)
			default:
				c.What = on(s.t.Techniques[r.which].Name)
			}
			c.Rule, c.Basis = r.Reason, r.Basis
			return
		}
	}
	c.What, c.Basis = on(name), Unsaid
	switch {
	case a.takes && !s.there(p, a):
		c.What = s.t.fill("blame.work", "way", s.t.Techniques[a.ways[0]].Name, "what", s.t.lower(name))
		c.Rule = s.t.fill("blame.work-why")
	case !a.takes && !a.bare && (p.heat > 0 || p.pending > 0) && !s.inTime(p, s.medium(a)):
		c.Rule = s.t.fill("blame.last")
	case s.glaze < 0 && !s.w.Bare:
		c.Rule = s.t.fill("blame.no-glaze")
	default:
		c.Rule = s.t.fill("blame.no-way")
	}
}

// looseBelow reports whether a medium lies loose on a pot, and no glaze over it.
func (s *search) looseBelow(p *pot, under int) bool {
	for i, medium := range s.layers {
		if medium == under && (p.open & p.loose).has(i) {
			return true
		}
	}
	return false
}

// by puts the ways of an act behind what it lays on: "slip by brushing".
func (s *search) by(what string, a act) string {
	var names []string
	for _, q := range a.ways {
		names = append(names, s.t.lower(s.t.Techniques[q].Name))
	}
	if len(names) == 0 {
		return what
	}
	return s.t.fill("blame.by", "what", what, "ways", s.t.listed(names))
}
