package tile

import (
	"slices"
	"strings"
	"testing"
)

// seen is what a capital letter may be taken for when the tile is held upside
// down or read in a mirror, or scratched in a hurry: itself, if it looks the
// same.
var seen = map[rune]string{
	'A': "V", 'B': "8q", 'C': "U", 'D': "", 'E': "3", 'F': "", 'G': "69", 'H': "H", 'I': "I1", 'J': "Lr", 'K': "", 'L': "7J", 'M': "W",
	'N': "NZ", 'O': "O0", 'P': "dq9", 'Q': "O0", 'R': "", 'S': "S52Z", 'T': "", 'U': "n", 'V': "A", 'W': "M", 'X': "X", 'Y': "", 'Z': "Z2N",
}

func TestCodesCannotBeTurned(t *testing.T) {
	for _, letter := range Letters {
		looks, known := seen[letter]
		if !known || strings.ContainsAny(looks, Letters) {
			t.Errorf("%c may be read as one of %q", letter, looks)
		}
	}
}

func TestCodes(t *testing.T) {
	for _, count := range []int{2, 9, 10, 11, 35, MostCodes} {
		codes := Codes(count)
		if len(codes) != count || !slices.IsSorted(codes) || len(slices.Compact(slices.Clone(codes))) != count {
			t.Errorf("%d codes: %v", count, codes)
		}
		want := 2
		if count <= 10 {
			want = 1
		}
		for _, code := range codes {
			if len(code) != want || strings.Trim(code, Letters) != "" {
				t.Errorf("of %d codes one is %q", count, code)
			}
		}
	}
}
