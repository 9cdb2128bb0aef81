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
		marks("plastic", "Between the marks, fresh clay", "As you scratched them in: 100 mm makes the sum easy."),
		marks("dry", "Between the marks, bone dry", "The same bars in the same order."),
		marks("fired", "Between the marks, fired", "The same bars in the same order, after the glaze firing."),
	},
	Outputs: []Output{
		{Name: "total", Label: "Shrinks in all", Unit: "%", Digits: 4},
		{Name: "drying", Label: "In drying, of the fresh length", Unit: "%", Digits: 4},
		{Name: "firing", Label: "In firing, of the dry length", Unit: "%", Digits: 4},
		{Name: "firing-plastic", Label: "In firing, of the fresh length", Unit: "%", Digits: 4, Aside: true},
		{Name: "volume", Label: "Volume shrinks by", Unit: "%", Digits: 4},
		{Name: "total-ci", Label: "Sure to within, ± (95 %)", Unit: "%", Digits: 2},
		{Name: "bars", Label: "Bars", Unit: "1", Digits: 3, Aside: true},
	},
	Notes: []string{
		"Make three bars or more, dry them flat and turn them, and scratch the same marks into each.",
		"Drying and firing percentages are of different lengths. They must not be added: 6 % and then 7 % make 12.58 %, not 13 %.",
		"The figure belongs to this clay at this cone. Another cone, another figure.",
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

func marks(name, label, help string) Input {
	return Input{Name: name, Label: label, Help: help, Kind: quantity.Length, Needed: true, List: true, Most: shrinkage.MostBars, First: true, Low: above(0), High: upTo(1e5)}
}

func workBars(b *bench) {
	plastic, dry, fired := b.list("plastic"), b.list("dry"), b.list("fired")
	b.sameCount("dry", len(dry), len(plastic))
	b.sameCount("fired", len(fired), len(plastic))
	if b.refused() {
		return
	}
	bars := make([]shrinkage.Bar, len(plastic))
	for i := range bars {
		bars[i] = shrinkage.Bar{Plastic: plastic[i], Dry: dry[i], Fired: fired[i]}
		b.barPossible(i, bars[i])
	}
	if b.refused() {
		return
	}
	found := shrinkage.Test(bars)
	b.set("total", found.Total)
	b.set("drying", found.Drying)
	b.set("firing", found.Firing)
	b.set("firing-plastic", found.FiringPlastic)
	b.set("volume", shrinkage.Volume(found.Total))
	if !math.IsNaN(found.Half) {
		b.set("total-ci", found.Half)
	}
	b.set("bars", float64(len(bars)))
	b.sayBars(found, len(bars))
}

func (b *bench) sayBars(found shrinkage.Bars, bars int) {
	b.headline("It shrinks {total} in all.")
	if bars > 1 {
		b.headline("It shrinks {total} in all, give or take {total-ci}.")
	}
	if bars < 3 {
		b.note("With fewer than three bars nobody can tell luck from clay. Make three.")
	}
	if found.Firing < 0 {
		b.note("The bars grew in the firing. Clay that swells was fired too hot, or the marks were misread.")
	}
}

func (b *bench) sameCount(name string, count, plastic int) {
	if count != plastic {
		b.refuse(name, "This has {}, and fresh clay has {}. Give one of each for every bar, in the same order.", plural(count, "length"), plural(plastic, "length"))
	}
}

func (b *bench) barPossible(i int, bar shrinkage.Bar) {
	number := strconv.Itoa(i + 1)
	if bar.Dry > bar.Plastic {
		b.refuse("dry", "Bar {} is longer dry ({} mm) than fresh ({} mm). Clay does not grow in drying; are the bars in the same order?", number, b.text(bar.Dry, 5), b.text(bar.Plastic, 5))
	}
	if shrinkage.Linear(bar.Plastic, bar.Fired) > 50 {
		b.refuse("fired", "Bar {} would shrink from {} mm to {} mm. No clay shrinks by more than half; has the decimal mark slipped?", number, b.text(bar.Plastic, 5), b.text(bar.Fired, 5))
	}
	if bar.Fired > bar.Plastic {
		b.refuse("fired", "Bar {} is longer fired ({} mm) than fresh ({} mm). Are the bars in the same order?", number, b.text(bar.Fired, 5), b.text(bar.Plastic, 5))
	}
}

func plural(count int, word string) string {
	if count == 1 {
		return "1 " + word
	}
	return strconv.Itoa(count) + " " + word + "s"
}
