package press

import (
	"bytes"
	"io/fs"
	"maps"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/net/html"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/register"
	"slipbook/generator/proof"
)

// TestAnotherThemePrintsEverything prints whole courses in a theme with hardly any
// markup and words of its own, book and e-book included: it wants every page, all that
// each lesson says on its page and in the book, in order, and links that lead
// somewhere.
func TestAnotherThemePrintsEverything(t *testing.T) {
	tiny := opened(t, tinyTheme(t))
	demo, found := new(course.Reader).Load(os.DirFS("../../content"))
	if found.Stop() {
		t.Fatal(found)
	}
	for name, c := range map[string]*course.Course{"small": gatheredCourse(t), "demo": demo} {
		t.Run(name, func(t *testing.T) {
			reading := read(t, c)
			edition, err := Print(tiny, reading, shared(), Copy{Teaching: true})
			if err != nil {
				t.Fatal(err)
			}
			e, err := everything(edition)
			if err != nil {
				t.Fatal(err)
			}
			wantPagesOf(t, e, c)
			book := chaptersOf(t, e)
			for _, page := range reading.Pages {
				wantWords(t, page, onlyText(pageOf(t, e, page.Address)), page.Address)
				if page.Kind != course.StylePage {
					wantWords(t, page, book[imprint.ChapterKey(page.Address)], "the chapter of "+page.Address)
				}
			}
			var pages []string
			for at := range e {
				if path.Ext(at) == ".html" {
					pages = append(pages, at)
				}
			}
			wantLinks(t, e, pages)
			wantEbook(t, e, reading)
		})
	}
}

// tinyTheme reads the theme with hardly any markup. A block that it has no template
// for prints nothing in it, and posters and forms say the studio theme's words, so that
// whoever adds one need not know of this theme.
func tinyTheme(t *testing.T) fs.FS {
	t.Helper()
	files, rest := folderOf(t, os.DirFS("testdata/tiny")), ""
	for _, kind := range markup.Kinds() {
		begin := []byte(`{{define "` + kind + `"}}`)
		if !bytes.Contains(files["pieces/pieces.html"].Data, begin) {
			rest += string(begin) + "{{end}}"
		}
	}
	whole := studio(t)
	for _, key := range register.Words() {
		files["words.yaml"].Data = append(files["words.yaml"].Data, key+": "+strconv.Quote(whole.Word(key))+"\n"...)
	}
	files["pieces/rest.html"] = &fstest.MapFile{Data: []byte(rest)}
	return files
}

// wantPagesOf wants the same pages as the studio theme prints, none of them with
// anything of that theme.
func wantPagesOf(t *testing.T, e edition, c *course.Course) {
	t.Helper()
	studio, err := Print(studio(t), read(t, c), shared(), Copy{Teaching: true})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := slices.Sorted(maps.Keys(e)), addressesOf(t, studio); len(got) != len(want) {
		t.Errorf("printed\n%q\nwant\n%q", got, want)
	}
	for at, data := range e {
		if path.Ext(at) == ".html" && (!strings.Contains(string(data), "<h1> ") || strings.Contains(string(data), `class="lead"`)) {
			t.Errorf("%s is not of this theme", at)
		}
	}
}

// chaptersOf returns the text of each chapter of the book, by its id.
func chaptersOf(t *testing.T, e edition) map[string]string {
	t.Helper()
	all := map[string]string{}
	for at := range e {
		if at != address.Book && path.Dir(at) != "book" || path.Ext(at) != ".html" {
			continue
		}
		for _, n := range elements(pageOf(t, e, at), func(n *html.Node) bool { return n.Data == "div" && strings.HasPrefix(attribute(n, "id"), "page.") }) {
			all[attribute(n, "id")] += onlyText(n)
		}
	}
	return all
}

// onlyText returns the letters of an element without white space.
func onlyText(n *html.Node) string {
	var all strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			all.WriteString(strings.Join(strings.Fields(d.Data), ""))
		}
	}
	return all.String()
}

// wantWords wants all words of a page in a text, in order.
func wantWords(t *testing.T, page *proof.Page, said, where string) {
	t.Helper()
	all := wordsOfPieces(t, page.Document.Pieces)
	if len(all) == 0 {
		t.Errorf("%s has no words", page.File)
	}
	wantWordsOf(t, all, said, where)
}

// wantWordsOf wants words in a text, in order.
func wantWordsOf(t *testing.T, all []string, said, where string) {
	t.Helper()
	left := said
	for _, words := range all {
		_, behind, ok := strings.Cut(left, words)
		if !ok {
			t.Errorf("%s lacks %q", where, words)
			return
		}
		left = behind
	}
}

// wordsOfPieces lists what pieces say, as onlyText returns it.
func wordsOfPieces(t *testing.T, pieces []markup.Piece) []string {
	t.Helper()
	var all []string
	add := func(text string) {
		if text = strings.Join(strings.Fields(text), ""); text != "" {
			all = append(all, text)
		}
	}
	for _, p := range pieces {
		if p.HTML != "" {
			root, err := html.Parse(strings.NewReader(p.HTML))
			if err != nil {
				t.Fatal(err)
			}
			add(onlyText(root))
		}
		if p.Block == nil {
			continue
		}
		all = append(all, wordsOfPieces(t, p.Block.Pieces)...)
		if q := p.Block.Ask; q != nil {
			add(markup.Bind(q.Ask))
			for _, a := range q.Answers {
				add(markup.Bind(a.Text))
				add(markup.Bind(a.Because))
			}
		}
	}
	return all
}
