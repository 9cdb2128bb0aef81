package quantity

import (
	"math"
	"testing"

	"slipbook/calculators/words"
)

var (
	british = words.In("en-GB")

	point = Style{Words: british, Decimal: '.', Measures: "metric"}
	comma = Style{Words: british, Decimal: ',', Measures: "metric"}
	us    = Style{Words: british, Decimal: '.', Measures: "us"}
	uk    = Style{Words: british, Decimal: '.', Measures: "imperial"}
)

func TestReadUnderstands(t *testing.T) {
	tests := []struct {
		name   string
		text   string
		kind   Kind
		chosen string
		style  Style
		value  float64
		unit   string
		given  float64
	}{
		{"whole number", "174", Mass, "", point, 174, "g", 174},
		{"decimals", "174.5 g", Mass, "", point, 174.5, "g", 174.5},
		{"no space before the unit", "174.5g", Mass, "", point, 174.5, "g", 174.5},
		{"spaces around", "  174.5   g\n", Mass, "", point, 174.5, "g", 174.5},
		{"space groups", "1 745 g", Mass, "", point, 1745, "g", 1745},
		{"two groups", "1 745 000", Mass, "", point, 1745000, "g", 1745000},
		{"no-break space groups", "1\u00a0745\u00a0g", Mass, "", point, 1745, "g", 1745},
		{"thin space groups", "1\u2009745\u2009g", Mass, "", point, 1745, "g", 1745},
		{"narrow no-break space groups", "12\u202f745.5\u202fg", Mass, "", point, 12745.5, "g", 12745.5},
		{"groups after the mark", "0.123 456 7", Number, "", point, 0.1234567, "1", 0.1234567},
		{"point begins", ".5", Number, "", point, 0.5, "1", 0.5},
		{"point ends", "5.", Number, "", point, 5, "1", 5},
		{"leading zeros", "007", Number, "", point, 7, "1", 7},
		{"plus sign", "+5", Temperature, "", point, 5, "°C", 5},
		{"hyphen as minus", "-5", Temperature, "", point, -5, "°C", -5},
		{"minus sign", "\u22125", Temperature, "", point, -5, "°C", -5},
		{"minus sign apart", "- 5 °C", Temperature, "", point, -5, "°C", -5},
		{"minus nought is nought", "-0", Temperature, "", point, 0, "°C", 0},

		{"own point before three digits", "1.745", Gravity, "", point, 1.745, "1", 1.745},
		{"own comma before three digits", "1,745", Gravity, "", comma, 1.745, "1", 1.745},
		{"other mark, one digit after", "3,5 L", Volume, "", point, 3500, "L", 3.5},
		{"other mark, two digits after", "12,75", Number, "", point, 12.75, "1", 12.75},
		{"other mark, four digits after", "1,7455", Number, "", point, 1.7455, "1", 1.7455},
		{"other mark, four digits before", "1234,567", Number, "", point, 1234.567, "1", 1234.567},
		{"other mark, groups before", "1 234,567", Number, "", point, 1234.567, "1", 1234.567},
		{"other mark, none before", ",745", Number, "", point, 0.745, "1", 0.745},
		{"other mark in a comma course", "3.5 L", Volume, "", comma, 3500, "L", 3.5},
		{"raised point", "174·5", Mass, "", point, 174.5, "g", 174.5},
		{"raised point before three digits", "1·745 g", Mass, "", point, 1.745, "g", 1.745},
		{"raised point in a comma course", "3·5 L", Volume, "", comma, 3500, "L", 3.5},
		{"no style set", "1.745", Number, "", Style{}, 1.745, "1", 1.745},

		{"chosen unit", "2", Mass, "kg", point, 2000, "kg", 2},
		{"typed unit before chosen", "2 g", Mass, "kg", point, 2, "g", 2},
		{"unit in capitals", "2 KG", Mass, "", point, 2000, "kg", 2},
		{"unit with full stop", "2 kg.", Mass, "", point, 2000, "kg", 2},
		{"grams in words", "2 Grams", Mass, "", point, 2, "g", 2},
		{"gramme", "1 gramme", Mass, "", point, 1, "g", 1},
		{"kilograms", "1 kilogram", Mass, "", point, 1000, "kg", 1},
		{"ounces", "2 ounces", Mass, "", point, 56.69904625, "oz", 2},
		{"pounds", "50 lbs", Mass, "", point, 22679.6185, "lb", 50},
		{"pound", "1 pound", Mass, "", point, 453.59237, "lb", 1},
		{"pounds and ounces", "2 lb 3 oz", Mass, "", point, 992.233309375, "lb", 2.1875},
		{"pounds and ounces close up", "2lb3oz", Mass, "", point, 992.233309375, "lb", 2.1875},
		{"pounds and ounces in words", "2 pounds, 3 ounces", Mass, "", point, 992.233309375, "lb", 2.1875},
		{"pounds and ounces with stops", "2 lb. 3 oz.", Mass, "", point, 992.233309375, "lb", 2.1875},
		{"pounds and ounces with decimals", "2 lb 3,5 oz", Mass, "g", point, 1006.4080709375, "lb", 2.21875},
		{"pounds and ounces below nought", "-2 lb 8 oz", Mass, "", point, -1133.980925, "lb", -2.5},

		{"millilitres", "100 ml", Volume, "", point, 100, "mL", 100},
		{"millilitres in words", "100 millilitres", Volume, "L", point, 100, "mL", 100},
		{"cubic centimetres", "100 cc", Volume, "", point, 100, "cc", 100},
		{"cm3", "100 cm3", Volume, "", point, 100, "cc", 100},
		{"cm³", "100 cm³", Volume, "", point, 100, "cc", 100},
		{"litres", "3 liters", Volume, "", point, 3000, "L", 3},
		{"US pint", "1 US pint", Volume, "", point, 473.176473, "US pint", 1},
		{"U.S. gal.", "5 U.S. gal.", Volume, "", point, 18927.05892, "US gallon", 5},
		{"US cups", "2 us cups", Volume, "", point, 473.176473, "US cup", 2},
		{"US fl. oz.", "16 US fl. oz.", Volume, "", point, 473.176473, "US fl oz", 16},
		{"US quart chosen", "1", Volume, "US quart", point, 946.352946, "US quart", 1},
		{"imperial pint", "1 imperial pint", Volume, "", point, 568.26125, "imperial pint", 1},
		{"UK gallon", "1 UK gallon", Volume, "", us, 4546.09, "imperial gallon", 1},
		{"teaspoons", "2 tsp", Volume, "", point, 10, "metric teaspoon", 2},
		{"tablespoons", "2 tbsp", Volume, "", comma, 30, "metric tablespoon", 2},
		{"tablespoons in words", "2 Tablespoons", Volume, "L", point, 30, "metric tablespoon", 2},
		{"tablespoon with a stop", "1 tbsp.", Volume, "", uk, 15, "metric tablespoon", 1},
		{"level teaspoon", "1 level teaspoon", Volume, "", point, 5, "metric teaspoon", 1},
		{"teaspoons in a US course", "2 teaspoons", Volume, "", us, 9.8578431875, "US teaspoon", 2},
		{"tablespoons in a US course", "2 tbsp", Volume, "", us, 29.5735295625, "US tablespoon", 2},
		{"US tablespoon in another course", "1 US tbsp", Volume, "", uk, 14.78676478125, "US tablespoon", 1},
		{"metric teaspoon in a US course", "1 metric tsp", Volume, "", us, 5, "metric teaspoon", 1},
		{"teaspoons chosen", "3", Volume, "tsp", point, 15, "metric teaspoon", 3},
		{"tablespoons typed, teaspoons chosen", "2 tbsp", Volume, "tsp", point, 30, "metric tablespoon", 2},
		{"bare pint in a US course", "1 pint", Volume, "", us, 473.176473, "US pint", 1},
		{"bare cup in a US course", "1 cup", Volume, "", us, 236.5882365, "US cup", 1},
		{"bare quart in a US course", "1 qt", Volume, "", us, 946.352946, "US quart", 1},
		{"bare fl oz in a US course", "1 fl oz", Volume, "", us, 29.5735295625, "US fl oz", 1},
		{"bare pint in an imperial course", "1 pint", Volume, "", uk, 568.26125, "imperial pint", 1},
		{"bare gallon chosen in an imperial course", "1", Volume, "gallon", uk, 4546.09, "imperial gallon", 1},

		{"millimetres", "120", Length, "", point, 120, "mm", 120},
		{"centimetres", "12 cm", Length, "", point, 120, "cm", 12},
		{"inches", "4.5 in", Length, "", point, 114.3, "in", 4.5},
		{"mixed fraction", "4 1/2 in", Length, "", point, 114.3, "in", 4.5},
		{"mixed fraction with hyphen", "4-1/2 in", Length, "", point, 114.3, "in", 4.5},
		{"mixed fraction with en dash", "4\u20131/2 in", Length, "", point, 114.3, "in", 4.5},
		{"fraction, inches chosen", "5/8", Length, "in", point, 15.875, "in", 0.625},
		{"inch mark", `4 1/2"`, Length, "", point, 114.3, "in", 4.5},
		{"inch mark as a phone writes it", "4 1/2”", Length, "", point, 114.3, "in", 4.5},
		{"double prime", "4 1/2″", Length, "", point, 114.3, "in", 4.5},
		{"fraction sign", "4½ in", Length, "", point, 114.3, "in", 4.5},
		{"fraction sign apart", "4 ½ inches", Length, "", point, 114.3, "in", 4.5},
		{"fraction sign alone", "⅞", Length, "in", point, 22.225, "in", 0.875},
		{"fraction slash", "4 1⁄2 in", Length, "", point, 114.3, "in", 4.5},
		{"spaces about the slash", "4 1 / 2 in", Length, "", point, 114.3, "in", 4.5},
		{"more than one whole in a fraction", "9/8 in", Length, "", point, 28.575, "in", 1.125},
		{"fraction below nought", "-4 1/2 in", Length, "", point, -114.3, "in", -4.5},

		{"percent bare", "12", Percent, "", point, 12, "%", 12},
		{"percent sign", "12%", Percent, "", point, 12, "%", 12},
		{"percent sign apart", "12,5 %", Percent, "%", point, 12.5, "%", 12.5},
		{"percent in words", "12 per cent", Percent, "", point, 12, "%", 12},
		{"degrees Celsius", "20 °C", Temperature, "", point, 20, "°C", 20},
		{"degrees as C", "20C", Temperature, "", point, 20, "°C", 20},
		{"degrees with the ordinal sign", "20 ºC", Temperature, "", point, 20, "°C", 20},
		{"strength bare", "18", Strength, "", point, 18, "g/100 mL", 18},
		{"strength with unit", "18 g/100 mL", Strength, "", point, 18, "g/100 mL", 18},
		{"strength close up", "18 g / 100ml", Strength, "", point, 18, "g/100 mL", 18},
		{"density bare", "2.6", Density, "", point, 2.6, "g/mL", 2.6},
		{"density with unit", "2.6 g/mL", Density, "", point, 2.6, "g/mL", 2.6},
		{"density close up", "2,6g / ml", Density, "", comma, 2.6, "g/mL", 2.6},
		{"density by the cc", "2.6 g/cc", Density, "", point, 2.6, "g/mL", 2.6},
		{"density by the cm3", "2.6 g/cm3", Density, "", point, 2.6, "g/mL", 2.6},
		{"density by the cm³", "2.6 g/cm³", Density, "", point, 2.6, "g/mL", 2.6},
		{"density by the litre", "2.6 kg/L", Density, "", point, 2.6, "g/mL", 2.6},
		{"density in words", "2.6 g per mL", Density, "", point, 2.6, "g/mL", 2.6},
		{"density, unit chosen", "2.6", Density, "kg/L", point, 2.6, "g/mL", 2.6},
		{"number with its unit chosen", "3", Number, "1", point, 3, "1", 3},
		{"gravity by the mL", "1.45 g/mL", Gravity, "", point, 1.45, "g/mL", 1.45},
		{"gravity by the cc", "1.45 g/cc", Gravity, "", point, 1.45, "g/mL", 1.45},
		{"gravity by the litre", "1.45 kg/L", Gravity, "", point, 1.45, "g/mL", 1.45},
		{"gravity by its name", "1,45 S.G.", Gravity, "", comma, 1.45, "SG", 1.45},
		{"gravity in grams a litre", "1450 g/L", Gravity, "", point, 1.45, "g/L", 1450},
		{"gravity in kilograms a cubic metre", "1450 kg/m³", Gravity, "", point, 1.45, "g/L", 1450},
		{"decilitres", "1 dl", Volume, "", point, 100, "dl", 1},
		{"centilitres", "10 cl", Volume, "", point, 100, "cl", 10},
		{"litres, short", "2 ltr", Volume, "", point, 2000, "L", 2},
		{"per cent, short", "8 pct", Percent, "", point, 8, "%", 8},
		{"full-width digits", "１４５", Mass, "", point, 145, "g", 145},
		{"full-width point and sign", "１２．５％", Percent, "", point, 12.5, "%", 12.5},
		{"what takes no room", "174.5\u200b\u200e g\ufeff", Mass, "", point, 174.5, "g", 174.5},
		{"students", "12 students", Number, "", point, 12, "1", 12},
		{"people", "3 People", Number, "", point, 3, "1", 3},
		{"half a pound", "½ lb", Mass, "", point, 226.796185, "lb", 0.5},
		{"pounds and a half", "2 1/2 lb", Mass, "", point, 1133.980925, "lb", 2.5},
		{"half ounces after pounds", "2 lb 3 1/2 oz", Mass, "", point, 1006.4080709375, "lb", 2.21875},
		{"cups and a half", "3 1/2 US cups", Volume, "", point, 828.05882775, "US cup", 3.5},
		{"half a pint in a US course", "1/2 pint", Volume, "", us, 236.5882365, "US pint", 0.5},
		{"tablespoons and a half", "1½ tbsp", Volume, "", comma, 22.5, "metric tablespoon", 1.5},
		{"gravity just under the question", "99.9", Gravity, "", point, 99.9, "1", 99.9},
		{"gravity of thick stuff", "9.9", Gravity, "", point, 9.9, "1", 9.9},
		{"gravity just over the question", "300.1", Gravity, "", point, 300.1, "1", 300.1},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			q, err := Read(tt.text, tt.kind, tt.chosen, tt.style)
			if err != nil {
				t.Fatalf("Read(%q) refused: %v", tt.text, err)
			}
			if q.Given != tt.given || q.Unit != tt.unit {
				t.Errorf("Read(%q) is given as %v %s, want %v %s", tt.text, q.Given, q.Unit, tt.given, tt.unit)
			}
			// The factor is rounded and the product is: two half steps at most.
			if math.Abs(q.Value-tt.value) > math.Abs(tt.value)*0x1p-52 {
				t.Errorf("Read(%q) = %v, want %v", tt.text, q.Value, tt.value)
			}
			if math.Signbit(q.Value) && q.Value == 0 {
				t.Errorf("Read(%q) is a negative nought", tt.text)
			}
		})
	}
}
