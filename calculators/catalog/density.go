package catalog

import (
	"math"

	"slipbook/calculators/quantity"
	"slipbook/calculators/slip"
)

var slipDensity = &Calculator{
	Name:    "slip-density",
	Title:   "How thick is this slip?",
	Purpose: "Finds the specific gravity of a slip, and the dry clay and water in it, from one weighing.",
	Inputs: []Input{
		{Name: "mass", Label: "Weight on the scale", Help: "The jar full of slip to the line, as the scale reads.", Kind: quantity.Mass, Needed: true, First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e6, ""}},
		{Name: "tare", Label: "Empty jar", Help: "The same jar clean and dry. Leave 0 if you set the scale to zero with the jar on it.", Kind: quantity.Mass, Default: "0", First: true, Low: Limit{From, 0, ""}, High: Limit{UpTo, 1e6, ""}},
		{Name: "volume", Label: "Volume of slip", Help: "What the jar holds up to the line.", Kind: quantity.Volume, Needed: true, Group: "size", First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e6, ""}},
		{Name: "water-mass", Label: "Jar full of water", Help: "Instead of the volume: the same jar filled with water to the same line, as the scale reads.", Kind: quantity.Mass, Needed: true, Group: "size", First: true, Low: Limit{Above, 0, ""}, High: Limit{UpTo, 1e6, ""}},
		solidsDensity,
		{Name: "temperature", Label: "Temperature of the water", Help: "Leave blank: water then counts as 1 g/mL, which is near enough at a bench.", Kind: quantity.Temperature,
			Low: Limit{From, 0, "Water below 0 °C is ice. Give a temperature from 0 to 40 °C."}, High: Limit{UpTo, 40, "The water table ends at 40 °C. Let the slip cool, or leave this blank."}},
		{Name: "mass-resolution", Label: "Smallest step of the scale", Help: "0.1 for a scale that shows one decimal. Blank: the studio’s scale, or else the last figure that you typed.", Kind: quantity.Mass, Low: Limit{From, 0, ""}, High: Limit{UpTo, 1000, ""}},
		{Name: "volume-tolerance", Label: "Doubt about the volume, ±", Help: "How far the line may be off. Blank: 1 % of the volume, 1 mL at least.", Kind: quantity.Volume, Low: Limit{From, 0, ""}, High: Limit{UpTo, 1000, ""}},
		{Name: "line-tolerance", Label: "Doubt about the line, ±", Help: "For the jar of water: how far the two fillings may differ. 1 mm in a jar 6 cm wide is 2.8 mL. Blank: 1 % of the water, 1 mL at least.", Kind: quantity.Volume, Low: Limit{From, 0, ""}, High: Limit{UpTo, 1000, ""}},
	},
	Outputs: []Output{
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
	Example: Example{
		Case:  "A clean jar weighs 62.4 g. Filled with white slip to its 100 mL line it weighs 212.4 g.",
		Given: []Setting{{"mass", "212.4 g"}, {"tare", "62.4 g"}, {"volume", "100 mL"}},
	},
	Table: Table{
		Caption: "100 mL of slip, weighed without the jar; dry clay of density 2.6",
		Down:    "mass", Values: []string{"115 g", "120 g", "125 g", "130 g", "135 g", "140 g", "145 g", "150 g", "155 g", "160 g", "165 g", "170 g", "175 g", "180 g"},
		Show: []string{"specific-gravity", "dry-per-litre", "water-per-litre", "twaddell", "baume"},
		Also: []Setting{{"tare", "0"}, {"volume", "100 mL"}},
	},
	Next: []Next{
		{Words: "Make the bucket thinner or thicker", Calculator: "slip-adjust", Carry: []Carry{{"from", "specific-gravity"}, {"solids-density", "solids-density"}}},
		{Words: "Colour this bucket", Calculator: "slip-colour", Carry: []Carry{{"specific-gravity", "specific-gravity"}, {"solids-density", "solids-density"}}},
	},
	work: workDensity,
	draw: drawDensity,
}

// solidsDensity is asked by every calculator that reckons dry content.
var solidsDensity = Input{
	Name: "solids-density", Label: "How heavy the dry powder is", Help: "Its density in g/mL. Leave 2.6 unless you know better.",
	Kind: quantity.Density, Default: "2.6",
	Low:  Limit{Above, 1, "Powder that is no heavier than water would float. Clay is about 2.6."},
	High: Limit{UpTo, 10, "No ceramic powder is that heavy. Clay is about 2.6, stains about 4.5."},
}

// tooHeavy refuses a slip of a gravity that its dry powder cannot make. Where
// the powder alone is too light and is not the usual one, its density is as
// likely mistyped as the gravity: the refusal then stands there and names both.
func (b *bench) tooHeavy(gravity float64, input, sentence string, texts ...string) {
	if solids := b.value("solids-density"); solids <= gravity && !same(solidsDensity.Default, solids) {
		b.refuse("solids-density", "Powder of {solids-density} cannot make a slip of {}: dry powder is heavier than any slip of it. Either number may be mistyped; clay is about 2.6.",
			b.gravity(gravity))
		return
	}
	b.refuse(input, sentence, texts...)
}

