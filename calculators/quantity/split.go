package quantity

import "slipbook/calculators/letters"

// typed is a text with its number and its unit told apart.
type typed struct {
	text     string // all of it, cleaned
	negative bool
	number   string // without its sign; holds a digit
	unit     string // as typed, "" if none
}

// split tells the number and the unit of a cleaned text apart. A text in which
// no digit stands where a number should is not one.
func split(text string) (*typed, bool) {
	t := &typed{text: text}
	rest := text
	if letters.HasPrefix(rest, "-") || letters.HasPrefix(rest, "+") {
		t.negative = rest[0] == '-'
		rest = letters.TrimPrefix(rest[1:], " ")
	}
	t.number, t.unit = cutNumber(rest)
	return t, hasDigit(t.number)
}

// cutNumber cuts s after the last character that can belong to a number.
func cutNumber(s string) (number, rest string) {
	i := 0
	for i < len(s) && (isDigit(s[i]) || letters.IndexByte(" .,/-", s[i]) >= 0) {
		i++
	}
	return letters.TrimSuffix(s[:i], " "), s[i:]
}

// signed is the number with its sign, for a sentence.
func (t *typed) signed() string {
	if t.negative {
		return "-" + t.number
	}
	return t.number
}

// programming reports whether the unit is no unit but the tail of a number as
// computers write them: 1e3, 0x1F, 1_000.
func (t *typed) programming() bool {
	if t.unit == "" {
		return false
	}
	tail := t.unit[1:]
	switch t.unit[0] {
	case '_':
		return true
	case 'e', 'E':
		if letters.HasPrefix(tail, "+") || letters.HasPrefix(tail, "-") {
			tail = tail[1:]
		}
		return tail != "" && isDigit(tail[0])
	case 'x', 'X', 'b', 'B', 'o', 'O':
		return t.number == "0" && hasDigit(tail)
	}
	return false
}
