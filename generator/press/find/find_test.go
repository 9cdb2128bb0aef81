package find

import (
	"encoding/binary"
	"encoding/json"
	"fmt"
	"path"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"slipbook/generator/assets"
	"slipbook/generator/press/presstest"
)

func rules(t testing.TB) Rules {
	t.Helper()
	return NewRules(presstest.Studio(t))
}

// TestWordsAreMadeAlike is compared with the script by testdata/scripts/fold.test.js,
// which has the same cases.
func TestWordsAreMadeAlike(t *testing.T) {
	r := rules(t)
	for _, c := range []struct {
		group string
		stem  string
	}{
		{"glaze glazes glazed glazing Glazing", "glaz"},
		{"slip slips slipped slipping", "slip"},
		{"dry dries dried drying", "dr"},
		{"body bodies", "bod"},
		{"glass glasses", "glas"},
		{"crack cracks cracked cracking", "crack"},
		{"engobé ENGOBE engobes", "engob"},
		{"red", "red"},
		{"speed", "sped"},
		{"1,45 1.45", "1.45"},
	} {
		for word := range strings.FieldsSeq(c.group) {
			if got := r.Stem(Fold(word)); got != c.stem {
				t.Errorf("%s becomes %q, want %q", word, got, c.stem)
			}
		}
	}
	if got, want := r.Words("What’s “bone-dry” at cone6? Don't ask 1.45."), []string{"bon", "dr", "con", "6", "ask", "1.45"}; !slices.Equal(got, want) {
		t.Errorf("words: %q, want %q", got, want)
	}
}

// packed packs places and returns the head and the files by name.
func packed(t testing.TB, places []Place) (head, map[string][]byte) {
	t.Helper()
	files := map[string][]byte{}
	parcel, err := Pack(presstest.Studio(t), places, func(name string, data []byte) (assets.Parcel, error) {
		if _, twice := files[name+".bin"]; twice {
			t.Fatalf("%s is made twice", name)
		}
		files[name+".bin"] = slices.Clone(data)
		return assets.Parcel{Packed: "assets/" + name + ".bin", Carried: "assets/" + name + ".js"}, nil
	})
	if err != nil {
		t.Fatal(err)
	}
	var h head
	if err := json.Unmarshal(files[path.Base(parcel.Packed)], &h); err != nil {
		t.Fatal(err)
	}
	return h, files
}

// unfronted reads front-coded words as the script does.
func unfronted(t testing.TB, text string) (words []string) {
	t.Helper()
	before := ""
	for line := range strings.SplitSeq(strings.TrimSuffix(text, "\n"), "\n") {
		if line == "" {
			return words
		}
		before = before[:line[0]-sharedSign] + line[1:]
		words = append(words, before)
	}
	return words
}

// unpackedLists reads lists of where words stand as the script does.
func unpackedLists(t testing.TB, data []byte) (lists [][]posting) {
	t.Helper()
	next := func() int {
		v, n := binary.Uvarint(data)
		if n <= 0 {
			t.Fatal("a list ends too early")
		}
		data = data[n:]
		return int(v)
	}
	for len(data) > 0 {
		list, place := make([]posting, next()), 0
		for n := range list {
			step := next()
			place += step >> bitsOfField
			list[n] = posting{place: place, field: step & (1<<bitsOfField - 1)}
		}
		lists = append(lists, list)
	}
	return lists
}

// many are places as of lessons with parts, each with words of its own.
func many(lessons int) []Place {
	var all []Place
	for n := range lessons {
		name := fmt.Sprintf("Lesson %s", word(n))
		all = append(all, Place{Kind: Lesson, Name: name, Address: fmt.Sprintf("u/l%d.html", n), Line: "Stir the slip.", Text: "Stir " + word(n*7), Parts: 10, Number: "1.1"})
		for p := range 10 {
			heading := fmt.Sprintf("Part %s", word(p))
			all = append(all, Place{Kind: Lesson, Name: name, Part: heading, Address: fmt.Sprintf("u/l%d.html#%s", n, slug(heading)), Line: "A line of it, as long as one may be here", Text: strings.Repeat(word(n+p)+" slip "+word(p)+" ", 3)})
		}
	}
	return all
}

