package address

import "testing"

func TestRelative(t *testing.T) {
	for _, c := range []struct{ name, from, to, want string }{
		{"root to root", "index.html", "contents.html", "contents.html"},
		{"root to folder", "index.html", "slip/index.html", "slip/index.html"},
		{"folder to root", "slip/index.html", "glossary.html#bisque", "../glossary.html#bisque"},
		{"same folder", "slip/index.html", "slip/consistency.html", "consistency.html"},
		{"other folder", "slip/consistency.html", "states/bisque.html", "../states/bisque.html"},
		{"folders that start alike", "slip/a.html", "slips/a.html", "../slips/a.html"},
		{"two deep", "a/b/c.html", "a/d/e.html", "../d/e.html"},
		{"a place on the page itself", "glossary.html", "glossary.html#slip", "#slip"},
		{"the page itself", "states/wet.html", "states/wet.html", "wet.html"},
		{"nothing", "slip/index.html", "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := Relative(c.from, c.to); got != c.want {
				t.Errorf("Relative(%q, %q) = %q, want %q", c.from, c.to, got, c.want)
			}
		})
	}
}
