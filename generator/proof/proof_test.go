package proof

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
	"slipbook/generator/finding"
)

// proofread loads a content folder and reads all of it.
func proofread(t *testing.T, files fstest.MapFS) (*Reading, finding.List) {
	t.Helper()
	var r Reader
	return r.Read(new(course.Reader).Load(files))
}

// What the lessons of the small course lack of the rules of a course.
const (
	parts = `
It goes on [bisque](state:bisque).

1. Stir it.

## What to look for

- It shines.

## What goes wrong

It runs
: It is too thin.
`
	twoQuestions = `
` + "```question" + `
ask: Why?
answers:
  - {text: One, right: true, because: It is so.}
  - {text: Two, because: It is not so.}
` + "```" + `

` + "```question" + `
ask: How?
answers:
  - {text: One, because: It is not so.}
  - {text: Two, right: true, because: It is so.}
` + "```" + `
`
)

// sound returns the small course with lessons that keep all rules.
func sound(t *testing.T) fstest.MapFS {
	t.Helper()
	files := coursetest.Small()
	for _, name := range []string{"slip/mix", "slip/measure", "wash/thin", "wash/wipe"} {
		file := "units/" + name + ".md"
		head, body, _ := strings.Cut(string(files[file].Data)[4:], "\n---\n")
		if !strings.Contains(head, "timeRequired") {
			head += "\ntimeRequired: PT20M"
		}
		if !strings.Contains(head, "needs") {
			head += "\nneeds: [a sponge]"
		}
		files[file] = &fstest.MapFile{Data: []byte("---\n" + head + "\n---\n" + body + parts + twoQuestions)}
	}
	change(t, files, "units/slip/mix.md", "the powder.\n```", "the powder. It throws up dust.\n```\n\n1. Weigh it.")
	return files
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

func TestSoundCourse(t *testing.T) {
	r, findings := proofread(t, sound(t))
	for _, f := range findings {
		t.Errorf("%v", f)
	}
	pages := r.Course.Pages()
	if len(pages) < 7 || len(r.Pages) != len(pages) {
		t.Fatalf("%d documents for %d pages", len(r.Pages), len(pages))
	}
	for i, d := range r.Pages {
		if d.Page != pages[i] || len(d.Document.Pieces) == 0 {
			t.Errorf("document %d is of %s with %d pieces; the page there is %s", i, d.File, len(d.Document.Pieces), pages[i].File)
		}
	}
}

// TestOtherTypes: a page that is read owes no steps, a sheet to print not even a time.
func TestOtherTypes(t *testing.T) {
	const measure = "units/slip/measure.md"
	for _, typed := range []string{"timeRequired: PT20M\nlearningResourceType: reading\n", "learningResourceType: sheet\n"} {
		files := sound(t)
		change(t, files, measure, "timeRequired: PT20M\n", typed)
		change(t, files, measure, "1. Stir it.", "- Stir it.")
		change(t, files, measure, "needs: [a sponge]\n", "")
		if _, findings := proofread(t, files); len(findings) > 0 {
			t.Errorf("%s: %v", typed, findings)
		}
	}
}

func TestFindings(t *testing.T) {
	const measure, mix = "units/slip/measure.md", "units/slip/mix.md"
	tests := []struct {
		name, file, from, to string
		want                 string
	}{
		{"heading missing on another page", measure, "mix.md#weigh-first", "mix.md#weigh-last",
			measure + ":19:88: error: link to #weigh-last: units/slip/mix.md has no such heading (link-target)\n    Its headings are #weigh-first, #what-to-look-for, #what-goes-wrong."},
		{"heading of a page without any", measure, "mix.md#weigh-first", "unit.md#top",
			measure + ":19:88: error: link to #top: units/slip/unit.md has no such heading (link-target)\n    That page has no headings; link to the page itself."},
		{"lesson without time", measure, "timeRequired: PT20M\n", "",
			measure + ":1:1: warning: this lesson does not say how long it takes (lesson-time)\n    Add “timeRequired:” to its opening block, such as PT30M for half an hour."},
		{"lesson without needs", measure, "needs: [a sponge]\n", "",
			measure + ":1:1: warning: this lesson does not say what to have on the bench (lesson-needs)\n    Add “needs:” to its opening block, with a list of it."},
		{"lesson without steps", measure, "1. Stir it.", "- Stir it.",
			measure + ":1:1: warning: this lesson has no steps (lesson-steps)\n    Write what to do as a numbered list, one action a step: 1. Stir the jar."},
		{"steps on a page that is read", measure, "timeRequired: PT20M\n", "learningResourceType: reading\n",
			measure + ":1:1: warning: this lesson does not say how long it takes (lesson-time)\n    Add “timeRequired:” to its opening block, such as PT30M for half an hour."},
		{"nothing to look for", measure, "- It shines.", "It shines.",
			measure + ":40:1: warning: there is no list in this part (lesson-looks)\n    Write “## What to look for” as a part with a list in it, each item on a line of its own after a hyphen and a space."},
		{"no part to look for", measure, "## What to look for\n\n- It shines.\n", "",
			measure + ":1:1: warning: this lesson does not list what one sees when it is right (lesson-looks)\n    Write a part “## What to look for” with a list in it, each item on a line of its own after a hyphen and a space."},
		{"nothing goes wrong", measure, "It runs\n: It", "- It runs: it",
			measure + ":44:1: warning: nothing in this part has the form of a fault (lesson-faults)\n    Write “## What goes wrong” as a part in which what is seen stands on a line of its own, and on the line under it “: ” with why and what then."},
		{"lesson without a state", measure, "(state:bisque)", "(../wash/unit.md)",
			measure + ":1:1: warning: this lesson is about `coloured-slip`, and names no state of the clay (lesson-state)\n    Link the state that the pot must be in, such as [leather-hard](state:leather-hard), or name it in a stages block."},
		{"two questions", measure, twoQuestions[:strings.LastIndex(twoQuestions, "```question")], "",
			measure + ":1:1: warning: this lesson has 2 questions; three or more let one check oneself (few-questions)\n    Add blocks ```question with the answers that are often given."},
		{"no words for a picture", measure, "A jar with a line scratched on it", "A jar",
			measure + ":17:1: warning: the words in the place of this picture are 2, too few to say what it teaches (picture-teaches)\n    Write in the square brackets what is seen and what it teaches, for whoever cannot see it."},
		{"caution without a title", mix, "caution Dust", "caution",
			mix + ":22:4: warning: a caution that does not name its hazard (caution-form)\n    Write it on the opening line: caution Dust."},
		{"short caution", mix, " It throws up dust.", "",
			mix + ":22:4: warning: this caution has 1 sentence; it wants 2 to 6 (caution-form)\n    Say what the hazard is, what happens, and what to do; the rest belongs in the text."},
		{"long caution", mix, "up dust.", "up dust.\n\n- A.\n- B.\n\nC. D! E?",
			mix + ":22:4: warning: this caution has 7 sentences; it wants 2 to 6 (caution-form)\n    Say what the hazard is, what happens, and what to do; the rest belongs in the text."},
		{"caution that guards nothing", mix, "1. Weigh it.", "## Ask",
			mix + ":22:4: warning: nothing follows this caution in its part of the page (caution-form)\n    Put it right before the step that it guards, under the same heading."},
		{"lesson without an aim", measure, "teaches:\n  - weigh the same jar empty and full\n", "",
			measure + ":1:1: warning: this lesson does not say what it teaches (lesson-aim)\n    Add “teaches:” to its opening block, with a list of what the student will be able to do."},
		{"picture nobody shows", measure, "![A jar with a line scratched on it](../../pictures/jar.svg \"The jar and its line\")\n\n", "",
			"pictures/jar.svg:1:1: warning: no page shows this picture (unshown-picture)\n    Show it where it teaches something, or take the file away."},
		{"opening block that is no YAML", measure, "timeRequired: PT20M", "timeRequired: [PT20M",
			measure + ":5:15: error: the list that opens here with [ is not closed (yaml-form)\n    Close it with ], and put a comma between its items."},
		{"opening block that is not closed, and a link to a heading behind it", mix, "\n---\n", "\n",
			mix + ":1:1: error: the opening block that starts here is not closed (opening-block)\n    Put a line of three hyphens, ---, between the last key and the text of the page."},
		{"question that cannot be read", measure, "ask: How?", "ask: [How?",
			measure + ":57:6: error: the list that opens here with [ is not closed (yaml-form)\n    Close it with ], and put a comma between its items."},
		{"question that takes the next one's end", measure, "  - {text: Two, because: It is not so.}\n```\n", "  - {text: Two, because: It is not so.}\n",
			measure + ":49:1: error: a question is not closed before another fence, in line 55 (fence-end)\n    Write a line of at least as many of the same signs under it, before that one."},
		{"picture under another name", measure, "pictures/jar.svg", "pictures/jug.svg",
			measure + ":17:1: error: picture \"../../pictures/jug.svg\": there is no such picture (looked for pictures/jug.svg) (picture-file)\n    Did you mean `../../pictures/jar.svg`? Put the file into the folder pictures and write the path from this file, for example ../../pictures/jar.svg."},
		{"fault inside a page", "home.md", "units/slip/unit.md", "units/slip/nowhere.md",
			"home.md:6:54: error: link to \"units/slip/nowhere.md\": there is no such page (looked for units/slip/nowhere.md) (link-target)\n    Links lead to .md pages that course.yaml and the units list; write the path from this file."},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			files := sound(t)
			change(t, files, test.file, test.from, test.to)
			_, findings := proofread(t, files)
			if len(findings) != 1 || findings[0].String() != test.want {
				t.Errorf("got:\n%v\nwant:\n%s", findings, test.want)
			}
		})
	}
}

