package catalog

import (
	"math"
	"strconv"

	"slipbook/calculators/quantity"
	"slipbook/calculators/shrinkage"
)

var shrinkageBars = &Calculator{
	Name:    "shrinkage-test",
	Title:   "What did my test bars shrink?",
	Purpose: "Works out how much a clay shrinks in drying and in firing, from the marks on its test bars.",
	Inputs: []Input{
		{Name: "plastic", Label: "Between the marks, fresh clay", Help: "As you scratched them in: 100 mm makes the sum easy.", Kind: quantity.Length, List: true, Most: shrinkage.MostBars, Needed: true, First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e5, ""}},
		{Name: "dry", Label: "Between the marks, bone dry", Help: "The same bars in the same order.", Kind: quantity.Length, List: true, Most: shrinkage.MostBars, Needed: true, First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e5, ""}},
		{Name: "fired", Label: "Between the marks, fired", Help: "The same bars in the same order, after the glaze firing.", Kind: quantity.Length, List: true, Most: shrinkage.MostBars, Needed: true, First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e5, ""}},
		{Name: "leather-hard", Label: "Between the marks, leather-hard", Help: "Only if you measured them then: a minute’s work, and it says how much is over when you put slip on or cut a stencil.", Kind: quantity.Length, List: true, Most: shrinkage.MostBars, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e5, ""}},
		{Name: "length-resolution", Label: "The callipers’ smallest step", Help: "0.1 mm for most.", Kind: quantity.Length, Default: "0.1", Low: Limit{Above, 0, ""}, High: Limit{UpTo, 10, ""}},
	},
	Outputs: []Output{
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
	Next: []Next{
		{Words: "What size must I make it?", Calculator: "shrinkage-size", Carry: []Carry{{"shrinkage", "total"}, {"so-far", "so-far"}}},
		{Words: "Will the slip stay on it?", Calculator: "slip-fit", Carry: []Carry{{"body", "total"}, {"body-so-far", "so-far"}, {"bars-ci", "total-ci"}}},
	},
	Example: Example{
		Case:  "Three bars with marks 100 mm apart when fresh.",
		Given: []Setting{{"plastic", "100 100 100"}, {"dry", "94 93.8 94.1"}, {"fired", "88 87.9 88.2"}},
	},
	Table: Table{
		Caption: "One bar with marks 100 mm apart when fresh and 94 mm when dry",
		Down:    "fired", Values: []string{"92 mm", "91 mm", "90 mm", "89 mm", "88 mm", "87 mm", "86 mm", "85 mm", "84 mm"},
		Show: []string{"total", "firing", "volume"},
		Also: []Setting{{"plastic", "100"}, {"dry", "94"}},
	},
	work: workBars,
	draw: drawBars,
}

func workBars(b *bench) {
	plastic, dry, fired := b.list("plastic"), b.list("dry"), b.list("fired")
	b.sameCount("dry", len(dry), len(plastic))
	b.sameCount("fired", len(fired), len(plastic))
	if b.has("leather-hard") {
		b.sameCount("leather-hard", len(b.list("leather-hard")), len(plastic))
	}
	if b.refused() {
		return
	}
	bars := make([]shrinkage.Bar, len(plastic))
	for i := range bars {
		bars[i] = shrinkage.Bar{Plastic: plastic[i], Dry: dry[i], Fired: fired[i]}
		b.barPossible(i, bars[i])
	}
	b.stray("dry", "in drying", plastic, dry)
	b.stray("fired", "in the firing", dry, fired)
	so := b.lossSoFar(plastic, dry)
	if b.refused() {
		return
	}
	b.sayBars(shrinkage.Test(bars, b.value("length-resolution")), bars, so)
}

