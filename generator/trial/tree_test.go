//go:build judges

package trial

import (
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/accessibility"
)

// rewriteTrees writes the trees of access anew; read the difference.
var rewriteTrees = flag.Bool("update-trees", false, "write testdata/trees/ anew")

// told are the roles that say nothing by themselves.
var told = map[string]bool{"none": true, "generic": true, "InlineTextBox": true, "LineBreak": true, "ListMarker": true, "RootWebArea": true, "StaticText": true}

// states are what a screen reader says of a thing besides its role and name.
var states = map[string]bool{"level": true, "invalid": true, "expanded": true, "pressed": true, "checked": true, "disabled": true, "required": true, "live": true, "busy": true}

// plainValue is a value of the protocol without its quotation marks.
func plainValue(v *accessibility.Value) string {
	if v == nil {
		return ""
	}
	var words string
	if json.Unmarshal([]byte(v.Value), &words) != nil { // a number, or a yes
		return string(v.Value)
	}
	return strings.TrimSpace(words)
}

// tree returns what the page in the tab tells a screen reader: a line for each thing,
// with its role, name, description, value and states, set in below what holds it.
func (b *tab) tree() string {
	b.t.Helper()
	nodes := call(b, accessibility.GetFullAXTree, accessibility.GetFullAXTreeParams{}).Nodes
	byID := map[accessibility.NodeID]*accessibility.Node{}
	for _, n := range nodes {
		byID[n.NodeID] = n
	}
	var out strings.Builder
	var walk func(n *accessibility.Node, above string, depth int)
	walk = func(n *accessibility.Node, above string, depth int) {
		role := plainValue(n.Role)
		if words := plainValue(n.Name); !n.Ignored && (!told[role] || role == "StaticText" && words != "" && words != above) {
			fmt.Fprintf(&out, "%s%s", strings.Repeat("  ", depth), role)
			for _, part := range []*accessibility.Value{n.Name, n.Value, n.Description} {
				if said := plainValue(part); said != "" {
					fmt.Fprintf(&out, " “%s”", said)
				}
			}
			for _, p := range n.Properties {
				if value := plainValue(p.Value); states[string(p.Name)] && value != "false" && value != "off" {
					fmt.Fprintf(&out, " %s=%s", p.Name, value)
				}
			}
			out.WriteByte('\n')
			above = words
			depth++
		}
		for _, id := range n.ChildIDs {
			if child := byID[id]; child != nil {
				walk(child, above, depth)
			}
		}
	}
	walk(nodes[0], "", 0)
	return out.String()
}

// TestTreesForScreenReaders compares what a lesson and a calculator tell a screen reader
// with the texts that a person has read.
func TestTreesForScreenReaders(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	b.size(360, 740)
	for name, address := range map[string]string{"lesson": "slip/coat-a-pot.html", "calculator": "calculators/slip-density.html"} {
		b.visit(h.home + address)
		b.ready()
		file, has := root+"/testdata/trees/"+name+".txt", b.tree()
		if *rewriteTrees {
			if err := os.WriteFile(file, []byte(has), 0o666); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if has == string(want) {
			continue
		}
		were, are := strings.Split(string(want), "\n"), strings.Split(has, "\n")
		for n := range min(len(were), len(are)) {
			if were[n] != are[n] {
				t.Errorf("%s, line %d: was %s, is %s; if it is right so: go test -tags judges ./generator/trial -run Trees -update-trees, and read the difference", file, n+1, were[n], are[n])
				break
			}
		}
		if len(were) != len(are) {
			t.Errorf("%s has %d lines, the page %d", file, len(were), len(are))
		}
	}
}
