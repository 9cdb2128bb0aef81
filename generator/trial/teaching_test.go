//go:build judges

package trial

import (
	"io/fs"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// noteBlock is a note for teaching in a lesson's file.
var noteBlock = regexp.MustCompile("(?ms)^```teaching[^\n]*\n(.*?)^```[ \t]*$")

// markdownLink is a link, of which the page shows the words.
var markdownLink = regexp.MustCompile(`\[([^\]]*)\]\([^)]*\)`)

// sentence parts a note where something ends.
var sentence = regexp.MustCompile(`[.?!:;]\s|\n`)

// note is what a lesson tells the instructor: each sentence in letters.
type note struct {
	page      string // the lesson's address
	sentences []string
}

// shownOn lists the pages of an instructor's copy that show the note. What
// stands in the page for those who write is shown there alone.
func (n note) shownOn() []string {
	if kind(n.page) != "lesson" {
		return []string{n.page}
	}
	return []string{n.page, "teaching.html", wholeBook}
}

// wholeBook stands for all pages that hold the book's chapters.
const wholeBook = "book"

// forBench reports whether a lesson is one for the bench: what is only read, or printed
// and handed out, needs no note for teaching.
func forBench(t *testing.T, address string) bool {
	t.Helper()
	source, err := os.ReadFile(root + "/content/units/" + strings.TrimSuffix(address, ".html") + ".md")
	if err != nil {
		t.Fatal(err)
	}
	return !strings.Contains(string(source), "\nlearningResourceType: ")
}

// notesOf reads the notes for teaching out of the content. Sentences that also
// stand elsewhere in the course are no secret, and neither is a word or two.
func notesOf(t *testing.T) []note {
	t.Helper()
	content := os.DirFS(root + "/content")
	var all []note
	var others strings.Builder
	err := fs.WalkDir(content, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || path.Ext(name) != ".md" && path.Ext(name) != ".yaml" {
			return err
		}
		source, err := fs.ReadFile(content, name)
		text := string(source)
		n := note{page: strings.TrimPrefix(strings.TrimSuffix(name, ".md"), "units/") + ".html"}
		for _, block := range noteBlock.FindAllStringSubmatch(text, -1) {
			for _, s := range sentence.Split(markdownLink.ReplaceAllString(block[1], "$1"), -1) {
				if s = letters(s); len(s) >= 15 {
					n.sentences = append(n.sentences, s)
				}
			}
		}
		others.WriteString(letters(noteBlock.ReplaceAllString(text, "")))
		if len(n.sentences) > 0 {
			all = append(all, n)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for k := range all {
		all[k].sentences = slices.DeleteFunc(all[k].sentences, func(s string) bool { return strings.Contains(others.String(), s) })
	}
	return all
}

// TestNotesForTeaching looks for each sentence of each note: in the instructor's
// copy it stands in its lesson, on the page of all notes and in the book, and
// nowhere in what students get, not in any file.
func TestNotesForTeaching(t *testing.T) {
	t.Parallel()
	h, notes := published(t), publishedNotes(t)
	var students strings.Builder
	for name, data := range contents(t, h.dir) {
		if strings.Contains(strings.ToLower(name), "teaching") {
			t.Errorf("students get the file %s", name)
		}
		students.WriteString(letters(string(data)))
	}
	shown := map[string]string{}
	text := func(address string) string {
		pages := []string{address}
		if address == wholeBook {
			pages = volumes(contentsOf(notes.document(t, "book.html")))
		}
		for _, page := range pages {
			if shown[address] == "" || address == wholeBook && !strings.Contains(shown[address], "\n"+page) {
				shown[address] += letters(wordsBut(notes.document(t, page).find(nil, "body")[0], "chapter-to")) + "\n" + page
			}
		}
		return shown[address]
	}
	all := notesOf(t)
	for _, n := range all {
		for _, s := range n.sentences {
			if strings.Contains(students.String(), s) {
				t.Errorf("students can read of the note in %s: %q", n.page, s)
			}
			for _, address := range n.shownOn() {
				if !strings.Contains(text(address), s) {
					t.Errorf("%s of the instructor's copy lacks what stands in the note of %s: %q", address, n.page, s)
				}
			}
		}
	}
	bench := 0
	for _, address := range h.all(t, "lesson") {
		if forBench(t, address) {
			bench++
		}
	}
	if len(all) < bench {
		t.Errorf("%d notes for teaching in %d lessons for the bench", len(all), bench)
	}
}

// TestStudentsCopySaysNothingOfTeaching wants no trace of the notes in a
// student's pages: no element and no way there.
func TestStudentsCopySaysNothingOfTeaching(t *testing.T) {
	t.Parallel()
	h, notes := published(t), publishedNotes(t)
	for _, address := range h.pages {
		d := h.document(t, address)
		if len(d.find(nil, ".teaching")) > 0 || slices.ContainsFunc(d.links(), func(to string) bool { return strings.Contains(to, "teaching.html") }) {
			t.Errorf("%s shows or leads to notes for teaching", address)
		}
		if kind(address) == "lesson" && forBench(t, address) && len(notes.document(t, address).find(nil, ".teaching")) == 0 {
			t.Errorf("%s of the instructor's copy has no note for teaching", address)
		}
	}
}

// TestInstructorsCopy lets axe judge what only that copy has, and looks at it on
// a phone.
func TestInstructorsCopy(t *testing.T) {
	t.Parallel()
	notes := publishedNotes(t)
	own := notes.all(t, "teaching")
	notes.judge(t, append(own, notes.all(t, "lesson")...), func(address string) []look {
		if kind(address) == "lesson" {
			return oneLook // all its words but the notes are judged in students' copies
		}
		return allLooks
	})
	b := open(t)
	for _, address := range append(own, notes.one(t, "lesson"), notes.one(t, "contents")) {
		for _, width := range []int64{320, 1280} {
			b.size(width, 700)
			b.visit(notes.home + address)
			for _, fault := range append(ask[[]string](b, widest), ask[[]string](b, small)...) {
				t.Errorf("%s: %s", address, fault)
			}
		}
		if said, _ := b.heard(); len(said) > 0 {
			t.Errorf("%s: on the console: %v", address, said)
		}
	}
}
