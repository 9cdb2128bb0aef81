package shelf

import (
	"context"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"testing"
	"time"
)

func TestDotFilesKeepModesTimesAndLinks(t *testing.T) {
	for name, swap := range map[string]swapper{"one step": swap, "two renames": twoRenames} {
		t.Run(name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "public")
			published(t, dir, map[string]string{"old.html": "old", "slip/index.html": "old"})
			put(t, dir, map[string]string{".git/objects/ab": "x", ".htpasswd": "secret", "slip/.mine": "1"})
			when := time.Date(2020, 2, 3, 4, 5, 6, 0, time.UTC)
			must(t, os.Chtimes(filepath.Join(dir, ".htpasswd"), when, when))
			must(t, os.Chmod(filepath.Join(dir, ".htpasswd"), 0o600))
			must(t, os.Chmod(filepath.Join(dir, ".git/objects"), 0o500))
			t.Cleanup(func() { _ = os.Chmod(filepath.Join(dir, ".git/objects"), 0o700) })
			must(t, os.Symlink("../elsewhere", filepath.Join(dir, ".link")))
			_, err := replace(context.Background(), dir, students(pages), lastSteps{flush, swap})
			must(t, err)
			want := map[string]string{
				".git/": "", ".git/objects/": "", ".git/objects/ab": "x", ".htpasswd": "secret", ".link": "-> ../elsewhere", "slip/.mine": "1",
			}
			maps.Copy(want, planted)
			same(t, tree(t, dir), want)
			info, err := os.Stat(filepath.Join(dir, ".htpasswd"))
			must(t, err)
			if info.Mode() != 0o600 || !info.ModTime().Equal(when) {
				t.Errorf("mode %v, time %v", info.Mode(), info.ModTime())
			}
			if info, err = os.Stat(filepath.Join(dir, ".git/objects")); err != nil || info.Mode().Perm() != 0o500 {
				t.Errorf("mode %v, %v", info.Mode(), err)
			}
		})
	}
}

// The copy that serves where the disk knows no links.
func TestCopyFile(t *testing.T) {
	dir := t.TempDir()
	put(t, dir, map[string]string{"a": "text"})
	from, to := filepath.Join(dir, "a"), filepath.Join(dir, "b")
	when := time.Date(2020, 2, 3, 4, 5, 6, 0, time.UTC)
	must(t, os.Chmod(from, 0o640))
	must(t, os.Chtimes(from, when, when))
	info, err := os.Stat(from)
	must(t, err)
	must(t, copyFile(from, to, info))
	same(t, tree(t, dir), map[string]string{"a": "text", "b": "text"})
	if info, err = os.Stat(to); err != nil || info.Mode() != 0o640 || !info.ModTime().Equal(when) {
		t.Errorf("mode %v, time %v, %v", info.Mode(), info.ModTime(), err)
	}
	folder, err := os.Stat(dir)
	must(t, err)
	if err := copyFile(dir, filepath.Join(dir, "c"), folder); err == nil {
		t.Error("what is not a file was copied")
	}
}

func TestModes(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	must(t, os.Mkdir(dir, 0o700))
	must(t, os.Chmod(dir, 0o775|fs.ModeSetgid))
	must(t, publish(dir, pages))
	must(t, publish(filepath.Join(parent, "new"), pages))
	for name, want := range map[string]fs.FileMode{
		"public":                 fs.ModeDir | fs.ModeSetgid | 0o775,
		"public/slip":            fs.ModeDir | 0o755,
		"public/slip/a":          fs.ModeDir | 0o755,
		"public/slip/index.html": 0o644,
		"public/" + Marker:       0o644,
		"new":                    fs.ModeDir | 0o755,
		"new/slip":               fs.ModeDir | 0o755,
		"new/slip/a/b.html":      0o644,
	} {
		info, err := os.Stat(filepath.Join(parent, name))
		must(t, err)
		if info.Mode() != want {
			t.Errorf("%s has mode %v, want %v", name, info.Mode(), want)
		}
	}
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
