// Package catalogtest makes requests for tests: sensible ones near each
// calculator's worked example, and wild ones with what people type by mistake.
// The catalog's own tests, the reactor's and the browser's share it, so that
// all three try the same things.
package catalogtest

import (
	"math/rand/v2"
	"strconv"
	"strings"

	"slipbook/calculators/form"
	"slipbook/calculators/quantity"
)

// Any returns an encoded request, about two in three of them sensible.
func Any(random *rand.Rand, c *form.Calculator) string {
	given := Sensible(random, c)
	if random.IntN(3) == 0 {
		given = spoil(random, c, given)
	}
	return form.Request(c.Name, given)
}

// Sensible returns inputs near those of the worked example, in random units,
// that the calculator mostly accepts: one side of each group of alternatives,
// and some of the optional inputs, those of the example more often.
func Sensible(random *rand.Rand, c *form.Calculator) []form.Setting {
	sides := chooseSides(random, c)
	bars := 1 + random.IntN(6)
	var given []form.Setting
	for i := range c.Inputs {
		in := &c.Inputs[i]
		if side, grouped := sides[in.Group]; grouped && side != sideOf(in) {
			continue
		}
		if !in.Needed && in.Side == "" && random.IntN(often(c, in)) == 0 {
			continue
		}
		text, unit := "", ""
		switch {
		case in.Bodies:
			text = Bodies[random.IntN(len(Bodies))].ID
		case len(in.Choices) > 0:
			text = choice(random, in)
		case in.Words:
			text = inWords(random, c, in)
		case in.List:
			text = list(random, c, in, bars)
		default:
			text = amount(random, c, in)
			if random.IntN(4) == 0 {
				units := quantity.Units(in.Kind)
				unit = units[random.IntN(len(units))].ID
				text = inUnit(text, in.Kind, unit)
			}
		}
		given = append(given, form.Setting{Name: in.Name, Text: text})
		if unit != "" {
			given = append(given, form.Setting{Name: in.Name + ".unit", Text: unit})
		}
	}
	return given
}

// Bodies are the clays of a studio that requests may name.
var Bodies = []form.Body{
	{ID: "yard-stoneware", Name: "Yard stoneware", Cone: "6", Shrinkage: 12.25},
	{ID: "attic-porcelain", Name: "Attic porcelain", Shrinkage: 14},
}

// often returns how seldom an optional input is left out: once in so many times.
func often(c *form.Calculator, in *form.Input) int {
	if exampleText(c, in.Name) != "" {
		return 8
	}
	return 2
}

// choice returns one of the things that an input may be, by its id or its label.
func choice(random *rand.Rand, in *form.Input) string {
	chosen := in.Choices[random.IntN(len(in.Choices))]
	if in.Default != "" && random.IntN(3) > 0 { // most wishes hold a glaze, which a bare pot refuses
		chosen = in.Choices[0]
	}
	return []string{chosen.ID, chosen.Label, strings.ToUpper(chosen.ID)}[random.IntN(3)]
}

// inWords returns the example's words, or some of them where they are several;
// else words that are somebody's.
func inWords(random *rand.Rand, c *form.Calculator, in *form.Input) string {
	switch in.Name {
	case "layers":
		return layers(random)
	case "already":
		return []string{"slip fixed", "slip, wash loose", "Underglaze fixed, Stain wash", "fired slip; wax"}[random.IntN(4)]
	case "body":
		return "yard paper clay"
	case "names":
		return exampleText(c, in.Name) // which are as many as there are materials
	case "first":
		return []string{"1", "2", "1, 2"}[random.IntN(3)]
	case "which":
		return []string{"1", "2", "3", "kaolin", "Quartz"}[random.IntN(5)]
	case "cones":
		return []string{"06", "06 6", "04, 6, 10"}[random.IntN(3)]
	}
	text := exampleText(c, in.Name)
	if text == "" {
		text = "one, two, three"
	}
	if !in.List {
		return text
	}
	pieces := strings.Split(text, ",")
	return strings.Join(pieces[:1+random.IntN(len(pieces))], []string{",", "; ", ", "}[random.IntN(3)])
}

// layers returns one to six layers of stagetest's table.
func layers(random *rand.Rand) string {
	known := []string{"slip", "slip by stencil", "engobe", "underglaze", "underglaze brushed", "wash wiped back", "stain wash", "oxide wash",
		"clear glaze", "clear glaze brushed", "glaze dipped", "white glaze", "enamel", "lustre", "decal", "wax", "carved clay", "slip brushed then scratched", "clay carved then stamped"}
	var wanted []string
	for range 1 + random.IntN(6) {
		wanted = append(wanted, known[random.IntN(len(known))])
	}
	return strings.Join(wanted, ", ")
}

func sideOf(in *form.Input) string {
	if in.Side != "" {
		return in.Side
	}
	return in.Name
}

// chooseSides picks one side of each group, or none of one that may be blank.
func chooseSides(random *rand.Rand, c *form.Calculator) map[string]string {
	sides := map[string]string{}
	for i := range c.Inputs {
		in := &c.Inputs[i]
		if in.Group == "" || in.Bodies && random.IntN(8) > 0 {
			continue
		}
		if _, chosen := sides[in.Group]; !chosen || random.IntN(2) == 0 {
			sides[in.Group] = sideOf(in)
		}
	}
	return sides
}

