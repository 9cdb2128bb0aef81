package catalog

import (
	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/wash"
)

var washDilute = &form.Calculator{
	Name:    "wash-dilute",
	Title:   "Thin a wash, or make a ladder of cups",
	Purpose: "Says how much water brings a wash to a weaker strength, in one go or in cups of equal ratios.",
	Inputs: []form.Input{
		{Name: "volume", Label: "Strong wash you have", Help: "Stir it before you measure. Blank if there is none yet: the answer says how much to make.", Kind: quantity.Volume, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "from", Label: "Its strength", Help: "Grams of dry powder in 100 mL, from the cup’s label.", Kind: quantity.Strength, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 500}},
		{Name: "to", Label: "Strength wanted", Help: "Grams of dry powder in 100 mL; for a ladder, that of the palest cup. Our lesson goes down to a sixteenth.", Kind: quantity.Strength, Needed: true, First: true,
			Low: form.Limit{End: form.Above, Why: "A strength of 0 is plain water: no amount of water brings a wash that far. Give a number above 0."}, High: form.Limit{End: form.UpTo, Value: 500}},
		{Name: "steps", Label: "Different strengths", Help: "Leave 1 to thin it all alike. From 2 on you get a ladder, the strongest and the palest counted.", Kind: quantity.Number, Default: "1", First: true, Whole: true, Low: form.Limit{End: form.From, Value: 1}, High: form.Limit{End: form.UpTo, Value: 50}},
		{Name: "cups", Label: "How many cups of each", Help: "One for every person or table that gets the same strength.", Kind: quantity.Number, Default: "1", First: true, Whole: true, Low: form.Limit{End: form.From, Value: 1}, High: form.Limit{End: form.UpTo, Value: 1000}},
		{Name: "each", Label: "Amount in a cup", Help: "Blank: as large as the strong wash allows.", Kind: quantity.Volume, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
	},
	Outputs: []form.Output{
		{Name: "stock-to-make", Label: "Strong wash to make", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "stock-needed", Label: "Strong wash for these cups", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "water-needed", Label: "Water for these cups", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "water-to-add", Label: "Water to add", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "new-volume", Label: "It then makes", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "water-parts", Label: "Water to 1 part of stain and 1 of flux, for that strength", Unit: "1", Digits: 3, Aside: true},
	},
	Columns: []form.Column{
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
	Next: []form.Next{
		{Words: "Mix that strong wash", Calculator: "wash-mix", Carry: []form.Carry{{Into: "volume", From: "stock-to-make"}, {Into: "water-parts", From: "water-parts"}}, If: "stock-to-make"},
	},
	Work: workDilute,
	Draw: drawDilute,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		washDilute.Example = form.Example{
			Case:  "90 mL of wash of strength 18.83 is thinned to a ladder of four cups, the palest of strength 3.",
			Given: []form.Setting{{Name: "volume", Text: "90 mL"}, {Name: "from", Text: "18.83"}, {Name: "to", Text: "3"}, {Name: "steps", Text: "4"}},
		}
		washDilute.Table = form.Table{
			Caption: "Water to add to 100 mL of wash, mL",
			Down:    "from", Values: []string{"20 g/100 mL", "18 g/100 mL", "16 g/100 mL", "14 g/100 mL", "12 g/100 mL", "10 g/100 mL", "8 g/100 mL"},
			Across: "to", AcrossValues: []string{"10 g/100 mL", "8 g/100 mL", "6 g/100 mL", "4 g/100 mL", "2 g/100 mL"},
			Show: []string{"water-to-add"},
			Also: []form.Setting{{Name: "volume", Text: "100 mL"}, {Name: "steps", Text: "1"}},
		}
		washDilute.Formulas = diluteFormulas
	}
}

func workDilute(e *form.Evaluation) {
	strong, pale, cups := e.Value("from"), e.Value("to"), int(e.Value("steps"))
	if pale > strong {
		e.Refuse("to", "Water cannot make a wash stronger: {to} is more than the {from} it has now. Weigh in more powder instead.")
	}
	if !e.Has("volume") && !e.Has("each") {
		e.Refuse("volume", "Give one of these: the strong wash you have, or the amount in a cup. With the second alone the answer says how much to make.")
	}
	switch {
	case e.Refused():
	case cups > 1:
		ladder(e, strong, pale, cups)
	case e.Has("volume"):
		thinLot(e, strong, pale)
		judgeTint(e, strong, pale)
	default:
		thinFor(e, strong, pale)
		judgeTint(e, strong, pale)
	}
}

// mostWash is the most (g dry in 100 mL) that is still a wash. Above it stands
// underglaze, or a jar that is called 100 whatever is in it.
const mostWash = 60

// judgeTint judges the strength that a wash is thinned to. The cups of a ladder
// are not judged: most of them are pale on purpose.
func judgeTint(e *form.Evaluation, strong, pale float64) {
	if strong <= mostWash {
		e.Judge(form.OfWash, pale, e.Shown("to"))
	}
}

