package press

import (
	"bytes"
	"strings"
	"testing"

	"slipbook/generator/notices"
)

// TestNoticesTravelWithTheHandbook wants the words of every library that
// readers load on one page, the course's own licence before them, and a way there
// from every page that has a foot.
func TestNoticesTravelWithTheHandbook(t *testing.T) {
	for _, licence := range []string{"", "CC BY-SA 4.0"} {
		c := small(t)
		c.Licence = licence
		e := printed(t, c)
		page := text(elements(pageOf(t, e, "notices.html"), called("main"))[0])
		if licence != "" && !strings.Contains(page, licence) {
			t.Errorf("the page does not say %q", licence)
		}
		if none := strings.Contains(page, "names no licence"); none != (licence == "") {
			t.Errorf("with the licence %q it says that there is none: %v", licence, none)
		}
		for _, n := range notices.Published() {
			if !strings.Contains(page, strings.Join(strings.Fields(n.Text()), " ")) {
				t.Errorf("the words of %s are not on the page", n.Name)
			}
		}
		for address, data := range e {
			foot := bytes.Contains(data, []byte(`<footer class="foot">`))
			if foot != bytes.Contains(data, []byte(`notices.html"`)) {
				t.Errorf("%s has a foot: %v, but no such way to the notices", address, foot)
			}
		}
	}
}
