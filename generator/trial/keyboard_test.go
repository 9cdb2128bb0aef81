//go:build judges

package trial

import (
	"strconv"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// tabTo presses Tab until an element has the focus, and reports whether one of
// some presses came to it.
func (b *tab) tabTo(element string, presses int) bool {
	b.t.Helper()
	for range presses {
		b.do(chromedp.KeyEvent(kb.Tab))
		if ask[bool](b, "document.activeElement === ("+element+")") {
			return true
		}
	}
	return false
}

// TestHomeQuestionByKeyboard answers "Where is your pot now?" with Tab and
// Enter alone.
func TestHomeQuestionByKeyboard(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	for _, c := range settings(t).Table.States {
		b.visit(h.home + "index.html")
		if !b.tabTo(`document.querySelector("main a[href$='states/`+c.ID+`.html']")`, 30) {
			t.Errorf("the key Tab never comes to %s", c.Name)
			continue
		}
		b.do(chromedp.KeyEvent(kb.Enter))
		if !b.until(`document.readyState === "complete" && location.pathname.endsWith("/states/` + c.ID + `.html")`) {
			t.Errorf("the page of %s does not open", c.Name)
		}
	}
}

// TestQuestionsByKeyboard opens every answer of a lesson's questions with Tab
// and Enter: each reports whether it is right, and why.
func TestQuestionsByKeyboard(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	b.size(360, 640)
	b.visit(h.home + h.one(t, "lesson"))
	b.ready()
	const answers = `[...document.querySelectorAll(".question details")]`
	all := ask[int](b, answers+".length")
	if all < 2 {
		t.Fatalf("the lesson's questions have %d answers", all)
	}
	for n := range all {
		one := answers + "[" + strconv.Itoa(n) + "]"
		if !b.tabTo(one+`.querySelector("summary")`, 150) {
			t.Fatalf("the key Tab never comes to answer %d", n+1)
		}
		b.do(chromedp.KeyEvent(kb.Enter))
		if !b.until(one + `.querySelector(".right, .wrong").checkVisibility()`) {
			t.Errorf("answer %d does not open", n+1)
		}
	}
}
