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
func Bind(text string) string { return string(bind(nil, []byte(text))) }

// bind appends a text to out, bound.
func bind(out, text []byte) []byte {
	for {
		at := bytes.IndexByte(text, ' ')
		if at < 0 || at+1 == len(text) {
			return append(out, text...)
		}
		out = append(out, text[:at]...)
		before, after := byte(0), text[at+1:]
		if at > 0 {
			before = text[at-1]
		}
		text = after
		switch {
		case !digit(before):
			out = append(out, ' ')
		case startsWithUnit(after):
			out = append(out, noBreak...)
		case len(after) > 1 && (after[0] == '+' || after[0] == ':') && after[1] == ' ':
			out = append(append(append(out, noBreak...), after[0]), noBreak...)
			text = after[2:]
		default:
			out = append(out, ' ')
		}
	}
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
