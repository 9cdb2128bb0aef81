package proof

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
)

// TestDrawnTooMuch shows one drawing of 100 KiB often: ten times in a page are
// accepted, eleven are not, and so many pages together are not.
func TestDrawnTooMuch(t *testing.T) {
	for _, c := range []struct {
		pages, times int
		want         []string
	}{
		{1, 10, nil},
		{2, 11, []string{
			"units/slip/more-0.md:25:1: error: up to this one, the drawings of this page hold more than 1024 KiB (picture-size)",
			"units/slip/more-1.md:25:1: error: up to this one, the drawings of this page hold more than 1024 KiB (picture-size)",
		}},
		{50, 10, []string{"units/slip/more-48.md:23:1: error: up to this one, the drawings of all pages hold more than 48 MiB (picture-size)"}},
	} {
		files := coursetest.Small()
		svg := string(files["pictures/jar.svg"].Data)
		svg = strings.Replace(svg, "</svg>", strings.Repeat(`<path d="M0 0"/>`, 6400)+"</svg>", 1)
		files["pictures/large.svg"] = &fstest.MapFile{Data: []byte(svg)}
		list := ""
		for i := range c.pages {
			files[fmt.Sprintf("units/slip/more-%d.md", i)] = &fstest.MapFile{Data: []byte("---\ntitle: More\n---\n\n" + strings.Repeat("![A jar](../../pictures/large.svg)\n\n", c.times))}
			list += fmt.Sprintf(", more-%d", i)
		}
		files["units/slip/unit.md"] = &fstest.MapFile{Data: []byte("---\ntitle: Slip\nlessons: [mix, measure" + list + "]\n---\n")}
		loaded, loading := new(course.Reader).Load(files)
		var r Reader
		_, found := r.Read(loaded, loading)
		var got []string
		for _, f := range found {
			if f.Rule.ID == "picture-size" {
				got = append(got, strings.Split(f.String(), "\n")[0])
			}
		}
		if strings.Join(got, "\n") != strings.Join(c.want, "\n") {
			t.Errorf("%d pages: got\n%s\nwant\n%s", c.pages, strings.Join(got, "\n"), strings.Join(c.want, "\n"))
		}
	}
}
