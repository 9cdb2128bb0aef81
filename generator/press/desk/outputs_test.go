package desk

import (
	"testing"
)

func TestLettersBelowTheLine(t *testing.T) {
	for text, want := range map[string]string{
		"d":        "d",
		"V_1, V_2": "V<sub>1</sub>, V<sub>2</sub>",
		"u_M":      "u<sub>M</sub>",
		"a<b":      "a&lt;b",
	} {
		if got := string(letters(text)); got != want {
			t.Errorf("%q became %q, want %q", text, got, want)
		}
	}
}
