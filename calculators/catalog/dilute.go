package catalog

import (
	"slipbook/calculators/quantity"
	"slipbook/calculators/wash"
)

var washDilute = &Calculator{
	Name:    "wash-dilute",
	Title:   "Thin a wash, or make a ladder of cups",
	Purpose: "Says how much water brings a wash to a weaker strength, in one go or in cups of equal ratios.",
	Inputs: []Input{
		{Name: "volume", Label: "Strong wash you have", Help: "Stir it before you measure.", Kind: quantity.Volume, Needed: true, First: true, Low: above(0), High: upTo(1e7)},
		{Name: "from", Label: "Its strength", Help: "Grams of dry powder in 100 mL, from the cup’s label.", Kind: quantity.Strength, Needed: true, First: true, Low: above(0), High: upTo(500)},
		{Name: "to", Label: "Strength wanted", Help: "Grams of dry powder in 100 mL; for a ladder, that of the palest cup.", Kind: quantity.Strength, Needed: true, First: true,
			Low: above(0).because("A strength of 0 is plain water: no amount of water brings a wash that far. Give a number above 0."), High: upTo(500)},
		{Name: "steps", Label: "Cups in the ladder", Help: "Leave 1 to thin the whole lot at once. From 2 on, the strongest and the palest cup count too.", Kind: quantity.Number, Default: "1", First: true, Whole: true, Low: from(1), High: upTo(50)},
		{Name: "each", Label: "Amount in a cup", Help: "For a ladder. Blank: as large as the strong wash allows.", Kind: quantity.Volume, First: true, Low: above(0), High: upTo(1e6)},
	},
	Outputs: []Output{
		{Name: "water-to-add", Label: "Water to thin the whole lot", Unit: "mL", Digits: 4},
		{Name: "new-volume", Label: "It then makes", Unit: "mL", Digits: 4},
	},
	Columns: []Column{
		{Name: "cup", Label: "Cup", Unit: "1", Digits: 2},
		{Name: "strength", Label: "Strength", Unit: "g/100 mL", Digits: 3},
		{Name: "stock", Label: "Strong wash", Unit: "mL", Digits: 3},
		{Name: "water", Label: "Water", Unit: "mL", Digits: 3},
		{Name: "ratio", Label: "Wash + water", Text: true},
	},
	Notes: []string{
		"Stir before you measure, every time: what stands is weak on top and strong below.",
		"The cups of a ladder go down by equal ratios, not by equal amounts. That is what the eye sees as equal steps.",
		"“1 + 3” means 1 part of wash and 3 parts of water, 4 parts together.",
	},
	Example: Example{
		Case:  "90 mL of wash of strength 18.83 is thinned to a ladder of four cups, the palest of strength 3.",
		Given: []Setting{{"volume", "90 mL"}, {"from", "18.83"}, {"to", "3"}, {"steps", "4"}},
	},
	Table: Table{
		Caption: "Water to add to 100 mL of wash, mL",
		Down:    "from", Values: []string{"20 g/100 mL", "18 g/100 mL", "16 g/100 mL", "14 g/100 mL", "12 g/100 mL", "10 g/100 mL", "8 g/100 mL"},
		Across: "to", AcrossValues: []string{"10 g/100 mL", "8 g/100 mL", "6 g/100 mL", "4 g/100 mL", "2 g/100 mL"},
		Show: []string{"water-to-add"},
		Also: []Setting{{"volume", "100 mL"}, {"steps", "1"}},
	},
	work: workDilute,
	draw: drawDilute,
}

func workDilute(b *bench) {
	volume, strong, pale := b.value("volume"), b.value("from"), b.value("to")
	if pale > strong {
		b.refuse("to", "Water cannot make a wash stronger: {to} is more than the {from} it has now. Weigh in more powder instead.")
		return
	}
	becomes := wash.Thin(volume, strong, pale)
	b.set("water-to-add", becomes-volume)
	b.set("new-volume", becomes)
	cups := int(b.value("steps"))
	if cups == 1 {
		b.unused("each", "“Amount in a cup” is for a ladder of two cups or more. The whole lot is thinned at once.")
		b.headline("Add {water-to-add} of water; it then makes {new-volume}.")
		return
	}
	each := b.value("each")
	if !b.has("each") {
		each = wash.EachFrom(volume, strong, pale, cups)
	}
	b.ladder(wash.Ladder(strong, pale, each, cups), volume, each)
}

func (b *bench) ladder(cups []wash.Cup, volume, each float64) {
	needed := 0.0
	for i, cup := range cups {
		ratio := "1 + " + b.text(cup.Water/cup.Stock, 3)
		b.row(float64(i+1), cup.Strength, cup.Stock, cup.Water, ratio)
		needed += cup.Stock
	}
	b.headline("{steps} cups of {}, from strength {from} down to {to}.", withUnit(b.text(each, 3), "mL"))
	if b.has("each") && needed > volume {
		b.note("These cups take {} of strong wash, and you have {volume}. Make more, or smaller cups.", withUnit(b.text(needed, 4), "mL"))
	}
}
