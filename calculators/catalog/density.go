package catalog

import (
	"slipbook/calculators/quantity"
	"slipbook/calculators/slip"
)

var slipDensity = &Calculator{
	Name:    "slip-density",
	Title:   "How thick is this slip?",
	Purpose: "Finds the specific gravity of a slip, and the dry clay and water in it, from one weighing.",
	Inputs: []Input{
		{Name: "mass", Label: "Weight on the scale", Help: "The jar full of slip to the line, as the scale reads.", Kind: quantity.Mass, Needed: true, First: true, Low: above(0), High: upTo(1e6)},
		{Name: "tare", Label: "Empty jar", Help: "The same jar clean and dry. Leave 0 if you set the scale to zero with the jar on it.", Kind: quantity.Mass, Default: "0", First: true, Low: from(0), High: upTo(1e6)},
		{Name: "volume", Label: "Volume of slip", Help: "What the jar holds up to the line. Blank counts as 100 mL.", Kind: quantity.Volume, Default: "100", Group: "size", First: true, Low: above(0), High: upTo(1e6)},
		{Name: "water-mass", Label: "Jar full of water", Help: "Instead of the volume: the same jar filled with water to the same line, as the scale reads.", Kind: quantity.Mass, Group: "size", First: true, Low: above(0), High: upTo(1e6)},
		solidsDensity,
		{Name: "temperature", Label: "Temperature of the water", Help: "Leave blank: water then counts as 1 g/mL, which is near enough at a bench.", Kind: quantity.Temperature,
			Low: from(0).because("Water below 0 °C is ice. Give a temperature from 0 to 40 °C."), High: upTo(40).because("The water table ends at 40 °C. Let the slip cool, or leave this blank.")},
		{Name: "mass-resolution", Label: "Smallest step of the scale", Help: "0.1 for a scale that shows one decimal.", Kind: quantity.Mass, Default: "0.1", Low: from(0), High: upTo(1000)},
		{Name: "volume-tolerance", Label: "Doubt about the volume, ±", Help: "How far the line may be off. A good cylinder: 1 mL.", Kind: quantity.Volume, Default: "1", Low: from(0), High: upTo(1000)},
	},
	Outputs: []Output{
		{Name: "specific-gravity", Label: "Specific gravity", Unit: "1", Digits: 4, Places: 2},
		{Name: "specific-gravity-low", Label: "at least", Unit: "1", Digits: 3, Places: 2},
		{Name: "specific-gravity-high", Label: "at most", Unit: "1", Digits: 3, Places: 2},
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
	Low:  above(1).because("Powder that is no heavier than water would float. Clay is about 2.6."),
	High: upTo(10).because("No ceramic powder is that heavy. Clay is about 2.6, stains about 4.5."),
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
	doubt := slip.Doubt{Resolution: b.value("mass-resolution"), Tolerance: b.value("volume-tolerance"), Tared: jar > 0}
	volume, gravity, u := b.value("volume"), 0.0, 0.0
	if b.has("water-mass") {
		full := b.value("water-mass") - jar
		if full <= 0 {
			b.refuse("water-mass", "The jar full of water ({water-mass}) has to weigh more than the empty jar ({tare}).")
			return
		}
		volume, gravity = full/water, mass/full
		u = doubt.ByWater(gravity, full)
	} else {
		gravity = mass / volume / water
		u = doubt.ByVolume(gravity, mass, volume)
	}
	if b.densityPossible(gravity, water) {
		b.answerDensity(mass, volume, gravity, u, water)
	}
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
// Where the scale is better than the digits shown, there is no range to show.
func (b *bench) sayDensity() {
	low, _ := b.result("specific-gravity-low")
	high, _ := b.result("specific-gravity-high")
	switch {
	case low.Value < 1:
		b.headline("About {specific-gravity}, but so little slip, or so coarse a measure, leaves that open: weigh more at once.")
	case low.Text == high.Text:
		b.headline("About {specific-gravity-low}: it weighs that many times as much as water.")
	default:
		b.headline("Between {specific-gravity-low} and {specific-gravity-high}: it weighs {specific-gravity} times as much as water.")
	}
}

func (b *bench) answerDensity(mass, volume, gravity, u, water float64) {
	solids := b.value("solids-density")
	dry := slip.Dry(mass, volume, solids, water)
	low, high := gravity-float64(2*u), gravity+float64(2*u)
	b.set("specific-gravity", gravity)
	b.set("specific-gravity-low", low)
	b.set("specific-gravity-high", high)
	b.set("dry-content", dry)
	b.set("dry-per-litre", 1000*dry/volume)
	b.set("water-per-litre", 1000*(mass-dry)/volume)
	b.set("solids-by-mass", 100*dry/mass)
	b.set("solids-by-volume", 100*dry/solids/volume)
	b.set("twaddell", slip.Twaddell(gravity))
	b.set("baume", slip.Baume(gravity))
	b.set("pint-weight", slip.PintWeight(gravity))
	b.set("specific-gravity-u", u)
	b.sayDensity()
	b.judge(OfSlip, gravity, b.text(gravity, 3))
	if gravity < 1.15 {
		b.note("This is under 1.15. So thin a mix is not judged by weighing a jar: a small error in the weight becomes a large one in the dry clay. Reckon from what was weighed in.")
	}
	b.tooThick(gravity)
	if b.has("water-mass") {
		b.note("The range counts only the scale. Fill to the same line both times: 1 % more or less in the jar moves the answer by 1 %.")
	}
	if u > 0.02 {
		b.note("With this scale and this vessel the number is loose. A larger vessel, or the jar weighed full of water instead of a volume, makes it firmer.")
	}
}
