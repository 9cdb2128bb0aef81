// Package letters does with text the few things that the calculators need. It
// stands in for the standard library's strings, which brings the tables of
// Unicode into the WebAssembly reactor; here a letter's case or kind is never
// asked. Each function up to Repeat does what the one of the same name in
// strings does, and its test compares the two.
package letters

// Index returns the place of the first sep in s, or -1.
func Index(s, sep string) int {
	for i := 0; i+len(sep) <= len(s); i++ {
		if s[i:i+len(sep)] == sep {
			return i
		}
	}
	return -1
}

// IndexByte returns the place of the first c in s, or -1.
func IndexByte(s string, c byte) int {
	for i := range len(s) {
		if s[i] == c {
			return i
		}
	}
	return -1
}

// LastIndexByte returns the place of the last c in s, or -1.
func LastIndexByte(s string, c byte) int {
	for i := len(s) - 1; i >= 0; i-- {
		if s[i] == c {
			return i
		}
	}
	return -1
}

// IndexAny returns the place of the first byte of s that is one of chars, or -1.
// The chars have to be ASCII.
func IndexAny(s, chars string) int {
	for i := range len(s) {
		if IndexByte(chars, s[i]) >= 0 {
			return i
		}
	}
	return -1
}

// LastIndexAny returns the place of the last byte of s that is one of chars, or
// -1. The chars have to be ASCII.
func LastIndexAny(s, chars string) int {
	for i := len(s) - 1; i >= 0; i-- {
		if IndexByte(chars, s[i]) >= 0 {
			return i
		}
	}
	return -1
}

// Contains reports whether sep stands in s.
func Contains(s, sep string) bool { return Index(s, sep) >= 0 }

// Count counts how often sep, which is not empty, stands in s without overlap.
func Count(s, sep string) int {
	n := 0
	for {
		_, after, found := Cut(s, sep)
		if !found {
			return n
		}
		s = after
		n++
	}
}

// Cut parts s at the first sep.
func Cut(s, sep string) (before, after string, found bool) {
	if i := Index(s, sep); i >= 0 {
		return s[:i], s[i+len(sep):], true
	}
	return s, "", false
}

// HasPrefix reports whether s begins with prefix.
func HasPrefix(s, prefix string) bool {
	return len(s) >= len(prefix) && s[:len(prefix)] == prefix
}

// HasSuffix reports whether s ends with suffix.
func HasSuffix(s, suffix string) bool {
	return len(s) >= len(suffix) && s[len(s)-len(suffix):] == suffix
}

// CutPrefix takes prefix off the beginning of s.
func CutPrefix(s, prefix string) (after string, found bool) {
	if !HasPrefix(s, prefix) {
		return s, false
	}
	return s[len(prefix):], true
}

// CutSuffix takes suffix off the end of s.
func CutSuffix(s, suffix string) (before string, found bool) {
	if !HasSuffix(s, suffix) {
		return s, false
	}
	return s[:len(s)-len(suffix)], true
}

// TrimPrefix is s without prefix at its beginning.
func TrimPrefix(s, prefix string) string {
	s, _ = CutPrefix(s, prefix)
	return s
}

// TrimSuffix is s without suffix at its end.
func TrimSuffix(s, suffix string) string {
	s, _ = CutSuffix(s, suffix)
	return s
}

// TrimLeft is s without the bytes of chars at its beginning. The chars have to
// be ASCII.
func TrimLeft(s, chars string) string {
	for len(s) > 0 && IndexByte(chars, s[0]) >= 0 {
		s = s[1:]
	}
	return s
}

// Split parts s at every sep, which is not empty.
func Split(s, sep string) []string {
	var parts []string
	for {
		before, after, found := Cut(s, sep)
		parts = append(parts, before)
		if !found {
			return parts
		}
		s = after
	}
}

// Join puts parts together with sep between them.
func Join(parts []string, sep string) string {
	var b []byte
	for i, part := range parts {
		if i > 0 {
			b = append(b, sep...)
		}
		b = append(b, part...)
	}
	return string(b)
}

// ReplaceAll is s with every old, which is not empty, replaced.
func ReplaceAll(s, old, with string) string { return Join(Split(s, old), with) }

// The rest have no namesake in strings, or one that asks the tables of Unicode.

// space reports whether a byte is an ASCII space.
func space(c byte) bool { return c == ' ' || c == '\t' || c == '\n' || c == '\r' }

// Trim cuts ASCII spaces from both ends.
func Trim(text string) string {
	for len(text) > 0 && space(text[0]) {
		text = text[1:]
	}
	for len(text) > 0 && space(text[len(text)-1]) {
		text = text[:len(text)-1]
	}
	return text
}

// Fields separates a text at its ASCII spaces.
func Fields(text string) []string {
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

// LowerFirst makes a label fit into a sentence: "Weight on the scale" becomes
// "weight on the scale". A label that begins with a capital abbreviation keeps
// it.
func LowerFirst(label string) string {
	if len(label) < 2 || label[0] < 'A' || label[0] > 'Z' || label[1] >= 'A' && label[1] <= 'Z' {
		return label
	}
	return string(label[0]+'a'-'A') + label[1:]
}

// UpperFirst makes a text fit the beginning of a sentence.
func UpperFirst(text string) string {
	if text == "" || text[0] < 'a' || text[0] > 'z' {
		return text
	}
	return string(text[0]&^0x20) + text[1:]
}

// SameWord compares without regard to the case of ASCII letters, or to hyphens.
func SameWord(a, b string) bool {
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

// In reports whether a word is one of a list.
func In(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}
