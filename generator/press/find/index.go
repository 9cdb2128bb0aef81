package find

import (
	"maps"
	"slices"
)

// Where a word stands in a place, by what is said of it in the index: in a name of so
// many words, in a heading, in the text. The scripts know the same numbers
// (scripts/lookup.ts).
const (
	inText    = 0
	inName    = 1 // in a name of one word; up to longestName for those of more
	inHeading = 6

	longestName = inHeading - inName // words; longer names count as of so many
	bitsOfField = 3
)

// A word that stands in the text of more than this share of all places tells little
// where it stands once, or, of the second share, several times: the index leaves it out
// there. Where it stands in a name or a heading it is always kept.
const (
	frequent     = 0.03
	veryFrequent = 0.2
	fewPlaces    = 20 // no word in so many is frequent
)

// posting is a place in which a word stands.
type posting struct {
	place, field int
	often        bool // several times
}

// indexed is the words of all places: where each stands, by place.
func indexed(r Rules, places []Place) (terms []string, postings map[string][]posting) {
	postings = map[string][]posting{}
	texts := map[string]int{}
	for n, p := range places {
		for word, at := range fieldsOf(r, p) {
			at.place = n
			postings[word] = append(postings[word], at)
			if at.field == inText {
				texts[word]++
			}
		}
	}
	for word, n := range texts {
		postings[word] = slices.DeleteFunc(postings[word], func(p posting) bool { return p.field == inText && tellsLittle(n, len(places), p.often) })
		if len(postings[word]) == 0 {
			delete(postings, word)
		}
	}
	return slices.Sorted(maps.Keys(postings)), postings
}

// tellsLittle reports whether a word that stands in the text of n of all places tells
// little where it stands in a text.
func tellsLittle(n, all int, often bool) bool {
	share := frequent
	if often {
		share = veryFrequent
	}
	return n > fewPlaces && float64(n) > share*float64(all)
}

// fieldsOf says of each word of a place where it stands best.
func fieldsOf(r Rules, p Place) map[string]posting {
	fields := map[string]posting{}
	for _, word := range r.Words(p.Text) {
		_, again := fields[word]
		fields[word] = posting{field: inText, often: again}
	}
	if p.Part != "" { // its lesson has the name
		for _, word := range r.Words(p.Part) {
			fields[word] = posting{field: inHeading}
		}
		return fields
	}
	for _, name := range append(slices.Clone(p.Also), p.Name) {
		words := r.Words(name)
		length := min(max(len(words), 1), longestName)
		for _, word := range words {
			if f := fields[word].field; f == inText || f > length {
				fields[word] = posting{field: length}
			}
		}
	}
	return fields
}
