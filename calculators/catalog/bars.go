package catalog

import (
	"math"
	"strconv"

	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/shrinkage"
	"slipbook/calculators/sketch"
)

var shrinkageBars = &form.Calculator{
	Name:    "shrinkage-test",
	Title:   "What did my test bars shrink?",
	Purpose: "Works out how much a clay shrinks in drying and in firing, from the marks on its test bars.",
	Inputs: []form.Input{
		{Name: "plastic", Label: "Between the marks, fresh clay", Help: "As you scratched them in: 100 mm makes the sum easy.", Kind: quantity.Length, List: true, Most: shrinkage.MostBars, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "dry", Label: "Between the marks, bone dry", Help: "The same bars in the same order.", Kind: quantity.Length, List: true, Most: shrinkage.MostBars, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "fired", Label: "Between the marks, fired", Help: "The same bars in the same order, after the glaze firing.", Kind: quantity.Length, List: true, Most: shrinkage.MostBars, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "leather-hard", Label: "Between the marks, leather-hard", Help: "Only if you measured them then: a minute’s work, and it says how much is over when you put slip on or cut a stencil.", Kind: quantity.Length, List: true, Most: shrinkage.MostBars, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e5}},
		{Name: "length-resolution", Label: "The callipers’ smallest step", Help: "0.1 mm for most.", Kind: quantity.Length, Default: "0.1", Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 10}},
	},
	Outputs: []form.Output{
		{Name: "total", Label: "Shrinks in all", Unit: "%", Digits: 4},
		{Name: "drying", Label: "In drying, of the fresh length", Unit: "%", Digits: 4},
		{Name: "firing", Label: "In firing, of the dry length", Unit: "%", Digits: 4},
		{Name: "firing-plastic", Label: "In firing, of the fresh length", Unit: "%", Digits: 4, Aside: true},
		{Name: "so-far", Label: "Gone at leather-hard, of the fresh length", Unit: "%", Digits: 3},
		{Name: "volume", Label: "Volume shrinks by", Unit: "%", Digits: 4},
		{Name: "total-ci", Label: "Sure to within, ± (95 %)", Unit: "%", Digits: 2},
		{Name: "bars", Label: "Bars", Unit: "1", Digits: 3, Aside: true},
	},
	Notes: []string{
		"Make three bars or more, dry them flat and turn them, and scratch the same marks into each.",
		"Drying and firing percentages are of different lengths. They must not be added: 6 % and then 7 % make 12.58 %, not 13 %.",
		"The figure belongs to this clay at this cone. Another cone, another figure.",
	},
	Next: []form.Next{
		{Words: "What size must I make it?", Calculator: "shrinkage-size", Carry: []form.Carry{{Into: "shrinkage", From: "total"}, {Into: "so-far", From: "so-far"}}},
		{Words: "Will the slip stay on it?", Calculator: "slip-fit", Carry: []form.Carry{{Into: "body", From: "total"}, {Into: "body-so-far", From: "so-far"}, {Into: "bars-ci", From: "total-ci"}}},
	},
	Work: workBars,
	Draw: drawBars,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		shrinkageBars.Example = form.Example{
			Case:  "Three bars with marks 100 mm apart when fresh.",
			Given: []form.Setting{{Name: "plastic", Text: "100 100 100"}, {Name: "dry", Text: "94 93.8 94.1"}, {Name: "fired", Text: "88 87.9 88.2"}},
		}
		shrinkageBars.Table = form.Table{
			Caption: "One bar with marks 100 mm apart when fresh and 94 mm when dry",
			Down:    "fired", Values: []string{"92 mm", "91 mm", "90 mm", "89 mm", "88 mm", "87 mm", "86 mm", "85 mm", "84 mm"},
			Show: []string{"total", "firing", "volume"},
			Also: []form.Setting{{Name: "plastic", Text: "100"}, {Name: "dry", Text: "94"}},
		}
		shrinkageBars.Formulas = barsFormulas
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
	stray(e, "dry", "in drying", plastic, dry)
	stray(e, "fired", "in the firing", dry, fired)
	so := lossSoFar(e, plastic, dry)
	if e.Refused() {
		return
	}
	sayBars(e, shrinkage.Test(bars, e.Value("length-resolution")), bars, so)
}

func sameCount(e *form.Evaluation, name string, count, plastic int) {
	if count != plastic {
		e.Refuse(name, "This has {}, and fresh clay has {}. Give one of each for every bar, in the same order.", form.Plural(count, "length"), form.Plural(plastic, "length"))
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
		refuseBar(e, i, "dry", "dry", "plastic", "Bar {} is longer dry ({}) than fresh ({}). Clay does not grow in drying; are the bars in the same order?")
	case shrinkage.Linear(bar.Plastic, bar.Dry) > mostDrying:
		refuseBar(e, i, "dry", "plastic", "dry", "Bar {} would shrink from {} to {} in drying. No clay loses a quarter of its length so; is one of the two mistyped?")
	}
	switch {
	case shrinkage.Linear(bar.Plastic, bar.Fired) > 50:
		refuseBar(e, i, "fired", "plastic", "fired", "Bar {} would shrink from {} to {}. No clay shrinks by more than half; has the decimal mark slipped?")
	case bar.Fired > bar.Plastic:
		refuseBar(e, i, "fired", "fired", "plastic", "Bar {} is longer fired ({}) than fresh ({}). Are the bars in the same order?")
	case shrinkage.Linear(bar.Dry, bar.Fired) < -mostGrowth:
		refuseBar(e, i, "fired", "fired", "dry", "Bar {} is longer fired ({}) than dry ({}). Clay hardly grows in a firing; is one of the two mistyped?")
	}
}

