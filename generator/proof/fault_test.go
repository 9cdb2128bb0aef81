package proof

import (
	"slices"
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/finding"
)

// withFaults is the small course with a list of two faults, of which a lesson names
// one and misspells the other.
func withFaults(t *testing.T) (*Reading, finding.List) {
	t.Helper()
	files := sound(t)
	list := *files["home.md"]
	list.Data = []byte(`faults:
  - {id: crawling, sees: It crawls, when: glaze, picture: pictures/jar.svg, alt: Islands., looks: Thick rims.}
  - {id: runs, sees: It runs, when: wet, picture: pictures/jar.svg, alt: Drops., looks: The color hangs in drops.}
`)
	files["faults.yaml"] = &list
	mix := *files["units/slip/mix.md"]
	mix.Data = []byte(strings.Replace(string(mix.Data), "It runs\n:", "[It runs](fault:runs), and [runs](fault:runs)\n:", 1))
	files["units/slip/mix.md"] = &mix
	thin := *files["units/wash/thin.md"]
	thin.Data = []byte(strings.Replace(string(thin.Data), "It runs\n:", "[It crawls](fault:crawlin)\n:", 1))
	files["units/wash/thin.md"] = &thin
	return proofread(t, files)
}

// TestFaultsOfTheList wants a link to a fault that is none, a fault that no lesson names,
// and its words in the wrong spelling to be found.
func TestFaultsOfTheList(t *testing.T) {
	_, findings := withFaults(t)
	got := texts(findings)
	want := []string{
		"faults.yaml:1:1: warning: in `runs`: “color” is the American spelling, and this handbook is in British English (two-spellings)\n    Write “colour”.",
		"units/wash/thin.md:32:1: error: link to \"fault:crawlin\": there is no such fault (link-target)\n    Did you mean `crawling`? Write the id of a fault of faults.yaml.",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got:\n%s\nwant:\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// TestFaultThatNoLessonNames wants it to be found at its place, and a fault to be named
// by what goes wrong alone, once however often its term links it.
func TestFaultThatNoLessonNames(t *testing.T) {
	reading, _ := withFaults(t)
	got := texts(checkFaults(reading))
	want := []string{"faults.yaml:2:10: warning: no lesson says why one sees “It crawls” (fault-unused)\n" +
		"    Name it in a lesson, under “What goes wrong”: [It crawls](fault:crawling), and on the line under it why, and what then; or take it out."}
	if !slices.Equal(got, want) {
		t.Errorf("got:\n%s\nwant:\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	named := 0
	for _, p := range reading.Pages {
		for _, f := range reading.Faults(p) {
			named += len(f.Is)
			if len(f.Is) > 0 && (p.Kind != course.LessonPage || f.Is[0].ID != "runs") {
				t.Errorf("%s names %s", p.File, f.Is[0].ID)
			}
		}
	}
	if named != 1 {
		t.Errorf("named %d times", named)
	}
}
