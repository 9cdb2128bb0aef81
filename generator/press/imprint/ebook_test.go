package imprint

import (
	"slices"
	"testing"

	"slipbook/generator/address"
	"slipbook/generator/course"
)

// TestPlaceInTheEbook wants what the e-book holds to be in its documents, the site for
// all else, and a place at the end where nobody said where the site is.
func TestPlaceInTheEbook(t *testing.T) {
	for _, c := range []struct{ site, to, want string }{
		{"", "", ""},
		{"", "slip/mix.html#weigh-first", "#weigh-first"},
		{"", "slip/measure.html", "measure.xhtml"},
		{"", "glossary.html#bisque", "../glossary.xhtml#bisque"},
		{"", "calculators/x.html?a=1#b", "../calculators/x.xhtml#b"},
		{"", address.CalculatorFolder, "../calculators/index.xhtml"},
		{"", "labels/index.html", "../ebook.beside.xhtml#page.labels.index"},
		{"", "tiles/index.html#tile.r7", "../ebook.beside.xhtml#page.tiles.index"},
		{"https://clay.example/", "labels/index.html", "https://clay.example/labels/index.html"},
		{"https://clay.example/", "tiles/index.html?a#tile.r7", "https://clay.example/tiles/index.html?a#tile.r7"},
		{"https://clay.example/", "slip/measure.html", "measure.xhtml"},
	} {
		e := NewEbook(c.site)
		for _, page := range []string{"slip/mix.html", "slip/measure.html", "glossary.html", "calculators/x.html", address.Calculators} {
			e.Numbers[page] = ""
		}
		at := Place{Page: "slip/mix.html", Ebook: e}
		if got := at.To(c.to); got != c.want {
			t.Errorf("%s, with the site %q, is %q, want %q", c.to, c.site, got, c.want)
		}
		if beside := len(e.Beside()); beside > 1 || (beside == 1) != (c.site == "" && c.want != "" && c.want[:3] == "../" && c.want[3:4] == "e") {
			t.Errorf("%s: %v is named at the end", c.to, e.Beside())
		}
	}
	if at := (Place{Page: "a.html", Ebook: NewEbook("")}); at.ID("b.1") != "b.1" || at.Level(1) != 1 || !at.Bound() {
		t.Error("ids and headings of an e-book differ from those of pages, or it can be filled in")
	}
}

// TestEbookShowsOneWidth wants the smallest file of a picture that is wide enough, or
// the widest.
func TestEbookShowsOneWidth(t *testing.T) {
	for _, c := range []struct {
		widths []int
		want   int
	}{{[]int{480, 960, 1440, 1920}, 1440}, {[]int{1920, 1440, 1000, 480}, 1000}, {[]int{480, 960}, 960}, {[]int{960, 480}, 960}, {[]int{300}, 300}} {
		e := NewEbook("")
		p := &course.Picture{Path: "pictures/jar.jpg"}
		for n, width := range c.widths {
			f := course.PictureFile{Width: width, Ending: ".jpeg"}
			f.Sum[0] = byte(n)
			p.Files = append(p.Files, f)
		}
		e.show("slip/mix.html", p)
		var got []int
		for _, f := range e.Shown() {
			got = append(got, f.Width)
		}
		if !slices.Equal(got, []int{c.want}) {
			t.Errorf("of %v the e-book shows %v, want %d", c.widths, got, c.want)
		}
	}
}
