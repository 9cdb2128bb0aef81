package shrinkage

// State is how far a clay is on its way from fresh to fired.
type State uint8

// The states that a shrinkage so far can be guessed for.
const (
	Fresh State = iota
	LeatherHard
	BoneDry
	Bisque
)

// gone is the part of its whole shrinkage, in twelfths, that a clay has behind
// it in each state. Common practice; a clay that shrinks 12 % has lost 3, 6 and
// 7 % of its fresh length.
var gone = [...]float64{Fresh: 0, LeatherHard: 3, BoneDry: 6, Bisque: 7}

// SoFar guesses what a clay that shrinks total (%) in all has shrunk in a
// state, in percent of the fresh length, and by how much the guess may be
// wrong either way. The doubt is our own estimate: a twelfth of the whole, for
// a firm clay and a stiff one are both called leather-hard. Fresh clay has
// none.
func SoFar(total float64, state State) (percent, doubt float64) {
	if state == Fresh {
		return 0, 0
	}
	return float64(total*gone[state]) / 12, total / 12
}
