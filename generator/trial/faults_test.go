//go:build judges

package trial

import (
	"path"
	"slices"
	"strings"
	"testing"
)

// TestFaultsOfEveryMedium wants a part of the page of what goes wrong for each
// medium of the chart, with rows in it, and a way there from the medium's page.
func TestFaultsOfEveryMedium(t *testing.T) {
	t.Parallel()
	h := published(t)
	d := h.document(t, "faults.html")
	media := h.all(t, "medium")
	chart := h.document(t, "chart.html").links()
	for _, page := range media {
		if !slices.ContainsFunc(chart, func(to string) bool { return strings.HasPrefix(to, page) }) {
			t.Errorf("the chart does not lead to %s", page)
		}
		id := strings.TrimSuffix(path.Base(page), ".html")
		at := d.ids[id]
		if at == nil {
			t.Errorf("%s has no part on the page of what goes wrong", page)
			continue
		}
		if name := words(h.document(t, page).find(nil, "h1")[0]); words(at) != name {
			t.Errorf("the part of %s is headed %q", name, words(at))
		}
		rows := 0
		for _, row := range d.find(at.Parent, "tr") {
			if cells := append(d.find(row, "th"), d.find(row, "td")...); len(cells) == 2 && words(cells[0]) != "" && words(cells[1]) != "" {
				rows++
			}
		}
		if rows < 2 { // the first is the heading
			t.Errorf("nothing goes wrong with %s", page)
		}
		link := "../faults.html#" + id
		if !slices.Contains(h.document(t, page).links(), link) {
			t.Errorf("%s does not lead to %s", page, link)
		}
	}
	if len(media) < 5 {
		t.Errorf("only %d media", len(media))
	}
}

// wideTables returns the tables, and their cells, whose words do not fit.
const wideTables = `[...document.querySelectorAll("main table")].flatMap(table => [table, ...table.querySelectorAll("th, td")])
	.filter(e => { const r = e.getBoundingClientRect(); return r.left < -0.5 || r.right > innerWidth + 0.5 || e.scrollWidth > e.clientWidth + 1 })
	.map(e => e.outerHTML.slice(0, 160))`

func TestFaultsFitAPhone(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	for _, width := range []int64{320, 360} {
		b.size(width, 700)
		b.visit(h.home + "faults.html")
		if n := ask[int](b, `document.querySelectorAll("main table").length`); n < 5 {
			t.Errorf("only %d tables", n)
		}
		for _, e := range ask[[]string](b, wideTables) {
			t.Errorf("%d px: does not fit: %s", width, e)
		}
	}
}
