package themes

import (
	"io/fs"
	"testing"
)

func TestOpen(t *testing.T) {
	for _, name := range Names() {
		theme, err := Open(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := fs.Stat(theme, "words.yaml"); err != nil {
			t.Errorf("theme %s has no words: %v", name, err)
		}
	}
}

func TestOpenNamesTheThemesThatThereAre(t *testing.T) {
	for _, name := range []string{"", "studios", "../themes", "studio/pages"} {
		_, err := Open(name)
		if want := "there is no look \"" + name + "\"; choose one of: studio"; err == nil || err.Error() != want {
			t.Errorf("Open(%q): %v, want %q", name, err, want)
		}
	}
}
