package shelf

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// swap exchanges the two trees in one step: whoever asks for a page gets it
// from the old tree or from the new one. File systems that cannot (some over
// networks) get two renames.
func swap(w work, path string) (back bool, err error) {
	return exchanged(w, path, unix.Renameat2(unix.AT_FDCWD, w.tree(), unix.AT_FDCWD, path, unix.RENAME_EXCHANGE))
}

// exchanged ends a swap by what the system said to exchanging the two folders.
func exchanged(w work, path string, err error) (back bool, _ error) {
	if errors.Is(err, unix.ENOSYS) || errors.Is(err, unix.EINVAL) || errors.Is(err, unix.EOPNOTSUPP) {
		return twoRenames(w, path)
	}
	return err == nil, err
}

// syncfs is the system's call to make one file system safe on the disk.
var syncfs = unix.Syncfs

// flush makes everything written below root safe on the disk before it takes
// the old tree's place: one call for the file system instead of one a file,
// which for 2,000 pages is the difference between a moment and a minute.
func flush(root string) error {
	d, err := os.Open(root)
	if err != nil {
		return err
	}
	defer d.Close()
	return syncfs(int(d.Fd()))
}

// flushFile has nothing to do: flush does it for all files at once.
func flushFile(*os.File) error { return nil }
