package catalog

import "slipbook/calculators/shrinkage"

// The question after the state of a pot, which guesses what it has shrunk so far
// by what its clay shrinks in all.
const potIsNow = "The pot is now"

var potStates = []Choice{{"wet", "Fresh"}, {"leather-hard", "Leather-hard"}, {"bone-dry", "Bone dry"}, {"bisque", "Bisque"}}

// saidLoss are other words for these states. How stiff leather-hard clay is
// makes no difference to the guess: it lies within its doubt.
var saidLoss = []Said{
	{"leatherhard", "leather-hard", ""}, {"soft leather-hard", "leather-hard", ""}, {"firm leather-hard", "leather-hard", ""}, {"stiff leather-hard", "leather-hard", ""}, {"cheese-hard", "leather-hard", ""},
	{"plastic", "wet", ""}, {"bonedry", "bone-dry", ""}, {"dry", "bone-dry", ""}, {"biscuit", "bisque", ""}, {"bisqued", "bisque", ""},
	{"greenware", "", "Greenware is any clay that was not fired. Say leather-hard if it is cool and dark, bone dry if it is pale all over."},
}

// The question after what a pot has shrunk so far, as bars tell it.
const (
	shrunkSoFar     = "Shrunk so far, if you measured it"
	shrunkSoFarHelp = "Of the fresh length, read off the same bars today. It counts before the state."
)

// noClay is the end of every shrinkage.
var noClay = Limit{UpTo, 50, "No clay shrinks by more than half. Give percent, for example 12."}

// barsDoubt is how sure (%, ±) a loss is that was measured on bars while they
// were soft: half a millimetre in 100.
const barsDoubt = 0.5

// soFar gives what the pot has shrunk so far, in percent of the fresh length,
// and how wrong that may be. What was measured counts before what the state
// makes likely; with neither the clay is fresh. More than the clay shrinks in
// all is refused.
func (b *bench) soFar(total float64, measured string) (percent, doubt float64) {
	if !b.has(measured) {
		percent, doubt = shrinkage.SoFar(total, b.potState())
		if percent > 0 {
			b.note("The state counts as {} shrunk so far, {} of what this clay shrinks in all, and it may be {} more or less. That is common practice; to know, measure your bars again at this state.",
				withUnit(b.text(percent, 2), "%"), partGone(b.potState()), withUnit(b.text(doubt, 2), "%"))
		}
		return percent, doubt
	}
	percent = b.value(measured)
	if percent > total {
		b.refuse(measured, "The clay cannot have shrunk {} already when it shrinks {} in all. Both are counted on the fresh length.",
			withUnit(b.text(percent, 4), "%"), withUnit(b.text(total, 4), "%"))
	}
	return percent, barsDoubt
}

// potState gives the state that was chosen; fresh when none was.
func (b *bench) potState() shrinkage.State {
	switch b.word("state") {
	case "leather-hard":
		return shrinkage.LeatherHard
	case "bone-dry":
		return shrinkage.BoneDry
	case "bisque":
		return shrinkage.Bisque
	}
	return shrinkage.Fresh
}

// partGone words the part of its whole shrinkage that a clay has behind it.
func partGone(state shrinkage.State) string {
	switch state {
	case shrinkage.LeatherHard:
		return "a quarter"
	case shrinkage.BoneDry:
		return "half"
	}
	return "seven twelfths"
}

// doubtPercent asks about a percentage that looks like a part of the whole:
// 0.12 where 12 is meant.
func (b *bench) doubtPercent(name string) {
	if v := b.value(name); v > 0 && v < 1 {
		b.note("{} is less than 1\u00a0%. Did you mean {}?", b.shown(name), withUnit(b.text(float64(100*v), 4), "%"))
	}
}
