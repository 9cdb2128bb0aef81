package press

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"os"
	"path"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/net/html"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/find"
)

// indexLimit is the most that the demo's index may have in all, in bytes as it travels.
const indexLimit = 60_000

// searched prepares the demo course with the script that looks for words.
func searched(t *testing.T, copy Copy) *Edition {
	t.Helper()
	c, _ := new(course.Reader).Load(os.DirFS("../../content"))
	b := shared()
	b.Find = "assets/find-AAAA.js"
	b.Files[b.Find] = []byte("1")
	e, err := Print(studio(t), read(t, c), b, copy)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// TestEveryPlaceIsThere looks for each place of the index, of the instructor's copy too,
// on the page that has it.
func TestEveryPlaceIsThere(t *testing.T) {
	for _, copy := range []Copy{{}, {Teaching: true}} {
		e := searched(t, copy)
		ids := map[string]map[string]bool{}
		kinds := map[find.Kind]int{}
		for _, p := range e.press.searched().Places() {
			kinds[p.Kind]++
			page, id, _ := strings.Cut(p.Address, "#")
			if ids[page] == nil {
				data, ok, err := e.File(page)
				if !ok || err != nil {
					t.Fatalf("%s: %t, %v", page, ok, err)
				}
				ids[page] = idsOf(t, data)
			}
			if id != "" && !ids[page][id] {
				t.Errorf("%s has no %s (%s, %s)", page, id, p.Name, p.Part)
			}
		}
		if want := int(find.Teaching); copy.Teaching && len(kinds) != want+1 || !copy.Teaching && len(kinds) != want {
			t.Errorf("places of %d kinds: %v", len(kinds), kinds)
		}
	}
}

// TestNamesAreThoseOfThePlaces wants the index to name each place that is no part of
// another, in the same order.
func TestNamesAreThoseOfThePlaces(t *testing.T) {
	for _, copy := range []Copy{{}, {Teaching: true}} {
		from := searched(t, copy).press.searched()
		named := func(places []find.Place) (lines []string) {
			for _, p := range places {
				if p.Part == "" {
					lines = append(lines, fmt.Sprint(p.Kind, p.Name, p.Also, p.Number, p.Address))
				}
			}
			return lines
		}
		if d := cmp.Diff(named(from.Places()), named(from.Names())); d != "" {
			t.Errorf("(-places +names):\n%s", d)
		}
	}
}

// TestNobodyWaitsForTheIndex wants a page to be printed without packing the index of the
// words, which reads the whole book, until the page asks for it.
func TestNobodyWaitsForTheIndex(t *testing.T) {
	e := searched(t, Copy{})
	packed := 0
	pack := e.press.index
	e.press.index = func() (*wordIndex, error) { packed++; return pack() }
	for _, at := range []string{address.Home, address.Book, "nothing.html"} {
		if _, _, err := e.File(at); err != nil || packed > 0 {
			t.Fatalf("%s: packed %d times, %v", at, packed, err)
		}
	}
	if _, _, err := e.File(address.Find); err != nil || packed == 0 {
		t.Errorf("the page that needs it does not ask for it, %v", err)
	}
}

// idsOf lists the ids on a page.
func idsOf(t *testing.T, page []byte) map[string]bool {
	t.Helper()
	root, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	ids := map[string]bool{}
	for _, n := range elements(root, func(n *html.Node) bool { return attribute(n, "id") != "" }) {
		ids[attribute(n, "id")] = true
	}
	return ids
}

// TestIndexOfTheDemoIsSmall holds what travels before the first answer, in all.
func TestIndexOfTheDemoIsSmall(t *testing.T) {
	e := searched(t, Copy{})
	size := 0
	for _, at := range addressesOf(t, e) {
		if !strings.HasPrefix(path.Base(at), "find-") || path.Ext(at) != ".bin" {
			continue
		}
		data, _, err := e.File(at)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := gzip.NewReader(bytes.NewReader(data)); err != nil {
			t.Errorf("%s: %v", at, err)
		}
		size += len(data)
	}
	if t.Logf("%d bytes of %d", size, indexLimit); size == 0 || size > indexLimit {
		t.Errorf("the index is %d bytes, the limit is %d", size, indexLimit)
	}
}

// TestWhatOnlyInstructorsReadIsNotFound wants no word of a note for teaching in a
// student's index.
func TestWhatOnlyInstructorsReadIsNotFound(t *testing.T) {
	const note = "Zebrafinch"
	c := small(t)
	c.Units[0].Lessons[0].Source = append(c.Units[0].Lessons[0].Source, "\n\n```teaching\n"+note+" first.\n```\n"...)
	for _, copy := range []Copy{{}, {Teaching: true}} {
		e, err := Print(studio(t), read(t, c), shared(), copy)
		if err != nil {
			t.Fatal(err)
		}
		found := false
		for _, p := range e.press.searched().Places() {
			found = found || strings.Contains(p.Text, note)
		}
		if found != copy.Teaching {
			t.Errorf("teaching %t: the note is found: %t", copy.Teaching, found)
		}
	}
}

// TestIndexOfALargeBookStandsOnSeveralPages prints the index of a book of 2,000 lessons
// and more: no page is too large, and each entry stands once.
func TestIndexOfALargeBookStandsOnSeveralPages(t *testing.T) {
	i := newPress(t, small(t))
	const entries = 20_000
	var places []find.Place
	for n := range entries {
		places = append(places, find.Place{Kind: find.Lesson, Number: "1.1", Name: fmt.Sprintf("%c lesson with a name of some length, number %d", 'a'+n%26, n), Address: fmt.Sprintf("unit/lesson-of-some-length-%d.html", n)})
	}
	seen := map[string]bool{}
	sheets := i.gathered.Index(find.Entries(i.Theme, places))
	for n, s := range sheets {
		if want := address.Further(address.Find, n+1); s.Address != want {
			t.Errorf("page %d is %s, want %s", n+1, s.Address, want)
		}
		for k := range pageKinds {
			if pageKinds[k].Template == "search" {
				s.Kind = &pageKinds[k].Kind
			}
		}
		page, err := i.printOne(s)
		if err != nil || len(page) > 2_000_000 {
			t.Fatalf("%s is %d bytes, %v", s.Address, len(page), err)
		}
		root, err := html.Parse(bytes.NewReader(page))
		if err != nil {
			t.Fatal(err)
		}
		for _, to := range linksOf(root) {
			if strings.HasPrefix(to, "unit/") && seen[to] {
				t.Errorf("%s stands there twice", to)
			}
			seen[to] = seen[to] || strings.HasPrefix(to, "unit/")
		}
	}
	count := 0
	for _, yes := range seen {
		if yes {
			count++
		}
	}
	if len(sheets) < 2 || count != entries {
		t.Errorf("%d entries on %d pages, want %d on several", count, len(sheets), entries)
	}
}
