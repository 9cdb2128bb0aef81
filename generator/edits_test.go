package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
	"slipbook/generator/finding"
	"slipbook/themes"
)

// edits is how many random edits are tried, fewer where the race detector makes
// each slow. What is kept from one edition to the
// next must never show: each time the handbook is the same, byte for byte, and
// the same is found, as if it were made from nothing.
var edits = map[bool]int{false: 500, true: 40}[raced]

// TestEditsGiveWhatAFreshStartGives edits lessons, tables, pictures, words and the
// theme, adds, renames and removes pages, and now and then breaks something.
func TestEditsGiveWhatAFreshStartGives(t *testing.T) {
	w := newWriter(t)
	var reader course.Reader
	kept := &handbook{lessons: func() (*course.Course, finding.List) { return reader.Load(w.content) }, theme: w.look}
	for n := range edits {
		what := w.edit()
		was, is := w.edition(kept), w.edition(w.handbook())
		w.failed = is.files == nil
		if !slices.Equal(was.found, is.found) {
			t.Fatalf("edit %d, %s: findings\n%v\na fresh start gives\n%v", n, what, was.found, is.found)
		}
		if (was.files == nil) != (is.files == nil) || len(was.files) != len(is.files) {
			t.Fatalf("edit %d, %s: %d files, a fresh start gives %d", n, what, len(was.files), len(is.files))
		}
		for name, data := range is.files {
			if !bytes.Equal(was.files[name], data) {
				t.Fatalf("edit %d, %s: %s is not what a fresh start gives", n, what, name)
			}
		}
	}
	t.Logf("%d edits, %d of which broke something", edits, w.broken)
}

// writer is somebody who edits a course and a theme.
type writer struct {
	t              *testing.T
	r              *rand.Rand
	content, theme fstest.MapFS
	sound          fstest.MapFS // the content as it was when nothing was wrong last
	failed         bool         // the last edition had errors
	added, broken  int
	shared         handbook // what a fresh start makes of the theme alone, as long as that is the same
}

