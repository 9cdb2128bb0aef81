package catalog

import (
	"math"

	"slipbook/calculators/form"
	. "slipbook/calculators/formula"
	"slipbook/calculators/quantity"
	"slipbook/calculators/sketch"
	"slipbook/calculators/slip"
)

var slipDensity = &form.Calculator{
	Name: "slip-density",
	Inputs: []form.Input{
		{Name: "mass", Kind: quantity.Mass, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "tare", Kind: quantity.Mass, Default: "0", First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "volume", Kind: quantity.Volume, Needed: true, Group: "size", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "water-mass", Kind: quantity.Mass, Needed: true, Group: "size", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		solidsDensity,
		{Name: "temperature", Kind: quantity.Temperature,
			Low: form.Limit{End: form.From, Why: "low"}, High: form.Limit{End: form.UpTo, Value: 40, Why: "high"}},
		scaleStep,
		{Name: "volume-tolerance", Kind: quantity.Volume, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 1000}},
		{Name: "line-tolerance", Kind: quantity.Volume, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 1000}},
	},
	Outputs: []form.Output{
		{Name: "specific-gravity", Unit: "1", Digits: 4, Places: 2},
		{Name: "specific-gravity-low", Unit: "1", Digits: 4, Places: 2},
		{Name: "specific-gravity-high", Unit: "1", Digits: 4, Places: 2},
		{Name: "dry-content", Unit: "g", Digits: 4},
		{Name: "dry-per-litre", Unit: "g/L", Digits: 4},
		{Name: "water-per-litre", Unit: "g/L", Digits: 4},
		{Name: "solids-by-mass", Unit: "%", Digits: 3},
		{Name: "solids-by-volume", Unit: "%", Digits: 3, Aside: true},
		{Name: "twaddell", Unit: "°Tw", Digits: 3, Aside: true},
		{Name: "baume", Unit: "°Bé", Digits: 3, Aside: true},
		{Name: "pint-weight", Unit: "oz/pint", Digits: 3, Aside: true},
		{Name: "specific-gravity-u", Unit: "1", Digits: 2, Aside: true},
	},
	Says: []string{"stir-bucket-bottom", "specific-gravity-not", "dry-clay-not"},
	Next: []form.Next{
		{Calculator: "slip-adjust", Carry: []form.Carry{{Into: "from", From: "specific-gravity"}, {Into: "solids-density", From: "solids-density"}}},
		{Calculator: "slip-colour", Carry: []form.Carry{{Into: "specific-gravity", From: "specific-gravity"}, {Into: "solids-density", From: "solids-density"}}},
	},
	Work: workDensity,
	Draw: drawDensity,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		slipDensity.Example = form.Example{
			Given: []form.Setting{{Name: "mass", Text: "212.4 g"}, {Name: "tare", Text: "62.4 g"}, {Name: "volume", Text: "100 mL"}},
		}
		slipDensity.Table = form.Table{
			Down: "mass", Values: []string{"115 g", "120 g", "125 g", "130 g", "135 g", "140 g", "145 g", "150 g", "155 g", "160 g", "165 g", "170 g", "175 g", "180 g"},
			Show: []string{"specific-gravity", "dry-per-litre", "water-per-litre", "twaddell", "baume"},
			Also: []form.Setting{{Name: "tare", Text: "0"}, {Name: "volume", Text: "100 mL"}},
		}
		slipDensity.Formula = densityFormulas
	}
}

func workDensity(e *form.Evaluation) {
	water := 1.0
	if e.Has("temperature") {
		water = slip.WaterDensity(e.Value("temperature"))
	}
	jar := e.Value("tare")
	mass := e.Value("mass") - jar
	if mass <= 0 {
		e.Refuse("tare", "empty-jar-cannot")
		return
	}
	m := weighed{mass: mass, water: water, solids: e.Value("solids-density")}
	m.doubt = slip.Doubt{Resolution: resolution(e, e.Value("mass"), "mass", "tare", "water-mass"), Tared: jar > 0}
	if e.Has("water-mass") {
		full := e.Value("water-mass") - jar
		if full <= 0 {
			e.Refuse("water-mass", "jar-full-water")
			return
		}
		m.volume, m.gravity = full/water, mass/full
		m.doubt.Line = tolerance(e, "line-tolerance", m.volume)
		e.Unused("volume-tolerance", "doubt-about-volume")
		m.u, m.dry = m.doubt.ByWater(m.gravity, full, m.volume), m.doubt.DryByWater(mass/m.volume, m.solids, water)
	} else {
		m.volume = e.Value("volume")
		m.gravity = mass / m.volume / water
		m.doubt.Tolerance = tolerance(e, "volume-tolerance", m.volume)
		e.Unused("line-tolerance", "doubt-about-line")
		m.u, m.dry = m.doubt.ByVolume(m.gravity, mass, m.volume), m.doubt.DryByVolume(m.solids, water)
	}
	if densityPossible(e, m.gravity, water) {
		answerDensity(e, m)
	}
}

// weighed is a measured slip.
type weighed struct {
	mass, volume, gravity float64 // g, mL
	water, solids         float64 // densities, g/mL
	doubt                 slip.Doubt
	u, dry                float64 // standard uncertainties of the gravity, and of the dry content (g)
}

// tolerance returns a doubt about a volume (mL): as given, or 1 % of it, 1 mL at
// least.
func tolerance(e *form.Evaluation, name string, volume float64) float64 {
	if e.Has(name) {
		return e.Value(name)
	}
	t := math.Max(1, volume/100)
	e.Stand(name, t)
	return t
}

