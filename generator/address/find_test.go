package address

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
)

const (
	sayPages   = "Links lead to .md pages that course.yaml and the units list; write the path from this file."
	sayPicture = markup.PictureHelp
)

// small makes the table of a small handbook: three pages, two pictures, one term,
// one state. The lesson has the source given.
func small(source string) (*Map, *course.Page) {
	home := &course.Page{Kind: course.HomePage, File: "home.md", Address: "index.html"}
	unit := &course.Unit{ID: "slip"}
	lesson := &course.Page{Kind: course.LessonPage, File: "units/slip/lesson.md", Address: "slip/lesson.html", Unit: unit, Source: []byte(source)}
	other := &course.Page{Kind: course.LessonPage, File: "units/wash/strength.md", Address: "wash/strength.html", Unit: unit, Source: []byte("## How\n")}
	unit.Lessons = []*course.Page{lesson, other}
	c := &course.Course{
		Home: home, Units: []*course.Unit{unit},
		Tiles:      []*course.Tile{{Code: "R7"}, {Code: "R12"}},
		Faults:     []*course.Fault{{ID: "crawling", Sees: "It crawls"}},
		Glossary:   []course.Term{{ID: "bisque", Word: "Bisque"}},
		Decoration: &course.Decoration{States: []course.State{{ID: "bisque", Name: "Bisque"}}},
		Pictures: map[string]*course.Picture{
			"pictures/jar.svg":    {Path: "pictures/jar.svg", SVG: []byte("<svg/>")},
			"pictures/bucket.png": course.Whole("pictures/bucket.png", 1, 1, []byte("bucket")),
		},
	}
	var documents []*markup.Document
	for _, p := range c.Pages() {
		d, _ := markup.Read(p.Source, "en-GB")
		documents = append(documents, d)
	}
	return New(c, documents), lesson
}

// found resolves every reference of a lesson and returns what is wrong, one a
// line, and where the others lead.
func found(source string) (faults, targets []string) {
	m, lesson := small(source)
	d, _ := markup.Read([]byte(source), "en-GB")
	lines := finding.NewLines([]byte(source))
	for _, r := range d.Refs {
		target, fault := m.Find(lesson, r)
		if fault != nil {
			line, column := lines.At(r.Offset)
			faults = append(faults, fmt.Sprintf("%d:%d %s: %s | %s", line, column, fault.Rule.ID, fault.Text, fault.Do))
			continue
		}
		if target.Picture != nil {
			target.Address += " of " + target.Picture.Path
		}
		targets = append(targets, target.Address)
	}
	return faults, targets
}

