package catalog

import (
	"errors"
	"strconv"
	"strings"

	"slipbook/calculators/quantity"
)

// readValues understands the text of a box: one quantity, or for a list
// several.
func readValues(in *Input, t box, style quantity.Style) ([]float64, error) {
	if !in.List {
		q, err := quantity.Read(t.text, in.Kind, t.unit, style)
		return []float64{q.Value}, err
	}
	pieces := split(t.text)
	if len(pieces) > in.Most {
		return nil, errors.New("There are " + strconv.Itoa(len(pieces)) + " values here, and at most " + strconv.Itoa(in.Most) + " can be reckoned at once.")
	}
	values := make([]float64, len(pieces))
	for i, piece := range pieces {
		q, err := quantity.Read(piece, in.Kind, t.unit, style)
		if err != nil {
			return nil, errors.New("Value " + strconv.Itoa(i+1) + ", “" + clip(piece) + "”: " + err.Error() + " Part the values with spaces or semicolons.")
		}
		values[i] = q.Value
	}
	return values, nil
}

// split parts a list at semicolons and spaces. Digits in a list are never
// grouped by spaces; a unit or a fraction after a space belongs to the number
// before it ("100 mm 101 mm", "4 1/2; 4 5/8").
func split(text string) []string {
	var pieces []string
	for part := range strings.SplitSeq(text, ";") {
		start := len(pieces)
		for _, word := range words(part) {
			if len(pieces) > start && belongsBefore(word) {
				pieces[len(pieces)-1] += " " + word
			} else {
				pieces = append(pieces, word)
			}
		}
	}
	return pieces
}

// belongsBefore says whether a word of a list cannot be a value of its own: a
// unit, or a fraction below one.
func belongsBefore(word string) bool {
	c := word[0]
	if c < '0' || c > '9' {
		return c != '-' && c != '+' && c != '.' && c != ','
	}
	top, bottom, ok := strings.Cut(word, "/")
	return ok && len(top) <= len(bottom) && top < bottom || ok && len(top) < len(bottom)
}
