package table

import (
	"fmt"
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
)

// TestEveryEntryOfTheDemoHasItsHazards goes through the program's own table as
// the demo course has it: every medium and way of working on every page of a
// state, and every medium on its own page.
func TestEveryEntryOfTheDemoHasItsHazards(t *testing.T) {
	r := newTable(t, presstest.Demo(t, "../../../content"))
	entries := 0
	want := func(where, piece string, rows ...course.Care) {
		entries++
		t.Run(where, func(t *testing.T) { presstest.Cared(t, r.Decoration, r.Word, piece, rows...) })
	}
	for n, s := range r.States() {
		state, page := r.Decoration.States[n], printed(t, r, s, "state")
		for _, m := range r.Decoration.Media {
			want(s.Address+", "+m.Name, entryOf(t, page, m.ID), m.Care, m.On[state.ID].Care)
		}
		for _, q := range r.Decoration.Techniques {
			for k, m := range r.manners(q, state) {
				id := wayID(q.ID)
				if k > 0 {
					id += fmt.Sprint(".", k+1)
				}
				want(s.Address+", "+m.name, entryOf(t, page, id), q.Care, m.on[state.ID].Care)
			}
		}
	}
	for n, s := range r.Media() {
		_, piece, _ := strings.Cut(printed(t, r, s, "medium"), `<div class="care">`)
		piece, _, _ = strings.Cut(piece, "</section>")
		want(s.Address, piece, r.Decoration.Media[n].Care)
	}
	if entries < 140 {
		t.Errorf("only %d entries were read", entries)
	}
}

// printed is what a template prints of a page of the room.
func printed(t *testing.T, r *Table, s imprint.Sheet, template string) string {
	t.Helper()
	view, err := s.View(imprint.Place{Page: s.Address})
	if err != nil {
		t.Fatal(err)
	}
	page, err := imprint.Execute(r.Pages, template, view)
	if err != nil {
		t.Fatal(err)
	}
	return string(page)
}

// entryOf is an entry of a state's page: its heading and what follows up to the
// table's own words for it.
func entryOf(t *testing.T, page, id string) string {
	t.Helper()
	_, entry, ok := strings.Cut(page, `<h3 id="`+id+`">`)
	if !ok {
		t.Errorf("no entry %s", id)
	}
	entry, _, _ = strings.Cut(entry, "<h3")
	entry, _, _ = strings.Cut(entry, "</section>")
	return entry
}
