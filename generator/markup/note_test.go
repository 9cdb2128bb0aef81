package markup

import (
	"bytes"
	"testing"
)

// TestMarksStayInTheLesson wants the number of a footnote on its own page, and
// on no page that gathers from it: there it would run into the sentence.
func TestMarksStayInTheLesson(t *testing.T) {
	d := read(t, "```asked May I?\nYes.[^n]\n```\n\n## What to look for\n\n- smooth[^n]\n\n  ```caution Dust\n  Wet it.[^n]\n  ```\n\n"+
		"## What goes wrong\n\nIt peels[^n]\n: Too dry.[^n]\n\n[^n]: Common practice.\n")
	if got := bytes.Count(d.HTML, []byte(`class="note-mark"`)); got != 5 {
		t.Errorf("%d marks on the page itself, want 5: %s", got, d.HTML)
	}
	for _, c := range []struct{ got, want string }{
		{apart(d.Named(AskedBlock)[0].Pieces), "<p>Yes.</p>\n"},
		{under(d, "What to look for"), "<p>smooth</p>\n<section class=\"caution\">\nDust 1|\n<p>Wet it.</p>\n</section>\n|"},
		{under(d, "What goes wrong"), "It peels: Too dry.|"},
	} {
		if c.got != c.want {
			t.Errorf("gathered %q, want %q", c.got, c.want)
		}
	}
}
