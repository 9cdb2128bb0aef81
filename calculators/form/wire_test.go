package form

import (
	"testing"
	"unicode/utf8"
)

// FuzzForm encodes and decodes any pair.
func FuzzForm(f *testing.F) {
	f.Add("mass", "1 745 g")
	f.Add("a&b=c", "50 % + “x”\x00\xff")
	f.Fuzz(func(t *testing.T, name, value string) {
		if len(name)+len(value) > mostBytes/4 || !utf8.ValidString(name) || !utf8.ValidString(value) {
			return // longer than a request may be, or no text
		}
		encoded := string(field(nil, name, value))
		fields, err := decode(encoded, mostSettings)
		if err != nil || len(fields) != 1 || fields[0] != (Setting{name, value}) {
			t.Fatalf("%q=%q became %v (%v) by %s", name, value, fields, err, encoded)
		}
	})
}