// word makes a word of letters from a number.
func word(n int) string {
	letters := "bdfgklmnprtv"
	w := ""
	for range 4 {
		w += string(letters[n%len(letters)]) + string("aou"[n%3])
		n /= len(letters)
	}
	return w
}

func TestIndexSaysWhereWordsStand(t *testing.T) {
	places := []Place{
		{Kind: Word, Name: "Inlay", Also: []string{"mishima line", "old inlay"}, Address: "glossary.html#inlay", Line: "A line\tthat is\nfilled.", Text: "A line that is filled with slip."},
		{Kind: Lesson, Name: "Inlay a line", Address: "slip/inlay.html", Parts: 2, Number: "2.1", Text: "Cut."},
		{Kind: Lesson, Name: "Inlay a line", Part: "Fill twice", Address: "slip/inlay.html#fill-twice", Text: "Slip, then slip again."},
		{Kind: Lesson, Name: "Inlay a line", Part: "Scrape", Address: "slip/inlay.html#scrape-2", Text: "Cut."},
	}
	h, files := packed(t, places)
	words := unfronted(t, h.Words)
	lists := unpackedLists(t, files["find-words-1.bin"])
	got := map[string][]posting{}
	for n, w := range words {
		got[w] = lists[n]
	}
	for w, want := range map[string][]posting{
		"inla":    {{place: 0, field: 1}, {place: 1, field: 2}},
		"mishima": {{place: 0, field: 2}},
		"lin":     {{place: 0, field: 2}, {place: 1, field: 2}},
		"slip":    {{place: 0, field: inText}, {place: 2, field: inText}},
		"cut":     {{place: 1, field: inText}, {place: 3, field: inText}},
		"fil":     {{place: 0, field: inText}, {place: 2, field: inHeading}},
	} {
		if !reflect.DeepEqual(got[w], want) {
			t.Errorf("%q stands at %v, want %v", w, got[w], want)
		}
	}
	rows := "Inlay\t\t\tglossary.html#inlay\tA line that is filled.\n" + "Inlay a line\t\t2.1\tslip/inlay.html\t\n" + "\tFill twice\t\t\t\n" + "\tScrape\t\tscrape-2\t\n"
	if string(files["find-places-1.bin"]) != rows {
		t.Errorf("places are\n%s\nwant\n%s", files["find-places-1.bin"], rows)
	}
	if !slices.Equal(h.Parts, [][2]int{{1, 2}}) || h.Kinds[Lesson].Count != 3 || h.Kinds[Word].Count != 1 || h.Count != 4 {
		t.Errorf("the head says %v, %v", h.Parts, h.Kinds)
	}
}

// TestLargeIndexIsInPieces packs 2,000 lessons: no piece is large, all begin with a
// whole page, and every word and place is in one.
func TestLargeIndexIsInPieces(t *testing.T) {
	places := many(2000)
	h, files := packed(t, places)
	for name, data := range files {
		if most := max(postingsPiece, placesPiece) * 5 / 4; !strings.Contains(name, "head") && len(data) > most {
			t.Errorf("%s: %d bytes, want %d at most", name, len(data), most)
		}
	}
	if len(h.Postings) < 4 || len(h.Places) < 10 {
		t.Errorf("the words stand in %d pieces, the places in %d", len(h.Postings), len(h.Places))
	}
	words, seen := len(unfronted(t, h.Words)), 0
	for n, p := range h.Postings {
		if p.First != seen {
			t.Errorf("piece %d begins with word %d, want %d", n, p.First, seen)
		}
		seen += len(unpackedLists(t, files[p.Packed]))
	}
	if seen != words || words == 0 {
		t.Errorf("%d lists of %d words", seen, words)
	}
	seen = 0
	for n, p := range h.Places {
		if p.First != seen || places[p.First].Part != "" {
			t.Errorf("piece %d begins with place %d, want %d, a whole page", n, p.First, seen)
		}
		seen += strings.Count(string(files[p.Packed]), "\n")
	}
	if seen != len(places) {
		t.Errorf("%d of %d places", seen, len(places))
	}
}

func TestIndexIsTheSameEachTime(t *testing.T) {
	h, files := packed(t, many(60))
	for range 3 {
		if again, same := packed(t, many(60)); !reflect.DeepEqual(h, again) || !reflect.DeepEqual(files, same) {
			t.Fatal("the index differs from one time to the next")
		}
	}
}

