package register

import (
	"slices"
	"strings"
	"testing"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/imprint"
)

// held is the studio of kept with a class that mixes its slip, puts out the whiting and
// fires, beside a kiln with a hazard.
func held(t *testing.T) (*Register, *course.Session) {
	t.Helper()
	r, _ := kept(t)
	s := &course.Session{ID: "first", Title: "First slips", People: 10, When: "Week 3", Lesson: "units/wash/wipe.md",
		Mix: []course.Mixed{{Recipe: "slip", Each: "100 mL"}}, Tubs: []string{"whiting"}, Firing: "One shelf."}
	r.reading.Course.Sessions = []*course.Session{s}
	for n := range r.Decoration.Transitions {
		if tr := &r.Decoration.Transitions[n]; tr.Move == "bisque" {
			tr.Care = course.Care{Hazards: []string{"blade"}, Who: course.Instructor}
		}
	}
	return r, s
}

// TestClassCarriesAllItsMaterials wants the hazards and the strictest person of all that
// is mixed, put out and taught before all else, who may open each tub, each mix's own
// hazards beside it, and those of the kiln.
func TestClassCarriesAllItsMaterials(t *testing.T) {
	r, s := held(t)
	lesson, _ := r.reading.Course.FindPage(s.Lesson)
	lesson.Head.Technique = r.Decoration.Techniques[0].ID
	r.Decoration.Techniques[0].Care = course.Care{Hazards: []string{"blade"}}
	r.reading.Course.Materials[1].Hazards = nil // the blade comes with the lesson's way of working
	owed := r.Owes()[address.Class("first")]()
	var forms []string
	for _, o := range owed {
		if o.Care.Any() {
			forms = append(forms, o.Name+" "+o.Form)
		}
	}
	if want := []string{"First slips care", "Stain care-who", "Clay care-who", "Slip care-line", "First slips care-line", "First slips care-who"}; !slices.Equal(sorted(forms), sorted(want)) {
		t.Errorf("%q, want %q", forms, want)
	}
	whole := owed[0].Care
	if owed[0].Form != care.Whole || whole.Who != care.WhoWords[course.WithInstructor] || len(whole.Hazards) != 2 {
		t.Errorf("%+v, want dust and blade, with the instructor", whole)
	}
}

// spaced joins sentences, each of whose spaces is one that may break.
func spaced(all []string) string { return strings.Join(strings.Fields(strings.Join(all, " ")), " ") }

func sorted(all []string) []string { return slices.Sorted(slices.Values(all)) }

// TestClassWithoutAFiring says nothing of the kiln.
func TestClassWithoutAFiring(t *testing.T) {
	r, s := held(t)
	if at := (imprint.Place{Page: address.Class("first")}); !r.kilnSafety(s, at).Any() {
		t.Error("a firing without its hazards")
	} else if s.Firing = ""; r.kilnSafety(s, at).Any() {
		t.Error("a kiln where nothing is fired")
	}
}

// TestClassSheet wants the tubs by name, each with what is taken of it, and the order
// of each mix with the spare said.
func TestClassSheet(t *testing.T) {
	r, s := held(t)
	v := r.classSheet(s, imprint.Place{Page: address.Class("first")})
	var shelf []string
	for _, row := range v.Shelf {
		shelf = append(shelf, row.Of.Title+" "+row.Take)
	}
	// 1100 mL: 108 of dry mix take 90/2.6 + 10/2.6 + 8/4.5 + 75 of water = 115.24 mL, so
	// 9.5454 times as much: 859 g of clay, 95.5 of whiting, 76.4 of stain.
	if want := []string{"Clay 859 g", "Stain 76.4 g", "Whiting 95.5 g"}; !slices.Equal(shelf, want) {
		t.Errorf("shelf %q, want %q", shelf, want)
	}
	if len(v.Orders) != 1 || spaced(v.Orders[0].Notes) != "That is 1100 mL in all: 100 mL for each of 10 people, and 10 % to spare." {
		t.Errorf("orders %+v", v.Orders)
	}
	if v.InClass.Signal != "Danger" || !slices.Equal(v.InClass.Unclear, []string{"Stain"}) || v.Lesson == nil {
		t.Errorf("class %+v, lesson %v", v.InClass, v.Lesson)
	}
	s.Mix = []course.Mixed{{Recipe: "slip", Litres: 1.5}}
	if v := r.classSheet(s, imprint.Place{Page: address.Class("first")}); spaced(v.Orders[0].Notes) != "That is 1.5 L in all, and none to spare." {
		t.Errorf("notes %q", v.Orders[0].Notes)
	}
	s.Mix = nil
	if rows := r.shelf(s, imprint.Place{Page: address.Class("first")}); len(rows) != 1 || rows[0].Of.Title != "Whiting" || rows[0].Take != "" {
		t.Errorf("a tub put out as it is: %+v", rows)
	}
}

// TestStockBook wants what a litre takes, what all classes take, and what is a clear
// over which colours.
func TestStockBook(t *testing.T) {
	r, s := held(t)
	s.Mix[0].Each = "50 mL"
	r.reading.Course.Sessions = append(r.reading.Course.Sessions, &course.Session{ID: "second", Mix: []course.Mixed{{Recipe: "slip", Litres: 1}}})
	r.reading.Course.Recipes[0].Clear = "whiting"
	view, err := r.Stock()[0].View(imprint.Place{Page: address.Stock})
	if err != nil {
		t.Fatal(err)
	}
	rows := view.(stockView).Rows
	// A litre takes 8.6776 times 90, 8 and 10; the classes 0.55 L and 1 L.
	for n, want := range []struct{ name, litre, all string }{{"Clay", "781 g", "1210.5 g"}, {"Stain", "69.4 g", "107.6 g"}, {"Whiting", "86.8 g", "134.5 g"}} {
		if row := rows[n]; row.Of.Title != want.name || len(row.Uses) != 1 || row.Uses[0].Take != want.litre || row.Needs != want.all || row.Review != "2028-02-01" || len(row.Over) != n/2 {
			t.Errorf("%+v, want %v", row, want)
		}
	}
	if owed := r.Owes()[address.Stock](); len(owed) != 6 || owed[0].Form != care.Line || owed[1].Form != care.Who {
		t.Errorf("%+v", owed)
	}
}

// TestClassesInTheirList says of each class who may and what can hurt.
func TestClassesInTheirList(t *testing.T) {
	r, _ := held(t)
	owed := r.Owes()[address.Classes]()
	if len(owed) != 2 || owed[0].Form != care.Line || owed[1].Form != care.Who || owed[1].Care.Who != care.WhoWords[course.WithInstructor] {
		t.Errorf("%+v", owed)
	}
	view, err := r.Classes()[0].View(imprint.Place{Page: address.Classes})
	if v := view.(classesView); err != nil || len(v.Sessions) != 1 || v.Sessions[0].Of.Address != "first.html" || len(v.Sessions[0].Recipes) != 1 {
		t.Errorf("%+v, %v", view, err)
	}
}

// TestWithoutClasses wants no empty pages.
func TestWithoutClasses(t *testing.T) {
	r, _ := kept(t)
	if r.Classes() != nil || r.ClassSheets() != nil {
		t.Error("a list of classes without classes")
	}
	r.reading.Course.Materials = nil
	if r.Stock() != nil {
		t.Error("a stock book without tubs")
	}
}
