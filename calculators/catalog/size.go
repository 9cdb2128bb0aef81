package catalog

import (
	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/shrinkage"
	"slipbook/calculators/sketch"
)

var shrinkageSize = &form.Calculator{
	Name: "shrinkage-size",
	Inputs: []form.Input{
		{Name: "shrinkage", Kind: quantity.Percent, Needed: true, Group: "clay", Finds: "shrinkage-test", First: true, Low: form.Limit{End: form.From}, High: noClay},
		{Name: "body", Shared: "studio-clay", Kind: quantity.Number, Needed: true, Group: "clay", First: true, Bodies: true},
		{Name: "state", Kind: quantity.Number, First: true, Choices: potStates, SharedChoices: "pot-state", Said: saidLoss, Asks: asksLoss},
		{Name: "so-far", Shared: "shrunk-so-far", Kind: quantity.Percent, First: true, Low: form.Limit{End: form.From}, High: noClay},
		{Name: "wet-size", Kind: quantity.Length, Group: "size", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "fired-size", Kind: quantity.Length, Group: "size", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "capacity-wet", Kind: quantity.Volume, Group: "capacity", Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "capacity-fired", Kind: quantity.Volume, Group: "capacity", Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
	},
	Outputs: []form.Output{
		{Name: "wet-size", Unit: "mm", Digits: 4, As: form.Ruled},
		{Name: "fired-size", Unit: "mm", Digits: 4, As: form.Ruled},
		{Name: "capacity-wet", Unit: "mL", Digits: 4},
		{Name: "capacity-fired", Unit: "mL", Digits: 4},
		{Name: "template-scale", Unit: "%", Digits: 4},
		{Name: "enlargement", Unit: "%", Digits: 4},
		{Name: "remaining", Unit: "%", Digits: 4},
	},
	Says: []string{"template-has-grow", "holds-same-clay"},
	Next: []form.Next{
		{Calculator: "slip-fit", Carry: []form.Carry{{Into: "body", From: "shrinkage"}, {Into: "clay", From: "body"}, {Into: "state", From: "state"}, {Into: "body-so-far", From: "so-far"}}},
	},
	Work: workSize,
	Draw: drawSize,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		shrinkageSize.Example = form.Example{
			Given: []form.Setting{{Name: "shrinkage", Text: "12"}, {Name: "fired-size", Text: "90 mm"}},
		}
		shrinkageSize.Table = form.Table{
			Down: "fired-size", Values: []string{"20 mm", "50 mm", "80 mm", "100 mm", "120 mm", "150 mm", "200 mm", "250 mm", "300 mm"},
			Across: "shrinkage", AcrossValues: []string{"6 %", "8 %", "10 %", "12 %", "14 %", "16 %"},
			Show: []string{"wet-size"},
		}
		shrinkageSize.Formula = sizeFormulas
	}
}

func workSize(e *form.Evaluation) {
	shrinks(e, "shrinkage", "body")
	doubtPercent(e, "shrinkage")
	doubtSize(e, "wet-size")
	doubtSize(e, "fired-size")
	total := e.Value("shrinkage")
	sofar, doubt := soFar(e, total, "so-far")
	if !e.Has("wet-size") && !e.Has("fired-size") && !e.Has("capacity-wet") && !e.Has("capacity-fired") {
		e.Refuse("fired-size", "give-one-these")
	}
	if e.Refused() {
		return
	}
	remaining := shrinkage.Remaining(total, sofar)
	switch {
	case e.Has("wet-size"):
		fired := shrinkage.Fired(e.Value("wet-size"), remaining)
		e.Set("fired-size", fired)
		e.Headline("fired", "size", giveOrTake(e, e.Shown("fired-size"), fired, sofar, doubt))
	case e.Has("fired-size"):
		wet := shrinkage.Unfired(e.Value("fired-size"), remaining)
		e.Set("wet-size", wet)
		e.Headline("make", "clay", giveOrTake(e, onClay(e), wet, sofar, doubt))
	}
	e.Set("remaining", remaining)
	e.Set("enlargement", shrinkage.Enlargement(remaining))
	e.Set("template-scale", 100+shrinkage.Enlargement(remaining))
	capacity(e, remaining)
	saySize(e, total, sofar)
}

