package catalog

import (
	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/wash"
)

var washDilute = &form.Calculator{
	Name: "wash-dilute",
	Inputs: []form.Input{
		{Name: "volume", Kind: quantity.Volume, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e7}},
		{Name: "from", Kind: quantity.Strength, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 500}},
		{Name: "to", Kind: quantity.Strength, Needed: true, First: true,
			Low: form.Limit{End: form.Above, Why: "low"}, High: form.Limit{End: form.UpTo, Value: 500}},
		{Name: "steps", Kind: quantity.Number, Default: "1", First: true, Whole: true, Low: form.Limit{End: form.From, Value: 1}, High: form.Limit{End: form.UpTo, Value: 50}},
		{Name: "cups", Kind: quantity.Number, Default: "1", First: true, Whole: true, Low: form.Limit{End: form.From, Value: 1}, High: form.Limit{End: form.UpTo, Value: 1000}},
		{Name: "each", Kind: quantity.Volume, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
	},
	Outputs: []form.Output{
		{Name: "stock-to-make", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "stock-needed", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "water-needed", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "water-to-add", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "new-volume", Unit: "mL", Digits: 4, As: form.Poured},
		{Name: "water-parts", Unit: "1", Digits: 3, Aside: true},
	},
	Columns: []form.Column{
		{Name: "cup", Unit: "1", Digits: 2},
		{Name: "strength", Unit: "g/100 mL", Digits: 3},
		{Name: "stock", Unit: "mL", Digits: 3},
		{Name: "water", Unit: "mL", Either: "mL-or-g", Digits: 3},
		{Name: "ratio", Text: true},
		{Name: "all-stock", Unit: "mL", Digits: 4},
		{Name: "all-water", Unit: "mL", Either: "mL-or-g", Digits: 4},
	},
	Says:    []string{"stir-before-you", "cups-ladder-go", "water-may-weighed", "means-part-wash"},
	Hazards: []string{wetColour, washColour},
	MayHurt: []string{stainPowder},
	Cares:   []string{"cups-syringe-jug"},
	Next: []form.Next{
		{Calculator: "wash-mix", Carry: []form.Carry{{Into: "volume", From: "stock-to-make"}, {Into: "water-parts", From: "water-parts"}}, If: "stock-to-make"},
	},
	Work: workDilute,
	Draw: drawDilute,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		washDilute.Example = form.Example{
			Given: []form.Setting{{Name: "volume", Text: "90 mL"}, {Name: "from", Text: "18.83"}, {Name: "to", Text: "3"}, {Name: "steps", Text: "4"}},
		}
		washDilute.Table = form.Table{
			Down: "from", Values: []string{"20 g/100 mL", "18 g/100 mL", "16 g/100 mL", "14 g/100 mL", "12 g/100 mL", "10 g/100 mL", "8 g/100 mL"},
			Across: "to", AcrossValues: []string{"10 g/100 mL", "8 g/100 mL", "6 g/100 mL", "4 g/100 mL", "2 g/100 mL"},
			Show: []string{"water-to-add"},
			Also: []form.Setting{{Name: "volume", Text: "100 mL"}, {Name: "steps", Text: "1"}},
		}
		washDilute.Formula = diluteFormulas
	}
}

func workDilute(e *form.Evaluation) {
	strong, pale, cups := e.Value("from"), e.Value("to"), int(e.Value("steps"))
	if pale > strong {
		e.Refuse("to", "water-cannot-make")
	}
	if !e.Has("volume") && !e.Has("each") {
		e.Refuse("volume", "give-one-these")
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

// thinLot thins all the strong wash there is, and reports whether that fills the
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
			e.Note("each", "each", millilitres(e, becomes/cups))
		}
		return
	}
	asked := float64(e.Value("cups") * e.Value("each"))
	if lacks(e, asked, becomes) {
		stock := wash.Thin(asked, pale, strong)
		setStock(e, stock, strong)
		e.Headline("not-enough", "all", cupsOf(e, 1))
		return
	}
	e.Note("fills", "all", cupsOf(e, 1))
}

// mostWeighed is the most water (g) that anybody weighs into a wash.
const mostWeighed = 5000

