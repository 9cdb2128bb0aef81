//go:build judges

package trial

import (
	"os"
	"slices"
	"sync"
	"testing"
)

// axeSource is the program of axe-core, which runs inside the page it judges.
var axeSource = sync.OnceValues(func() (string, error) {
	source, err := os.ReadFile(root + "/testdata/node_modules/axe-core/axe.min.js")
	return string(source), err
})

// axeRun asks axe for every rule of WCAG 2.2 up to level AA and its best
// practices, and returns the violations as lines of text. None of these rules
// needs the style sheets fetched once more.
const axeRun = `axe.run(document, {
	runOnly: {type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]},
	rules: {"target-size": {enabled: true}},
	resultTypes: ["violations"],
	preload: false,
}).then(found => found.violations.flatMap(rule => rule.nodes.map(node =>
	rule.id + " at " + node.target.join(" ") + ": " + node.failureSummary.replace(/\s+/g, " ") + " | " + node.html.slice(0, 200))))`

// accessible returns what axe finds wrong with the page in the tab as it stands.
func (b *tab) accessible() []string {
	b.t.Helper()
	source, err := axeSource()
	if err != nil {
		b.t.Fatalf("no axe-core to judge with: %v", err)
	}
	if !ask[bool](b, "!!window.axe") {
		ask[bool](b, source+"\n;true")
	}
	return ask[[]string](b, axeRun)
}

// look is a window in which a page is judged: as it stands, or unfolded.
type look struct {
	scheme   string
	width    int64
	unfolded bool
}

// allLooks are for one page of each kind, twoLooks for the others: every page
// narrow and wide, light and dark, folded and not.
var (
	allLooks = []look{{"light", 360, false}, {"dark", 360, false}, {"light", 1280, true}, {"dark", 1280, true}}
	twoLooks = []look{allLooks[0], allLooks[3]}
	oneLook  = twoLooks[:1]
)

// judge lets axe judge pages of a handbook, each in its looks.
func (h *handbook) judge(t *testing.T, pages []string, looks func(address string) []look) {
	t.Helper()
	tour(t, pages, func(b *tab, address string) {
		b.size(360, 800)
		b.visit(h.home + address)
		b.ready()
		for _, l := range looks(address) {
			b.size(l.width, 800)
			b.scheme(l.scheme)
			if l.unfolded {
				b.unfold()
				b.ready()
			}
			for _, fault := range b.accessible() {
				b.t.Errorf("%s, %s, %d px: %s", address, l.scheme, l.width, fault)
			}
		}
	})
}

func TestAxe(t *testing.T) {
	t.Parallel()
	h := published(t)
	samples := h.samples(t)
	h.judge(t, h.toured(), func(address string) []look {
		// The book says what the other pages say, each judged for itself.
		if slices.Contains(samples, address) && kind(address) != "book" {
			return allLooks
		}
		return twoLooks
	})
}
