package setting

import (
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/press/presstest"
)

// TestTileSaysHowItCameOut wants a tile that a lesson cites to say how it came out, and
// one that is no evidence to say so to whoever does not see a title.
func TestTileSaysHowItCameOut(t *testing.T) {
	c := presstest.Small(t)
	c.Tiles = []*course.Tile{
		{Code: "R1", Fired: "2026-02-28", Verdict: course.TileFailed, Clear: course.NoClear},
		{Code: "R2", Fired: "2026-03-28", Verdict: course.TileGood, Clear: course.NoClear},
		{Code: "R3", Clear: course.NoClear},
		{Code: "R4", Fired: "2026-03-28", Clear: course.NoClear},
	}
	page, _ := c.FindPage(lesson)
	page.Source = []byte("[One](tile:R1), [two](tile:r2), [three](tile:R3 \"Own words\"), [four](tile:R4).\n")
	html := setOf(t, c, false, false)
	presstest.Once(t, html,
		`<a href="../tiles/index.html#tile.r1" title="Tile R1 on the wall: failed">One <span class="unseen">(failed)</span></a>`,
		`<a href="../tiles/index.html#tile.r2" title="Tile R2 on the wall: good">two</a>`,
		`<a href="../tiles/index.html#tile.r3" title="Own words">three <span class="unseen">(not fired yet)</span></a>`,
		`four <span class="unseen">(not judged yet)</span></a>`)
	if n := strings.Count(html, "unseen"); n != 3 {
		t.Errorf("%d tiles are said to be no evidence: %s", n, html)
	}
}
