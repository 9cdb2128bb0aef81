//go:build judges

package trial

import (
	"sync/atomic"
	"testing"
)

// astray lists the captions that do not stand under their drawing, in its
// column.
const astray = `[...document.querySelectorAll("figcaption")].filter(words => {
	const under = words.getBoundingClientRect()
	const shown = words.previousElementSibling.getBoundingClientRect()
	return under.top < shown.bottom || under.top > shown.bottom + 24 || Math.abs(under.left - words.parentElement.getBoundingClientRect().left) > 1
}).map(words => words.textContent)`

func TestCaptionsStandUnderTheirDrawings(t *testing.T) {
	t.Parallel()
	h := published(t)
	var captions atomic.Int64
	tour(t, h.all(t, "lesson"), func(b *tab, address string) {
		b.visit(h.home + address)
		for _, width := range []int64{360, 800, 1280, 1920} {
			b.size(width, 900)
			for _, words := range ask[[]string](b, astray) {
				b.t.Errorf("%s, %d px: the caption %q does not stand under its drawing", address, width, words)
			}
		}
		captions.Add(ask[int64](b, `document.querySelectorAll("figcaption").length`))
	})
	if captions.Load() == 0 {
		t.Error("no lesson has a caption")
	}
}
