package press

import (
	"bytes"
	"fmt"
	"maps"
	"net/url"
	"os"
	"path"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/book"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
)

// largeCourse is the small course with so many long lessons in its first unit that
// its book does not fit one page. Each links to the next, to the other unit and to
// a page to look up.
func largeCourse(t *testing.T) *course.Course {
	t.Helper()
	c := small(t)
	u := c.Units[0]
	const lessons = 26
	for n := 1; n <= lessons; n++ {
		source := fmt.Sprintf("## Part\n\nWords of lesson %d. See [the next](l%d.md#part), [thin](../wash/thin.md), [bisque](state:bisque) and [here](#part).\n\n", n, n%lessons+1)
		source += strings.Repeat("Stir the slip and let it stand, then stir it again.\n\n", 1600)
		u.Lessons = append(u.Lessons, &course.Page{
			Kind: course.LessonPage, File: fmt.Sprintf("units/slip/l%d.md", n), Address: fmt.Sprintf("slip/l%d.html", n), Unit: u,
			Head: course.Head{Title: fmt.Sprintf("Lesson %d", n)}, Source: []byte(source), Language: c.Language,
		})
	}
	return c
}

// TestChaptersAreAboutAsLargeAsThought holds what binds the book to the chapters of
// the demo course.
func TestChaptersAreAboutAsLargeAsThought(t *testing.T) {
	c, _ := new(course.Reader).Load(os.DirFS("../../content"))
	i, err := prepare(studio(t), read(t, c), shared(), Copy{})
	if err != nil {
		t.Fatal(err)
	}
	var thought, printed int
	for _, chapter := range i.sheets {
		if _, isChapter := i.book.Chapters[chapter.Address]; !isChapter {
			continue
		}
		view, err := chapter.View(imprint.Place{Page: chapter.Address, Book: i.book.Chapters})
		if err != nil {
			t.Fatal(err)
		}
		body, err := imprint.Output(func(out *bytes.Buffer) error { return imprint.Fill(out, i.InBook, chapter.Kind.Template, view) })
		if err != nil {
			t.Fatal(err)
		}
		size := i.book.Sizes[chapter.Address]
		thought, printed = thought+size, printed+len(body)
		if size < len(body)/3 || size > 3*len(body) {
			t.Errorf("%s: thought to be %d bytes, is %d", chapter.Address, size, len(body))
		}
	}
	if off := float64(thought)/float64(printed) - 1; off < -0.05 || off > 0.05 {
		t.Errorf("the book is thought to be %d bytes, is %d", thought, printed)
	}
	t.Logf("thought to be %d bytes, is %d", thought, printed)
}

// TestDrawingsCountInTheBook wants the drawings of lessons, which stand in the
// page, not to make a page of the book too large.
func TestDrawingsCountInTheBook(t *testing.T) {
	c := small(t)
	drawing := []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">` + strings.Repeat(`<path d="M1 1h7v7z"/>`, 20_000) + `</svg>`)
	c.Pictures["pictures/kiln.svg"] = &course.Picture{Path: "pictures/kiln.svg", Width: 9, Height: 9, SVG: drawing}
	u := c.Units[0]
	for n := range 6 {
		u.Lessons = append(u.Lessons, &course.Page{
			Kind: course.LessonPage, File: fmt.Sprintf("units/slip/l%d.md", n), Address: fmt.Sprintf("slip/l%d.html", n), Unit: u,
			Head: course.Head{Title: fmt.Sprintf("Lesson %d", n)}, Source: []byte("> ![A kiln](../../pictures/kiln.svg)\n"), Language: c.Language,
		})
	}
	shown := 0
	for at, page := range printed(t, c) {
		if len(page) > 2_000_000 {
			t.Errorf("%s is %d bytes", at, len(page))
		}
		if at == address.Book || path.Dir(at) == "book" {
			shown += bytes.Count(page, []byte("viewBox=\"0 0 9 9\""))
		}
	}
	if shown != 6 {
		t.Errorf("the book shows the drawing %d times, want 6", shown)
	}
}

