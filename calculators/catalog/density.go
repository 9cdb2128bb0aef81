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
	Name:    "slip-density",
	Title:   "How thick is this slip?",
	Purpose: "Finds the specific gravity of a slip, and the dry clay and water in it, from one weighing.",
	Inputs: []form.Input{
		{Name: "mass", Label: "Weight on the scale", Help: "The jar full of slip to the line, as the scale reads.", Kind: quantity.Mass, Needed: true, First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "tare", Label: "Empty jar", Help: "The same jar clean and dry. Leave 0 if you set the scale to zero with the jar on it.", Kind: quantity.Mass, Default: "0", First: true, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "volume", Label: "Volume of slip", Help: "What the jar holds up to the line.", Kind: quantity.Volume, Needed: true, Group: "size", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		{Name: "water-mass", Label: "Jar full of water", Help: "Instead of the volume: the same jar filled with water to the same line, as the scale reads.", Kind: quantity.Mass, Needed: true, Group: "size", First: true, Low: form.Limit{End: form.Above}, High: form.Limit{End: form.UpTo, Value: 1e6}},
		solidsDensity,
		{Name: "temperature", Label: "Temperature of the water", Help: "Leave blank: water then counts as 1 g/mL, which is near enough at a bench.", Kind: quantity.Temperature,
			Low: form.Limit{End: form.From, Why: "Water below 0 °C is ice. Give a temperature from 0 to 40 °C."}, High: form.Limit{End: form.UpTo, Value: 40, Why: "The water table ends at 40 °C. Let the slip cool, or leave this blank."}},
		{Name: "mass-resolution", Label: "Smallest step of the scale", Help: "0.1 for a scale that shows one decimal. Blank: the studio’s scale, or else the last figure that you typed.", Kind: quantity.Mass, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 1000}},
		{Name: "volume-tolerance", Label: "Doubt about the volume, ±", Help: "How far the line may be off. Blank: 1 % of the volume, 1 mL at least.", Kind: quantity.Volume, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 1000}},
		{Name: "line-tolerance", Label: "Doubt about the line, ±", Help: "For the jar of water: how far the two fillings may differ. 1 mm in a jar 6 cm wide is 2.8 mL. Blank: 1 % of the water, 1 mL at least.", Kind: quantity.Volume, Low: form.Limit{End: form.From}, High: form.Limit{End: form.UpTo, Value: 1000}},
	},
	Outputs: []form.Output{
		{Name: "specific-gravity", Label: "Specific gravity", Unit: "1", Digits: 4, Places: 2},
		{Name: "specific-gravity-low", Label: "at least", Unit: "1", Digits: 4, Places: 2},
		{Name: "specific-gravity-high", Label: "at most", Unit: "1", Digits: 4, Places: 2},
		{Name: "dry-content", Label: "Dry clay in this jar", Unit: "g", Digits: 4},
		{Name: "dry-per-litre", Label: "Dry clay in a litre", Unit: "g/L", Digits: 4},
		{Name: "water-per-litre", Label: "Water in a litre", Unit: "g/L", Digits: 4},
		{Name: "solids-by-mass", Label: "Dry clay by weight", Unit: "%", Digits: 3},
		{Name: "solids-by-volume", Label: "Dry clay by volume", Unit: "%", Digits: 3, Aside: true},
		{Name: "twaddell", Label: "Degrees Twaddell", Unit: "°Tw", Digits: 3, Aside: true},
		{Name: "baume", Label: "Degrees Baumé (modulus 145)", Unit: "°Bé", Digits: 3, Aside: true},
		{Name: "pint-weight", Label: "Pint weight (imperial pint, water 20 oz)", Unit: "oz/pint", Digits: 3, Aside: true},
		{Name: "specific-gravity-u", Label: "Standard uncertainty", Unit: "1", Digits: 2, Aside: true},
	},
	Notes: []string{
		"Stir the bucket to the bottom, let the air rise, fill to the line and wipe the outside dry before you weigh.",
		"Specific gravity is not flow. Two slips of the same number can pour quite differently; watch it run off the spoon too.",
		"Dry clay is not weight minus water volume: the grains take up room themselves. Taken that way, more than a third would be missing.",
	},
	Next: []form.Next{
		{Words: "Make the bucket thinner or thicker", Calculator: "slip-adjust", Carry: []form.Carry{{Into: "from", From: "specific-gravity"}, {Into: "solids-density", From: "solids-density"}}},
		{Words: "Colour this bucket", Calculator: "slip-colour", Carry: []form.Carry{{Into: "specific-gravity", From: "specific-gravity"}, {Into: "solids-density", From: "solids-density"}}},
	},
	Work: workDensity,
	Draw: drawDensity,
}

