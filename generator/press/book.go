package press

import (
	"bytes"
	"cmp"
	"fmt"
	"html"
	"html/template"
	"strings"

	"slipbook/generator/assets"
	"slipbook/generator/pool"
)

// The book is the whole handbook as one document to print, with contents and
// numbered chapters. It is made of the finished pages, so that it says what they
// say: each gives the words between its header and its foot, without what only a
// screen can use, its headings a level lower and its ids with the page's own
// word in front. Links lead on within the book and name the number of the
// chapter they lead to, since paper cannot be pressed.
//
// Nothing in it guesses on which page of paper something will be: that depends
// on paper, letters and browser. Each printed page bears the number and name of
// its chapter instead (bookstyle.go).

// bookView is the book.
type bookView struct {
	Shell shell
	Parts []bookPart
}

// bookPart is a part of the book: a unit, or what is there to look up.
type bookPart struct {
	Number   string
	Title    string
	Key      string // of its opening chapter; empty = it has none
	Chapters []chapter
}

// chapter is one page of the handbook in the book.
type chapter struct {
	Key    string // its id
	Number string // "2.3"
	Title  string
	Body   template.HTML
	Quiet  bool // opens its part: the part's line in the contents stands for it
}

// book makes the book from the finished pages, and its style sheet.
func (i *impression) book(sheets []sheet, pages [][]byte) (sheet, map[string][]byte, error) {
	byAddress := make(map[string]int, len(sheets))
	for n, s := range sheets {
		byAddress[s.address] = n
	}
	plan, err := i.planBook(func(address string) bool { _, ok := byAddress[address]; return ok })
	if err != nil {
		return sheet{}, nil, err
	}
	chapters := make([]chapter, len(plan.addresses))
	faults := make([]error, len(plan.addresses))
	pool.Each(len(plan.addresses), func(n int) {
		address := plan.addresses[n]
		chapters[n], faults[n] = plan.chapter(address, pages[byAddress[address]])
	})
	if err := cmp.Or(faults...); err != nil {
		return sheet{}, nil, err
	}
	w, err := i.words.sayAll("book", "book-description", "book-contents")
	if err != nil {
		return sheet{}, nil, err
	}
	v := bookView{Parts: plan.bind(chapters)}
	style := bookStyle(w[2], v.Parts)
	address := assets.Address("chapters.css", style)
	return sheet{bookAddress, "book", func() (any, error) {
		v.Shell = i.shell(about{kind: "book", address: bookAddress, title: w[0], description: w[1], gathered: true, plan: true})
		v.Shell.Strip, v.Shell.Script = nil, ""
		v.Shell.Styles = append(v.Shell.Styles, relative(bookAddress, i.bundle.Book), relative(bookAddress, address))
		return v, nil
	}}, map[string][]byte{address: style}, nil
}

// Where the words of a page begin and end in the theme's pages.
var (
	mainStart = []byte(`<main id="main.text" tabindex="-1">`)
	mainEnd   = []byte(`</main>`)
)

// chapter makes a chapter of a finished page. A page without the marks between
// which its words stand is an error: the book would be empty, and nobody told.
func (b bookPlan) chapter(address string, page []byte) (chapter, error) {
	_, words, begins := bytes.Cut(page, mainStart)
	end := bytes.LastIndex(words, mainEnd)
	if !begins || end < 0 {
		return chapter{}, fmt.Errorf("page %s: the book is made of what stands between %s and %s, and this page lacks one of them; "+
			"write both in the theme's shell", address, mainStart, mainEnd)
	}
	c := chapter{Key: chapterKey(address), Number: b.numbers[address]}
	t := trimmer{
		rebase: rebase{from: address, prefix: c.Key + ".", place: b.place},
		whole:  strings.HasPrefix(address, "calculators/"),
		number: c.Number,
		plan:   b,
	}
	words = words[:end]
	t.out.Grow(len(words))
	tags(words, t.tag, t.text)
	c.Title, c.Body = strings.TrimSpace(html.UnescapeString(t.title.String())), template.HTML(t.out.Bytes())
	return c, nil
}

// place gives the address of something within the book, or, where the book does
// not hold it or a calculator is to be filled in, of its page beside the book.
func (b bookPlan) place(address string) string {
	file, fragment, _ := strings.Cut(address, "#")
	_, ok := b.numbers[file]
	switch {
	case !ok:
		return relative(bookAddress, address)
	case fragment == "":
		return "#" + chapterKey(file)
	}
	return "#" + chapterKey(file) + "." + fragment
}

