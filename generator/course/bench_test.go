package course_test

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
)

// withBench adds the studio's scales and working numbers to the small course.
func withBench(t *testing.T, lines string) (*course.Course, string) {
	t.Helper()
	files := coursetest.Small()
	edit{setting, "units:\n", lines + "units:\n"}.apply(t, files)
	c, found := new(course.Reader).Load(files)
	useAll(c)
	return c, findings(found)
}

// TestBenchTravels wants what course.yaml says to reach the calculators, on the
// page too.
func TestBenchTravels(t *testing.T) {
	c, found := withBench(t, "scales: [{to: 5 kg, step: 5 g}, {to: 500 g, step: 0.1}]\n"+
		"working:\n  - {of: slip, for: to brush or pour, near: 1.45}\n  - {of: wash, for: on bisque, from: 9, to: 12.5}\n  - {of: absorption, for: to hold water, from: 0.1, to: 1}\n")
	if found != "" {
		t.Fatal(found)
	}
	got := c.Answers()
	want := form.Plain()
	want.Bodies = []form.Body{{ID: "buff", Name: "Buff stoneware", Shrinkage: 12, Cone: "6"}, {ID: "white", Name: "White porcelain", Shrinkage: 14.5, Cone: "6"}}
	want.Hazards = got.Hazards // in a test of their own
	want.Scales = []form.Scale{{To: 500, Step: 0.1}, {To: 5000, Step: 5}}
	want.Working = []form.Working{{Of: "slip", For: "to brush or pour", Low: 1.45, High: 1.45}, {Of: "wash", For: "on bisque", Low: 9, High: 12.5}, {Of: form.OfAbsorption, For: "to hold water", Low: 0.1, High: 1}}
	again, err := form.Configure([]byte(got.Encode()))
	if got.Words.Language != "en-GB" || again.Words.Language != "en-GB" {
		t.Errorf("in the words of %s, and after the way %s", got.Words.Language, again.Words.Language)
	}
	got.Words, again.Words = nil, nil // held by their own tests
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
	if d := cmp.Diff(want, again); err != nil || d != "" {
		t.Error(err, d)
	}
}

func TestBenchFindings(t *testing.T) {
	for _, c := range []struct{ name, lines, want string }{
		{"no weight", "scales: [{to: 500 g, step: a spoon}]\n", "16:28: error: `a spoon` is not a weight (value-form)"},
		{"no step", "scales: [{to: 500 g}]\n", "16:10: error: `step` is missing (missing-key)"},
		{"nothing", "scales: [{to: 0 g, step: 0.1 g}]\n", "16:15: error: `to` is `0 g`, which no studio's scale has (value-form)"},
		{"too coarse", "scales: [{to: 500 g, step: 100 g}]\n", "16:28: error: a step of 100 g is too coarse for a scale that takes 500 g (value-form)"},
		{"no subject", "working: [{of: clay, for: to throw, near: 20}]\n", "16:16: error: `of` cannot be `clay` (value-form)"},
		{"no number", "working: [{of: slip, for: to pour}]\n", "16:11: error: this working number has no number (missing-key)"},
		{"half a range", "working: [{of: slip, for: to pour, from: 1.4}]\n", "16:11: error: this working number has no number (missing-key)"},
		{"both", "working: [{of: slip, for: to pour, near: 1.4, to: 1.5}]\n", "16:11: error: this working number has `near` and a range (value-form)"},
		{"upside down", "working: [{of: slip, for: to pour, from: 1.5, to: 1.4}]\n", "16:51: error: `to` is less than `from` (1.5) (value-form)"},
		{"in grams", "working: [{of: slip, for: to pour, near: 145}]\n", "16:42: error: `near` is 145, outside 1.01 to 2.5 (value-form)"},
		{"a speech", "working: [{of: slip, for: " + strings.Repeat("to pour ", 9) + ", near: 1.45}]\n", "16:27: error: `for` has 71 letters (value-form)"},
	} {
		_, found := withBench(t, c.lines)
		first, _, _ := strings.Cut(found, "\n")
		if first != "course.yaml:"+c.want || strings.Count(found, "course.yaml:") != 1 {
			t.Errorf("%s: got\n%swant %s", c.name, found, c.want)
		}
	}
}

// TestHazardsStandOnce holds the words that the calculators say without a course
// to those of the program's own hazards.yaml, and lets a course change them.
func TestHazardsStandOnce(t *testing.T) {
	files := coursetest.Small()
	delete(files, "hazards.yaml")
	delete(files, table)
	c, _ := new(course.Reader).Load(files)
	got := c.Answers()
	for _, declared := range catalog.All() {
		if d := cmp.Diff(form.Settings{Words: catalog.WordsIn("en-GB")}.CautionsOf(declared), got.CautionsOf(declared)); d != "" {
			t.Errorf("%s: %s", declared.Name, d)
		}
	}
	for _, id := range catalog.HazardIDs() {
		if !slices.ContainsFunc(got.Hazards, func(h form.Hazard) bool {
			return h.ID == id && h.Words == form.Settings{Words: catalog.WordsIn("en-GB")}.HazardWords(id)
		}) {
			t.Errorf("of %s the calculators and hazards.yaml say different things", id)
		}
	}
	files["hazards.yaml"] = &fstest.MapFile{Data: []byte("hazards:\n  - {id: dry-powder, do: Only the instructor weighs.}\n")}
	c, _ = new(course.Reader).Load(files)
	if batch := catalog.Find("slip-batch"); !strings.HasSuffix(c.Answers().CautionsOf(batch)[0], "can cause cancer. Only the instructor weighs.") {
		t.Errorf("the course's words are not said: %q", c.Answers().CautionsOf(batch))
	}
}
