package letters

import (
	"slices"
	"strings"
	"testing"
)

// FuzzLetters compares every function with the one of the same name in
// strings.
func FuzzLetters(f *testing.F) {
	f.Add("a,b;;c", ",", 3)
	f.Add("1 745,5 g", "5", 0)
	f.Add("", "", 1)
	f.Add("é½x", "½", 2)
	f.Fuzz(func(t *testing.T, s, sep string, n int) {
		compare(t, "HasPrefix", HasPrefix(s, sep), strings.HasPrefix(s, sep))
		compare(t, "HasSuffix", HasSuffix(s, sep), strings.HasSuffix(s, sep))
		compare(t, "TrimPrefix", TrimPrefix(s, sep), strings.TrimPrefix(s, sep))
		compare(t, "TrimSuffix", TrimSuffix(s, sep), strings.TrimSuffix(s, sep))
		compare(t, "Index", Index(s, sep), strings.Index(s, sep))
		compare(t, "Contains", Contains(s, sep), strings.Contains(s, sep))
		if sep == "" {
			return
		}
		compare(t, "IndexByte", IndexByte(s, sep[0]), strings.IndexByte(s, sep[0]))
		compare(t, "LastIndexByte", LastIndexByte(s, sep[0]), strings.LastIndexByte(s, sep[0]))
		compare(t, "Count", Count(s, sep), strings.Count(s, sep))
		compare(t, "ReplaceAll", ReplaceAll(s, sep, "-"), strings.ReplaceAll(s, sep, "-"))
		if got, want := Split(s, sep), strings.Split(s, sep); !slices.Equal(got, want) {
			t.Errorf("Split(%q, %q) = %q, want %q", s, sep, got, want)
		}
		for _, c := range []byte(sep) {
			if c >= 0x80 {
				return
			}
		}
		compare(t, "IndexAny", IndexAny(s, sep), strings.IndexAny(s, sep))
		compare(t, "LastIndexAny", LastIndexAny(s, sep), strings.LastIndexAny(s, sep))
		compare(t, "TrimLeft", TrimLeft(s, sep), strings.TrimLeft(s, sep))
	})
}

func compare[T comparable](t *testing.T, name string, got, want T) {
	t.Helper()
	if got != want {
		t.Errorf("%s: got %v, want %v", name, got, want)
	}
}

// TestWithoutNamesake holds what has no namesake in strings.
func TestWithoutNamesake(t *testing.T) {
	if got := Trim(" \t a b\r\n"); got != "a b" {
		t.Errorf("trimmed to %q", got)
	}
	if got := Fields(" a  b\tc\n"); !slices.Equal(got, []string{"a", "b", "c"}) {
		t.Errorf("fields %q", got)
	}
	for text, want := range map[string]string{"Weight": "weight", "US cup": "US cup", "": "", "x": "x", "Éa": "Éa"} {
		if got := LowerFirst(text); got != want {
			t.Errorf("%q lowered is %q, want %q", text, got, want)
		}
	}
	for text, want := range map[string]string{"weight": "Weight", "": "", "éa": "éa", "1 cup": "1 cup"} {
		if got := UpperFirst(text); got != want {
			t.Errorf("%q raised is %q, want %q", text, got, want)
		}
	}
	for _, same := range [][2]string{{"Leather hard", "leather-hard"}, {"", ""}, {"é", "é"}} {
		if !SameWord(same[0], same[1]) {
			t.Errorf("%q and %q are not one word", same[0], same[1])
		}
	}
	for _, other := range [][2]string{{"a", "b"}, {"a", "ab"}, {"[", "{"}, {"é", "É"}} {
		if SameWord(other[0], other[1]) {
			t.Errorf("%q and %q are one word", other[0], other[1])
		}
	}
	if In([]string{"a"}, "b") || !In([]string{"a", "b"}, "b") {
		t.Error("what is in a list")
	}
}
