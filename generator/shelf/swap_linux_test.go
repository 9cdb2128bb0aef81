package shelf

import (
	"errors"
	"path/filepath"
	"testing"

	"golang.org/x/sys/unix"
)

// TestSwapWhereFoldersCannotBeExchanged wants the new tree in the old one's
// place whatever a file system says that cannot exchange two folders, and
// nothing moved when it says that something else is wrong.
func TestSwapWhereFoldersCannotBeExchanged(t *testing.T) {
	for _, c := range []struct {
		said   unix.Errno
		stands string
	}{
		{unix.ENOSYS, "new"}, {unix.EINVAL, "new"}, {unix.EOPNOTSUPP, "new"},
		{unix.EACCES, "old"}, {unix.EBUSY, "old"}, {unix.EXDEV, "old"},
	} {
		t.Run(c.said.Error(), func(t *testing.T) {
			parent := t.TempDir()
			put(t, parent, map[string]string{"new/a": "new", "old/a": "old"})
			_, err := exchanged(filepath.Join(parent, "new"), filepath.Join(parent, "old"), c.said)
			if failed := errors.Is(err, c.said); failed != (c.stands == "old") {
				t.Errorf("error %v", err)
			}
			same(t, tree(t, filepath.Join(parent, "old")), map[string]string{"a": c.stands})
		})
	}
}
