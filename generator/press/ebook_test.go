package press

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"io"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/press/imprint"
	"slipbook/generator/proof"
)

// ebookFiles opens the e-book of an edition: its files by name, and their names in
// order.
func ebookFiles(t *testing.T, e edition) (files map[string][]byte, names []string) {
	t.Helper()
	data := e[address.Ebook]
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	files = map[string][]byte{}
	for _, f := range z.File {
		r, err := f.Open()
		if err == nil {
			files[f.Name], err = io.ReadAll(r)
		}
		if err != nil {
			t.Fatal(err)
		}
		names = append(names, f.Name)
	}
	if first := z.File[0]; first.Name != "mimetype" || first.Method != zip.Store || len(first.Extra) > 0 || string(files["mimetype"]) != "application/epub+zip" {
		t.Errorf("the e-book begins with %+v, %q", first.FileHeader, files["mimetype"])
	}
	return files, names
}

// leaf is a document of an e-book, as XML: ids, addresses that it leads to or shows,
// its elements, its words without white space.
type leaf struct {
	ids      map[string]bool
	to       []string
	elements map[string]int
	roles    map[string]int
	words    string
	names    []string // words of its links, as they stand
}

// leafOf reads a document of an e-book.
func leafOf(t *testing.T, name string, data []byte) leaf {
	t.Helper()
	l := leaf{ids: map[string]bool{}, elements: map[string]int{}, roles: map[string]int{}}
	var words strings.Builder
	inLink := -1
	for d := xml.NewDecoder(bytes.NewReader(data)); ; {
		token, err := d.Token()
		if err == io.EOF {
			l.words = words.String()
			return l
		}
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		switch token := token.(type) {
		case xml.StartElement:
			l.element(t, name, token)
			if token.Name.Local == "a" {
				l.names, inLink = append(l.names, ""), len(l.names)
			}
		case xml.EndElement:
			if token.Name.Local == "a" {
				inLink = -1
			}
		case xml.CharData:
			words.WriteString(strings.Join(strings.Fields(string(token)), ""))
			if inLink >= 0 {
				l.names[inLink] += string(token)
			}
		}
	}
}

func (l *leaf) element(t *testing.T, name string, e xml.StartElement) {
	t.Helper()
	l.elements[e.Name.Local]++
	for _, a := range e.Attr {
		switch a.Name.Local {
		case "id":
			if l.ids[a.Value] {
				t.Errorf("%s has the id %q twice", name, a.Value)
			}
			l.ids[a.Value] = true
		case "href", "src", "srcset", "data", "poster":
			l.to = append(l.to, a.Value)
		case "role":
			l.roles[a.Value]++
		case "style", "onclick", "onload":
			t.Errorf("%s has %s=%q", name, a.Name.Local, a.Value)
		}
	}
}

// wantEbook wants the e-book of an edition to hold every unit and lesson with all its
// words in order, and nothing that leads nowhere, runs, or comes from elsewhere.
func wantEbook(t *testing.T, e edition, r *proof.Reading) map[string]leaf {
	t.Helper()
	files, _ := ebookFiles(t, e)
	leaves := map[string]leaf{}
	for name, data := range files {
		if path.Ext(name) == ".xhtml" {
			leaves[name] = leafOf(t, name, data)
		}
	}
	for name, l := range leaves {
		for _, element := range []string{"script", "form", "input", "button", "select", "iframe", "object", "audio", "video", "details", "style", "base"} {
			if l.elements[element] > 0 {
				t.Errorf("%s has the element %s", name, element)
			}
		}
		for _, to := range l.to {
			wantWithin(t, files, leaves, name, to)
		}
	}
	for _, page := range r.Pages {
		if page.Kind == course.StylePage {
			continue
		}
		name := "EPUB/" + imprint.Document(page.Address)
		l, there := leaves[name]
		if !there {
			t.Errorf("the e-book has no %s", name)
			continue
		}
		wantWordsOf(t, wordsOfPieces(t, withoutQuestions(page.Document.Pieces)), l.words, name)
	}
	return leaves
}

