package press

import (
	"bytes"
	"fmt"
	"html/template"
	"slices"
	"strings"

	"golang.org/x/net/html"

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
	r := rebase{from: address, prefix: key + ".", place: b.place}
	c := &chapter{Key: key}
	var body []byte
	c.Title, body = trimmed(r.apply(words), strings.HasPrefix(address, "calculators/"))
	c.Body = template.HTML(body)
	return c
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
var screenOnly = []string{"form", "noscript", "script", "button", "bench", "letters", "ways-to", "place", "trail"}

// trimmed takes out of a page's words what only a screen can use, and, unless
// it is a calculator's own page, the parts of a calculator that stand there.
// Headings go down a level. It gives the words of the first heading too.
func trimmed(words []byte, calculator bool) (title string, kept []byte) {
	drop := screenOnly
	if !calculator {
		drop = append(slices.Clone(drop), "reckon-fold")
	}
	var out bytes.Buffer
	out.Grow(len(words))
	skip, depth, inTitle := "", 0, false
	tokens := html.NewTokenizer(bytes.NewReader(words))
	for kind := tokens.Next(); kind != html.ErrorToken; kind = tokens.Next() {
		raw := tokens.Raw()
		name, _ := tokens.TagName()
		tag := string(name)
		switch {
		case skip != "":
			if tag == skip {
				depth += deeper(kind)
			}
			if depth == 0 {
				skip = ""
			}
		case kind == html.StartTagToken && dropped(tag, raw, drop):
			if !void[tag] {
				skip, depth = tag, 1
			}
		case (kind == html.StartTagToken || kind == html.EndTagToken) && lower[tag] != "":
			out.Write(bytes.Replace(raw, []byte(tag), []byte(lower[tag]), 1))
			inTitle = tag == "h1" && kind == html.StartTagToken
		default:
			if inTitle && kind == html.TextToken {
				title += html.UnescapeString(string(raw))
			}
			out.Write(raw)
		}
	}
	return strings.TrimSpace(title), out.Bytes()
}

// lower is each heading a level lower.
var lower = map[string]string{"h1": "h2", "h2": "h3", "h3": "h4", "h4": "h5", "h5": "h6"}

// void are the elements without an end that may be dropped.
var void = map[string]bool{"input": true, "img": true, "br": true, "hr": true}

// deeper is how an element's tag changes the depth within it.
func deeper(kind html.TokenType) int {
	switch kind {
	case html.StartTagToken:
		return 1
	case html.EndTagToken:
		return -1
	}
	return 0
}

// dropped says whether a start tag is of an element, or has a class, that is
// dropped.
func dropped(tag string, raw []byte, drop []string) bool {
	if slices.Contains(drop, tag) {
		return true
	}
	_, rest, ok := bytes.Cut(raw, []byte(`class="`))
	if !ok {
		return false
	}
	classes, _, _ := bytes.Cut(rest, []byte(`"`))
	for class := range strings.FieldsSeq(string(classes)) {
		if slices.Contains(drop, class) {
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