// TestFaults holds what can be wrong with a reference against its words and its
// place.
func TestFaults(t *testing.T) {
	tests := []struct{ name, source, want string }{
		{"missing page", "See [a](nope.md).", `1:5 link-target: link to "nope.md": there is no such page (looked for units/slip/nope.md) | ` + sayPages},
		{"missing page in a quoted list", "> 1. See [a](nope.md).", `1:10 link-target: link to "nope.md": there is no such page (looked for units/slip/nope.md) | ` + sayPages},
		{"missing page in a table cell", "| a | b |\n|---|---|\n| c | ü [d](nope.md) |",
			`3:9 link-target: link to "nope.md": there is no such page (looked for units/slip/nope.md) | ` + sayPages}, // in characters
		{"missing page in a caution in a list", "- x\n\n  ```caution\n  > See [a](nope.md).\n  ```",
			`4:9 link-target: link to "nope.md": there is no such page (looked for units/slip/nope.md) | ` + sayPages},
		{"missing page in a footnote", "a[^1]\n\n[^1]: See [a](nope.md).", `3:11 link-target: link to "nope.md": there is no such page (looked for units/slip/nope.md) | ` + sayPages},
		{"missing page by reference", "a [b][c]\n\n[c]: nope.md", `1:3 link-target: link to "nope.md": there is no such page (looked for units/slip/nope.md) | ` + sayPages},
		{"published address instead of the file", "[a](../wash/strength.html)",
			`1:1 link-target: link to "../wash/strength.html": there is no such page (looked for units/wash/strength.html) | Write the path to units/wash/strength.md.`},
		{"link to a picture", "[a](../../pictures/jar.svg)",
			`1:1 link-target: link to "../../pictures/jar.svg": there is no such page (looked for pictures/jar.svg) | That is a picture; show it with ![what it shows](path).`},
		{"out of the folder", "[a](../../../secret.md)", `1:1 link-target: link to "../../../secret.md": this leaves the content folder | Write the path to a .md page inside it.`},
		{"missing heading", "## Stir\n\n[a](#sitr)", `3:1 link-target: link to "#sitr": this page has no such heading | Its headings are #stir.`},
		{"missing heading by the page's own path", "[a](lesson.md#x)",
			`1:1 link-target: link to "lesson.md#x": this page has no such heading | That page has no headings; link to the page itself.`},
		{"a step too far", "1. Stir.\n2. See [a](#step-3).", `2:8 link-target: link to "#step-3": units/slip/lesson.md has no step 3 | Did you mean #step-2? Its steps are #step-1 to #step-2.`},
		{"step nought", "1. Stir, see [a](lesson.md#step-0).", `1:14 link-target: link to "lesson.md#step-0": units/slip/lesson.md has no step 0 | Did you mean #step-1? Its steps are #step-1 to #step-1.`},
		{"a step of a page without any", "[a](../wash/strength.md#step-1)", `1:1 link-target: link to "../wash/strength.md#step-1": units/wash/strength.md has no steps | Its headings are #how.`},
		{"a step of a page that is no lesson", "[a](../../home.md#step-1)", `1:1 link-target: link to "../../home.md#step-1": the steps of home.md are not numbered through, since it is no lesson at the bench | That page has no headings; link to the page itself.`},
		{"a step by another number", "1. Stir.\n2. As in [Step 2](#step-1).", `2:10 link-target: link to "#step-1": its words say step 2, and it leads to step 1 | Write the number of the step that is meant both times.`},
		{"missing term", "[a](glossary:biscuit)", `1:1 link-target: link to "glossary:biscuit": there is no such term | Write the id of a term of glossary.yaml.`},
		{"missing state", "[a](state:biscuit)", `1:1 link-target: link to "state:biscuit": there is no such clay state | Write the id of a state of decoration.yaml.`},
		{"missing calculator", "[a](calculator:x)", `1:1 link-target: link to "calculator:x": there is no such calculator | Write the name of a calculator; “slipbook calc” lists them.`},
		{"missing tile", "[a](tile:X1)", `1:1 link-target: link to "tile:X1": there is no such tile | Write the code of a tile of tiles.csv, such as tile:R7.`},
		{"missing fault", "[a](fault:shivers)", `1:1 link-target: link to "fault:shivers": there is no such fault | Write the id of a fault of faults.yaml.`},
		{"fault misspelt", "[a](fault:crawlin)", "1:1 link-target: link to \"fault:crawlin\": there is no such fault | Did you mean `crawling`? Write the id of a fault of faults.yaml."},
		{"tile misspelt", "[a](tile:R112)", "1:1 link-target: link to \"tile:R112\": there is no such tile | Did you mean `R12`? Write the code of a tile of tiles.csv, such as tile:R7."},
		{"missing picture", "a ![b](../../pictures/x.svg)", `1:3 picture-file: picture "../../pictures/x.svg": there is no such picture (looked for pictures/x.svg) | ` + sayPicture},
		{"picture misspelt", "a ![b](../../pictures/jra.svg)", `1:3 picture-file: picture "../../pictures/jra.svg": there is no such picture (looked for pictures/jra.svg) | Did you mean ` + "`../../pictures/jar.svg`? " + sayPicture},
		{"picture from the wrong folder", "a ![b](pictures/jar.svg)", `1:3 picture-file: picture "pictures/jar.svg": there is no such picture (looked for units/slip/pictures/jar.svg) | Did you mean ` + "`../../pictures/jar.svg`? " + sayPicture},
		{"page misspelt", "[a](../wash/strenght.md)", `1:1 link-target: link to "../wash/strenght.md": there is no such page (looked for units/wash/strenght.md) | Did you mean ` + "`../wash/strength.md`? " + sayPages},
		{"page of another unit", "[a](strength.md)", `1:1 link-target: link to "strength.md": there is no such page (looked for units/slip/strength.md) | Did you mean ` + "`../wash/strength.md`? " + sayPages},
		{"term misspelt", "[a](glossary:bisqe)", "1:1 link-target: link to \"glossary:bisqe\": there is no such term | Did you mean `bisque`? Write the id of a term of glossary.yaml."},
		{"state misspelt", "[a](state:biqsue)", "1:1 link-target: link to \"state:biqsue\": there is no such clay state | Did you mean `bisque`? Write the id of a state of decoration.yaml."},
		{"calculator misspelt", "[a](calculator:slip-densty)", "1:1 link-target: link to \"calculator:slip-densty\": there is no such calculator | Did you mean `slip-density`? Write the name of a calculator; “slipbook calc” lists them."},
		{"missing heading of another page", "[a](../wash/strength.md#hwo)", "1:1 link-target: link to #hwo: units/wash/strength.md has no such heading | Its headings are #how."},
		{"missing calculator with its boxes filled in", "[1](calculator:none?a=b)", `1:1 link-target: link to "calculator:none": there is no such calculator | Write the name of a calculator; “slipbook calc” lists them.`},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got, _ := found(test.source); strings.Join(got, "\n") != test.want {
				t.Errorf("got:\n%s\nwant:\n%s", strings.Join(got, "\n"), test.want)
			}
		})
	}
}