// wantWithin wants a place that a document leads to to be in the e-book.
func wantWithin(t *testing.T, files map[string][]byte, leaves map[string]leaf, from, to string) {
	t.Helper()
	if strings.HasPrefix(to, "https://") {
		return
	}
	file, id, marked := strings.Cut(to, "#")
	at := from
	if file != "" {
		at = path.Join(path.Dir(from), file)
	}
	if files[at] == nil || marked && !leaves[at].ids[id] {
		t.Errorf("%s leads to %s, which is not in the e-book", from, to)
	}
}

// withoutQuestions are pieces but for questions, whose answers stand elsewhere in an
// e-book.
func withoutQuestions(pieces []markup.Piece) []markup.Piece {
	return slices.DeleteFunc(slices.Clone(pieces), func(p markup.Piece) bool { return p.Block != nil && p.Block.Ask != nil })
}

// TestEbook wants the e-book of whole courses to hold all of them.
func TestEbook(t *testing.T) {
	demo, found := new(course.Reader).Load(os.DirFS("../../content"))
	if found.Stop() {
		t.Fatal(found)
	}
	for name, c := range map[string]*course.Course{"small": gatheredCourse(t), "demo": demo} {
		t.Run(name, func(t *testing.T) {
			reading := read(t, c)
			e, err := Print(studio(t), reading, shared(), Copy{Teaching: true})
			if err != nil {
				t.Fatal(err)
			}
			data, _, err := e.File(address.Ebook)
			if err != nil {
				t.Fatal(err)
			}
			leaves := wantEbook(t, edition{address.Ebook: data}, reading)
			wantOrder(t, edition{address.Ebook: data}, leaves, c)
			if title := leaves["EPUB/ebook.title.xhtml"]; !strings.Contains(title.words, "Thesupplier’ssafetydatasheet,theruleswhereyouare,andlicensedpracticecomefirst") || title.roles["note"] != 1 {
				t.Errorf("the first document says %q", title.words)
			}
			for _, page := range reading.Pages {
				if page.Kind == course.StylePage {
					continue
				}
				l := leaves["EPUB/"+imprint.Document(page.Address)]
				if cautions := len(page.Document.Named(markup.CautionBlock)); l.elements["aside"] < cautions || l.roles["note"] < cautions {
					t.Errorf("%s has %d cautions, its document %d", page.File, cautions, l.elements["aside"])
				}
				for _, q := range page.Document.Named(markup.QuestionBlock) {
					wantAnswer(t, leaves, page, q)
				}
			}
		})
	}
}

