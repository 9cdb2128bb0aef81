package course_test

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
)

func TestLoadSmall(t *testing.T) {
	c, found := new(course.Reader).Load(coursetest.Small())
	if len(found) > 0 {
		t.Fatal(findings(found))
	}
	var order []string
	for _, p := range c.Pages() {
		order = append(order, string(p.Kind)+" "+p.File+" > "+p.Address)
	}
	want := []string{
		"home home.md > index.html",
		"unit units/slip/unit.md > slip/index.html",
		"lesson units/slip/mix.md > slip/mix.html",
		"lesson units/slip/measure.md > slip/measure.html",
		"unit units/wash/unit.md > wash/index.html",
		"lesson units/wash/thin.md > wash/thin.html",
		"lesson units/wash/wipe.md > wash/wipe.html",
	}
	if d := cmp.Diff(want, order); d != "" {
		t.Error(d)
	}
	settings := *c
	settings.Home, settings.Units, settings.Decoration, settings.Pictures, settings.GenericMaterials = nil, nil, nil, nil, nil
	if d := cmp.Diff(wantSettings, settings, cmpopts.IgnoreUnexported(course.Course{})); d != "" {
		t.Error(d)
	}
	page, ok := c.FindPage("units/slip/mix.md")
	if !ok {
		t.Fatal("units/slip/mix.md is not found")
	}
	if d := cmp.Diff(wantHead, page.Head); d != "" {
		t.Error(d)
	}
	var lessons []string
	for _, lesson := range page.Unit.Lessons {
		lessons = append(lessons, lesson.File)
	}
	if d := cmp.Diff([]string{"units/slip/mix.md", "units/slip/measure.md"}, lessons); d != "" {
		t.Error(d)
	}
}

var wantSettings = course.Course{
	BookParts: course.BookParts,
	Title:     "Colour at the bench", Description: "A handbook made up for tests.", Language: "en-GB", Decimal: '.',
	Measures: "metric", Licence: "CC BY-SA 4.0", PublishedAt: "https://handbook.example/",
	Studio:   course.Studio{Name: "The Test Bench", Note: "Nobody works here."},
	Cones:    course.HouseCones{Bisque: "06", Glaze: "6"},
	Sections: course.Sections{Look: "What to look for", Wrong: "What goes wrong"},
	Bodies: []course.Body{
		{ID: "buff", Name: "Buff stoneware", Shrinkage: 12, Cone: "6"},
		{ID: "white", Name: "White porcelain", Shrinkage: 14.5, Cone: "6"},
	},
	Glossary: []course.Term{
		{ID: "bisque", Word: "bisque", Also: []string{"biscuit"}, Means: "Clay that has been fired once, without glaze."},
		{ID: "specific-gravity", Word: "specific gravity", Means: "How many times as heavy as water something is.", See: []string{"bisque"}},
	},
}

var wantHead = course.Head{
	Title: "Mix a slip", Description: "From powder to bucket.", Creator: "The Test Bench", Date: "2026-09-01",
	Teaches: []string{"weigh the powder and the water"}, TimeRequired: 90, Medium: "coloured-slip", Technique: "mixing",
	Needs: []string{"a bucket", "a scale"},
	After: []course.Link{{File: "units/slip/measure.md"}},
}

// TestOpeningBlockIsBlanked makes sure that offsets in a page's source are
// offsets in its file, for all kinds of line ends and letters.
func TestOpeningBlockIsBlanked(t *testing.T) {
	for _, head := range []string{"---\ntitle: Größe\n---\n", "---\r\ntitle: Größe\r\n---\r\n", "--- \ntitle: x\n---\t\n"} {
		files := coursetest.Small()
		const body = "\nText after, é.\n"
		files["home.md"] = &fstest.MapFile{Data: []byte(head + body)}
		c, found := new(course.Reader).Load(files)
		if len(found) > 0 {
			t.Fatal(findings(found))
		}
		source := string(c.Home.Source)
		if len(source) != len(head+body) || source[len(head):] != body {
			t.Errorf("%q: source is %q", head, source)
		}
		blank := source[:len(head)]
		if strings.TrimSpace(blank) != "" || strings.Count(blank, "\n") != strings.Count(head, "\n") {
			t.Errorf("%q: opening block became %q", head, blank)
		}
	}
}