// thinLot thins all the strong wash there is, and says whether that fills the
// cups that were asked for.
func thinLot(e *form.Evaluation, strong, pale float64) {
	volume := e.Value("volume")
	becomes := wash.Thin(volume, strong, pale)
	if strong == pale {
		becomes = volume // exactly, whatever the sum was rounded to
	}
	e.Set("water-to-add", becomes-volume)
	e.Set("new-volume", becomes)
	sayLot(e, becomes-volume)
	if !e.Has("each") {
		if cups := e.Value("cups"); cups > 1 {
			e.Note("Parted among {cups} cups, that is {} in each.", millilitres(e, becomes/cups))
		}
		return
	}
	asked := float64(e.Value("cups") * e.Value("each"))
	if lacks(e, asked, becomes) {
		stock := wash.Thin(asked, pale, strong)
		setStock(e, stock, strong)
		e.Headline("{} need {stock-needed} of strong wash; you have {volume}.", cupsOf(e, 1))
		return
	}
	e.Note("That fills {}.", cupsOf(e, 1))
}

// mostWeighed is the most water (g) that anybody weighs into a wash.
const mostWeighed = 5000

// sayLot says how much water (mL) thins all of it.
func sayLot(e *form.Evaluation, water float64) {
	switch {
	case water == 0:
		e.Headline("Nothing to do: it has this strength already.")
	case !e.Weighable("water-to-add"):
		e.Headline("The water is {water-to-add}: thin a larger lot.")
	case water > mostWeighed:
		e.Headline("Add {water-to-add} of water; it then makes {new-volume}.")
	default:
		e.Headline("Add {water-to-add} of water, or weigh in {}; it then makes {new-volume}.", e.Amount(water, "g", 4, 0, form.Weighed))
	}
}

// thinFor says what fills the cups that were asked for, of one strength, when
// there is no strong wash yet.
func thinFor(e *form.Evaluation, strong, pale float64) {
	asked := float64(e.Value("cups") * e.Value("each"))
	stock := wash.Thin(asked, pale, strong)
	setStock(e, stock, strong)
	e.Set("water-to-add", asked-stock)
	e.Set("new-volume", asked)
	e.Headline("Make {stock-needed} of strong wash and add {water-to-add} of water: that fills {}.", cupsOf(e, 1))
	if strong == pale {
		e.Headline("Make {stock-needed} of it, without more water: that fills {}.", cupsOf(e, 1))
	}
}

// setStock says what strong wash (mL) the cups take, and what of it is still to
// be made, with the water that makes the usual wash of equal parts as strong.
func setStock(e *form.Evaluation, stock, strong float64) {
	have := e.Value("volume")
	if !lacks(e, stock, have) {
		e.Set("stock-needed", stock)
		return
	}
	e.Set("stock-to-make", stock-have)
	e.Set("stock-needed", stock)
	equal := wash.Parts{Stain: 1, Flux: 1, StainDensity: 4.5, FluxDensity: 2.5}
	if water := equal.WaterFor(strong); water > 0 {
		e.Set("water-parts", water)
	}
}

// millilitres writes an amount (mL) of wash to three figures.
func millilitres(e *form.Evaluation, volume float64) string {
	return e.Amount(volume, "mL", 3, 0, form.Reckoned)
}

// lacks reports whether more is wanted than there is, by more than what the
// answer shows.
func lacks(e *form.Evaluation, wanted, there float64) bool {
	return wanted > there && e.Text(wanted, 4) != e.Text(there, 4)
}

// cupsOf words all the cups of so many strengths: "12 cups of 30 mL".
func cupsOf(e *form.Evaluation, strengths int) string {
	return form.Plural(strengths*int(e.Value("cups")), "cup") + " of " + e.Shown("each")
}

// ladder gives cups of several strengths. Their size is what was asked for, or
// what the strong wash allows.
func ladder(e *form.Evaluation, strong, pale float64, strengths int) {
	volume, each, alike := e.Value("volume"), e.Value("each"), e.Value("cups")
	if !e.Has("each") {
		each = wash.EachFrom(volume, strong, pale, strengths) / alike
	}
	var stock, water float64
	for i, cup := range wash.Ladder(strong, pale, each, strengths) {
		ratio := "1 + " + e.Text(cup.Water/cup.Stock, 3)
		row := []any{float64(i + 1), cup.Strength, cup.Stock, cup.Water, ratio}
		if alike > 1 {
			row = append(row, float64(cup.Stock*alike), float64(cup.Water*alike))
		}
		e.Row(row...)
		stock += float64(cup.Stock * alike)
		water += float64(cup.Water * alike)
	}
	setStock(e, stock, strong)
	e.Set("water-needed", water)
	sayLadder(e, stock, each, strengths)
	if strong == pale {
		e.Note("All cups are alike: the palest has the strength of the strongest. Give a smaller number for a ladder.")
	}
	if least := e.Answer.Rows[strengths-1][2].Value; least < leastDrawn {
		e.Note("The palest cup takes {} of strong wash, too little to measure well. Fill it from the cup before it, or make larger cups.", form.WithUnit(e.Text(least, 2), "mL"))
	}
}

