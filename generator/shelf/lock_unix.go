//go:build linux || darwin || freebsd || netbsd || openbsd || dragonfly

package shelf

import (
	"errors"
	"os"

	"golang.org/x/sys/unix"
)

// lockFolder locks an open folder until it is closed, or returns errLocked.
func lockFolder(f *os.File) error {
	err := unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB)
	if errors.Is(err, unix.EWOULDBLOCK) {
		return errLocked
	}
	return err
}