// typical is a middling value by kind, for inputs without example or default.
var typical = map[quantity.Kind]float64{
	quantity.Mass: 180, quantity.Volume: 500, quantity.Length: 95, quantity.Area: 250, quantity.Percent: 8,
	quantity.Temperature: 20, quantity.Number: 3, quantity.Gravity: 1.5, quantity.Strength: 12, quantity.Density: 3,
}

// weighed are inputs that make sense only beside another one: of two weighings
// of one thing the heavier, and the lighter; and a share so small that to a tenth
// it would be nothing.
var weighed = map[string]float64{
	"before": 120, "after": 170, "damp": 120, "dry": 80, "earlier": 200, "later": 140, "step": 0.15,
}

// amount returns a value near the example's, the default's or a typical one.
func amount(random *rand.Rand, c *form.Calculator, in *form.Input) string {
	middle := typical[in.Kind]
	if known, ok := weighed[in.Name]; ok {
		return strconv.FormatFloat(known*(0.85+0.3*random.Float64()), 'f', []int{1, 2, 4}[random.IntN(3)], 64)
	}
	for _, text := range []string{in.Default, exampleText(c, in.Name)} {
		if q, err := quantity.Read(text, in.Kind, "", quantity.Style{Decimal: '.'}); err == nil {
			middle = q.Value
		}
	}
	spread := 0.3
	if in.Kind == quantity.Gravity && in.Name == "to" {
		spread = 0.1 // or few lie between two slips that are to be mixed to it
	}
	value := middle * (1 - spread/2 + spread*random.Float64())
	if middle == 0 && in.Kind == quantity.Percent {
		value = 0.6 * typical[in.Kind] * random.Float64()
	}
	if in.Whole {
		return strconv.Itoa(1 + random.IntN(8))
	}
	// Never three decimals: with them a course that writes commas asks back.
	return strconv.FormatFloat(value, 'f', []int{1, 2, 4}[random.IntN(3)], 64)
}

func exampleText(c *form.Calculator, name string) string {
	for _, g := range c.Example.Given {
		if g.Name == name {
			return g.Text
		}
	}
	return ""
}

// list returns mark lengths of some bars: those of later stages are shorter; or
// weights of some tiles, dry, soaked and under water. Of other lists it returns values near the example's.
func list(random *rand.Rand, c *form.Calculator, in *form.Input, bars int) string {
	first, marks := map[string]float64{"plastic": 100, "leather-hard": 98, "dry": 94, "fired": 88, "soaked": 98, "suspended": 58}[in.Name]
	if !marks {
		return nearExample(random, c, in)
	}
	if random.IntN(40) == 0 {
		bars++
	}
	texts := make([]string, bars)
	for i := range texts {
		texts[i] = strconv.FormatFloat(first-2*random.Float64(), 'f', 2, 64)
	}
	return strings.Join(texts, []string{" ", "; ", ";"}[random.IntN(3)])
}

// nearExample returns a list of values near the example's, now and then of one
// fewer.
func nearExample(random *rand.Rand, c *form.Calculator, in *form.Input) string {
	texts := strings.Fields(exampleText(c, in.Name))
	if len(texts) > 1 && random.IntN(8) == 0 {
		texts = texts[1:]
	}
	for i, text := range texts {
		value, _ := strconv.ParseFloat(text, 64)
		texts[i] = strconv.FormatFloat(value*(0.85+0.3*random.Float64()), 'f', 2, 64)
	}
	return strings.Join(texts, []string{" ", "; ", ";"}[random.IntN(3)])
}

// inUnit writes a canonical value in another unit.
func inUnit(text string, kind quantity.Kind, unit string) string {
	for _, u := range quantity.Units(kind) {
		if u.ID == unit {
			value, _ := strconv.ParseFloat(text, 64)
			return strconv.FormatFloat(value/u.Factor, 'f', 6, 64)
		}
	}
	return text
}

// mistakes are what people and machines type.
var mistakes = []string{
	"0", "-3", "", " ", "abc", "1,745", "1.745", "3,5", "1e3", "inf", "NaN", "1 745", "12 %", "2 lb 3 oz", "4 1/2", "5/8 in",
	"100 mL", "200 g", "1 pint", "2 cups", "1 tbsp", "2.6 g/mL", "--5", "3·5", "145", "1.0", "2.6", "999999999999", "0.0000001", "1..2", "1 + 4", "½ in", "−5",
	"68 F", "<b>", "100; 99", "100 100 100", "\xff\xfe", "٣", strings.Repeat("9", 80), "3 oz", "1/0 in",
}

// spoil changes one to three inputs into mistakes.
func spoil(random *rand.Rand, c *form.Calculator, given []form.Setting) []form.Setting {
	for range 1 + random.IntN(3) {
		text := mistakes[random.IntN(len(mistakes))]
		switch random.IntN(4) {
		case 0:
			given = append(given, form.Setting{Name: c.Inputs[random.IntN(len(c.Inputs))].Name, Text: text})
		case 1:
			given = append(given, form.Setting{Name: []string{"colour", "mass.unit", "", "volume.unit", "x.unit"}[random.IntN(5)], Text: text})
		default:
			if len(given) > 0 {
				given[random.IntN(len(given))].Text = text
			}
		}
	}
	return given
}
