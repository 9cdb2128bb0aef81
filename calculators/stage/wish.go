package stage

// MostLayers is the largest number of layers in a wish, and of layers that may
// be on the pot already.
const MostLayers = 8

// mostWays is how many ways of working one layer may have.
const mostWays = 4

// mostActs is how much a wish may hold in all: layers to lay on, and works.
const mostActs = 20

// Layer is one thing wanted on the pot: a medium with the ways of putting it on
// and of working it, or work on the clay itself.
type Layer struct {
	Medium int    // in the table; -1 = none: the ways work the clay itself
	Ways   []int  // techniques of the table in order; those that lay on come first
	Metal  string // the metals that were named with the medium, "cobalt and copper"; empty = none
}

// Coat is something that is on the pot already.
type Coat struct {
	Medium int    // in the table
	Loose  bool   // no firing has fixed it
	Metal  string // the metal that was named beside the medium; empty = none
}

// Wish is what a student asks for.
type Wish struct {
	State   int     // of the pot now
	Part    int     // of a state with parts: the part that it is in now, from 1; 0 = not said
	Already []Coat  // what is on the pot, the lowest first
	Layers  []Layer // in the order in which they shall lie, the lowest first
	Apart   bool    // each on a part of the pot of its own: they do not constrain each other
	Food    bool    // the pot will hold food or drink
	Bare    bool    // the pot ends without glaze
	Body    int     // in the table; -1 when not said
}

// act is one thing to do with hands: laying a layer on, or working it.
type act struct {
	layer int   // of the wish, from 0
	ways  []int // techniques: those that lay the coat on, or the one that works it
	first bool  // nothing of its layer comes before it
	last  bool  // nothing of its layer comes after it
	takes bool  // it takes away from the coat of its layer
	bare  bool  // it works the clay itself
}

// acts parts the layers of a wish into what hands do, one after the other.
func (t *Table) acts(layers []Layer) []act {
	var acts []act
	for i, layer := range layers {
		from := len(acts)
		lay := act{layer: i}
		var works []act
		for _, q := range layer.Ways {
			switch {
			case layer.Medium < 0:
				works = append(works, act{layer: i, ways: []int{q}, bare: true})
			case t.Techniques[q].Takes:
				works = append(works, act{layer: i, ways: []int{q}, takes: true})
			default:
				lay.ways = append(lay.ways, q)
			}
		}
		if layer.Medium >= 0 {
			acts = append(acts, lay)
		}
		acts = append(acts, works...)
		acts[from].first, acts[len(acts)-1].last = true, true
	}
	return acts
}

// upTo is a wish with its first n layers only.
func (w Wish) upTo(n int) Wish {
	w.Layers = w.Layers[:n]
	return w
}

// with is a wish with layers of its own.
func (w Wish) with(layers []Layer) Wish {
	w.Layers = layers
	return w
}

// decorates reports whether some layer is more than a glaze.
func (t *Table) decorates(layers []Layer) bool {
	for _, layer := range layers {
		if layer.Medium < 0 || t.Media[layer.Medium].Kind != Glaze && t.Media[layer.Medium].Kind != Resist {
			return true
		}
	}
	return false
}

// FindState finds a state by its id, or a part of one by the ids of both, as in
// "soft-leather-hard". part counts from 1, and is 0 where none was named; state
// is -1 where the table has no such state.
func (t *Table) FindState(id string) (state, part int) {
	for i, s := range t.States {
		if s.ID == id {
			return i, 0
		}
		for j, p := range s.Parts {
			if p.ID+"-"+s.ID == id {
				return i, j + 1
			}
		}
	}
	return -1, 0
}
