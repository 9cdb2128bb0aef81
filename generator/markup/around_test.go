package markup

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/finding"
)

// around is a small handbook for tests: three pages, two pictures, one term,
// one state, one calculator, and a theme that prints blocks bare.
type around struct{}

var (
	homePage  = &course.Page{Kind: course.HomePage, File: "home.md", Address: "index.html"}
	otherPage = &course.Page{Kind: course.LessonPage, File: "units/wash/strength.md", Address: "wash/strength.html"}
)

// lesson makes the page that tests write.
func lesson(source string) *course.Page {
	return &course.Page{Kind: course.LessonPage, File: "units/slip/lesson.md", Address: "slip/lesson.html", Source: []byte(source)}
}

func (around) Page(path string) (*course.Page, bool) {
	for _, p := range []*course.Page{homePage, otherPage, lesson("")} {
		if p.File == path {
			return p, true
		}
	}
	return nil, false
}

func (around) Picture(path string) (*course.Picture, bool) {
	switch path {
	case "pictures/jar.svg":
		return &course.Picture{Path: path, Width: 320, Height: 200, SVG: []byte(`<svg viewBox="0 0 320 200"><path d="M0 0"/></svg>`)}, true
	case "pictures/bucket.png":
		return &course.Picture{Path: path, Width: 40, Height: 30}, true
	}
	return nil, false
}

func (around) PictureAddress(path string) string {
	return strings.Replace(path, ".png", "-1A2B3C4D.png", 1)
}

func (around) Made(scheme, id string) (string, bool) {
	switch scheme + ":" + id {
	case "glossary:bisque":
		return "glossary.html#bisque", true
	case "state:bisque":
		return "states/bisque.html", true
	case "calculator:slip-density":
		return "calculators/slip-density.html", true
	}
	return "", false
}

func (around) Section(heading string) Section {
	return map[string]Section{"What to look for": LookSection, "What goes wrong": WrongSection}[heading]
}

func (around) Back(note, place, places int) (words, name string, err error) {
	return fmt.Sprintf("up %d/%d", place, places), fmt.Sprintf("up from %d", note), nil
}

func (around) Sum(calculator, request, words string) (address, fault, do string) {
	if strings.Contains(words, "7") {
		return "", "7 is no answer", "Write 8."
	}
	return "calculators/" + calculator + ".html?" + request, "", ""
}

// tooHeavy is what the test theme says of one value.
var tooHeavy = []string{"900 kg", "too heavy for the bench", "Write less than 100 kg."}

func (around) Block(_ *course.Page, b Block) ([]byte, []Problem) {
	var out bytes.Buffer
	var problems []Problem
	fmt.Fprintf(&out, "<section class=%q>\n%s %d|", b.Kind, b.Words, b.Number)
	for _, s := range b.Fill {
		fmt.Fprintf(&out, "%s=%s;", escape(s.Name), escape(s.Value))
		if s.Value == tooHeavy[0] {
			problems = append(problems, Problem{s.ValueOffset, finding.BlockBody, tooHeavy[1], tooHeavy[2]})
		}
	}
	if b.Ask != nil {
		fmt.Fprintf(&out, "%s %d", escape(b.Ask.Ask), len(b.Ask.Answers))
	}
	if b.Part != nil {
		fmt.Fprintf(&out, "%s %s %s", escape(b.Part.Medium.ID), escape(b.Part.State.ID), escape(b.Part.Technique.ID))
	}
	fmt.Fprintf(&out, "\n%s</section>\n", b.HTML)
	return out.Bytes(), problems
}

// said gives the findings one a line: place, rule, text and what to do.
func said(findings finding.List) string {
	var b strings.Builder
	for _, f := range findings {
		fmt.Fprintf(&b, "%d:%d %s: %s | %s\n", f.Line, f.Column, f.Rule.ID, f.Text, f.Do)
	}
	return b.String()
}

// read parses a page in which nothing is wrong.
func read(t *testing.T, source string) *Document {
	t.Helper()
	d, findings := Parse(lesson(source), around{})
	if len(findings) > 0 {
		t.Errorf("%q: findings where none should be:\n%s", source, said(findings))
	}
	return d
}
