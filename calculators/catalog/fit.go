package catalog

import (
	"math"

	"slipbook/calculators/quantity"
	"slipbook/calculators/shrinkage"
)

var slipFit = &Calculator{
	Name:    "slip-fit",
	Title:   "Will this slip stay on?",
	Purpose: "Compares what a slip shrinks with what the pot has left to shrink, and says whether it will stay on.",
	Inputs: []Input{
		{Name: "body", Label: "The clay of the pot shrinks in all", Help: "From fresh to fired, from your own test bars.", Kind: quantity.Percent, Needed: true, Group: "clay", Finds: "shrinkage-test", First: true, Low: Limit{From, 0, ""}, High: noClay},
		{Name: "clay", Label: clayOf, Help: clayOfHelp, Kind: quantity.Number, Needed: true, Group: "clay", First: true, Bodies: true},
		{Name: "state", Label: potIsNow, Help: "Each state counts as a part of what the clay shrinks in all.", Kind: quantity.Number, First: true, Choices: potStates, Said: saidLoss},
		{Name: "body-so-far", Label: shrunkSoFar, Help: shrunkSoFarHelp, Kind: quantity.Percent, First: true, Low: Limit{From, 0, ""}, High: noClay},
		{Name: "slip", Label: "The slip shrinks in all", Help: "From bars of it, made of slip stiffened on plaster until it can be rolled.", Kind: quantity.Percent, Needed: true, Finds: "shrinkage-test", First: true, Low: Limit{From, 0, ""}, High: noClay},
		{Name: "bars-ci", Label: "Your bars are sure to within, ±", Help: "As the sum of the test bars says. 0.75 is what three good bars give.", Kind: quantity.Percent, Default: "0.75", Low: Limit{From, 0, ""}, High: Limit{UpTo, 20, ""}},
	},
	Outputs: []Output{
		{Name: "verdict", Label: "The slip", Unit: "1", Text: true},
		{Name: "mismatch", Label: "It ends too short by (with a minus: too long)", Unit: "%", Digits: 2},
		{Name: "mismatch-ci", Label: "That is sure to within, ±", Unit: "%", Digits: 2},
		{Name: "remaining", Label: "The pot has left to shrink", Unit: "%", Digits: 3},
	},
	Notes: []string{
		"This counts drying and firing. How slip and pot shrink in cooling is another matter, and shows on a test tile only.",
		"The bands are our own guess for a thin coat: from 1 too long to 4.5 too short fits, up to 6 is risky, over 6 peels. Put your own in their place: write on each tile what the sum said and whether the slip held. A thick trailed line peels sooner.",
	},
	MayHurt: []string{dryPowder}, // of another slip that it advises
	Next: []Next{
		{Words: "Plan the layers on this pot", Calculator: "stage-plan", Carry: []Carry{{"state", "state"}}},
	},
	Example: Example{
		Case:  "A slip made of the body itself goes on a leather-hard mug; both shrink 12 % in all.",
		Given: []Setting{{"body", "12"}, {"state", "leather-hard"}, {"slip", "12"}},
	},
	Table: Table{
		Caption: "A clay that shrinks 12 % in all: the slip ends too short by, %",
		Down:    "state", Values: []string{"Fresh", "Leather-hard", "Bone dry", "Bisque"},
		Across: "slip", AcrossValues: []string{"6 %", "8 %", "9.5 %", "11 %", "12 %", "13 %", "14 %"},
		Show: []string{"mismatch"},
	},
	work: workFit,
	draw: drawFit,
}

// fitWords are the verdicts.
var fitWords = [...]string{
	shrinkage.Lifts: "may lift or shiver",
	shrinkage.Fits:  "usually fits, in a thin coat",
	shrinkage.Risks: "is risky",
	shrinkage.Peels: "peels",
}

func workFit(b *bench) {
	b.shrinks("body", "clay")
	if !b.has("state") && !b.has("body-so-far") {
		b.refuse("state", "Give one of these: what the pot is now, or what it has shrunk so far.")
		return
	}
	total, slip, bars := b.value("body"), b.value("slip"), b.value("bars-ci")
	b.doubtPercent("body")
	b.doubtPercent("slip")
	sofar, doubt := b.soFar(total, "body-so-far")
	if b.refused() {
		return
	}
	remaining := shrinkage.Remaining(total, sofar)
	mismatch := shrinkage.Mismatch(remaining, slip)
	off := shrinkage.MismatchDoubt(total, sofar, slip, bars, doubt, bars)
	fit := shrinkage.Judge(mismatch)
	b.tell("verdict", fitWords[fit])
	b.set("mismatch", mismatch)
	b.show("mismatch", withUnit(b.tenth(mismatch)+" ± "+b.tenth(off), "%"))
	b.set("mismatch-ci", off)
	b.set("remaining", remaining)
	b.headline("This slip would end {}, give or take {mismatch-ci}: our guess is that it {verdict}.", b.endsBy(mismatch))
	b.sayFit(fit, shrinkage.Judge(mismatch-off), shrinkage.Judge(mismatch+off))
}

// tenth writes a percentage to the tenth: nobody can measure finer.
func (b *bench) tenth(percent float64) string {
	return quantity.FormatTo(percent, 0.1, quantity.Nearest, b.settings.Style)
}

// endsBy words a mismatch (%).
func (b *bench) endsBy(mismatch float64) string {
	size := b.tenth(math.Abs(mismatch))
	switch {
	case math.Abs(mismatch) < 0.05:
		return "as long as the pot"
	case mismatch < 0:
		return withUnit(size, "%") + " too long"
	}
	return withUnit(size, "%") + " too short"
}

// sayFit says what to do, and what else the slip may do within the doubt.
func (b *bench) sayFit(fit, low, high shrinkage.Fit) {
	if low != high {
		b.note("Within that doubt it reaches from “{}” to “{}”. No sum can tell these apart: fire a tile.", fitWords[low], fitWords[high])
	}
	if fit != shrinkage.Fits {
		b.warn(dryPowder)
	}
	switch fit {
	case shrinkage.Lifts:
		b.note("A slip that shrinks less is pushed off by the pot: use one with more ball clay in it, or wait until the pot is drier.")
	case shrinkage.Risks, shrinkage.Peels:
		b.note("Put it on earlier, while the pot has more to shrink, and thinner; or let calcined clay stand in for part of the clay in the slip.")
	}
	if b.potState() == shrinkage.Bisque {
		b.note("No sum makes an ordinary slip hold on bisque: it does not bond to fired clay. Only an engobe made for bisque does.")
	}
}
