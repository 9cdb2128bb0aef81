package press

import (
	"bytes"
	"fmt"
	"maps"

	"slipbook/generator/assets"
	"slipbook/generator/course"
	"slipbook/generator/markup"
	"slipbook/generator/pool"
	"slipbook/generator/proof"
)

// impression is one printing of the whole handbook: the press with what was
// read of the course and the shared files that pages load.
type impression struct {
	*Press
	bundle    *assets.Bundle
	spoken    assets.Parcel  // the words of the calculators
	wrapped   assets.Parcel  // the decoration table for pages with a plan; empty without a table
	order     []*course.Page // every hand-written page, in reading order
	place     map[*course.Page]int
	documents map[*course.Page]*markup.Document
	owed      map[string][]owed              // what pages must say of safety, by address
	has       struct{ answers, faults bool } // what there is to gather
}

// sheet is one page to print: where, with which template, from which view.
type sheet struct {
	address  string // from the handbook's root
	template string
	view     func() (any, error) // called by the worker that prints the sheet
}

func newImpression(p *Press, r *proof.Reading, b *assets.Bundle) *impression {
	i := &impression{
		Press:     p,
		bundle:    b,
		order:     p.course.Pages(),
		place:     make(map[*course.Page]int),
		documents: make(map[*course.Page]*markup.Document, len(r.Documents)),
	}
	for n, page := range i.order {
		i.place[page] = n
	}
	for _, d := range r.Documents {
		i.documents[d.Page] = d
	}
	return i
}

// printAll prints the sheets, as many at once as there are processors. Pages
// come back in the order of the sheets; of several errors the first in that
// order is given, so that two runs fail alike.
func (i *impression) printAll(sheets []sheet) ([][]byte, error) {
	pages := make([][]byte, len(sheets))
	err := pool.Try(len(sheets), 1, func(n int) (err error) {
		if pages[n], err = i.printOne(sheets[n]); err != nil {
			err = fmt.Errorf("page %s: %w", sheets[n].address, err)
		}
		return err
	})
	if err != nil {
		return nil, err
	}
	return pages, nil
}

// printOne makes one sheet's view and prints it.
func (i *impression) printOne(s sheet) ([]byte, error) {
	view, err := s.view()
	if err != nil {
		return nil, err
	}
	var page bytes.Buffer
	page.Grow(32 << 10) // most pages are shorter
	if err := i.templates.ExecuteTemplate(&page, s.template, view); err != nil {
		return nil, err
	}
	if err := i.settle(s, page.Bytes()); err != nil {
		return nil, err
	}
	return bytes.Clone(page.Bytes()), nil // the room left over is not kept
}

// bind puts pages and other files together. Two of one address are an error:
// one of them would be lost.
func bind(sheets []sheet, pages [][]byte, others ...map[string][]byte) (Edition, error) {
	e := make(Edition, len(pages))
	for _, files := range others {
		maps.Copy(e, files)
	}
	for n, s := range sheets {
		if _, taken := e[s.address]; taken {
			return nil, fmt.Errorf("two pages or files want the address %s; give the unit or lesson that has it another name", s.address)
		}
		e[s.address] = pages[n]
	}
	return e, nil
}
