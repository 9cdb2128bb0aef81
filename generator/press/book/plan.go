package book

import (
	"slices"
	"strconv"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/setting"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
)

// Book is which pages make the book, in order, with their numbers, and which
// of them stand together on one page. It is only read once it is made.
type Book struct {
	*theme.Theme
	Chapters imprint.Chapters
	Sizes    map[string]int    // how many bytes each chapter is thought to be, by address
	Styles   map[string][]byte // the style sheets of the book's pages, by address
	course   *course.Course
	frame    *imprint.Frame
	ebook    func() (int, error)
	parts    []plannedPart
	volumes  []*volume
	styleOf  map[string]string // the address of that of each page of the book
}

// plannedPart is a part of the book.
type plannedPart struct {
	number   string
	title    string           // empty: that of its opening page
	opening  *imprint.Sheet   // may be nil
	chapters []*imprint.Sheet // the opening page first
}

// volume is a page of the book that holds chapters.
type volume struct {
	address, title string
	chapters       []*imprint.Sheet
	size           int
}

// LargestVolume is how many bytes the chapters of a page of the book are thought
// to be at most, so that no page is over 2 MB: browsers lay out larger ones for
// a long time, on a phone or for paper.
const LargestVolume = 1_900_000

// unitParts are the home page and the units.
func (b *Book) unitParts(sheets []*imprint.Sheet) []plannedPart {
	at := map[string]*imprint.Sheet{}
	for _, s := range sheets {
		at[s.Address] = s
	}
	var parts []plannedPart
	if home := b.course.Home; home != nil {
		s := at[home.Address]
		parts = append(parts, plannedPart{number: "0", opening: s, chapters: []*imprint.Sheet{s}})
	}
	for n, u := range b.course.Units {
		if u.Page == nil {
			continue
		}
		p := plannedPart{number: strconv.Itoa(n + 1), opening: at[u.Page.Address]}
		p.chapters = append(p.chapters, p.opening)
		for _, page := range u.Lessons {
			p.chapters = append(p.chapters, at[page.Address])
		}
		parts = append(parts, p)
	}
	return parts
}

// partNames are what course.yaml calls the parts behind the units, by the keys of their
// titles.
var partNames = map[string]string{"strip": "states", "chart-media": "media", "calculators": "calculators", "extra": "lists"}

// partsToLookUp are the parts behind the units, as the kinds of page name them.
func (b *Book) partsToLookUp(kinds []*imprint.Kind, sheets []*imprint.Sheet) []plannedPart {
	var parts []plannedPart
	for _, kind := range kinds {
		if kind.Part == "" || kind.Part == imprint.UnitsPart || !slices.Contains(b.course.BookParts, partNames[kind.Part]) {
			continue
		}
		title := b.Say(kind.Part)
		for _, s := range sheets {
			if s.Kind != kind {
				continue
			}
			if last := len(parts) - 1; last < 0 || parts[last].title != title {
				parts = append(parts, plannedPart{number: string(rune('A' + len(parts))), title: title})
			}
			parts[len(parts)-1].chapters = append(parts[len(parts)-1].chapters, s)
		}
	}
	return parts
}

// bind puts the chapters on as few pages as may be: all on the page of the
// contents, or else as many parts to a page as it takes, a part that is too large
// itself on several.
func (b *Book) bind() {
	all := 0
	for _, p := range b.parts {
		all += p.size(b.Sizes)
	}
	one := all <= LargestVolume
	var open *volume
	for _, p := range b.parts {
		if open != nil && open.size+p.size(b.Sizes) > LargestVolume && !one {
			open = nil // the part begins a page
		}
		for _, c := range p.chapters {
			size := b.Sizes[c.Address]
			if open == nil || open.size+size > LargestVolume && !one {
				number := b.Chapters[c.Address].Number
				open = &volume{address: address.Volume(number), title: number}
				if one {
					open.address = address.Book
				}
				b.volumes = append(b.volumes, open)
			}
			open.size += size
			open.chapters = append(open.chapters, c)
			b.Chapters[c.Address] = imprint.Chapter{Number: b.Chapters[c.Address].Number, Volume: open.address}
		}
	}
}

// chapterSizes estimates how many bytes each chapter is, by its address.
func (b *Book) chapterSizes(pages []*proof.Page) map[string]int {
	lessons := 0
	for _, u := range b.course.Units {
		lessons += len(u.Lessons)
	}
	sizes := make(map[string]int, len(b.Chapters))
	for _, p := range b.parts {
		for _, c := range p.chapters {
			sizes[c.Address] = c.Kind.Room + c.Kind.Each*lessons + c.Size
		}
	}
	for _, page := range pages {
		sizes[page.Address] += setting.Size(page, page.Document.Pieces)
	}
	return sizes
}

func (p plannedPart) size(sizes map[string]int) int {
	size := 0
	for _, c := range p.chapters {
		size += sizes[c.Address]
	}
	return size
}
