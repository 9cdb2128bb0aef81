package source

import (
	"strings"
	"testing"
)

func TestNearest(t *testing.T) {
	tests := []struct {
		name, word string
		words      []string
		want       string
	}{
		{"dropped letter", "descripton", []string{"title", "description"}, "description"},
		{"added letter", "titlle", []string{"title"}, "title"},
		{"changed letter", "tytle", []string{"title"}, "title"},
		{"swapped letters", "tilte", []string{"title"}, "title"},
		{"capital letters", "Title", []string{"title"}, "title"},
		{"too far", "heading", []string{"title", "teaches"}, ""},
		{"too short to guess", "ab", []string{"ac"}, ""},
		{"the nearer of two", "lesson-3", []string{"lesson-14", "lesson-1"}, "lesson-1"},
		{"the first of two as near", "bat", []string{"cat", "hat"}, "cat"},
		{"nothing to choose from", "title", nil, ""},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := Nearest(tt.word, tt.words); got != tt.want {
				t.Errorf("Nearest(%q, %q) = %q, want %q", tt.word, tt.words, got, tt.want)
			}
		})
	}
}

func TestEditDistanceStopsEarly(t *testing.T) {
	long := strings.Repeat("ab", 1<<20)
	if got := editDistance(long, strings.Repeat("cd", 1<<20), 2); got != 3 {
		t.Errorf("got %d, want 3", got)
	}
}
