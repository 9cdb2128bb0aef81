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
		{Name: "volume", Label: "Strong wash you have", Help: "Stir it before you measure. Blank if there is none yet: the answer says how much to make.", Kind: quantity.Volume, First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e7, ""}},
		{Name: "from", Label: "Its strength", Help: "Grams of dry powder in 100 mL, from the cup’s label.", Kind: quantity.Strength, Needed: true, First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 500, ""}},
		{Name: "to", Label: "Strength wanted", Help: "Grams of dry powder in 100 mL; for a ladder, that of the palest cup. Our lesson goes down to a sixteenth.", Kind: quantity.Strength, Needed: true, First: true,
			Low: Limit{Above, 0, "A strength of 0 is plain water: no amount of water brings a wash that far. Give a number above 0."}, High: Limit{UpTo, 500, ""}},
		{Name: "steps", Label: "Different strengths", Help: "Leave 1 to thin it all alike. From 2 on you get a ladder, the strongest and the palest counted.", Kind: quantity.Number, Default: "1", First: true, Whole: true, Low: Limit{From, 1, ""}, High: Limit{UpTo, 50, ""}},
		{Name: "cups", Label: "How many cups of each", Help: "One for every person or table that gets the same strength.", Kind: quantity.Number, Default: "1", First: true, Whole: true, Low: Limit{From, 1, ""}, High: Limit{UpTo, 1000, ""}},
		{Name: "each", Label: "Amount in a cup", Help: "Blank: as large as the strong wash allows.", Kind: quantity.Volume, First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e6, ""}},
	},
	Outputs: []Output{
		{Name: "stock-to-make", Label: "Strong wash to make", Unit: "mL", Digits: 4, As: Poured},
		{Name: "stock-needed", Label: "Strong wash for these cups", Unit: "mL", Digits: 4, As: Poured},
		{Name: "water-needed", Label: "Water for these cups", Unit: "mL", Digits: 4, As: Poured},
		{Name: "water-to-add", Label: "Water to add", Unit: "mL", Digits: 4, As: Poured},
		{Name: "new-volume", Label: "It then makes", Unit: "mL", Digits: 4, As: Poured},
		{Name: "water-parts", Label: "Water to 1 part of stain and 1 of flux, for that strength", Unit: "1", Digits: 3, Aside: true},
	},
	Columns: []Column{
		{Name: "cup", Label: "Cup", Unit: "1", Digits: 2},
		{Name: "strength", Label: "Strength", Unit: "g/100 mL", Digits: 3},
		{Name: "stock", Label: "Strong wash", Unit: "mL", Digits: 3},
		{Name: "water", Label: "Water", Unit: "mL or g", Digits: 3},
		{Name: "ratio", Label: "Wash + water", Text: true},
		{Name: "all-stock", Label: "For all cups of it: strong wash", Unit: "mL", Digits: 4},
		{Name: "all-water", Label: "and water", Unit: "mL or g", Digits: 4},
	},
	Notes: []string{
		"Stir before you measure, every time: what stands is weak on top and strong below.",
		"The cups of a ladder go down by equal ratios, not by equal amounts. That is what the eye sees as equal steps.",
		"Water may be weighed: 1 mL of it is 1 g. On a fine scale that is quicker than a small syringe, and closer.",
		"“1 + 3” means 1 part of wash and 3 parts of water, 4 parts together.",
	},
	Hazards: []string{wetColour, washColour},
	Cautions: []string{
		"Cups, syringe and jug that held a wash never go back to a kitchen.",
	},
	Next: []Next{
		{Words: "Mix that strong wash", Calculator: "wash-mix", Carry: []Carry{{"volume", "stock-to-make"}, {"water-parts", "water-parts"}}, If: "stock-to-make"},
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
	strong, pale, cups := b.value("from"), b.value("to"), int(b.value("steps"))
	if pale > strong {
		b.refuse("to", "Water cannot make a wash stronger: {to} is more than the {from} it has now. Weigh in more powder instead.")
	}
	if !b.has("volume") && !b.has("each") {
		b.refuse("volume", "Give one of these: the strong wash you have, or the amount in a cup. With the second alone the answer says how much to make.")
	}
	switch {
	case b.refused():
	case cups > 1:
		b.ladder(strong, pale, cups)
	case b.has("volume"):
		b.thinLot(strong, pale)
		b.judgeTint(strong, pale)
	default:
		b.thinFor(strong, pale)
		b.judgeTint(strong, pale)
	}
}

// mostWash is the most (g dry in 100 mL) that is still a wash. Above it stands
// underglaze, or a jar that is called 100 whatever is in it.
const mostWash = 60

// judgeTint judges the strength that a wash is thinned to. The cups of a ladder
// are not judged: most of them are pale on purpose.
func (b *bench) judgeTint(strong, pale float64) {
	if strong <= mostWash {
		b.judge(OfWash, pale, b.shown("to"))
	}
}

// thinLot thins all the strong wash there is, and says whether that fills the
// cups that were asked for.
func (b *bench) thinLot(strong, pale float64) {
	volume := b.value("volume")
	becomes := wash.Thin(volume, strong, pale)
	if strong == pale {
		becomes = volume // exactly, whatever the sum was rounded to
	}
	b.set("water-to-add", becomes-volume)
	b.set("new-volume", becomes)
	b.sayLot(becomes - volume)
	if !b.has("each") {
		if cups := b.value("cups"); cups > 1 {
			b.note("Parted among {cups} cups, that is {} in each.", b.millilitres(becomes/cups))
		}
		return
	}
	asked := float64(b.value("cups") * b.value("each"))
	if b.lacks(asked, becomes) {
		stock := wash.Thin(asked, pale, strong)
		b.setStock(stock, strong)
		b.headline("{} need {stock-needed} of strong wash; you have {volume}.", b.cupsOf(1))
		return
	}
	b.note("That fills {}.", b.cupsOf(1))
}