// leastDrawn is the least (mL) that a small syringe measures to a tenth: its
// marks stand 0.2 mL apart, and half a mark is seen.
const leastDrawn = 1.0

// sayLadder says first what the cups are, what is to be made for them, or what
// is lacking.
func sayLadder(e *form.Evaluation, stock, each float64, strengths int) {
	size := millilitres(e, each)
	all := strengths * int(e.Value("cups"))
	parted := ""
	if e.Value("cups") > 1 {
		parted = ", {cups} of each of {steps} strengths"
	}
	switch {
	case !e.Has("volume"):
		e.Headline("Make {stock-needed} of strong wash: it fills {} of {}"+parted+".", form.Plural(all, "cup"), size)
	case e.Has("each") && lacks(e, stock, e.Value("volume")):
		e.Headline("These {} need {stock-needed} of strong wash; you have {volume}.", form.Plural(all, "cup"))
		smaller := float64(each*e.Value("volume")) / stock
		e.Note("Make {stock-to-make} more, or fill each cup with {} only.", millilitres(e, smaller))
	default:
		e.Headline("{} of {}"+parted+", from strength {from} down to {to}.", form.Plural(all, "cup"), size)
	}
}

// drawDilute shows the cups, each with its share of strong wash below and
// water above; or the one vessel before and after.
func drawDilute(e *form.Evaluation) string {
	if len(e.Answer.Rows) == 0 {
		after, _ := e.Result("new-volume")
		water, _ := e.Result("water-to-add")
		d := sheet(e, "The wash before, and after {water-to-add} of water, to one scale.")
		scale := (sketch.JarFloor - sketch.JarTop) / after.Value
		level := float64((after.Value - water.Value) * scale)
		d.Pair(level, brief(e, "+ {water-to-add}"), e.Words("{from}"), e.Words("{to}"), sketch.Layer{Class: "water", Height: sketch.JarFloor - sketch.JarTop - level})
		return d.String()
	}
	rows := e.Answer.Rows
	shown := rows
	if len(shown) > 8 {
		shown = rows[:8] // more would be too narrow to read; the table has them all
	}
	d := sheet(e, "The cups, strong wash below and water above: {}.", ladderWords(rows))
	room := (sketch.Width - 40) / float64(len(shown))
	for i, row := range shown {
		full := row[2].Value + row[3].Value
		stock := (sketch.JarFloor - sketch.JarTop) * row[2].Value / full
		x := 20 + float64(float64(i)*room)
		d.Jar(x+8, room-16, sketch.JarTop-20, sketch.Layer{Class: "colour", Height: stock}, sketch.Layer{Class: "water", Height: sketch.JarFloor - sketch.JarTop - stock})
		d.Words(row[1].Text, x+room/2, sketch.JarFloor+32, 24, "middle")
	}
	return d.String()
}

func ladderWords(rows [][]form.Cell) string {
	var cups []string
	for _, row := range rows {
		cups = append(cups, "strength "+row[1].Text)
	}
	return form.Listing(cups)
}

func diluteFormulas() []Formula {
	return []Formula{
		{
			Math: Equal(Sub(Letter("V"), Number("2")), Row(Sub(Letter("V"), One), Times, Fraction(Sub(Letter("c"), One), Sub(Letter("c"), Number("2"))))),
			Where: []Symbol{
				{Letter: "V_1, V_2", Means: "volume of the wash before and after, mL"},
				{Letter: "c_1, c_2", Means: "its strength before and after, g in 100 mL"},
			},
		},
		{
			Math: Equal(Sub(Letter("c"), Letter("i")), Row(Sub(Letter("c"), One), Times, Power(Bracket(Fraction(Sub(Letter("c"), Letter("n")), Sub(Letter("c"), One))), Fraction(Row(Letter("i"), Minus, One), Row(Letter("n"), Minus, One))))),
			Where: []Symbol{
				{Letter: "c_i", Means: "strength of cup i of n; the first is the strongest, the last the palest"},
			},
		},
		{
			Math: Equal(Words("strong wash"), Row(Letter("k"), Times, Letter("E"), Times, Bracket(Fraction(Row(Sub(Letter("c"), One), Plus, Words("…"), Plus, Sub(Letter("c"), Letter("n"))), Sub(Letter("c"), One))))),
			Where: []Symbol{
				{Letter: "k", Means: "cups of each strength"},
				{Letter: "E", Means: "amount in a cup, mL"},
			},
		},
	}
}
