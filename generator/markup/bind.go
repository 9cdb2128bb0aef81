package markup

import "bytes"

// noBreak is U+00A0.
const noBreak = "\u00a0"

// symbols are the units that stay with their number. Only symbols count: "5
// in" may go on "5 in a row".
var symbols = []string{"kg", "g", "mL", "L", "mm", "cm", "oz", "lb", "°C", "%"}

// Bind puts no-break spaces where a line must not end: after a number, before
// its unit ("8 g"), and round the signs between parts ("1 + 4", "3 : 1").
// Lessons are written with plain spaces, so that nobody has to type what
// cannot be seen.
func Bind(text string) string {
	if behindDigit(text) < 0 {
		return text
	}
	return string(bind(nil, []byte(text)))
}

// bind appends a text to out, bound.
func bind(out, text []byte) []byte {
	for at := behindDigit(text); at >= 0; at = behindDigit(text) {
		out = append(out, text[:at]...)
		text = text[at+1:]
		switch {
		case startsWithUnit(text):
			out = append(out, noBreak...)
		case len(text) > 1 && (text[0] == '+' || text[0] == ':') && text[1] == ' ':
			out = append(append(append(out, noBreak...), text[0]), noBreak...)
			text = text[2:]
		default:
			out = append(out, ' ')
		}
	}
	return append(out, text...)
}

// behindDigit returns the place of the first space behind a digit; below zero if there
// is none, as in most texts.
func behindDigit[T string | []byte](text T) int {
	for i := 1; i < len(text); i++ {
		if text[i] == ' ' && digit(text[i-1]) {
			return i
		}
	}
	return -1
}

func digit(c byte) bool { return c >= '0' && c <= '9' }

// startsWithUnit reports whether a unit's symbol comes first and ends as a word.
func startsWithUnit(text []byte) bool {
	for _, symbol := range symbols {
		if rest, found := bytes.CutPrefix(text, []byte(symbol)); found {
			return len(rest) == 0 || !letter(rest[0])
		}
	}
	return false
}

func letter(c byte) bool { return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= 0x80 }
