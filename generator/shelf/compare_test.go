package shelf

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// text turns words into files.
func text(files map[string]string) map[string][]byte {
	out := map[string][]byte{}
	for name, data := range files {
		out[name] = []byte(data)
	}
	return out
}

func TestChangesAreTold(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	for _, c := range []struct {
		name  string
		files map[string]string
		want  Changes
	}{
		{"first", map[string]string{"index.html": "1", "slip/a.html": "a", "assets/x-1.js": "x", "b.html": "b"},
			Changes{New: []string{"assets/x-1.js", "b.html", "index.html", "slip/a.html"}}},
		{"the same", map[string]string{"index.html": "1", "slip/a.html": "a", "assets/x-1.js": "x", "b.html": "b"}, Changes{Same: 4}},
		{"another", map[string]string{"index.html": "2", "slip/c.html": "c", "assets/x-2.js": "y", "b.html": "b"},
			Changes{New: []string{"assets/x-2.js", "slip/c.html"}, Changed: []string{"index.html"}, Gone: []string{"slip/a.html"}, Same: 1, Kept: []string{"assets/x-1.js"}}},
		{"that again: nothing grows old", map[string]string{"index.html": "2", "slip/c.html": "c", "assets/x-2.js": "y", "b.html": "b"},
			Changes{Same: 4, Kept: []string{"assets/x-1.js"}}},
		{"one more", map[string]string{"index.html": "3", "slip/c.html": "c", "assets/x-2.js": "y", "b.html": "b"},
			Changes{Changed: []string{"index.html"}, Same: 3}},
		{"back to the first", map[string]string{"index.html": "1", "slip/a.html": "a", "assets/x-1.js": "x", "b.html": "b"},
			Changes{New: []string{"assets/x-1.js", "slip/a.html"}, Changed: []string{"index.html"}, Gone: []string{"slip/c.html"}, Same: 1, Kept: []string{"assets/x-2.js"}}},
	} {
		got, err := Replace(context.Background(), dir, students(text(c.files)))
		must(t, err)
		if d := cmp.Diff(c.want, *got); d != "" {
			t.Errorf("%s: changes (-want +got):\n%s", c.name, d)
		}
		want := map[string]string{}
		for name, data := range c.files {
			want[name] = data
		}
		stands := tree(t, dir)
		for _, name := range got.Kept {
			want[name] = stands[name]
		}
		for name, data := range stands {
			if !strings.HasSuffix(name, "/") && name != Marker && want[name] != data {
				t.Errorf("%s: %s stands there", c.name, name)
			}
			delete(want, name)
		}
		if len(want) > 0 {
			t.Errorf("%s: missing %v", c.name, want)
		}
	}
}

func TestAFileThatComesBackIsKeptNoLonger(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	for _, files := range []map[string]string{{"a.html": "1", "assets/x": "x"}, {"a.html": "2"}, {"a.html": "3", "assets/x": "x"}, {"a.html": "4"}} {
		must(t, publish(dir, text(files)))
	}
	if tree(t, dir)["assets/x"] != "x" {
		t.Error("a file of the edition before has gone")
	}
	must(t, publish(dir, text(map[string]string{"a.html": "5"})))
	if _, there := tree(t, dir)["assets/"]; there {
		t.Error("a file of two editions before stands still")
	}
}

func TestUnchangedFilesKeepTheirTimes(t *testing.T) {
	for name, steps := range map[string]lastSteps{"one step": {flush, swap}, "two renames": {flush, twoRenames}} {
		dir := filepath.Join(t.TempDir(), "public")
		must(t, publish(dir, text(map[string]string{"same.html": "s", "other.html": "1", "assets/x": "x", "assets/old": "o"})))
		when := time.Date(2020, 2, 3, 4, 5, 6, 0, time.UTC)
		for _, file := range []string{"same.html", "other.html", "assets/x", "assets/old"} {
			must(t, os.Chtimes(filepath.Join(dir, file), when, when))
		}
		_, err := replace(context.Background(), dir, students(text(map[string]string{"same.html": "s", "other.html": "2", "assets/x": "x"})), steps)
		must(t, err)
		for file, same := range map[string]bool{"same.html": true, "assets/x": true, "assets/old": true, "other.html": false} {
			info, err := os.Stat(filepath.Join(dir, file))
			must(t, err)
			if info.ModTime().Equal(when) != same {
				t.Errorf("%s: %s has the time %v", name, file, info.ModTime())
			}
		}
	}
}

