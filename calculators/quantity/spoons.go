package quantity

import "slipbook/calculators/letters"

// spoon is a spoon that people measure liquids with. No chooser offers spoons:
// they are read where they are typed, and the answer says what they were read
// as. Powder by the spoon is refused.
type spoon struct {
	typed      string // folded, separated by bars
	us, metric *Unit  // nil where it has no fixed size
}

// A US tablespoon is half a US fluid ounce and a teaspoon a third of it. The
// metric ones, common practice, are what measuring spoons are sold as outside
// the US; the Australian tablespoon of 20 mL is the known exception.
var spoons = []spoon{
	{"tsp|tsps|teaspoon|teaspoons", &Unit{ID: "US teaspoon", Kind: Volume, Factor: usGallon / 768}, &Unit{ID: "metric teaspoon", Kind: Volume, Factor: 5}},
	{"tbsp|tbsps|tbs|tablespoon|tablespoons", &Unit{ID: "US tablespoon", Kind: Volume, Factor: usGallon / 256}, &Unit{ID: "metric tablespoon", Kind: Volume, Factor: 15}},
	{"spoon|spoons|spoonful|spoonfuls", nil, nil},
}

// spoonOf understands a folded word as a spoon, with what stands before it ("a
// heaped "), or returns nil.
func spoonOf(word string) (s *spoon, before string) {
	cut := letters.LastIndexByte(word, ' ') + 1
	for i := range spoons {
		if s := &spoons[i]; among(s.typed, word[cut:]) {
			return s, word[:cut]
		}
	}
	return nil, ""
}

// spoon returns the unit that is meant, a metric spoon unless the course or the
// word says US, or refuses it with the reason that counts in this box.
func (b *box) spoon(s *spoon, before string) (*Unit, error) {
	u := s.metric
	if b.style.Measures == "us" {
		u = s.us
	}
	switch before {
	case "", "level ":
	case "us ", "american ":
		u = s.us
	case "metric ":
		u = s.metric
	default: // heaped, or of another country
		u = nil
	}
	switch {
	case b.kind == Mass:
		return nil, b.roomNotWeight("spoon")
	case b.kind != Volume:
		return nil, b.wrongKind(b.style.say("spoon"), Volume)
	case u == nil:
		return nil, b.refuse("spoons-differ")
	}
	return u, nil
}

// roomNotWeight says why powder is weighed.
func (b *box) roomNotWeight(vessel string) error {
	return b.refuse("room-not-weight", "vessel", b.style.say("measure."+vessel+".one"))
}
