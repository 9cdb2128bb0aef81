package catalog

import (
	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/shrinkage"
	"slipbook/calculators/sketch"
)

var shrinkageSize = &form.Calculator{
	Name:    "shrinkage-size",
	Title:   "What size must I make it?",
	Purpose: "Turns a fired size into the size to make now, or the other way round, and gives the copier setting for a template.",
	Inputs: []form.Input{
		{Name: "shrinkage", Label: "The clay shrinks in all", Help: "From fresh to fired, from your own test bars.", Kind: quantity.Percent, Needed: true, Group: "clay", Finds: "shrinkage-test", First: true, Low: form.Limit{End: form.From}, High: noClay},
		{Name: "body", Label: clayOf, Help: clayOfHelp, Kind: quantity.Number, Needed: true, Group: "clay", First: true, Bodies: true},
		{Name: "state", Label: potIsNow, Help: "Fresh clay has all its shrinking before it. A stencil is cut for leather-hard clay. Blank counts as fresh.", Kind: quantity.Number, First: true, Choices: potStates, Said: saidLoss},
		{Name: "so-far", Label: shrunkSoFar, Help: shrunkSoFarHelp, Kind: quantity.Percent, First: true, Low: form.Limit{End: form.From}, High: noClay},
		{Name: "wet-size", Label: "Size now", Help: "If you know the size on the clay and want the fired one.", Kind: quantity.Length, Group: "size", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "fired-size", Label: "Fired size", Help: "If you know the size you want out of the kiln.", Kind: quantity.Length, Group: "size", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "capacity-wet", Label: "Holds now", Help: "If you know what the pot holds as it is.", Kind: quantity.Volume, Group: "capacity", Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "capacity-fired", Label: "Must hold when fired", Help: "If you know what the fired pot must hold.", Kind: quantity.Volume, Group: "capacity", Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
	},
	Outputs: []form.Output{
		{Name: "wet-size", Label: "Make it this size now", Unit: "mm", Digits: 4},
		{Name: "fired-size", Label: "Fired, it will be", Unit: "mm", Digits: 4},
		{Name: "capacity-wet", Label: "Must hold now", Unit: "mL", Digits: 4},
		{Name: "capacity-fired", Label: "Fired, it will hold", Unit: "mL", Digits: 4},
		{Name: "template-scale", Label: "Copier setting for a template", Unit: "%", Digits: 4},
		{Name: "enlargement", Label: "That is larger by", Unit: "%", Digits: 4},
		{Name: "remaining", Label: "Still to shrink, of the size now", Unit: "%", Digits: 4},
	},
	Notes: []string{
		"A template has to grow by more than the clay shrinks: shrinkage is counted from the large size, enlargement from the small one.",
		"This holds for the same clay, made the same way, fired to the same cone. Thrown pots may shrink differently in height and in width: measure both.",
	},
	Next: []form.Next{
		{Words: "Will the slip stay on it?", Calculator: "slip-fit", Carry: []form.Carry{{Into: "body", From: "shrinkage"}, {Into: "clay", From: "body"}, {Into: "state", From: "state"}, {Into: "body-so-far", From: "so-far"}}},
	},
	Work: workSize,
	Draw: drawSize,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		shrinkageSize.Example = form.Example{
			Case:  "A mug is to be 90 mm wide when fired, in a clay that shrinks 12 %.",
			Given: []form.Setting{{Name: "shrinkage", Text: "12"}, {Name: "fired-size", Text: "90 mm"}},
		}
		shrinkageSize.Table = form.Table{
			Caption: "Size to make now, mm",
			Down:    "fired-size", Values: []string{"20 mm", "50 mm", "80 mm", "100 mm", "120 mm", "150 mm", "200 mm", "250 mm", "300 mm"},
			Across: "shrinkage", AcrossValues: []string{"6 %", "8 %", "10 %", "12 %", "14 %", "16 %"},
			Show: []string{"wet-size"},
		}
		shrinkageSize.Formulas = sizeFormulas
	}
}

func workSize(e *form.Evaluation) {
	shrinks(e, "shrinkage", "body")
	doubtPercent(e, "shrinkage")
	total := e.Value("shrinkage")
	sofar, doubt := soFar(e, total, "so-far")
	if !e.Has("wet-size") && !e.Has("fired-size") && !e.Has("capacity-wet") && !e.Has("capacity-fired") {
		e.Refuse("fired-size", "Give one of these: the size now, the fired size, or what it holds now or fired.")
	}
	if e.Refused() {
		return
	}
	remaining := shrinkage.Remaining(total, sofar)
	switch {
	case e.Has("wet-size"):
		fired := shrinkage.Fired(e.Value("wet-size"), remaining)
		e.Set("fired-size", fired)
		e.Headline("Fired, it will be {fired-size}" + giveOrTake(e, fired, sofar, doubt) + ".")
	case e.Has("fired-size"):
		wet := shrinkage.Unfired(e.Value("fired-size"), remaining)
		e.Set("wet-size", wet)
		e.Headline("Make it {wet-size} now, " + onClay(e) + giveOrTake(e, wet, sofar, doubt) + ".")
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
		return "on clay that has shrunk {so-far} so far"
	case potState(e) == shrinkage.LeatherHard:
		return "on leather-hard clay"
	case potState(e) == shrinkage.BoneDry:
		return "on bone-dry clay"
	case potState(e) == shrinkage.Bisque:
		return "on bisque"
	}
	return "on fresh clay"
}