// TestLargeGatheringsStandOnSeveralPages wants no page that gathers from a large
// course to be too large, everything gathered once, and every page of them to lead
// to the others.
func TestLargeGatheringsStandOnSeveralPages(t *testing.T) {
	c := small(t)
	const units, words = 12, 4000
	for n := range units {
		u := &course.Unit{ID: fmt.Sprintf("u%02d", n)}
		page := func(kind course.PageKind, name, source string) *course.Page {
			return &course.Page{Kind: kind, File: "units/" + u.ID + "/" + name + ".md", Address: u.ID + "/" + name + ".html", Unit: u,
				Head: course.Head{Title: u.ID + " " + name, Medium: c.Decoration.Media[n%len(c.Decoration.Media)].ID}, Source: []byte(source), Language: c.Language}
		}
		long := strings.Repeat("Stir the slip and let it stand, then stir it. ", words)
		u.Page = page(course.UnitPage, "unit", "Words.\n")
		u.Lessons = []*course.Page{page(course.LessonPage, "a", "## What goes wrong\n\nIt runs in "+u.ID+"\n: "+long[:16_000]+"\n\n"+
			strings.Repeat("It runs\n: "+long[:16_000]+"\n\n", 10)+
			"```asked Why "+u.ID+"?\n"+strings.Repeat(long[:16_000]+"\n\n", 12)+"```\n\n"+
			"```teaching\nShow "+u.ID+".\n\n"+strings.Repeat(long[:16_000]+"\n\n", 12)+"```\n")}
		c.Units = append(c.Units, u)
	}
	e := forTeaching(t, c)
	for first, one := range map[string]string{address.Answers: "Why u%02d?", address.Faults: "It runs in u%02d", address.Teaching: "Show u%02d."} {
		var pages []string
		for n := 1; e[address.Further(first, n)] != nil; n++ {
			pages = append(pages, address.Further(first, n))
		}
		if len(pages) < 2 {
			t.Fatalf("%s stands on %d pages", first, len(pages))
		}
		all := ""
		for _, at := range pages {
			if len(e[at]) > 2_000_000 {
				t.Errorf("%s is %d bytes", at, len(e[at]))
			}
			root := pageOf(t, e, at)
			all += text(root)
			for _, other := range pages {
				if leads := slices.Contains(linksOf(elements(root, classed("further"))[0]), other); leads == (other == at) {
					t.Errorf("%s leads to %s: %v", at, other, leads)
				}
			}
		}
		for n := range units {
			if got := strings.Count(all, fmt.Sprintf(one, n)); got != 1 {
				t.Errorf("%s: %q stands there %d times", first, fmt.Sprintf(one, n), got)
			}
		}
		wantLinks(t, e, pages)
	}
	for _, m := range c.Decoration.Media {
		wantLinks(t, e, []string{address.Medium(m.ID)})
	}
}

// TestLargeBookStandsInVolumes wants no page of a large book to be too large, each
// chapter once, the contents to hold them all, and every link to lead somewhere.
func TestLargeBookStandsInVolumes(t *testing.T) {
	c := largeCourse(t)
	e := printed(t, c)
	var volumes []string
	chapters := map[string]string{}
	for _, at := range slices.Sorted(maps.Keys(e)) {
		if len(e[at]) > 2_000_000 {
			t.Errorf("%s is %d bytes", at, len(e[at]))
		}
		if at != address.Book && path.Dir(at) != "book" {
			continue
		}
		for _, n := range elements(pageOf(t, e, at), classed("chapter")) {
			id := attribute(n, "id")
			if chapters[id] != "" {
				t.Errorf("%s stands on %s and on %s", id, chapters[id], at)
			}
			chapters[id] = at
		}
		if at != address.Book {
			volumes = append(volumes, at)
		}
	}
	if len(volumes) < 2 {
		t.Fatalf("volumes %q", volumes)
	}
	for _, page := range c.Pages() {
		if chapters[imprint.ChapterKey(page.Address)] == "" && page.Kind != course.StylePage {
			t.Errorf("no volume holds %s", page.Address)
		}
	}
	wantContents(t, e, chapters)
	wantLinks(t, e, append(volumes, address.Book))
	for _, at := range volumes {
		checkHead(t, pageOf(t, e, at))
		checkIDs(t, pageOf(t, e, at))
	}
}

