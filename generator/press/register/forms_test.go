package register

import (
	"slices"
	"testing"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// TestTestBookHasTheColumnsOfTiles wants each column of tiles.csv in the test book, in
// its order, or named as one that nobody writes by hand.
func TestTestBookHasTheColumnsOfTiles(t *testing.T) {
	var want []string
	for _, name := range course.TileColumns() {
		if slices.Contains(onScreenOnly, name) {
			continue
		}
		if tileWords[name] == "" {
			t.Errorf("the test book has no words for the column %q of tiles.csv", name)
		}
		want = append(want, tileWords[name])
	}
	if !slices.Equal(testColumns(), want) {
		t.Errorf("columns %q, want %q", testColumns(), want)
	}
	for _, name := range onScreenOnly {
		if !slices.Contains(course.TileColumns(), name) {
			t.Errorf("tiles.csv has no column %q", name)
		}
	}
}

// TestFormsAreWhole wants every form to have a heading, its use, an example in each
// column, rows to fill in, and the cautions that it names.
func TestFormsAreWhole(t *testing.T) {
	r := shown(t)
	owes := r.Owes()
	for n, s := range r.Forms() {
		made, err := s.View(imprint.Place{Page: s.Address})
		if err != nil {
			t.Fatal(err)
		}
		v := made.(formView)
		if s.Title == "" || v.Why == "" || len(v.Columns) < 9 || len(v.Rows) == 0 {
			t.Errorf("%s: %+v", s.Address, v)
		}
		for _, c := range v.Columns {
			if c.Head == "" || c.Example == "" {
				t.Errorf("%s: column %+v", s.Address, c)
			}
		}
		f := forms[n]
		for _, id := range f.cautions {
			if !slices.Contains(ids(v.Safety.Hazards), id) {
				t.Errorf("%s lacks the hazard %q", s.Address, id)
			}
		}
		owed := owes[s.Address]()
		if len(owed) != 1 || owed[0].Form != care.Short || len(owed[0].Care.Hazards) != len(f.cautions) {
			t.Errorf("%s owes %+v", s.Address, owed)
		}
		if len(f.cautions)+len(f.aid) == 0 {
			t.Errorf("%s says nothing of what can hurt", s.Address)
		}
	}
	for _, id := range []string{"training-list", "incident-report"} {
		if n := slices.IndexFunc(forms, func(f blankForm) bool { return f.id == id }); !forms[n].health {
			t.Errorf("%s does not say who may see it", id)
		}
	}
}

// TestExampleThatDoesNotFit wants a theme whose example has other columns to be named.
func TestExampleThatDoesNotFit(t *testing.T) {
	r := shown(t)
	f := forms[0]
	f.columns = f.columns[1:]
	if _, err := r.form(f, imprint.Place{Page: address.Form(f.id)}); err == nil {
		t.Error("an example with a cell too many is printed")
	}
}