func newWriter(t *testing.T) *writer {
	studio, err := themes.Open(houseTheme, "en-GB")
	if err != nil {
		t.Fatal(err)
	}
	w := &writer{t: t, r: rand.New(rand.NewPCG(9, 500)), content: coursetest.Small(), theme: fstest.MapFS{}}
	err = fs.WalkDir(studio, ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := fs.ReadFile(studio, name)
		w.theme[name] = &fstest.MapFile{Data: data, Mode: 0o644}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, unit := range []string{"slip", "wash"} { // each lesson of a list on a line of its own
		name := "units/" + unit + "/unit.md"
		if head, rest, short := strings.Cut(w.text(name), "lessons: ["); short {
			list, rest, _ := strings.Cut(rest, "]")
			put(w.content, name, head+"lessons:\n  - "+strings.ReplaceAll(list, ", ", "\n  - ")+rest)
		}
	}
	for name, file := range w.content {
		put(w.content, name, string(file.Data))
	}
	w.sound = maps.Clone(w.content)
	return w
}

// handbook makes a handbook that has kept nothing yet of the course.
func (w *writer) handbook() *handbook {
	w.shared.theme = w.look
	if _, err := w.shared.bundle(""); err != nil {
		w.t.Fatal(err)
	}
	return &handbook{lessons: w.load, theme: w.look, look: w.shared.look, shared: w.shared.shared, made: w.shared.made}
}

func (w *writer) look(string) (fs.FS, error) { return w.theme, nil }

func (w *writer) load() (*course.Course, finding.List) { return new(course.Reader).Load(w.content) }

// outcome is what an edition came to.
type outcome struct {
	found finding.List
	files map[string][]byte
}

func (w *writer) edition(h *handbook) outcome {
	w.t.Helper()
	e, found, err := h.print(w.t.Context())
	if err != nil {
		w.t.Fatal(err)
	}
	if e == nil {
		return outcome{found: found}
	}
	files := map[string][]byte{}
	addresses, err := e.Addresses()
	if err != nil {
		w.t.Fatal(err)
	}
	for _, address := range addresses {
		if files[address], _, err = e.File(address); err != nil {
			w.t.Fatal(err)
		}
	}
	return outcome{found, files}
}

// edit does one random thing, and says what. After one that broke something, the
// course is put back as it was.
func (w *writer) edit() string {
	if w.failed {
		w.broken++
		w.content = maps.Clone(w.sound)
		return "put back"
	}
	w.sound = maps.Clone(w.content)
	kinds := []struct {
		name string
		do   func() string
	}{
		{"words of a page", w.words}, {"words of a page", w.words}, {"words of a page", w.words}, {"title", w.title}, {"link", w.link},
		{"glossary", w.glossary}, {"table", w.table}, {"hazard", w.hazard}, {"settings", w.settings}, {"picture", w.picture}, {"register", w.stock}, {"register", w.stock}, {"class", w.class},
		{"new lesson", w.newLesson}, {"lesson gone", w.dropLesson}, {"lesson renamed", w.rename}, {"units in another order", w.order},
		{"word of the theme", w.themeWord}, {"page of the theme", w.themePage}, {"broken", w.breakIt},
	}
	k := kinds[w.r.IntN(len(kinds))]
	return k.name + " " + k.do()
}

// put changes a file, later than any was changed before, and long ago.
func put(files fstest.MapFS, name, text string) {
	changes++
	files[name] = &fstest.MapFile{Data: []byte(text), Mode: 0o644, ModTime: time.Unix(changes, 0)}
}

// changes counts the changes of files.
var changes int64

// pages lists the Markdown files.
func (w *writer) pages() []string {
	var all []string
	for name := range w.content {
		if strings.HasSuffix(name, ".md") {
			all = append(all, name)
		}
	}
	slices.Sort(all)
	return all
}

// lessons lists those of them that are lessons.
func (w *writer) lessonFiles() []string {
	return slices.DeleteFunc(w.pages(), func(name string) bool { return name == "home.md" || strings.HasSuffix(name, "/unit.md") })
}

func (w *writer) pick(of []string) string { return of[w.r.IntN(len(of))] }

func (w *writer) text(name string) string { return string(w.content[name].Data) }

// bits are what somebody writes into a lesson.
var bits = []string{
	"Stir it once more, and say 8 g and \"so\".", "## Another part\n\nWords.", "```caution Heat\nIt is hot.\n```", "- one\n- two", "## What to look for\n\n- It shines.",
	"## What goes wrong\n\nIt runs\n: It is too thin.", "```asked Why so?\nBecause.[^x]\n```\n\n[^x]: Common practice.", "```teaching\nShow it.\n```",
	"```calculator slip-density\nvolume: 100 mL\n```", "```stages\nmedium: coloured-slip\n```", "See [bisque](glossary:bisque) and [wet](state:wet).",
	"[0.5 g](calculator:slip-colour?volume=100+mL&specific-gravity=1.45&stain=1)", "![A jar that teaches how full a jar is](../../pictures/jar.svg \"A jar\")",
}

func (w *writer) words() string {
	name := w.pick(w.pages())
	if parts := strings.SplitAfter(w.text(name), "\n\n"); len(parts) > 3 && w.r.IntN(3) == 0 {
		at := 1 + w.r.IntN(len(parts)-2)
		put(w.content, name, strings.Join(slices.Delete(parts, at, at+1), ""))
		return name + " fewer"
	}
	put(w.content, name, strings.TrimRight(w.text(name), "\n")+"\n\n"+w.pick(bits)+"\n")
	return name + " more"
}

func (w *writer) title() string {
	name := w.pick(w.pages())
	put(w.content, name, strings.Replace(w.text(name), "title: ", "title: New ", 1))
	return name
}

func (w *writer) link() string {
	from, to := w.pick(w.lessonFiles()), w.pick(w.lessonFiles())
	put(w.content, from, w.text(from)+"\n[there](../../"+to+")\n")
	return from + " to " + to
}

func (w *writer) glossary() string {
	w.added++
	put(w.content, "glossary.yaml", strings.Replace(w.text("glossary.yaml"), "means: ", fmt.Sprintf("means: No %d. ", w.added), 1))
	return ""
}

func (w *writer) table() string {
	put(w.content, "decoration.yaml", strings.Replace(w.text("decoration.yaml"), "It holds here.", "It holds here well.", 1))
	return ""
}

func (w *writer) hazard() string {
	put(w.content, "hazards.yaml", strings.Replace(w.text("hazards.yaml"), "harm: ", "harm: Mind this. ", 1))
	return ""
}

// stock writes a clay and a slip of it, changes one of them, or takes both away.
func (w *writer) stock() string {
	const clay, slip = "materials/yard-clay.yaml", "recipes/yard-slip.yaml"
	w.added++
	switch _, there := w.content[slip]; {
	case !there || w.r.IntN(3) == 0:
		put(w.content, clay, fmt.Sprintf("name: Yard clay %d\nis: ball-clay\nsheet: {supplier: A, date: 2026-01-10, read-by: B, read: 2026-02-01, review: 2096-02-01}\nclassified: no\nhazards: [dust]\n", w.added))
		put(w.content, slip, "title: Yard slip\nabout: A slip.\nmedium: coloured-slip\nstates: [wet]\ncone: 6\nbase: [{material: yard-clay, parts: 100}]\nwater: 75\nclear: none\nfood: no\n")
	case w.r.IntN(4) == 0:
		delete(w.content, clay)
		delete(w.content, slip)
	default:
		put(w.content, slip, strings.Replace(w.text(slip), "title: ", "title: New ", 1))
	}
	return ""
}

// class writes a class of the slip that stock makes, changes who comes and what is
// mixed for them, or takes it away. While the slip is not there it is a mistake.
func (w *writer) class() string {
	const classes = "classes.yaml"
	if _, there := w.content[classes]; there && w.r.IntN(4) == 0 {
		delete(w.content, classes)
		return "away"
	}
	w.added++
	lesson := w.pick(w.lessonFiles())
	put(w.content, classes, fmt.Sprintf("classes:\n  - {id: first, title: First, people: %d, when: later, lesson: %s, mix: [{recipe: yard-slip, each: %d mL}]}\n", 1+w.added%60, lesson, 20+w.added))
	return lesson
}

func (w *writer) settings() string {
	from, to := "language: en-GB", "language: en-US"
	if !strings.Contains(w.text("course.yaml"), from) || w.r.IntN(2) == 0 {
		from, to = "title: ", "title: New "
	}
	put(w.content, "course.yaml", strings.Replace(w.text("course.yaml"), from, to, 1))
	return from
}

func (w *writer) picture() string {
	put(w.content, "pictures/jar.svg", strings.Replace(w.text("pictures/jar.svg"), "<svg", "<!-- drawn again --><svg", 1))
	return ""
}

// unit returns the opening page of a random unit, and the lines of its list.
func (w *writer) unit() (name string, lessons []string) {
	name = "units/" + w.pick([]string{"slip", "wash"}) + "/unit.md"
	for _, line := range strings.Split(w.text(name), "\n") {
		if lesson, ok := strings.CutPrefix(line, "  - "); ok {
			lessons = append(lessons, lesson)
		}
	}
	return name, lessons
}

// list writes the list of a unit's lessons.
func (w *writer) list(unit string, lessons []string) {
	head, rest, _ := strings.Cut(w.text(unit), "lessons:\n")
	for strings.HasPrefix(rest, "  - ") {
		_, rest, _ = strings.Cut(rest, "\n")
	}
	put(w.content, unit, head+"lessons:\n  - "+strings.Join(lessons, "\n  - ")+"\n"+rest)
}

func (w *writer) newLesson() string {
	unit, lessons := w.unit()
	w.added++
	id := fmt.Sprintf("new-%d", w.added)
	put(w.content, strings.Replace(unit, "unit.md", id+".md", 1), "---\ntitle: "+id+"\nteaches: [do it]\n---\n\n"+w.pick(bits)+"\n")
	w.list(unit, slices.Insert(lessons, w.r.IntN(len(lessons)+1), id))
	return unit + " " + id
}

func (w *writer) dropLesson() string {
	unit, lessons := w.unit()
	if len(lessons) < 2 {
		return "none"
	}
	at := w.r.IntN(len(lessons))
	delete(w.content, strings.Replace(unit, "unit.md", lessons[at]+".md", 1))
	what := unit + " " + lessons[at]
	w.list(unit, slices.Delete(lessons, at, at+1))
	return what
}

func (w *writer) rename() string {
	unit, lessons := w.unit()
	at := w.r.IntN(len(lessons))
	w.added++
	was, is := lessons[at], fmt.Sprintf("renamed-%d", w.added)
	from, to := strings.Replace(unit, "unit.md", was+".md", 1), strings.Replace(unit, "unit.md", is+".md", 1)
	w.content[to] = w.content[from]
	delete(w.content, from)
	lessons[at] = is
	w.list(unit, lessons)
	for _, name := range w.pages() {
		put(w.content, name, strings.ReplaceAll(w.text(name), was+".md", is+".md"))
	}
	return from + " to " + to
}

func (w *writer) order() string {
	settings := w.text("course.yaml")
	swapped := strings.Replace(settings, "units:\n  - slip\n  - wash", "units:\n  - wash\n  - slip", 1)
	if swapped == settings {
		swapped = strings.Replace(settings, "units:\n  - wash\n  - slip", "units:\n  - slip\n  - wash", 1)
	}
	put(w.content, "course.yaml", swapped)
	return ""
}

func (w *writer) themeWord() string {
	put(w.theme, wordsFile, strings.Replace(string(w.theme[wordsFile].Data), "contents: ", "contents: All ", 1))
	return ""
}

func (w *writer) themePage() string {
	put(w.theme, "pages/unit.html", strings.Replace(string(w.theme["pages/unit.html"].Data), "<h2>", "<h2 class=\"new\">", 1))
	return ""
}

func (w *writer) breakIt() string {
	name := w.pick(w.pages())
	put(w.content, name, w.text(name)+"\n"+w.pick([]string{"[a](nowhere.md)", "<b>", "[a](#none)", "```calculator none\n```", "```stages\nmedium: none\n```", "[9 g](calculator:slip-density?mass=1)"})+"\n")
	return name
}

// wordsFile holds the theme's words.
const wordsFile = "words.yaml"

// TestTheDemoTwice makes the demo course twice with one handbook and wants the
// same both times.
func TestTheDemoTwice(t *testing.T) {
	h, err := open("../content", houseTheme)
	if err != nil {
		t.Fatal(err)
	}
	w := &writer{t: t}
	first, second := w.edition(h), w.edition(h)
	if len(first.files) == 0 || !maps.EqualFunc(first.files, second.files, bytes.Equal) {
		t.Errorf("%d files, then %d, and not the same", len(first.files), len(second.files))
	}
}
