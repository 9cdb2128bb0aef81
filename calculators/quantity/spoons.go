package quantity

// spoon is a spoon that people measure with. None is a unit here: they are
// refused with what to do instead.
type spoon struct {
	name  string
	typed string  // folded, parted by bars
	size  float64 // mL, level, of a measuring spoon; 0 where it has no fixed size
}

// Common practice: 5 and 15 mL are what measuring spoons are sold as. Spoons
// of other sizes exist, which is one more reason to write mL.
var spoons = []spoon{
	{"teaspoon", "tsp|tsps|teaspoon|teaspoons", 5},
	{"tablespoon", "tbsp|tbsps|tbs|tablespoon|tablespoons", 15},
	{"spoon", "spoon|spoons|spoonful|spoonfuls", 0},
}

// spoonOf understands a folded word as a spoon, or gives nil.
func spoonOf(word string) *spoon {
	for i := range spoons {
		if s := &spoons[i]; among(s.typed, word) {
			return s
		}
	}
	return nil
}

// spoon refuses a spoon with the reason that counts in this box.
func (b *box) spoon(s *spoon, n *amount) error {
	switch {
	case b.kind == Mass:
		return roomNotWeight("spoon")
	case b.kind != Volume:
		return b.wrongKind("A spoon", Volume)
	case s.size == 0:
		return refuse("Spoons differ in size. Measure it in mL, for example 15 mL.")
	}
	return refuse("Spoons differ in size. A level measuring $ holds about $ mL: for $ write $ mL.",
		s.name, plainText(s.size, 2, b.style), n.text, plainText(float64(n.value*s.size), 4, b.style))
}

// roomNotWeight says why powder is weighed.
func roomNotWeight(vessel string) error {
	return refuse("A $ measures room, not weight. The same $ of a fluffy and a packed powder can differ by half. Weigh it.", vessel, vessel)
}
