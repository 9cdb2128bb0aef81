package catalog

import (
	"math"

	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/shrinkage"
)

var slipFit = &form.Calculator{
	Name: "slip-fit",
	Inputs: []form.Input{
		{Name: "body", Kind: quantity.Percent, Needed: true, Group: "clay", Finds: "shrinkage-test", First: true, Low: form.Limit{End: form.From}, High: noClay},
		{Name: "clay", Shared: "studio-clay", Kind: quantity.Number, Needed: true, Group: "clay", First: true, Bodies: true},
		{Name: "state", Kind: quantity.Number, First: true, Choices: potStates, SharedChoices: "pot-state", Said: saidLoss, Asks: asksLoss},
		{Name: "body-so-far", Shared: "shrunk-so-far", Kind: quantity.Percent, First: true, Low: form.Limit{End: form.From}, High: noClay},
		{Name: "slip", Kind: quantity.Percent, Needed: true, Finds: "shrinkage-test", First: true, Low: form.Limit{End: form.From}, High: noClay},
		{Name: "bars-ci", Kind: quantity.Percent, Default: "0.75", Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 20}},
	},
	Outputs: []form.Output{
		{Name: "verdict", Unit: "1", Text: true},
		{Name: "mismatch", Unit: "%", Digits: 2},
		{Name: "mismatch-ci", Unit: "%", Digits: 2},
		{Name: "remaining", Unit: "%", Digits: 3},
	},
	Says:    []string{"counts-drying-firing", "bands-are-our"},
	MayHurt: []string{dryPowder}, // of another slip that it advises
	Next: []form.Next{
		{Calculator: "stage-plan", Carry: []form.Carry{{Into: "state", From: "state"}}},
	},
	Work: workFit,
	Draw: drawFit,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		slipFit.Example = form.Example{
			Given: []form.Setting{{Name: "body", Text: "12"}, {Name: "state", Text: "leather-hard"}, {Name: "slip", Text: "12"}},
		}
		slipFit.Table = form.Table{
			Down: "state", Values: []string{"Fresh", "Leather-hard", "Bone dry", "Bisque"},
			Across: "slip", AcrossValues: []string{"6 %", "8 %", "9.5 %", "11 %", "12 %", "13 %", "14 %"},
			Show: []string{"mismatch"},
		}
		slipFit.Formula = fitFormulas
	}
}

// fitWords are the verdicts.
var fitWords = [...]string{
	shrinkage.Lifts: "lifts",
	shrinkage.Fits:  "fits",
	shrinkage.Risks: "risks",
	shrinkage.Peels: "peels",
}

func workFit(e *form.Evaluation) {
	shrinks(e, "body", "clay")
	if !e.Has("state") && !e.Has("body-so-far") {
		e.Refuse("state", "give-one-these")
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
	e.Tell("verdict", e.Say(fitWords[fit]))
	e.Set("mismatch", mismatch)
	e.Show("mismatch", form.WithUnit(tenth(e, mismatch)+" ± "+tenth(e, off), "%"))
	e.Set("mismatch-ci", off)
	e.Set("remaining", remaining)
	e.Headline("end", "end", endsBy(e, mismatch))
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
		return e.Say("as-long")
	case mismatch < 0:
		return e.Say("too-long", "size", form.WithUnit(size, "%"))
	}
	return e.Say("too-short", "size", form.WithUnit(size, "%"))
}

// sayFit says what to do, and what else the slip may do within the doubt.
func sayFit(e *form.Evaluation, fit, low, high shrinkage.Fit) {
	if low != high {
		e.Note("within-doubt", "low", e.Say(fitWords[low]), "high", e.Say(fitWords[high]))
	}
	if fit != shrinkage.Fits {
		e.Warn(dryPowder)
	}
	switch fit {
	case shrinkage.Lifts:
		e.Note("slip-shrinks-less")
	case shrinkage.Risks, shrinkage.Peels:
		e.Note("put-earlier-while")
	}
	if potState(e) == shrinkage.Bisque {
		e.Note("no-sum-makes")
	}
}

// drawFit shows how long pot and slip would end, laid side by side at one
// scale. A slip that holds is stretched or pressed to the pot's length.
func drawFit(e *form.Evaluation) string {
	mismatch, _ := e.Result("mismatch")
	d := sheet(e, "alternative", "headline", e.Answer.Headline)
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
		d.Words(e.Say(bar.words), 490, y+50, "start")
	}
	d.Line("ghost", 30+pot, 40, 30+pot, 270)
	d.Line("ghost", 30+slip, 40, 30+slip, 270)
	return d.String()
}

func fitFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Letter("R"), Row(Hundred, Times, Bracket(One, Minus, Fraction(Row(One, Minus, Fraction(Letter("S"), Hundred)), Row(One, Minus, Fraction(Letter("A"), Hundred)))))),
			Where: []Symbol{
				{Letter: "R", Means: say("R")},
				{Letter: "S", Means: say("S")},
				{Letter: "A", Means: say("shared.formula.so-far")},
			},
		},
		{
			Math: Equal(Words(say("too-short")), Row(Hundred, Times, Bracket(Fraction(Row(One, Minus, Fraction(Letter("R"), Hundred)), Row(One, Minus, Fraction(Letter("T"), Hundred))), Minus, One))),
			Where: []Symbol{
				{Letter: "T", Means: say("T")},
			},
		},
		{
			Math: Equal(Words(say("give-take")), Row(Hundred, Times, Fraction(Row(One, Minus, Fraction(Letter("R"), Hundred)), Row(One, Minus, Fraction(Letter("T"), Hundred))), Times, Root(Row(
				Power(Bracket(Fraction(Letter("b"), Row(Hundred, Minus, Letter("S")))), Number("2")), Plus,
				Power(Bracket(Fraction(Letter("a"), Row(Hundred, Minus, Letter("A")))), Number("2")), Plus,
				Power(Bracket(Fraction(Letter("b"), Row(Hundred, Minus, Letter("T")))), Number("2")))))),
			Where: []Symbol{
				{Letter: "b", Means: say("b")},
				{Letter: "a", Means: say("a")},
			},
		},
	}
}
