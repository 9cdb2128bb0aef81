package proof

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

// bench knows the pages and pictures of a course, takes every term, state and
// calculator for true, and prints blocks as their kind.
type bench struct{ c *course.Course }

func (b bench) Page(path string) (*course.Page, bool) {
	for _, p := range b.c.Pages() {
		if p.File == path {
			return p, true
		}
	}
	return nil, false
}

func (b bench) Picture(path string) (*course.Picture, bool) {
	p, ok := b.c.Pictures[path]
	return p, ok
}

func (bench) PictureAddress(path string) string { return path }

func (bench) Made(scheme, id string) (string, bool) { return scheme + "/" + id + ".html", true }

func (bench) Section(string) markup.Section { return markup.OtherSection }

func (bench) Sum(_, _, _ string) (address, fault, do string) { return "sum.html", "", "" }

func (bench) Block(_ *course.Page, b markup.Block) ([]byte, []markup.Problem) {
	return []byte("<p>" + b.Kind + "</p>\n"), nil
}

// proofread loads a content folder and reads all of it.
func proofread(t *testing.T, files fstest.MapFS) (*Reading, finding.List) {
	t.Helper()
	c, loading := course.Load(files)
	return Read(c, loading, bench{c})
}

// change replaces words in a file of a content folder; they must be there.
func change(t *testing.T, files fstest.MapFS, name, from, to string) {
	t.Helper()
	data := string(files[name].Data)
	if !strings.Contains(data, from) {
		t.Fatalf("%s holds no %q", name, from)
	}
	files[name] = &fstest.MapFile{Data: []byte(strings.Replace(data, from, to, 1)), Mode: 0o644}
}

func TestSmallCourseIsSound(t *testing.T) {
	r, findings := proofread(t, coursetest.Small())
	for _, f := range findings {
		t.Errorf("%v", f)
	}
	pages := r.Course.Pages()
	if len(pages) < 7 || len(r.Documents) != len(pages) {
		t.Fatalf("%d documents for %d pages", len(r.Documents), len(pages))
	}
	for i, d := range r.Documents {
		if d.Page != pages[i] || len(d.HTML) == 0 {
			t.Errorf("document %d is of %s with %d bytes; the page there is %s", i, d.Page.File, len(d.HTML), pages[i].File)
		}
	}
}

func TestFindings(t *testing.T) {
	const measure = "units/slip/measure.md"
	tests := []struct {
		name, file, from, to string
		want                 string
	}{
		{"heading missing on another page", measure, "mix.md#weigh-first", "mix.md#weigh-last",
			measure + ":18:88: error: link to #weigh-last: units/slip/mix.md has no such heading (link-target)\n    Its headings are #weigh-first."},
		{"heading of a page without any", measure, "mix.md#weigh-first", "unit.md#top",
			measure + ":18:88: error: link to #top: units/slip/unit.md has no such heading (link-target)\n    That page has no headings; link to the page itself."},
		{"lesson without an aim", measure, "teaches:\n  - weigh the same jar empty and full\n", "",
			measure + ":1:1: warning: this lesson does not say what it teaches (lesson-aim)\n    Add “teaches:” to its opening block, with a list of what the student will be able to do."},
		{"picture nobody shows", measure, "![A jar with a line scratched on it](../../pictures/jar.svg \"The jar and its line\")\n\n", "",
			"pictures/jar.svg:1:1: warning: no page shows this picture (unshown-picture)\n    Show it where it teaches something, or take the file away."},
		{"fault inside a page", "home.md", "units/slip/unit.md", "units/slip/nowhere.md",
			"home.md:6:54: error: link to \"units/slip/nowhere.md\": there is no such page (looked for units/slip/nowhere.md) (link-target)\n    Links lead to .md pages that course.yaml and the units list; write the path from this file."},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			files := coursetest.Small()
			change(t, files, test.file, test.from, test.to)
			_, findings := proofread(t, files)
			if len(findings) != 1 || findings[0].String() != test.want {
				t.Errorf("got:\n%v\nwant:\n%s", findings, test.want)
			}
		})
	}
}

func TestLessonWithoutQuestion(t *testing.T) {
	files := coursetest.Small()
	body, _, _ := strings.Cut(string(files["units/wash/thin.md"].Data), "```question")
	files["units/wash/thin.md"] = &fstest.MapFile{Data: []byte(body)}
	_, findings := proofread(t, files)
	const want = "units/wash/thin.md:1:1: warning: this lesson has no question (lesson-question)\n    Add a block ```question with the answers that are often given."
	if len(findings) != 1 || findings[0].String() != want {
		t.Errorf("got:\n%v\nwant:\n%s", findings, want)
	}
	if findings.Stop() {
		t.Error("a warning stops the work")
	}
}

// TestFindingsOfLoading shows that what loading found stays, in its place among
// the rest, and that the caller's list is left as it was.
func TestFindingsOfLoading(t *testing.T) {
	c, _ := course.Load(coursetest.Small())
	c.Home.Source = []byte("[a](b.md)\n")
	loading := finding.List{
		{File: "z.md", Line: 1, Column: 1, Rule: finding.Unreadable, Text: "t", Do: "d"},
		{File: "a.md", Line: 1, Column: 1, Rule: finding.Unreadable, Text: "t", Do: "d"},
	}
	before := slices.Clone(loading)
	_, findings := Read(c, loading, bench{c})
	var files []string
	for _, f := range findings {
		files = append(files, f.File)
	}
	if want := []string{"a.md", "home.md", "z.md"}; !slices.Equal(files, want) {
		t.Errorf("findings of %v, want %v", files, want)
	}
	if !slices.Equal(loading, before) {
		t.Error("the list of loading was changed")
	}
}

// TestNothingToRead shows that a course that could not be made is no reason to
// stop.
func TestNothingToRead(t *testing.T) {
	for _, c := range []*course.Course{nil, {}} {
		r, findings := Read(c, finding.List{{File: "course.yaml", Line: 1, Column: 1, Rule: finding.Unreadable, Text: "t", Do: "d"}}, bench{c})
		if len(r.Documents) != 0 || len(findings) != 1 {
			t.Errorf("%d documents, findings %v", len(r.Documents), findings)
		}
	}
}

// TestManyPages reads a course of many pages twice and wants the same both
// times, in order.
func TestManyPages(t *testing.T) {
	u := &course.Unit{ID: "slip"}
	for i := range 300 {
		u.Lessons = append(u.Lessons, &course.Page{
			Kind: course.LessonPage, File: fmt.Sprintf("units/slip/p%d.md", i), Address: fmt.Sprintf("slip/p%d.html", i),
			Source: fmt.Appendf(nil, "Page %d <b>\n\n[next](p%d.md#none)\n", i, i+1),
		})
	}
	c := &course.Course{Units: []*course.Unit{u}}
	first, findings := Read(c, nil, bench{c})
	again, same := Read(c, nil, bench{c})
	if len(findings) != 300*4 || !slices.Equal(findings, same) {
		t.Errorf("%d and %d findings, want %d and the same", len(findings), len(same), 300*4)
	}
	for i, d := range first.Documents {
		if d.Page != u.Lessons[i] || string(d.HTML) != string(again.Documents[i].HTML) {
			t.Errorf("document %d is of %s", i, d.Page.File)
		}
	}
}
