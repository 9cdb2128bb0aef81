//go:build judges

package trial

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
)

// mark is one state in a page's strip of clay states.
type mark struct {
	Name  string  // as a screen reader says it
	To    string  // where it leads, from the handbook's root
	Top   float64 // of its place on the page, in CSS pixels
	Drawn bool
}

// marks reads the strip of the page.
const marks = `[...document.querySelectorAll("nav.strip ol a")].map(a => ({
	name: a.textContent.replace(/\s+/g, " ").trim(),
	to: a.pathname.split("/").slice(-2).join("/"),
	top: Math.round(a.closest("li").getBoundingClientRect().top),
	drawn: !!a.querySelector("svg")?.getBoundingClientRect().height,
}))`

// judgedName is the name of a state with the verdict for the page's medium.
var judgedName = regexp.MustCompile(`^[A-Z][a-z -]+: (yes|label|risky|no)$`)

func TestStripOfClayStates(t *testing.T) {
	h := published(t)
	b := open(t)
	withMedium := 0
	for _, width := range []int64{320, 360} {
		b.size(width, 700)
		for _, address := range h.pages {
			if k := kind(address); k == "home" || k == "not-found" {
				continue // they show the states in another way
			}
			b.visit(h.home + address)
			found := ask[[]mark](b, marks)
			rows := map[string]bool{}
			for _, m := range found {
				rows[fmt.Sprint(m.Top)] = true
				if !strings.HasPrefix(m.To, "states/") || !m.Drawn {
					t.Errorf("%s: the strip's %q leads to %s, drawn: %t", address, m.Name, m.To, m.Drawn)
				}
				if judgedName.MatchString(m.Name) {
					withMedium++
				} else if strings.Contains(m.Name, ":") {
					t.Errorf("%s: the strip says %q, which is no verdict", address, m.Name)
				}
			}
			if len(found) != 6 || len(rows) != 2 {
				t.Errorf("%s, %d px: the strip has %d states in %d rows, want 6 in 2", address, width, len(found), len(rows))
			}
		}
	}
	if withMedium == 0 {
		t.Error("no page's strip carries verdicts")
	}
}
