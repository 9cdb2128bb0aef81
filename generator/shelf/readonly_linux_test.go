package shelf

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"
)

// asNobody calls do while the whole program looks at files as somebody who owns
// none, also when the tests are run by root: no test here may be parallel.
func asNobody(t *testing.T, do func() error) error {
	t.Helper()
	if os.Geteuid() == 0 {
		must(t, syscall.Seteuid(65534))
		defer func() { must(t, syscall.Seteuid(0)) }()
	}
	return do()
}

// open lets everybody look into a folder of the tests.
func open(t *testing.T, dir string) {
	t.Helper()
	for up := dir; up != filepath.Dir(up) && up != os.TempDir(); up = filepath.Dir(up) {
		must(t, os.Chmod(up, 0o755))
	}
}

func TestReadOnlyParentOfAnAbsentFolder(t *testing.T) {
	parent := t.TempDir()
	open(t, parent)
	must(t, os.Chmod(parent, 0o555))
	t.Cleanup(func() { _ = os.Chmod(parent, 0o755) })
	err := asNobody(t, func() error { return publish(filepath.Join(parent, "public"), pages) })
	if err == nil || !contains(err.Error(), "must be writable", "permission denied") {
		t.Errorf("error %v", err)
	}
	same(t, tree(t, parent), map[string]string{})
}

// TestReadOnly publishes into folders whose parent cannot be written: one that
// can be written itself is updated where it stands, one that cannot is left
// alone.
func TestReadOnly(t *testing.T) {
	for _, c := range []struct {
		name string
		mode os.FileMode
		want string
	}{{"writable folder", 0o777, ""}, {"nothing writable", 0o555, "left as it was"}} {
		t.Run(c.name, func(t *testing.T) {
			parent := t.TempDir()
			open(t, parent)
			dir := filepath.Join(parent, "public")
			published(t, dir, map[string]string{"old.html": "old"})
			before := tree(t, parent)
			must(t, os.Chmod(dir, c.mode))
			must(t, os.Chmod(parent, 0o555))
			t.Cleanup(func() { _ = os.Chmod(parent, 0o755); _ = os.Chmod(dir, 0o755) })
			var changes *Changes
			err := asNobody(t, func() (err error) {
				changes, err = Replace(context.Background(), dir, students(pages))
				return err
			})
			if c.want != "" {
				if err == nil || !contains(err.Error(), c.want, "permission denied") {
					t.Errorf("error %v", err)
				}
				same(t, tree(t, parent), before)
				return
			}
			must(t, err)
			if !changes.InPlace {
				t.Error("it was not updated where it stands")
			}
			same(t, tree(t, dir), planted)
			noLitter(t, parent, "public")
		})
	}
}

// TestWorkWithALockedFolderIsRemoved wants no copy of a folder that forbids
// writing to stay beside the handbook, where no later publish could clear it.
func TestWorkWithALockedFolderIsRemoved(t *testing.T) {
	for name, remove := range map[string]func(work){
		"named": work.remove,
		"unnamed": func(w work) {
			_ = os.Remove(w.owner())
			long := time.Now().Add(-48 * time.Hour)
			_ = os.Chtimes(w.tree(), long, long)
			_ = os.Chtimes(string(w), long, long)
			w.clearUnnamed()
		},
	} {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			open(t, parent)
			must(t, os.Chmod(parent, 0o777))
			must(t, asNobody(t, func() error {
				w, err := newWork(parent, "public")
				if err != nil {
					return err
				}
				locked := filepath.Join(w.tree(), ".locked")
				err = errors.Join(os.Mkdir(locked, 0o755), os.WriteFile(filepath.Join(locked, "a"), nil, 0o644), os.Chmod(locked, 0o555))
				remove(w)
				return err
			}))
			same(t, tree(t, parent), map[string]string{})
		})
	}
}
