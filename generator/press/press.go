// Package press lays out pages: a course that was read, a theme and the shared
// files go in, named pages come out when they are asked for. It exists so that
// publish and show print the same bytes.
//
// The pages stand in rooms by kind: what the decoration table says (table), what is
// gathered from all lessons (gathered), the book (book), with what they share below
// them (theme, imprint, care, desk, setting). A room knows those below it and nothing
// of the press, which opens them (impression.go), lists the kinds of page (kinds.go)
// and has itself those that join the others: home, units, lessons, lists.
//
// Each kind of page has a file of its own (lesson.go, table/state.go, ...)
// that turns the course into a view: a struct that holds exactly what the
// template of the same name prints. Templates decide nothing
// and know no addresses; views hold addresses that are already as they are
// written where the view stands (imprint.Place), on its page or in the book. Every
// word that a page prints beside the course's own stands in the theme's words.
//
// Rules the compiler cannot check: a view is made and printed by one worker,
// but many workers do so at once, so nothing in an impression and its rooms is written to
// once the Edition is made (what is kept, which is only remembered, is made for that); and an id with a
// dot in it ("caution.1") belongs to the theme, since ids made from headings and
// terms never hold one.
package press

import (
	"fmt"
	"maps"
	"slices"

	"slipbook/generator/address"
	"slipbook/generator/assets"
	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
)

// Edition is a finished handbook: every page and shared file by its address from
// the root. Pages are printed when they are asked for.
type Edition struct {
	press  *impression
	sheets map[string]imprint.Sheet
	files  map[string][]byte
	photos map[string]course.PictureFile // read when they are asked for: all together they may be more than the memory
}

// Print prepares the edition of a course in a theme. No finding of the reading may
// stop the work: every reference leads somewhere. An error is a fault of the theme,
// or two pages of one address.
func Print(t *theme.Theme, r *proof.Reading, b *assets.Bundle, c Copy) (*Edition, error) {
	i, err := prepare(t, r, b, c)
	if err != nil {
		return nil, err
	}
	e := &Edition{press: i, sheets: make(map[string]imprint.Sheet), files: i.files(), photos: i.shownPictures()}
	for _, s := range i.sheets {
		_, taken := e.sheets[s.Address]
		if _, isFile := e.files[s.Address]; taken || isFile {
			return nil, fmt.Errorf("two pages or files want the address %s; give the unit or lesson that has it another name", s.Address)
		}
		e.sheets[s.Address] = *s
	}
	return e, nil
}

// Addresses returns the address of every page and file, sorted. An error is that of
// making the index of the words, whose files are named by what is in them.
func (e *Edition) Addresses() ([]string, error) {
	index, err := e.press.index()
	if err != nil {
		return nil, err
	}
	all := slices.AppendSeq(slices.Collect(maps.Keys(e.sheets)), maps.Keys(e.files))
	all = append(slices.AppendSeq(slices.AppendSeq(all, maps.Keys(e.photos)), maps.Keys(index.files)), address.Ebook)
	slices.Sort(all)
	return all, nil
}

// Pages counts the pages.
func (e *Edition) Pages() int { return len(e.sheets) }

// File returns the bytes of a page or file; not ok where the edition has none at
// the address. The same course, theme and bundle give the same bytes, whatever
// was asked for before. Goroutines may ask at once.
func (e *Edition) File(at string) (data []byte, ok bool, err error) {
	if s, isPage := e.sheets[at]; isPage {
		data, err = e.press.printOne(s)
		if err != nil {
			err = fmt.Errorf("page %s: %w", at, err)
		}
		return data, true, err
	}
	if photo, isPhoto := e.photos[at]; isPhoto {
		data, err = photo.Data()
		if err != nil {
			err = fmt.Errorf("%s: %w", at, err)
		}
		return data, true, err
	}
	if at == address.Ebook {
		data, err = e.press.ebook.Take()
		return data, true, err
	}
	if data, ok = e.files[at]; ok || !assets.Fingerprinted(at) {
		return data, ok, nil
	}
	index, err := e.press.index()
	if err == nil {
		data, ok = index.files[at]
	}
	return data, ok, err
}
