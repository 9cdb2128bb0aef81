package quantity

import "slipbook/calculators/letters"

// spellings lists how people write the units that mean one thing only, folded
// and separated by bars. Pints and their kin stand in measures.go,
// spoons in spoons.go.
var spellings = []struct{ id, typed string }{
	{"g", "g|gm|gram|grams|gramme|grammes"},
	{"kg", "kg|kgs|kilo|kilos|kilogram|kilograms|kilogramme|kilogrammes"},
	{"oz", "oz|ounce|ounces"},
	{"lb", "lb|lbs|pound|pounds"},
	{"mL", "ml|mls|millilitre|millilitres|milliliter|milliliters"},
	{"cc", "cc|ccm|cm3|cm³|cubic centimetre|cubic centimetres|cubic centimeter|cubic centimeters"},
	{"cl", "cl|cls|centilitre|centilitres|centiliter|centiliters"},
	{"dl", "dl|dls|decilitre|decilitres|deciliter|deciliters"},
	{"L", "l|ltr|ltrs|litre|litres|liter|liters"},
	{"mm", "mm|millimetre|millimetres|millimeter|millimeters"},
	{"cm", "cm|centimetre|centimetres|centimeter|centimeters"},
	{"in", `in|inch|inches|"`},
	{"cm²", "cm²|cm2|sq cm|square cm|square centimetre|square centimetres|square centimeter|square centimeters"},
	{"in²", "in²|in2|sq in|square inch|square inches"},
	{"%", "%|pct|percent|per cent"},
	{"°C", "°c|° c|c|°|℃|deg c|degree c|degrees c|celsius|degree celsius|degrees celsius"},
	{perOne, "g/ml|g/cc|g/cm3|g/cm³|kg/l|g per ml"},
	{perLitre, "g/l|g per l|g/litre|kg/m3|kg/m³"},
	{"SG", "sg|specific gravity"},
	{perHundred, "g/100 ml|g/100ml|g per 100 ml|g per 100ml"},
}

// fahrenheit is how people write the one foreign unit a studio's thermometer
// may show.
const fahrenheit = "°f|° f|f|℉|deg f|degree f|degrees f|fahrenheit|degree fahrenheit|degrees fahrenheit"

// counted are the things that a bare number may be of.
const counted = "people|persons|person|students|student|pupils|pupil|children|cups|cup|pots|pot|bars|bar|tiles|tile|coats|coat|mixes|mix|parts|part|s|sec|seconds|second|h|hours|hour"

// spelled returns the ID of the unit that a folded word writes, or "".
func spelled(word string) string {
	for _, s := range spellings {
		if among(s.typed, word) {
			return s.id
		}
	}
	return ""
}

// among reports whether word is one of the words of list, separated by bars.
func among(list, word string) bool {
	for list != "" {
		var first string
		first, list, _ = letters.Cut(list, "|")
		if first == word {
			return true
		}
	}
	return false
}

// unit understands a word, typed or chosen, as a unit of the box. n is the
// number it goes with, for the sentence when it is refused.
func (b *box) unit(word string, n *amount) (*Unit, error) {
	if u := find(b.kind, word); u != nil {
		return u, nil
	}
	folded := fold(word)
	if b.kind == Number && among(counted, folded) {
		return find(Number, one), nil
	}
	if s, before := spoonOf(folded); s != nil {
		return b.spoon(s, before)
	}
	if m, whose, ok := measureOf(folded); ok {
		return b.measure(m, whose, n)
	}
	if b.kind == Temperature && among(fahrenheit, folded) {
		return nil, b.inCelsius(n)
	}
	id := spelled(folded)
	if id == "" {
		return nil, b.unknown(word)
	}
	if u := find(b.kind, id); u != nil {
		return u, nil
	}
	if id == "oz" && b.kind == Volume {
		return nil, b.ounceOfWhat(n)
	}
	return nil, b.wrongKind(id, kindOf(id))
}

// inCelsius refuses degrees Fahrenheit with the number to write instead.
func (b *box) inCelsius(n *amount) error {
	return b.refuse("fahrenheit",
		"typed", n.text, "celsius", plainText((n.value-32)/1.8, 4, b.style), "by", b.spell("1.8"))
}

// unknown refuses a word that is no unit anywhere.
func (b *box) unknown(word string) error {
	return b.refuse("unknown-unit", "typed", b.quote(word), "wants", b.wants())
}

// wrongKind refuses a unit that measures something else.
func (b *box) wrongKind(unit string, kind Kind) error {
	return b.refuse(measures(kind), "unit", unit, "wants", b.wants())
}

// measures is the sentence that says what a unit of the kind does.
func measures(kind Kind) string {
	switch kind {
	case Mass:
		return "measures-weight"
	case Volume:
		return "measures-room"
	case Length:
		return "measures-length"
	case Area:
		return "measures-area"
	case Temperature:
		return "measures-warmth"
	case Density, Gravity:
		return "measures-density"
	case Strength:
		return "measures-strength"
	}
	return "measures-share"
}