// densityPossible refuses what no slip can weigh.
func densityPossible(e *form.Evaluation, gravity, water float64) bool {
	solids := e.Value("solids-density")
	switch {
	case gravity < 1:
		e.Refuse("mass", "thinner-than-water", "gravity", e.Text(gravity, 4))
	case gravity*water > solids:
		tooHeavy(e, gravity, "mass", "heavier-than-powder", "gravity", e.Text(gravity, 4))
	default:
		return true
	}
	return false
}

// sayDensity puts the range first: a student reads the first number as exact.
func sayDensity(e *form.Evaluation, low, u float64) {
	switch {
	case low < 1:
		e.Headline("about-but-so")
	case u == 0:
		e.Headline("about-weighs-many")
	default:
		e.Headline("between-weighs-times")
	}
}

func answerDensity(e *form.Evaluation, m weighed) {
	dry := slip.Dry(m.mass, m.volume, m.solids, m.water)
	low, high := m.gravity-float64(2*m.u), m.gravity+float64(2*m.u)
	rise := m.solids * m.water / (m.solids - m.water) // of the dry content in 1 mL with the gravity
	setGravity(e, "specific-gravity", m.gravity, m.u, quantity.Nearest)
	setGravity(e, "specific-gravity-low", low, m.u, quantity.Down)
	setGravity(e, "specific-gravity-high", high, m.u, quantity.Up)
	e.SetWithin("dry-content", dry, m.dry)
	e.SetWithin("dry-per-litre", 1000*dry/m.volume, float64(1000*m.u*rise))
	e.SetWithin("water-per-litre", 1000*(m.mass-dry)/m.volume, float64(1000*m.u*(rise-m.water)))
	e.SetWithin("solids-by-mass", 100*dry/m.mass, float64(100*m.u*rise/m.water)/float64(m.gravity*m.gravity))
	e.SetWithin("solids-by-volume", 100*dry/m.solids/m.volume, float64(100*m.u*rise/m.solids))
	e.SetWithin("twaddell", slip.Twaddell(m.gravity), float64(200*m.u))
	e.SetWithin("baume", slip.Baume(m.gravity), float64(145*m.u)/float64(m.gravity*m.gravity))
	e.SetWithin("pint-weight", slip.PintWeight(m.gravity), float64(20*m.u))
	e.Set("specific-gravity-u", m.u)
	sayDensity(e, low, m.u)
	judgeGravity(e, m.gravity)
	if e.Has("water-mass") && e.Value("tare") == 0 {
		e.Note("empty-jar-counts")
	}
	if m.u > 0.02 {
		e.Note("scale-vessel-number")
	}
}

// setGravity sets an output to a specific gravity that is uncertain by u, to the
// place of u's first figure, four digits behind the mark at most.
func setGravity(e *form.Evaluation, name string, value, u float64, way quantity.Round) {
	e.SetWithin(name, value, u)
	if u > 0 {
		e.Show(name, quantity.FormatTo(math.Max(0, value), math.Max(0.0001, form.Place(u)), way, e.Settings.Style))
	}
}

// drawDensity shows the jar as if all had settled: the grains below, the water
// above, to scale.
func drawDensity(e *form.Evaluation) string {
	share, _ := e.Result("solids-by-volume")
	whole := sketch.JarFloor - sketch.JarTop
	solids := float64(whole * share.Value / 100)
	d := sheet(e, "alternative")
	d.Jar(60, sketch.JarWidth, sketch.JarTop-20, sketch.Layer{Class: "clay", Height: solids}, sketch.Layer{Class: "water", Height: whole - solids})
	d.Line("fine", 210, sketch.JarFloor-solids, 250, sketch.JarFloor-solids)
	d.Words(e.Say("water"), 262, (sketch.JarTop+sketch.JarFloor-solids)/2+9, "start")
	for i, words := range []string{"clay", "volume", "weight"} {
		d.Aside(brief(e, words), 262, sketch.JarFloor-solids/2+float64(float64(i-1)*sketch.LineHeight))
	}
	return d.String()
}

func densityFormulas(say func(string) string) []Formula {
	return []Formula{
		{
			Math: Equal(Letter("d"), Fraction(Letter("M"), Letter("V"))),
			Where: []Symbol{
				{Letter: "d", Means: say("d")},
				{Letter: "M", Means: say("M")},
				{Letter: "V", Means: say("V")},
			},
		},
		{
			Math: Equal(Letter("D"), Fraction(Row(Bracket(Letter("M"), Minus, Letter("V")), Times, Letter("s")), Row(Letter("s"), Minus, One))),
			Where: []Symbol{
				{Letter: "D", Means: say("D")},
				{Letter: "s", Means: say("s")},
			},
		},
		{
			Math: Equal(Letter("u"), Row(Letter("d"), Times, Root(Row(
				Power(Bracket(Fraction(Sub(Letter("u"), Letter("M")), Letter("M"))), Number("2")), Plus,
				Power(Bracket(Fraction(Sub(Letter("u"), Letter("V")), Letter("V"))), Number("2")))))),
			Where: []Symbol{
				{Letter: "u", Means: say("u")},
				{Letter: "u_M", Means: say("u_M")},
				{Letter: "u_V", Means: say("u_V")},
			},
		},
	}
}
