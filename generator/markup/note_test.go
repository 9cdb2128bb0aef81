package markup

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"slipbook/generator/finding"
)

// TestMarksStayInTheLesson wants the number of a footnote on its own page, and
// on no page that gathers from it: there it would run into the sentence.
func TestMarksStayInTheLesson(t *testing.T) {
	d := read(t, "```asked May I?\nYes.[^n]\n```\n\n## What to look for\n\n- smooth[^n]\n\n  ```caution Dust\n  Wet it.[^n]\n  ```\n\n"+
		"## What goes wrong\n\nIt peels[^n]\n: Too dry.[^n]\n\n[^n]: Common practice.\n")
	if got := bytes.Count(d.HTML, []byte(`class="note-mark"`)); got != 5 {
		t.Errorf("%d marks on the page itself, want 5: %s", got, d.HTML)
	}
	if len(d.Asked) != 1 || len(d.Looks) != 1 || len(d.Faults) != 1 {
		t.Fatalf("gathered %d, %d and %d, want one of each", len(d.Asked), len(d.Looks), len(d.Faults))
	}
	for _, c := range []struct{ got, want string }{
		{string(d.Asked[0].HTML), "<p>Yes.</p>\n"},
		{string(d.Looks[0]), "<p>smooth</p>\n<section class=\"caution\">\nDust 1|\n<p>Wet it.</p>\n</section>\n"},
		{string(d.Faults[0].Seen), "It peels"},
		{string(d.Faults[0].Means), "Too dry."},
	} {
		if c.got != c.want {
			t.Errorf("gathered %q, want %q", c.got, c.want)
		}
	}
}

// wordless is a theme without words for the way back from a footnote.
type wordless struct{ around }

func (wordless) Back(_, _, _ int) (words, name string, err error) {
	return "", "", errors.New("no words")
}

func TestBackWithoutWordsIsAFaultOfTheTheme(t *testing.T) {
	_, findings := Parse(lesson("a[^n]\n\n[^n]: b\n"), wordless{})
	if len(findings) != 1 || findings[0].Rule != finding.ThemeFault || !strings.Contains(findings[0].Text, "no words") {
		t.Errorf("findings:\n%s", said(findings))
	}
}
