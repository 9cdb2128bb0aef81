package press

import (
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"slipbook/generator/markup"
	"slipbook/generator/press/book"
	"slipbook/generator/press/care"
	"slipbook/generator/press/desk"
	"slipbook/generator/press/ebook"
	"slipbook/generator/press/register"
	"slipbook/themes"
)

// TestThemeIsRefused shows what is wrong with a theme before anything is printed.
func TestThemeIsRefused(t *testing.T) {
	for _, c := range []struct{ name, file, text, err string }{
		{"a word that is not there", "pieces/caution.html", `{{define "caution"}}{{if .Number}}{{word "danger"}}{{end}}{{end}}`,
			`template "caution" asks for the word "danger", which words.yaml lacks`},
		{"a template that does not parse", "pieces/caution.html", `{{define "caution"}}{{if}}{{end}}`, "caution.html:1"},
		{"an unknown function", "pieces/caution.html", `{{define "caution"}}{{shout .}}{{end}}`, `function "shout" not defined`},
		{"a state without a drawing", "icons/state-bisque.svg", "", "no drawing icons/state-bisque.svg"},
		{"no words", "words.yaml", "", "words.yaml"},
		{"a word that the press says", "words.yaml", "home: Home\n", `words.yaml has no "answers"`},
		{"no figures for print", "print.yaml", "", "print.yaml"},
		{"a figure that nobody knows", "print.yaml", "chart: {hight: 3}\n", "hight"},
		{"a figure that is missing", "print.yaml", "chart: {height: 3}\n", `a figure of "chart" is missing`},
		{"a size without its class", "print.yaml", strings.ReplaceAll(printYAML, "class: b", "class: ''"), "a size needs a class and points"},
		{"a mark that the book cannot heed", "pieces/asked.html", `{{define "asked"}}{{if .ID}}<p data-screen>{{end}}</p>{{end}}`,
			`template "asked": <p data-screen> does not end in the branch in which it begins`},
		{"no style sheet for the e-book", "styles/ebook.css", "", "it has no style sheet for the e-book"},
		{"a value that an e-book cannot have", "pieces/asked.html", `{{define "asked"}}<p class={{.ID}}></p>{{end}}`,
			`template "asked": the value of an attribute of <p> stands without quotes`},
		{"a link that the book cannot number", "pieces/asked.html", `{{define "asked"}}<a href="{{.ID}}">{{if .Ask}}</a>{{end}}{{end}}`, `template "asked": the link to`},
	} {
		t.Run(c.name, func(t *testing.T) {
			theme := copyTheme(t)
			if theme[c.file] == nil {
				t.Fatalf("the theme has no %s", c.file)
			}
			if delete(theme, c.file); c.text != "" {
				theme[c.file] = &fstest.MapFile{Data: []byte(c.text)}
			}
			if _, err := tryOpen(t, theme); !matches(err, c.err) {
				t.Errorf("error %v, want one with %q", err, c.err)
			}
		})
	}
}

// printYAML is a print.yaml with one size for each.
const printYAML = `chart: {sizes: [{class: a, points: 7}], height: 500, leading: 1, note-leading: 1, cell-letters: 30, broken-off: 4, name-letters: 20, note-letters: 60}
card: {sizes: [{class: b, points: 9}], height: 700, column: 250, leading: 1, letter: 0.4}
`

// TestThemeLacksATemplate wants a theme without one of the templates that the
// press prints with to be refused.
func TestThemeLacksATemplate(t *testing.T) {
	whole := copyTheme(t)
	var wanted []string
	for _, kind := range pageKinds {
		wanted = append(wanted, kind.Template)
	}
	wanted = append(wanted, book.Kind.Template, book.VolumeKind.Template, frameHead, frameTop, frameEnd, desk.StandingPiece, register.LabelPiece)
	wanted = slices.Concat(wanted, ebook.Templates, markup.Kinds(), care.Forms)
	for _, name := range wanted {
		theme, found := fstest.MapFS{}, false
		for file, f := range whole {
			begin := `{{define "` + name + `"`
			found = found || strings.Contains(string(f.Data), begin)
			theme[file] = &fstest.MapFile{Data: []byte(strings.Replace(string(f.Data), begin, `{{define "another"`, 1))}
		}
		if _, err := Open(theme); !found || !matches(err, `theme: it has no template "`+name+`"`) {
			t.Errorf("%s: there before: %v; %v", name, found, err)
		}
	}
}

// copyTheme gives the studio theme in a form that a test may change.
func copyTheme(t *testing.T) fstest.MapFS {
	t.Helper()
	theme, err := themes.Open("studio", "en-GB")
	if err != nil {
		t.Fatal(err)
	}
	return folderOf(t, theme)
}

// folderOf reads a folder whole.
func folderOf(t *testing.T, theme fs.FS) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	err := fs.WalkDir(theme, ".", func(name string, d fs.DirEntry, err error) error {
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

// tryOpen reads a theme and prepares the small course in it, which may go wrong.
func tryOpen(t *testing.T, theme fs.FS) (*impression, error) {
	t.Helper()
	opened, err := Open(theme)
	if err != nil {
		return nil, err
	}
	return prepare(opened, read(t, small(t)), shared(), Copy{})
}

// TestFaultOfTheThemeNamesThePage wants a piece that asks for what its block does
// not have to stop the printing, and the page to be named.
func TestFaultOfTheThemeNamesThePage(t *testing.T) {
	theme := copyTheme(t)
	theme["pieces/caution.html"].Data = []byte(`{{define "caution"}}{{.Colour}}{{end}}`)
	e, err := tryPrint(t, opened(t, theme), small(t), Copy{})
	if e != nil || !matches(err, "page book.html: ") || !matches(err, "Colour") {
		t.Errorf("error %v", err)
	}
}