func (b *bench) sameCount(name string, count, plastic int) {
	if count != plastic {
		b.refuse(name, "This has {}, and fresh clay has {}. Give one of each for every bar, in the same order.", plural(count, "length"), plural(plastic, "length"))
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
func (b *bench) barPossible(i int, bar shrinkage.Bar) {
	switch {
	case bar.Dry > bar.Plastic:
		b.refuseBar(i, "dry", "dry", "plastic", "Bar {} is longer dry ({}) than fresh ({}). Clay does not grow in drying; are the bars in the same order?")
	case shrinkage.Linear(bar.Plastic, bar.Dry) > mostDrying:
		b.refuseBar(i, "dry", "plastic", "dry", "Bar {} would shrink from {} to {} in drying. No clay loses a quarter of its length so; is one of the two mistyped?")
	}
	switch {
	case shrinkage.Linear(bar.Plastic, bar.Fired) > 50:
		b.refuseBar(i, "fired", "plastic", "fired", "Bar {} would shrink from {} to {}. No clay shrinks by more than half; has the decimal mark slipped?")
	case bar.Fired > bar.Plastic:
		b.refuseBar(i, "fired", "fired", "plastic", "Bar {} is longer fired ({}) than fresh ({}). Are the bars in the same order?")
	case shrinkage.Linear(bar.Dry, bar.Fired) < -mostGrowth:
		b.refuseBar(i, "fired", "fired", "dry", "Bar {} is longer fired ({}) than dry ({}). Clay hardly grows in a firing; is one of the two mistyped?")
	}
}

// refuseBar refuses a bar, at one of the lists, by its number and two of its
// lengths as they were typed.
func (b *bench) refuseBar(i int, input, first, second, sentence string) {
	b.answer.refuseValue(input, i, b.words(sentence, strconv.Itoa(i+1), b.typedLength(first, i), b.typedLength(second, i)))
}

// typedLength gives one length of a list in the unit it was typed in.
func (b *bench) typedLength(list string, i int) string {
	q := b.given(list).typed[i]
	return withUnit(b.text(q.Given, 5), q.Unit)
}

// stray refuses the bar that shrank quite otherwise than the others of the
// same clay, and doubts one that merely stands apart.
func (b *bench) stray(input, when string, before, after []float64) {
	if b.refused() {
		return
	}
	losses := make([]float64, len(before))
	for i := range losses {
		losses[i] = shrinkage.Linear(before[i], after[i])
	}
	bar, others, off := shrinkage.Astray(losses)
	said := []string{strconv.Itoa(bar + 1), withUnit(b.text(losses[bar], 3), "%"), when, withUnit(b.text(others, 3), "%")}
	switch {
	case math.Abs(off) > mostStray:
		b.answer.refuseValue(input, bar, b.words("Bar {} would shrink {} {}, and the others about {}. Is one of its lengths mistyped?", said...))
	case math.Abs(off) > likeOthers:
		b.note("Bar {} stands apart: it shrinks {} {}, the others about {}. Measure it again, and leave it out if it is bent or cracked.", said...)
	}
}

// lossSoFar gives the mean loss (%) of the bars at leather-hard; NaN when
// nobody measured it. A bar that is shorter then than bone dry is refused.
func (b *bench) lossSoFar(plastic, dry []float64) float64 {
	if b.refused() || !b.has("leather-hard") {
		return math.NaN()
	}
	sum := 0.0
	for i, length := range b.list("leather-hard") {
		if length > plastic[i] {
			b.refuseBar(i, "leather-hard", "leather-hard", "plastic", "Bar {} is longer leather-hard ({}) than fresh ({}). Are the bars in the same order?")
		} else if length < dry[i] {
			b.refuseBar(i, "leather-hard", "leather-hard", "dry", "Bar {} is shorter leather-hard ({}) than bone dry ({}). Are the bars in the same order?")
		}
		sum += shrinkage.Linear(plastic[i], length)
	}
	return sum / float64(len(plastic))
}

func (b *bench) sayBars(found shrinkage.Bars, bars []shrinkage.Bar, so float64) {
	if math.IsNaN(found.Half) {
		b.set("total", found.Total)
	} else {
		b.setWithin("total", found.Total, found.Half/2)
	}
	b.set("drying", found.Drying)
	b.set("firing", found.Firing)
	b.set("firing-plastic", found.FiringPlastic)
	if !math.IsNaN(so) {
		b.set("so-far", so)
	}
	b.set("volume", shrinkage.Volume(found.Total))
	if !math.IsNaN(found.Half) {
		b.set("total-ci", found.Half)
	}
	b.set("bars", float64(len(bars)))
	b.judgeBars(bars)
	switch {
	case found.Total == 0:
		b.headline("These bars have not shrunk at all. Are the fired lengths those of the fired bars?")
	case len(bars) == 1:
		b.headline("It shrinks {total} in all, by one bar.")
	default:
		b.headline("It shrinks {total} in all.")
	}
	if found.Half == found.Callipers {
		b.note("The bars agree better than the callipers can tell: their step of {length-resolution} alone leaves {total-ci} either way.")
	}
	if len(bars) < 3 {
		b.note("With fewer than three bars nobody can tell luck from clay. Make three.")
	}
	if found.Firing < 0 {
		b.note("The bars grew in the firing. Clay that swells was fired too hot, or the marks were misread.")
	}
}

// judgeBars says whether the bars agree, by the lessons' own rule.
func (b *bench) judgeBars(bars []shrinkage.Bar) {
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
		b.answer.Judged = append(b.answer.Judged, b.words("The totals lie {} apart: "+verdict+". No more than 1\u00a0% is our own rule.", withUnit(b.text(most-least, 2), "%")))
	}
}

func plural(count int, word string) string {
	if count == 1 {
		return "1 " + word
	}
	return strconv.Itoa(count) + " " + word + "s"
}
