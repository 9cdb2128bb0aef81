package quantity

import (
	"unicode/utf8"

	"slipbook/calculators/letters"
)

// longest is the length in bytes of the longest text that is read. It leaves
// room for seventeen digits with spaces and the longest unit, and keeps the
// work on a text, and every value that can come of one, small.
const longest = 64

// clean returns text with one kind of space, point, dash, slash, degree sign and inch
// mark, full-width signs made narrow, runs of spaces made single, none at the
// ends, what takes no room gone, and fraction signs written out ("4½" becomes
// "4 1/2").
func clean(text string) string {
	b := make([]byte, 0, len(text)+8)
	space := func() {
		if len(b) > 0 && b[len(b)-1] != ' ' {
			b = append(b, ' ')
		}
	}
	for _, r := range text {
		if r >= '\uff05' && r <= '\uff19' { // full-width: what some keyboards type for % , . / and digits
			r -= '\uff05' - '%'
		}
		if f := fractionSign(r); f != "" {
			if len(b) > 0 && isDigit(b[len(b)-1]) {
				space()
			}
			b = append(b, f...)
			space()
			continue
		}
		switch r {
		case ' ', '\t', '\n', '\r', '\u00a0', '\u2007', '\u2009', '\u202f':
			space()
		case '\u2212', '\u2013': // minus sign; en dash, which phones put for two hyphens
			b = append(b, '-')
		case '·': // the raised decimal point
			b = append(b, '.')
		case '\u2044': // fraction slash
			b = append(b, '/')
		case '\u00ba': // ordinal sign, easily taken for the degree sign
			b = append(b, "°"...)
		case '\u2033', '\u201c', '\u201d': // double prime; quotes that phones turn an inch mark into
			b = append(b, '"')
		default:
			if !weightless(r) {
				b = utf8.AppendRune(b, r)
			}
		}
	}
	return letters.TrimSuffix(string(b), " ")
}

// fractionSign writes out the fractions that have a sign of their own and
// stand on an inch rule; "" for any other character.
func fractionSign(r rune) string {
	switch r {
	case '½':
		return "1/2"
	case '¼':
		return "1/4"
	case '¾':
		return "3/4"
	case '⅛':
		return "1/8"
	case '⅜':
		return "3/8"
	case '⅝':
		return "5/8"
	case '⅞':
		return "7/8"
	}
	return ""
}

// fold makes a unit as typed comparable: ASCII letters small, full stops of
// abbreviations gone, no spaces beside a slash.
func fold(word string) string {
	b := make([]byte, 0, len(word))
	for i := 0; i < len(word); i++ {
		c := word[i]
		switch {
		case c == '.':
			continue
		case c == ' ' && (len(b) == 0 || b[len(b)-1] == '/'):
			continue
		case c == '/' && len(b) > 0 && b[len(b)-1] == ' ':
			b = b[:len(b)-1]
		case 'A' <= c && c <= 'Z':
			c += 'a' - 'A'
		}
		b = append(b, c)
	}
	return letters.TrimSuffix(string(b), " ")
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// hasDigit reports whether an ASCII digit stands anywhere in s.
func hasDigit(s string) bool { return digits(s) > 0 }

// digits counts the ASCII digits in s.
func digits(s string) int {
	n := 0
	for i := 0; i < len(s); i++ {
		if isDigit(s[i]) {
			n++
		}
	}
	return n
}