// wantContents wants the contents of a book to lead to each of its chapters once,
// where it stands, and to hold none themselves.
func wantContents(t *testing.T, e edition, chapters map[string]string) {
	t.Helper()
	left := maps.Clone(chapters)
	for _, to := range linksOf(elements(pageOf(t, e, address.Book), classed("book-contents"))[0]) {
		file, id, _ := strings.Cut(to, "#")
		if left[id] != file || file == "" {
			t.Errorf("the contents lead to %s; the chapter stands on %q", to, left[id])
		}
		delete(left, id)
	}
	if len(left) > 0 {
		t.Errorf("the contents do not lead to %v", left)
	}
}

// wantLinks follows every link of some pages within the handbook.
func wantLinks(t *testing.T, e edition, pages []string) {
	t.Helper()
	ids := map[string]map[string]bool{} // by page
	for _, from := range pages {
		for _, n := range elements(pageOf(t, e, from), func(n *html.Node) bool { return n.Data == "a" || n.Data == "link" }) {
			u, err := url.Parse(attribute(n, "href"))
			if err != nil || u.IsAbs() {
				t.Errorf("%s: address %q, %v", from, attribute(n, "href"), err)
				continue
			}
			to := from
			if u.Path != "" {
				to = path.Join(path.Dir(from), u.Path)
			}
			if ids[to] == nil {
				ids[to] = idsOn(t, e, to)
			}
			if u.Fragment != "" && !ids[to][u.Fragment] {
				t.Errorf("%s: %s leads to no place on %s", from, u, to)
			}
		}
	}
}

// idsOn returns the ids of a page, or none of another file, which must be there.
func idsOn(t *testing.T, e edition, at string) map[string]bool {
	t.Helper()
	all := map[string]bool{}
	data, there := e[at]
	if !there {
		t.Errorf("no page %s", at)
	}
	if path.Ext(at) == ".html" && bytes.Contains(data, []byte("<html")) {
		for _, n := range elements(pageOf(t, e, at), func(n *html.Node) bool { return attribute(n, "id") != "" }) {
			all[attribute(n, "id")] = true
		}
	}
	return all
}

// TestReferenceToAnotherVolume wants a lesson's link to a chapter of another
// volume to lead there, with the chapter's number behind it.
func TestReferenceToAnotherVolume(t *testing.T) {
	i := newPress(t, largeCourse(t))
	first, last := i.book.Chapters["slip/l1.html"], i.book.Chapters["wash/thin.html"]
	if first.Volume == last.Volume || first.Volume == address.Book {
		t.Fatalf("both on %s", first.Volume)
	}
	page, _ := i.Addresses.Page("units/slip/l1.md")
	html, err := imprint.Output(i.setter.Body(i.documents[page], imprint.Place{Page: page.Address, Book: i.book.Chapters}))
	if err != nil {
		t.Fatal(err)
	}
	want := `<a href="` + address.Relative(first.Volume, last.Volume) + `#page.wash.thin">thin<span class="chapter-to">&#160;(` + last.Number + `)</span></a>`
	presstest.Holds(t, string(html), want)
	sizes := map[string]int{}
	for at, chapter := range i.book.Chapters {
		sizes[chapter.Volume] += i.book.Sizes[at]
	}
	for volume, size := range sizes {
		if size > book.LargestVolume {
			t.Errorf("the volume %s is thought to be %d bytes", volume, size)
		}
	}
}