// screenOnly names what a printed page has no use for, by element or class.
var screenOnly = map[string]bool{
	"form": true, "noscript": true, "script": true, "button": true,
	"bench": true, "letters": true, "ways-to": true, "reckon-answers": true, "reckon-next": true, "reckon-try": true, "note-back": true, "reckon-late": true, "reckon-without": true, "place": true, "trail": true,
	"unit": true, "written": true, "plan-here": true, "whole": true, "in-short": true, // said by the book's own contents and title
	"number": true, // the link beside it names it again
}

// trimmer takes out of a page's words what only a screen can use, and, unless
// the page is a calculator's own, the parts of a calculator that stand there.
// Headings go down a level, addresses and ids are rewritten, the first heading
// gets the chapter's number and links the number of the chapter they lead to.
type trimmer struct {
	rebase
	plan    bookPlan
	whole   bool // keep what stands beside a calculator's form
	number  string
	out     bytes.Buffer
	title   strings.Builder // the words of the first heading
	skip    string          // the element being left out; empty = none
	depth   int             // of elements of its name within it
	inTitle bool
	to      string // the number to write when the link ends; empty = none
}

// tag takes a tag.
func (t *trimmer) tag(tag []byte) {
	name, opens := tagName(tag)
	switch {
	case t.skip != "":
		t.skipped(string(name), opens)
	case opens && t.drops(name, tag):
		t.skip, t.depth = string(name), 1
	case len(name) == 2 && name[0] == 'h' && name[1] >= '1' && name[1] <= '5':
		t.heading(tag, name[1] == '1', opens)
	case string(name) == "a":
		t.link(tag, opens)
	default:
		t.rebase.tag(&t.out, tag)
	}
}

// skipped takes a tag within an element that is left out.
func (t *trimmer) skipped(name string, opens bool) {
	switch {
	case name != t.skip:
	case opens:
		t.depth++
	default:
		if t.depth--; t.depth == 0 {
			t.skip = ""
		}
	}
}

// heading takes a heading's tag; the page's own heading gets its number.
func (t *trimmer) heading(tag []byte, own, opens bool) {
	at := bytes.IndexByte(tag, 'h') + 1
	lower := bytes.Clone(tag)
	lower[at]++
	t.rebase.tag(&t.out, lower)
	if t.inTitle = own && opens; t.inTitle {
		fmt.Fprintf(&t.out, `<span class="chapter-number">%s</span> `, t.number)
	}
}

// link takes a link's tag. Behind its words stands the number of the chapter it
// leads to, if that is another one.
func (t *trimmer) link(tag []byte, opens bool) {
	if opens {
		t.to = ""
		values(tag, func(name []byte, _, value, to int) {
			if string(name) == "href" {
				t.to = t.plan.numberOf(t.from, html.UnescapeString(string(tag[value:to])))
			}
		})
	} else if t.to != "" {
		fmt.Fprintf(&t.out, `<span class="chapter-to">&#160;(%s)</span>`, t.to)
		t.to = ""
	}
	t.rebase.tag(&t.out, tag)
}

// text takes the text between two tags.
func (t *trimmer) text(text []byte) {
	if t.skip != "" {
		return
	}
	if t.inTitle {
		t.title.Write(text)
	}
	t.out.Write(text)
}

// drops reports whether an element is left out, for its name or a class of it.
func (t *trimmer) drops(name, tag []byte) bool {
	if screenOnly[string(name)] {
		return true
	}
	_, rest, ok := bytes.Cut(tag, []byte(` class="`))
	if !ok {
		return false
	}
	classes, _, _ := bytes.Cut(rest, []byte(`"`))
	for _, class := range bytes.Fields(classes) {
		if screenOnly[string(class)] || !t.whole && string(class) == "reckon-fold" {
			return true
		}
	}
	return false
}

// addBook prints the book, when the theme has a style for it, and adds it to the
// pages. It gives the files that the book alone loads.
func (i *impression) addBook(sheets []sheet, pages [][]byte) ([]sheet, [][]byte, map[string][]byte, error) {
	if i.bundle.Book == "" {
		return sheets, pages, nil, nil
	}
	s, files, err := i.book(sheets, pages)
	if err != nil {
		return nil, nil, nil, err
	}
	page, err := i.printOne(s)
	if err != nil {
		return nil, nil, nil, fmt.Errorf("page %s: %w", s.address, err)
	}
	return append(sheets, s), append(pages, page), files, nil
}
