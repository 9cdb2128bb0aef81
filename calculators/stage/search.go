package stage

// A plan is found as the cheapest path through the conditions a pot can be in.
// The table is the map: media and techniques with their rules are ways that
// put a layer on, transitions are ways that do not. Costs are sums of whole
// numbers in the order of preference, packed into one number so that one
// comparison decides: risky steps, then label questions, then firings, then
// how far each layer is from its medium's best state, then actions.

// cost is a packed sum, worst first.
type cost uint64

const (
	oneAction cost = 1
	oneAway   cost = 1 << 10
	oneFiring cost = 1 << 20
	oneLabel  cost = 1 << 28
	oneRisk   cost = 1 << 36
	mask10         = 1<<10 - 1
	mask8          = 1<<8 - 1
)

// Risky, Questions, Firings, Away and Actions unpack a cost.
func (c cost) risky() int     { return int(c >> 36) }
func (c cost) questions() int { return int(c >> 28 & mask8) }
func (c cost) firings() int   { return int(c >> 20 & mask8) }
func (c cost) away() int      { return int(c >> 10 & mask10) }
func (c cost) actions() int   { return int(c & mask10) }

// quick is the same cost for one who only wants to be done: actions count
// before everything. It finds the shorter, riskier way that a plan names.
func (c cost) quick() cost { return cost(c.actions())<<46 | c>>10 }

// pot is a condition of the pot.
type pot struct {
	state   uint8
	done    uint8 // layers that are on, by bit
	loose   uint8 // of them, those not yet fixed by a firing
	top     uint8 // the layer put on last, plus 1; 0 = none
	pending uint8 // heat of on-glaze that is on and not yet fired; 0 = none
	heat    uint8 // of the last on-glaze firing; 0 = none yet
	damp    bool  // unfired clay wetted by a layer since it last dried
	glazed  bool  // under a coat of glaze, fired or not
	green   bool  // the coat lies on unfired clay
	painted bool  // something lies on the unfired coat
	wished  bool  // a glaze of the wish is on, so that it is not washed off
}

// key packs a pot into a number, so that pots are found quickly.
func (p pot) key() uint64 {
	k := uint64(p.state)<<40 | uint64(p.done)<<32 | uint64(p.loose)<<24 | uint64(p.top)<<20 | uint64(p.pending)<<13 | uint64(p.heat)<<6
	for i, is := range [...]bool{p.damp, p.glazed, p.green, p.painted, p.wished} {
		if is {
			k |= 1 << i
		}
	}
	return k
}

// way is one step from a pot to the next.
type way struct {
	to    pot
	cost  cost
	layer int  // put on by this step; -1 = none, added = the glaze that nobody wished for
	move  int  // transition of the table; -1 = none
	other What // a step that is no transition of the table
	rules [3]*Rule
}

// added stands for the glaze that the planner adds by itself.
const added = MostLayers

// What names a step that the table has no row for.
type What uint8

const (
	nothing  What = iota
	dryAgain      // the clay was wetted and has to dry through before the fire
	onGlaze       // an on-glaze firing
)

// search is one question to the table.
type search struct {
	t      *Table
	w      Wish
	free   bool // the layers may lie in any order
	hurry  bool // actions count first
	blind  bool // look without the bound, and so at every pot that can be reached
	enough int  // in a hurry: a way with so many actions is no shorter
	glaze  int  // the medium added where a glaze is missing; -1 = there is none
	facts
	bound
	ways    []way // of the pot being looked at
	reached []node
	index   map[uint64]int32 // of reached, by pot.key
}

// facts are what the search asks of the table again and again.
type facts struct {
	coat  uint8    // the state of an unfired coat of glaze
	last  uint8    // the state of a finished pot
	raw   uint64   // states of clay that was never fired, by bit
	ready uint64   // states from which the bisque firing starts, by bit
	kinds [6]uint8 // layers of the wish by kind, by bit
	block bool     // a coat of unfired glaze stands in the way of the wish
	worn  bool     // the pot wears such a coat, and it does not stand in the way
}

// node is a pot that was reached, and how.
type node struct {
	pot  pot
	cost cost // in the order of the search
	from int32
	way  way
	shut bool
}

