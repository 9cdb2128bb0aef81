package catalog

import (
	"math"
	"strconv"

	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/shrinkage"
)

var shrinkageBars = &form.Calculator{
	Name: "shrinkage-test",
	Inputs: []form.Input{
		{Name: "plastic", Kind: quantity.Length, List: true, Most: shrinkage.MostBars, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "dry", Kind: quantity.Length, List: true, Most: shrinkage.MostBars, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "fired", Kind: quantity.Length, List: true, Most: shrinkage.MostBars, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "leather-hard", Kind: quantity.Length, List: true, Most: shrinkage.MostBars, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "length-resolution", Kind: quantity.Length, Default: "0.1", Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 10}},
	},
	Outputs: []form.Output{
		{Name: "total", Unit: "%", Digits: 4},
		{Name: "drying", Unit: "%", Digits: 4},
		{Name: "firing", Unit: "%", Digits: 4},
		{Name: "firing-plastic", Unit: "%", Digits: 4, Aside: true},
		{Name: "so-far", Unit: "%", Digits: 3},
		{Name: "volume", Unit: "%", Digits: 4},
		{Name: "total-ci", Unit: "%", Digits: 2},
		{Name: "bars", Unit: "1", Digits: 3, Aside: true},
	},
	Says: []string{"make-three-bars", "drying-firing-percentages", "figure-belongs-clay"},
	Next: []form.Next{
		{Calculator: "shrinkage-size", Carry: []form.Carry{{Into: "shrinkage", From: "total"}, {Into: "so-far", From: "so-far"}}},
		{Calculator: "slip-fit", Carry: []form.Carry{{Into: "body", From: "total"}, {Into: "body-so-far", From: "so-far"}, {Into: "bars-ci", From: "total-ci"}}},
	},
	Work: workBars,
	Draw: drawBars,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		shrinkageBars.Example = form.Example{
			Given: []form.Setting{{Name: "plastic", Text: "100 100 100"}, {Name: "dry", Text: "94 93.8 94.1"}, {Name: "fired", Text: "88 87.9 88.2"}},
		}
		shrinkageBars.Table = form.Table{
			Down: "fired", Values: []string{"92 mm", "91 mm", "90 mm", "89 mm", "88 mm", "87 mm", "86 mm", "85 mm", "84 mm"},
			Show: []string{"total", "firing", "volume"},
			Also: []form.Setting{{Name: "plastic", Text: "100"}, {Name: "dry", Text: "94"}},
		}
		shrinkageBars.Formula = barsFormulas
	}
}

func workBars(e *form.Evaluation) {
	plastic, dry, fired := e.List("plastic"), e.List("dry"), e.List("fired")
	sameCount(e, "dry", len(dry), len(plastic))
	sameCount(e, "fired", len(fired), len(plastic))
	if e.Has("leather-hard") {
		sameCount(e, "leather-hard", len(e.List("leather-hard")), len(plastic))
	}
	if e.Refused() {
		return
	}
	bars := make([]shrinkage.Bar, len(plastic))
	for i := range bars {
		bars[i] = shrinkage.Bar{Plastic: plastic[i], Dry: dry[i], Fired: fired[i]}
		barPossible(e, i, bars[i])
	}
	stray(e, "dry", plastic, dry, "astray-in-drying", "apart-in-drying")
	stray(e, "fired", dry, fired, "astray-in-firing", "apart-in-firing")
	so := lossSoFar(e, plastic, dry)
	if e.Refused() {
		return
	}
	sayBars(e, shrinkage.Test(bars, e.Value("length-resolution")), bars, so)
}

func sameCount(e *form.Evaluation, name string, count, plastic int) {
	if count != plastic {
		e.Refuse(name, "count", "these", e.Count("lengths", count), "fresh", e.Count("lengths", plastic))
	}
}

// What a bar can do, in percent: more is a slip of the pen. Our own limits, a
// good deal wider than any clay in print (drying 5 to 8 %, in all 6 to 18 %).
const (
	mostDrying = 25 // of the fresh length
	mostGrowth = 1  // in the firing, of the dry length
	mostStray  = 6  // from the other bars of the same clay
	likeOthers = 1  // from the others, without a word about it
)

// barPossible refuses a bar that no clay makes.
func barPossible(e *form.Evaluation, i int, bar shrinkage.Bar) {
	switch {
	case bar.Dry > bar.Plastic:
		refuseBar(e, i, "dry", "dry", "plastic", "longer-dry")
	case shrinkage.Linear(bar.Plastic, bar.Dry) > mostDrying:
		refuseBar(e, i, "dry", "plastic", "dry", "dries-too-much")
	}
	switch {
	case shrinkage.Linear(bar.Plastic, bar.Fired) > 50:
		refuseBar(e, i, "fired", "plastic", "fired", "shrinks-too-much")
	case bar.Fired > bar.Plastic:
		refuseBar(e, i, "fired", "fired", "plastic", "longer-fired")
	case shrinkage.Linear(bar.Dry, bar.Fired) < -mostGrowth:
		refuseBar(e, i, "fired", "fired", "dry", "grows")
	}
}

// refuseBar refuses a bar, at one of the lists, by its number and two of its
// lengths as they were typed.
func refuseBar(e *form.Evaluation, i int, input, first, second, sentence string) {
	e.Answer.RefuseValue(input, i, e.Say(sentence, "bar", strconv.Itoa(i+1), "first", typedLength(e, first, i), "second", typedLength(e, second, i)))
}

// typedLength returns one length of a list in the unit it was typed in.
func typedLength(e *form.Evaluation, list string, i int) string {
	q := e.Given(list).AsTyped[i]
	return form.WithUnit(e.Text(q.Given, 5), q.Unit)
}

