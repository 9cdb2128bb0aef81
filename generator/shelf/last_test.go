package shelf

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"syscall"
	"testing"
)

// listing is an edition whose last file lists the others.
func listing(files map[string][]byte) Edition {
	e := students(files)
	e.Last = "a-list.txt"
	e.LastFile = func(all []Made) (text []byte, err error) {
		for _, f := range all {
			if f.Sum != sha256.Sum256(files[f.Name]) {
				err = fmt.Errorf("%s has another digest", f.Name)
			}
			text = fmt.Appendf(text, "%s %d\n", f.Name, f.Size)
		}
		return text, err
	}
	return e
}

func TestTheLastFileListsTheOthers(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	want := maps.Clone(planted)
	want[Marker], want["a-list.txt"] = "students, 4 files", "index.html 4\nslip/a/b.html 1\nslip/index.html 4\n"
	for n, counts := range [][2]int{{4, 0}, {0, 4}} {
		changes, err := replace(context.Background(), dir, listing(pages), lastSteps{flush, swap})
		must(t, err)
		if len(changes.New) != counts[0] || changes.Same != counts[1] {
			t.Errorf("publish %d: %d new, %d the same, want %v", n+1, len(changes.New), changes.Same, counts)
		}
		same(t, tree(t, dir), want)
	}
	files := maps.Clone(pages)
	files["index.html"] = []byte("a longer home")
	changes, err := replace(context.Background(), dir, listing(files), lastSteps{flush, swap})
	must(t, err)
	if want := []string{"a-list.txt", "index.html"}; !slices.Equal(changes.Changed, want) {
		t.Errorf("changed %q, want %q", changes.Changed, want)
	}
}

func TestALastFileThatCannotBeMadeStopsThePublish(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	must(t, publish(dir, pages))
	e := listing(map[string][]byte{"index.html": []byte("new")})
	e.LastFile = func([]Made) ([]byte, error) { return nil, errors.New("no list") }
	if _, err := replace(context.Background(), dir, e, lastSteps{flush, swap}); err == nil || err.Error() != "no list" {
		t.Errorf("error %v", err)
	}
	same(t, tree(t, dir), planted)
	noLitter(t, parent, "public")
}

// TestTheLastFileComesLast updates a folder file by file: who finds the new list finds
// all that it names.
func TestTheLastFileComesLast(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	must(t, publish(dir, text(map[string]string{"index.html": "old", "a-list.txt": "old"})))
	e := listing(pages)
	names, err := order(append(slices.Clone(e.Names), e.Last))
	must(t, err)
	e.Names = names
	target, err := inspect(dir, dir, Students)
	must(t, err)
	made := &maker{parent: filepath.Dir(dir), path: dir}
	defer made.remove()
	p, err := made.compare(context.Background(), target, e)
	must(t, err)
	if len(p.put) != 4 || p.put[3] != "a-list.txt" {
		t.Errorf("written in the order %q", p.put)
	}
	changes, err := replace(context.Background(), dir, listing(pages), lastSteps{flush, stuck(syscall.EBUSY)})
	must(t, err)
	if !changes.InPlace || tree(t, dir)["a-list.txt"] == "old" {
		t.Errorf("in place %v, %q", changes.InPlace, tree(t, dir))
	}
}