// onClay words the clay that "now" is about.
func onClay(e *form.Evaluation) string {
	switch {
	case e.Has("so-far"):
		return e.Say("on-shrunk")
	case potState(e) == shrinkage.LeatherHard:
		return e.Say("on-leather-hard")
	case potState(e) == shrinkage.BoneDry:
		return e.Say("on-bone-dry")
	case potState(e) == shrinkage.Bisque:
		return e.Say("on-bisque")
	}
	return e.Say("on-fresh")
}

// giveOrTake words how far a size may be off because nobody knows exactly what
// the pot has shrunk so far (%): by doubt (%) either way. Fresh clay leaves no
// doubt.
func giveOrTake(e *form.Evaluation, said string, size, sofar, doubt float64) string {
	if doubt == 0 {
		return said
	}
	return e.Say("give-or-take", "said", said, "off", e.Amount(size*doubt/(100-sofar), "mm", 1, 0, form.Reckoned))
}

// saySize says what a wrong shrinkage does to the size, and what a stencil
// would be where nobody said what the pot is now.
func saySize(e *form.Evaluation, total, sofar float64) {
	off, what := e.Value("wet-size")/(100-sofar), "off-fired"
	r, now := e.Result("wet-size")
	if now {
		off, what = r.Value/(100-total), "off-now"
	}
	if off > 0 && total > 0 {
		e.Note(what, "off", e.Amount(off, "mm", 2, 0, form.Reckoned))
	}
	if now && total > 0 && !e.Has("state") && !e.Has("so-far") {
		gone, _ := shrinkage.SoFar(total, shrinkage.LeatherHard)
		e.Note("stencil", "size", e.Amount(float64(r.Value*(1-gone/100)), "mm", 3, 0, form.Reckoned))
	}
}

func capacity(e *form.Evaluation, remaining float64) {
	switch {
	case e.Has("capacity-wet"):
		e.Set("capacity-fired", shrinkage.FiredCapacity(e.Value("capacity-wet"), remaining))
		capacityHeadline(e, "will-hold")
	case e.Has("capacity-fired"):
		e.Set("capacity-wet", shrinkage.UnfiredCapacity(e.Value("capacity-fired"), remaining))
		capacityHeadline(e, "must-hold", "clay", onClay(e))
	}
}

// capacityHeadline says the capacity after the size, when there is one.
func capacityHeadline(e *form.Evaluation, sentence string, fills ...string) {
	size := e.Answer.Headline
	e.Headline(sentence, fills...)
	if size != "" {
		e.Answer.Headline = size + " " + e.Answer.Headline
	}
}

// drawSize shows the outline now and, inside it, fired, to one scale.
func drawSize(e *form.Evaluation) string {
	remaining, _ := e.Result("remaining")
	left := 1 - remaining.Value/100
	d := sheet(e, "alternative")
	const height = 250.0
	d.Outline("ghost", 200, sketch.JarFloor, height)
	d.Outline("clay", 200, sketch.JarFloor, float64(height*left))
	d.Outline("ink", 200, sketch.JarFloor, float64(height*left))
	d.Aside(brief(e, sized(e, "wet-size", "now-size", "now")), 400, 60)
	d.Line("fine", 392, 52, 330, 44)
	d.Aside(brief(e, sized(e, "fired-size", "fired-size", "fired")), 400, 160)
	d.Line("fine", 392, 152, 200+float64(104*left), 140)
	return d.String()
}

// sized words a size with its state, or the state alone when the sum was of
// capacities only.
func sized(e *form.Evaluation, name, with, without string) string {
	if _, ok := e.Result(name); ok || e.Has(name) {
		return with
	}
	return without
}

func sizeFormulas(say func(string) string) []Formula {
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
			Math: Equal(Words(say("size-now")), Fraction(Words(say("fired-size")), Row(One, Minus, Fraction(Letter("R"), Hundred)))),
		},
		{
			Math: Equal(Words(say("copier-setting")), Row(Hundred, Times, Fraction(Hundred, Row(Hundred, Minus, Letter("R"))))),
		},
		{
			Math: Equal(Words(say("holds-now")), Fraction(Words(say("holds-fired")), Power(Bracket(One, Minus, Fraction(Letter("R"), Hundred)), Number("3")))),
		},
	}
}
