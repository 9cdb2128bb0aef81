package catalog

import (
	"math"

	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/shrinkage"
	"slipbook/calculators/sketch"
)

var slipFit = &form.Calculator{
	Name:    "slip-fit",
	Title:   "Will this slip stay on?",
	Purpose: "Compares what a slip shrinks with what the pot has left to shrink, and says whether it will stay on.",
	Inputs: []form.Input{
		{Name: "body", Label: "The clay of the pot shrinks in all", Help: "From fresh to fired, from your own test bars.", Kind: quantity.Percent, Needed: true, Group: "clay", Finds: "shrinkage-test", First: true, Low: form.Limit{End: form.From}, High: noClay},
		{Name: "clay", Label: clayOf, Help: clayOfHelp, Kind: quantity.Number, Needed: true, Group: "clay", First: true, Bodies: true},
		{Name: "state", Label: potIsNow, Help: "Each state counts as a part of what the clay shrinks in all.", Kind: quantity.Number, First: true, Choices: potStates, Said: saidLoss},
		{Name: "body-so-far", Label: shrunkSoFar, Help: shrunkSoFarHelp, Kind: quantity.Percent, First: true, Low: form.Limit{End: form.From}, High: noClay},
		{Name: "slip", Label: "The slip shrinks in all", Help: "From bars of it, made of slip stiffened on plaster until it can be rolled.", Kind: quantity.Percent, Needed: true, Finds: "shrinkage-test", First: true, Low: form.Limit{End: form.From}, High: noClay},
		{Name: "bars-ci", Label: "Your bars are sure to within, ±", Help: "As the sum of the test bars says. 0.75 is what three good bars give.", Kind: quantity.Percent, Default: "0.75", Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 20}},
	},
	Outputs: []form.Output{
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
	Next: []form.Next{
		{Words: "Plan the layers on this pot", Calculator: "stage-plan", Carry: []form.Carry{{Into: "state", From: "state"}}},
	},
	Work: workFit,
	Draw: drawFit,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		slipFit.Example = form.Example{
			Case:  "A slip made of the body itself goes on a leather-hard mug; both shrink 12 % in all.",
			Given: []form.Setting{{Name: "body", Text: "12"}, {Name: "state", Text: "leather-hard"}, {Name: "slip", Text: "12"}},
		}
		slipFit.Table = form.Table{
			Caption: "A clay that shrinks 12 % in all: the slip ends too short by, %",
			Down:    "state", Values: []string{"Fresh", "Leather-hard", "Bone dry", "Bisque"},
			Across: "slip", AcrossValues: []string{"6 %", "8 %", "9.5 %", "11 %", "12 %", "13 %", "14 %"},
			Show: []string{"mismatch"},
		}
		slipFit.Formulas = fitFormulas
	}
}

// fitWords are the verdicts.
var fitWords = [...]string{
	shrinkage.Lifts: "may lift or shiver",
	shrinkage.Fits:  "usually fits, in a thin coat",
	shrinkage.Risks: "is risky",
	shrinkage.Peels: "peels",
}

func workFit(e *form.Evaluation) {
	shrinks(e, "body", "clay")
	if !e.Has("state") && !e.Has("body-so-far") {
		e.Refuse("state", "Give one of these: what the pot is now, or what it has shrunk so far.")
		return
	}
	total, slip, bars := e.Value("body"), e.Value("slip"), e.Value("bars-ci")
	doubtPercent(e, "body")
	doubtPercent(e, "slip")
	sofar, doubt := soFar(e, total, "body-so-far")
	if e.Refused() {
		return
	}
	remaining := shrinkage.Remaining(total, sofar)
	mismatch := shrinkage.Mismatch(remaining, slip)
	off := shrinkage.MismatchDoubt(total, sofar, slip, bars, doubt, bars)
	fit := shrinkage.Judge(mismatch)
	e.Tell("verdict", fitWords[fit])
	e.Set("mismatch", mismatch)
	e.Show("mismatch", form.WithUnit(tenth(e, mismatch)+" ± "+tenth(e, off), "%"))
	e.Set("mismatch-ci", off)
	e.Set("remaining", remaining)
	e.Headline("This slip would end {}, give or take {mismatch-ci}: our guess is that it {verdict}.", endsBy(e, mismatch))
	sayFit(e, fit, shrinkage.Judge(mismatch-off), shrinkage.Judge(mismatch+off))
}

