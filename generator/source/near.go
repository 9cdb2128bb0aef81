package source

import (
	"fmt"
	"strings"
)

// Meant begins a piece of advice with the word that was probably meant, or is
// empty when none of words is near.
func Meant(word string, words []string) string {
	if near := Nearest(word, words); near != "" {
		return fmt.Sprintf("Did you mean `%s`? ", near)
	}
	return ""
}

// Nearest returns the first of words with the smallest edit distance from word,
// at most two and at most a third of its letters; empty if none is so near.
// Capital letters do not count.
func Nearest(word string, words []string) string {
	word = strings.ToLower(word)
	most, best := min(2, len(word)/3), ""
	for _, w := range words {
		if n := editDistance(word, strings.ToLower(w), most); n <= most {
			most, best = n-1, w
		}
	}
	return best
}

// editDistance returns the optimal string alignment distance (Damerau and
// Levenshtein): how many bytes to insert, delete, replace or swap with their
// neighbour to make b of a. Above most it stops counting and returns most+1,
// which bounds its time.
func editDistance(a, b string, most int) int {
	if len(a)-len(b) > most || len(b)-len(a) > most {
		return most + 1
	}
	var before []int
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		next, least := make([]int, len(b)+1), i
		next[0] = i
		for j := 1; j <= len(b); j++ {
			changed := row[j-1]
			if a[i-1] != b[j-1] {
				changed++
			}
			next[j] = min(row[j]+1, next[j-1]+1, changed)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				next[j] = min(next[j], before[j-2]+1)
			}
			least = min(least, next[j])
		}
		if least > most {
			return most + 1
		}
		before, row = row, next
	}
	return row[len(b)]
}