// wantOrder wants documents to be read in the order of the contents: each unit, its
// lessons.
func wantOrder(t *testing.T, e edition, leaves map[string]leaf, c *course.Course) {
	t.Helper()
	files, _ := ebookFiles(t, e)
	var book struct {
		Items []struct {
			ID         string `xml:"id,attr"`
			Name       string `xml:"href,attr"`
			Properties string `xml:"properties,attr"`
		} `xml:"manifest>item"`
		Spine []struct {
			ID string `xml:"idref,attr"`
		} `xml:"spine>itemref"`
	}
	if err := xml.Unmarshal(files["EPUB/package.opf"], &book); err != nil {
		t.Fatal(err)
	}
	byID, listed := map[string]string{}, map[string]bool{"mimetype": true, "META-INF/container.xml": true, "EPUB/package.opf": true}
	for _, i := range book.Items {
		byID[i.ID], listed["EPUB/"+i.Name] = i.Name, true
		has := leaves["EPUB/"+i.Name].elements
		for element, property := range map[string]string{"math": "mathml", "svg": "svg"} {
			if (has[element] > 0) != slices.Contains(strings.Fields(i.Properties), property) {
				t.Errorf("%s has %d of %s and the properties %q", i.Name, has[element], element, i.Properties)
			}
		}
	}
	for name := range files {
		if !listed[name] {
			t.Errorf("the package does not list %s", name)
		}
	}
	var read []string
	for _, s := range book.Spine {
		read = append(read, byID[s.ID])
	}
	// Its table of contents comes before its landmarks.
	var contents []string
	for _, to := range leaves["EPUB/contents.xhtml"].to {
		if path.Ext(to) == ".xhtml" && !slices.Contains(contents, to) && to != "ebook.title.xhtml" {
			contents = append(contents, to)
		}
	}
	if got := slices.DeleteFunc(slices.Clone(read), func(name string) bool { return !slices.Contains(contents, name) }); !slices.Equal(got, contents) {
		t.Errorf("documents are read in the order\n%q\nand listed in\n%q", got, contents)
	}
	at := -1
	for _, u := range c.Units {
		for _, page := range append([]*course.Page{u.Page}, u.Lessons...) {
			here := slices.Index(read, imprint.Document(page.Address))
			if here <= at {
				t.Errorf("%s is document %d, after %d", page.Address, here, at)
			}
			at = here
		}
	}
}

// wantAnswer wants the question of a page to lead to its answer, and that back.
func wantAnswer(t *testing.T, leaves map[string]leaf, page *proof.Page, q *markup.Block) {
	t.Helper()
	asked := leaves["EPUB/"+imprint.Document(page.Address)]
	id := imprint.AnswerID(page.Address, q.Number)
	n := slices.IndexFunc(asked.to, func(to string) bool { return strings.HasSuffix(to, "#"+id) })
	if n < 0 {
		t.Errorf("question %d of %s leads to no answer", q.Number, page.File)
		return
	}
	file, _, _ := strings.Cut(asked.to[n], "#")
	told := leaves[path.Join("EPUB", path.Dir(page.Address), file)]
	if back := "#question." + strconv.Itoa(q.Number); !slices.ContainsFunc(told.to, func(to string) bool { return strings.HasSuffix(to, imprint.Document(page.Address)+back) }) {
		t.Errorf("the answer to question %d of %s leads back nowhere", q.Number, page.File)
	}
	for _, a := range q.Ask.Answers {
		bare := func(text string) string { return strings.Join(strings.Fields(markup.Bind(text)), "") }
		verdict := "Notquite."
		if a.Right {
			verdict = "Right."
		}
		if !strings.Contains(told.words, verdict+bare(a.Text)+bare(a.Because)) {
			t.Errorf("of question %d of %s nothing says %q", q.Number, page.File, a.Because)
		}
		if strings.Contains(asked.words, bare(a.Because)) {
			t.Errorf("question %d of %s tells its answer", q.Number, page.File)
		}
	}
}

// TestEbookIsTheSameEachTime wants the same bytes from the same course, whatever was
// asked for before.
func TestEbookIsTheSameEachTime(t *testing.T) {
	var all [][]byte
	for _, before := range [][]string{nil, {address.Book, address.Ebook}, {address.Contents}} {
		e, err := Print(studio(t), read(t, small(t)), shared(), Copy{})
		if err != nil {
			t.Fatal(err)
		}
		for _, at := range append(before, address.Ebook) {
			data, ok, err := e.File(at)
			if err != nil || !ok {
				t.Fatal(ok, err)
			}
			if at == address.Ebook {
				all = append(all, data)
			}
		}
	}
	for n, data := range all {
		if !bytes.Equal(data, all[0]) {
			t.Errorf("printing %d differs", n)
		}
	}
}