// sayLot says how much water (mL) thins all of it.
func sayLot(e *form.Evaluation, water float64) {
	switch {
	case water == 0:
		e.Headline("nothing-do-has")
	case !e.Weighable("water-to-add"):
		e.Headline("water-thin-larger")
	case water > mostWeighed:
		e.Headline("add-water-then")
	default:
		e.Headline("add-or-weigh", "weight", e.Amount(water, "g", 4, 0, form.Weighed))
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
	e.Headline("make-and-add", "all", cupsOf(e, 1))
	if strong == pale {
		e.Headline("make-only", "all", cupsOf(e, 1))
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
	e.Warn(stainPowder) // more strong wash is weighed from powder
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
	return e.Say("cups-of", "cups", e.Count("cups", strengths*int(e.Value("cups"))), "each", e.Shown("each"))
}

// ladder returns cups of several strengths. Their size is what was asked for, or
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
		e.Note("all-cups-are")
	}
	if least := e.Answer.Rows[strengths-1][2].Value; least < leastDrawn {
		e.Note("palest", "stock", form.WithUnit(e.Text(least, 2), "mL"))
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
	cups := e.Say("cups-of", "cups", e.Count("cups", all), "each", size)
	if e.Value("cups") > 1 {
		cups = e.Say("cups-of-each", "all", cups)
	}
	switch {
	case !e.Has("volume"):
		e.Headline("make-for", "all", cups)
	case e.Has("each") && lacks(e, stock, e.Value("volume")):
		e.Headline("these-need", "all", e.Count("cups", all))
		smaller := float64(each*e.Value("volume")) / stock
		e.Note("make-more", "each", millilitres(e, smaller))
	default:
		e.Headline("ladder", "all", cups)
	}
}

// drawDilute shows the cups, each with its share of strong wash below and
// water above; or the one vessel before and after.
func drawDilute(e *form.Evaluation) string {
	if len(e.Answer.Rows) == 0 {
		after, _ := e.Result("new-volume")
		water, _ := e.Result("water-to-add")
		d := sheet(e, "alternative")
		scale := (sketch.JarFloor - sketch.JarTop) / after.Value
		level := float64((after.Value - water.Value) * scale)
		d.Pair(level, brief(e, "more"), e.Shown("from"), e.Shown("to"), sketch.Layer{Class: "water", Height: sketch.JarFloor - sketch.JarTop - level})
		return d.String()
	}
	rows := e.Answer.Rows
	shown := rows
	if len(shown) > 8 {
		shown = rows[:8] // more would be too narrow to read; the table has them all
	}
	d := sheet(e, "cups", "cups", ladderWords(e, rows))
	room := (sketch.Width - 40) / float64(len(shown))
	for i, row := range shown {
		full := row[2].Value + row[3].Value
		stock := (sketch.JarFloor - sketch.JarTop) * row[2].Value / full
		x := 20 + float64(float64(i)*room)
		d.Jar(x+8, room-16, sketch.JarTop-20, sketch.Layer{Class: "colour", Height: stock}, sketch.Layer{Class: "water", Height: sketch.JarFloor - sketch.JarTop - stock})
		d.Words(row[1].Text, x+room/2, sketch.JarFloor+32, "middle")
	}
	return d.String()
}

func ladderWords(e *form.Evaluation, rows [][]form.Cell) string {
	var cups []string
	for _, row := range rows {
		cups = append(cups, e.Say("strength", "strength", row[1].Text))
	}
	return e.Listing(cups)
}

func diluteFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Sub(Letter("V"), Number("2")), Row(Sub(Letter("V"), One), Times, Fraction(Sub(Letter("c"), One), Sub(Letter("c"), Number("2"))))),
			Where: []Symbol{
				{Letter: "V_1, V_2", Means: say("V_1-V_2")},
				{Letter: "c_1, c_2", Means: say("c_1-c_2")},
			},
		},
		{
			Math: Equal(Sub(Letter("c"), Letter("i")), Row(Sub(Letter("c"), One), Times, Power(Bracket(Fraction(Sub(Letter("c"), Letter("n")), Sub(Letter("c"), One))), Fraction(Row(Letter("i"), Minus, One), Row(Letter("n"), Minus, One))))),
			Where: []Symbol{
				{Letter: "c_i", Means: say("c_i")},
			},
		},
		{
			Math: Equal(Words(say("strong-wash")), Row(Letter("k"), Times, Letter("E"), Times, Bracket(Fraction(Row(Sub(Letter("c"), One), Plus, Words("…"), Plus, Sub(Letter("c"), Letter("n"))), Sub(Letter("c"), One))))),
			Where: []Symbol{
				{Letter: "k", Means: say("k")},
				{Letter: "E", Means: say("E")},
			},
		},
	}
}
