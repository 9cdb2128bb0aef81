package catalog

import (
	"math"
	"strconv"

	"slipbook/calculators/decimal"
	"slipbook/calculators/letters"
	"slipbook/calculators/quantity"
	"slipbook/calculators/tile"
)

var tilePlan = &Calculator{
	Name:    "tile-plan",
	Title:   "Plan a set of test tiles",
	Purpose: "Lists the mixes of a test with what to weigh for each, a code for the back of each tile, and how well your scale can weigh it.",
	Inputs: []Input{
		{Name: "kind", Label: "Kind of test", Help: "A line goes up in equal steps, a doubling in equal ratios; a triaxial blends three mixes.", Kind: quantity.Number, Default: "line", First: true,
			Choices: []Choice{{"line", "Line"}, {"doubling", "Doubling"}, {"triaxial", "Triaxial"}}},
		{Name: "points", Label: "Mixes in the line", Help: "Both ends count. For a triaxial: along one side, both corners counted.", Kind: quantity.Number, Needed: true, First: true, Whole: true,
			Low: Limit{From, 2, "A test needs at least 2 mixes to compare."}, High: Limit{UpTo, float64(mostMixes), ""}},
		{Name: "low", Label: "Lowest addition", Help: "Grams for every 100 g of base. Not for a triaxial.", Kind: quantity.Percent, First: true, Low: Limit{From, 0, ""}, High: Limit{UpTo, mostPercent, ""}},
		{Name: "high", Label: "Highest addition", Help: "For a line. In a doubling it follows by itself.", Kind: quantity.Percent, First: true, Low: Limit{From, 0, ""}, High: Limit{UpTo, mostPercent, ""}},
		{Name: "base", Label: "Dry base in a mix", Help: "Without the addition. For a triaxial: the dry weight of one blend.", Kind: quantity.Mass, Needed: true, First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e6, ""}},
		{Name: "mass-resolution", Label: "Smallest step of the scale", Help: "0.1 for a scale that shows one decimal.", Kind: quantity.Mass, Default: "0.1", Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1000, ""}},
		{Name: "coats", Label: "Coats", Help: "With 3 every mix gets three tiles: one coat, two coats, three coats.", Kind: quantity.Number, Default: "1", Whole: true, Low: Limit{From, 1, ""}, High: Limit{UpTo, 10, ""}},
		{Name: "cones", Label: "Cones to fire to", Help: "Parted by spaces: 06 6. Every mix gets a tile for each. Blank: one firing.", Kind: quantity.Number, Words: true, List: true, Most: len(tile.Letters)},
		{Name: "finishes", Label: "Finishes", Help: "Parted by commas: bare, clear glaze. Every mix gets a tile for each. Blank: one finish.", Kind: quantity.Number, Words: true, List: true, Most: len(tile.Letters)},
	},
	Outputs: []Output{
		{Name: "tiles", Label: "Tiles to cut", Unit: "1", Digits: 6},
		{Name: "smallest-safe-base", Label: "Smallest safe base on this scale", Unit: "g", Digits: 4},
	},
	Columns: []Column{
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
	Example: Example{
		Case:  "Blue stain from 1 to 8 % in five equal steps, each on 30 g of base, in one and two coats, bare and under a clear glaze.",
		Given: []Setting{{"kind", "line"}, {"points", "5"}, {"low", "1"}, {"high", "8"}, {"base", "30 g"}, {"coats", "2"}, {"finishes", "bare, clear glaze"}},
	},
	Table: Table{
		Caption: "How many tiles, and the smallest base that can be weighed well; on a scale of 0.1 g where none is named",
		Cases: []Case{
			{"Line from 0 to 10 % in 11 mixes", []Setting{{"points", "11"}, {"low", "0"}, {"high", "10"}}},
			{"Line from 2 to 10 % in 5 mixes", []Setting{{"points", "5"}, {"low", "2"}, {"high", "10"}}},
			{"Doubling from 0.25 % in 5 mixes, scale of 0.01 g", []Setting{{"kind", "doubling"}, {"points", "5"}, {"low", "0.25"}, {"high", ""}, {"mass-resolution", "0.01"}}},
			{"Doubling from 0.25 % in 5 mixes", []Setting{{"kind", "doubling"}, {"points", "5"}, {"low", "0.25"}, {"high", ""}}},
			{"Triaxial with 6 along a side", []Setting{{"kind", "triaxial"}, {"points", "6"}, {"low", ""}, {"high", ""}}},
			{"Triaxial with 6 along a side, kitchen scale of 1 g", []Setting{{"kind", "triaxial"}, {"points", "6"}, {"low", ""}, {"high", ""}, {"mass-resolution", "1"}}},
		},
		Show: []string{"tiles", "smallest-safe-base"},
		Also: []Setting{{"coats", "1"}, {"finishes", ""}},
	},
	work: workTile,
	draw: drawTile,
}