func TestLoadOfNoCourse(t *testing.T) {
	const needs = "A course needs course.yaml (with title, language, studio and units), home.md, decoration.yaml, and a folder units/NAME with a unit.md for each unit.\n"
	tests := []struct {
		name string
		fsys fs.FS
		want string
	}{
		{"empty folder", fstest.MapFS{}, "course.yaml:1:1: error: the folder is empty (course-needs)\n    " + needs},
		{"no such folder", os.DirFS("no-such-folder"), "course.yaml:1:1: error: the folder cannot be read: no such file or directory (course-needs)\n    " + needs},
		{"lessons alone", fstest.MapFS{"home.md": {}}, "course.yaml:1:1: error: there is no course.yaml in this folder (course-needs)\n    " + needs},
		{"name misspelt", fstest.MapFS{"course.yml": {}}, "course.yaml:1:1: error: there is no course.yaml in this folder (course-needs)\n    Did you mean this to be `course.yml`? Rename it. " + needs},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			c, found := new(course.Reader).Load(tt.fsys)
			if d := cmp.Diff(tt.want, findings(found)); d != "" {
				t.Error(d)
			}
			useAll(c)
			if len(c.Pages()) != 0 || c.Decimal != '.' || c.Language == "" || c.Measures == "" || c.Decoration == nil || c.Pictures == nil {
				t.Errorf("not usable: %+v", c)
			}
		})
	}
}

func TestLoadOfLargeFiles(t *testing.T) {
	files := coursetest.Small()
	files["home.md"] = &fstest.MapFile{Data: []byte("---\ntitle: x\n---\n" + strings.Repeat("x", 2<<20))}
	files["pictures/a.png"] = &fstest.MapFile{Data: make([]byte, 30<<20+1)}
	const do = "    Divide it, or make it smaller; no page of a handbook needs so much.\n"
	want := "home.md:1:1: error: the file is larger than 2 MiB (unreadable-file)\n" + do +
		"pictures/a.png:1:1: error: the file is larger than 30 MiB (unreadable-file)\n" + do
	_, found := new(course.Reader).Load(files)
	if d := cmp.Diff(want, findings(found)); d != "" {
		t.Error(d)
	}
}

// TestLoadOfManyFaults makes sure that a file of nothing but faults costs
// little and that the rest is owned up to.
func TestLoadOfManyFaults(t *testing.T) {
	files := coursetest.Small()
	var b strings.Builder
	b.WriteString("terms: []\n")
	for i := range 50_000 {
		fmt.Fprintf(&b, "key%d: x\n", i)
	}
	files["glossary.yaml"] = &fstest.MapFile{Data: []byte(b.String())}
	_, found := new(course.Reader).Load(files)
	if len(found) != 201 {
		t.Fatalf("%d findings, want 201", len(found))
	}
	const want = "glossary.yaml:202:1: warning: more than 200 things are wrong with this file (too-many)\n    Mend those shown first; the rest will show then."
	if got := found[200].String(); got != want {
		t.Errorf("got %s", got)
	}
}

// TestTablesThatThePlannerCannotTake makes sure that nobody publishes a table
// with which no page could plan.
func TestTablesThatThePlannerCannotTake(t *testing.T) {
	for _, c := range []struct {
		products int
		want     string
	}{{300, ""}, {1000, "decoration.yaml:1:1: error: the calculators cannot take this decoration table with the course's clays and scales: "}} {
		files := coursetest.Small()
		var b strings.Builder
		b.Write(bytes.TrimSuffix(files["decoration.yaml"].Data, []byte("base: no\n")))
		for i := range c.products {
			fmt.Fprintf(&b, "  - {id: engobe-%d, kind: product, name: Engobe %d of the house that nobody makes, medium: coloured-slip, words: [the engobe of the house number %d], states: {bone-dry: {verdict: yes, reason: It is made for bone-dry clay and says so on the label of its bucket., short: Its label says so.}}}\n", i, i, i)
		}
		files["decoration.yaml"] = &fstest.MapFile{Data: []byte(b.String() + "base: no\n")}
		_, found := new(course.Reader).Load(files)
		if got := findings(found); !strings.HasPrefix(got, c.want) || (got == "") != (c.want == "") {
			t.Errorf("%d products: %s", c.products, got)
		}
	}
}

// TestPagesTogether makes sure that a course of any size is read in bounded
// memory.
func TestPagesTogether(t *testing.T) {
	files := coursetest.Small()
	page := append(files["units/slip/mix.md"].Data, bytes.Repeat([]byte("a "), 900_000)...)
	list := ""
	for i := range 30 {
		files[fmt.Sprintf("units/slip/more-%d.md", i)] = &fstest.MapFile{Data: page}
		list += fmt.Sprintf("  - more-%d\n", i)
	}
	unit := files["units/slip/unit.md"]
	unit.Data = bytes.Replace(unit.Data, []byte("lessons:\n"), []byte("lessons:\n"+list), 1)
	_, found := new(course.Reader).Load(files)
	if got := findings(found); !strings.Contains(got, "units/slip/more-18.md:1:1: error: up to this one, all pages together are larger than 32 MiB (unreadable-file)\n    Divide the course in two.\n") {
		t.Errorf("got %s", got[:min(len(got), 3000)])
	}
}

