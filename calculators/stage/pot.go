package stage

// set is a set of acts or of layers, by bit.
type set uint32

func (s set) has(i int) bool { return s>>i&1 == 1 }

// pot is a condition of the pot. Layers are those on it already, from bit 0,
// and after them those of the wish.
type pot struct {
	done    set // acts that are done
	loose   set // layers that no firing has fixed
	open    set // layers on the pot, loose or fired, that no coat of glaze covers
	state   uint8
	part    uint8 // of a state with parts, from 0
	pending uint8 // heat of on-glaze that is on and not yet fired; 0 = none, or twoHeats
	heat    uint8 // of the last on-glaze firing; 0 = none yet
	damp    bool  // something wet went on since it last dried
	glazed  bool  // under a coat of glaze, fired or not
	green   bool  // the coat lies on unfired clay
	skin    skin  // whether a resist that is peeled off is on it
}

// skin is how far a resist is that is peeled off.
type skin uint8

const (
	noSkin   skin = iota
	openSkin      // nothing lies over it yet
	wornOver      // a coat does: it comes off while that is damp
)

// twoHeats is the heat of on-glaze colours that no one firing suits.
const twoHeats = 255

// under is what becomes of it once a medium is on; one that is peeled may be
// gone already.
func (k skin) under(m *Medium, there bool) skin {
	switch {
	case !m.peels():
		return k.worn()
	case there:
		return openSkin
	}
	return k
}

// worn is what becomes of it under a coat.
func (k skin) worn() skin {
	if k == openSkin {
		return wornOver
	}
	return k
}

// step is one way from a pot to the next.
type step struct {
	to    pot
	cost  cost
	act   int      // of the wish, done by this step; -1 = none
	move  int      // transition of the table; -1 = none
	extra extra    // a step that is neither
	rules []ground // what it rests on
}

// fires reports whether a step is a firing.
func (s *search) fires(next *step) bool {
	return next.extra == onGlazeFire || next.move >= 0 && s.t.Transitions[next.move].Move.fires()
}

// fires reports whether a move is a firing.
func (m Move) fires() bool { return m == Bisque || m == Harden || m == Fire }

// extra names a step that is neither an act of the wish nor a transition.
type extra uint8

const (
	nothing     extra = iota
	addGlaze          // the glaze that nobody wished for but the pot needs
	dryAgain          // something wet went on: it dries before the next coat of glaze, and before the fire
	stiffen           // the clay passes into a later part of its state
	onGlazeFire       // an on-glaze firing
	peelOff           // a resist comes off by hand
)
