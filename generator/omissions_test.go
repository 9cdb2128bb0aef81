package main

import (
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/proof"
)

// omission is something that somebody forgot to write into the demo course, and where
// proof is to say so.
type omission struct {
	file, was, is string
	at            string // the words at which the finding stands, in the line that was left
	rule          *finding.Rule
}

// omissions are a dozen and a half in one course: each is a way in which somebody at
// the bench could be hurt.
var omissions = []omission{
	{"materials/river-ball-clay.yaml", "  read-by: Marit Olsen\n", "", "supplier:", finding.MaterialSheet},
	{"materials/cobalt-carbonate.yaml", "review: 2036-03-01", "review: 2026-03-10", "2026-03-10", finding.SheetReview},
	{"materials/copper-carbonate.yaml", "is: copper-carbonate\n", "is: copper-carbonate\nhazards: []\n", "[]", finding.MaterialDust},
	{"materials/manganese-dioxide.yaml", "who: instructor", "who: student", "student", finding.MaterialFloor},
	{"materials/wren-blue-stain.yaml", "signal: Warning", "signal: none", "none", finding.MaterialClass},
	{"materials/soda-ash.yaml", "pictograms: [GHS07]", "pictograms: []", "[]", finding.MaterialClass},
	{"materials/yard-flint.yaml", "classified: yes\nsignal: Danger\npictograms: [GHS08]\n", "", "name", finding.MaterialSheet},
	{"materials/red-iron-oxide.yaml", "sheet:\n", "sheets:\n", "sheets", finding.UnknownKey},
	{"materials/pale-china-clay.yaml", `"1332-58-7"`, `"1332-58-8"`, "[", finding.MaterialNumber},
	{"recipes/wren-blue-slip.yaml", "wren-blue-stain, percent: 8, of: base", "wren-blue-stain, percent: 8", "{material: wren", finding.RecipeAddition},
	{"recipes/reed-green-slip.yaml", "material: reed-green-stain", "material: chromium-oxide", "chromium-oxide", finding.RecipeMaterial},
	{"recipes/dog-rose-slip.yaml", `cone: "6"`, `cone: "10"`, "dog-rose-stain", finding.RecipeCone},
	{"recipes/soot-black-slip.yaml", "food: no", "food: yes", "yes", finding.RecipeFood},
	{"recipes/iron-wash.yaml", "red-iron-oxide, parts: 50", "red-iron-oxide, parts: 40", "- ", finding.RecipeBase},
	{"recipes/primrose-slip-cone-04.yaml", "clear: studio-clear-04", "clear: heron-clear", "heron-clear", finding.RecipeMaterial},
}

// TestOmissionsAreFound leaves them all out at once: each is found at its place, by its
// rule, with what to do, and nothing else is.
func TestOmissionsAreFound(t *testing.T) {
	content := demoCopy(t)
	for _, o := range omissions {
		data := string(content[o.file].Data)
		if strings.Count(data, o.was) != 1 {
			t.Fatalf("%s has %q %d times", o.file, o.was, strings.Count(data, o.was))
		}
		content[o.file] = &fstest.MapFile{Data: []byte(strings.Replace(data, o.was, o.is, 1))}
	}
	found := foundIn(t, content, "2026-11-20")
	for _, o := range omissions {
		lines := strings.Split(string(content[o.file].Data), "\n")
		if !slices.ContainsFunc(found, func(f finding.Finding) bool {
			if f.File != o.file || f.Rule != o.rule || f.Line < 1 || f.Line > len(lines) || f.Do == "" {
				return false
			}
			return strings.HasPrefix(string([]rune(lines[f.Line-1])[f.Column-1:]), o.at)
		}) {
			t.Errorf("%s, %q left out: no %s at %q", o.file, o.was, o.rule.ID, o.at)
		}
	}
	for _, f := range found {
		if !slices.ContainsFunc(omissions, func(o omission) bool { return o.file == f.File }) {
			t.Errorf("nothing was left out there: %v", f)
		}
	}
}

// demoCopy is the demo course, to be written in.
func demoCopy(t *testing.T) fstest.MapFS {
	t.Helper()
	content := fstest.MapFS{}
	demo := os.DirFS("../content")
	err := fs.WalkDir(demo, ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := fs.ReadFile(demo, name)
		content[name] = &fstest.MapFile{Data: data, Mode: 0o644}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return content
}

// foundIn returns what proof finds in a course on some day.
func foundIn(t *testing.T, content fs.FS, today string) finding.List {
	t.Helper()
	c, found := new(course.Reader).Load(content)
	reader := proof.Reader{Today: today}
	_, all := reader.Read(c, found)
	return all
}
