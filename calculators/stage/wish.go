package stage

import (
	"errors"

	"slipbook/calculators/letters"
)

// MostLayers is the largest number of layers in a wish.
const MostLayers = 8

// Layer is one thing wanted on the pot.
type Layer struct {
	Medium    int // in the table
	Technique int // in the table; -1 when the wish leaves it open
}

// Wish is what a student asks for.
type Wish struct {
	State  int     // of the pot now
	Layers []Layer // in the order in which they shall lie, the lowest first
	Apart  bool    // each on a part of the pot of its own: they do not constrain each other
	Food   bool    // the pot will hold food or drink
	Bare   bool    // the pot ends without glaze
	Body   int     // in the table; -1 when not said
}

// Layers understands a comma list of layers: "slip by stencil, wash wiped
// back, clear glaze brushed". In each a medium's name or one of its words has
// to stand, and beside it at most a technique's; small words between them do
// not count. An error names the part that was not understood.
func (t *Table) Layers(text string) ([]Layer, error) {
	var layers []Layer
	for text != "" {
		end := letters.IndexAny(text, ",;")
		if end < 0 {
			end = len(text) - 1
		}
		words := plain(text[:end+1])
		text = text[end+1:]
		if len(words) == 0 {
			continue
		}
		if len(layers) == MostLayers {
			return nil, errors.New("Those are too many layers. Plan the first ones, then ask again.")
		}
		layer, err := t.layer(words)
		if err != nil {
			return nil, err
		}
		layers = append(layers, layer)
	}
	return layers, nil
}

func (t *Table) layer(words []string) (Layer, error) {
	medium, rest := longest(words, len(t.Media), func(i int) []string { return t.Media[i].phrases() })
	if medium < 0 {
		return Layer{}, errors.New("“" + letters.Join(words, " ") + "” names no medium of the table. There are: " + t.mediaNames() + ".")
	}
	layer := Layer{Medium: medium, Technique: -1}
	if rest = without(rest, small); len(rest) == 0 {
		return layer, nil
	}
	technique, left := longest(rest, len(t.Techniques), func(i int) []string { return t.Techniques[i].phrases() })
	if left = without(left, small); technique < 0 || len(left) > 0 {
		if technique < 0 {
			left = rest
		}
		if err := t.twoInOne(words, left, technique >= 0); err != nil {
			return Layer{}, err
		}
		return Layer{}, errors.New("In “" + letters.Join(words, " ") + "” the words “" + letters.Join(left, " ") + "” are not understood. Say the medium and how it is put on: " + t.techniqueNames(medium) + ".")
	}
	if q := &t.Techniques[technique]; !q.serves(t.Media[medium].Base) {
		return Layer{}, errors.New(q.Name + " is not a way of working with " + lower(t.Media[medium].Name) + ". There are: " + t.techniqueNames(medium) + ".")
	}
	layer.Technique = technique
	return layer, nil
}

// twoInOne explains a part of the list that holds two layers, or two ways of
// working one.
func (t *Table) twoInOne(words, left []string, worked bool) error {
	said := "“" + letters.Join(words, " ") + "”"
	if m, _ := longest(left, len(t.Media), func(i int) []string { return t.Media[i].phrases() }); m >= 0 {
		return errors.New("In " + said + " there are two layers. Part them with a comma.")
	}
	if q, _ := longest(left, len(t.Techniques), func(i int) []string { return t.Techniques[i].phrases() }); q >= 0 && worked {
		return errors.New("In " + said + " there are two ways of working. Give a layer one of them, or make it two layers.")
	}
	return nil
}

// small words may stand anywhere in a layer.
var small = []string{"a", "an", "the", "by", "with", "in", "on", "of", "and", "then", "over", "it", "some", "put", "coat", "coats", "layer", "thin", "using"}

func (m *Medium) phrases() []string    { return append([]string{m.Name}, m.Words...) }
func (q *Technique) phrases() []string { return append([]string{q.Name}, q.Words...) }

// serves says whether a technique is for a medium, by base id.
func (q *Technique) serves(base string) bool {
	return len(q.With) == 0 || has(q.With, base)
}

// longest finds the longest phrase of n things that stands in the words, and
// gives the thing and the words without the phrase; -1 when there is none. Of
// phrases of one length the first thing's counts.
func longest(words []string, n int, phrases func(int) []string) (found int, rest []string) {
	found, length, at := -1, 0, 0
	for i := range n {
		for _, phrase := range phrases(i) {
			if start, many := stands(words, phrase); many > length {
				found, length, at = i, many, start
			}
		}
	}
	rest = append(rest, words[:at]...)
	return found, append(rest, words[at+length:]...)
}

// stands gives where a phrase begins in plain words and how many it takes; 0
// when it does not stand there.
func stands(words []string, phrase string) (start, many int) {
	for start = range words {
		if many = begins(words[start:], phrase); many > 0 {
			return start, many
		}
	}
	return 0, 0
}

// begins compares a phrase with the first of some plain words, letter by
// letter, as plain would write it; it makes nothing, because every phrase of
// the table is tried on every wish.
func begins(words []string, phrase string) (many int) {
	word, at := "", 0
	for i := 0; i <= len(phrase); i++ {
		c := byte(' ')
		if i < len(phrase) {
			c = fold(phrase[i])
		}
		switch {
		case c == ' ' && at == len(word):
			word, at = "", 0 // between words, or at the end of one that is the same
		case c == ' ':
			return 0
		case at == 0 && many == len(words):
			return 0
		default:
			if at == 0 {
				word = words[many]
				many++
			}
			if at == len(word) || word[at] != c {
				return 0
			}
			at++
		}
	}
	return many
}

// fold makes a letter small and everything that parts words a space.
func fold(c byte) byte {
	switch {
	case c >= 'A' && c <= 'Z':
		return c | 0x20
	case c >= 'a' && c <= 'z', c >= '0' && c <= '9', c >= 0x80:
		return c
	}
	return ' '
}

// plain parts a text into words in lower case; what is neither a letter nor a
// digit parts them. Letters outside ASCII stay as they are.
func plain(text string) []string {
	var words []string
	word := []byte{}
	for i := 0; i <= len(text); i++ {
		c := byte(' ')
		if i < len(text) {
			c = fold(text[i])
		}
		switch {
		case c != ' ':
			word = append(word, c)
		case len(word) > 0:
			words = append(words, string(word))
			word = word[:0]
		}
	}
	return words
}

func without(words, leave []string) []string {
	var rest []string
	for _, w := range words {
		if !has(leave, w) {
			rest = append(rest, w)
		}
	}
	return rest
}

func has(list []string, word string) bool {
	for _, w := range list {
		if w == word {
			return true
		}
	}
	return false
}

func (t *Table) mediaNames() string {
	var names []string
	for _, m := range t.Media {
		names = append(names, lower(m.Name))
	}
	return letters.Join(names, ", ")
}

func (t *Table) techniqueNames(medium int) string {
	var names []string
	for i := range t.Techniques {
		if t.Techniques[i].serves(t.Media[medium].Base) {
			names = append(names, lower(t.Techniques[i].Name))
		}
	}
	return letters.Join(names, ", ")
}

// lower makes a name fit into a sentence.
func lower(name string) string {
	if name == "" || name[0] < 'A' || name[0] > 'Z' {
		return name
	}
	return string(name[0]|0x20) + name[1:]
}