func TestWarningsStopNothing(t *testing.T) {
	_, findings := proofread(t, coursetest.Small())
	if len(findings) == 0 || findings.Stop() {
		t.Errorf("%d findings, stop %v", len(findings), findings.Stop())
	}
}

// TestFindingsOfLoading shows that what loading found stays, in its place among
// the rest, and that the caller's list is left as it was.
func TestFindingsOfLoading(t *testing.T) {
	c, _ := new(course.Reader).Load(sound(t))
	c.Home.Source = []byte("[a](b.md)\n")
	loading := finding.List{
		{File: "z.md", Line: 1, Column: 1, Rule: finding.Unreadable, Text: "t", Do: "d"},
		{File: "a.md", Line: 1, Column: 1, Rule: finding.Unreadable, Text: "t", Do: "d"},
	}
	before := slices.Clone(loading)
	_, findings := new(Reader).Read(c, loading)
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
		r, findings := new(Reader).Read(c, finding.List{{File: "course.yaml", Line: 1, Column: 1, Rule: finding.Unreadable, Text: "t", Do: "d"}})
		if len(r.Pages) != 0 || len(findings) != 1 {
			t.Errorf("%d documents, findings %v", len(r.Pages), findings)
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
	first, findings := new(Reader).Read(c, nil)
	again, same := new(Reader).Read(c, nil)
	if len(findings) != 300*9 || !slices.Equal(findings, same) {
		t.Errorf("%d and %d findings, want %d and the same", len(findings), len(same), 300*9)
	}
	for i, d := range first.Pages {
		if d.Page != u.Lessons[i] || !reflect.DeepEqual(d.Document, again.Pages[i].Document) {
			t.Errorf("document %d is of %s", i, d.Page.File)
		}
	}
}
