package register

import (
	"os"
	"slices"
	"strings"
	"testing"

	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/press/care"
	"slipbook/generator/press/desk"
	"slipbook/generator/press/imprint"
	"slipbook/generator/press/presstest"
	"slipbook/generator/press/table"
)

// shown is the register of the demo course, which keeps enough for every poster.
func shown(t *testing.T) *Register {
	t.Helper()
	c, found := new(course.Reader).Load(os.DirFS("../../../content"))
	if found.Stop() {
		t.Fatal(found)
	}
	return registerOf(t, c)
}

// registerOf opens the register of a course.
func registerOf(t *testing.T, c *course.Course) *Register {
	t.Helper()
	r, theme := presstest.Read(t, c), presstest.Studio(t)
	rules := &care.Rules{Decoration: c.Decoration, Addresses: r.Addresses}
	frame := &imprint.Frame{Course: c, Bundle: presstest.Bundle(), There: map[string]bool{}}
	calculators := desk.New(theme, rules, r.Settings, c.Language)
	decoration, err := table.New(theme, rules, frame, calculators, r)
	if err != nil {
		t.Fatal(err)
	}
	return New(r, decoration, frame, calculators)
}

// viewOf makes the view of one poster.
func viewOf(t *testing.T, r *Register, id string) posterView {
	t.Helper()
	for _, s := range r.Posters() {
		if s.Address == address.Poster(id) {
			v, err := s.View(imprint.Place{Page: s.Address})
			if err != nil {
				t.Fatal(err)
			}
			return v.(posterView)
		}
	}
	t.Fatalf("there is no poster %s", id)
	return posterView{}
}

func ids(hazards []care.Hazard) (all []string) {
	for _, h := range hazards {
		all = append(all, h.ID)
	}
	return all
}

// TestPostersNameTheirHazards wants every hazard of a poster's place on it, each that
// is one to health with what to do, what all of them call for wearing, and the page to
// owe it.
func TestPostersNameTheirHazards(t *testing.T) {
	r := shown(t)
	looked := 0
	for _, p := range r.postersUp() {
		v := viewOf(t, r, p.id)
		owed := r.Owes()[address.Poster(p.id)]()
		for _, h := range r.Decoration.Hazards {
			if p.place == "" || h.Place != p.place {
				continue
			}
			looked++
			n := slices.Index(ids(v.Safety.Hazards), h.ID)
			if n < 0 || v.Safety.Hazards[n].Short != h.Short {
				t.Errorf("%s: %q is not on it as hazards.yaml has it", p.id, h.ID)
			}
			if owed[0].Form != care.Short || !slices.Contains(ids(owed[0].Care.Hazards), h.ID) {
				t.Errorf("%s: it does not owe %q", p.id, h.ID)
			}
			for _, wear := range h.Wear {
				if !strings.Contains(strings.Join(v.Gear.Wear, ", "), wear) || !slices.Equal(owed[1].Care.Wear, v.Gear.Wear) {
					t.Errorf("%s: it does not say to wear %q", p.id, wear)
				}
			}
		}
	}
	if looked < 4 { // of powder, mist, fume
		t.Errorf("only %d hazards have the place of a poster", looked)
	}
}

// TestNoPosterWithoutHazards wants no poster where the course has no hazards for a
// place, none at all without a register, and no form where nothing is kept.
func TestNoPosterWithoutHazards(t *testing.T) {
	r := shown(t)
	c := r.reading.Course
	c.Decoration.Hazards = slices.DeleteFunc(c.Decoration.Hazards, func(h course.Hazard) bool { return h.ID == "mist" || h.ID == "dust" })
	for _, p := range r.postersUp() {
		if p.id == "spray-booth" {
			t.Error("there is a poster for the booth without its hazard")
		}
	}
	if n := len(r.Posters()); n != 3 {
		t.Errorf("%d posters", n)
	}
	c.Materials = nil
	if len(r.Posters()) != 0 || len(r.Forms()) != len(forms) {
		t.Errorf("without materials %d posters and %d forms", len(r.Posters()), len(r.Forms()))
	}
	c.Recipes, c.Tiles = nil, nil
	if len(r.Forms())+len(r.Paper())+len(r.owedOnPaper()) != 0 {
		t.Error("there are forms where nothing is kept")
	}
}

