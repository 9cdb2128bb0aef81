package course_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
	"slipbook/generator/finding"
)

// linked loads the small course from a disk where something is a link.
func linked(t *testing.T, name, to string) finding.List {
	t.Helper()
	dir := t.TempDir()
	content, outside := filepath.Join(dir, "content"), filepath.Join(dir, "outside")
	for _, folder := range []string{content, outside} {
		if err := os.CopyFS(folder, coursetest.Small()); err != nil {
			t.Fatal(err)
		}
	}
	at := filepath.Join(content, name)
	if err := os.RemoveAll(at); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(strings.Replace(to, "OUTSIDE", outside, 1), at); err != nil {
		t.Fatal(err)
	}
	root, err := os.OpenRoot(content)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	_, found := new(course.Reader).Load(root.FS())
	return found
}

// TestLinksDoNotLeadOut wants every link out of the content folder to be found
// by its name, and nothing to be read through it.
func TestLinksDoNotLeadOut(t *testing.T) {
	for _, c := range []struct{ name, to, want string }{
		{mix, "OUTSIDE/" + mix, mix + ":1:1: error: the file cannot be read: `" + mix + "`"},
		{slip, "../../../outside/" + slip, slip + ":1:1: error: the file cannot be read: `" + slip + "`"},
		{"units/slip", "OUTSIDE/units/slip", "units/slip:1:1: error: the folder cannot be read: `units/slip`"},
		{"units", "OUTSIDE/units", "units:1:1: error: the folder cannot be read: `units`"},
		{jar, "OUTSIDE/" + jar, jar + ":1:1: error: the file cannot be read: `" + jar + "`"},
		{"pictures", "/", "pictures:1:1: error: the folder cannot be read: `pictures`"},
		{"pictures/more.png", "/etc/hostname", "pictures/more.png:1:1: error: the file cannot be read: `pictures/more.png`"},
		{words, "OUTSIDE/" + words, words + ":1:1: error: the file cannot be read: `" + words + "`"},
		{hazards, "OUTSIDE/" + hazards, hazards + ":1:1: error: the file cannot be read: `" + hazards + "`"},
		{table, "OUTSIDE/" + table, table + ":1:1: error: the file cannot be read: `" + table + "`"},
		{setting, "OUTSIDE/" + setting, setting + ":1:1: error: the file cannot be read: `" + setting + "`"},
		{"home.md", "OUTSIDE/home.md", "home.md:1:1: error: the file cannot be read: `home.md`"},
		{"style.md", "nowhere.md", "style.md:1:1: error: the file cannot be read: `style.md`"},
		{"style.md", "style.md", "style.md:1:1: error: the file cannot be read: `style.md`"},
	} {
		const rest = " is a link that leads out of the content folder, or nowhere (unreadable-file)\n" +
			"    Put the file or folder itself there; nothing outside of the content folder is published.\n"
		if got := findings(linked(t, c.name, c.to)); !strings.Contains(got, c.want+rest) {
			t.Errorf("%s as a link to %s: got\n%s", c.name, c.to, got)
		}
	}
}

// TestLinksInsideLead wants a link from one place of the content folder to
// another to be as good as the file.
func TestLinksInsideLead(t *testing.T) {
	if found := linked(t, "style.md", "home.md"); len(found) > 0 {
		t.Error(findings(found))
	}
}