// A page keeps neither its time nor its bytes for a digest alone.
func TestBytesAreCompared(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	must(t, publish(dir, text(map[string]string{"a.html": "old", "b.html": "b"})))
	must(t, os.Chmod(filepath.Join(dir, "b.html"), 0o600)) // no web server could read it
	must(t, os.Remove(filepath.Join(dir, "a.html")))       // and nobody this
	must(t, publish(dir, text(map[string]string{"a.html": "old", "b.html": "b"})))
	same(t, tree(t, dir), map[string]string{"a.html": "old", "b.html": "b", Marker: "students, 2 files"})
	if info, err := os.Stat(filepath.Join(dir, "b.html")); err != nil || info.Mode().Perm() != 0o644 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
}

func TestFilesChangedByHandAreLeftAlone(t *testing.T) {
	for _, c := range []struct {
		name string
		next map[string]string
		want string // in the refusal; empty when there is none
	}{
		{"replaced", map[string]string{"a.html": "new", "b.html": "b"}, `undo the change: "a.html"; make`},
		{"not changed in the lessons", map[string]string{"a.html": "a", "b.html": "b"}, `"a.html"`},
		{"gone", map[string]string{"b.html": "b"}, `"a.html"`},
		{"the same change in the lessons", map[string]string{"a.html": "by hand", "b.html": "b"}, ""},
	} {
		dir := filepath.Join(t.TempDir(), "public")
		must(t, publish(dir, text(map[string]string{"a.html": "a", "b.html": "b"})))
		put(t, dir, map[string]string{"a.html": "by hand"})
		before := tree(t, dir)
		err := publish(dir, text(c.next))
		_, refused := errors.AsType[*Refusal](err)
		if refused != (c.want != "") || refused && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
		if refused {
			same(t, tree(t, dir), before)
		}
	}
}

// The first publish after an update finds a marker without a list.
func TestAFolderOfTheFirstFormatIsSetAside(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	old := map[string]string{Marker: firstFormat, "index.html": "old", "photos/thesis.txt": "years", ".htaccess": "deny"}
	for _, aside := range []string{"public-before", "public-before-2"} {
		must(t, os.RemoveAll(dir))
		put(t, dir, old)
		before := tree(t, dir)
		changes, err := Replace(context.Background(), dir, students(pages))
		must(t, err)
		if changes.Aside != filepath.Join(parent, aside) {
			t.Errorf("set aside as %q", changes.Aside)
		}
		same(t, tree(t, filepath.Join(parent, aside)), before)
		want := map[string]string{".htaccess": "deny"}
		for name, data := range planted {
			want[name] = data
		}
		same(t, tree(t, dir), want)
	}
	noLitter(t, parent, "public", "public-before", "public-before-2")
}

func TestAnEndBeforeTheLastStepClearsUp(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	must(t, publish(dir, text(map[string]string{"old.html": "old"})))
	before := tree(t, parent)
	for name, when := range map[string]func(cancel func()) func(string) error{
		"at once":           func(cancel func()) func(string) error { cancel(); return flush },
		"when all is ready": func(cancel func()) func(string) error { return func(string) error { cancel(); return nil } },
	} {
		ctx, cancel := context.WithCancel(context.Background())
		_, err := replace(ctx, dir, students(pages), lastSteps{when(cancel), swap})
		if !errors.Is(err, context.Canceled) {
			t.Errorf("%s: error %v", name, err)
		}
		same(t, tree(t, parent), before)
	}
	ctx, cancel := context.WithCancel(context.Background())
	_, err := replace(ctx, dir, students(pages), lastSteps{flush, func(w work, path string) (bool, error) {
		cancel() // too late: it finishes
		return swap(w, path)
	}})
	must(t, err)
	same(t, tree(t, dir), planted)
	noLitter(t, parent, "public")
}
