package themes

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"go.yaml.in/yaml/v4"
)

func TestOpen(t *testing.T) {
	for _, name := range Names() {
		theme, err := Open(name, "en-GB")
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
		_, err := Open(name, "en-GB")
		if want := "there is no look \"" + name + "\"; choose one of: studio"; err == nil || err.Error() != want {
			t.Errorf("Open(%q): %v, want %q", name, err, want)
		}
	}
}

// TestLanguagesHaveTheSameWords wants every language of a theme to say the same
// keys with the same places, and a file that lies over another to hold nothing
// that is the same there.
func TestLanguagesHaveTheSameWords(t *testing.T) {
	for _, name := range Names() {
		theme, err := folder(name)
		if err != nil {
			t.Fatal(err)
		}
		languages, err := Languages(theme)
		if err != nil || !slices.Contains(languages, whole) {
			t.Fatalf("%s: languages %q, %v", name, languages, err)
		}
		first, err := Words(theme, whole)
		if err != nil {
			t.Fatal(err)
		}
		for _, language := range languages {
			words, err := Words(theme, language)
			if err != nil {
				t.Fatal(err)
			}
			for key, text := range first {
				if placesOf(words[key]) != placesOf(text) || strings.TrimSpace(words[key]) == "" {
					t.Errorf("%s, %s: %q says %q, and in %s %q", name, language, key, words[key], whole, text)
				}
			}
			for key := range words {
				if _, ok := first[key]; !ok {
					t.Errorf("%s: only %s has %q", name, language, key)
				}
			}
			idle(t, theme, language)
		}
	}
}

// idle wants a file to hold only what differs from the one it lies over.
func idle(t *testing.T, theme fs.FS, language string) {
	data, err := fs.ReadFile(theme, "words/"+language+".yaml")
	if err != nil {
		t.Fatal(err)
	}
	own := map[string]string{}
	if err := yaml.Load(data, &own); err != nil || own[overKey] == "" {
		return
	}
	below, err := Words(theme, own[overKey])
	if err != nil {
		t.Fatal(err)
	}
	for key, text := range own {
		if below[key] == text {
			t.Errorf("%s: %q is the same in %s; take it out", language, key, own[overKey])
		}
	}
}

// placesOf lists the places of a text, in the order of their numbers.
func placesOf(text string) string {
	var all []string
	for n := range 9 {
		if place := fmt.Sprintf("{%d}", n); strings.Contains(text, place) {
			all = append(all, place)
		}
	}
	return strings.Join(all, "")
}

func TestSpeaking(t *testing.T) {
	for asked, want := range map[string]string{"en-GB": "en-GB", "en-gb": "en-GB", "en": "en-US", "en-AU": "en-US", "de-AT": "de", "fr": "en-US", "": "en-US"} {
		if got := speaking([]string{"de", "en-GB", "en-US"}, asked); got != want {
			t.Errorf("%q is answered in %s, want %s", asked, got, want)
		}
	}
}

// TestOpenedThemeIsAFolder holds an opened theme to what a folder must do.
func TestOpenedThemeIsAFolder(t *testing.T) {
	theme, err := Open("studio", "en-US")
	if err != nil {
		t.Fatal(err)
	}
	if err := fstest.TestFS(theme, "words.yaml", "pages/lesson.html"); err != nil {
		t.Error(err)
	}
	british, err := Open("studio", "en-GB")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		theme fs.FS
		want  string
	}{{theme, "Licenses"}, {british, "Licences"}} {
		data, err := fs.ReadFile(c.theme, "words.yaml")
		if err != nil || !strings.Contains(string(data), "notices: "+c.want) {
			t.Errorf("words without %q, %v", c.want, err)
		}
	}
}
