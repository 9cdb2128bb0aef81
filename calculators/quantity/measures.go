package quantity

import "slipbook/calculators/letters"

// measure is a vessel that has one size in the US and another, or none, in
// Britain.
type measure struct {
	name     string  // in a sentence
	typed    string  // folded, separated by bars
	us       string  // ID of the US unit
	imperial string  // ID of the imperial unit, "" where it is not among the units
	size     float64 // mL in the imperial one; 0 where there is none
}

// vessels lists the measures that may need asking whose they are.
var vessels = []measure{
	{"pint", "pint|pints|pt|pts", "US pint", "imperial pint", imperialGallon / 8},
	{"quart", "quart|quarts|qt|qts", "US quart", "", imperialGallon / 4},
	{"gallon", "gallon|gallons|gal|gals", "US gallon", "imperial gallon", imperialGallon},
	{"cup", "cup|cups|cupful|cupfuls", "US cup", "", 0},
	{"fluid-ounce", "fl oz|floz|fluid oz|fluid ounce|fluid ounces", "US fl oz", "", imperialGallon / 160},
}

// measureOf understands a folded word as a measure, and whose: "us",
// "imperial", or "" when the word does not say.
func measureOf(word string) (m *measure, whose string, ok bool) {
	first, rest, _ := letters.Cut(word, " ")
	switch first {
	case "us", "american":
		whose, word = "us", rest
	case "imperial", "imp", "uk", "british":
		whose, word = "imperial", rest
	}
	for i := range vessels {
		if m := &vessels[i]; among(m.typed, word) {
			return m, whose, true
		}
	}
	return nil, "", false
}

// measure returns the unit that is meant, or asks.
func (b *box) measure(m *measure, whose string, n *amount) (*Unit, error) {
	if b.kind == Mass && m.name == "cup" {
		return nil, b.roomNotWeight("cup")
	}
	if b.kind != Volume {
		return nil, b.wrongKind("A "+m.name, Volume)
	}
	stated := whose != ""
	if !stated {
		whose = b.style.Measures
	}
	id := ""
	switch whose {
	case "us":
		id = m.us
	case "imperial":
		id = m.imperial
	}
	if u := find(Volume, id); u != nil {
		return u, nil
	}
	if stated {
		return nil, b.noImperial(m, n)
	}
	return nil, b.whose(m, n)
}

// noImperial refuses an imperial measure that is not among the units.
func (b *box) noImperial(m *measure, n *amount) error {
	if m.size == 0 {
		return b.refuse("no-fixed-size", "measure", b.style.say("measure."+m.name+".one"))
	}
	return b.refuse("no-imperial",
		"measure", b.style.say("measure."+m.name+".one"), "count", n.text, "measures", b.style.say("measure."+m.name+plural(n)), "instead", b.inMillilitres(m, n))
}

// whose asks whether a US or an imperial measure is meant.
func (b *box) whose(m *measure, n *amount) error {
	us := plainText(find(Volume, m.us).Factor, 4, b.style)
	if m.size == 0 {
		return b.refuse("another-size",
			"measure", b.style.say("measure."+m.name+".one"), "us", us, "count", n.text, "unit", m.us)
	}
	return b.refuse("whose",
		"measure", b.style.say("measure."+m.name+".one"), "us", us, "imperial", plainText(m.size, 4, b.style), "either", b.either(m, n))
}

// either returns what to write for the US measure and for the imperial one.
func (b *box) either(m *measure, n *amount) string {
	if m.imperial != "" {
		return b.style.say("either", "us", n.text+" "+m.us, "imperial", n.text+" "+m.imperial)
	}
	return b.style.say("either-in-ml", "us", n.text+" "+m.us, "ml", b.inMillilitres(m, n))
}

func (b *box) inMillilitres(m *measure, n *amount) string {
	return plainText(float64(n.value*m.size), 4, b.style) + " mL"
}

// plural is the end of the id of a measure's name for so many.
func plural(n *amount) string {
	if n.value == 1 {
		return ".one"
	}
	return ".other"
}

// ounceOfWhat asks about an ounce in a box for volumes, which may be meant as
// a fluid ounce or as a weight.
func (b *box) ounceOfWhat(n *amount) error {
	m, _, _ := measureOf("fl oz")
	return b.refuse("ounce", "either", b.either(m, n))
}