// TestEbookTakesAnyTitle wants titles with signs of markup to be words, and what has no
// end in HTML to be closed.
func TestEbookTakesAnyTitle(t *testing.T) {
	const odd = `Slip & <b>"glaze"</b> ]]> '1'`
	c := small(t)
	c.Title, c.Studio.Name, c.Licence, c.Description = odd, odd, odd, odd
	for _, u := range c.Units {
		u.Page.Head.Title = odd
		for _, l := range u.Lessons {
			l.Head.Title = odd
		}
	}
	broken := c.Units[0].Lessons[0]
	broken.Source = append(slices.Clone(broken.Source), "\n\nOne line\\\nand another\n\n---\n"...)
	e := printed(t, c)
	leaves := wantEbook(t, e, read(t, c))
	if has := leaves["EPUB/"+imprint.Document(broken.Address)].elements; has["br"] != 1 || has["hr"] != 1 {
		t.Errorf("a line that is broken and a rule are %v", has)
	}
	if n := slices.Index(leaves["EPUB/contents.xhtml"].names, "1 "+odd); n < 0 {
		t.Errorf("the contents have no %q: %q", odd, leaves["EPUB/contents.xhtml"].names)
	}
	files, _ := ebookFiles(t, e)
	var book struct {
		Title   string `xml:"metadata>title"`
		Creator string `xml:"metadata>creator"`
		Rights  string `xml:"metadata>rights"`
	}
	if err := xml.Unmarshal(files["EPUB/package.opf"], &book); err != nil || book.Title != odd || book.Creator != odd || book.Rights != odd {
		t.Errorf("%v: title %q, creator %q, rights %q", err, book.Title, book.Creator, book.Rights)
	}
}

// TestEbookLeadsToTheSite wants what is not in the e-book to be on the site, or named
// at its end where nobody said where that is.
func TestEbookLeadsToTheSite(t *testing.T) {
	c := small(t)
	c.PublishedAt = ""
	if leaves := wantEbook(t, printed(t, c), read(t, c)); !strings.Contains(leaves["EPUB/ebook.beside.xhtml"].words, "notices.html") {
		t.Errorf("nothing says what is on the site alone: %q", leaves["EPUB/ebook.beside.xhtml"].words)
	}
	c.PublishedAt = "https://clay.example/a/"
	leaves := wantEbook(t, printed(t, c), read(t, c))
	if _, there := leaves["EPUB/ebook.beside.xhtml"]; there {
		t.Error("pages of the site are named though they can be reached")
	}
	if to := leaves["EPUB/calculators/slip-density.xhtml"].to; !slices.Contains(to, "https://clay.example/a/calculators/slip-density.html") {
		t.Errorf("a calculator leads to %q", to)
	}
}

// TestBookSaysHowLargeTheEbookIs wants the page of the book to lead to the e-book, and
// the contents to do so too.
func TestBookSaysHowLargeTheEbookIs(t *testing.T) {
	e := printed(t, small(t))
	said := strconv.FormatFloat(max(0.1, float64(len(e[address.Ebook]))/1e6), 'f', 1, 64)
	if book := string(e[address.Book]); !strings.Contains(book, `href="handbook.epub"`) || !strings.Contains(book, said+" MB") {
		t.Errorf("the page of the book says nothing of %s MB", said)
	}
	if !slices.Contains(linksOf(pageOf(t, e, address.Contents)), "handbook.epub") {
		t.Errorf("the contents lead to %q", linksOf(pageOf(t, e, address.Contents)))
	}
}

// TestThemeLeavesSomethingOpen wants what is no XML to be an error that names the
// document.
func TestThemeLeavesSomethingOpen(t *testing.T) {
	theme := copyTheme(t)
	lists := theme["pieces/lists.html"]
	lists.Data = bytes.Replace(lists.Data, []byte("{{define \"aims\" -}}\n<div"), []byte("{{define \"aims\" -}}\n<p><div"), 1)
	_, err := tryPrint(t, opened(t, theme), small(t), Copy{})
	if !matches(err, "of the e-book: <p> is open where </") {
		t.Errorf("error %v", err)
	}
}
