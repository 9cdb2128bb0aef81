package stage

// A plan is found by A*: the cheapest path through the conditions that a pot
// can be in, looked for first where the cost so far and the least that must
// still come are smallest together. The table is the map: media and techniques
// with their rules are steps that put a layer on or work it, transitions are
// steps that do not.

// search is one question to the table.
type search struct {
	t          *Table
	w          Wish
	acts       []act
	free       bool     // the layers may lie in any order
	uninformed bool     // without the heuristic, and so over every pot that can be reached
	order      order    // of preference
	limit      cost     // give up at this cost, in the order of the search
	begin      int      // the layer to begin with, without risk or question; -1 = any
	glaze      int      // the medium added where a glaze is missing; -1 = there is none
	from       pot      // as the student holds it
	asks       []ground // what is asked before anything is done, of what is on the pot
	facts
	heuristic
	steps   []step // out of the pot being expanded
	work    *int   // pots expanded so far, by all searches for one plan
	reached []node
	index   index // of reached
}

// facts are what the search asks of the table again and again.
type facts struct {
	coat      uint8   // the state of an unfired coat of glaze
	last      uint8   // the state of a finished pot
	raw       uint64  // states of clay that was never fired, by bit
	ready     uint64  // states from which the bisque firing starts, by bit
	layers    []int   // medium of each layer, those on the pot first; -1 = work on the clay itself
	before    int     // how many layers are on the pot already
	onGlaze   set     // acts that put or work something on the fired glaze
	kept      set     // layers that bisque heat does not fix
	resist    set     // layers that repel, until any firing burns them off
	skins     set     // of them, those that are peeled off instead
	firm      set     // layers on the pot already that a firing has fixed, glaze excepted
	alike     []set   // on places of their own: the bit that stands for a loose layer
	cares     []peril // of each layer: what it can do to whoever handles the pot while it is loose
	parts     uint64  // parts that some act wants, by bit, from 1
	waits     uint64  // of them and of those that the glaze to be added wants
	poisoned  bool    // it is for food or drink and holds a metal that is never
	tooStiff  Rule    // for what wants softer clay than there is
	blown     Rule    // what blows a loose coat about that harms
	stillSoft Rule    // the question whether the clay is still in the first part of its state
}

// node is a pot that was reached, and how.
type node struct {
	pot    pot
	cost   cost // in the order of the search
	from   int32
	step   step
	closed bool
}

func (t *Table) newSearch(w Wish, o order) *search {
	s := &search{t: t, w: w, order: o, acts: t.acts(w.Layers), glaze: t.clear(), limit: unreachable, begin: -1, work: new(int)}
	s.index = make(index, 128)
	s.coat, s.last = uint8(len(t.States)), uint8(len(t.States))
	for i := len(t.Transitions) - 1; i >= 0; i-- {
		s.note(&t.Transitions[i])
	}
	s.before = len(w.Already)
	for i, coat := range w.Already {
		s.layers = append(s.layers, coat.Medium)
		if kind := t.Media[coat.Medium].Kind; !coat.Loose && kind != Glaze && kind != Resist {
			s.firm |= 1 << i
		}
	}
	for _, layer := range w.Layers {
		s.layers = append(s.layers, layer.Medium)
	}
	s.sortLayers()
	s.tooStiff = Rule{Verdict: Risky, Reason: t.fill("too-stiff")}
	s.blown = Rule{Verdict: Never, Basis: Unsaid, Reason: t.Metals.Reason}
	s.poisoned = w.Food && s.poison(w.Layers) != ""
	if parts := s.t.States[w.State].Parts; len(parts) > 0 {
		s.stillSoft.Ask = s.t.fill("still", "part", s.t.lower(parts[0].Name), "tell", parts[0].Tell)
	}
	s.heuristic = s.newHeuristic()
	s.from, s.asks = s.start(), s.asksFirst()
	return s
}

// mostWork is how many pots all searches for one plan may expand. It is counted
// and not timed, so that every machine answers the same. Of wishes with eight
// layers in the program's own table one in a thousand needs more, and no page is
// still for longer than BenchmarkPlans says.
const mostWork = 100_000

