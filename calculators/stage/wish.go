package stage

import (
	"errors"
	"strings"
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
	for part := range strings.SplitSeq(strings.ReplaceAll(text, ";", ","), ",") {
		words := plain(part)
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
		return Layer{}, errors.New("“" + strings.Join(words, " ") + "” names no medium of the table. There are: " + t.mediaNames() + ".")
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
		return Layer{}, errors.New("In “" + strings.Join(words, " ") + "” the words “" + strings.Join(left, " ") + "” are not understood. Say the medium and how it is put on: " + t.techniqueNames(medium) + ".")
	}
	if q := &t.Techniques[technique]; !q.serves(t.Media[medium].Base) {
		return Layer{}, errors.New(q.Name + " is not a way of working with " + lower(t.Media[medium].Name) + ". There are: " + t.techniqueNames(medium) + ".")
	}
	layer.Technique = technique
	return layer, nil
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
			p := plain(phrase)
			if start := stands(words, p); start >= 0 && len(p) > length {
				found, length, at = i, len(p), start
			}
		}
	}
	rest = append(rest, words[:at]...)
	return found, append(rest, words[at+length:]...)
}

// stands gives where a phrase begins in the words, or -1.
func stands(words, phrase []string) int {
	for start := 0; start+len(phrase) <= len(words); start++ {
		same := len(phrase) > 0
		for i := range phrase {
			same = same && words[start+i] == phrase[i]
		}
		if same {
			return start
		}
	}
	return -1
}

// plain parts a text into words in lower case; what is neither a letter nor a
// digit parts them. Letters outside ASCII stay as they are.
func plain(text string) []string {
	var words []string
	word := []byte{}
	for i := 0; i <= len(text); i++ {
		c := byte(' ')
		if i < len(text) {
			c = text[i]
		}
		switch {
		case c >= 'A' && c <= 'Z':
			word = append(word, c|0x20)
		case c >= 'a' && c <= 'z', c >= '0' && c <= '9', c >= 0x80:
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
	return strings.Join(names, ", ")
}

func (t *Table) techniqueNames(medium int) string {
	var names []string
	for i := range t.Techniques {
		if t.Techniques[i].serves(t.Media[medium].Base) {
			names = append(names, lower(t.Techniques[i].Name))
		}
	}
	return strings.Join(names, ", ")
}

// lower makes a name fit into a sentence.
func lower(name string) string {
	if name == "" || name[0] < 'A' || name[0] > 'Z' {
		return name
	}
	return string(name[0]|0x20) + name[1:]
}