// What only pages show, which the reactor is built without.
func init() {
	if form.Pages {
		slipDensity.Example = form.Example{
			Case:  "A clean jar weighs 62.4 g. Filled with white slip to its 100 mL line it weighs 212.4 g.",
			Given: []form.Setting{{Name: "mass", Text: "212.4 g"}, {Name: "tare", Text: "62.4 g"}, {Name: "volume", Text: "100 mL"}},
		}
		slipDensity.Table = form.Table{
			Caption: "100 mL of slip, weighed without the jar; dry clay of density 2.6",
			Down:    "mass", Values: []string{"115 g", "120 g", "125 g", "130 g", "135 g", "140 g", "145 g", "150 g", "155 g", "160 g", "165 g", "170 g", "175 g", "180 g"},
			Show: []string{"specific-gravity", "dry-per-litre", "water-per-litre", "twaddell", "baume"},
			Also: []form.Setting{{Name: "tare", Text: "0"}, {Name: "volume", Text: "100 mL"}},
		}
		slipDensity.Formulas = densityFormulas
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
		e.Refuse("tare", "The empty jar ({tare}) cannot weigh as much as the full one ({mass}). Are the two boxes swapped?")
		return
	}
	m := weighed{mass: mass, water: water, solids: e.Value("solids-density")}
	m.doubt = slip.Doubt{Resolution: resolution(e), Tared: jar > 0}
	if e.Has("water-mass") {
		full := e.Value("water-mass") - jar
		if full <= 0 {
			e.Refuse("water-mass", "The jar full of water ({water-mass}) has to weigh more than the empty jar ({tare}).")
			return
		}
		m.volume, m.gravity = full/water, mass/full
		m.doubt.Line = tolerance(e, "line-tolerance", m.volume)
		e.Unused("volume-tolerance", "The doubt about the volume was not used: the jar was weighed full of water. Give the doubt about the line instead.")
		m.u, m.dry = m.doubt.ByWater(m.gravity, full, m.volume), m.doubt.DryByWater(mass/m.volume, m.solids, water)
	} else {
		m.volume = e.Value("volume")
		m.gravity = mass / m.volume / water
		m.doubt.Tolerance = tolerance(e, "volume-tolerance", m.volume)
		e.Unused("line-tolerance", "The doubt about the line was not used: it is for a jar that is weighed full of water.")
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

// finestTyped is the least that a weighing as typed is taken to tell (g): a
// nought behind the mark is often left out.
const finestTyped = 0.1

// resolution gives the smallest step of the scale (g): as given, or of the
// course's scale that takes the full jar, or else the finest last figure of the
// weights as they were typed.
func resolution(e *form.Evaluation) float64 {
	if e.Has("mass-resolution") {
		return e.Value("mass-resolution")
	}
	step := 0.0
	if len(e.Settings.Scales) > 0 {
		step = e.Settings.Step(e.Value("mass"))
	} else {
		for _, name := range [...]string{"mass", "tare", "water-mass"} {
			if g := e.Given(name); g != nil && e.Typed(name) && g.Values[0] > 0 && (step == 0 || g.AsTyped[0].Step < step) {
				step = g.AsTyped[0].Step
			}
		}
		step = math.Max(step, finestTyped)
	}
	e.Stand("mass-resolution", step)
	return step
}

// tolerance gives a doubt about a volume (mL): as given, or 1 % of it, 1 mL at
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
		e.Refuse("mass", "That makes a specific gravity of {}, thinner than water, and no slip is. Check the weight, the jar and the volume; is there froth in it?", e.Text(gravity, 4))
	case gravity*water > solids:
		tooHeavy(e, gravity, "mass", "That makes a specific gravity of {}, heavier than the dry powder itself ({solids-density}). Check the weight and the volume; was the jar taken off?", e.Text(gravity, 4))
	default:
		return true
	}
	return false
}

