package press

import (
	"bytes"
	"fmt"
	"html"
	"html/template"
	"strings"

	"slipbook/calculators/catalog"
)

// The book is the whole handbook as one document to print, with contents and
// page numbers. It is made of the finished pages, so that it says what they say:
// each gives the words between its header and its foot, without what only a
// screen can use, its headings a level lower and its ids with the page's own
// word in front. Links lead on within the book.

// bookView is the book.
type bookView struct {
	Shell shell
	Parts []bookPart
}

// bookPart is a part of the book: a unit, or what is there to look up.
type bookPart struct {
	Title    string
	Key      string // of its opening chapter; empty = it has none
	Chapters []chapter
}

// chapter is one page of the handbook in the book.
type chapter struct {
	Key   string // its id
	Title string
	Body  template.HTML
	Quiet bool // opens its part: the part's line in the contents stands for it
}

// bookPlan is which pages make the book, in order.
type bookPlan struct {
	parts []plannedPart
	keys  map[string]string // by address
}

type plannedPart struct {
	title     string
	opening   string // address; may be empty
	addresses []string
}

// planBook puts the pages in the book's order: the units with their lessons,
// then what is there to look up.
func (i *impression) planBook() (bookPlan, error) {
	var parts []plannedPart
	if home := i.course.Home; home != nil {
		parts = append(parts, plannedPart{home.Head.Title, home.Address, nil})
	}
	for _, u := range i.course.Units {
		if u.Page == nil {
			continue
		}
		p := plannedPart{title: u.Page.Head.Title, opening: u.Page.Address}
		for _, page := range u.Lessons {
			p.addresses = append(p.addresses, page.Address)
		}
		parts = append(parts, p)
	}
	w, err := i.words.sayAll("strip", "chart-media", "calculators", "extra")
	if err != nil {
		return bookPlan{}, err
	}
	states := plannedPart{title: w[0]}
	for _, s := range i.table.States {
		states.addresses = append(states.addresses, stateAddress(s.ID))
	}
	media := plannedPart{title: w[1]}
	for _, m := range i.table.Media {
		media.addresses = append(media.addresses, mediumAddress(m.ID))
	}
	calculators := plannedPart{title: w[2]}
	for _, c := range catalog.All() {
		calculators.addresses = append(calculators.addresses, calculatorAddress(c.Name))
	}
	extra := plannedPart{title: w[3], addresses: []string{answersAddress, faultsAddress, glossaryAddress}}
	plan := bookPlan{append(parts, states, media, calculators, extra), map[string]string{}}
	for _, p := range plan.parts {
		for _, address := range append([]string{p.opening}, p.addresses...) {
			if address != "" {
				plan.keys[address] = chapterKey(address)
			}
		}
	}
	return plan, nil
}

// chapterKey makes an id from an address: "slip.make-slip". Ids with a dot
// belong to the theme.
func chapterKey(address string) string {
	return "page." + strings.ReplaceAll(strings.TrimSuffix(address, ".html"), "/", ".")
}

// book makes the book from the finished pages; nothing while there is no theme
// for it or no page.
func (i *impression) book(sheets []sheet, pages [][]byte) (sheet, error) {
	plan, err := i.planBook()
	if err != nil {
		return sheet{}, err
	}
	byAddress := make(map[string]int, len(sheets))
	for n, s := range sheets {
		byAddress[s.address] = n
	}
	chapters := make([]*chapter, len(sheets))
	inParallel(len(sheets), func(n int) {
		if key, ok := plan.keys[sheets[n].address]; ok {
			chapters[n] = plan.chapter(sheets[n].address, key, pages[n])
		}
	})
	v := bookView{}
	for _, p := range plan.parts {
		part := bookPart{Title: p.title, Key: plan.keys[p.opening]}
		for k, address := range append([]string{p.opening}, p.addresses...) {
			if n, ok := byAddress[address]; ok && chapters[n] != nil {
				c := *chapters[n]
				c.Quiet = k == 0
				part.Chapters = append(part.Chapters, c)
			}
		}
		if len(part.Chapters) > 0 {
			v.Parts = append(v.Parts, part)
		}
	}
	return sheet{bookAddress, "book", func() (any, error) {
		w, err := i.words.sayAll("book", "book-description")
		if err != nil {
			return nil, err
		}
		v.Shell = i.shell(about{kind: "book", address: bookAddress, title: w[0], description: w[1], gathered: true})
		v.Shell.Strip, v.Shell.Script = nil, relative(bookAddress, i.bundle.Book)
		return v, nil
	}}, nil
}

