package catalog

import (
	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
)

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		recipeScale.Example = form.Example{
			Given: []form.Setting{{Name: "parts", Text: "40 25 20 15"}, {Name: "additions", Text: "8"}, {Name: "names", Text: "Kaolin, Ball clay, Feldspar, Quartz, Blue stain"}, {Name: "volume", Text: "2 L"}, {Name: "specific-gravity", Text: "1.45"}},
		}
		recipeScale.Table = form.Table{
			Down: "dry-mass", Values: []string{"100 g", "200 g", "500 g", "1 kg", "2 kg", "5 kg", "10 kg"},
			Show: []string{"base-mass", "additions-mass", "water", "new-volume"},
			Also: []form.Setting{{Name: "volume", Text: ""}},
		}
		recipeScale.Formula = recipeFormulas
	}
}

func recipeFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Sub(Letter("m"), Letter("i")), Row(Letter("B"), Times, Fraction(Sub(Letter("p"), Letter("i")), Hundred))),
			Where: []Symbol{
				{Letter: "m_i, p_i", Means: say("m_i-p_i")},
				{Letter: "B", Means: say("B")},
			},
		},
		{
			Math:  Equal(Letter("B"), Row(Letter("D"), Times, Fraction(Hundred, Row(Hundred, Plus, Letter("p"))))),
			Where: []Symbol{{Letter: "D, p", Means: say("D-p")}},
		},
		{
			Math: Equal(Letter("B"), Fraction(Row(Letter("V"), Times, Bracket(Letter("d"), Minus, One)),
				Row(One, Minus, Fraction(One, Letter("s")), Plus, Fraction(Letter("p"), Hundred), Times, Bracket(One, Minus, Fraction(One, Sub(Letter("s"), Letter("c"))))))),
			Where: []Symbol{
				{Letter: "V, d", Means: say("V-d")},
				{Letter: "s, s_c", Means: say("s-s_c")},
			},
		},
		{
			Math:  Equal(Words(say("least")), Fraction(Row(Hundred, Times, Letter("H")), Sub(Letter("p"), Letter("i")))),
			Where: []Symbol{{Letter: "H", Means: say("H")}},
		},
	}
}
