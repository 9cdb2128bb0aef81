package shelf

import (
	"errors"

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
