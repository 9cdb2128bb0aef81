package care

import (
	"slices"
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
)

// rules are what a course says of safety.
func rules(t *testing.T, c *course.Course) *Rules {
	return &Rules{c.Decoration, presstest.Read(t, c).Addresses}
}

// TestCareOfSeveralRows wants what to wear and every place of all rows, each once.
func TestCareOfSeveralRows(t *testing.T) {
	c := presstest.Harmful(t)
	d := c.Decoration
	d.Places = append(d.Places, course.Place{ID: "booth", Name: "in the booth"})
	d.Hazards[len(d.Hazards)-1].Place = "booth"
	got := rules(t, c).Care(imprint.Place{Page: "index.html"}, course.Care{Hazards: []string{"dust"}}, course.Care{Hazards: []string{"mist", "dust"}}, course.Care{Hazards: []string{"blade"}})
	if want := []string{"at the wet table", "in the booth"}; !slices.Equal(got.Places, want) {
		t.Errorf("places %q, want %q", got.Places, want)
	}
	if want := []string{"a fitted respirator", "a mask"}; !slices.Equal(got.Wear, want) {
		t.Errorf("to wear %q, want %q", got.Wear, want)
	}
}

func TestWorseForHealth(t *testing.T) {
	p := rules(t, presstest.Harmful(t))
	one := func(who course.Who, hazards ...string) []course.Care {
		return []course.Care{{Hazards: hazards, Who: who}}
	}
	for _, c := range []struct {
		one, other []course.Care
		want       bool
	}{
		{one(""), one(""), false},
		{one("", "dust"), one(""), true},
		{one("", "dust"), one("", "dust", "mist"), false},
		{one("", "dust", "mist"), one("", "dust"), true},
		{one("", "blade"), one(""), false}, // a cut is no matter of health
		{one(course.WithInstructor), one(""), true},
		{one(course.WithInstructor), one(course.Student), true},
		{one(course.Instructor), one(course.WithInstructor, "mist"), true},
		{one(""), one(course.Instructor), false},
		{append(one("", "dust"), one("", "mist")...), one("", "dust"), true},
	} {
		if got := p.WorseForHealth(c.one, c.other); got != c.want {
			t.Errorf("%v against %v: %v", c.one, c.other, got)
		}
	}
}

// TestWearAloneIsOwed wants a page to be stopped that lacks what to wear, also where no
// hazard and nobody is named beside it.
func TestWearAloneIsOwed(t *testing.T) {
	owes := []Owed{Owe("Spray booth", Line, Care{Wear: []string{"a fitted respirator"}})}
	studio := presstest.Studio(t)
	if err := Settle(studio, "poster", owes, []byte("<p>Spray booth</p>")); err == nil || !strings.Contains(err.Error(), "a fitted respirator") {
		t.Errorf("error %v", err)
	}
	piece, err := written(studio, Line, owes[0].Care)
	if err == nil {
		err = Settle(studio, "poster", owes, piece)
	}
	if err != nil {
		t.Error(err)
	}
}

// TestCount wants pieces counted as bytes.Count does, shorter and longer than what is
// looked for at once, alike in their first part, and one behind the other.
func TestCount(t *testing.T) {
	long := strings.Repeat("<p>dust", probeLength)
	for _, piece := range []string{"<p>dust", "<p><p>", long, long + "!"} {
		for _, page := range []string{"", piece, piece + piece, "<p>" + piece + "<p>" + piece, piece[1:] + long, long + long + "!" + long} {
			if got, want := count([]byte(page), []byte(piece)), strings.Count(page, piece); got != want {
				t.Errorf("%.20q of %d bytes in %d: %d, want %d", piece, len(piece), len(page), got, want)
			}
		}
	}
}
