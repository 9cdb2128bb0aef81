package table

import (
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/presstest"
)

// TestInsteadTodayIsAPlainYes goes through every state and every medium of the demo
// course's table as pages print them: what they name in the place of a medium that is
// risky or never is by the table a yes in that state, harms no more, needs no stricter
// eye, and says the condition that its yes has.
func TestInsteadTodayIsAPlainYes(t *testing.T) {
	r := newTable(t, presstest.Demo(t, "../../../content"))
	named, conditions := 0, 0
	check := func(where string, s course.State, m course.Medium, today *html.Node) {
		t.Helper()
		if v := m.On[s.ID].Verdict; v != course.Risky && v != course.Never {
			t.Errorf("%s: there is something instead of %s, which is %s", where, m.Name, v)
		}
		for _, a := range presstest.Elements(today, presstest.Called("a")) {
			named++
			_, id, _ := strings.Cut(presstest.Attribute(a, "href"), "#")
			o, there := r.Decoration.FindMedium(id)
			if !there || o.On[s.ID].Verdict != course.Yes {
				t.Fatalf("%s: instead of %s it offers %q, which is no yes", where, m.Name, id)
			}
			if worse, who := worseThan(r.Decoration, care.Of(*o, s.ID), care.Of(m, s.ID)); worse != "" || who {
				t.Errorf("%s: instead of %s it offers %s, which is worse: %q", where, m.Name, o.Name, worse)
			}
			said := ""
			if a.NextSibling != nil {
				said = a.NextSibling.Data
			}
			for _, words := range conditionsOf(r.Decoration, *o, s) {
				if conditions++; !strings.Contains(said, words) {
					t.Errorf("%s: it offers %s with %q, which does not say %q", where, o.Name, said, words)
				}
			}
		}
	}
	for n, sheet := range r.States() {
		s, root := r.Decoration.States[n], presstest.Parse(t, printed(t, r, sheet, "state"))
		for _, row := range presstest.Elements(presstest.First(t, root, "rows"), presstest.Called("li")) {
			_, id, _ := strings.Cut(presstest.Attribute(presstest.Elements(row, presstest.Called("a"))[0], "href"), "#")
			m, _ := r.Decoration.FindMedium(id)
			for _, today := range presstest.Elements(row, presstest.Classed("today")) {
				check(sheet.Address, s, *m, today)
			}
		}
	}
	for n, sheet := range r.Media() {
		root := presstest.Parse(t, printed(t, r, sheet, "medium"))
		for _, today := range presstest.Elements(root, presstest.Classed("in-place")) {
			for _, row := range presstest.Elements(today, presstest.Called("div")) {
				name, _, _ := strings.Cut(presstest.Text(row), ":")
				s := slices.IndexFunc(r.Decoration.States, func(s course.State) bool { return s.Name == name })
				check(sheet.Address, r.Decoration.States[s], r.Decoration.Media[n], presstest.Elements(row, presstest.Called("dd"))[0])
			}
		}
	}
	if named < 60 || conditions < 5 {
		t.Errorf("only %d were named, %d of them with a condition", named, conditions)
	}
}

// worseThan names a hazard to health that the first rows have and the others lack, and
// whether they need a stricter eye.
func worseThan(d *course.Decoration, one, other []course.Care) (hazard string, who bool) {
	mine, by := d.HazardsOf(one...)
	theirs, byOther := d.HazardsOf(other...)
	for _, h := range mine {
		if h.Health && !slices.ContainsFunc(theirs, func(o course.Hazard) bool { return o.ID == h.ID }) {
			hazard = h.Title
		}
	}
	strict := map[course.Who]int{course.WithInstructor: 1, course.Instructor: 2}
	return hazard, strict[by] > strict[byOther]
}

// conditionsOf is what a page must say of a yes that is none without more: the part of
// the state, the question, and what an exception takes out.
func conditionsOf(d *course.Decoration, m course.Medium, s course.State) []string {
	var all []string
	for _, part := range s.Parts {
		if part.ID == m.On[s.ID].Part {
			all = append(all, strings.ToLower(part.Name))
		}
	}
	if ask := m.On[s.ID].Ask; ask != "" {
		all = append(all, ask)
	}
	for _, e := range d.Exceptions {
		if p, here := e.On[s.ID]; here && e.Medium == m.ID && e.Kind != ofHouse && p.Verdict != course.Yes {
			all = append(all, e.Name)
		}
	}
	return all
}
