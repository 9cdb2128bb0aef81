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
	Name:    "tile-plan",
	Title:   "Plan a set of test tiles",
	Purpose: "Lists the mixes of a test with what to weigh for each, a code for the back of each tile, and how well your scale can weigh it.",
	Inputs: []form.Input{
		{Name: "kind", Label: "Kind of test", Help: "A line goes up in equal steps, a doubling in equal ratios; a triaxial blends three mixes.", Kind: quantity.Number, Default: "line", First: true,
			Choices: []form.Choice{{ID: "line", Label: "Line"}, {ID: "doubling", Label: "Doubling"}, {ID: "triaxial", Label: "Triaxial"}}},
		{Name: "points", Label: "Mixes in the line", Help: "Both ends count. For a triaxial: along one side, both corners counted.", Kind: quantity.Number, Needed: true, First: true, Whole: true,
			Low: form.Limit{End: form.From, Value: 2, Why: "A test needs at least 2 mixes to compare."}, High: form.Limit{End: form.UpTo, Value: float64(mostMixes)}},
		{Name: "low", Label: "Lowest addition", Help: "Grams for every 100 g of base. Not for a triaxial.", Kind: quantity.Percent, First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: mostPercent}},
		{Name: "high", Label: "Highest addition", Help: "For a line. In a doubling it follows by itself.", Kind: quantity.Percent, First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: mostPercent}},
		{Name: "base", Label: "Dry base in a mix", Help: "Without the addition. For a triaxial: the dry weight of one blend.", Kind: quantity.Mass, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "mass-resolution", Label: "Smallest step of the scale", Help: "0.1 for a scale that shows one decimal.", Kind: quantity.Mass, Default: "0.1", Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1000}},
		{Name: "coats", Label: "Coats", Help: "With 3 every mix gets three tiles: one coat, two coats, three coats.", Kind: quantity.Number, Default: "1", Whole: true, Low: form.Limit{End: form.From, Value: 1}, High: form.Limit{End: form.UpTo, Value: 10}},
		{Name: "cones", Label: "Cones to fire to", Help: "Parted by spaces: 06 6. Every mix gets a tile for each. Blank: one firing.", Kind: quantity.Number, Words: true, List: true, Most: len(tile.Letters)},
		{Name: "finishes", Label: "Finishes", Help: "Parted by commas: bare, clear glaze. Every mix gets a tile for each. Blank: one finish.", Kind: quantity.Number, Words: true, List: true, Most: len(tile.Letters)},
	},
	Outputs: []form.Output{
		{Name: "tiles", Label: "Tiles to cut", Unit: "1", Digits: 6},
		{Name: "smallest-safe-base", Label: "Smallest safe base on this scale", Unit: "g", Digits: 4},
	},
	Columns: []form.Column{
		{Name: "code", Label: "Code", Text: true},
		{Name: "percent", Label: "Addition", Unit: "%", Digits: 4},
		{Name: "mass", Label: "Weigh", Unit: "g", Digits: 7},
		{Name: "a", Label: "A", Unit: "%", Digits: 4},
		{Name: "b", Label: "B", Unit: "%", Digits: 4},
		{Name: "c", Label: "C", Unit: "%", Digits: 4},
		{Name: "a-mass", Label: "Weigh of A", Unit: "g", Digits: 7},
		{Name: "b-mass", Label: "Weigh of B", Unit: "g", Digits: 7},
		{Name: "c-mass", Label: "Weigh of C", Unit: "g", Digits: 7},
		{Name: "error", Label: "Off by rounding", Unit: "%", Digits: 2},
		{Name: "by-volume", Label: "Or blend two slips", Text: true},
	},
	Notes: []string{
		"Scratch the code into the back before the tile dries. The codes use letters only that show which way up they are: a 6 upside down is a 9.",
		"The smallest safe base is the one at which the smallest amount is sure to be weighed within 1 %.",
		"Weigh all of one test on one scale, on one day, and write the list into the book before you begin.",
	},
	Hazards: []string{dryPowder, stainPowder},
	Work:    workTile,
	Draw:    drawTile,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		tilePlan.Example = form.Example{
			Case:  "Blue stain from 1 to 8 % in five equal steps, each on 30 g of base, in one and two coats, bare and under a clear glaze.",
			Given: []form.Setting{{Name: "kind", Text: "line"}, {Name: "points", Text: "5"}, {Name: "low", Text: "1"}, {Name: "high", Text: "8"}, {Name: "base", Text: "30 g"}, {Name: "coats", Text: "2"}, {Name: "finishes", Text: "bare, clear glaze"}},
		}
		tilePlan.Table = form.Table{
			Caption: "How many tiles, and the smallest base that can be weighed well; on a scale of 0.1 g where none is named",
			Cases: []form.Case{
				{Words: "Line from 0 to 10 % in 11 mixes", Given: []form.Setting{{Name: "points", Text: "11"}, {Name: "low", Text: "0"}, {Name: "high", Text: "10"}}},
				{Words: "Line from 2 to 10 % in 5 mixes", Given: []form.Setting{{Name: "points", Text: "5"}, {Name: "low", Text: "2"}, {Name: "high", Text: "10"}}},
				{Words: "Doubling from 0.25 % in 5 mixes, scale of 0.01 g", Given: []form.Setting{{Name: "kind", Text: "doubling"}, {Name: "points", Text: "5"}, {Name: "low", Text: "0.25"}, {Name: "high", Text: ""}, {Name: "mass-resolution", Text: "0.01"}}},
				{Words: "Doubling from 0.25 % in 5 mixes", Given: []form.Setting{{Name: "kind", Text: "doubling"}, {Name: "points", Text: "5"}, {Name: "low", Text: "0.25"}, {Name: "high", Text: ""}}},
				{Words: "Triaxial with 6 along a side", Given: []form.Setting{{Name: "kind", Text: "triaxial"}, {Name: "points", Text: "6"}, {Name: "low", Text: ""}, {Name: "high", Text: ""}}},
				{Words: "Triaxial with 6 along a side, kitchen scale of 1 g", Given: []form.Setting{{Name: "kind", Text: "triaxial"}, {Name: "points", Text: "6"}, {Name: "low", Text: ""}, {Name: "high", Text: ""}, {Name: "mass-resolution", Text: "1"}}},
			},
			Show: []string{"tiles", "smallest-safe-base"},
			Also: []form.Setting{{Name: "coats", Text: "1"}, {Name: "finishes", Text: ""}},
		}
		tilePlan.Formulas = tileFormulas
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
	tiles, words := float64(len(shares)), strconv.Itoa(len(shares))+" mixes"
	for _, by := range [...]struct {
		count int
		words string
	}{{int(e.Value("coats")), "coats"}, {len(cones), "cones"}, {len(finishes), "finishes"}} {
		if by.count > 1 {
			tiles = float64(tiles * float64(by.count))
			words += " × " + strconv.Itoa(by.count) + " " + by.words
		}
	}
	e.Set("tiles", tiles)
	weigh(e, shares)
	sayBlend(e, shares)
	e.Headline("Cut {tiles} tiles: {}.", words)
	legend(e, cones, finishes)
}

