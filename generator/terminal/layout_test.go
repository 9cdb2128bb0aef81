package terminal

import (
	"strings"
	"testing"
)

func TestFold(t *testing.T) {
	long := strings.Repeat("word ", 20)
	for _, c := range []struct{ name, words, indent, want string }{
		{"nothing", "", "  ", ""},
		{"one line", "a  b", "  ", "  a b\n"},
		{"two lines", long, "  ", "  " + strings.TrimSpace(strings.Repeat("word ", 15)) + "\n  " + strings.TrimSpace(strings.Repeat("word ", 5)) + "\n"},
		{"a word too long", strings.Repeat("w", 90) + " b", "", strings.Repeat("w", 90) + "\nb\n"},
		{"letters, not bytes", strings.Repeat("é", 76) + " b", "", strings.Repeat("é", 76) + " b\n"},
	} {
		if got := fold(c.words, c.indent); got != c.want {
			t.Errorf("%s: got\n%s want\n%s", c.name, got, c.want)
		}
	}
}

func TestGrid(t *testing.T) {
	g := grid{{"Größe", "mm"}, {"a", "1.25"}, {"b"}}
	if got, want := g.lines(false), "  Größe  mm\n  a      1.25\n  b\n"; got != want {
		t.Errorf("words:\n%s", got)
	}
	if got, want := g.lines(true), "  Größe    mm\n      a  1.25\n      b\n"; got != want {
		t.Errorf("numbers:\n%s", got)
	}
	if got := (grid{}).lines(true); got != "" {
		t.Errorf("no rows: %q", got)
	}
}