// stray refuses the bar that shrank quite otherwise than the others of the
// same clay, and doubts one that merely stands apart.
func stray(e *form.Evaluation, input string, before, after []float64, mistyped, apart string) {
	if e.Refused() {
		return
	}
	losses := make([]float64, len(before))
	for i := range losses {
		losses[i] = shrinkage.Linear(before[i], after[i])
	}
	bar, others, off := shrinkage.Astray(losses)
	said := []string{"bar", strconv.Itoa(bar + 1), "loss", form.WithUnit(e.Text(losses[bar], 3), "%"), "others", form.WithUnit(e.Text(others, 3), "%")}
	switch {
	case math.Abs(off) > mostStray:
		e.Answer.RefuseValue(input, bar, e.Say(mistyped, said...))
	case math.Abs(off) > likeOthers:
		e.Note(apart, said...)
	}
}

// lossSoFar returns the mean loss (%) of the bars at leather-hard; NaN when
// nobody measured it. A bar that is shorter then than bone dry is refused.
func lossSoFar(e *form.Evaluation, plastic, dry []float64) float64 {
	if e.Refused() || !e.Has("leather-hard") {
		return math.NaN()
	}
	sum := 0.0
	for i, length := range e.List("leather-hard") {
		if length > plastic[i] {
			refuseBar(e, i, "leather-hard", "leather-hard", "plastic", "longer-leather-hard")
		} else if length < dry[i] {
			refuseBar(e, i, "leather-hard", "leather-hard", "dry", "shorter-leather-hard")
		}
		sum += shrinkage.Linear(plastic[i], length)
	}
	return sum / float64(len(plastic))
}

func sayBars(e *form.Evaluation, found shrinkage.Bars, bars []shrinkage.Bar, so float64) {
	if math.IsNaN(found.Half) {
		e.Set("total", found.Total)
	} else {
		e.SetWithin("total", found.Total, found.Half/2)
	}
	e.Set("drying", found.Drying)
	e.Set("firing", found.Firing)
	e.Set("firing-plastic", found.FiringPlastic)
	if !math.IsNaN(so) {
		e.Set("so-far", so)
	}
	e.Set("volume", shrinkage.Volume(found.Total))
	if !math.IsNaN(found.Half) {
		e.Set("total-ci", found.Half)
	}
	e.Set("bars", float64(len(bars)))
	judgeBars(e, bars)
	switch {
	case found.Total == 0:
		e.Headline("these-bars-have")
	case len(bars) == 1:
		e.Headline("shrinks-all-one")
	default:
		e.Headline("shrinks-all")
	}
	if found.Half == found.Callipers {
		e.Note("bars-agree-better")
	}
	if len(bars) < 3 {
		e.Note("fewer-than-three")
	}
	if found.Firing < 0 {
		e.Note("bars-grew-firing")
	}
}

// judgeBars reports whether the bars agree, by the lessons' own rule.
func judgeBars(e *form.Evaluation, bars []shrinkage.Bar) {
	least, most := 100.0, 0.0
	for _, bar := range bars {
		total := shrinkage.Linear(bar.Plastic, bar.Fired)
		least, most = math.Min(least, total), math.Max(most, total)
	}
	verdict := "agree"
	if most-least > likeOthers {
		verdict = "differ"
	}
	if len(bars) > 1 {
		e.Judged(verdict, "apart", form.WithUnit(e.Text(most-least, 2), "%"))
	}
}

// drawBars shows a bar fresh, dry and fired, to one scale.
func drawBars(e *form.Evaluation) string {
	drying, _ := e.Result("drying")
	total, _ := e.Result("total")
	d := sheet(e, "alternative")
	const full = 440.0
	for i, bar := range []struct {
		words string
		lost  float64
	}{{"fresh", 0}, {"dry", drying.Value}, {"fired", total.Value}} {
		left := 1 - bar.lost/100
		y := 30 + float64(float64(i)*96)
		length, height := float64(full*left), float64(64*left)
		d.Box("clay", 30, y, length, height)
		d.Box("ink", 30, y, length, height)
		d.Line("fine", 30+float64(0.06*length), y+12, 30+float64(0.06*length), y+height-12)
		d.Line("fine", 30+float64(0.94*length), y+12, 30+float64(0.94*length), y+height-12)
		d.Words(e.Say(bar.words), 490, y+40, "start")
	}
	d.Line("ghost", 30+full, 16, 30+full, 300)
	return d.String()
}

func barsFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Letter("S"), Row(Hundred, Times, Fraction(Row(Sub(Letter("L"), Letter("p")), Minus, Sub(Letter("L"), Letter("f"))), Sub(Letter("L"), Letter("p"))))),
			Where: []Symbol{
				{Letter: "S", Means: say("S")},
				{Letter: "L_p, L_d, L_f", Means: say("L_p-L_d-L_f")},
			},
		},
		{
			Math: Equal(Sub(Letter("S"), Words(say("firing"))), Row(Hundred, Times, Fraction(Row(Sub(Letter("L"), Letter("d")), Minus, Sub(Letter("L"), Letter("f"))), Sub(Letter("L"), Letter("d"))))),
		},
		{
			Math: Equal(Words(say("give-take")), Row(Letter("t"), Times, Fraction(Letter("s"), Root(Letter("n"))))),
			Where: []Symbol{
				{Letter: "t", Means: say("t")},
				{Letter: "s", Means: say("s")},
				{Letter: "n", Means: say("n")},
			},
		},
		{
			Math: Equal(Sub(Letter("S"), Words(say("volume"))), Row(Hundred, Times, Bracket(One, Minus, Power(Bracket(One, Minus, Fraction(Letter("S"), Hundred)), Number("3"))))),
		},
	}
}
