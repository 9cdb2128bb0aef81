//go:build !wasm

package catalog

// A dot import, so that a formula reads as one.
import . "slipbook/calculators/formula"

// Formulas gives the formulas that a calculator shows. They stand apart from
// the declarations because pages are printed with them already set: the
// reactor never needs them, and they would make it larger.
func (c *Calculator) Formulas() []Formula { return formulas[c.Name] }

var (
	plus, minus, times = Op("+"), Op("−"), Op("×")
	one, hundred       = Number("1"), Number("100")
)

// soFarMeans says what stands for a loss so far, where it was not measured.
const soFarMeans = "shrunk so far, % of the fresh length; where it was not measured, S/4 for leather-hard, S/2 for bone dry, 7S/12 for bisque"

var formulas = map[string][]Formula{
	"slip-density": {
		{
			Math: Equal(Letter("d"), Fraction(Letter("M"), Letter("V"))),
			Where: []Symbol{
				{Letter: "d", Means: "specific gravity of the slip"},
				{Letter: "M", Means: "weight of the slip without the jar, g"},
				{Letter: "V", Means: "its volume, mL; or the weight of water that fills the same jar to the same line, g"},
			},
		},
		{
			Math: Equal(Letter("D"), Fraction(Row(Bracket(Letter("M"), minus, Letter("V")), times, Letter("s")), Row(Letter("s"), minus, one))),
			Where: []Symbol{
				{Letter: "D", Means: "dry clay in the jar, g"},
				{Letter: "s", Means: "density of the dry powder, g/mL"},
			},
		},
		{
			Math: Equal(Letter("u"), Row(Letter("d"), times, Root(Row(
				Power(Bracket(Fraction(Sub(Letter("u"), Letter("M")), Letter("M"))), Number("2")), plus,
				Power(Bracket(Fraction(Sub(Letter("u"), Letter("V")), Letter("V"))), Number("2")))))),
			Where: []Symbol{
				{Letter: "u", Means: "standard uncertainty of d; the answer says d ± 2 u"},
				{Letter: "u_M", Means: "of the weight: the scale’s step / √12 for each weighing"},
				{Letter: "u_V", Means: "of the volume: the doubt about it / √3"},
			},
		},
	},
	"slip-adjust": {
		{
			Math: Equal(Letter("W"), Row(Letter("V"), times, Fraction(Row(Sub(Letter("d"), one), minus, Sub(Letter("d"), Number("2"))), Row(Sub(Letter("d"), Number("2")), minus, one)))),
			Where: []Symbol{
				{Letter: "W", Means: "water to add, mL (taken off instead when it comes out negative)"},
				{Letter: "V", Means: "slip in the bucket, mL"},
				{Letter: "d_1, d_2", Means: "specific gravity now, and wanted"},
			},
		},
		{
			Math: Equal(Letter("P"), Row(Letter("V"), times, Fraction(Row(Bracket(Sub(Letter("d"), Number("2")), minus, Sub(Letter("d"), one)), times, Letter("s")), Row(Letter("s"), minus, Sub(Letter("d"), Number("2")))))),
			Where: []Symbol{
				{Letter: "P", Means: "dry mix to add, g"},
				{Letter: "s", Means: "density of the dry powder, g/mL"},
			},
		},
	},
	"slip-batch": {
		{
			Math: Equal(Letter("D"), Fraction(Row(Letter("V"), times, Bracket(Letter("d"), minus, one)),
				Row(one, minus, Fraction(one, Letter("s")), plus, Fraction(Letter("p"), hundred), times, Bracket(one, minus, Fraction(one, Sub(Letter("s"), Letter("c"))))))),
			Where: []Symbol{
				{Letter: "D", Means: "dry base, g"},
				{Letter: "V, d", Means: "slip wanted, mL, and its specific gravity"},
				{Letter: "s, s_c", Means: "densities of the dry base and of the stain, g/mL"},
				{Letter: "p", Means: "stain, g for 100 g of base"},
			},
		},
		{
			Math: Equal(Letter("W"), Row(Letter("V"), times, Letter("d"), minus, Letter("D"), times, Bracket(one, plus, Fraction(Letter("p"), hundred)))),
			Where: []Symbol{
				{Letter: "W", Means: "water in the slip, g"},
			},
		},
		{
			Math: Equal(Words("damp clay"), Fraction(Letter("D"), Row(one, minus, Fraction(Letter("w"), hundred)))),
			Where: []Symbol{
				{Letter: "w", Means: "water in the clay, % of its damp weight; it is taken off the water to add"},
			},
		},
	},
	"slip-colour": {
		{
			Math: Equal(Words("stain to add"), Row(Letter("D"), times, Fraction(Row(Letter("p"), minus, Sub(Letter("p"), Number("0"))), hundred))),
			Where: []Symbol{
				{Letter: "D", Means: "dry base in the bucket, g"},
				{Letter: "p, p_0", Means: "stain wanted, and in it already, g for 100 g of base"},
			},
		},
		{
			Math: Equal(Letter("D"), Fraction(Row(Letter("V"), times, Bracket(Letter("d"), minus, one)),
				Row(one, minus, Fraction(one, Letter("s")), plus, Fraction(Sub(Letter("p"), Number("0")), hundred), times, Bracket(one, minus, Fraction(one, Sub(Letter("s"), Letter("c"))))))),
			Where: []Symbol{
				{Letter: "V, d", Means: "slip in the bucket, mL, and its specific gravity now"},
				{Letter: "s, s_c", Means: "densities of the dry base and of the stain, g/mL"},
			},
		},
		{
			Math: Equal(Words("water to hold"), Row(Words("stain to add"), times, Fraction(Row(Sub(Letter("s"), Letter("c")), minus, Letter("d")), Row(Sub(Letter("s"), Letter("c")), times, Bracket(Letter("d"), minus, one))))),
		},
	},
	"clay-colour": {
		{
			Math: Equal(Words("stain"), Row(Letter("M"), times, Bracket(one, minus, Fraction(Letter("w"), hundred)), times, Fraction(Letter("p"), hundred))),
			Where: []Symbol{
				{Letter: "M", Means: "damp clay, g"},
				{Letter: "w", Means: "water in it, % of its damp weight"},
				{Letter: "p", Means: "stain, g for 100 g of dry clay"},
			},
		},
	},
	"slip-fit": {
		{
			Math: Equal(Letter("R"), Row(hundred, times, Bracket(one, minus, Fraction(Row(one, minus, Fraction(Letter("S"), hundred)), Row(one, minus, Fraction(Letter("A"), hundred)))))),
			Where: []Symbol{
				{Letter: "R", Means: "what the pot has left to shrink, % of its size now"},
				{Letter: "S", Means: "shrinkage of its clay in all, % of the fresh length"},
				{Letter: "A", Means: soFarMeans},
			},
		},
		{
			Math: Equal(Words("too short by"), Row(hundred, times, Bracket(Fraction(Row(one, minus, Fraction(Letter("R"), hundred)), Row(one, minus, Fraction(Letter("T"), hundred))), minus, one))),
			Where: []Symbol{
				{Letter: "T", Means: "shrinkage of the slip in all, %; the answer is in percent too"},
			},
		},
		{
			Math: Equal(Words("give or take"), Row(hundred, times, Fraction(Row(one, minus, Fraction(Letter("R"), hundred)), Row(one, minus, Fraction(Letter("T"), hundred))), times, Root(Row(
				Power(Bracket(Fraction(Letter("b"), Row(hundred, minus, Letter("S")))), Number("2")), plus,
				Power(Bracket(Fraction(Letter("a"), Row(hundred, minus, Letter("A")))), Number("2")), plus,
				Power(Bracket(Fraction(Letter("b"), Row(hundred, minus, Letter("T")))), Number("2")))))),
			Where: []Symbol{
				{Letter: "b", Means: "what the bars are sure to within, %"},
				{Letter: "a", Means: "what the loss so far is sure to within, %: 0.5 where it was measured, S/12 where the state stands for it, 0 when fresh"},
			},
		},
	},
	"tile-plan": {
		{
			Math: Equal(Sub(Letter("p"), Letter("i")), Row(Sub(Letter("p"), one), plus, Bracket(Sub(Letter("p"), Letter("n")), minus, Sub(Letter("p"), one)), times, Fraction(Row(Letter("i"), minus, one), Row(Letter("n"), minus, one)))),
			Where: []Symbol{
				{Letter: "p_i", Means: "addition in mix i of n in a line, %; in a doubling each is twice the one before"},
			},
		},
		{
			Math:  Equal(Words("mixes of a triaxial"), Fraction(Row(Letter("n"), times, Bracket(Letter("n"), plus, one)), Number("2"))),
			Where: []Symbol{{Letter: "n", Means: "mixes along one side"}},
		},
		{
			Math: Equal(Words("smallest safe base"), Fraction(Row(Number("5000"), times, Letter("r")), Letter("p"))),
			Where: []Symbol{
				{Letter: "r", Means: "smallest step of the scale, g"},
				{Letter: "p", Means: "smallest addition or share that is not 0, %"},
			},
		},
	},
	"wash-mix": {
		{
			Math: Equal(Letter("v"), Row(Fraction(Letter("a"), Sub(Letter("s"), Letter("a"))), plus, Fraction(Letter("f"), Sub(Letter("s"), Letter("f"))), plus, Letter("w"))),
			Where: []Symbol{
				{Letter: "v", Means: "room that the parts fill together"},
				{Letter: "a, f, w", Means: "parts of stain, flux and water by weight"},
				{Letter: "s_a, s_f", Means: "densities of stain and flux, g/mL"},
			},
		},
		{
			Math:  Equal(Words("stain"), Row(Letter("V"), times, Fraction(Letter("a"), Letter("v")))),
			Where: []Symbol{{Letter: "V", Means: "wash wanted, mL; flux and water likewise, with f and w for a"}},
		},
		{
			Math: Equal(Words("strength"), Row(hundred, times, Fraction(Row(Letter("a"), plus, Letter("f")), Letter("v")))),
		},
	},
	"wash-dilute": {
		{
			Math: Equal(Sub(Letter("V"), Number("2")), Row(Sub(Letter("V"), one), times, Fraction(Sub(Letter("c"), one), Sub(Letter("c"), Number("2"))))),
			Where: []Symbol{
				{Letter: "V_1, V_2", Means: "volume of the wash before and after, mL"},
				{Letter: "c_1, c_2", Means: "its strength before and after, g in 100 mL"},
			},
		},
		{
			Math: Equal(Sub(Letter("c"), Letter("i")), Row(Sub(Letter("c"), one), times, Power(Bracket(Fraction(Sub(Letter("c"), Letter("n")), Sub(Letter("c"), one))), Fraction(Row(Letter("i"), minus, one), Row(Letter("n"), minus, one))))),
			Where: []Symbol{
				{Letter: "c_i", Means: "strength of cup i of n; the first is the strongest, the last the palest"},
			},
		},
		{
			Math: Equal(Words("strong wash"), Row(Letter("k"), times, Letter("E"), times, Bracket(Fraction(Row(Sub(Letter("c"), one), plus, Words("…"), plus, Sub(Letter("c"), Letter("n"))), Sub(Letter("c"), one))))),
			Where: []Symbol{
				{Letter: "k", Means: "cups of each strength"},
				{Letter: "E", Means: "amount in a cup, mL"},
			},
		},
	},
	"shrinkage-test": {
		{
			Math: Equal(Letter("S"), Row(hundred, times, Fraction(Row(Sub(Letter("L"), Letter("p")), minus, Sub(Letter("L"), Letter("f"))), Sub(Letter("L"), Letter("p"))))),
			Where: []Symbol{
				{Letter: "S", Means: "shrinkage in all, % of the fresh length"},
				{Letter: "L_p, L_d, L_f", Means: "between the marks: fresh, dry, fired"},
			},
		},
		{
			Math: Equal(Sub(Letter("S"), Words("firing")), Row(hundred, times, Fraction(Row(Sub(Letter("L"), Letter("d")), minus, Sub(Letter("L"), Letter("f"))), Sub(Letter("L"), Letter("d"))))),
		},
		{
			Math: Equal(Words("give or take"), Row(Letter("t"), times, Fraction(Letter("s"), Root(Letter("n"))))),
			Where: []Symbol{
				{Letter: "t", Means: "Student’s t for 95 %: 4.303 for three bars"},
				{Letter: "s", Means: "standard deviation of the bars’ totals, %; no less is said than the callipers’ step alone leaves"},
				{Letter: "n", Means: "number of bars"},
			},
		},
		{
			Math: Equal(Sub(Letter("S"), Words("volume")), Row(hundred, times, Bracket(one, minus, Power(Bracket(one, minus, Fraction(Letter("S"), hundred)), Number("3"))))),
		},
	},
	"shrinkage-size": {
		{
			Math: Equal(Letter("R"), Row(hundred, times, Bracket(one, minus, Fraction(Row(one, minus, Fraction(Letter("S"), hundred)), Row(one, minus, Fraction(Letter("A"), hundred)))))),
			Where: []Symbol{
				{Letter: "R", Means: "still to shrink, % of the size now"},
				{Letter: "S", Means: "shrinkage in all, % of the fresh length"},
				{Letter: "A", Means: soFarMeans},
			},
		},
		{
			Math: Equal(Words("size now"), Fraction(Words("fired size"), Row(one, minus, Fraction(Letter("R"), hundred)))),
		},
		{
			Math: Equal(Words("copier setting"), Row(hundred, times, Fraction(hundred, Row(hundred, minus, Letter("R"))))),
		},
		{
			Math: Equal(Words("holds now"), Fraction(Words("holds fired"), Power(Bracket(one, minus, Fraction(Letter("R"), hundred)), Number("3")))),
		},
	},
	"stage-plan": {
		{
			Math: Equal(Words("best plan"), Lines(
				Words("least undone of what is on the pot,"), Words("then fewest risky steps,"), Words("then fewest questions to the label,"),
				Words("then fewest firings,"), Words("then nearest to each medium’s best state,"), Words("then fewest steps"))),
		},
	},
}
