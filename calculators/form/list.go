package form

import (
	"strconv"

	"slipbook/calculators/decimal"
	"slipbook/calculators/letters"
	"slipbook/calculators/quantity"
	"slipbook/calculators/words"
)

// readValues understands the text of a box: one quantity, or for a list
// several.
func (e *Evaluation) readValues(in *Input, t box, style quantity.Style) ([]quantity.Quantity, error) {
	if !in.List {
		q, err := quantity.Read(t.text, in.Kind, t.unit, style)
		return []quantity.Quantity{q}, err
	}
	pieces := split(t.text, in.Kind)
	if len(pieces) > in.Most {
		return nil, words.NewError("form.too-many-values", "count", strconv.Itoa(len(pieces)), "most", strconv.Itoa(in.Most))
	}
	unit := t.unit
	if unit == "" {
		unit = unitAtEnd(pieces, in.Kind, style)
	}
	values := make([]quantity.Quantity, len(pieces))
	for i, piece := range pieces {
		q, err := quantity.Read(piece, in.Kind, unit, style)
		if err != nil {
			return nil, wrongValue{i, e.Say("form.wrong-value", "value", strconv.Itoa(i+1), "typed", Clip(piece), "why", e.Settings.said(err))}
		}
		values[i] = q
	}
	return values, oneUnit(pieces, values, t.unit)
}

// unitAtEnd returns the unit of the last value of a list where no other names
// one: it counts for all of them. "" where that is not so.
func unitAtEnd(pieces []string, kind quantity.Kind, style quantity.Style) string {
	last := len(pieces) - 1
	for i, piece := range pieces {
		if named(piece) != (i == last) {
			return ""
		}
	}
	q, err := quantity.Read(pieces[last], kind, "", style)
	if err != nil {
		return ""
	}
	return q.Unit
}

// oneUnit refuses a list in which some values name a unit and others, read in
// another, name none. Beside a chooser, which says what those are in, it is
// plain.
func oneUnit(pieces []string, values []quantity.Quantity, chosen string) error {
	for i, piece := range pieces {
		for j, other := range pieces {
			if chosen == "" && named(piece) && !named(other) && values[i].Unit != values[j].Unit {
				return words.NewError("form.one-unit", "typed", Clip(piece), "other", Clip(other))
			}
		}
	}
	return nil
}

// named reports whether a value of a list names its unit.
func named(piece string) bool {
	for _, sign := range [...]string{"½", "¼", "¾", "⅛", "⅜", "⅝", "⅞"} {
		if letters.HasSuffix(piece, sign) {
			return false
		}
	}
	c := piece[len(piece)-1]
	return c != '.' && c != ',' && (c < '0' || c > '9')
}

// wrongValue is an error about one value of a list, counted from 0.
type wrongValue struct {
	i    int
	text string
}

func (w wrongValue) Error() string { return w.text }

// split parts a list at semicolons and spaces. Digits in a list are never
// grouped by spaces; a unit or a fraction after a space belongs to the number
// before it ("100 mm 101 mm", "4 1/2; 4 5/8").
func split(text string, kind quantity.Kind) []string {
	var pieces []string
	for _, part := range letters.Split(text, ";") {
		start := len(pieces)
		for _, word := range letters.Fields(part) {
			if len(pieces) > start && belongsBefore(word, pieces[len(pieces)-1], kind) {
				pieces[len(pieces)-1] += " " + word
			} else {
				pieces = append(pieces, word)
			}
		}
	}
	return pieces
}

// belongsBefore reports whether a word of a list is no value of its own but the
// unit of the value before it, or the fraction after its whole inches.
func belongsBefore(word, before string, kind quantity.Kind) bool {
	if letters.IndexByte(word, '/') > 0 {
		_, whole := decimal.Natural(before)
		return whole && letters.IndexByte(word, '-') < 0
	}
	_, err := quantity.Read("1 "+word, kind, "", quantity.Style{Decimal: '.'})
	return err == nil && (word[0] < '0' || word[0] > '9')
}

// which names the value of a list that a refusal is about; empty for an input
// that is no list.
func (e *Evaluation) which(in *Input, i int, text string) string {
	if !in.List {
		return ""
	}
	piece := split(text, in.Kind)[i]
	key := "form.which"
	if i > 0 && len(piece) == 3 && piece[0] == '0' {
		key = "form.which-grouped"
	}
	return e.Say(key, "value", strconv.Itoa(i+1), "typed", Clip(piece)) + " "
}
