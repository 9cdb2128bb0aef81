//go:build judges

package trial

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// document is a page as it was published, read without running it.
type document struct {
	source   string
	elements []*html.Node // in their order
	ids      map[string]*html.Node
}

// parse reads all pages of a handbook.
func (h *handbook) parse() (map[string]*document, error) {
	all := map[string]*document{}
	for _, address := range h.pages {
		source, err := os.ReadFile(filepath.Join(h.dir, filepath.FromSlash(address)))
		if err != nil {
			return nil, err
		}
		if all[address], err = parsePage(string(source)); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// parsePage reads one page.
func parsePage(source string) (*document, error) {
	root, err := html.Parse(strings.NewReader(source))
	if err != nil {
		return nil, err
	}
	d := &document{source: source, ids: map[string]*html.Node{}}
	for n := range root.Descendants() {
		if n.Type != html.ElementNode {
			continue
		}
		d.elements = append(d.elements, n)
		if id := attribute(n, "id"); id != "" && d.ids[id] == nil {
			d.ids[id] = n
		}
	}
	return d, nil
}

// document returns a page of the handbook.
func (h *handbook) document(t *testing.T, address string) *document {
	t.Helper()
	all, err := h.parsed()
	if err != nil {
		t.Fatal(err)
	}
	d := all[address]
	if d == nil {
		t.Fatalf("the handbook has no page %s", address)
	}
	return d
}

// attribute returns an attribute of an element; "" where it has none.
func attribute(n *html.Node, name string) string {
	for _, a := range n.Attr {
		if attributeName(a) == name {
			return a.Val
		}
	}
	return ""
}

// attributeName is an attribute's name as it stands in the page, "xlink:href".
func attributeName(a html.Attribute) string {
	if a.Namespace != "" {
		return a.Namespace + ":" + a.Key
	}
	return a.Key
}

// classed reports whether an element is of a class.
func classed(n *html.Node, class string) bool {
	return strings.Contains(" "+attribute(n, "class")+" ", " "+class+" ")
}

// hidden reports whether an element has the attribute that keeps it from being
// shown.
func hidden(n *html.Node) bool {
	return slices.ContainsFunc(n.Attr, func(a html.Attribute) bool { return a.Key == "hidden" })
}

// find lists the elements below one that have a name ("a") or a class (".ask").
func (d *document) find(below *html.Node, what string) []*html.Node {
	var found []*html.Node
	class, byClass := strings.CutPrefix(what, ".")
	for _, n := range d.elements {
		if (byClass && classed(n, class) || !byClass && n.Data == what) && within(n, below) {
			found = append(found, n)
		}
	}
	return found
}

// within reports whether an element is another one or below it; all are below nil.
func within(n, above *html.Node) bool {
	for above != nil && n != above {
		if n = n.Parent; n == nil {
			return false
		}
	}
	return true
}

// words returns the text of an element with single spaces.
func words(n *html.Node) string {
	var all strings.Builder
	for below := range n.Descendants() {
		if below.Type == html.TextNode {
			all.WriteString(below.Data)
		}
	}
	return strings.Join(strings.Fields(all.String()), " ")
}

// markup returns the beginning of an element's source, to be told by.
func markup(n *html.Node) string {
	var all strings.Builder
	if err := html.Render(&all, n); err != nil {
		return "<" + n.Data + ">"
	}
	return all.String()[:min(160, all.Len())]
}
