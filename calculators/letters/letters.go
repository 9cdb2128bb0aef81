// Package letters does with text the few things that the calculators need. It
// stands in for the standard library's strings, which brings the tables of
// Unicode into the WebAssembly reactor; here a letter's case or kind is never
// asked. Each function does what the one of the same name in strings does, and
// its test compares the two.
package letters

// Index gives the place of the first sep in s, or -1.
func Index(s, sep string) int {
	for i := 0; i+len(sep) <= len(s); i++ {
		if s[i:i+len(sep)] == sep {
			return i
		}
	}
	return -1
}

// IndexByte gives the place of the first c in s, or -1.
func IndexByte(s string, c byte) int {
	for i := range len(s) {
		if s[i] == c {
			return i
		}
	}
	return -1
}

// LastIndexByte gives the place of the last c in s, or -1.
func LastIndexByte(s string, c byte) int {
	for i := len(s) - 1; i >= 0; i-- {
		if s[i] == c {
			return i
		}
	}
	return -1
}

// IndexAny gives the place of the first byte of s that is one of chars, or -1.
// The chars have to be ASCII.
func IndexAny(s, chars string) int {
	for i := range len(s) {
		if IndexByte(chars, s[i]) >= 0 {
			return i
		}
	}
	return -1
}

// LastIndexAny gives the place of the last byte of s that is one of chars, or
// -1. The chars have to be ASCII.
func LastIndexAny(s, chars string) int {
	for i := len(s) - 1; i >= 0; i-- {
		if IndexByte(chars, s[i]) >= 0 {
			return i
		}
	}
	return -1
}

// Contains says whether sep stands in s.
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

// HasPrefix says whether s begins with prefix.
func HasPrefix(s, prefix string) bool {
	return len(s) >= len(prefix) && s[:len(prefix)] == prefix
}

// HasSuffix says whether s ends with suffix.
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

// Repeat is s n times, n at least 0.
func Repeat(s string, n int) string {
	var b []byte
	for range n {
		b = append(b, s...)
	}
	return string(b)
}
