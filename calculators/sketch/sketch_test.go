package sketch

import (
	"strings"
	"testing"
)

func TestDrawing(t *testing.T) {
	d := New(640, 320, `a <jar> & "water"`)
	d.Box("clay", 1, 2.25, 3, 0.04)
	d.Line("fine", 0, -0.01, 10, 20)
	d.Path("ink", "M", 1.0, 2.0, "L", 3.25, 4.0, "Z")
	d.Dot("colour", 5, 6, 7)
	d.Words("5 < 6", 320, 300, "middle")
	want := `<svg xmlns="http://www.w3.org/2000/svg" class="drawing" viewBox="0 0 640 320" role="img" aria-label="a &lt;jar&gt; &amp; &quot;water&quot;">` +
		`<rect class="clay" x="1" y="2.2" width="3" height="0"/>` +
		`<line class="fine" x1="0" y1="0" x2="10" y2="20"/>` +
		`<path class="ink" d="M1 2L3.2 4Z"/>` +
		`<circle class="colour" cx="5" cy="6" r="7"/>` +
		`<text class="words" x="320" y="300" font-size="26" text-anchor="middle">5 &lt; 6</text></svg>`
	if got := d.String(); got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

func TestFold(t *testing.T) {
	for _, test := range []struct {
		words string
		most  int
		want  string
	}{
		{"", 9, ""},
		{"dry clay", 9, "dry clay"},
		{"dry clay", 8, "dry clay"},
		{"dry clay", 7, "dry|clay"},
		{"Töne ändern sich", 11, "Töne ändern|sich"}, // letters, not bytes
		{"a pint\u00a0of water", 9, "a pint\u00a0of|water"},
		{"unmeasurable to me", 9, "unmeasurable|to me"},
		{"no room at all", -3, "no|room|at|all"},
	} {
		if got := strings.Join(fold(test.words, test.most), "|"); got != test.want {
			t.Errorf("fold(%q, %d) = %q, want %q", test.words, test.most, got, test.want)
		}
	}
}

// TestAsideStandsAroundItsMiddle wants two lines above and below where one would be.
func TestAsideStandsAroundItsMiddle(t *testing.T) {
	d := New(640, 320, "")
	d.Aside("a pint of water", 500, 100)
	want := `<text class="words" x="500" y="84" font-size="26">a pint of</text>` + `<text class="words" x="500" y="116" font-size="26">water</text>`
	if got := d.String(); !strings.Contains(got, want) {
		t.Errorf("%s lacks %s", got, want)
	}
}
