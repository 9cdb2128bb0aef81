// Package presstest is what the tests of the rooms of the press share: the small
// course as it is read, the studio theme, files that pages load. It exists so that a
// room is tried by itself with the same course as the press that joins them.
package presstest

import (
	"testing"

	"slipbook/generator/assets"
	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
	"slipbook/generator/finding"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
	"slipbook/themes"
)

// Small loads the course that tests share; each call gives a new one, which
// the test may change.
func Small(t testing.TB) *course.Course {
	t.Helper()
	c, found := new(course.Reader).Load(coursetest.Small())
	if found.Stop() {
		t.Fatalf("the small course has faults: %v", found)
	}
	return c
}

// Harmful is the small course with hazards: the wash is for students with the
// instructor and makes dust, slip cuts on bone-dry clay, wiping on bisque is the
// instructor's and needs a mask of its own.
func Harmful(t testing.TB) *course.Course {
	t.Helper()
	c := Small(t)
	d := c.Decoration
	d.Hazards = append(d.Hazards, course.Hazard{ID: "mist", Title: "Mist & spray", Harm: "It goes deep.", Do: "Stay out of it. Wear the mask.", Short: "Mask on, fan on.", Mark: []string{"mask"}, Wear: []string{"a mask"}, Health: true})
	d.Media[1].Care = course.Care{Hazards: []string{"dust"}, Who: course.WithInstructor}
	Change(d.Media[0].On, "wet", func(p *course.Pair) { p.Hazards = []string{"blade"} })
	Change(d.Media[0].On, "bone-dry", func(p *course.Pair) { p.Hazards = []string{"blade"} })
	d.Techniques[0].Hazards = []string{"blade"}
	d.Techniques[0].On["bisque"][0].Care = course.Care{Hazards: []string{"mist"}, Who: course.Instructor}
	d.Transitions[2].Care = course.Care{Hazards: []string{"mist"}, Who: course.Instructor} // the bisque firing
	return c
}

// Change changes a pair.
func Change(on map[string]course.Pair, state string, change func(*course.Pair)) {
	p := on[state]
	change(&p)
	on[state] = p
}

// Parted is the small course with wiping back for both media, which it treats
// differently on bisque.
func Parted(t testing.TB) *course.Course {
	t.Helper()
	c := Small(t)
	q := &c.Decoration.Techniques[0]
	q.With = nil
	q.On["bisque"] = course.Cell{
		{Only: []string{"stain-wash"}, Pair: course.Pair{Verdict: course.Yes, Reason: "It wipes clean."}},
		{Pair: course.Pair{Verdict: course.Never, Rule: "trade", Reason: "It flakes. The exception is an engobe.", Fault: "It is gone.", Remedy: "Wait."}},
	}
	return c
}

// Read reads every page of a course, whose pages have no errors.
func Read(t testing.TB, c *course.Course) *proof.Reading {
	t.Helper()
	r, found := new(proof.Reader).Read(c, nil)
	for _, f := range found {
		if (finding.List{f}).Stop() {
			t.Fatalf("the pages have faults: %v", f)
		}
	}
	return r
}

// Studio reads the studio theme, whatever templates it has.
func Studio(t testing.TB) *theme.Theme {
	t.Helper()
	folder, err := themes.Open("studio", "en-GB")
	if err != nil {
		t.Fatal(err)
	}
	studio, err := theme.Open(folder, nil)
	if err != nil {
		t.Fatal(err)
	}
	return studio
}

// Bundle stands for the files that pages share.
func Bundle() *assets.Bundle {
	b := &assets.Bundle{
		Style: "assets/studio-AAAA.css",
		Page:  "assets/page-AAAA.js",
		Icon:  "assets/icon-AAAA.svg",
		Book:  "assets/book-AAAA.css",

		Gathered: "assets/gathered-AAAA.css",
		Desk: assets.Desk{
			Script:  "assets/desk-AAAA.js",
			Engine:  "assets/engine-AAAA.bin",
			Carried: "assets/carried-AAAA.js",
		},
		Lesson: assets.Lesson{
			Script:    "assets/lesson-AAAA.js",
			StepView:  "assets/stepview-AAAA.js",
			StepStyle: "assets/stepview-AAAA.css",
		},
		Files: map[string][]byte{},
	}
	for _, address := range []string{b.Lesson.Script, b.Lesson.StepView, b.Lesson.StepStyle, b.Style, b.Page, b.Book, b.Gathered, b.Icon, b.Desk.Script, b.Desk.Engine, b.Desk.Carried} {
		b.Files[address] = []byte(address)
	}
	return b
}