func (t *Table) newSearch(w Wish) *search {
	s := &search{t: t, w: w, glaze: t.clear()}
	s.index = make(map[uint64]int32, 32)
	s.reached = make([]node, 0, 32)
	s.coat, s.last = uint8(len(t.States)), uint8(len(t.States))
	for i := len(t.Transitions) - 1; i >= 0; i-- {
		s.note(&t.Transitions[i])
	}
	for i, layer := range w.Layers {
		s.kinds[t.Media[layer.Medium].Kind] |= 1 << i
	}
	s.block = s.coat < uint8(len(t.States)) && s.inTheWay()
	s.worn = uint8(w.State) == s.coat && !s.block
	s.bound = s.newBound()
	return s
}

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

// start is the pot as the student holds it.
func (s *search) start() pot {
	p := pot{state: uint8(s.w.State)}
	p.glazed = p.state == s.coat || p.state == s.last
	return p
}

// finished says whether nothing is left to do.
func (s *search) finished(p pot) bool {
	return p.done == s.all() && p.state == s.last && p.pending == 0 && p.loose == 0 && (p.glazed || s.w.Bare)
}

func (s *search) all() uint8 { return uint8(1<<len(s.w.Layers) - 1) }

// run looks for the cheapest way to a finished pot and gives its node, or -1.
// It shuts each pot at its smallest cost; of equal costs the first found
// counts, which follows the order of the wish and of the table.
func (s *search) run() int32 {
	var h heap
	s.reach(&h, s.start(), 0, -1, way{layer: -1, move: -1})
	for len(h) > 0 {
		top := h.pop()
		if s.hurry && int(top.cost>>46) >= s.enough {
			return -1
		}
		at := top.node
		if s.reached[at].shut {
			continue
		}
		s.reached[at].shut = true
		if s.finished(s.reached[at].pot) {
			return at
		}
		s.ways = s.ways[:0]
		s.look(s.reached[at].pot)
		for _, w := range s.ways {
			c := w.cost
			if s.hurry {
				c = c.quick()
			}
			s.reach(&h, w.to, s.reached[at].cost+c, at, w)
		}
	}
	return -1
}

func (s *search) reach(h *heap, p pot, c cost, from int32, w way) {
	key := p.key()
	i, known := s.index[key]
	if known && s.reached[i].cost <= c {
		return
	}
	left := s.left(p)
	if left >= never {
		return
	}
	if s.hurry {
		left = left.quick()
	}
	if !known {
		i = int32(len(s.reached))
		s.index[key] = i
		s.reached = append(s.reached, node{})
	}
	s.reached[i] = node{pot: p, cost: c, from: from, way: w}
	h.push(entry{c + left, i})
}

// steps gives the ways from the start to a node.
func (s *search) steps(at int32) []way {
	var back []way
	for ; s.reached[at].from >= 0; at = s.reached[at].from {
		back = append(back, s.reached[at].way)
	}
	for i, j := 0, len(back)-1; i < j; i, j = i+1, j-1 {
		back[i], back[j] = back[j], back[i]
	}
	return back
}

// entry is a node in the heap at the cost it had when it was put there, with
// the bound for the rest.
type entry struct {
	cost cost
	node int32
}

// heap is a binary heap of entries by cost; of equal costs the node that was
// reached first comes first.
type heap []entry

func (e entry) before(o entry) bool {
	return e.cost < o.cost || e.cost == o.cost && e.node < o.node
}

func (h *heap) push(e entry) {
	*h = append(*h, e)
	for i := len(*h) - 1; i > 0; {
		up := (i - 1) / 2
		if !(*h)[i].before((*h)[up]) {
			return
		}
		(*h)[i], (*h)[up] = (*h)[up], (*h)[i]
		i = up
	}
}

func (h *heap) pop() entry {
	top, end := (*h)[0], len(*h)-1
	(*h)[0] = (*h)[end]
	*h = (*h)[:end]
	for i := 0; ; {
		least := i
		for down := 2*i + 1; down <= 2*i+2 && down < end; down++ {
			if (*h)[down].before((*h)[least]) {
				least = down
			}
		}
		if least == i {
			return top
		}
		(*h)[i], (*h)[least] = (*h)[least], (*h)[i]
		i = least
	}
}
