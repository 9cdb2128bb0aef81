package catalog

import (
	"math"
	"strconv"

	"slipbook/calculators/decimal"
	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/letters"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/tile"
)

var tilePlan = &form.Calculator{
	Name: "tile-plan",
	Inputs: []form.Input{
		{Name: "kind", Kind: quantity.Number, Default: "line", First: true,
			Choices: []form.Choice{{ID: "line"}, {ID: "doubling"}, {ID: "triaxial"}}},
		{Name: "points", Kind: quantity.Number, Needed: true, First: true, Whole: true,
			Low: form.Limit{End: form.From, Value: 2, Why: "low"}, High: form.Limit{End: form.UpTo, Value: float64(mostMixes)}},
		{Name: "low", Kind: quantity.Percent, First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: mostPercent}},
		{Name: "high", Kind: quantity.Percent, First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: mostPercent}},
		{Name: "base", Kind: quantity.Mass, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "mass-resolution", Kind: quantity.Mass, Default: "0.1", Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1000}},
		{Name: "coats", Kind: quantity.Number, Default: "1", Whole: true, Low: form.Limit{End: form.From, Value: 1}, High: form.Limit{End: form.UpTo, Value: 10}},
		{Name: "cones", Kind: quantity.Number, Words: true, List: true, Most: len(tile.Letters)},
		{Name: "finishes", Kind: quantity.Number, Words: true, List: true, Most: len(tile.Letters)},
	},
	Outputs: []form.Output{
		{Name: "tiles", Unit: "1", Digits: 6},
		{Name: "smallest-safe-base", Unit: "g", Digits: 4},
	},
	Columns: []form.Column{
		{Name: "code", Text: true},
		{Name: "percent", Unit: "%", Digits: 4},
		{Name: "mass", Unit: "g", Digits: 7},
		{Name: "a", Unit: "%", Digits: 4},
		{Name: "b", Unit: "%", Digits: 4},
		{Name: "c", Unit: "%", Digits: 4},
		{Name: "a-mass", Unit: "g", Digits: 7},
		{Name: "b-mass", Unit: "g", Digits: 7},
		{Name: "c-mass", Unit: "g", Digits: 7},
		{Name: "error", Unit: "%", Digits: 2},
		{Name: "by-volume", Text: true},
	},
	Says:    []string{"scratch-code-into", "smallest-safe-base", "weigh-all-one"},
	Hazards: []string{dryPowder, stainPowder},
	Work:    workTile,
	Draw:    drawTile,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		tilePlan.Example = form.Example{
			Given: []form.Setting{{Name: "kind", Text: "line"}, {Name: "points", Text: "5"}, {Name: "low", Text: "1"}, {Name: "high", Text: "8"}, {Name: "base", Text: "30 g"}, {Name: "coats", Text: "2"}, {Name: "finishes", Text: "bare, clear glaze"}},
		}
		tilePlan.Table = form.Table{
			Cases: []form.Case{
				{ID: "line-from-0-to-10-in-11-mixes", Given: []form.Setting{{Name: "points", Text: "11"}, {Name: "low", Text: "0"}, {Name: "high", Text: "10"}}},
				{ID: "line-from-2-to-10-in-5-mixes", Given: []form.Setting{{Name: "points", Text: "5"}, {Name: "low", Text: "2"}, {Name: "high", Text: "10"}}},
				{ID: "doubling-from-0-25-in-5-mixes-scale-of-0-01-g", Given: []form.Setting{{Name: "kind", Text: "doubling"}, {Name: "points", Text: "5"}, {Name: "low", Text: "0.25"}, {Name: "high", Text: ""}, {Name: "mass-resolution", Text: "0.01"}}},
				{ID: "doubling-from-0-25-in-5-mixes", Given: []form.Setting{{Name: "kind", Text: "doubling"}, {Name: "points", Text: "5"}, {Name: "low", Text: "0.25"}, {Name: "high", Text: ""}}},
				{ID: "triaxial-with-6-along-a-side", Given: []form.Setting{{Name: "kind", Text: "triaxial"}, {Name: "points", Text: "6"}, {Name: "low", Text: ""}, {Name: "high", Text: ""}}},
				{ID: "triaxial-with-6-along-a-side-kitchen-scale-of-1-g", Given: []form.Setting{{Name: "kind", Text: "triaxial"}, {Name: "points", Text: "6"}, {Name: "low", Text: ""}, {Name: "high", Text: ""}, {Name: "mass-resolution", Text: "1"}}},
			},
			Show: []string{"tiles", "smallest-safe-base"},
			Also: []form.Setting{{Name: "coats", Text: "1"}, {Name: "finishes", Text: ""}},
		}
		tilePlan.Formula = tileFormulas
	}
}

