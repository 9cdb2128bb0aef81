package shelf

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"
)

func TestSwaps(t *testing.T) {
	for name, swap := range map[string]swapper{"one step": swap, "two renames": twoRenames} {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			put(t, parent, map[string]string{"work/tree/a": "new", "old/a": "old"})
			w := work(filepath.Join(parent, "work"))
			back, err := swap(w, filepath.Join(parent, "old"))
			must(t, err)
			spent := w.old()
			if back {
				spent = w.tree()
			}
			same(t, tree(t, filepath.Join(parent, "old")), map[string]string{"a": "new"})
			same(t, tree(t, spent), map[string]string{"a": "old"})
			noLitter(t, string(w), filepath.Base(spent))
		})
	}
}

func TestReplaceByTwoRenames(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	published(t, dir, map[string]string{"old.html": "old", "gone/old.html": "old"})
	_, err := replace(context.Background(), dir, students(pages), lastSteps{flush, twoRenames})
	must(t, err)
	same(t, tree(t, dir), planted)
	noLitter(t, parent, "public")
}

func TestTwoRenamesTakesTheFirstBack(t *testing.T) {
	parent := t.TempDir()
	put(t, parent, map[string]string{"old/a": "old", "work/for": "old"})
	if _, err := twoRenames(work(filepath.Join(parent, "work")), filepath.Join(parent, "old")); err == nil {
		t.Error("no error for a new tree that is not there")
	}
	same(t, tree(t, parent), map[string]string{"old/": "", "old/a": "old", "work/": "", "work/for": "old"})
}

func TestATreeMovedAsideIsNamedAndPutBackByTheNextPublish(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	published(t, dir, map[string]string{"old.html": "old"})
	put(t, dir, map[string]string{".htaccess": "deny"})
	_, err := replace(context.Background(), dir, students(pages), lastSteps{flush, func(w work, path string) (bool, error) {
		must(t, os.Rename(path, w.old()))
		return false, &failedRollback{w.old(), os.ErrPermission}
	}})
	want := "rename that folder back by hand"
	if err == nil || !contains(err.Error(), "/old", want) {
		t.Errorf("error %v, want %q in it", err, want)
	}
	must(t, publish(dir, pages))
	stands := map[string]string{".htaccess": "deny"}
	for name, data := range planted {
		stands[name] = data
	}
	same(t, tree(t, dir), stands)
	noLitter(t, parent, "public")
}

// When the old folder cannot be brought up to date, the new one stays in its
// place, whole.
func TestTheNewTreeStaysWhenTheOldCannotComeBack(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	published(t, dir, map[string]string{"old.html": "old", "gone/old.html": "old", "index.html": "old"})
	put(t, dir, map[string]string{".git/x": "1"})
	flushes := 0
	_, err := replace(context.Background(), dir, students(pages), lastSteps{func(string) error {
		if flushes++; flushes > 1 {
			return errors.New("no room")
		}
		return nil
	}, swap})
	must(t, err)
	want := map[string]string{".git/": "", ".git/x": "1"}
	for name, data := range planted {
		want[name] = data
	}
	same(t, tree(t, dir), want)
	noLitter(t, parent, "public")
}
