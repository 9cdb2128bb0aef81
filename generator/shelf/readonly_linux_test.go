package shelf

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"golang.org/x/sys/unix"
)

// The parent cannot be written: not even by root, who for this one thread
// looks at files as somebody else. The thread ends with the goroutine.
func TestReadOnlyParent(t *testing.T) {
	parent := t.TempDir()
	for up := parent; up != filepath.Dir(up) && up != os.TempDir(); up = filepath.Dir(up) {
		must(t, os.Chmod(up, 0o755))
	}
	dir := filepath.Join(parent, "public")
	put(t, dir, map[string]string{Marker: "m", "old.html": "old"})
	must(t, os.Chmod(parent, 0o555))
	t.Cleanup(func() { _ = os.Chmod(parent, 0o755) })
	failure := make(chan error)
	go func() {
		runtime.LockOSThread()
		if os.Geteuid() == 0 {
			if err := unix.Setfsuid(65534); err != nil {
				t.Error(err)
			}
		}
		failure <- Replace(dir, pages)
	}()
	if err := <-failure; err == nil || !contains(err.Error(), "must be writable", "permission denied") {
		t.Errorf("error %v", err)
	}
	same(t, tree(t, parent), map[string]string{"public/": "", "public/" + Marker: "m", "public/old.html": "old"})
}