// cornersOnly answers the two ends where somebody gave one to a triaxial.
const cornersOnly = "A triaxial has no lowest or highest addition: its three corners are 100 % each, so what you gave was not used."

// shares gives each mix's percentages of the base: one of a line or a doubling,
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
			e.Refuse("high", "The highest addition ({high}) has to be more than the lowest ({low}).")
		}
		one(tile.Line(e.Value("low"), e.Value("high"), points))
	case "doubling":
		e.Unused("high", "The highest addition of a doubling follows by itself; what you gave was not used.")
		one(doubling(e, points))
	default:
		e.Unused("low", cornersOnly)
		e.Unused("high", cornersOnly)
		if count := tile.Count(points); count > mostMixes {
			e.Refuse("points", "A triaxial with {points} along a side has {} mixes, and at most {} can be planned at once.", strconv.Itoa(count), strconv.Itoa(mostMixes))
			return nil
		}
		for _, s := range tile.Triaxial(points) {
			shares = append(shares, s[:])
		}
	}
	return shares
}

// doubling gives a doubling's percentages, or refuses it.
func doubling(e *form.Evaluation, points int) []float64 {
	need(e, "low")
	if e.Has("low") && e.Value("low") == 0 {
		e.Refuse("low", "Twice nothing is nothing: a doubling has to begin above 0, for example at 0.25 %.")
	}
	if e.Refused() {
		return nil
	}
	percents := tile.Doubling(e.Value("low"), points)
	for i, p := range percents {
		if p > mostPercent {
			e.Refuse("points", "From {low} on, mix {} of the doubling would be more than {}. Give at most {} mixes.", strconv.Itoa(i+1), form.WithUnit(e.Text(mostPercent, 4), "%"), strconv.Itoa(i))
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
				e.Refuse("mass-resolution", "A scale with steps of {mass-resolution} cannot weigh {} of anything. Make larger mixes, or weigh on a finer scale.", form.WithUnit(e.Text(mass, 3), "g"))
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
		e.Note("On this scale some amounts are off by up to {}. Make mixes of {smallest-safe-base} of base or more, or weigh on a finer scale.", form.WithUnit(e.Text(worst, 2), "%"))
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
	two := "the first and the last mix"
	if e.Word("kind") == "doubling" {
		two = "a slip without the addition and the strongest"
	}
	e.Note("Less weighing and less dust: make only {} as slips of one specific gravity, and blend them by volume. “3 + 1” is 3 parts of the weaker and 1 of the stronger. The blends come out a little weaker than the list says, by a tenth at most.", two)
}

// checkCones refuses what is no cone: 022 to 01 are the cooler ones, 1 to 14
// the hotter.
func checkCones(e *form.Evaluation, cones []string) {
	for _, cone := range cones {
		digits, cool := letters.CutPrefix(cone, "0")
		n, ok := decimal.Natural(digits)
		if !ok || n < 1 || digits[0] < '1' || digits[0] > '9' || cool && n > 22 || !cool && n > 14 {
			e.Refuse("cones", "“{}” is no cone. Cones go from 022 over 01 and 1 to 14, for example 06 6.", form.Clip(cone))
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
	}{{"cone", cones}, {"finish", finishes}} {
		if len(list.names) < 2 {
			continue
		}
		words := ""
		for i, name := range list.names {
			if i > 0 {
				words += ", "
			}
			words += tile.Letters[i:i+1] + " for " + name
		}
		e.Note("Behind the code scratch a letter for the {}: {}.", list.word, words)
	}
	if e.Value("coats") > 1 {
		e.Note("Last of all scratch a stroke for each coat: from one stroke to {coats}.")
	}
	if e.Word("kind") == "triaxial" {
		e.Note("Blend by dry weight. Spoons of wet slip are fair only when all three have the same specific gravity and equally heavy powders.")
	}
}

// pieces gives the words of a list input one by one: parted by commas or
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
			e.Refuse(name, "“{}” stands here twice.", form.Clip(piece))
		}
		if piece != "" {
			list = append(list, piece)
		}
	}
	if len(list) > in.Most {
		e.Refuse(name, "There are {} here, and at most {} can be planned at once.", strconv.Itoa(len(list)), strconv.Itoa(in.Most))
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
		return drawTriangle(e)
	}
	rows := e.Answer.Rows
	top := rows[len(rows)-1][1].Value
	d := sheet(e, "The mixes from {} to {}, each tile filled as far up as its addition is of the highest.",
		form.WithUnit(rows[0][1].Text, "%"), form.WithUnit(rows[len(rows)-1][1].Text, "%"))
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
		d.Words(row[0].Text, x+width/2, 256, 24, "middle")
	}
	return d.String()
}

