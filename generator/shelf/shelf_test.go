package shelf

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// tree reads a folder back: files by address, folders with a slash at the end,
// links as "-> target". Of a marker it says what it lists.
func tree(t *testing.T, root string) map[string]string {
	t.Helper()
	got := map[string]string{}
	err := filepath.WalkDir(root, func(name string, e fs.DirEntry, err error) error {
		if err != nil || name == root {
			return err
		}
		rel, err := filepath.Rel(root, name)
		if err != nil {
			return err
		}
		switch rel = filepath.ToSlash(rel); {
		case e.IsDir():
			got[rel+"/"] = ""
		case e.Type()&fs.ModeSymlink != 0:
			to, err := os.Readlink(name)
			got[rel] = "-> " + to
			return err
		default:
			data, err := os.ReadFile(name)
			got[rel] = string(data)
			if m := parseMarker(data); e.Name() == Marker && m != nil && m.files != nil {
				got[rel] = fmt.Sprintf("%s, %d files", m.copy, len(m.files))
			}
			return err
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return got
}

// put writes files below root, making folders.
func put(t *testing.T, root string, files map[string]string) {
	t.Helper()
	for name, data := range files {
		full := filepath.Join(root, name)
		if err := os.MkdirAll(filepath.Dir(full), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(full, []byte(data), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func same(t *testing.T, got, want map[string]string) {
	t.Helper()
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("folder differs (-want +got):\n%s", d)
	}
}

// noLitter checks that parent holds only these names.
func noLitter(t *testing.T, parent string, want ...string) {
	t.Helper()
	entries, err := os.ReadDir(parent)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range entries {
		got = append(got, e.Name())
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("beside the handbook (-want +got):\n%s", d)
	}
}

var pages = map[string][]byte{"index.html": []byte("home"), "slip/index.html": []byte("slip"), "slip/a/b.html": []byte("b")}

var planted = map[string]string{
	"index.html": "home", "slip/": "", "slip/index.html": "slip", "slip/a/": "", "slip/a/b.html": "b",
	Marker: "students, 3 files",
}

// fingerprinted stands for names that are made from the content.
func fingerprinted(name string) bool { return strings.HasPrefix(name, "assets/") }

// students is an edition of these files.
func students(files map[string][]byte) Edition {
	return edition(files, Students)
}

// edition is one whose files are there already.
func edition(files map[string][]byte, copy Copy) Edition {
	file := func(name string) ([]byte, error) { return files[name], nil }
	return Edition{Names: slices.Collect(maps.Keys(files)), File: file, Copy: copy, Shared: fingerprinted}
}

// publish puts an edition into a folder, as the program does, but for waiting
// until the disk is safe.
func publish(dir string, files map[string][]byte) error {
	_, err := replace(context.Background(), dir, students(files), lastSteps{func(string) error { return nil }, swap})
	return err
}

// published makes a folder as if these files had been published in it.
func published(t *testing.T, dir string, files map[string]string) {
	t.Helper()
	edition := map[string][]byte{}
	for name, data := range files {
		edition[name] = []byte(data)
	}
	must(t, publish(dir, edition))
}

func TestReplaceWrites(t *testing.T) {
	for _, c := range []struct {
		name   string
		old    map[string]string // published before; nil: nothing
		before map[string]string // files of others
		extra  map[string]string // what stays besides
	}{
		{"absent", nil, nil, nil},
		{"empty but for dot files", nil, map[string]string{".gitkeep": "", ".git/refs/x": "1"},
			map[string]string{".gitkeep": "", ".git/": "", ".git/refs/": "", ".git/refs/x": "1"}},
		{"published before", map[string]string{"old.html": "old", "slip/old.html": "old", "gone/a/old.html": "old"},
			map[string]string{".htaccess": "deny", "slip/.htaccess": "allow", "gone/.notes/x": "y"},
			map[string]string{".htaccess": "deny", "slip/.htaccess": "allow", "gone/": "", "gone/.notes/": "", "gone/.notes/x": "y"}},
		{"files where folders come and folders where files come", map[string]string{"slip/a": "file", "index.html/x": "folder", "index.html/y/z": "folder"}, nil, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			parent := t.TempDir()
			dir := filepath.Join(parent, "public")
			if c.old != nil {
				published(t, dir, c.old)
			}
			put(t, dir, c.before)
			if err := publish(dir, pages); err != nil {
				t.Fatal(err)
			}
			want := map[string]string{}
			for _, m := range []map[string]string{planted, c.extra} {
				for k, v := range m {
					want[k] = v
				}
			}
			same(t, tree(t, dir), want)
			noLitter(t, parent, "public")
			if err := publish(dir, pages); err != nil {
				t.Fatalf("second time: %v", err)
			}
			same(t, tree(t, dir), want)
			noLitter(t, parent, "public")
		})
	}
}

func TestReplaceMakesFoldersAbove(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "a", "b", "public")
	if err := publish(dir, pages); err != nil {
		t.Fatal(err)
	}
	same(t, tree(t, dir), planted)
}

func TestReplaceFollowsALinkToTheFolder(t *testing.T) {
	parent := t.TempDir()
	real := filepath.Join(parent, "real")
	put(t, real, map[string]string{".gitkeep": ""})
	link := filepath.Join(parent, "public")
	if err := os.Symlink("real", link); err != nil {
		t.Fatal(err)
	}
	if err := publish(link, pages); err != nil {
		t.Fatal(err)
	}
	if to, err := os.Readlink(link); err != nil || to != "real" {
		t.Errorf("the link is now %q, %v", to, err)
	}
	if _, err := os.Stat(filepath.Join(real, "index.html")); err != nil {
		t.Error(err)
	}
	noLitter(t, parent, "public", "real")
}

func TestReplaceManyFiles(t *testing.T) {
	files := map[string][]byte{}
	for i := range 2000 {
		files[fmt.Sprintf("unit-%d/lesson-%d.html", i%40, i)] = []byte(fmt.Sprint(i))
	}
	dir := filepath.Join(t.TempDir(), "public")
	if err := publish(dir, files); err != nil {
		t.Fatal(err)
	}
	got := tree(t, dir)
	for name, data := range files {
		if got[name] != string(data) {
			t.Fatalf("%s holds %q", name, got[name])
		}
	}
	if want := 2000 + 40 + 1; len(got) != want {
		t.Errorf("%d names, want %d", len(got), want)
	}
}

// failing stands for a disk that cannot take the last step.
func failing(work, string) (bool, error) { return false, errors.New("the disk says no") }

// full stands for a disk that finds out only at the end that it has no room.
func full(string) error { return errors.New("no room") }

// TestNothingTakesItsPlaceBeforeItIsSafe wants all of the new tree on the disk
// while the old one still stands: when the power goes, one of them is whole.
func TestNothingTakesItsPlaceBeforeItIsSafe(t *testing.T) {
	for _, old := range []map[string]string{nil, {"old.html": "old"}} {
		dir := filepath.Join(t.TempDir(), "public")
		if old != nil {
			published(t, dir, old)
		}
		safe := 0
		_, err := replace(context.Background(), dir, students(pages), lastSteps{func(root string) error {
			safe++
			same(t, tree(t, root), planted)
			if safe > 1 {
				same(t, tree(t, dir), planted) // the old folder is brought up to date out of sight
				return flush(root)
			}
			for name, data := range old {
				if got, err := os.ReadFile(filepath.Join(dir, name)); err != nil || string(got) != data {
					t.Errorf("%s of the old tree holds %q, %v", name, got, err)
				}
			}
			return flush(root)
		}, swap})
		must(t, err)
		if safe == 0 {
			t.Error("it was not made safe")
		}
	}
}

func TestReplaceFailureKeepsTheOldTree(t *testing.T) {
	long := strings.Repeat("n", 300)
	for _, c := range []struct {
		name  string
		files map[string][]byte
		flush func(string) error
		swap  swapper
		want  string
	}{
		{"file cannot be written", map[string][]byte{"a.html": nil, "unit/" + long: nil}, flush, swap, "could not be written, and"},
		{"folder cannot be made", map[string][]byte{"a.html": nil, long + "/a.html": nil}, flush, swap, "could not be written, and"},
		{"the disk does not keep what was written", pages, full, swap, "was left as it was: no room"},
		{"last step fails", pages, flush, failing, "was left as it was: the disk says no"},
	} {
		t.Run(c.name, func(t *testing.T) {
			parent := t.TempDir()
			dir := filepath.Join(parent, "public")
			published(t, dir, map[string]string{"old.html": "old"})
			put(t, dir, map[string]string{".htaccess": "deny"})
			before := tree(t, dir)
			_, err := replace(context.Background(), dir, students(c.files), lastSteps{c.flush, c.swap})
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want %q in it", err, c.want)
			}
			same(t, tree(t, dir), before)
			noLitter(t, parent, "public")
		})
	}
}

func TestReplaceBelowAFile(t *testing.T) {
	parent := t.TempDir()
	put(t, parent, map[string]string{"notes.txt": "mine"})
	err := publish(filepath.Join(parent, "notes.txt", "public"), pages)
	if err == nil || !strings.Contains(err.Error(), "could not be") {
		t.Errorf("error %v", err)
	}
	same(t, tree(t, parent), map[string]string{"notes.txt": "mine"})
}

// contains reports whether all parts are in s.
func contains(s string, parts ...string) bool {
	for _, p := range parts {
		if !strings.Contains(s, p) {
			return false
		}
	}
	return true
}

func BenchmarkReplace(b *testing.B) {
	files := map[string][]byte{}
	for i := range 2000 {
		files[fmt.Sprintf("unit-%d/lesson-%d.html", i%40, i)] = make([]byte, 20_000)
	}
	dir := filepath.Join(b.TempDir(), "public")
	for b.Loop() {
		if err := publish(dir, files); err != nil {
			b.Fatal(err)
		}
	}
}
