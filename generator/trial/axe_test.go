//go:build judges

package trial

import (
	"os"
	"sync"
	"testing"
)

// axeSource is the program of axe-core, which runs inside the page it judges.
var axeSource = sync.OnceValues(func() (string, error) {
	source, err := os.ReadFile(root + "/testdata/node_modules/axe-core/axe.min.js")
	return string(source), err
})

// axeRun asks axe for every rule of WCAG 2.2 up to level AA and its best
// practices, and gives the violations as lines of text.
const axeRun = `axe.run(document, {
	runOnly: {type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]},
	rules: {"target-size": {enabled: true}},
	resultTypes: ["violations"],
}).then(found => found.violations.flatMap(rule => rule.nodes.map(node =>
	rule.id + " at " + node.target.join(" ") + ": " + node.failureSummary.replace(/\s+/g, " ") + " | " + node.html.slice(0, 200))))`

// accessible gives what axe finds wrong with the page in the tab as it stands.
func (b *tab) accessible() []string {
	b.t.Helper()
	source, err := axeSource()
	if err != nil {
		b.t.Fatalf("no axe-core to judge with: %v", err)
	}
	ask[bool](b, source+"\n;true")
	return ask[[]string](b, axeRun)
}

func TestAxe(t *testing.T) {
	h := published(t)
	for _, scheme := range []string{"light", "dark"} {
		for _, width := range []int64{360, 1280} {
			b := open(t)
			b.size(width, 800)
			b.scheme(scheme)
			for _, address := range h.pages {
				b.visit(h.home + address)
				for _, fault := range b.accessible() {
					t.Errorf("%s, %s, %d px: %s", address, scheme, width, fault)
				}
			}
		}
	}
}
