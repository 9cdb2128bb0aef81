package house

import (
	"encoding/csv"
	"io/fs"
	"os"
	"path"
	"slices"
	"strings"
	"testing"
)

// top lists what stands at the top of the tree beside dot files.
var top = []string{"DEVELOPERS.md", "README.md", "calculators", "content", "generator", "go.mod", "go.sum", "public",
	"testdata", "themes"}

func TestTopOfTheTree(t *testing.T) {
	entries, err := os.ReadDir(root)
	if err != nil {
		t.Fatal(err)
	}
	var found []string
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") {
			found = append(found, e.Name())
		}
	}
	for _, name := range found {
		if !slices.Contains(top, name) {
			t.Errorf("%s stands at the top of the tree; nothing else belongs there than: %s", name, strings.Join(top, " "))
		}
	}
	for _, name := range top {
		if !slices.Contains(found, name) {
			t.Errorf("%s is missing from the top of the tree", name)
		}
	}
}

// ignored are the folders of testdata that git does not keep; each may also be
// a link to one elsewhere.
var ignored = []string{"node_modules", "kept"}

func TestEveryCheckValueHasItsSource(t *testing.T) {
	data := os.DirFS(root + "/testdata")
	guide, err := fs.ReadFile(data, "README.md")
	if err != nil {
		t.Fatal(err)
	}
	err = fs.WalkDir(data, ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err == nil && d.IsDir() && slices.Contains(ignored, name):
			return fs.SkipDir
		case err != nil || d.IsDir() || slices.Contains(ignored, name):
			return err
		}
		if !noted(string(guide), name) {
			t.Errorf("testdata/README.md does not say what testdata/%s is and where it comes from", name)
		}
		if path.Ext(name) == ".csv" {
			sourced(t, data, name)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}

// noted reports whether the guide names a file, or a folder it is in, in a row of
// its table.
func noted(guide, name string) bool {
	for n := name; n != "."; n = path.Dir(n) {
		if strings.Contains(guide, "| `"+n+"` |") || strings.Contains(guide, "| `"+n+"/` |") {
			return true
		}
	}
	return false
}

// sourced reports the rows of a table of check values that name no source.
func sourced(t *testing.T, data fs.FS, name string) {
	t.Helper()
	file, err := data.Open(name)
	if err != nil {
		t.Error(err)
		return
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil || len(rows) < 2 {
		t.Errorf("testdata/%s: %d rows, %v", name, len(rows), err)
		return
	}
	column := slices.Index(rows[0], "source")
	if column < 0 {
		t.Errorf("testdata/%s has no column named source", name)
		return
	}
	for i, row := range rows[1:] {
		if strings.TrimSpace(row[column]) == "" {
			t.Errorf("testdata/%s: row %d (%s) names no source", name, i+2, row[0])
		}
	}
}
