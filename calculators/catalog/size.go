package catalog

import (
	"slipbook/calculators/quantity"
	"slipbook/calculators/shrinkage"
)

var shrinkageSize = &Calculator{
	Name:    "shrinkage-size",
	Title:   "What size must I make it?",
	Purpose: "Turns a fired size into the size to make now, or the other way round, and gives the copier setting for a template.",
	Inputs: []Input{
		{Name: "shrinkage", Label: "The clay shrinks in all", Help: "From fresh to fired, from your own test bars.", Kind: quantity.Percent, Needed: true, First: true, Low: from(0),
			High: upTo(50).because("No clay shrinks by more than half. Give percent, for example 12.")},
		{Name: "wet-size", Label: "Size now", Help: "If you know the size on the clay and want the fired one.", Kind: quantity.Length, Group: "size", First: true, Low: above(0), High: upTo(1e5)},
		{Name: "fired-size", Label: "Fired size", Help: "If you know the size you want out of the kiln.", Kind: quantity.Length, Group: "size", First: true, Low: above(0), High: upTo(1e5)},
		{Name: "so-far", Label: "Shrunk so far", Help: "Of the fresh length. Common figures for a clay that shrinks 12 %: 0 fresh, about 3 leather-hard, about 6 bone dry. Your own bars know better.", Kind: quantity.Percent, Default: "0", Low: from(0), High: upTo(50)},
		{Name: "capacity-wet", Label: "Holds now", Help: "If you know what the fresh pot holds.", Kind: quantity.Volume, Group: "capacity", Low: above(0), High: upTo(1e7)},
		{Name: "capacity-fired", Label: "Must hold when fired", Help: "If you know what the fired pot must hold.", Kind: quantity.Volume, Group: "capacity", Low: above(0), High: upTo(1e7)},
	},
	Outputs: []Output{
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
	Example: Example{
		Case:  "A mug is to be 90 mm wide when fired, in a clay that shrinks 12 %.",
		Given: []Setting{{"shrinkage", "12"}, {"fired-size", "90 mm"}},
	},
	Table: Table{
		Caption: "Size to make now, mm",
		Down:    "fired-size", Values: []string{"20 mm", "50 mm", "80 mm", "100 mm", "120 mm", "150 mm", "200 mm", "250 mm", "300 mm"},
		Across: "shrinkage", AcrossValues: []string{"6 %", "8 %", "10 %", "12 %", "14 %", "16 %"},
		Show: []string{"wet-size"},
	},
	work: workSize,
	draw: drawSize,
}

func workSize(b *bench) {
	total, sofar := b.value("shrinkage"), b.value("so-far")
	if sofar > total {
		b.refuse("so-far", "The clay cannot have shrunk {so-far} already when it shrinks {shrinkage} in all.")
	}
	if !b.has("wet-size") && !b.has("fired-size") && !b.has("capacity-wet") && !b.has("capacity-fired") {
		b.refuse("fired-size", "Give one size: the size now, or the fired size. Or give what it holds.")
	}
	if b.refused() {
		return
	}
	remaining := shrinkage.Remaining(total, sofar)
	switch {
	case b.has("wet-size"):
		b.set("fired-size", shrinkage.Fired(b.value("wet-size"), remaining))
		b.headline("Fired, it will be {fired-size}.")
	case b.has("fired-size"):
		b.set("wet-size", shrinkage.Fresh(b.value("fired-size"), remaining))
		b.headline("Make it {wet-size} now.")
	}
	b.set("remaining", remaining)
	b.set("enlargement", shrinkage.Enlargement(remaining))
	b.set("template-scale", 100+shrinkage.Enlargement(remaining))
	b.capacity(remaining)
	if sofar > 0 {
		b.note("Sizes “now” are of the clay as it is, with {so-far} of the fresh length gone already.")
	}
}

func (b *bench) capacity(remaining float64) {
	switch {
	case b.has("capacity-wet"):
		b.set("capacity-fired", shrinkage.FiredCapacity(b.value("capacity-wet"), remaining))
		b.capacityHeadline("Fired, it will hold {capacity-fired}.")
	case b.has("capacity-fired"):
		b.set("capacity-wet", shrinkage.FreshCapacity(b.value("capacity-fired"), remaining))
		b.capacityHeadline("It must hold {capacity-wet} now.")
	}
}

// capacityHeadline says the capacity after the size, when there is one.
func (b *bench) capacityHeadline(sentence string) {
	size := b.answer.Headline
	b.headline(sentence)
	if size != "" {
		b.answer.Headline = size + " " + b.answer.Headline
	}
}
