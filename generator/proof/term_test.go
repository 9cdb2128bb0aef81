package proof

import (
	"fmt"
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/finding"
)

// terms is a glossary for tests.
func terms() *course.Course {
	return &course.Course{
		Glossary: []course.Term{
			{ID: "slip", Word: "Slip"},
			{ID: "glaze", Word: "Glaze"},
			{ID: "unfired-glaze", Word: "Unfired glaze"},
			{ID: "bone-dry", Word: "Bone dry", Also: []string{"white-hard"}},
			{ID: "leather", Word: "Leather-hard"},
			{ID: "wash", Word: "Stain wash", Also: []string{"wash"}},
			{ID: "scm", Word: "Über-Engobe"},
		},
		Decoration: &course.Decoration{States: []course.State{{ID: "bone-dry", Name: "Dry as a bone"}, {ID: "leather-hard", Name: "Leather hard"}}},
	}
}

func TestTermsInATest(t *testing.T) {
	g := newGlossary(terms())
	tests := []struct{ text, want string }{
		{"Pour the slip on.", "slip:slip"},
		{"Slips, SLIP and slip's", "slip:Slips slip:SLIP slip:slip"},
		{"slipped slippery eggslip slip2", ""},
		{"the unfired glaze, unfired or glaze", "unfired-glaze:unfired glaze glaze:glaze"},
		{"unfired glazes", "unfired-glaze:unfired glazes"},
		{"bone dry, bone-dry, Bone Dry, bone. Dry", "bone-dry:bone dry bone-dry:bone-dry bone-dry:Bone Dry"},
		{"white hard or leather hard", "bone-dry:white hard leather:leather hard"},
		{"bone dry-footed, bone dry - so", "bone-dry:bone dry"},
		{"a stain wash washes a wash", "wash:stain wash wash:washes wash:wash"},
		{"on-glaze, glaze-fired, - glaze -", "glaze:glaze"},
		{"unfired glaze-fired", ""},
		{"eine über-engobe, Über Engobes", "scm:über-engobe scm:Über Engobes"},
		{"unfired", ""},
		{"\xffslip\xff \uFFFCslip", "slip:slip slip:slip"},
	}
	for _, test := range tests {
		var got []string
		g.scan(test.text, func(start, end, term int) {
			got = append(got, g.terms[term].ID+":"+test.text[start:end])
		})
		if strings.Join(got, " ") != test.want {
			t.Errorf("%q: got %q, want %q", test.text, strings.Join(got, " "), test.want)
		}
	}
}

// linked reads lessons and returns what is found about terms.
func linked(sources ...string) finding.List {
	c := terms()
	u := &course.Unit{ID: "u", Page: &course.Page{Kind: course.UnitPage, File: "units/u/unit.md", Address: "u/index.html", Source: []byte("slip, [glaze](glossary:glaze)\n")}}
	for i, source := range sources {
		u.Lessons = append(u.Lessons, &course.Page{Kind: course.LessonPage, File: fmt.Sprintf("units/u/%d.md", i+1), Address: fmt.Sprintf("u/%d.html", i+1), Source: []byte(source)})
	}
	c.Units = []*course.Unit{u}
	_, findings := new(Reader).Read(c, nil)
	var about finding.List
	for _, f := range findings {
		if f.Rule == finding.TermLink {
			about = append(about, f)
		}
	}
	return about
}