func workDensity(b *bench) {
	water := 1.0
	if b.has("temperature") {
		water = slip.WaterDensity(b.value("temperature"))
	}
	jar := b.value("tare")
	mass := b.value("mass") - jar
	if mass <= 0 {
		b.refuse("tare", "The empty jar ({tare}) cannot weigh as much as the full one ({mass}). Are the two boxes swapped?")
		return
	}
	m := weighed{mass: mass, water: water, solids: b.value("solids-density")}
	m.doubt = slip.Doubt{Resolution: b.resolution(), Tared: jar > 0}
	if b.has("water-mass") {
		full := b.value("water-mass") - jar
		if full <= 0 {
			b.refuse("water-mass", "The jar full of water ({water-mass}) has to weigh more than the empty jar ({tare}).")
			return
		}
		m.volume, m.gravity = full/water, mass/full
		m.doubt.Line = b.tolerance("line-tolerance", m.volume)
		b.unused("volume-tolerance", "The doubt about the volume was not used: the jar was weighed full of water. Give the doubt about the line instead.")
		m.u, m.dry = m.doubt.ByWater(m.gravity, full, m.volume), m.doubt.DryByWater(mass/m.volume, m.solids, water)
	} else {
		m.volume = b.value("volume")
		m.gravity = mass / m.volume / water
		m.doubt.Tolerance = b.tolerance("volume-tolerance", m.volume)
		b.unused("line-tolerance", "The doubt about the line was not used: it is for a jar that is weighed full of water.")
		m.u, m.dry = m.doubt.ByVolume(m.gravity, mass, m.volume), m.doubt.DryByVolume(m.solids, water)
	}
	if b.densityPossible(m.gravity, water) {
		b.answerDensity(m)
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
func (b *bench) resolution() float64 {
	if b.has("mass-resolution") {
		return b.value("mass-resolution")
	}
	step := 0.0
	if len(b.settings.Scales) > 0 {
		step = b.settings.step(b.value("mass"))
	} else {
		for _, name := range [...]string{"mass", "tare", "water-mass"} {
			if g := b.given(name); g != nil && b.typed(name) && g.Values[0] > 0 && (step == 0 || g.typed[0].Step < step) {
				step = g.typed[0].Step
			}
		}
		step = math.Max(step, finestTyped)
	}
	b.stand("mass-resolution", step)
	return step
}

// tolerance gives a doubt about a volume (mL): as given, or 1 % of it, 1 mL at
// least.
func (b *bench) tolerance(name string, volume float64) float64 {
	if b.has(name) {
		return b.value(name)
	}
	t := math.Max(1, volume/100)
	b.stand(name, t)
	return t
}

// densityPossible refuses what no slip can weigh.
func (b *bench) densityPossible(gravity, water float64) bool {
	solids := b.value("solids-density")
	switch {
	case gravity < 1:
		b.refuse("mass", "That makes a specific gravity of {}, thinner than water, and no slip is. Check the weight, the jar and the volume; is there froth in it?", b.text(gravity, 4))
	case gravity*water > solids:
		b.tooHeavy(gravity, "mass", "That makes a specific gravity of {}, heavier than the dry powder itself ({solids-density}). Check the weight and the volume; was the jar taken off?", b.text(gravity, 4))
	default:
		return true
	}
	return false
}

// sayDensity puts the range first: a student reads the first number as exact.
func (b *bench) sayDensity(low, u float64) {
	switch {
	case low < 1:
		b.headline("About {specific-gravity}, but so little slip, or so coarse a measure, leaves that open: weigh more at once.")
	case u == 0:
		b.headline("About {specific-gravity}: it weighs that many times as much as water.")
	default:
		b.headline("Between {specific-gravity-low} and {specific-gravity-high}: it weighs {specific-gravity} times as much as water.")
	}
}

func (b *bench) answerDensity(m weighed) {
	dry := slip.Dry(m.mass, m.volume, m.solids, m.water)
	low, high := m.gravity-float64(2*m.u), m.gravity+float64(2*m.u)
	rise := m.solids * m.water / (m.solids - m.water) // of the dry content in 1 mL with the gravity
	b.setGravity("specific-gravity", m.gravity, m.u, quantity.Nearest)
	b.setGravity("specific-gravity-low", low, m.u, quantity.Down)
	b.setGravity("specific-gravity-high", high, m.u, quantity.Up)
	b.setWithin("dry-content", dry, m.dry)
	b.setWithin("dry-per-litre", 1000*dry/m.volume, float64(1000*m.u*rise))
	b.setWithin("water-per-litre", 1000*(m.mass-dry)/m.volume, float64(1000*m.u*(rise-m.water)))
	b.setWithin("solids-by-mass", 100*dry/m.mass, float64(100*m.u*rise/m.water)/float64(m.gravity*m.gravity))
	b.setWithin("solids-by-volume", 100*dry/m.solids/m.volume, float64(100*m.u*rise/m.solids))
	b.setWithin("twaddell", slip.Twaddell(m.gravity), float64(200*m.u))
	b.setWithin("baume", slip.Baume(m.gravity), float64(145*m.u)/float64(m.gravity*m.gravity))
	b.setWithin("pint-weight", slip.PintWeight(m.gravity), float64(20*m.u))
	b.set("specific-gravity-u", m.u)
	b.sayDensity(low, m.u)
	b.judgeGravity(m.gravity)
	if b.has("water-mass") && b.value("tare") == 0 {
		b.note("The empty jar counts as 0 g: right if the scale was set to zero with the jar on it. If it was not, weigh the empty jar too, or the number comes out too low.")
	}
	if m.u > 0.02 {
		b.note("With this scale and this vessel the number is loose. A larger vessel, or the jar weighed full of water instead of a volume, makes it firmer.")
	}
}

// setGravity gives an output a specific gravity that is uncertain by u, to the
// place of u's first figure, four digits behind the mark at most.
func (b *bench) setGravity(name string, value, u float64, way quantity.Round) {
	b.set(name, value)
	if u > 0 {
		r := &b.answer.Outputs[len(b.answer.Outputs)-1]
		r.Text, r.u = quantity.FormatTo(math.Max(0, value), math.Max(0.0001, place(u)), way, b.settings.Style), u
	}
}
