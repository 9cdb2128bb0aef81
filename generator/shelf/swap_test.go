package shelf

import (
	"os"
	"path/filepath"
	"testing"
)

func TestSwaps(t *testing.T) {
	for name, swap := range map[string]swapper{"one step": swap, "two renames": twoRenames} {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			put(t, parent, map[string]string{"new/a": "new", "old/a": "old"})
			spent, err := swap(filepath.Join(parent, "new"), filepath.Join(parent, "old"))
			must(t, err)
			same(t, tree(t, filepath.Join(parent, "old")), map[string]string{"a": "new"})
			same(t, tree(t, spent), map[string]string{"a": "old"})
			noLitter(t, parent, filepath.Base(spent), "old")
		})
	}
}

func TestReplaceByTwoRenames(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	put(t, dir, map[string]string{Marker: "m", "old.html": "old"})
	must(t, replace(dir, pages, lastSteps{flush, twoRenames}))
	same(t, tree(t, dir), planted)
	noLitter(t, parent, "public")
}

func TestTwoRenamesTakesTheFirstBack(t *testing.T) {
	parent := t.TempDir()
	put(t, parent, map[string]string{"old/a": "old"})
	if _, err := twoRenames(filepath.Join(parent, "missing"), filepath.Join(parent, "old")); err == nil {
		t.Error("no error for a new tree that is not there")
	}
	same(t, tree(t, parent), map[string]string{"old/": "", "old/a": "old"})
}

func TestStrandedTreeIsNamed(t *testing.T) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	put(t, dir, map[string]string{Marker: "m"})
	err := replace(dir, pages, lastSteps{flush, func(fresh, old string) (string, error) {
		return "", &stranded{fresh + "-old", os.ErrPermission}
	}})
	want := "rename that folder back by hand"
	if err == nil || !contains(err.Error(), "-old", want) {
		t.Errorf("error %v, want %q in it", err, want)
	}
}