// sayDensity puts the range first: a student reads the first number as exact.
func sayDensity(e *form.Evaluation, low, u float64) {
	switch {
	case low < 1:
		e.Headline("About {specific-gravity}, but so little slip, or so coarse a measure, leaves that open: weigh more at once.")
	case u == 0:
		e.Headline("About {specific-gravity}: it weighs that many times as much as water.")
	default:
		e.Headline("Between {specific-gravity-low} and {specific-gravity-high}: it weighs {specific-gravity} times as much as water.")
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
		e.Note("The empty jar counts as 0 g: right if the scale was set to zero with the jar on it. If it was not, weigh the empty jar too, or the number comes out too low.")
	}
	if m.u > 0.02 {
		e.Note("With this scale and this vessel the number is loose. A larger vessel, or the jar weighed full of water instead of a volume, makes it firmer.")
	}
}

// setGravity gives an output a specific gravity that is uncertain by u, to the
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
	d := sheet(e, "The jar as if all had settled: the dry clay alone fills {solids-by-volume} of it, water the rest. By weight the clay is {solids-by-mass}.")
	d.Jar(60, sketch.JarWidth, sketch.JarTop-20, sketch.Layer{Class: "clay", Height: solids}, sketch.Layer{Class: "water", Height: whole - solids})
	d.Line("fine", 210, sketch.JarFloor-solids, 250, sketch.JarFloor-solids)
	d.Words("water", 262, (sketch.JarTop+sketch.JarFloor-solids)/2+9, sketch.TextSize, "start")
	d.Aside(brief(e, "{solids-by-volume} of the volume is clay,"), 262, sketch.JarFloor-solids/2-8)
	d.Aside(brief(e, "{solids-by-mass} of the weight"), 262, sketch.JarFloor-solids/2+24)
	return d.String()
}

func densityFormulas() []Formula {
	return []Formula{
		{
			Math: Equal(Letter("d"), Fraction(Letter("M"), Letter("V"))),
			Where: []Symbol{
				{Letter: "d", Means: "specific gravity of the slip"},
				{Letter: "M", Means: "weight of the slip without the jar, g"},
				{Letter: "V", Means: "its volume, mL; or the weight of water that fills the same jar to the same line, g"},
			},
		},
		{
			Math: Equal(Letter("D"), Fraction(Row(Bracket(Letter("M"), Minus, Letter("V")), Times, Letter("s")), Row(Letter("s"), Minus, One))),
			Where: []Symbol{
				{Letter: "D", Means: "dry clay in the jar, g"},
				{Letter: "s", Means: "density of the dry powder, g/mL"},
			},
		},
		{
			Math: Equal(Letter("u"), Row(Letter("d"), Times, Root(Row(
				Power(Bracket(Fraction(Sub(Letter("u"), Letter("M")), Letter("M"))), Number("2")), Plus,
				Power(Bracket(Fraction(Sub(Letter("u"), Letter("V")), Letter("V"))), Number("2")))))),
			Where: []Symbol{
				{Letter: "u", Means: "standard uncertainty of d; the answer says d ± 2 u"},
				{Letter: "u_M", Means: "of the weight: the scale’s step / √12 for each weighing"},
				{Letter: "u_V", Means: "of the volume: the doubt about it / √3"},
			},
		},
	}
}
