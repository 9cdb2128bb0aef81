package words

import (
	"errors"

	"slipbook/calculators/letters"
)

// Encode writes a table in the form that Decode reads: the language on the
// first line, then a line for each entry, its id, a tab and its text.
func (t *Table) Encode() string {
	size := len(t.Language) + 1
	for _, e := range t.entries {
		size += len(e.id) + len(e.text) + 2
	}
	b := make([]byte, 0, size)
	b = append(b, t.Language...)
	for _, e := range t.entries {
		b = append(append(append(append(b, '\n'), e.id...), '\t'), e.text...)
	}
	return string(b)
}

// Decode reads what Encode wrote. A text that is no parcel of words, or whose
// ids are out of order, is an error.
func Decode(text string) (*Table, error) {
	lines := letters.Split(text, "\n")
	t := &Table{Language: lines[0], choose: ruleOf(lines[0]), entries: make([]entry, 0, len(lines)-1)}
	for i, line := range lines[1:] {
		id, words, ok := letters.Cut(line, "\t")
		if !ok || i > 0 && id <= t.entries[i-1].id {
			return nil, errors.New("words")
		}
		t.entries = append(t.entries, entry{id, words})
	}
	return t, nil
}
