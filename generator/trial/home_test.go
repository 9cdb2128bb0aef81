//go:build judges

package trial

import (
	"strings"
	"testing"
)

// TestHomeQuestionByTouch answers "Where is your pot now?" with a finger at
// 360 px for each state: the page that opens is that state's, says how to tell,
// and plans with the state already chosen.
func TestHomeQuestionByTouch(t *testing.T) {
	t.Parallel()
	h := published(t)
	for _, c := range settings(t).Table.States {
		t.Run(c.ID, func(t *testing.T) {
			b := phone(t)
			b.visit(h.home + "index.html")
			b.tap(`[...document.querySelectorAll("main a")].find(a => a.href.endsWith("/states/` + c.ID + `.html"))`)
			if !b.until(`document.readyState === "complete" && location.pathname.endsWith("/states/` + c.ID + `.html")`) {
				t.Fatal("the state's page does not open")
			}
			if h1 := ask[string](b, `document.querySelector("h1").textContent`); !strings.EqualFold(h1, c.Name) {
				t.Errorf("the page is headed %q", h1)
			}
			if chosen := ask[string](b, `document.querySelector('form[data-calculator="stage-plan"] [name=state]').value`); chosen != c.ID {
				t.Errorf("the plan starts from %q", chosen)
			}
			if said, _ := b.heard(); len(said) > 0 {
				t.Errorf("on the console: %v", said)
			}
		})
	}
}
