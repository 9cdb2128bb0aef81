//go:build !(linux || darwin || freebsd || netbsd || openbsd || dragonfly)

package shelf

import (
	"errors"
	"os"
)

// lockFolder says that folders cannot be locked here.
func lockFolder(*os.File) error { return errors.ErrUnsupported }
