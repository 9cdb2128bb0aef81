package quantity

import (
	"math"
	"strconv"
)

// Customary writes a value of a kind, in its canonical unit, in the measures
// that go with a unit that is not metric: inches to the sixteenth, US or
// imperial measures to the eighth, pounds and ounces. It returns "" where like
// is metric, where the value is not above 0, and where the nearest mark of
// such a measure would be off by more than one part in twenty.
func Customary(value float64, kind Kind, like string, style Style) string {
	if !(value > 0) {
		return ""
	}
	switch {
	case kind == Length && like == "in":
		return inches(value)
	case kind == Mass && (like == "oz" || like == "lb"):
		return ounces(value, style)
	case kind == Volume:
		return poured(value, Whose(like), style)
	}
	return ""
}

// Whose tells of a unit's ID whether it is a US or an imperial measure: "us",
// "imperial", or "" for all others.
func Whose(id string) string {
	switch {
	case len(id) > 3 && id[:3] == "US ":
		return "us"
	case len(id) > 9 && id[:9] == "imperial ":
		return "imperial"
	}
	return ""
}

// jugs lists the measures that a volume is written in, the largest first.
var jugs = []struct{ whose, id, name string }{
	{"us", "US gallon", "jug.us-gallon"},
	{"us", "US quart", "jug.us-quart"},
	{"us", "US cup", "jug.us-cup"},
	{"us", "US fl oz", "jug.us-fluid-ounce"},
	{"imperial", "imperial gallon", "jug.imperial-gallon"},
	{"imperial", "imperial pint", "jug.imperial-pint"},
}

// poured writes a volume in the largest measure of which there is one or more
// and whose nearest eighth is off by at most one part in fifty, or else in the
// smallest.
func poured(value float64, whose string, style Style) string {
	const eighths, near = 8, 0.02
	text := ""
	for _, jug := range jugs {
		if jug.whose != whose {
			continue
		}
		count := value / find(Volume, jug.id).Factor
		form, n := ".other", marks(count, eighths)
		if n <= eighths {
			form = ".one"
		}
		text = mixed(count, eighths, style.say(jug.name+form))
		if count >= 1 && math.Abs(n/eighths-count) <= float64(near*count) {
			break
		}
	}
	return text
}

func inches(value float64) string { return mixed(value/inch, 16, "in") }

// ounces writes a weight in ounces, from two pounds on in pounds and ounces.
func ounces(value float64, style Style) string {
	count := value / (pound / 16)
	if count < 32 {
		return Format(count, 3, style) + "\u00a0oz"
	}
	all := marks(count, 1)
	text := Format(math.Floor(all/16), 7, style) + "\u00a0lb"
	if rest := all - float64(16*math.Floor(all/16)); rest > 0 {
		text += " " + Format(rest, 3, style) + "\u00a0oz"
	}
	return text
}

// marks counts the marks, so many to one, that are nearest to a count.
func marks(count, to float64) float64 { return math.Floor(float64(count*to) + 0.5) }

// mixed writes a count with a fraction, "4 9/16 in", or "" where the nearest
// mark is too far off.
func mixed(count, to float64, unit string) string {
	n := marks(count, to)
	if off := n/to - count; math.Abs(off) > count/20 {
		return ""
	}
	whole := math.Floor(n / to)
	above, below := int(n-float64(whole*to)), int(to)
	for above > 0 && above%2 == 0 {
		above, below = above/2, below/2
	}
	text := ""
	if whole > 0 || above == 0 {
		text = Format(whole, 17, Style{})
	}
	if above > 0 {
		if text != "" {
			text += " "
		}
		text += strconv.Itoa(above) + "/" + strconv.Itoa(below)
	}
	return text + "\u00a0" + unit
}