func TestFrequentWordsAreLeftOutOfTexts(t *testing.T) {
	for _, c := range []struct {
		n     int
		often bool
		want  bool
	}{{20, false, false}, {30, false, false}, {31, false, true}, {31, true, false}, {200, true, false}, {201, true, true}} {
		if got := tellsLittle(c.n, 1000, c.often); got != c.want {
			t.Errorf("in %d of 1000, often %t: %t, want %t", c.n, c.often, got, c.want)
		}
	}
	if tellsLittle(fewPlaces, 25, false) {
		t.Error("in a small course words are left out")
	}
}

func TestEntriesAreThoseOfABook(t *testing.T) {
	places := []Place{
		{Kind: Word, Name: "Éclair slip", Address: "g#e"},
		{Kind: Word, Name: "Inlay", Also: []string{"mishima", "slips", "inlays", "Mishima"}, Address: "g#inlay"},
		{Kind: Medium, Name: "Slip", Also: []string{"slips"}, Address: "m/slip"},
		{Kind: Lesson, Name: "drawing", Address: "l", Number: "2.1"},
		{Kind: Lesson, Name: "drawing", Part: "Part", Address: "l#part"},
		{Kind: Page, Name: "“10 pots”", Address: "p"},
		{Kind: Lesson, Name: "A slip of clay", Address: "a"},
		{Kind: Word, Name: "A", Address: "g#a"},
	}
	var got []string
	for _, e := range Entries(presstest.Studio(t), places) {
		got = append(got, e.Letter()+" "+e.Name+" > "+e.See+" "+e.Kind+" "+e.Number+" "+e.Address)
	}
	want := []string{"0 “10 pots” >  page  p", "A A >  word  g#a", "D drawing >  lesson 2.1 l", "E Éclair slip >  word  g#e", "I Inlay >  word  g#inlay", "M mishima > Inlay word  g#inlay", "S Slip >  medium  m/slip", "S A slip of clay >  lesson  a"}
	if !slices.Equal(got, want) {
		t.Errorf("entries:\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

func TestLinesEndWithAWord(t *testing.T) {
	for _, c := range [][2]string{{"a  short\nline", "a short line"}, {"ten letters, then more", "ten letters …"}, {"abcdefghijklmnopqrst", "abcdefghijklmn …"}} {
		if got := cut(c[0], 14); got != c[1] {
			t.Errorf("%q is cut to %q, want %q", c[0], got, c[1])
		}
	}
	if got := read("<p>a <em>b</em>c &amp; d</p><p>e</p>"); strings.Join(strings.Fields(got), " ") != "a bc & d e" {
		t.Errorf("read %q", got)
	}
}

// wordsByExpression says in one line what apart finds; the script has the same.
var wordsByExpression = regexp.MustCompile(`\p{L}+|\p{Nd}+(?:[.,]\p{Nd}+)*`)

// FuzzPacked takes a text apart, packs its words and where they stand, and reads them again.
func FuzzPacked(f *testing.F) {
	f.Add("slip slippery slop", uint16(3), uint8(1))
	f.Add("é éa ünder under", uint16(60000), uint8(7))
	f.Add("1.45,2 .5 6. 7,,8 a1b 12 g/mL \xff9\xff", uint16(1), uint8(1))
	f.Fuzz(func(t *testing.T, text string, step uint16, field uint8) {
		words := slices.Collect(apart(Fold(text)))
		if want := wordsByExpression.FindAllString(Fold(text), -1); !slices.Equal(words, want) {
			t.Errorf("%q has the words %q, want %q", text, words, want)
		}
		slices.Sort(words)
		words = slices.Compact(words)
		if !utf8.ValidString(text) {
			return
		}
		if got := unfronted(t, fronted(words)); !slices.Equal(got, words) {
			t.Errorf("%q became %q", words, got)
		}
		var list []posting
		for n := range words {
			list = append(list, posting{place: n * int(step), field: int(field) % (1 << bitsOfField)})
		}
		if got := unpackedLists(t, packList(list)); len(got) != 1 || len(list) > 0 && !reflect.DeepEqual(got[0], list) {
			t.Errorf("%v became %v", list, got)
		}
	})
}
