//go:build judges

package trial

import (
	"path"
	"slices"
	"strings"
	"testing"
)

// TestEveryFaultIsFoundByItsDrawing wants each fault of the list once on the page, with a
// drawing that has words, the way to it with the same drawing, and every look-alike to
// be there.
func TestEveryFaultIsFoundByItsDrawing(t *testing.T) {
	t.Parallel()
	d := published(t).document(t, "faults.html")
	ways := d.find(d.find(nil, "main")[0], ".seen")
	var leads []string
	for _, list := range ways {
		for _, a := range d.find(list, "a") {
			leads = append(leads, attribute(a, "href"))
			if shown := d.find(a, "use"); len(shown) != 1 || d.ids[strings.TrimPrefix(attribute(shown[0], "href"), "#")] == nil {
				t.Errorf("the way to %s shows no drawing of the page", attribute(a, "href"))
			}
		}
	}
	var told []string
	for _, fault := range d.find(nil, ".fault") {
		drawings := d.find(fault, "figure")
		if len(drawings) == 0 {
			continue // of a lesson, on no list
		}
		heading := d.find(fault, "h3")[0]
		told = append(told, "#"+attribute(heading, "id"))
		if svg := d.find(drawings[0], "svg"); len(svg) != 1 || len(strings.Fields(attribute(svg[0], "aria-label"))) < 5 {
			t.Errorf("%q has no drawing with words", words(heading))
		}
		for _, other := range d.find(fault, ".else") {
			for _, a := range d.find(other, "a") {
				if to := attribute(a, "href"); !slices.Contains(leads, to) {
					t.Errorf("%q is said to look like %s, which is not there", words(heading), to)
				}
			}
		}
	}
	if !slices.Equal(leads, told) || len(told) < 24 {
		t.Errorf("ways to %q, and faults %q", leads, told)
	}
}

// TestMediaLeadToWhatGoesWrong wants a way from each medium to that page, and from the
// chart to each medium.
func TestMediaLeadToWhatGoesWrong(t *testing.T) {
	t.Parallel()
	h := published(t)
	media := h.all(t, "medium")
	chart := h.document(t, "chart.html").links()
	for _, page := range media {
		if !slices.ContainsFunc(chart, func(to string) bool { return strings.HasPrefix(to, page) }) {
			t.Errorf("the chart does not lead to %s", page)
		}
		if !slices.Contains(h.document(t, page).links(), "../faults.html") {
			t.Errorf("%s does not lead to what goes wrong", path.Base(page))
		}
	}
	if len(media) < 5 {
		t.Errorf("only %d media", len(media))
	}
}

// badDrawings returns the drawings of faults, and the small ones that lead to them, that
// draw nothing or do not fit.
const badDrawings = `[...document.querySelectorAll("main figure svg, main .seen svg")].filter(e => {
	const r = e.getBoundingClientRect(), b = e.getBBox();
	return r.left < -0.5 || r.right > innerWidth + 0.5 || r.width < 100 || r.height < 30 || b.width < 100 || b.height < 50;
}).map(e => e.outerHTML.slice(0, 120))`

func TestFaultsFitAPhone(t *testing.T) {
	t.Parallel()
	h := published(t)
	b := open(t)
	for _, width := range []int64{320, 360} {
		b.size(width, 700)
		b.visit(h.home + "faults.html")
		if n := ask[int](b, `document.querySelectorAll("main .seen svg").length`); n < 24 {
			t.Errorf("only %d drawings to choose from", n)
		}
		for _, e := range ask[[]string](b, badDrawings) {
			t.Errorf("%d px: %s", width, e)
		}
	}
}
