package oracle

import (
	"slices"
	"strings"

	"slipbook/calculators/stage"
)

// The states of clay that the rules call by name.
const (
	wet          = "wet"
	leatherHard  = "leather-hard"
	boneDry      = "bone-dry"
	bisque       = "bisque"
	unfiredGlaze = "unfired-glaze"
	glazeFired   = "glaze-fired"
)

// how a coat is on the pot.
type how uint8

const (
	absent how = iota
	loose
	unfired // of a glaze: not loose, and not fired
	fixed
)

// coat is one place for a coat on the pot: what was there already, each layer
// of the wish, and the glaze that is added.
type coat struct {
	how     how
	covered bool // by a glaze
}

// places are enough for all coats that a pot may have.
const places = 2*stage.MostLayers + 1

// condition is all that matters of a pot.
type condition struct {
	state  int
	part   int // of the state; 0 where it has none
	damp   bool
	raw    bool // the clay has never been fired
	glazed bool // it wears a coat of glaze, fired or not
	done   uint32
	heat   int // of the last on-glaze firing; 0 = none
	rubber rubber
	coats  [places]coat
}

// rubber is whether a resist is on the pot that has to be peeled off (rule 5).
type rubber uint8

const (
	none rubber = iota
	open
	under // another coat has gone on over it
)

// peels reports whether a medium is such a resist.
func peels(m *stage.Medium) bool { return m.Kind == stage.Resist && m.Fixed == stage.Peeled }

// more is how the resist is after a medium has gone on.
func (r rubber) more(m *stage.Medium) rubber {
	switch {
	case peels(m):
		return open
	case r == none:
		return none
	}
	return under
}

// deed is one act of a wish: laying on (ways that lay), taking away or working
// the clay itself (one way each).
type deed struct {
	layer int
	ways  []int
	takes bool
	bare  bool
}

// job is one wish on one table.
type job struct {
	t     *stage.Table
	w     stage.Wish
	deeds []deed
	added int // the medium of the glaze that may be added; -1 = none may
	order Order
	begin int // the layer to begin with; -1 = any
}

func newJob(t *stage.Table, w stage.Wish) *job {
	j := &job{t: t, w: w, added: -1, begin: -1}
	glazed := w.Bare
	for i, layer := range w.Layers {
		j.addDeeds(i, layer)
		glazed = glazed || layer.Medium >= 0 && t.Media[layer.Medium].Kind == stage.Glaze
	}
	for i := len(t.Media) - 1; i >= 0 && !glazed; i-- {
		if t.Media[i].Kind == stage.Glaze && !t.Media[i].Hides {
			j.added = i
		}
	}
	return j
}

// addDeeds parts a layer into acts (rule 1).
func (j *job) addDeeds(i int, layer stage.Layer) {
	if layer.Medium < 0 {
		for _, q := range layer.Ways {
			j.deeds = append(j.deeds, deed{layer: i, ways: []int{q}, bare: true})
		}
		return
	}
	lay := deed{layer: i}
	for _, q := range layer.Ways {
		if !j.t.Techniques[q].Takes {
			lay.ways = append(lay.ways, q)
		}
	}
	j.deeds = append(j.deeds, lay)
	for _, q := range layer.Ways {
		if j.t.Techniques[q].Takes {
			j.deeds = append(j.deeds, deed{layer: i, ways: []int{q}, takes: true})
		}
	}
}

// is reports whether a state is the one of a name.
func (j *job) is(state int, names ...string) bool {
	for _, name := range names {
		if j.t.States[state].ID == name {
			return true
		}
	}
	return false
}

// medium is what lies in a place for coats.
func (j *job) medium(place int) *stage.Medium {
	switch {
	case place < len(j.w.Already):
		return &j.t.Media[j.w.Already[place].Medium]
	case place < len(j.w.Already)+len(j.w.Layers):
		return &j.t.Media[j.w.Layers[place-len(j.w.Already)].Medium]
	}
	return &j.t.Media[j.added]
}

// place is where the coat of a layer lies; the layer after the last is the
// glaze that is added.
func (j *job) place(layer int) int { return len(j.w.Already) + layer }

// start is the pot as it is. A part that was not said counts as the first
// where some act wants it, and as the second otherwise (rule 4).
func (j *job) start() condition {
	c := condition{
		state:  j.w.State,
		raw:    j.is(j.w.State, wet, leatherHard, boneDry),
		glazed: j.is(j.w.State, unfiredGlaze, glazeFired),
	}
	named := false
	for i, a := range j.w.Already {
		switch {
		case a.Loose:
			c.coats[i].how = loose
		case j.t.Media[a.Medium].Kind != stage.Resist: // which is burned off
			c.coats[i].how = fixed
		}
		if m := &j.t.Media[a.Medium]; a.Loose || !peels(m) {
			c.rubber = c.rubber.more(m)
		}
		if m := j.t.Media[a.Medium]; m.Kind == stage.OnGlaze && !a.Loose && (c.heat == 0 || m.Heat < c.heat) {
			c.heat = m.Heat
		}
		if j.t.Media[a.Medium].Kind == stage.Glaze {
			named = true
			j.cover(&c, i)
			c.coats[i].how = fixed
			if j.is(c.state, unfiredGlaze) {
				c.coats[i].how = unfired
			}
		}
	}
	if j.is(c.state, unfiredGlaze) && !named {
		if c.rubber == open {
			c.rubber = under
		}
		j.cover(&c, len(j.w.Already))
	}
	if len(j.t.States[c.state].Parts) > 0 {
		c.part = j.w.Part
		if c.part == 0 && j.wanted(c.state)[1] {
			c.part = 1
		} else if c.part == 0 {
			c.part = 2
		}
	}
	return c
}

// cover puts a glaze over all coats before a place that are not resists.
func (j *job) cover(c *condition, before int) {
	for i := range before {
		if c.coats[i].how != absent && j.medium(i).Kind != stage.Resist {
			c.coats[i].covered = true
		}
	}
}

// wanted are the parts of a state that some act of the wish wants.
func (j *job) wanted(state int) map[int]bool {
	parts := map[int]bool{}
	for _, d := range j.deeds {
		if !d.takes && !d.bare {
			parts[int(j.mediumRule(j.w.Layers[d.layer].Medium, state).Part)] = true
		}
		for _, q := range d.ways {
			parts[int(j.way(q, d, state).Part)] = true
		}
	}
	return parts
}

// inedible reports whether a metal was named that is never for food (rule 2).
func (j *job) inedible() bool {
	named := ""
	for _, a := range j.w.Already {
		named += " " + a.Metal
	}
	for _, l := range j.w.Layers {
		named += " " + l.Metal
	}
	return slices.ContainsFunc(strings.Fields(named), func(word string) bool { return slices.Contains(j.t.Metals.NeverFood, word) })
}

// finished reports whether the wish is there: all acts done, nothing loose, the
// last firing over.
func (j *job) finished(c condition) bool {
	if c.done != 1<<len(j.deeds)-1 || !j.is(c.state, glazeFired) || j.w.Food && j.inedible() {
		return false
	}
	for _, k := range c.coats {
		if k.how == loose || k.how == unfired {
			return false
		}
	}
	return true
}