// giveOrTake words how far a size may be off because nobody knows exactly what
// the pot has shrunk so far (%): by doubt (%) either way. Fresh clay leaves no
// doubt.
func giveOrTake(e *form.Evaluation, size, sofar, doubt float64) string {
	if doubt == 0 {
		return ""
	}
	return ", give or take " + e.Amount(size*doubt/(100-sofar), "mm", 1, 0, form.Reckoned)
}

// saySize says what a wrong shrinkage does to the size, and what a stencil
// would be where nobody said what the pot is now.
func saySize(e *form.Evaluation, total, sofar float64) {
	off, what := e.Value("wet-size")/(100-sofar), "fired size"
	r, now := e.Result("wet-size")
	if now {
		off, what = r.Value/(100-total), "size now"
	}
	if off > 0 && total > 0 {
		e.Note("For each 1\u00a0% that the clay shrinks more or less, the {} is off by {}.", what, e.Amount(off, "mm", 2, 0, form.Reckoned))
	}
	if now && total > 0 && !e.Has("state") && !e.Has("so-far") {
		gone, _ := shrinkage.SoFar(total, shrinkage.LeatherHard)
		e.Note("A stencil is cut for leather-hard clay. There it would be about {}: say what the pot is now.", e.Amount(float64(r.Value*(1-gone/100)), "mm", 3, 0, form.Reckoned))
	}
}

func capacity(e *form.Evaluation, remaining float64) {
	switch {
	case e.Has("capacity-wet"):
		e.Set("capacity-fired", shrinkage.FiredCapacity(e.Value("capacity-wet"), remaining))
		capacityHeadline(e, "Fired, it will hold {capacity-fired}.")
	case e.Has("capacity-fired"):
		e.Set("capacity-wet", shrinkage.UnfiredCapacity(e.Value("capacity-fired"), remaining))
		capacityHeadline(e, "It must hold {capacity-wet} now, "+onClay(e)+".")
	}
}

// capacityHeadline says the capacity after the size, when there is one.
func capacityHeadline(e *form.Evaluation, sentence string) {
	size := e.Answer.Headline
	e.Headline(sentence)
	if size != "" {
		e.Answer.Headline = size + " " + e.Answer.Headline
	}
}

// drawSize shows the outline now and, inside it, fired, to one scale.
func drawSize(e *form.Evaluation) string {
	remaining, _ := e.Result("remaining")
	left := 1 - remaining.Value/100
	d := sheet(e, "The outline of the pot now, and inside it, to the same scale, the fired pot: {remaining} smaller each way.")
	const height = 250.0
	d.Outline("ghost", 200, sketch.JarFloor, height)
	d.Outline("clay", 200, sketch.JarFloor, float64(height*left))
	d.Outline("ink", 200, sketch.JarFloor, float64(height*left))
	d.Aside(brief(e, sized(e, "wet-size", "now")), 400, 60)
	d.Line("fine", 392, 52, 330, 44)
	d.Aside(brief(e, sized(e, "fired-size", "fired")), 400, 160)
	d.Line("fine", 392, 152, 200+float64(104*left), 140)
	return d.String()
}

// sized words a size with its state, or the state alone when the sum was of
// capacities only.
func sized(e *form.Evaluation, name, state string) string {
	if _, ok := e.Result(name); ok || e.Has(name) {
		return state + " {" + name + "}"
	}
	return state
}

func sizeFormulas() []Formula {
	return []Formula{
		{
			Math: Equal(Letter("R"), Row(Hundred, Times, Bracket(One, Minus, Fraction(Row(One, Minus, Fraction(Letter("S"), Hundred)), Row(One, Minus, Fraction(Letter("A"), Hundred)))))),
			Where: []Symbol{
				{Letter: "R", Means: "still to shrink, % of the size now"},
				{Letter: "S", Means: "shrinkage in all, % of the fresh length"},
				{Letter: "A", Means: soFarMeans},
			},
		},
		{
			Math: Equal(Words("size now"), Fraction(Words("fired size"), Row(One, Minus, Fraction(Letter("R"), Hundred)))),
		},
		{
			Math: Equal(Words("copier setting"), Row(Hundred, Times, Fraction(Hundred, Row(Hundred, Minus, Letter("R"))))),
		},
		{
			Math: Equal(Words("holds now"), Fraction(Words("holds fired"), Power(Bracket(One, Minus, Fraction(Letter("R"), Hundred)), Number("3")))),
		},
	}
}