// What a plan may hold: as many mixes as there are codes, and additions of no
// more than ten times the base.
const (
	mostMixes   = tile.MostCodes
	mostPercent = 1000
)

func workTile(e *form.Evaluation) {
	cones, finishes := pieces(e, "cones", " "), pieces(e, "finishes", "")
	checkCones(e, cones)
	shares := shares(e)
	if e.Refused() {
		return
	}
	tiles, words := float64(len(shares)), e.Count("mixes", len(shares))
	for _, by := range [...]struct {
		count int
		words string
	}{{int(e.Value("coats")), "coats"}, {len(cones), "cones"}, {len(finishes), "finishes"}} {
		if by.count > 1 {
			tiles = float64(tiles * float64(by.count))
			words += " × " + e.Count(by.words, by.count)
		}
	}
	e.Set("tiles", tiles)
	weigh(e, shares)
	sayBlend(e, shares)
	e.Headline("cut", "sum", words)
	legend(e, cones, finishes)
}

// cornersOnly answers the two ends where somebody gave one to a triaxial.
const cornersOnly = "corners-only"

// shares returns each mix's percentages of the base: one of a line or a doubling,
// three of a triaxial.
func shares(e *form.Evaluation) [][]float64 {
	points := int(e.Value("points"))
	var shares [][]float64
	one := func(percents []float64) {
		for _, p := range percents {
			shares = append(shares, []float64{p})
		}
	}
	switch e.Word("kind") {
	case "line":
		need(e, "low")
		need(e, "high")
		if e.Has("low") && e.Has("high") && e.Value("high") <= e.Value("low") {
			e.Refuse("high", "highest-addition-has")
		}
		one(tile.Line(e.Value("low"), e.Value("high"), points))
	case "doubling":
		e.Unused("high", "highest-addition-doubling")
		one(doubling(e, points))
	default:
		e.Unused("low", cornersOnly)
		e.Unused("high", cornersOnly)
		if count := tile.Count(points); count > mostMixes {
			e.Refuse("points", "too-many-mixes", "mixes", strconv.Itoa(count), "most", strconv.Itoa(mostMixes))
			return nil
		}
		for _, s := range tile.Triaxial(points) {
			shares = append(shares, s[:])
		}
	}
	return shares
}

// doubling returns a doubling's percentages, or refuses it.
func doubling(e *form.Evaluation, points int) []float64 {
	need(e, "low")
	if e.Has("low") && e.Value("low") == 0 {
		e.Refuse("low", "twice-nothing-nothing")
	}
	if e.Refused() {
		return nil
	}
	percents := tile.Doubling(e.Value("low"), points)
	for i, p := range percents {
		if p > mostPercent {
			e.Refuse("points", "doubles-too-far", "mix", strconv.Itoa(i+1), "most", form.WithUnit(e.Text(mostPercent, 4), "%"), "mixes", strconv.Itoa(i))
			break
		}
	}
	return percents
}

// need refuses an input that this kind of test cannot do without.
func need(e *form.Evaluation, name string) {
	if !e.Has(name) {
		e.Missing(name)
	}
}

