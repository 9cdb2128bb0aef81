package imprint

import (
	"strconv"
	"strings"
	"sync"

	"slipbook/generator/address"
	"slipbook/generator/course"
)

// The documents of an e-book that are no page of the handbook, by address as if they
// were: an address with a dot before its ending is no lesson's.
const (
	EbookTitle   = "ebook.title.html"
	EbookBeside  = "ebook.beside.html" // what the handbook has and the e-book has not
	EbookAnswers = "ebook.answers"     // begins those of the answers to questions, a document a unit
)

// Ebook is what views need to know of an e-book in which they are set: which pages are
// documents of it, and where everything else is. Views of many documents may be made
// at once.
type Ebook struct {
	Site    string            // absolute address of the handbook, ending in "/"; empty when unknown
	Numbers map[string]string // of the chapters, by address; a document without one is numbered ""
	Answers map[string]string // the document with the answers to the questions of a page, by the page's address

	mu     sync.Mutex
	shown  map[string]course.PictureFile
	beside map[string]bool
}

// To returns what a place of the handbook is called in the document of a page: within
// the e-book where that holds it; else on the handbook's site, or, where nobody said
// where that is, in the document that names what is not here. Nothing can be filled
// in, so a query is left out.
func (e *Ebook) To(page, to string) string {
	rest, fragment, _ := strings.Cut(to, "#")
	file, _, _ := strings.Cut(rest, "?")
	if file == address.CalculatorFolder {
		file = address.Calculators
	}
	if _, holds := e.Numbers[file]; !holds {
		if e.Site != "" {
			return e.Site + to
		}
		e.mu.Lock()
		e.beside[file] = true
		e.mu.Unlock()
		file, fragment = EbookBeside, ChapterKey(file)
	}
	if fragment != "" {
		fragment = "#" + fragment
	}
	return Document(address.Relative(page, file+fragment))
}

// Document returns the address of a page as that of the document which holds it.
func Document(page string) string {
	file, fragment, found := strings.Cut(page, "#")
	file = strings.TrimSuffix(file, ".html")
	if file != "" {
		file += ".xhtml"
	}
	if found {
		file += "#" + fragment
	}
	return file
}

// NewEbook makes one with nothing in it yet.
func NewEbook(site string) *Ebook {
	return &Ebook{Site: site, Numbers: map[string]string{}, Answers: map[string]string{}, shown: map[string]course.PictureFile{}, beside: map[string]bool{}}
}

// ebookWidth is about how wide a picture of an e-book is at least, in pixels, where it
// was made that wide: more than most reading systems show, on fine screens too.
const ebookWidth = 1000

// show returns where a picture's file is from a page, and notes that it is shown. Of
// several widths an e-book carries one.
func (e *Ebook) show(page string, p *course.Picture) string {
	var best course.PictureFile
	for n, f := range p.Files {
		if n == 0 || f.Width >= ebookWidth && (best.Width < ebookWidth || f.Width < best.Width) || best.Width < ebookWidth && f.Width > best.Width {
			best = f
		}
	}
	at := address.OfPicture(p, best)
	e.mu.Lock()
	e.shown[at] = best
	e.mu.Unlock()
	return address.Relative(page, at)
}

// Shown returns the files of pictures that documents show, by address. No view may be
// being made.
func (e *Ebook) Shown() map[string]course.PictureFile { return e.shown }

// Beside returns the addresses of pages that documents speak of and nobody can reach
// from them. No view may be being made.
func (e *Ebook) Beside() map[string]bool { return e.beside }

// ToAnswer returns where the right answer to a question of a page stands.
func (e *Ebook) ToAnswer(page string, number int) string {
	return e.To(page, e.Answers[page]+"#"+AnswerID(page, number))
}

// AnswerID is the id of the right answer to a question of a page.
func AnswerID(page string, number int) string {
	return ChapterKey(page) + ".answer." + strconv.Itoa(number)
}
