package catalog

import "slipbook/calculators/quantity"

// Small helpers on text. They stand here and not in package strings because
// those fold and trim by the tables of Unicode, which the WebAssembly reactor
// does without.

// space says whether a byte is an ASCII space.
func space(c byte) bool { return c == ' ' || c == '\t' || c == '\n' || c == '\r' }

// trim cuts ASCII and no-break spaces from both ends.
func trim(text string) string {
	for len(text) > 0 && space(text[0]) {
		text = text[1:]
	}
	for len(text) > 0 && space(text[len(text)-1]) {
		text = text[:len(text)-1]
	}
	return text
}

// words parts a text at its spaces.
func words(text string) []string {
	var list []string
	start := -1
	for i := 0; i <= len(text); i++ {
		switch inWord := i < len(text) && !space(text[i]); {
		case inWord && start < 0:
			start = i
		case !inWord && start >= 0:
			list = append(list, text[start:i])
			start = -1
		}
	}
	return list
}

// lowerFirst makes a label fit into a sentence: "Weight on the scale" becomes
// "weight on the scale". A label that begins with a capital abbreviation keeps
// it.
func lowerFirst(label string) string {
	if len(label) < 2 || label[0] < 'A' || label[0] > 'Z' || label[1] >= 'A' && label[1] <= 'Z' {
		return label
	}
	return string(label[0]+'a'-'A') + label[1:]
}

// listing joins words: "a, b and c".
func listing(list []string) string {
	text := ""
	for i, w := range list {
		switch {
		case i == 0:
		case i == len(list)-1:
			text += " and "
		default:
			text += ", "
		}
		text += w
	}
	return text
}

// clip shortens what was typed so that a message stays readable, at a
// character's edge, without characters that cannot be seen.
func clip(text string) string {
	const most = 40
	text = quantity.Visible(text)
	if len(text) <= most {
		return text
	}
	end := most
	for end > 0 && text[end]&0xC0 == 0x80 {
		end--
	}
	return text[:end] + "…"
}

// sameWord compares without regard to the case of ASCII letters, or to hyphens.
func sameWord(a, b string) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range len(a) {
		x, y := a[i]|0x20, b[i]|0x20
		if x == '-'|0x20 {
			x = ' ' // "leather hard" is "leather-hard"
		}
		if y == '-'|0x20 {
			y = ' '
		}
		if a[i] != b[i] && (x != y || x != ' ' && (x < 'a' || x > 'z')) {
			return false
		}
	}
	return true
}

func contains(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}