// weigh adds a row for each mix, with its amounts as the scale can show them,
// and says from which base on the scale is good enough.
func weigh(e *form.Evaluation, shares [][]float64) {
	base, step := e.Value("base"), e.Value("mass-resolution")
	smallest, worst := 100.0, 0.0
	for i, code := range tile.Codes(len(shares)) {
		row := make([]any, len(e.Calculator.Columns))
		row[0] = code
		first, off := 1, 0.0
		if len(shares[i]) > 1 {
			first = 3
		}
		for part, percent := range shares[i] {
			mass := base * percent / 100
			rounded := tile.Rounded(mass, step)
			row[first+part], row[first+len(shares[i])+part] = percent, rounded
			if e := tile.Error(mass, rounded); math.Abs(e) > math.Abs(off) {
				off = e
			}
			if percent > 0 {
				smallest = math.Min(smallest, percent)
			}
			if percent > 0 && rounded == 0 {
				e.Refuse("mass-resolution", "cannot-weigh", "mass", form.WithUnit(e.Text(mass, 3), "g"))
				return
			}
		}
		row[len(row)-2] = off
		if blend := blend(e, i, shares); blend != "" {
			row[len(row)-1] = blend
		}
		worst = math.Max(worst, math.Abs(off))
		e.Row(row...)
	}
	e.Set("smallest-safe-base", tile.SafeBase(smallest, step))
	if worst > 1 {
		e.Note("off", "off", form.WithUnit(e.Text(worst, 2), "%"))
	}
}

// mostBlended is the strongest addition (%) that blending two slips by volume
// still hits well. A coloured slip holds less base than a plain one of the same
// specific gravity, so a blend comes out weaker than its parts say: with 8 % of
// stain in the strongest by a tenth at most.
const mostBlended = 8

// mostParts is how many parts of a blend can still be measured out.
const mostParts = 16

// blend words a mix of a line or a doubling as parts by volume of two slips:
// the two ends of the line, or no addition and the strongest of the doubling.
// It is empty where that would be too far off.
func blend(e *form.Evaluation, i int, shares [][]float64) string {
	last, doubling := len(shares)-1, e.Word("kind") == "doubling"
	if len(shares[0]) > 1 || shares[last][0] > mostBlended || last > mostParts || doubling && 1<<last > mostParts {
		return ""
	}
	weak, strong := last-i, i
	if doubling {
		weak, strong = 1<<(last-i)-1, 1
	}
	for n := strong; n > 1; n-- {
		if weak%n == 0 && strong%n == 0 {
			weak, strong = weak/n, strong/n
		}
	}
	if strong == 0 {
		weak = 1
	}
	return strconv.Itoa(weak) + " + " + strconv.Itoa(strong)
}

// sayBlend says how the parts by volume are meant.
func sayBlend(e *form.Evaluation, shares [][]float64) {
	if blend(e, 0, shares) == "" {
		return
	}
	two := "blend-ends"
	if e.Word("kind") == "doubling" {
		two = "blend-doubling"
	}
	e.Note(two)
}

// checkCones refuses what is no cone: 022 to 01 are the cooler ones, 1 to 14
// the hotter.
func checkCones(e *form.Evaluation, cones []string) {
	for _, cone := range cones {
		digits, cool := letters.CutPrefix(cone, "0")
		n, ok := decimal.Natural(digits)
		if !ok || n < 1 || digits[0] < '1' || digits[0] > '9' || cool && n > 22 || !cool && n > 14 {
			e.Refuse("cones", "no-cone", "typed", form.Clip(cone))
			return
		}
	}
}

// legend says what to scratch behind the code of the mix, where there is more
// than one tile of it.
func legend(e *form.Evaluation, cones, finishes []string) {
	for _, list := range [...]struct {
		word  string
		names []string
	}{{"legend-cone", cones}, {"legend-finish", finishes}} {
		if len(list.names) < 2 {
			continue
		}
		words := ""
		for i, name := range list.names {
			if i > 0 {
				words += e.Say("language.list.between")
			}
			words += e.Say("letter-for", "letter", tile.Letters[i:i+1], "name", name)
		}
		e.Note(list.word, "letters", words)
	}
	if e.Value("coats") > 1 {
		e.Note("last-all-scratch")
	}
	if e.Word("kind") == "triaxial" {
		e.Note("blend-dry-weight")
	}
}

