package press

import (
	"bytes"
	"io/fs"
	"maps"
	"net/url"
	"path"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/calculators/catalog"
	"slipbook/generator/course"
	"slipbook/generator/pool"
	"slipbook/generator/press/presstest"
	"slipbook/generator/press/theme"
	"slipbook/themes"
)

// What the rooms' tests use too.
var (
	small, harmful, parted, read, shared = presstest.Small, presstest.Harmful, presstest.Parted, presstest.Read, presstest.Bundle
	elements, called, classed, first     = presstest.Elements, presstest.Called, presstest.Classed, presstest.First
	attribute, text, linksOf             = presstest.Attribute, presstest.Text, presstest.Links
)

// opened reads a theme.
func opened(t testing.TB, theme fs.FS) *theme.Theme {
	t.Helper()
	opened, err := Open(theme)
	if err != nil {
		t.Fatal(err)
	}
	return opened
}

// studio reads the studio theme.
func studio(t testing.TB) *theme.Theme {
	t.Helper()
	theme, err := themes.Open("studio", "en-GB")
	if err != nil {
		t.Fatal(err)
	}
	return opened(t, theme)
}

// newPress makes an impression of a course in the studio theme.
func newPress(t testing.TB, c *course.Course) *impression {
	t.Helper()
	i, err := prepare(studio(t), read(t, c), shared(), Copy{})
	if err != nil {
		t.Fatal(err)
	}
	return i
}

// edition is what was printed, by address.
type edition = map[string][]byte