// What a plan may hold: as many mixes as there are codes, and additions of no
// more than ten times the base.
const (
	mostMixes   = tile.MostCodes
	mostPercent = 1000
)

func workTile(b *bench) {
	cones, finishes := b.pieces("cones", " "), b.pieces("finishes", "")
	b.checkCones(cones)
	shares := b.shares()
	if b.refused() {
		return
	}
	tiles, words := float64(len(shares)), strconv.Itoa(len(shares))+" mixes"
	for _, by := range [...]struct {
		count int
		words string
	}{{int(b.value("coats")), "coats"}, {len(cones), "cones"}, {len(finishes), "finishes"}} {
		if by.count > 1 {
			tiles = float64(tiles * float64(by.count))
			words += " × " + strconv.Itoa(by.count) + " " + by.words
		}
	}
	b.set("tiles", tiles)
	b.weigh(shares)
	b.sayBlend(shares)
	b.headline("Cut {tiles} tiles: {}.", words)
	b.legend(cones, finishes)
}

// cornersOnly answers the two ends where somebody gave one to a triaxial.
const cornersOnly = "A triaxial has no lowest or highest addition: its three corners are 100 % each, so what you gave was not used."

// shares gives each mix's percentages of the base: one of a line or a doubling,
// three of a triaxial.
func (b *bench) shares() [][]float64 {
	points := int(b.value("points"))
	var shares [][]float64
	one := func(percents []float64) {
		for _, p := range percents {
			shares = append(shares, []float64{p})
		}
	}
	switch b.word("kind") {
	case "line":
		b.need("low")
		b.need("high")
		if b.has("low") && b.has("high") && b.value("high") <= b.value("low") {
			b.refuse("high", "The highest addition ({high}) has to be more than the lowest ({low}).")
		}
		one(tile.Line(b.value("low"), b.value("high"), points))
	case "doubling":
		b.unused("high", "The highest addition of a doubling follows by itself; what you gave was not used.")
		one(b.doubling(points))
	default:
		b.unused("low", cornersOnly)
		b.unused("high", cornersOnly)
		if count := tile.Count(points); count > mostMixes {
			b.refuse("points", "A triaxial with {points} along a side has {} mixes, and at most {} can be planned at once.", strconv.Itoa(count), strconv.Itoa(mostMixes))
			return nil
		}
		for _, s := range tile.Triaxial(points) {
			shares = append(shares, s[:])
		}
	}
	return shares
}

// doubling gives a doubling's percentages, or refuses it.
func (b *bench) doubling(points int) []float64 {
	b.need("low")
	if b.has("low") && b.value("low") == 0 {
		b.refuse("low", "Twice nothing is nothing: a doubling has to begin above 0, for example at 0.25 %.")
	}
	if b.refused() {
		return nil
	}
	percents := tile.Doubling(b.value("low"), points)
	for i, p := range percents {
		if p > mostPercent {
			b.refuse("points", "From {low} on, mix {} of the doubling would be more than {}. Give at most {} mixes.", strconv.Itoa(i+1), withUnit(b.text(mostPercent, 4), "%"), strconv.Itoa(i))
			break
		}
	}
	return percents
}