func TestTermLinks(t *testing.T) {
	const (
		says  = " warning: “%s” stands here in a lesson for the first time, and this page does not link it (term-link)\n    Write [%s](%s), here or elsewhere on this page%s."
		first = "units/u/1.md:"
	)
	say := func(place, word, to, state string) string { return place + fmt.Sprintf(says, word, word, to, state) }
	tests := []struct {
		name    string
		sources []string
		want    []string
	}{
		{"first use", []string{"Pour\nthe slip. More slip."}, []string{say(first+"2:5:", "slip", "glossary:slip", "")}},
		{"over two lines", []string{"It is *bone\ndry* now"}, []string{say(first+"1:8:", "bone dry", "glossary:bone-dry", ", or link state:bone-dry")}},
		{"the first lesson only", []string{"a", "The wash", "A wash"}, []string{say("units/u/2.md:1:5:", "wash", "glossary:wash", "")}},
		{"linked before", []string{"[slip](glossary:slip)", "slip"}, nil},
		{"linked on the same page", []string{"slip, [Slips](glossary:slip)"}, nil},
		{"linked as a state of the same id", []string{"bone dry, [dry](state:bone-dry)"}, nil},
		{"linked as a state of the same name", []string{"leather-hard, [so](state:leather-hard)"}, nil},
		{"linked too late", []string{"slip", "[slip](glossary:slip)"}, []string{say(first+"1:1:", "slip", "glossary:slip", "")}},
		{"linked for the instructor alone", []string{"slip\n\n```teaching\n[slip](glossary:slip)\n```"}, []string{say(first+"1:1:", "slip", "glossary:slip", "")}},
		{"a word of another link", []string{"[make slip](unit.md)", "slip"}, []string{say("units/u/2.md:1:1:", "slip", "glossary:slip", "")}},
		{"where no link can stand", []string{"## Slip\n\n![slip](../../pictures/jar.svg \"slip\") a[^a] `slip`\n\n[^a]: slip\n\n```question\nask: slip?\nanswers:\n  - {text: a, right: true, because: slip}\n  - {text: slip, because: a}\n```\n\n```teaching\nslip\n```"}, nil},
		{"in a caution, a cell, a definition", []string{"```caution Slip\nslip\n```\n\n| glaze |\n|---|\n\na\n: wash"}, []string{
			say(first+"2:1:", "slip", "glossary:slip", ""), say(first+"5:3:", "glaze", "glossary:glaze", ""), say(first+"9:3:", "wash", "glossary:wash", "")}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := texts(linked(test.sources...)); strings.Join(got, "\n") != strings.Join(test.want, "\n") {
				t.Errorf("got:\n%s\nwant:\n%s", strings.Join(got, "\n"), strings.Join(test.want, "\n"))
			}
		})
	}
}

func TestUnusedTerms(t *testing.T) {
	c := &course.Course{
		Glossary: []course.Term{
			{ID: "slip", Word: "Slip"},
			{ID: "glaze", Word: "Glaze", See: []string{"clay"}},
			{ID: "clay", Word: "Clay"},
			{ID: "wet", Word: "Wet"},
		},
		Decoration: &course.Decoration{States: []course.State{{ID: "wet", Name: "Wet"}}},
		Home:       &course.Page{Kind: course.HomePage, File: "home.md", Address: "index.html", Source: []byte("glaze, [slip](glossary:slip), [wet](state:wet)\n")},
	}
	_, findings := new(Reader).Read(c, nil)
	const want = "glossary.yaml:1:1: warning: nothing leads to the term “Glaze” (term-unused)\n    Link it as glossary:glaze where a lesson uses it, name it under “see” of another term, or take it out."
	if len(findings) != 1 || findings[0].String() != want {
		t.Errorf("got:\n%v\nwant:\n%s", findings, want)
	}
}

// FuzzTerms shows that terms are found in their order and as they are written.
func FuzzTerms(f *testing.F) {
	for _, seed := range []string{"slip", "unfired glaze-fired", "bone\xff-dry", "Über-engobe -slip- İ slips", "stain wash wash washes"} {
		f.Add(seed)
	}
	g := newGlossary(terms())
	f.Fuzz(func(t *testing.T, text string) {
		last := 0
		g.scan(text, func(start, end, term int) {
			if start < last || end <= start || end > len(text) || term < 0 || term >= len(g.terms) {
				t.Fatalf("%d to %d, term %d in %q", start, end, term, text)
			}
			last = end
		})
	})
}