// Where the words of a page begin and end in the theme's pages.
var (
	mainStart = []byte(`<main id="main.text" tabindex="-1">`)
	mainEnd   = []byte(`</main>`)
)

// chapter makes a chapter of a finished page.
func (b bookPlan) chapter(address, key string, page []byte) *chapter {
	_, words, _ := bytes.Cut(page, mainStart)
	if end := bytes.LastIndex(words, mainEnd); end >= 0 {
		words = words[:end]
	}
	t := trimmer{
		rebase: rebase{from: address, prefix: key + ".", place: b.place},
		whole:  strings.HasPrefix(address, "calculators/"),
	}
	t.out.Grow(len(words))
	tags(words, t.tag, t.text)
	return &chapter{Key: key, Title: strings.TrimSpace(html.UnescapeString(t.title.String())), Body: template.HTML(t.out.Bytes())}
}

// place gives the address of something within the book, or, where the book does
// not hold it or a calculator is to be filled in, of its page beside the book.
func (b bookPlan) place(address string) string {
	file, fragment, _ := strings.Cut(address, "#")
	key, ok := b.keys[file]
	switch {
	case !ok:
		return relative(bookAddress, address)
	case fragment == "":
		return "#" + key
	}
	return "#" + key + "." + fragment
}

// screenOnly names what a printed page has no use for, by element or class.
var screenOnly = map[string]bool{
	"form": true, "noscript": true, "script": true, "button": true,
	"bench": true, "letters": true, "ways-to": true, "place": true, "trail": true,
	"unit": true, "written": true, "plan-here": true, "whole": true, // said by the book's own contents and title
}

// trimmer takes out of a page's words what only a screen can use, and, unless
// the page is a calculator's own, the parts of a calculator that stand there.
// Headings go down a level, addresses and ids are rewritten.
type trimmer struct {
	rebase
	whole   bool // keep what stands beside a calculator's form
	out     bytes.Buffer
	title   strings.Builder // the words of the first heading
	skip    string          // the element being left out; empty = none
	depth   int             // of elements of its name within it
	inTitle bool
}

// tag takes a tag.
func (t *trimmer) tag(tag []byte) {
	name, opens := tagName(tag)
	switch {
	case t.skip != "":
		if string(name) != t.skip {
			return
		}
		if opens {
			t.depth++
		} else if t.depth--; t.depth == 0 {
			t.skip = ""
		}
	case opens && t.drops(name, tag):
		t.skip, t.depth = string(name), 1
	case len(name) == 2 && name[0] == 'h' && name[1] >= '1' && name[1] <= '5':
		t.inTitle = opens && name[1] == '1'
		at := bytes.IndexByte(tag, 'h') + 1
		lower := bytes.Clone(tag)
		lower[at]++
		t.rebase.tag(&t.out, lower)
	default:
		t.rebase.tag(&t.out, tag)
	}
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

// drops says whether an element is left out, for its name or a class of it.
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

// addBook prints the book and adds it to the pages.
func (i *impression) addBook(sheets []sheet, pages [][]byte) ([]sheet, [][]byte, error) {
	if i.bundle.Book == "" {
		return sheets, pages, nil
	}
	s, err := i.book(sheets, pages)
	if err != nil {
		return nil, nil, err
	}
	page, err := i.printOne(s)
	if err != nil {
		return nil, nil, fmt.Errorf("page %s: %w", s.address, err)
	}
	return append(sheets, s), append(pages, page), nil
}
