//go:build judges

package trial

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
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

// judgedName is the name of a state with the verdict for the page's medium, and
// with who may, where that is not everybody.
var judgedName = regexp.MustCompile(`^[A-Z][a-z -]+: (yes|label|risky|no)( ◆ (with the instructor|instructor only))?$`)

// hasStrip reports whether a page shows the strip of clay states: the others show
// the states in another way, or are sheets to print.
func hasStrip(address string) bool {
	return !slices.Contains([]string{"home", "not-found", "course-card", "card", "book", "calculator", "hazards", "notices", "tried", "phone", "search",
		"materials", "material", "recipes", "recipe", "labels", "label", "wall", "classes", "class", "stock", "paper", "poster", "form", "leach", "eat"}, kind(address))
}

// strip looks at the strip of the page in the tab, a narrow one, and counts the
// states in it with a verdict.
func (b *tab) strip(address string) (judged int) {
	b.t.Helper()
	found := ask[[]mark](b, marks)
	rows := map[string]bool{}
	for _, m := range found {
		rows[fmt.Sprint(m.Top)] = true
		if !strings.HasPrefix(m.To, "states/") && !(kind(address) == "medium" && strings.HasPrefix(m.To, "media/")) || !m.Drawn {
			b.t.Errorf("%s: the strip's %q leads to %s, drawn: %t", address, m.Name, m.To, m.Drawn)
		}
		if judgedName.MatchString(m.Name) {
			judged++
		} else if strings.Contains(m.Name, ":") {
			b.t.Errorf("%s: the strip says %q, which is no verdict", address, m.Name)
		}
	}
	if len(found) != 6 || len(rows) != 2 {
		b.t.Errorf("%s: the strip has %d states in %d rows, want 6 in 2", address, len(found), len(rows))
	}
	return judged
}