// another is a question that belongs to the same plan: it shares the bound on
// work.
func (s *search) another(w Wish, o order) *search {
	other := s.t.newSearch(w, o)
	other.work = s.work
	return other
}

// spent reports whether the searches for a plan have done all the work that
// they may. What was not found then may still be there.
func (s *search) spent() bool { return *s.work > mostWork }

// note takes the facts from a transition. The first glaze firing of the table
// starts from an unfired coat and leads to a finished pot; it is noted last.
func (s *search) note(tr *Transition) {
	switch tr.Move {
	case Fire:
		s.coat, s.last = uint8(tr.From), uint8(tr.To)
	case Dry:
		s.raw |= 1<<tr.From | 1<<tr.To
	case Bisque:
		s.raw |= 1 << tr.From
		s.ready |= 1 << tr.From
	}
}

// sortLayers notes how each layer behaves in a firing, and which layers the
// search need not tell apart.
func (s *search) sortLayers() {
	s.alike = make([]set, len(s.layers))
	s.cares = make([]peril, len(s.layers))
	for i, medium := range s.layers {
		s.alike[i] = 1 << i
		if medium < 0 {
			continue
		}
		m := &s.t.Media[medium]
		s.cares[i] = s.care(i)
		if m.Kind == Resist {
			s.resist |= 1 << i
			if m.peels() {
				s.skins |= s.alike[i]
			}
		} else if m.Fixed != Fixed {
			s.kept |= 1 << i
		}
		for j := range i {
			if s.w.Apart && j >= s.before && s.layers[j] >= 0 && s.plain(i) && s.plain(j) && s.alikeInFire(j, m) && s.cares[i] == s.cares[j] {
				s.alike[i] = s.alike[j]
				break
			}
		}
	}
	for i, a := range s.acts {
		if !a.bare && s.t.Media[s.w.Layers[a.layer].Medium].Kind == OnGlaze {
			s.onGlaze |= 1 << i
		}
		for state := range s.t.States {
			for _, r := range s.rulesIn(a, state) {
				s.parts |= 1 << r.Part
			}
		}
	}
	s.waits = s.parts
	for state := range s.t.States {
		if s.mayAddGlaze() {
			s.waits |= 1 << s.mediumRule(&s.t.Media[s.glaze], state).Part
		}
	}
}

// mayAddGlaze reports whether a plan may need a glaze that nobody wished for.
func (s *search) mayAddGlaze() bool {
	for _, layer := range s.w.Layers {
		if layer.Medium >= 0 && s.t.Media[layer.Medium].Kind == Glaze {
			return false
		}
	}
	return s.glaze >= 0 && !s.w.Bare
}

// plain reports whether a layer is only laid on, and not worked afterwards.
func (s *search) plain(layer int) bool {
	for _, a := range s.acts {
		if a.layer+s.before == layer && a.takes {
			return false
		}
	}
	return true
}

// alikeInFire reports whether a layer and a medium behave the same in every
// firing, and under the glaze that is added.
func (s *search) alikeInFire(layer int, m *Medium) bool {
	other := &s.t.Media[s.layers[layer]]
	return other.Kind == m.Kind && other.Fixed == m.Fixed && other.Base == m.Base
}

// peels reports whether a medium is a resist that is peeled off by hand.
func (m *Medium) peels() bool { return m.Kind == Resist && m.Fixed == Peeled }

// clear is the first glaze of the table through which colour is seen; -1 when
// there is none.
func (t *Table) clear() int {
	for i, m := range t.Media {
		if m.Kind == Glaze && !m.Hides {
			return i
		}
	}
	return -1
}

