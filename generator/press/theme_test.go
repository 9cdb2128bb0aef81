package press

import (
	"io/fs"
	"testing"
	"testing/fstest"

	"slipbook/themes"
)

// TestNewRefuses shows what is wrong with a theme before anything is printed.
func TestNewRefuses(t *testing.T) {
	for _, c := range []struct{ name, file, text, err string }{
		{"a word that is not there", "pieces/caution.html", `{{define "caution"}}{{if .Number}}{{word "danger"}}{{end}}{{end}}`,
			`template "caution" asks for the word "danger", which words.yaml lacks`},
		{"a template that does not parse", "pieces/caution.html", `{{define "caution"}}{{if}}{{end}}`, "caution.html:1"},
		{"an unknown function", "pieces/caution.html", `{{define "caution"}}{{shout .}}{{end}}`, `function "shout" not defined`},
		{"a state without a drawing", "icons/state-bisque.svg", "", "no drawing icons/state-bisque.svg"},
		{"no words", "words.yaml", "", "words.yaml"},
	} {
		t.Run(c.name, func(t *testing.T) {
			theme := copyTheme(t)
			if theme[c.file] == nil {
				t.Fatalf("the theme has no %s", c.file)
			}
			if delete(theme, c.file); c.text != "" {
				theme[c.file] = &fstest.MapFile{Data: []byte(c.text)}
			}
			if _, err := New(small(t), theme); !matches(err, c.err) {
				t.Errorf("error %v, want one with %q", err, c.err)
			}
		})
	}
}

// copyTheme gives the studio theme in a form that a test may change.
func copyTheme(t *testing.T) fstest.MapFS {
	t.Helper()
	theme, err := themes.Open("studio")
	if err != nil {
		t.Fatal(err)
	}
	files := fstest.MapFS{}
	err = fs.WalkDir(theme, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(theme, name)
		files[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}