// unreadable is a file system where one file cannot be opened.
type unreadable struct {
	fs.FS
	path string
}

func (u unreadable) Open(name string) (fs.File, error) {
	if name == u.path {
		return nil, &fs.PathError{Op: "open", Path: "/somewhere/" + name, Err: fs.ErrPermission}
	}
	return u.FS.Open(name)
}

func (u unreadable) Stat(name string) (fs.FileInfo, error) { return fs.Stat(u.FS, name) }

func TestLoadOfUnreadableFile(t *testing.T) {
	_, found := new(course.Reader).Load(unreadable{coursetest.Small(), "units/slip/mix.md"})
	const want = "units/slip/mix.md:1:1: error: the file cannot be read: permission denied (unreadable-file)\n    Check its name and who may read it.\n"
	if d := cmp.Diff(want, findings(found)); d != "" {
		t.Error(d)
	}
}

// many is a course of n lessons, the one in the middle of every unit without
// a title.
func many(units, lessons int) fstest.MapFS {
	files := coursetest.Small()
	for name := range files {
		if strings.HasPrefix(name, "units/") {
			delete(files, name)
		}
	}
	hazards := string(files["hazards.yaml"].Data)
	for _, lesson := range []string{"units/wash/wipe.md", "units/wash/thin.md"} {
		hazards = strings.Replace(hazards, lesson, "units/unit-0/lesson-0.md", 1)
	}
	files["hazards.yaml"] = &fstest.MapFile{Data: []byte(hazards)}
	settings := string(files["course.yaml"].Data)
	settings = settings[:strings.Index(settings, "units:")] + "units:\n"
	body := strings.Repeat("A line of a lesson about slip.\n", 300)
	for u := range units {
		settings += fmt.Sprintf("  - unit-%d\n", u)
		list := ""
		for l := range lessons {
			list += fmt.Sprintf("  - lesson-%d\n", l)
			title := "title: A lesson\n"
			if l == lessons/2 {
				title = ""
			}
			files[fmt.Sprintf("units/unit-%d/lesson-%d.md", u, l)] = &fstest.MapFile{Data: []byte("---\n" + title + "description: What it is about.\nmedium: coloured-slip\n---\n" + body)}
		}
		files[fmt.Sprintf("units/unit-%d/unit.md", u)] = &fstest.MapFile{Data: []byte("---\ntitle: A unit\nlessons:\n" + list + "---\n")}
	}
	files["course.yaml"] = &fstest.MapFile{Data: []byte(settings)}
	return files
}

func TestLoadIsDeterministic(t *testing.T) {
	files := many(5, 40)
	c, found := new(course.Reader).Load(files)
	if len(found) != 5 || len(c.Pages()) != 1+5+200 {
		t.Fatalf("%d findings, %d pages", len(found), len(c.Pages()))
	}
	for range 5 {
		again, foundAgain := new(course.Reader).Load(files)
		if findings(found) != findings(foundAgain) {
			t.Fatal("findings differ from one time to the next")
		}
		for i, p := range again.Pages() {
			if p.File != c.Pages()[i].File {
				t.Fatalf("page %d is %s, was %s", i, p.File, c.Pages()[i].File)
			}
		}
	}
}

// TestLoadReadsThroughTheFileSystemAlone makes sure that no path asked for is
// outside of what fs.FS allows.
func TestLoadReadsThroughTheFileSystemAlone(t *testing.T) {
	files := coursetest.Small()
	edit{"course.yaml", "- wash", "- wash\n  - ..\n  - /etc\n  - ../../etc"}.apply(t, files)
	edit{slip, "- measure", "- measure\n  - ../../../etc/passwd\n  - ."}.apply(t, files)
	asked := &recording{FS: files}
	new(course.Reader).Load(asked)
	for _, name := range asked.names {
		if !fs.ValidPath(name) || strings.Contains(name, "etc") {
			t.Errorf("asked for %q", name)
		}
	}
	if len(asked.names) == 0 {
		t.Error("nothing was asked for")
	}
}

// recording notes the names that are opened.
type recording struct {
	fs.FS
	mu    sync.Mutex
	names []string
}

func (r *recording) Open(name string) (fs.File, error) {
	r.mu.Lock()
	r.names = append(r.names, name)
	r.mu.Unlock()
	return r.FS.Open(name)
}

// BenchmarkLoad reads 2,000 lessons of 9 KB.
func BenchmarkLoad(b *testing.B) {
	files := many(20, 100)
	b.ReportAllocs()
	for b.Loop() {
		c, _ := new(course.Reader).Load(files)
		if len(c.Pages()) != 2021 {
			b.Fatal(len(c.Pages()))
		}
	}
}
