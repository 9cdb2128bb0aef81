package stage

// A slip of the pen is one letter too many, too few, wrong, or swapped with its
// neighbour: the optimal string alignment distance of 1. In a long word two of
// them are forgiven.

const (
	shortestWord = 4 // letters of a word in which a slip is looked for
	longWord     = 8 // letters of a word in which two are
)

// mended reads words that the table does not know as the word that they are a
// slip of, where only one is meant. Where words of different hazards are as
// near, nothing is mended: the words then stay, and are told.
func (t *Table) mended(words []string, r *reader) []string {
	known := t.vocabulary()
	read := append([]string(nil), words...)
	for i, w := range words {
		if len(w) < shortestWord || t.knows(known, w) {
			continue
		}
		if meant := t.meant(known, w); meant != "" {
			r.Read = union(r.Read, t.fill("read-as", "typed", w, "meant", meant))
			read[i] = meant
		}
	}
	return read
}

// wordOf is a word of the table, and what follows for health from it.
type wordOf struct {
	word  string
	peril peril
}

// vocabulary are all single words by which the table knows something.
func (t *Table) vocabulary() []wordOf {
	var known []wordOf
	put := func(phrases []string, p peril) {
		for _, phrase := range phrases {
			for _, w := range plain(phrase) {
				known = append(known, wordOf{w, p})
			}
		}
	}
	for i := range t.Media {
		put(t.Media[i].phrases(), peril{t.Media[i].Hazards, t.Media[i].Who})
	}
	for i := range t.Techniques {
		put(t.Techniques[i].phrases(), peril{t.Techniques[i].Hazards, t.Techniques[i].Who})
	}
	for i := range t.Phrases {
		put(t.Phrases[i].Words, peril{})
	}
	put(t.Metals.Words, peril{t.Metals.Hazards, t.Metals.Who})
	put(t.Metals.Unplanned, peril{t.Metals.Hazards, Instructor})
	return known
}

// knows reports whether a word needs no mending.
func (t *Table) knows(known []wordOf, word string) bool {
	for i := range known {
		if known[i].word == word {
			return true
		}
	}
	for _, list := range [][]string{small, joiners, reversers, forwarders, refusals, fixedWords, looseWords, colours} {
		if has(list, word) {
			return true
		}
	}
	return word == BareClay
}

// meant is the only word that another can be a slip of; empty where there is
// none, or several of different hazards.
func (t *Table) meant(known []wordOf, word string) string {
	most := 1
	if len(word) >= longWord {
		most = 2
	}
	for slips := 1; slips <= most; slips++ {
		if meant, clear := within(known, word, slips); meant != "" || !clear {
			return meant
		}
	}
	return ""
}

// within is the first word within some slips of another; clear is false where
// those found have different hazards, and then there is none.
func within(known []wordOf, word string, slips int) (meant string, clear bool) {
	var best *wordOf
	for i := range known {
		k := &known[i]
		switch {
		case len(k.word) < shortestWord || distance(word, k.word, slips) > slips:
		case best == nil:
			best = k
		case best.word != k.word && best.peril != k.peril:
			return "", false
		}
	}
	if best == nil {
		return "", true
	}
	return best.word, true
}

// nearest returns, for words that name nothing, what they may be.
func (t *Table) nearest(words []string) string {
	known := t.vocabulary()
	for _, w := range words {
		for i := range known {
			if len(w) >= shortestWord && distance(w, known[i].word, 2) <= 2 {
				return known[i].word
			}
		}
	}
	return ""
}

// distance is the optimal string alignment distance of two words, counted no
// further than most+1.
func distance(a, b string, most int) int {
	if len(a)-len(b) > most || len(b)-len(a) > most {
		return most + 1
	}
	var rows [3][64]int
	if len(a) >= len(rows[0]) || len(b) >= len(rows[0]) {
		return most + 1
	}
	for j := range len(b) + 1 {
		rows[0][j] = j
	}
	for i := 1; i <= len(a); i++ {
		now, up, upup := &rows[i%3], &rows[(i+2)%3], &rows[(i+1)%3]
		now[0] = i
		for j := 1; j <= len(b); j++ {
			same := 1
			if a[i-1] == b[j-1] {
				same = 0
			}
			now[j] = min(up[j]+1, now[j-1]+1, up[j-1]+same)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				now[j] = min(now[j], upup[j-2]+1)
			}
		}
	}
	return rows[len(a)%3][len(b)]
}

// colours and looks that people say of a medium. They are left out, and told.
var colours = []string{"white", "black", "blue", "red", "green", "yellow", "orange", "brown", "pink", "purple", "violet", "grey", "gray", "turquoise", "teal", "cream",
	"dark", "light", "pale", "deep", "bright", "matt", "matte", "glossy", "satin", "velvet", "coloured", "colored", "colour", "color", "two", "three", "four", "five",
	"lines", "line", "dots", "inside", "outside", "rim", "foot", "bisque", "leather", "hard", "bone", "dry", "fired", "unfired"}