// pieces returns the words of a list input one by one: separated by commas or
// semicolons, or by another mark where there are none of these. What was
// understood is written back with commas.
func pieces(e *form.Evaluation, name, mark string) []string {
	g, in := e.Given(name), e.Calculator.Input(name)
	if g == nil {
		return nil
	}
	text := letters.ReplaceAll(g.Text, ";", ",")
	if !letters.Contains(text, ",") && mark != "" {
		text = letters.ReplaceAll(text, mark, ",")
	}
	var list []string
	for _, piece := range letters.Split(text, ",") {
		piece = letters.Trim(piece)
		if letters.In(list, piece) {
			e.Refuse(name, "shared.twice", "typed", form.Clip(piece))
		}
		if piece != "" {
			list = append(list, piece)
		}
	}
	if len(list) > in.Most {
		e.Refuse(name, "shared.too-many", "count", strconv.Itoa(len(list)), "most", strconv.Itoa(in.Most))
	}
	g.Text = letters.Join(list, ", ")
	return list
}

// mostDrawn is how many tiles fit into a drawing with their codes.
const mostDrawn = 12

// drawTile shows the mixes: a line of tiles, each filled as far up as its
// addition is of the highest, or the triangle of the blends.
func drawTile(e *form.Evaluation) string {
	if e.Word("kind") == "triaxial" {
		return drawTriangle(e, sheet(e, "alternative"), "A", "B", "C")
	}
	rows := e.Answer.Rows
	top := rows[len(rows)-1][1].Value
	d := sheet(e, "line",
		"first", form.WithUnit(rows[0][1].Text, "%"), "last", form.WithUnit(rows[len(rows)-1][1].Text, "%"))
	if len(rows) > mostDrawn {
		rows = rows[:mostDrawn] // the table has them all
	}
	room := (sketch.Width - 20) / float64(len(rows))
	width := min(room-8, 90)
	for i, row := range rows {
		x := 10 + float64((float64(i)+0.5)*room) - width/2
		fill := 180 * row[1].Value / top
		d.Box("clay", x, 40, width, 180)
		d.Box("colour", x, 220-fill, width, fill)
		d.Box("ink", x, 40, width, 180)
		d.Words(row[0].Text, x+width/2, 256, "middle")
	}
	return d.String()
}

// drawTriangle shows where each blend stands between the three mixes at its
// corners.
func drawTriangle(e *form.Evaluation, d *sketch.Drawing, top, left, right string) string {
	rows, side := e.Answer.Rows, e.Value("points")
	for _, row := range rows {
		across, down := (row[3].Value-row[2].Value)/200, 1-row[1].Value/100
		x, y := 320+float64(across*520), 40+float64(down*240)
		radius := min(24, 250/side)
		d.Dot("clay", x, y, radius)
		d.Dot("ink", x, y, radius)
		if side <= 7 {
			d.Words(row[0].Text, x, y+8, "middle")
		}
	}
	d.Words(top, 364, 48, "start")
	d.Words(left, 22, 290, "middle")
	d.Words(right, 618, 290, "middle")
	return d.String()
}

func tileFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Sub(Letter("p"), Letter("i")), Row(Sub(Letter("p"), One), Plus, Bracket(Sub(Letter("p"), Letter("n")), Minus, Sub(Letter("p"), One)), Times, Fraction(Row(Letter("i"), Minus, One), Row(Letter("n"), Minus, One)))),
			Where: []Symbol{
				{Letter: "p_i", Means: say("p_i")},
			},
		},
		{
			Math:  Equal(Words(say("mixes-triaxial")), Fraction(Row(Letter("n"), Times, Bracket(Letter("n"), Plus, One)), Number("2"))),
			Where: []Symbol{{Letter: "n", Means: say("n")}},
		},
		{
			Math: Equal(Words(say("smallest-safe-base")), Fraction(Row(Number("5000"), Times, Letter("r")), Letter("p"))),
			Where: []Symbol{
				{Letter: "r", Means: say("r")},
				{Letter: "p", Means: say("p")},
			},
		},
	}
}
