package presstest

import (
	"io/fs"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/generator/course"
)

// Parse parses a page or a piece of one.
func Parse(t testing.TB, page string) *html.Node {
	t.Helper()
	root, err := html.Parse(strings.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	return root
}

// Elements lists the elements of a page that a test asks for.
func Elements(root *html.Node, want func(*html.Node) bool) []*html.Node {
	var all []*html.Node
	for n := range root.Descendants() {
		if n.Type == html.ElementNode && want(n) {
			all = append(all, n)
		}
	}
	return all
}

// Called asks for elements of a name.
func Called(name string) func(*html.Node) bool {
	return func(n *html.Node) bool { return n.Data == name }
}

// Classed asks for elements of a class.
func Classed(class string) func(*html.Node) bool {
	return func(n *html.Node) bool { return slices.Contains(strings.Fields(Attribute(n, "class")), class) }
}

// Attribute gives an attribute, empty when it is not there.
func Attribute(n *html.Node, key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

// Text gives the text of an element, its white space made one space.
func Text(n *html.Node) string {
	var all strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			all.WriteString(d.Data)
		}
	}
	return strings.Join(strings.Fields(all.String()), " ")
}

// First gives the first element of a page with a class.
func First(t testing.TB, root *html.Node, class string) *html.Node {
	t.Helper()
	all := Elements(root, Classed(class))
	if len(all) == 0 {
		t.Fatalf("nothing of the class %q", class)
	}
	return all[0]
}

// Links lists where the links of an element lead.
func Links(n *html.Node) []string {
	var all []string
	for _, a := range Elements(n, Called("a")) {
		all = append(all, Attribute(a, "href"))
	}
	return all
}

// Holds wants each text in a piece of a page.
func Holds(t testing.TB, page string, wanted ...string) {
	t.Helper()
	for _, want := range wanted {
		if !strings.Contains(page, want) {
			t.Errorf("lacks %s", want)
		}
	}
	if t.Failed() {
		t.Log(page)
	}
}

// Once wants each text in a piece of a page once.
func Once(t testing.TB, page string, wanted ...string) {
	t.Helper()
	for _, want := range wanted {
		if n := strings.Count(page, want); n != 1 {
			t.Errorf("%d times %s", n, want)
		}
	}
	if t.Failed() {
		t.Log(page)
	}
}

// shownHazards finds the hazards that a piece of a page leads to.
var shownHazards = regexp.MustCompile(`hazards\.html#([a-z-]+)"`)

// Cared wants a piece of a page to lead to the hazards of some rows of a table, and
// to say who may; words says those of a key.
func Cared(t testing.TB, d *course.Decoration, words func(key string) string, piece string, rows ...course.Care) {
	t.Helper()
	hazards, who := d.HazardsOf(rows...)
	var ids, shown []string
	for _, h := range hazards {
		ids = append(ids, h.ID)
	}
	for _, m := range shownHazards.FindAllStringSubmatch(piece, -1) {
		shown = append(shown, m[1])
	}
	if !slices.Equal(ids, shown) {
		t.Errorf("it shows the hazards %q, want %q", shown, ids)
	}
	if said := map[course.Who]string{course.WithInstructor: words("who-with-instructor"), course.Instructor: words("who-instructor")}[who]; !strings.Contains(piece, said) {
		t.Errorf("it does not say %q", said)
	}
}

// Demo loads the demo course from its folder, as seen from the test.
func Demo(t testing.TB, folder string) *course.Course {
	t.Helper()
	content := os.DirFS(folder)
	if _, err := fs.Stat(content, "course.yaml"); err != nil {
		t.Fatal(err)
	}
	c, found := new(course.Reader).Load(content)
	if found.Stop() {
		t.Fatal(found)
	}
	return c
}