// drawTriangle shows where each blend stands between the three mixes.
func drawTriangle(e *form.Evaluation) string {
	rows, side := e.Answer.Rows, e.Value("points")
	d := sheet(e, "A triangle of blends: A at the top, B at the left, C at the right, {points} along a side.")
	for _, row := range rows {
		across, down := (row[3].Value-row[2].Value)/200, 1-row[1].Value/100
		x, y := 320+float64(across*520), 40+float64(down*240)
		radius := min(24, 250/side)
		d.Dot("clay", x, y, radius)
		d.Dot("ink", x, y, radius)
		if side <= 7 {
			d.Words(row[0].Text, x, y+8, 22, "middle")
		}
	}
	d.Words("A", 364, 48, sketch.TextSize, "start")
	d.Words("B", 22, 290, sketch.TextSize, "middle")
	d.Words("C", 618, 290, sketch.TextSize, "middle")
	return d.String()
}

func tileFormulas() []Formula {
	return []Formula{
		{
			Math: Equal(Sub(Letter("p"), Letter("i")), Row(Sub(Letter("p"), One), Plus, Bracket(Sub(Letter("p"), Letter("n")), Minus, Sub(Letter("p"), One)), Times, Fraction(Row(Letter("i"), Minus, One), Row(Letter("n"), Minus, One)))),
			Where: []Symbol{
				{Letter: "p_i", Means: "addition in mix i of n in a line, %; in a doubling each is twice the one before"},
			},
		},
		{
			Math:  Equal(Words("mixes of a triaxial"), Fraction(Row(Letter("n"), Times, Bracket(Letter("n"), Plus, One)), Number("2"))),
			Where: []Symbol{{Letter: "n", Means: "mixes along one side"}},
		},
		{
			Math: Equal(Words("smallest safe base"), Fraction(Row(Number("5000"), Times, Letter("r")), Letter("p"))),
			Where: []Symbol{
				{Letter: "r", Means: "smallest step of the scale, g"},
				{Letter: "p", Means: "smallest addition or share that is not 0, %"},
			},
		},
	}
}
