package stage

// cost is what a way to a pot costs: numbers in the order of preference, packed
// into one, so that one comparison decides. The order is the studio's: first
// what is undone on the pot, then risky steps, questions, firings, how far each
// layer is from the state that it likes best, and actions.
type cost uint64

const (
	oneAction   cost = 1
	oneAway     cost = 1 << 10
	oneFiring   cost = 1 << 20
	oneQuestion cost = 1 << 28
	oneRisk     cost = 1 << 36
	oneUndone   cost = 1 << 44

	mask10 = 1<<10 - 1
	mask8  = 1<<8 - 1

	// unreachable is a cost that no plan has. A sum of one for each act of a
	// wish, and some more, still fits.
	unreachable = cost(1) << 52
)

func (c cost) undone() int    { return int(c >> 44 & mask8) }
func (c cost) risky() int     { return int(c >> 36 & mask8) }
func (c cost) questions() int { return int(c >> 28 & mask8) }
func (c cost) firings() int   { return int(c >> 20 & mask8) }
func (c cost) away() int      { return int(c >> 10 & mask10) }
func (c cost) actions() int   { return int(c & mask10) }

// order is an order of preference other than the studio's.
type order uint8

const (
	safest   order = iota // the studio's
	shortest              // actions first, but nothing is undone for it
	coolest               // firings first, but nothing is undone for it
)

// in packs a cost in another order of preference.
func (c cost) in(o order) cost {
	undone := cost(c.undone()) << 44
	switch o {
	case shortest:
		return undone | cost(c.actions())<<34 | (c&(oneUndone-1))>>10
	case coolest:
		return undone | cost(c.firings())<<36 | cost(c.risky())<<28 | cost(c.questions())<<20 | c&(oneFiring-1)
	}
	return c
}

// price is what a rule adds to the cost of its step beside its risk: each
// question to the label or to the student is one.
func (r *Rule) price() cost {
	if r.Verdict == Label || r.Ask != "" {
		return oneQuestion
	}
	return 0
}

// price is what the rules of a step add to its cost.
func price(rules []ground) cost {
	c := cost(0)
	for _, r := range rules {
		c += r.price()
	}
	if worst(rules) == Risky {
		c += oneRisk
	}
	return c
}

// worst is the worst verdict of some rules.
func worst(rules []ground) Verdict {
	w := Yes
	for _, r := range rules {
		w = max(w, r.Verdict)
	}
	return w
}
