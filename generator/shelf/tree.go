package shelf

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"runtime"
	"sync"
	"sync/atomic"
)

// plant writes the files, sorted by name, below root. They are written by
// several workers, since a file system has more patience than one of them;
// the error is that of the first name that failed.
func plant(root string, names []string, files map[string][]byte) error {
	if err := folders(root, names); err != nil {
		return err
	}
	failures := make([]error, len(names))
	var next atomic.Int64
	var failed atomic.Bool
	var workers sync.WaitGroup
	for range 2 * runtime.GOMAXPROCS(0) {
		workers.Go(func() {
			for !failed.Load() {
				i := int(next.Add(1)) - 1
				if i >= len(names) {
					return
				}
				if err := write(filepath.Join(root, filepath.FromSlash(names[i])), files[names[i]]); err != nil {
					failures[i] = err
					failed.Store(true)
				}
			}
		})
	}
	workers.Wait()
	for _, err := range failures {
		if err != nil {
			return err
		}
	}
	return nil
}

// folders makes every folder that names need.
func folders(root string, names []string) error {
	made := map[string]bool{".": true}
	var need func(dir string) error
	need = func(dir string) error {
		if made[dir] {
			return nil
		}
		if err := need(path.Dir(dir)); err != nil {
			return err
		}
		made[dir] = true
		full := filepath.Join(root, filepath.FromSlash(dir))
		if err := os.Mkdir(full, 0o755); err != nil {
			return err
		}
		return os.Chmod(full, 0o755) // the umask may have taken bits away
	}
	for _, name := range names {
		if err := need(path.Dir(name)); err != nil {
			return err
		}
	}
	return nil
}

// write makes one new file with mode 0644.
func write(name string, data []byte) (err error) {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("two addresses mean the same file %q on this disk, which does not tell capital letters from small ones", filepath.Base(name))
	}
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, f.Close()) }()
	if _, err := f.Write(data); err != nil {
		return err
	}
	if err := f.Chmod(0o644); err != nil { // the umask may have taken bits away
		return err
	}
	return flushFile(f)
}