// TestTubsOnPosters wants the tubs that not everybody may open apart, who may before
// all else, and what their sheets class them as.
func TestTubsOnPosters(t *testing.T) {
	r := shown(t)
	v := viewOf(t, r, "mixing-bench")
	if len(v.Tubs) != 3 || !v.Doctor || !v.Invented {
		t.Fatalf("%+v", v.Tubs)
	}
	for n, want := range []string{"who-instructor", "who-with-instructor", care.FitTested} {
		if v.Tubs[n].Safety.Who != want {
			t.Errorf("group %d is for %q, want %q", n, v.Tubs[n].Safety.Who, want)
		}
	}
	strict := v.Tubs[0]
	if !slices.Contains(strict.Names, "Cobalt carbonate") || strict.Class.Signal != "Danger" || !slices.Equal(strict.Class.Unclear, []string{"Black cobalt oxide", "Ember red stain"}) {
		t.Errorf("%+v", strict)
	}
	if open := v.Tubs[2]; !slices.Contains(open.Names, "Flint") && !slices.Contains(open.Names, "River ball clay") || open.Class.Signal != "Danger" {
		t.Errorf("%+v", open)
	}
	if who := viewOf(t, r, "kiln-room").Allowed; len(who) != 1 || who[0].Safety.Who != care.Trained {
		t.Errorf("at the kiln: %+v", who)
	}
	barred := viewOf(t, r, "spray-booth").Tubs[0]
	if !barred.Barred || barred.Safety.Who != "" || !slices.Contains(barred.Names, "Cobalt carbonate") || slices.Contains(barred.Names, "Flint") {
		t.Errorf("never sprayed: %+v", barred)
	}
	if who := viewOf(t, r, "spray-booth").Allowed; len(who) != 1 || who[0].Safety.Who != "who-with-instructor" {
		t.Errorf("at the booth: %+v", who)
	}
	if owed := r.Owes()[address.Poster("kiln-room")](); !slices.ContainsFunc(owed, func(o care.Owed) bool { return o.Form == care.Who && o.Care.Who == "who-instructor" }) {
		t.Error("the kiln's poster does not owe who may")
	}
}

// TestSinkSaysWhereAllOfItGoes wants every tub of the register once at the sink, under
// the words of its own entry, and who may of those that harm water.
func TestSinkSaysWhereAllOfItGoes(t *testing.T) {
	r := shown(t)
	v := viewOf(t, r, "sink")
	named := map[string]string{}
	for _, g := range v.Waste {
		for _, name := range g.Names {
			if _, twice := named[name]; twice {
				t.Errorf("%q goes to two places", name)
			}
			named[name] = g.Where
		}
	}
	for _, m := range r.reading.Course.Materials {
		if where, there := named[m.Name]; !there || where != m.Waste {
			t.Errorf("%q goes to %q, want %q", m.Name, where, m.Waste)
		}
	}
	if first := v.Safety.Hazards[0].ID; first != "rinse-water" {
		t.Errorf("the first hazard at the sink is %q", first)
	}
	if len(v.Tubs) != 1 || v.Tubs[0].Names[0] != "Cobalt carbonate (instructor only)" {
		t.Errorf("%+v", v.Tubs)
	}
}

// TestFullPostersCountTubs wants a register too large for a sheet to be counted, with
// no hazard left out.
func TestFullPostersCountTubs(t *testing.T) {
	r := shown(t)
	whole := len(viewOf(t, r, "mixing-bench").Safety.Hazards)
	c := r.reading.Course
	for n := range 300 {
		m := *c.Materials[n%len(c.Materials)]
		m.Name += strings.Repeat("x", n/10)
		c.Materials = append(c.Materials, &m)
	}
	for _, id := range []string{"mixing-bench", "sink"} {
		v := viewOf(t, r, id)
		named, more := 0, 0
		for _, g := range v.Tubs {
			named, more = named+len(g.Names), more+g.More
		}
		for _, g := range v.Waste {
			named, more = named+len(g.Names), more+g.More
		}
		if more == 0 || named == 0 {
			t.Errorf("%s names %d tubs and counts %d", id, named, more)
		}
	}
	if n := len(viewOf(t, r, "mixing-bench").Safety.Hazards); n != whole {
		t.Errorf("%d hazards, want %d", n, whole)
	}
}

// TestPosterCode wants a code on a poster once the course says where it is published.
func TestPosterCode(t *testing.T) {
	r := shown(t)
	if viewOf(t, r, "sink").QR != nil {
		t.Error("a code that leads nowhere")
	}
	r.reading.Course.PublishedAt = "https://handbook.example/"
	if v := viewOf(t, r, "sink"); v.QR == nil || v.Whole.Title == "" {
		t.Errorf("%v, %+v", v.QR, v.Whole)
	}
}
