package press

import (
	"strconv"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/assets"
	"slipbook/generator/markup"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
)

// bookPlan is which pages make the book, in order, with their numbers, and which
// of them stand together on one page.
type bookPlan struct {
	parts    []plannedPart
	volumes  []*volume
	chapters map[string]planned // by address of the page
	styles   map[string][]byte  // the style sheets of the book's pages, by address
	styleOf  map[string]string  // the address of that of each page of the book
}

// plannedPart is a part of the book.
type plannedPart struct {
	number   string
	title    string   // empty: that of its opening page
	opening  *sheet   // may be nil
	chapters []*sheet // the opening page first
}

// planned is a chapter's number and the page of the book on which it stands.
type planned struct{ number, volume string }

// volume is a page of the book that holds chapters.
type volume struct {
	address, title string
	chapters       []*sheet
	size           int
}

// largestVolume is how many bytes the chapters of a page of the book are thought
// to be at most, so that no page is over 2 MB: browsers lay out larger ones for
// a long time, on a phone or for paper.
const largestVolume = 1_900_000

// planBook puts the pages in the book's order: the home page, the units with
// their lessons, then what is there to look up. The parts to look up are
// lettered: so a unit more changes no number but those of units.
func (i *impression) planBook() *bookPlan {
	b := &bookPlan{chapters: map[string]planned{}, styles: map[string][]byte{}, styleOf: map[string]string{}}
	b.parts = append(i.unitParts(), i.partsToLookUp()...)
	for _, p := range b.parts {
		n := 0
		for _, c := range p.chapters {
			number := p.number
			if c != p.opening {
				number = lessonNumber(p.number, n)
				n++
			}
			b.chapters[c.address] = planned{number: number}
		}
	}
	i.bind(b)
	i.styleBook(b)
	return b
}

// unitParts are the home page and the units.
func (i *impression) unitParts() []plannedPart {
	at := map[string]*sheet{}
	for n := range i.sheets {
		at[i.sheets[n].address] = &i.sheets[n]
	}
	var parts []plannedPart
	if home := i.course.Home; home != nil {
		s := at[home.Address]
		parts = append(parts, plannedPart{number: "0", opening: s, chapters: []*sheet{s}})
	}
	for n, u := range i.course.Units {
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

// partsToLookUp are the parts behind the units, as the kinds of page name them.
func (i *impression) partsToLookUp() []plannedPart {
	var parts []plannedPart
	for n := range pageKinds {
		kind := &pageKinds[n]
		if kind.part == "" || kind.part == unitsPart {
			continue
		}
		title := i.Say(kind.part)
		for k := range i.sheets {
			s := &i.sheets[k]
			if s.kind != kind {
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
func (i *impression) bind(b *bookPlan) {
	sizes := i.chapterSizes(b)
	all := 0
	for _, p := range b.parts {
		all += p.size(sizes)
	}
	one := all <= largestVolume
	var open *volume
	for _, p := range b.parts {
		if open != nil && open.size+p.size(sizes) > largestVolume && !one {
			open = nil // the part begins a page
		}
		for _, c := range p.chapters {
			size := sizes[c.address]
			if open == nil || open.size+size > largestVolume && !one {
				number := b.chapters[c.address].number
				open = &volume{address: address.Volume(number), title: number}
				if one {
					open.address = address.Book
				}
				b.volumes = append(b.volumes, open)
			}
			open.size += size
			open.chapters = append(open.chapters, c)
			b.chapters[c.address] = planned{b.chapters[c.address].number, open.address}
		}
	}
}

// ownBlock is how many bytes a block is thought to take beside its words.
const ownBlock = 600

// chapterSizes estimates how many bytes each chapter is, by its address.
func (i *impression) chapterSizes(b *bookPlan) map[string]int {
	lessons := 0
	for _, u := range i.course.Units {
		lessons += len(u.Lessons)
	}
	sizes := make(map[string]int, len(b.chapters))
	for _, p := range b.parts {
		for _, c := range p.chapters {
			sizes[c.address] = c.kind.room + c.kind.each*lessons + c.size
		}
	}
	for _, page := range i.order {
		sizes[page.Address] += wordsSize(page, page.Document.Pieces)
	}
	return sizes
}

func (p plannedPart) size(sizes map[string]int) int {
	size := 0
	for _, c := range p.chapters {
		size += sizes[c.address]
	}
	return size
}

// wordsSize is the size of words of a page with the drawings that stand in them.
func wordsSize(page *proof.Page, pieces []markup.Piece) int {
	size := 0
	for _, p := range pieces {
		size += len(p.HTML)
		switch {
		case p.Block != nil:
			size += ownBlock + wordsSize(page, p.Block.Pieces)
		case p.Ref != nil && p.Ref.Kind == markup.PictureRef:
			size += len(page.Targets[p.Ref.Number].Picture.SVG)
		}
	}
	return size
}

// styleBook makes the style sheets of the book's pages.
func (i *impression) styleBook(b *bookPlan) {
	add := func(page string, chapters []*sheet) {
		style := b.style(i.Say("book-contents"), chapters)
		at := assets.Address("chapters.css", style)
		b.styles[at], b.styleOf[page] = style, at
	}
	for _, v := range b.volumes {
		add(v.address, v.chapters)
	}
	if b.styleOf[address.Book] == "" {
		add(address.Book, nil)
	}
}

// lessonNumber is the number of the n-th lesson of a unit, from 0: "2.3".
func lessonNumber(unit string, n int) string { return unit + "." + strconv.Itoa(n+1) }

// address returns what a place of the handbook is called in the chapter that a
// page is, or in the contents: within the book if the book holds it, with the
// number of its chapter behind theme.NumberSign unless it is the same chapter, a hazard
// or a word of the trade, whose chapters everybody finds; else the page beside the
// book, as for a calculator to be filled in.
func (b *bookPlan) address(page, to string) string {
	here := address.Book
	if own, ok := b.chapters[page]; ok {
		here = own.volume
	}
	file, fragment, _ := strings.Cut(to, "#")
	chapter, ok := b.chapters[file]
	if !ok {
		return address.Relative(here, to)
	}
	within := "#" + chapterKey(file)
	if fragment != "" {
		within += "." + fragment
	}
	if chapter.volume != here {
		within = address.Relative(here, chapter.volume) + within
	}
	if file == page || (file == address.Glossary || file == address.Hazards) && fragment != "" {
		return within
	}
	return within + theme.NumberSign + chapter.number
}