// mostWeighed is the most water (g) that anybody weighs into a wash.
const mostWeighed = 5000

// sayLot says how much water (mL) thins all of it.
func (b *bench) sayLot(water float64) {
	switch {
	case water == 0:
		b.headline("Nothing to do: it has this strength already.")
	case !b.weighable("water-to-add"):
		b.headline("The water is {water-to-add}: thin a larger lot.")
	case water > mostWeighed:
		b.headline("Add {water-to-add} of water; it then makes {new-volume}.")
	default:
		b.headline("Add {water-to-add} of water, or weigh in {}; it then makes {new-volume}.", b.amount(water, "g", 4, 0, Weighed))
	}
}

// thinFor says what fills the cups that were asked for, of one strength, when
// there is no strong wash yet.
func (b *bench) thinFor(strong, pale float64) {
	asked := float64(b.value("cups") * b.value("each"))
	stock := wash.Thin(asked, pale, strong)
	b.setStock(stock, strong)
	b.set("water-to-add", asked-stock)
	b.set("new-volume", asked)
	b.headline("Make {stock-needed} of strong wash and add {water-to-add} of water: that fills {}.", b.cupsOf(1))
	if strong == pale {
		b.headline("Make {stock-needed} of it, without more water: that fills {}.", b.cupsOf(1))
	}
}

// setStock says what strong wash (mL) the cups take, and what of it is still to
// be made, with the water that makes the usual wash of equal parts as strong.
func (b *bench) setStock(stock, strong float64) {
	have := b.value("volume")
	if !b.lacks(stock, have) {
		b.set("stock-needed", stock)
		return
	}
	b.set("stock-to-make", stock-have)
	b.set("stock-needed", stock)
	equal := wash.Parts{Stain: 1, Flux: 1, StainDensity: 4.5, FluxDensity: 2.5}
	if water := equal.WaterFor(strong); water > 0 {
		b.set("water-parts", water)
	}
}

// millilitres writes an amount (mL) of wash to three figures.
func (b *bench) millilitres(volume float64) string { return b.amount(volume, "mL", 3, 0, Reckoned) }

// lacks reports whether more is wanted than there is, by more than what the
// answer shows.
func (b *bench) lacks(wanted, there float64) bool {
	return wanted > there && b.text(wanted, 4) != b.text(there, 4)
}

// cupsOf words all the cups of so many strengths: "12 cups of 30 mL".
func (b *bench) cupsOf(strengths int) string {
	return plural(strengths*int(b.value("cups")), "cup") + " of " + b.shown("each")
}

// ladder gives cups of several strengths. Their size is what was asked for, or
// what the strong wash allows.
func (b *bench) ladder(strong, pale float64, strengths int) {
	volume, each, alike := b.value("volume"), b.value("each"), b.value("cups")
	if !b.has("each") {
		each = wash.EachFrom(volume, strong, pale, strengths) / alike
	}
	var stock, water float64
	for i, cup := range wash.Ladder(strong, pale, each, strengths) {
		ratio := "1 + " + b.text(cup.Water/cup.Stock, 3)
		row := []any{float64(i + 1), cup.Strength, cup.Stock, cup.Water, ratio}
		if alike > 1 {
			row = append(row, float64(cup.Stock*alike), float64(cup.Water*alike))
		}
		b.row(row...)
		stock += float64(cup.Stock * alike)
		water += float64(cup.Water * alike)
	}
	b.setStock(stock, strong)
	b.set("water-needed", water)
	b.sayLadder(stock, each, strengths)
	if strong == pale {
		b.note("All cups are alike: the palest has the strength of the strongest. Give a smaller number for a ladder.")
	}
	if least := b.answer.Rows[strengths-1][2].Value; least < leastDrawn {
		b.note("The palest cup takes {} of strong wash, too little to measure well. Fill it from the cup before it, or make larger cups.", withUnit(b.text(least, 2), "mL"))
	}
}

// leastDrawn is the least (mL) that a small syringe measures to a tenth: its
// marks stand 0.2 mL apart, and half a mark is seen.
const leastDrawn = 1.0

// sayLadder says first what the cups are, what is to be made for them, or what
// is lacking.
func (b *bench) sayLadder(stock, each float64, strengths int) {
	size := b.millilitres(each)
	all := strengths * int(b.value("cups"))
	parted := ""
	if b.value("cups") > 1 {
		parted = ", {cups} of each of {steps} strengths"
	}
	switch {
	case !b.has("volume"):
		b.headline("Make {stock-needed} of strong wash: it fills {} of {}"+parted+".", plural(all, "cup"), size)
	case b.has("each") && b.lacks(stock, b.value("volume")):
		b.headline("These {} need {stock-needed} of strong wash; you have {volume}.", plural(all, "cup"))
		smaller := float64(each*b.value("volume")) / stock
		b.note("Make {stock-to-make} more, or fill each cup with {} only.", b.millilitres(smaller))
	default:
		b.headline("{} of {}"+parted+", from strength {from} down to {to}.", plural(all, "cup"), size)
	}
}
