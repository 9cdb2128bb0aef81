package main

import (
	"strings"
	"testing"
)

// TestNamedMetals wants a metal that a student names, be it in the name of a
// medium, to be said back, asked about, and heeded in every step until a firing
// has fixed it, on the pot as well as in the wish.
func TestNamedMetals(t *testing.T) {
	b := newBench(demoTable(t))
	for _, c := range []struct {
		asks
		wish, title string // the metal in them
	}{
		{asks{"bisque", "", "cobalt wash, clear glaze dipped", "yes"}, "oxide wash with cobalt, glaze", "Put on oxide wash with cobalt"},
		{asks{"bisque", "", "copper carbonate", "yes"}, "oxide wash with copper", "Put on oxide wash with copper"},
		{asks{"bisque", "", "cobalt and manganese oxide wash", "yes"}, "", ""},
		{asks{"bisque", "", "cobalt manganese oxide wash wiped back", "yes"}, "oxide wash with cobalt and manganese (", "Work the coat of oxide wash with cobalt and manganese"},
		{asks{"bisque", "cobalt oxide-wash", "clear glaze dipped", "yes"}, "oxide wash with cobalt (loose)", ""},
		{asks{"bone-dry", "nickel underglaze", "clear glaze dipped", "no"}, "underglaze with nickel (loose)", ""},
		{asks{"glaze-fired", "", "cadmium enamel", "no"}, "enamel with cadmium", "Put on on-glaze enamel with cadmium"},
	} {
		a := c.plan(b)
		if c.wish == "" {
			if len(a.Errors) == 0 && !strings.Contains(output(a, "wish"), "cobalt") {
				t.Errorf("%+v: a metal was dropped: %s", c.asks, output(a, "wish"))
			}
			continue
		}
		if len(a.Errors) > 0 || !strings.Contains(output(a, "wish"), c.wish) {
			t.Errorf("%+v: planned for %q %v", c.asks, output(a, "wish"), a.Errors)
		}
		asked, titled, fixed := false, c.title == "", false
		for _, row := range rowsOf(a) {
			asked = asked || strings.Contains(row["ask"], "You wrote “") && strings.Contains(row["ask"], "Raw, or you do not know")
			titled = titled || strings.HasPrefix(row["title"], c.title)
			fire := strings.HasSuffix(strings.ToLower(row["title"]), "fire")
			if begun := c.already != "" || strings.Contains(row["title"], " with ") || asked; begun && !fire && !fixed && (!strings.Contains(row["wear"], "nitrile gloves, a fitted respirator") || !strings.Contains(row["who"], "instructor")) {
				t.Errorf("%+v: %v", c.asks, row)
			}
			fixed = fixed || fire && !strings.Contains(c.layers+c.already, "oxide") && !strings.Contains(c.layers, "wash")
		}
		if !asked || !titled {
			t.Errorf("%+v: asked %v, in a title %v: %s", c.asks, asked, titled, a.Headline)
		}
	}
}

// TestNothingIsSprayedOverMetal wants no glaze or colour sprayed while metal lies
// loose on the pot, named or not, and dipping told where nothing is chosen.
func TestNothingIsSprayedOverMetal(t *testing.T) {
	b := newBench(demoTable(t))
	for _, on := range []string{"oxide wash", "cobalt wash", "cobalt stain wash", "nickel underglaze"} {
		for _, a := range []asks{
			{"bisque", on + " loose", "clear glaze sprayed", "no"},
			{"bisque", "", on + ", clear glaze sprayed", "no"},
			{"bone-dry", on + " loose", "underglaze sprayed", "no"},
		} {
			got := a.plan(b)
			fired := false // which fixes underglaze
			for _, row := range rowsOf(got) {
				fired = fired || strings.HasSuffix(on, "underglaze") && (row["title"] == "Bisque fire" || row["title"] == "Harden on")
				if strings.Contains(row["title"], "spraying") && !fired {
					t.Errorf("%+v: %s", a, row["title"])
				}
			}
		}
		got := asks{"bisque", on + " loose", "clear glaze", "no"}.plan(b)
		if !strings.Contains(got.Headline, "Put glaze on by dipping") || !strings.Contains(got.Headline, "spraying") {
			t.Errorf("%s: %s", on, got.Headline)
		}
	}
}

// TestMetalsNeverForFood wants no plan for food or drink where a metal was named
// that is never for it, and none at all with a metal that is not planned.
func TestMetalsNeverForFood(t *testing.T) {
	b := newBench(demoTable(t))
	for _, a := range []asks{
		{"bisque", "", "lead glaze", "yes"},
		{"bisque", "", "underglaze, cadmium glaze dipped", "yes"},
		{"bisque", "lead wash", "clear glaze dipped", "yes"},
		{"glaze-fired", "lead glaze", "decal", "yes"},
	} {
		got := a.plan(b)
		if len(got.Errors) > 0 || strings.Contains(got.Headline, "Works") || !strings.Contains(output(got, "conflict"), "on a pot for food or drink") || !strings.Contains(output(got, "rule"), "Show its safety data sheet to the instructor") {
			t.Errorf("%+v: %s %s %v", a, got.Headline, output(got, "rule"), got.Errors)
		}
		a.food = "no"
		if got = a.plan(b); strings.Contains(output(got, "conflict"), "food") {
			t.Errorf("%+v: %s", a, got.Headline)
		}
	}
	for _, word := range b.d.Metals.Unplanned {
		for _, a := range []asks{{"bisque", "", word + " glaze", "no"}, {"bisque", word + " oxide wash", "glaze dipped", "no"}, {"bisque", "", word + " oxide", "no"}} {
			if got := a.plan(b); len(got.Errors) != 1 || !strings.Contains(got.Errors[0].Text, "“"+word+"” is not planned here. Show its safety data sheet to the instructor") {
				t.Errorf("%+v: %s %v", a, got.Headline, got.Errors)
			}
		}
	}
}

// TestMetalWithFood turns every wish of a table's media that names such a metal,
// for food, away.
func TestMetalWithFood(t *testing.T) {
	b := newBench(demoTable(t))
	for _, m := range b.media {
		for _, metal := range b.d.Metals.NeverFood {
			for _, state := range states() {
				if a := (asks{state, "", metal + " " + m.Name, "yes"}).plan(b); len(a.Errors) > 0 || output(a, "conflict") == "" || len(a.Rows) > 0 && strings.Contains(output(a, "nearest"), metal) {
					t.Errorf("%s %s on %s: %s %v", metal, m.Name, state, a.Headline, a.Errors)
				}
			}
		}
	}
}