// refuseBar refuses a bar, at one of the lists, by its number and two of its
// lengths as they were typed.
func refuseBar(e *form.Evaluation, i int, input, first, second, sentence string) {
	e.Answer.RefuseValue(input, i, e.Words(sentence, strconv.Itoa(i+1), typedLength(e, first, i), typedLength(e, second, i)))
}

// typedLength gives one length of a list in the unit it was typed in.
func typedLength(e *form.Evaluation, list string, i int) string {
	q := e.Given(list).AsTyped[i]
	return form.WithUnit(e.Text(q.Given, 5), q.Unit)
}

// stray refuses the bar that shrank quite otherwise than the others of the
// same clay, and doubts one that merely stands apart.
func stray(e *form.Evaluation, input, when string, before, after []float64) {
	if e.Refused() {
		return
	}
	losses := make([]float64, len(before))
	for i := range losses {
		losses[i] = shrinkage.Linear(before[i], after[i])
	}
	bar, others, off := shrinkage.Astray(losses)
	said := []string{strconv.Itoa(bar + 1), form.WithUnit(e.Text(losses[bar], 3), "%"), when, form.WithUnit(e.Text(others, 3), "%")}
	switch {
	case math.Abs(off) > mostStray:
		e.Answer.RefuseValue(input, bar, e.Words("Bar {} would shrink {} {}, and the others about {}. Is one of its lengths mistyped?", said...))
	case math.Abs(off) > likeOthers:
		e.Note("Bar {} stands apart: it shrinks {} {}, the others about {}. Measure it again, and leave it out if it is bent or cracked.", said...)
	}
}

// lossSoFar gives the mean loss (%) of the bars at leather-hard; NaN when
// nobody measured it. A bar that is shorter then than bone dry is refused.
func lossSoFar(e *form.Evaluation, plastic, dry []float64) float64 {
	if e.Refused() || !e.Has("leather-hard") {
		return math.NaN()
	}
	sum := 0.0
	for i, length := range e.List("leather-hard") {
		if length > plastic[i] {
			refuseBar(e, i, "leather-hard", "leather-hard", "plastic", "Bar {} is longer leather-hard ({}) than fresh ({}). Are the bars in the same order?")
		} else if length < dry[i] {
			refuseBar(e, i, "leather-hard", "leather-hard", "dry", "Bar {} is shorter leather-hard ({}) than bone dry ({}). Are the bars in the same order?")
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
		e.Headline("These bars have not shrunk at all. Are the fired lengths those of the fired bars?")
	case len(bars) == 1:
		e.Headline("It shrinks {total} in all, by one bar.")
	default:
		e.Headline("It shrinks {total} in all.")
	}
	if found.Half == found.Callipers {
		e.Note("The bars agree better than the callipers can tell: their step of {length-resolution} alone leaves {total-ci} either way.")
	}
	if len(bars) < 3 {
		e.Note("With fewer than three bars nobody can tell luck from clay. Make three.")
	}
	if found.Firing < 0 {
		e.Note("The bars grew in the firing. Clay that swells was fired too hot, or the marks were misread.")
	}
}

// judgeBars says whether the bars agree, by the lessons' own rule.
func judgeBars(e *form.Evaluation, bars []shrinkage.Bar) {
	least, most := 100.0, 0.0
	for _, bar := range bars {
		total := shrinkage.Linear(bar.Plastic, bar.Fired)
		least, most = math.Min(least, total), math.Max(most, total)
	}
	verdict := "they agree"
	if most-least > likeOthers {
		verdict = "more than good bars do. Measure again, or make another"
	}
	if len(bars) > 1 {
		e.Answer.Judged = append(e.Answer.Judged, e.Words("The totals lie {} apart: "+verdict+". No more than 1\u00a0% is our own rule.", form.WithUnit(e.Text(most-least, 2), "%")))
	}
}

// drawBars shows a bar fresh, dry and fired, to one scale.
func drawBars(e *form.Evaluation) string {
	drying, _ := e.Result("drying")
	total, _ := e.Result("total")
	d := sheet(e, "A bar fresh, {drying} shorter when dry, and {total} shorter when fired, to scale.")
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
		d.Words(bar.words, 490, y+40, sketch.TextSize, "start")
	}
	d.Line("ghost", 30+full, 16, 30+full, 300)
	return d.String()
}

func barsFormulas() []Formula {
	return []Formula{
		{
			Math: Equal(Letter("S"), Row(Hundred, Times, Fraction(Row(Sub(Letter("L"), Letter("p")), Minus, Sub(Letter("L"), Letter("f"))), Sub(Letter("L"), Letter("p"))))),
			Where: []Symbol{
				{Letter: "S", Means: "shrinkage in all, % of the fresh length"},
				{Letter: "L_p, L_d, L_f", Means: "between the marks: fresh, dry, fired"},
			},
		},
		{
			Math: Equal(Sub(Letter("S"), Words("firing")), Row(Hundred, Times, Fraction(Row(Sub(Letter("L"), Letter("d")), Minus, Sub(Letter("L"), Letter("f"))), Sub(Letter("L"), Letter("d"))))),
		},
		{
			Math: Equal(Words("give or take"), Row(Letter("t"), Times, Fraction(Letter("s"), Root(Letter("n"))))),
			Where: []Symbol{
				{Letter: "t", Means: "Student’s t for 95 %: 4.303 for three bars"},
				{Letter: "s", Means: "standard deviation of the bars’ totals, %; no less is said than the callipers’ step alone leaves"},
				{Letter: "n", Means: "number of bars"},
			},
		},
		{
			Math: Equal(Sub(Letter("S"), Words("volume")), Row(Hundred, Times, Bracket(One, Minus, Power(Bracket(One, Minus, Fraction(Letter("S"), Hundred)), Number("3"))))),
		},
	}
}
