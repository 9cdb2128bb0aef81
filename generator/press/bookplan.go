package press

import (
	"slices"
	"strconv"
	"strings"

	"slipbook/calculators/catalog"
)

// bookPlan is which pages make the book, in order, and their numbers.
type bookPlan struct {
	parts     []plannedPart
	addresses []string          // of every chapter, in order
	numbers   map[string]string // of chapters, by address
}

// plannedPart is a part of the book before its pages are read.
type plannedPart struct {
	number    string
	title     string // empty: that of its opening page
	opening   string // address; may be empty
	addresses []string
}

// planBook puts the pages that there are in the book's order: the home page,
// the units with their lessons, then what is there to look up. The parts to look
// up are lettered: so a unit more changes no number but those of units.
func (i *impression) planBook(there func(address string) bool) (bookPlan, error) {
	var parts []plannedPart
	if home := i.course.Home; home != nil {
		parts = append(parts, plannedPart{number: "0", opening: home.Address})
	}
	for n, u := range i.course.Units {
		if u.Page == nil {
			continue
		}
		p := plannedPart{number: strconv.Itoa(n + 1), opening: u.Page.Address}
		for _, page := range u.Lessons {
			p.addresses = append(p.addresses, page.Address)
		}
		parts = append(parts, p)
	}
	toLookUp, err := i.partsToLookUp()
	if err != nil {
		return bookPlan{}, err
	}
	letter := 'A'
	for _, p := range toLookUp {
		p.addresses = slices.DeleteFunc(p.addresses, func(address string) bool { return !there(address) })
		if len(p.addresses) > 0 {
			p.number = string(letter)
			parts = append(parts, p)
			letter++
		}
	}
	return numbered(parts), nil
}

// partsToLookUp are the parts behind the units: states, media, calculators, and
// what is gathered from the lessons.
func (i *impression) partsToLookUp() ([]plannedPart, error) {
	w, err := i.words.sayAll("strip", "chart-media", "calculators", "extra")
	if err != nil {
		return nil, err
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
	extra := plannedPart{title: w[3], addresses: []string{answersAddress, faultsAddress, hazardsAddress, glossaryAddress}}
	return []plannedPart{states, media, calculators, extra}, nil
}

// numbered gives every chapter its number: a part's opening page that of the
// part, the others that and a count, "2.3".
func numbered(parts []plannedPart) bookPlan {
	plan := bookPlan{parts: parts, numbers: map[string]string{}}
	for _, p := range parts {
		if p.opening != "" {
			plan.addresses = append(plan.addresses, p.opening)
			plan.numbers[p.opening] = p.number
		}
		for n, address := range p.addresses {
			plan.addresses = append(plan.addresses, address)
			plan.numbers[address] = lessonNumber(p.number, n)
		}
	}
	return plan
}

// lessonNumber is the number of the n-th lesson of a unit, from 0: "2.3".
func lessonNumber(unit string, n int) string { return unit + "." + strconv.Itoa(n+1) }

// chapterKey makes an id from an address: "slip.make-slip". Ids with a dot
// belong to the theme.
func chapterKey(address string) string {
	return "page." + strings.ReplaceAll(strings.TrimSuffix(address, ".html"), "/", ".")
}

// numberOf gives the number of the chapter that a link in the page at from leads
// to; empty where the book has no such chapter, where it is the page itself, and
// for hazards and words of the trade, whose chapters everybody finds.
func (b bookPlan) numberOf(from, written string) string {
	address, ok := rebase{from: from, place: func(address string) string { return address }}.address(written)
	file, fragment, _ := strings.Cut(address, "#")
	if !ok || file == from || (file == glossaryAddress || file == hazardsAddress) && fragment != "" {
		return ""
	}
	return b.numbers[file]
}

// bind puts the chapters, which come in the order of their addresses, into
// their parts.
func (b bookPlan) bind(chapters []chapter) []bookPart {
	var parts []bookPart
	for _, p := range b.parts {
		part := bookPart{Number: p.number, Title: p.title}
		count := len(p.addresses)
		if p.opening != "" {
			part.Key, part.Title, chapters[0].Quiet = chapters[0].Key, chapters[0].Title, true
			count++
		}
		part.Chapters, chapters = chapters[:count], chapters[count:]
		parts = append(parts, part)
	}
	return parts
}