// TestTargets holds references against where they lead.
// TestSeveralFilesOfANameAreNotGuessed wants no file to be named as meant where two
// are as likely.
func TestSeveralFilesOfANameAreNotGuessed(t *testing.T) {
	page := &course.Page{File: "units/slip/lesson.md"}
	one, two := "pictures/kiln/jar.svg", "pictures/bench/jar.svg"
	if got, want := meant(page, "jar.svg", slices.Values([]string{one})), "Did you mean `../../pictures/kiln/jar.svg`? "; got != want {
		t.Errorf("of one: %q, want %q", got, want)
	}
	if got := meant(page, "jar.svg", slices.Values([]string{one, two})); got != "" {
		t.Errorf("of two: %q", got)
	}
}

func TestTargets(t *testing.T) {
	source := "## Größe\n\n[a](../wash/strength.md) [b](../../home.md) [c](../wash/strength.md#how) [d](lesson.md) [e](#größe) [f](lesson.md#größe)\n" +
		"[g](glossary:bisque) [h](state:bisque) [i](calculator:slip-density) [j](calculator:slip-density?mass=1) ![k](../../pictures/jar.svg) ![l](../../pictures/bucket.png) [m](tile:r7) [n](fault:crawling)\n"
	faults, got := found(source)
	want := []string{
		"wash/strength.html", "index.html", "wash/strength.html#how", "slip/lesson.html", "slip/lesson.html#gr%C3%B6%C3%9Fe", "slip/lesson.html#gr%C3%B6%C3%9Fe",
		"glossary.html#bisque", "states/bisque.html", "calculators/slip-density.html", "calculators/slip-density.html", "tiles/index.html#tile.r7", "faults.html#crawling",
		" of pictures/jar.svg", "pictures/bucket-YWDZXDJF.png of pictures/bucket.png",
	}
	for n := range max(len(got), len(want)) {
		if n >= len(got) || n >= len(want) || got[n] != want[n] {
			t.Fatalf("%q\nwant %q\nfaults %q", got, want, faults)
		}
	}
}

// TestNoUnitTakesAFolder wants the folders of pages that no Markdown file holds to
// be refused as names of units, so that no lesson is lost behind one.
func TestNoUnitTakesAFolder(t *testing.T) {
	for _, a := range []string{Home, Contents, Glossary, NotFound, Calculators, Chart, Answers, Faults, Hazards, Teaching, Book, Cards, Volume("1"), State("x"), Medium("x"), Calculator("x"), Card("x"), "assets/x.css", "pictures/x.png"} {
		if folder, _, inOne := strings.Cut(a, "/"); inOne && !course.Reserved(folder) {
			t.Errorf("a unit may be called %q, where %s is", folder, a)
		}
	}
}
