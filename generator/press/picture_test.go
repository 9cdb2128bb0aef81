package press

import (
	"strings"
	"testing"

	"slipbook/generator/course"
)

func TestPictureBesideItsPage(t *testing.T) {
	c := small(t)
	c.Pictures["pictures/kiln.png"] = &course.Picture{Path: "pictures/kiln.png", Width: 8, Height: 6, Data: []byte("a kiln")}
	c.Pictures["pictures/unshown.png"] = &course.Picture{Path: "pictures/unshown.png", Width: 8, Height: 6, Data: []byte("nobody looks")}
	c.Home.Source = append(c.Home.Source, "\n\n![A kiln](pictures/kiln.png)\n"...)
	e := printed(t, c)
	var found []string
	for address := range e {
		if strings.HasPrefix(address, "pictures/") {
			found = append(found, address)
		}
	}
	if len(found) != 1 || !strings.HasPrefix(found[0], "pictures/kiln-") || !strings.HasSuffix(found[0], ".png") || string(e[found[0]]) != "a kiln" {
		t.Fatalf("picture files: %q", found)
	}
	shown := elements(pageOf(t, e, "index.html"), called("img"))
	if len(shown) != 1 || attribute(shown[0], "src") != found[0] {
		t.Errorf("the page does not show %s", found[0])
	}
}
