package finding

import (
	"math/rand/v2"
	"testing"
)

func TestLinesAt(t *testing.T) {
	const text = "ab\r\nGröße\n\nlast"
	tests := []struct {
		name         string
		offset       int
		line, column int
	}{
		{"unknown", -1, 1, 1},
		{"first", 0, 1, 1},
		{"carriage return", 2, 1, 3},
		{"line end", 3, 1, 4},
		{"second line", 4, 2, 1},
		{"before the umlaut", 6, 2, 3},
		{"inside the umlaut", 7, 2, 3},
		{"after the umlaut", 8, 2, 4},
		{"empty line", 12, 3, 1},
		{"end", len(text), 4, 5},
		{"past the end", len(text) + 100, 4, 5},
	}
	lines := NewLines([]byte(text))
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if line, column := lines.At(tt.offset); line != tt.line || column != tt.column {
				t.Errorf("At(%d) = %d:%d, want %d:%d", tt.offset, line, column, tt.line, tt.column)
			}
		})
	}
}

// TestLinesAgainstCounting compares with the plain way: walk the text from its
// beginning, one character at a time.
func TestLinesAgainstCounting(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	alphabet := []rune("ab \n\n\r\té釉😀")
	for range 300 {
		var text []rune
		for range random.IntN(60) {
			text = append(text, alphabet[random.IntN(len(alphabet))])
		}
		lines := NewLines([]byte(string(text)))
		offset, line, column := 0, 1, 1
		for _, r := range append(text, 'z') {
			if l, c := lines.At(offset); l != line || c != column {
				t.Fatalf("%q: At(%d) = %d:%d, want %d:%d", string(text), offset, l, c, line, column)
			}
			column++
			if r == '\n' {
				line, column = line+1, 1
			}
			offset += len(string(r))
		}
	}
}

func TestLinesOfBrokenText(t *testing.T) {
	lines := NewLines([]byte("a\xff\xfeb"))
	if line, column := lines.At(3); line != 1 || column != 4 {
		t.Errorf("At(3) = %d:%d, want 1:4", line, column)
	}
}