// need refuses an input that this kind of test cannot do without.
func (b *bench) need(name string) {
	if !b.has(name) {
		b.refuse(name, missing(b.calculator.Input(name)))
	}
}

// weigh adds a row for each mix, with its amounts as the scale can show them,
// and says from which base on the scale is good enough.
func (b *bench) weigh(shares [][]float64) {
	base, step := b.value("base"), b.value("mass-resolution")
	smallest, worst := 100.0, 0.0
	for i, code := range tile.Codes(len(shares)) {
		row := make([]any, len(b.calculator.Columns))
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
				b.refuse("mass-resolution", "A scale with steps of {mass-resolution} cannot weigh {} of anything. Make larger mixes, or weigh on a finer scale.", withUnit(b.text(mass, 3), "g"))
				return
			}
		}
		row[len(row)-2] = off
		if blend := b.blend(i, shares); blend != "" {
			row[len(row)-1] = blend
		}
		worst = math.Max(worst, math.Abs(off))
		b.row(row...)
	}
	b.set("smallest-safe-base", tile.SafeBase(smallest, step))
	if worst > 1 {
		b.note("On this scale some amounts are off by up to {}. Make mixes of {smallest-safe-base} of base or more, or weigh on a finer scale.", withUnit(b.text(worst, 2), "%"))
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
func (b *bench) blend(i int, shares [][]float64) string {
	last, doubling := len(shares)-1, b.word("kind") == "doubling"
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
func (b *bench) sayBlend(shares [][]float64) {
	if b.blend(0, shares) == "" {
		return
	}
	two := "the first and the last mix"
	if b.word("kind") == "doubling" {
		two = "a slip without the addition and the strongest"
	}
	b.note("Less weighing and less dust: make only {} as slips of one specific gravity, and blend them by volume. “3 + 1” is 3 parts of the weaker and 1 of the stronger. The blends come out a little weaker than the list says, by a tenth at most.", two)
}

// checkCones refuses what is no cone: 022 to 01 are the cooler ones, 1 to 14
// the hotter.
func (b *bench) checkCones(cones []string) {
	for _, cone := range cones {
		digits, cool := letters.CutPrefix(cone, "0")
		n, ok := decimal.Natural(digits)
		if !ok || n < 1 || digits[0] < '1' || digits[0] > '9' || cool && n > 22 || !cool && n > 14 {
			b.refuse("cones", "“{}” is no cone. Cones go from 022 over 01 and 1 to 14, for example 06 6.", clip(cone))
			return
		}
	}
}

// legend says what to scratch behind the code of the mix, where there is more
// than one tile of it.
func (b *bench) legend(cones, finishes []string) {
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
		b.note("Behind the code scratch a letter for the {}: {}.", list.word, words)
	}
	if b.value("coats") > 1 {
		b.note("Last of all scratch a stroke for each coat: from one stroke to {coats}.")
	}
	if b.word("kind") == "triaxial" {
		b.note("Blend by dry weight. Spoons of wet slip are fair only when all three have the same specific gravity and equally heavy powders.")
	}
}

// pieces gives the words of a list input one by one: parted by commas or
// semicolons, or by another mark where there are none of these. What was
// understood is written back with commas.
func (b *bench) pieces(name, mark string) []string {
	g, in := b.given(name), b.calculator.Input(name)
	if g == nil {
		return nil
	}
	text := letters.ReplaceAll(g.Text, ";", ",")
	if !letters.Contains(text, ",") && mark != "" {
		text = letters.ReplaceAll(text, mark, ",")
	}
	var list []string
	for _, piece := range letters.Split(text, ",") {
		piece = trim(piece)
		if contains(list, piece) {
			b.refuse(name, "“{}” stands here twice.", clip(piece))
		}
		if piece != "" {
			list = append(list, piece)
		}
	}
	if len(list) > in.Most {
		b.refuse(name, "There are {} here, and at most {} can be planned at once.", strconv.Itoa(len(list)), strconv.Itoa(in.Most))
	}
	g.Text = letters.Join(list, ", ")
	return list
}
