package find

import (
	"encoding/binary"
	"encoding/json"
	"path"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"slipbook/generator/assets"
	"slipbook/generator/press/theme"
)

// The most that a piece of the index holds, in bytes before it is packed; a fourth more
// where little is left. A piece is never less than one word or place.
const (
	postingsPiece = 24 << 10
	placesPiece   = 64 << 10
)

// head is what the script reads first. Its names are those of the script (Head in
// scripts/lookup.ts).
type head struct {
	Passed   []string   `json:"passed"`
	Endings  [][]string `json:"endings"`
	Kinds    []kindHead `json:"kinds"`
	Count    int        `json:"count"`  // of all places
	Parts    [][2]int   `json:"parts"`  // the places that have parts, and how many: those that follow
	Words    string     `json:"words"`  // front-coded, a line each
	Postings []piece    `json:"lists"`  // where each word stands
	Places   []piece    `json:"places"` // what each place is
}

// kindHead says what a kind is called and how it is weighed; Count places are of it.
type kindHead struct {
	Name   string  `json:"name"`
	Weight float64 `json:"weight"`
	Count  int     `json:"count"`
}

// piece is a file, from its first word or place on; the names of both its forms, which
// stand in one folder.
type piece struct {
	First   int    `json:"first"`
	Packed  string `json:"packed"`
	Carried string `json:"carried"`
}

// Wrap makes a parcel, as assets.Bundle.Wrap does, and keeps its files.
type Wrap func(name string, data []byte) (assets.Parcel, error)

// Pack packs the index of places and returns where its head is.
func Pack(t *theme.Theme, places []Place, wrap Wrap) (assets.Parcel, error) {
	r := NewRules(t)
	terms, postings := indexed(r, places)
	h := head{Endings: r.endings, Passed: strings.Fields(t.Say("find-passed-over")), Count: len(places), Words: fronted(terms)}
	for k, name := range kindWords(t) {
		h.Kinds = append(h.Kinds, kindHead{Name: name, Weight: weights[k]})
	}
	for n, p := range places {
		h.Kinds[p.Kind].Count++
		if p.Parts > 0 {
			h.Parts = append(h.Parts, [2]int{n, p.Parts})
		}
	}
	var err error
	list := func(n int) ([]byte, bool) { return packList(postings[terms[n]]), true }
	if h.Postings, err = pieces("find-words", len(terms), postingsPiece, list, wrap); err != nil {
		return assets.Parcel{}, err
	}
	row := func(n int) ([]byte, bool) { return packPlace(places[n]), places[n].Part == "" }
	if h.Places, err = pieces("find-places", len(places), placesPiece, row, wrap); err != nil {
		return assets.Parcel{}, err
	}
	data, err := json.Marshal(h)
	if err != nil {
		return assets.Parcel{}, err
	}
	return wrap("find-head", data)
}

// pieces puts what belongs to n things in pieces, in order. of says also whether a piece
// may begin there.
func pieces(name string, n, most int, of func(int) ([]byte, bool), wrap Wrap) ([]piece, error) {
	var all []piece
	for number, c := range chunks(n, most, of) {
		parcel, err := wrap(name+"-"+strconv.Itoa(number+1), c.data)
		if err != nil {
			return nil, err
		}
		all = append(all, piece{c.first, path.Base(parcel.Packed), path.Base(parcel.Carried)})
	}
	return all, nil
}

// chunk is what is in a piece, from its first word or place on.
type chunk struct {
	first int
	data  []byte
}

// chunks parts what belongs to n things. A short rest stays with the chunk before it: it
// would be a request more for next to nothing.
func chunks(n, most int, of func(int) ([]byte, bool)) []chunk {
	all := []chunk{{}}
	for i := range n {
		one, begins := of(i)
		if last := all[len(all)-1]; begins && len(last.data) > 0 && len(last.data)+len(one) > most {
			all = append(all, chunk{first: i})
		}
		last := &all[len(all)-1]
		last.data = append(last.data, one...)
	}
	if end := len(all) - 1; end > 0 && len(all[end].data) < most/4 {
		all[end-1].data = append(all[end-1].data, all[end].data...)
		all = all[:end]
	}
	return all
}

// mostShared is the most letters that a front-coded word takes from the one before it,
// in bytes; a sign for each stands before the rest, from sharedSign on.
const (
	mostShared = 40
	sharedSign = '0'
)

// fronted front-codes sorted words, a line each: how many bytes are those of the word
// before, as a sign, and the rest. What is shared ends between letters.
func fronted(words []string) string {
	var b strings.Builder
	before := ""
	for _, word := range words {
		n := shared(before, word)
		b.WriteByte(byte(sharedSign + n))
		b.WriteString(word[n:] + "\n")
		before = word
	}
	return b.String()
}

// shared counts the letters of ASCII that begin both words: of these a script, whose
// strings are of UTF-16, counts as many.
func shared(a, b string) int {
	n := 0
	for n < min(len(a), len(b), mostShared) && a[n] == b[n] && a[n] < utf8.RuneSelf {
		n++
	}
	return n
}

// packList packs where a word stands: how often, then for each how many places after
// the last, and where in it.
func packList(list []posting) []byte {
	data := binary.AppendUvarint(nil, uint64(len(list)))
	before := 0
	for _, p := range list {
		data = binary.AppendUvarint(data, uint64(p.place-before)<<bitsOfField|uint64(p.field))
		before = p.place
	}
	return data
}

// packPlace is a place as a line of fields with tabs between. A part leaves out what
// stands with its lesson, which comes before it in the same piece, and an address that
// follows from its heading.
func packPlace(p Place) []byte {
	fields := []string{p.Name, p.Part, p.Number, p.Address, p.Line}
	if p.Part != "" {
		_, id, _ := strings.Cut(p.Address, "#")
		if id == slug(p.Part) {
			id = ""
		}
		fields[0], fields[2], fields[3] = "", "", id
	}
	for n, f := range fields {
		fields[n] = strings.Join(strings.FieldsFunc(f, func(r rune) bool { return r == '\t' || r == '\n' || r == '\r' }), " ")
	}
	return []byte(strings.Join(fields, "\t") + "\n")
}

// slug is the id that most headings have. The script makes it as well
// (scripts/lookup.ts); an id that is another is written out.
func slug(heading string) string {
	return strings.Join(slugWords.FindAllString(apostrophes.Replace(strings.ToLower(heading)), -1), "-")
}

var (
	slugWords   = regexp.MustCompile(`[\p{L}\p{Nd}\p{M}]+`)
	apostrophes = strings.NewReplacer("'", "", "’", "")
)