// tenth writes a percentage to the tenth: nobody can measure finer.
func tenth(e *form.Evaluation, percent float64) string {
	return quantity.FormatTo(percent, 0.1, quantity.Nearest, e.Settings.Style)
}

// endsBy words a mismatch (%).
func endsBy(e *form.Evaluation, mismatch float64) string {
	size := tenth(e, math.Abs(mismatch))
	switch {
	case math.Abs(mismatch) < 0.05:
		return "as long as the pot"
	case mismatch < 0:
		return form.WithUnit(size, "%") + " too long"
	}
	return form.WithUnit(size, "%") + " too short"
}

// sayFit says what to do, and what else the slip may do within the doubt.
func sayFit(e *form.Evaluation, fit, low, high shrinkage.Fit) {
	if low != high {
		e.Note("Within that doubt it reaches from “{}” to “{}”. No sum can tell these apart: fire a tile.", fitWords[low], fitWords[high])
	}
	if fit != shrinkage.Fits {
		e.Warn(dryPowder)
	}
	switch fit {
	case shrinkage.Lifts:
		e.Note("A slip that shrinks less is pushed off by the pot: use one with more ball clay in it, or wait until the pot is drier.")
	case shrinkage.Risks, shrinkage.Peels:
		e.Note("Put it on earlier, while the pot has more to shrink, and thinner; or let calcined clay stand in for part of the clay in the slip.")
	}
	if potState(e) == shrinkage.Bisque {
		e.Note("No sum makes an ordinary slip hold on bisque: it does not bond to fired clay. Only an engobe made for bisque does.")
	}
}

// drawFit shows how long pot and slip would end, laid side by side at one
// scale. A slip that holds is stretched or pressed to the pot's length.
func drawFit(e *form.Evaluation) string {
	mismatch, _ := e.Result("mismatch")
	d := sheet(e, "How long the pot and, by itself, the slip on it would end. {}", e.Answer.Headline)
	pot, slip := 440.0, 440/(1+mismatch.Value/100)
	if slip > pot {
		pot, slip = 440*pot/slip, 440
	}
	for i, bar := range []struct {
		class, words string
		length       float64
	}{{"slip", "slip", slip}, {"clay", "pot", pot}} {
		y := 70 + float64(float64(i)*90)
		d.Box(bar.class, 30, y, bar.length, 80)
		d.Box("ink", 30, y, bar.length, 80)
		d.Words(bar.words, 490, y+50, sketch.TextSize, "start")
	}
	d.Line("ghost", 30+pot, 40, 30+pot, 270)
	d.Line("ghost", 30+slip, 40, 30+slip, 270)
	return d.String()
}

func fitFormulas() []Formula {
	return []Formula{
		{
			Math: Equal(Letter("R"), Row(Hundred, Times, Bracket(One, Minus, Fraction(Row(One, Minus, Fraction(Letter("S"), Hundred)), Row(One, Minus, Fraction(Letter("A"), Hundred)))))),
			Where: []Symbol{
				{Letter: "R", Means: "what the pot has left to shrink, % of its size now"},
				{Letter: "S", Means: "shrinkage of its clay in all, % of the fresh length"},
				{Letter: "A", Means: soFarMeans},
			},
		},
		{
			Math: Equal(Words("too short by"), Row(Hundred, Times, Bracket(Fraction(Row(One, Minus, Fraction(Letter("R"), Hundred)), Row(One, Minus, Fraction(Letter("T"), Hundred))), Minus, One))),
			Where: []Symbol{
				{Letter: "T", Means: "shrinkage of the slip in all, %; the answer is in percent too"},
			},
		},
		{
			Math: Equal(Words("give or take"), Row(Hundred, Times, Fraction(Row(One, Minus, Fraction(Letter("R"), Hundred)), Row(One, Minus, Fraction(Letter("T"), Hundred))), Times, Root(Row(
				Power(Bracket(Fraction(Letter("b"), Row(Hundred, Minus, Letter("S")))), Number("2")), Plus,
				Power(Bracket(Fraction(Letter("a"), Row(Hundred, Minus, Letter("A")))), Number("2")), Plus,
				Power(Bracket(Fraction(Letter("b"), Row(Hundred, Minus, Letter("T")))), Number("2")))))),
			Where: []Symbol{
				{Letter: "b", Means: "what the bars are sure to within, %"},
				{Letter: "a", Means: "what the loss so far is sure to within, %: 0.5 where it was measured, S/12 where the state stands for it, 0 when fresh"},
			},
		},
	}
}