// start is the pot as the student holds it. Of a state with parts the one that
// was said counts; unsaid, the first where some act wants it, so that the plan
// asks, and otherwise the middle.
func (s *search) start() pot {
	p := pot{state: uint8(s.w.State)}
	p.glazed = p.state == s.coat || p.state == s.last
	if parts := len(s.t.States[p.state].Parts); s.w.Part > 0 {
		p.part = uint8(s.w.Part - 1)
	} else if parts > 0 && s.parts>>1&1 == 0 {
		p.part = uint8(parts / 2)
	}
	for i, coat := range s.w.Already {
		m := &s.t.Media[coat.Medium]
		switch {
		case m.Kind == Glaze:
			p.open = p.open&s.resist | s.alike[i]
		case coat.Loose:
			p.loose |= s.alike[i]
			p.open |= s.alike[i]
		case m.Kind != Resist: // which a firing has burned off
			p.open |= s.alike[i]
		}
		if m.Kind == OnGlaze {
			p.wear(uint8(m.Heat), coat.Loose)
		}
		p.skin = p.skin.under(m, coat.Loose)
	}
	if p.state == s.coat && !s.glazeSaid() {
		p.skin = p.skin.worn()
		p.open &= s.resist
	}
	return p
}

// wear notes on-glaze colour that is on the pot from the start. Loose colours of
// two heats cannot be fired together, and the hotter one no more alone.
func (p *pot) wear(heat uint8, loose bool) {
	switch {
	case !loose && (p.heat == 0 || heat < p.heat):
		p.heat = heat
	case loose && p.pending != 0 && p.pending != heat:
		p.pending = twoHeats
	case loose:
		p.pending = heat
	}
}

// glazeSaid reports whether a glaze is among the layers on the pot.
func (s *search) glazeSaid() bool {
	for _, coat := range s.w.Already {
		if s.t.Media[coat.Medium].Kind == Glaze {
			return true
		}
	}
	return false
}

// finished reports whether nothing is left to do.
func (s *search) finished(p *pot) bool {
	return !s.poisoned && p.done == s.all() && p.state == s.last && p.pending == 0 && p.loose == 0 && (p.glazed || s.w.Bare)
}

// all are all acts of the wish.
func (s *search) all() set { return 1<<len(s.acts) - 1 }

// run looks for the cheapest way to a finished pot and returns its node, or -1,
// also where the bound on work was reached first.
// It closes each pot at its smallest cost; of equal costs the first found
// counts, which follows the order of the wish and of the table.
func (s *search) run() int32 {
	var h heap
	s.discover(&h, s.from, 0, -1, step{act: -1, move: -1})
	for len(h) > 0 {
		top := h.pop()
		if top.cost >= s.limit {
			return -1
		}
		at := top.node
		if s.reached[at].closed {
			continue
		}
		if *s.work++; s.spent() {
			return -1
		}
		s.reached[at].closed = true
		if s.finished(&s.reached[at].pot) {
			return at
		}
		s.steps = s.steps[:0]
		s.expand(s.reached[at].pot)
		for _, next := range s.steps {
			if at == 0 && s.begin >= 0 && !s.begins(&next) {
				continue
			}
			s.discover(&h, next.to, s.reached[at].cost+next.cost.in(s.order), at, next)
		}
	}
	return -1
}

// discover keeps a way to a pot where it is cheaper than those known, and queues it.
func (s *search) discover(h *heap, p pot, c cost, from int32, by step) {
	place := s.place(&p)
	i := s.index[place] - 1
	if i >= 0 && s.reached[i].cost <= c {
		return
	}
	still := s.estimate(&p)
	if still >= unreachable {
		return
	}
	if i < 0 {
		i = int32(len(s.reached))
		s.reached = append(s.reached, node{pot: p})
		s.index[place] = i + 1
		if 2*len(s.reached) > len(s.index) {
			s.grow()
		}
	}
	s.reached[i] = node{pot: p, cost: c, from: from, step: by}
	h.push(entry{c + still, i})
}

// path returns the steps from the start to a node.
func (s *search) path(at int32) []step {
	var back []step
	for ; s.reached[at].from >= 0; at = s.reached[at].from {
		back = append(back, s.reached[at].step)
	}
	for i, j := 0, len(back)-1; i < j; i, j = i+1, j-1 {
		back[i], back[j] = back[j], back[i]
	}
	return back
}

// sum adds up the costs of some steps.
func sum(steps []step) cost {
	c := cost(0)
	for i := range steps {
		c += steps[i].cost
	}
	return c
}
