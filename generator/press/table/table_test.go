package table

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/desk"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
)

// newTable opens the room in the studio theme, for a course whose chart is printed.
func newTable(t *testing.T, c *course.Course) *Table {
	t.Helper()
	r, theme := presstest.Read(t, c), presstest.Studio(t)
	rules := &care.Rules{Decoration: c.Decoration, Addresses: r.Addresses}
	frame := &imprint.Frame{Course: c, Bundle: presstest.Bundle(), There: map[string]bool{address.Chart: true}}
	made, err := New(theme, rules, frame, desk.New(theme, rules, r.Settings, c.Language), r)
	if err != nil {
		t.Fatal(err)
	}
	return made
}

// TestCareOfAnException wants what an exception allows to carry the care of its
// medium or its way of working beside its own, and what it forbids to carry none.
func TestCareOfAnException(t *testing.T) {
	c := presstest.Harmful(t)
	d := c.Decoration
	medium, way := &d.Media[0], &d.Techniques[0]
	medium.Care, way.Care = course.Care{Hazards: []string{"dust"}}, course.Care{Hazards: []string{"mist"}, Who: course.Instructor}
	p := newTable(t, c)
	for _, tt := range []struct {
		what    string
		e       course.Exception
		verdict course.Verdict
		hazards []string
		who     string
	}{
		{"a product", course.Exception{Medium: medium.ID, Care: course.Care{Hazards: []string{"blade"}}}, course.Yes, []string{"blade", "dust"}, ""},
		{"a rule about a way", course.Exception{Technique: way.ID}, course.Risky, []string{"mist"}, "who-instructor"},
		{"what is never", course.Exception{Medium: medium.ID}, course.Never, nil, ""},
	} {
		got := p.exceptionCare(imprint.Place{Page: "index.html"}, tt.e, course.Pair{Verdict: tt.verdict})
		var hazards []string
		for _, h := range got.Hazards {
			hazards = append(hazards, h.ID)
		}
		slices.Sort(hazards)
		if !slices.Equal(hazards, tt.hazards) || got.Who != tt.who {
			t.Errorf("%s: %q by %q, want %q by %q", tt.what, hazards, got.Who, tt.hazards, tt.who)
		}
	}
}

func TestWorse(t *testing.T) {
	for _, c := range []struct{ a, b, want course.Verdict }{
		{course.Yes, course.Label, course.Label}, {course.Risky, course.Label, course.Risky},
		{course.Never, course.Yes, course.Never}, {"", course.Never, ""}, {course.Yes, course.Yes, course.Yes},
	} {
		if got := worse(c.a, c.b); got != c.want {
			t.Errorf("worse of %q and %q is %q", c.a, c.b, got)
		}
		if got := worse(c.b, c.a); got != c.want {
			t.Errorf("worse of %q and %q is %q", c.b, c.a, got)
		}
	}
}

// TestPairSaysWhateverItHas does the same for a pair of the table told in full.
func TestPairSaysWhateverItHas(t *testing.T) {
	p := newTable(t, presstest.Small(t))
	for name, f := range map[string]fate{
		"a fault":             {Pair: course.Pair{Fault: "Only this."}},
		"a remedy":            {Pair: course.Pair{Remedy: "Only this."}},
		"what has to wait":    {Waits: []string{"Only this."}},
		"what goes on today":  {Today: []StandIn{{Link: imprint.Link{Title: "Only this.", Address: "a.html"}}}},
		"where to go instead": {Instead: &imprint.Link{Title: "Only this.", Address: "a.html"}, InsteadKey: "instead-later"},
		"an exception":        {Exceptions: []exception{{Kind: "exception-body", Name: "Paper clay", Pair: course.Pair{Verdict: course.Risky, Reason: "Only this."}}}},
	} {
		var out bytes.Buffer
		if err := p.Pages.ExecuteTemplate(&out, "told", f); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(out.String(), "Only this.") {
			t.Errorf("%s is not told: %s", name, out.String())
		}
	}
}
