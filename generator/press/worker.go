package press

import (
	"slices"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/offline"
	"slipbook/generator/press/book"
)

// Why phones take some files neither with the handbook nor once they were asked for.
const (
	forPrinting = "it is large and for printing: it is fetched when it is wanted"
	fromAFolder = "only pages that were opened from a folder ask for it, and these are on the phone already"
	toTakeAway  = "it is a file to take away, and no part of the pages"
)

// printedKinds are the kinds of page that are for printing, by their templates.
var printedKinds = map[string]bool{book.Kind.Template: true, book.VolumeKind.Template: true, "label": true}

// Worker returns the service worker that keeps the edition on phones, of the files that
// were published, which are all of the edition's. An error is a fault of the theme.
func (e *Edition) Worker(files []offline.File) ([]byte, error) {
	part, err := e.parts()
	if err != nil {
		return nil, err
	}
	return offline.Worker(e.press.frame.Bundle.Phone.Worker, address.Phone, files, part)
}

// parts says of each file what it is to a phone.
func (e *Edition) parts() (func(address string) offline.Part, error) {
	index, err := e.press.index()
	if err != nil {
		return nil, err
	}
	left, units := e.leftOut(index), e.ofUnits()
	pictures := map[string]string{} // what photos show, by address
	for name, picture := range e.press.course.Pictures {
		for _, f := range picture.Files {
			pictures[address.OfPicture(picture, f)] = name
		}
	}
	return func(at string) offline.Part {
		return offline.Part{Left: left[at], Unit: units[at], Picture: pictures[at], Width: e.photos[at].Width}
	}, nil
}

// leftOut lists the files that no phone takes, with the reason.
func (e *Edition) leftOut(index *wordIndex) map[string]string {
	left := map[string]string{}
	for at, s := range e.sheets {
		if printedKinds[s.Kind.Template] {
			left[at] = forPrinting
		}
	}
	b := e.press.frame.Bundle
	left[b.Book] = forPrinting
	if e.press.book != nil {
		for at := range e.press.book.Styles {
			left[at] = forPrinting
		}
	}
	for _, at := range slices.Concat(e.press.carried, index.carried, []string{b.Desk.Carried}) {
		left[at] = fromAFolder
	}
	left[address.Ebook] = toTakeAway
	delete(left, "") // of what a theme does not have
	return left
}

// ofUnits lists the files that one unit alone needs: its pages, and photos that no
// other page shows.
func (e *Edition) ofUnits() map[string]string {
	units := map[string]string{}
	claim := func(picture *course.Picture, unit string) {
		if picture == nil {
			return
		}
		for _, f := range picture.Files {
			at := address.OfPicture(picture, f)
			if of, claimed := units[at]; claimed && of != unit {
				unit = "" // it is of the whole handbook
			}
			units[at] = unit
		}
	}
	for _, page := range e.press.reading.Pages {
		unit := ""
		if page.Unit != nil {
			unit = page.Unit.ID
		}
		units[page.Address] = unit
		for _, t := range page.Targets {
			claim(t.Picture, unit)
		}
	}
	for _, picture := range e.press.listedPictures() {
		claim(picture, "")
	}
	return units
}