// printed prints a course for students.
func printed(t testing.TB, c *course.Course) edition {
	t.Helper()
	e, err := tryPrint(t, studio(t), c, Copy{})
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// forTeaching prints the instructor's copy of a course.
func forTeaching(t testing.TB, c *course.Course) edition {
	t.Helper()
	e, err := tryPrint(t, studio(t), c, Copy{Teaching: true})
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// tryPrint prints a course in a theme, which may go wrong.
func tryPrint(t testing.TB, theme *theme.Theme, c *course.Course, copy Copy) (edition, error) {
	t.Helper()
	e, err := Print(theme, read(t, c), shared(), copy)
	if err != nil {
		return nil, err
	}
	return everything(e)
}

// addressesOf returns the address of every page and file of an edition.
func addressesOf(t *testing.T, e *Edition) []string {
	t.Helper()
	all, err := e.Addresses()
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// everything prints all of an edition, as many pages at once as there are processors.
// Of several errors that of the first address is returned.
func everything(e *Edition) (edition, error) {
	addresses, err := e.Addresses()
	if err != nil {
		return nil, err
	}
	data := make([][]byte, len(addresses))
	err = pool.Try(len(addresses), 1, func(n int) (err error) {
		data[n], _, err = e.File(addresses[n])
		return err
	})
	if err != nil {
		return nil, err
	}
	all := edition{}
	for n, address := range addresses {
		all[address] = data[n]
	}
	return all, nil
}

// pageOf parses one page of an edition.
func pageOf(t testing.TB, e edition, address string) *html.Node {
	t.Helper()
	data, ok := e[address]
	if !ok {
		t.Fatalf("no page %s", address)
	}
	root, err := html.Parse(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return root
}

func TestPrintMakesEveryPage(t *testing.T) {
	e := printed(t, small(t))
	want := []string{
		"index.html", "contents.html", "glossary.html", "404.html", "calculators/index.html", "chart.html",
		"hazards.html", "notices.html", "tried.html", "search.html", "leach/index.html", "leach/may-i-eat.html", "cards/index.html", "cards/coloured-slip.html", "cards/stain-wash.html", "book.html", "handbook.epub",
		"media/coloured-slip.html", "media/stain-wash.html",
		"slip/index.html", "slip/mix.html", "slip/measure.html", "wash/index.html", "wash/thin.html", "wash/wipe.html",
		"states/wet.html", "states/leather-hard.html", "states/bone-dry.html",
		"states/bisque.html", "states/unfired-glaze.html", "states/glaze-fired.html",
	}
	for _, c := range catalog.All() {
		want = append(want, "calculators/"+c.Name+".html")
	}
	want = slices.AppendSeq(want, maps.Keys(shared().Files))
	for address := range e {
		if strings.HasPrefix(address, "assets/table-") || strings.HasPrefix(address, "assets/words-") || strings.HasPrefix(address, "assets/chapters-") { // named by what they say
			want = append(want, address)
		}
	}
	slices.Sort(want)
	if got := slices.Sorted(maps.Keys(e)); !slices.Equal(got, want) {
		t.Errorf("printed\n%v\nwant\n%v", got, want)
	}
}

func TestPrintIsDeterministic(t *testing.T) {
	first, second := printed(t, small(t)), printed(t, small(t))
	for address, data := range first {
		if !bytes.Equal(data, second[address]) {
			t.Errorf("%s differs between two printings", address)
		}
	}
}

// TestEveryPage holds each page against what all pages promise.
func TestEveryPage(t *testing.T) {
	e := printed(t, small(t))
	for _, address := range slices.Sorted(maps.Keys(e)) {
		if path.Ext(address) != ".html" {
			continue
		}
		t.Run(address, func(t *testing.T) {
			root := pageOf(t, e, address)
			if !bytes.HasPrefix(e[address], []byte("<!doctype html>\n")) {
				t.Error("no doctype at its start")
			}
			if n := len(elements(root, called("h1"))); n != 1 {
				t.Errorf("%d h1 elements", n)
			}
			if n := len(elements(root, called("main"))); n != 1 {
				t.Errorf("%d main elements", n)
			}
			checkHead(t, root)
			checkIDs(t, root)
			checkHeadingLevels(t, root)
			checkNothingInline(t, root)
			checkAddresses(t, e, address, root)
		})
	}
}

// checkHead looks for what must stand in a page's head.
func checkHead(t *testing.T, root *html.Node) {
	t.Helper()
	if language := attribute(elements(root, called("html"))[0], "lang"); language != "en-GB" {
		t.Errorf("language %q", language)
	}
	if title := elements(root, called("title")); len(title) != 1 || !strings.Contains(text(title[0]), "Colour at the bench") {
		t.Error("the title does not name the handbook")
	}
	said := map[string]string{}
	for _, m := range elements(root, called("meta")) {
		said[attribute(m, "name")+attribute(m, "http-equiv")+attribute(m, "charset")] = attribute(m, "content")
	}
	for _, name := range []string{"description", "viewport", "dcterms.language", "Content-Security-Policy"} {
		if said[name] == "" {
			t.Errorf("no meta %s", name)
		}
	}
	if _, ok := said["utf-8"]; !ok {
		t.Error("no charset")
	}
	desk := len(elements(root, func(n *html.Node) bool { return attribute(n, "data-calculator") != "" })) > 0
	if allowed := strings.Contains(said["Content-Security-Policy"], "'wasm-unsafe-eval'"); allowed != desk {
		t.Errorf("has a calculator: %v, but allows WebAssembly: %v", desk, allowed)
	}
}

// checkIDs demands that ids are used once, and that what names an id finds it.
func checkIDs(t *testing.T, root *html.Node) {
	t.Helper()
	seen := map[string]bool{}
	for _, n := range elements(root, func(n *html.Node) bool { return attribute(n, "id") != "" }) {
		id := attribute(n, "id")
		if seen[id] {
			t.Errorf("two elements with the id %q", id)
		}
		seen[id] = true
	}
	for _, n := range elements(root, func(n *html.Node) bool { return true }) {
		for _, key := range []string{"aria-labelledby", "aria-describedby", "for"} {
			for _, id := range strings.Fields(attribute(n, key)) {
				if !seen[id] {
					t.Errorf("%s of <%s> names %q, which is not there", key, n.Data, id)
				}
			}
		}
	}
}

// checkHeadingLevels demands that headings go down one level at a time.
func checkHeadingLevels(t *testing.T, root *html.Node) {
	t.Helper()
	last := 0
	for _, h := range elements(root, func(n *html.Node) bool { return len(n.Data) == 2 && n.Data[0] == 'h' && n.Data[1] <= '6' }) {
		level := int(h.Data[1] - '0')
		if level > last+1 {
			t.Errorf("%s %q follows level %d", h.Data, text(h), last)
		}
		last = level
	}
}

// checkNothingInline demands what the Content-Security-Policy does: no styles
// and no scripts in the page itself.
func checkNothingInline(t *testing.T, root *html.Node) {
	t.Helper()
	for _, n := range elements(root, func(n *html.Node) bool { return true }) {
		if n.Data == "style" || n.Data == "script" && n.FirstChild != nil {
			t.Errorf("an inline <%s>", n.Data)
		}
		for _, a := range n.Attr {
			if a.Key == "style" || strings.HasPrefix(a.Key, "on") {
				t.Errorf("<%s> has the attribute %s", n.Data, a.Key)
			}
		}
	}
}

// checkAddresses follows every address of a page: all are relative, and lead
// to a file of the edition and to an id on it.
func checkAddresses(t *testing.T, e edition, from string, root *html.Node) {
	t.Helper()
	for _, n := range elements(root, func(n *html.Node) bool { return n.Data != "base" }) {
		for _, a := range n.Attr {
			if a.Key != "href" && a.Key != "src" && a.Key != "data-engine" && a.Key != "data-carried" {
				continue
			}
			u, err := url.Parse(a.Val)
			if err != nil || u.Scheme != "" || u.Host != "" || path.IsAbs(u.Path) {
				t.Errorf("address %q is not relative", a.Val)
				continue
			}
			to := from
			if u.Path != "" {
				to = path.Join(path.Dir(from), u.Path)
			}
			if _, ok := e[to]; !ok {
				t.Errorf("address %q leads to %s, which is not there", a.Val, to)
				continue
			}
			if u.Fragment != "" && len(elements(pageOf(t, e, to), func(n *html.Node) bool { return attribute(n, "id") == u.Fragment })) == 0 {
				t.Errorf("address %q leads to no place on %s", a.Val, to)
			}
		}
	}
}
